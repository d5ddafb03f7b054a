// Writes jobs with layouts and everything that is made of them into a folder, for tests that measure the files.
// usage: paper_pages DIR pictures|sheets|list|real|foreign|prices|reasons|bench [COUNT [FROM]]
//   COUNT: how many random jobs, beginning with number FROM (1); the samples are planned and come along

#include "core/check/check.h"
#include "core/concede/concede.h"
#include "core/files/job_file.h"
#include "core/forms/doubts.h"
#include "core/forms/forms.h"
#include "core/forms/panel_doubts.h"
#include "core/forms/panels_from.h"
#include "core/paper/chalk_list.h"
#include "core/paper/cloth_sheet.h"
#include "core/paper/labels.h"
#include "tests/core/paper/planted.h"
#include "ui/paper/client_page.h"
#include "ui/paper/cutting_sheet.h"
#include "ui/paper/label_pages.h"
#include "ui/paper/true_size_pages.h"
#include "ui/picture/picture.h"
#include "ui/piece/piece_page.h"
#include "ui/text/language.h"

#include <QGuiApplication>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QLocale>
#include <QTranslator>

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <ctime>
#include <filesystem>
#include <fstream>
#include <vector>

using namespace boltwright;
using namespace boltwright::literals;
using namespace Qt::StringLiterals;

namespace {

struct Named {
    std::string name;
    Job job;
};

/// The samples, planned in a few steps: what counts here is how they look on paper, not how short they are.
void addSamples(std::vector<Named> &out) {
    std::vector<std::filesystem::path> files;
    for (const auto &entry : std::filesystem::directory_iterator(BOLTWRIGHT_SAMPLES))
        if (entry.path().extension() == ".boltwright") files.push_back(entry.path());
    std::sort(files.begin(), files.end());
    for (const auto &file : files) {
        auto job = loadJob(file);
        if (!job) continue;
        PlanOptions options;
        options.seconds.reset();
        options.steps = 200;
        Plan made = planOrConcede(*job, options);
        if (made.layout.cuts.empty()) {
            std::fprintf(stderr, "%s: no layout in so few steps\n", file.c_str());
            continue;
        }
        made.layout.name = "Plan 1";
        job->layouts.push_back(made.layout);
        out.push_back({"sample-" + file.stem().string(), *job});
    }
}

std::vector<Named> jobs(int random, int first) {
    std::vector<Named> out = {
        {"chairs", planted::chairs()}, {"remnants", planted::footstools()}, {"pieces", planted::joinedBack()}};
    out.push_back({"dressed", planted::dressed(planted::chairs(), 4)});
    out.push_back({"dressed-remnants", planted::dressed(planted::footstools(), 2)});
    if (first == 1) addSamples(out);
    for (int seed = first; seed < first + random; ++seed) {
        Job job = planted::anyJob(std::uint64_t(seed), seed % 20 == 0 ? 60 : 4 + seed % 9);
        if (seed % 3 == 0) job = planted::dressed(std::move(job), std::uint64_t(seed));
        out.push_back({"random-" + std::to_string(seed), std::move(job)});
    }
    for (Named &named : out)
        if (named.job.layouts.empty()) named.job.layouts = {planted::inRows(named.job)};
    return out;
}

bool said(const Result<void> &result) {
    if (!result) std::fprintf(stderr, "%s\n", result.error().text.c_str());
    return bool(result);
}

/// Where the sheet's own plan says that things lie, millimetres: what the paper is measured against.
QJsonObject planOf(const Job &job, const ui::CuttingSheet &sheet) {
    const SheetPlan &plan = sheet.plan();
    QJsonArray pages;
    const auto sheets = clothSheets(job, job.layouts.back());
    for (const SheetPage &page : plan.pages) {
        QJsonArray strips;
        for (const SheetStrip &s : page.strips) {
            const ClothSheet &cloth = sheets[s.sheet];
            QJsonArray cuts;
            for (const SheetCut &cut : cloth.cuts) cuts << cut.cut;
            strips << QJsonObject{{u"from"_s, s.from.toMillimetres()},
                                  {u"to"_s, s.to.toMillimetres()},
                                  {u"x"_s, s.corner.x.toMillimetres()},
                                  {u"y"_s, s.corner.y.toMillimetres()},
                                  {u"low"_s, cloth.box().low.x.toMillimetres()},
                                  {u"cuts"_s, cuts},
                                  {u"sheet"_s, int(s.sheet)}};
        }
        pages << strips;
    }
    return {{u"scale"_s, plan.scale},
            {u"width"_s, plan.paper.width.toMillimetres()},
            {u"height"_s, plan.paper.height.toMillimetres()},
            {u"pages"_s, pages},
            {u"bar"_s, scaleBar(job.unit, plan.scale, Length::ticks(1'000'000'000)).toMillimetres()},
            {u"square"_s, testSquare(job.unit).toMillimetres()}};
}

bool writeSheet(const std::filesystem::path &path, const Job &job, const SheetOptions &options) {
    const auto sheet = ui::CuttingSheet::make(job, job.layouts.back(), options);
    if (!sheet) return said(fault(sheet.error()));
    std::ofstream(path.string() + ".json") << QJsonDocument(planOf(job, **sheet)).toJson().toStdString();
    return said(ui::writePdf(**sheet, path.string() + ".pdf"));
}

/// A fresh sheet after some of the layout lay elsewhere, some was not there and some had been cut, and a flaw turned
/// up.
Result<void> writeChanged(const Job &job, const std::filesystem::path &file, Paper paper) {
    const Layout &now = job.layouts.back();
    Layout before = now;
    for (std::size_t i = 0; i < before.cuts.size(); ++i) {
        if (i % 3 == 0) before.cuts[i].x += Length::ticks(9600);
        if (i % 5 == 1) before.cuts[i].state = CutState::Cut;
    }
    if (before.cuts.size() > 4) before.cuts.erase(before.cuts.begin() + 2);
    Job found = job;
    if (auto &bolt = found.cloths.front().bolt)
        bolt->flaws.push_back({ringOf(ClothBox{{Length::ticks(64000), Length::ticks(32000)},
                                               {Length::ticks(70400), Length::ticks(35200)}}),
                               "a slub that the mill had flagged at the selvage",
                               {}});
    ui::SheetExtras extras;
    extras.changes = changesBetween(job, before, found, now);
    SheetOptions options;
    options.paper = paper;
    return ui::writeCuttingSheet(found, now, file, options, extras);
}

/// Every job on a paper, way round and scale of its own; the planted ones on several.
bool writeSheets(const std::filesystem::path &folder, const std::vector<Named> &all) {
    bool good = true;
    int turn = 0;
    for (const Named &named : all) {
        good = said(ui::writeClientPage(named.job, named.job.layouts.back(), folder / (named.name + "-client.pdf"),
                                        turn % 2 ? Paper::A4 : Paper::Letter)) &&
               good;
        const bool planted = named.name.find("random") != 0 && named.name.find("sample") != 0;
        const auto papers = allPapers();
        const std::vector<std::optional<int>> scales = {std::nullopt, 10, 20, 16, 8};
        for (int k = 0; k < (planted ? 5 : 1); ++k, ++turn) {
            SheetOptions options;
            options.paper = papers[std::size_t(turn) % papers.size()];
            options.scale = scales[std::size_t(turn / 2) % scales.size()];
            if (turn % 3 > 0) options.sideways = turn % 3 == 1;
            const auto path = folder / (named.name + "-" + std::to_string(k));
            // Wide cloth does not go on every paper at every scale: that is refused in words, and fits somewhere else.
            if (!ui::CuttingSheet::make(named.job, named.job.layouts.back(), options)) options.scale.reset();
            std::ofstream(path.string() + ".boltwright") << writeJob(named.job);
            good = writeSheet(path, named.job, options) && good;
        }
        good = said(writeChanged(named.job, folder / (named.name + "-changed.pdf"), papers[std::size_t(turn) % 5])) &&
               good;
    }
    return good;
}

QJsonArray boxOf(const PaperBox &box) {
    return {box.low.x.toMillimetres(), box.low.y.toMillimetres(), box.high.x.toMillimetres(),
            box.high.y.toMillimetres()};
}

/// Where the pages of a true-size print say that they lie on the joined paper.
QJsonObject planOf(const ui::TrueSizePages &pages) {
    QJsonArray all;
    for (const auto &page : pages.pages()) {
        const TruePlan &plan = pages.plans()[page.drawing];
        const TrueTile &tile = plan.tiles[page.tile];
        all << QJsonObject{{u"drawing"_s, int(page.drawing)},
                           {u"column"_s, tile.column},
                           {u"row"_s, tile.row},
                           {u"from"_s, QJsonArray{tile.from.x.toMillimetres(), tile.from.y.toMillimetres()}},
                           {u"room"_s, boxOf(plan.room)}};
    }
    return {{u"pages"_s, all}};
}

bool writeTrueSize(const std::filesystem::path &path, const Job &job, const std::string &panel, Paper paper) {
    const auto pages = ui::trueSizePages(job, job.layouts.back(), panel, paper);
    if (!pages) return said(fault(pages.error()));
    std::ofstream(path.string() + ".json") << QJsonDocument(planOf(**pages)).toJson().toStdString();
    return said(ui::writePdf(**pages, path.string() + ".pdf"));
}

bool writeLabels(const std::filesystem::path &path, const Job &job, const LabelGrid &grid, int used) {
    const auto pages = ui::labelPages(job, job.layouts.back(), grid, used);
    if (!pages) return said(fault(pages.error()));
    QJsonArray boxes;
    for (const PaperBox &box : labelBoxes(grid)) boxes << boxOf(box);
    std::ofstream(path.string() + ".json")
        << QJsonDocument(QJsonObject{{u"boxes"_s, boxes}, {u"used"_s, used}}).toJson().toStdString();
    return said(ui::writePdf(**pages, path.string() + ".pdf"));
}

/// What is as large as the cloth: one panel of every job, a whole layout, and labels on every usual grid.
bool writeReal(const std::filesystem::path &folder, const std::vector<Named> &all) {
    bool good = true;
    auto grids = usualLabelGrids();
    grids.push_back(slipsOn(Paper::Letter));
    grids.push_back(slipsOn(Paper::A4));
    const auto papers = allPapers();
    std::size_t turn = 0;
    for (const Named &named : all) {
        std::ofstream((folder / (named.name + ".boltwright")).string()) << writeJob(named.job);
        const Cut &cut = named.job.layouts.back().cuts[turn * 7 % named.job.layouts.back().cuts.size()];
        good = writeTrueSize(folder / (named.name + "-panel"), named.job, cut.panel + "/" + std::to_string(cut.copy),
                             papers[turn % papers.size()]) &&
               good;
        std::ofstream((folder / (named.name + "-panel.cut")).string()) << cut.panel << "\n" << cut.copy << "\n";
        good = writeLabels(folder / (named.name + "-labels"), named.job, grids[turn % grids.size()], int(turn % 4)) &&
               good;
        good = said(ui::writeCoveredPiece(named.job, named.job.layouts.back(), folder / (named.name + "-piece.pdf"))) &&
               good;
        ++turn;
    }
    good = writeTrueSize(folder / "remnants-whole", planted::footstools(), {}, Paper::Tabloid) && good;
    return good;
}

/// Another tongue in which every letter is an x: what stands on the page in letters must be of the job itself.
class Unspoken : public QTranslator {
public:
    using QTranslator::QTranslator;
    bool isEmpty() const override { return false; }
    QString translate(const char *context, const char *text, const char *, int) const override {
        const QString where = QString::fromLatin1(context);
        if (where != u"Paper"_s && where != u"Core"_s) return {};
        QString out;
        for (QChar c : QString::fromUtf8(text)) out += c.isLetter() ? QChar(u'x') : c;
        return out;
    }
};

bool writeForeign(const std::filesystem::path &folder, const std::vector<Named> &all) {
    Unspoken unspoken;
    QCoreApplication::installTranslator(&unspoken);
    QLocale::setDefault(QLocale(QLocale::German, QLocale::Germany));
    bool good = true;
    for (const Named &named : all) {
        const Layout &layout = named.job.layouts.back();
        std::ofstream((folder / (named.name + ".boltwright")).string()) << writeJob(named.job);
        ui::SheetExtras extras;
        Layout moved = layout; // some of it lay elsewhere before
        for (std::size_t i = 0; i < moved.cuts.size(); i += 3) moved.cuts[i].x += Length::ticks(9600);
        extras.changes = changesBetween(named.job, moved, named.job, layout);
        Staircase why{named.job.cloths.front().id, Length::ticks(9'000'000), Length::ticks(9'144'000), {}};
        Length reached;
        for (int kind = 0; kind < 8; ++kind) {
            Stair stair;
            stair.kind = StairKind(kind);
            stair.step = kind < 7 ? Length::ticks(300'000) : Length::ticks(9'144'000) - reached;
            stair.length = reached = reached + stair.step;
            why.stairs.push_back(stair);
        }
        good = said(ui::writeCuttingSheet(named.job, layout, folder / (named.name + "-sheet.pdf"), {}, extras)) && good;
        good = said(ui::writeClientPage(named.job, layout, folder / (named.name + "-client.pdf"), Paper::A4, {why})) &&
               good;
        good = writeLabels(folder / (named.name + "-labels"), named.job, slipsOn(Paper::A4), 0) && good;
        const Cut &cut = layout.cuts.front();
        good = writeTrueSize(folder / (named.name + "-panel"), named.job, cut.panel + "/" + std::to_string(cut.copy),
                             Paper::A3) &&
               good;
    }
    return good;
}

/// The layout moved up the roll until the main bolt is used up to `end`.
Layout endingAt(const Job &job, Layout layout, Length end, std::string name) {
    const std::string &main = job.cloths.front().id;
    Length now;
    for (const ClothSheet &sheet : clothSheets(job, layout))
        if (sheet.cloth == main) now = sheet.lastCut;
    for (Cut &cut : layout.cuts)
        if (job.clothOf(cut).id == main) cut.y += end - now;
    layout.name = std::move(name);
    return layout;
}

/// Client's pages of jobs with prices, and choices that end at a step of the trade, one tick below and one above it.
bool writePrices(const std::filesystem::path &folder, std::vector<Named> all) {
    bool good = true;
    int turn = 0;
    for (Named &named : all) {
        Job &job = named.job;
        if (!job.cloths.front().bolt) continue;
        const bool random = named.name.find("random") == 0;
        if (random && turn % 4 > 0)
            job.cloths.front().price = Price{turn % 2 ? "yd" : "m", 17.35 + turn * 3.11, turn % 3 ? "EUR" : "USD", {}};
        Layout plan = job.layouts.back();
        plan.name = "Plan 1";
        const Length used = clothSheets(job, plan).front().lastCut;
        const Length step = job.unit == Unit::Inch ? 9_in : 10_cm; // far enough to stand clear of the cut end
        const Length at = Length::ticks((used.ticks() / step.ticks() + 2 + turn % 5) * step.ticks());
        job.layouts = {endingAt(job, plan, at, "At the step"), endingAt(job, plan, at - Length::ticks(1), "Just below"),
                       endingAt(job, plan, at + Length::ticks(1), "Just above"), plan};
        std::ofstream((folder / (named.name + ".boltwright")).string()) << writeJob(job);
        good = said(ui::writeClientPage(job, job.layouts[std::size_t(turn) % 4], folder / (named.name + ".pdf"),
                                        turn % 2 ? Paper::A4 : Paper::Letter)) &&
               good;
        std::ofstream((folder / (named.name + ".layout")).string()) << turn % 4 << "\n";
        ++turn;
    }
    return good;
}

/// What is wrong with a layout that is wrong in many ways, as rules and check say it; the names in the piece forms and
/// what is doubted of measures that are off. One text a line.
void sayReasons(const std::vector<Named> &all) {
    const auto say = [](const char *from, const std::string &text) { std::printf("%s\t%s\n", from, text.c_str()); };
    for (const Named &named : all) {
        Layout wrong = named.job.layouts.back();
        for (std::size_t i = 0; i < wrong.cuts.size(); ++i) {
            Cut &cut = wrong.cuts[i];
            if (i % 3 == 0) cut.x = Length::ticks(-9600);
            if (i % 3 == 1) cut.y += Length::ticks(7000);
            if (i % 4 == 2) cut.turn = Turn::Deg180;
            if (i % 5 == 4) cut.mirrored = !cut.mirrored;
            if (i % 5 == 3) cut.allow.assign(4, Length::ticks(1));
        }
        if (wrong.cuts.size() > 3) wrong.cuts.pop_back();
        for (ClothUse &use : wrong.cloths) use.length = use.bound = Length::ticks(10);
        wrong.leftOut.push_back({"xx", 7, {}});
        for (const Breach &breach : breaches(named.job, wrong)) say("rules", breach.text);
        for (const Finding &finding : check(named.job, wrong)) say("check", finding.text);
        for (const PanelDoubt &doubt : doubtsOfPanels(named.job)) say("doubts", doubt.text);
    }
    for (const PieceForm &form : pieceForms()) {
        say("names", form.name);
        for (const FormPart &part : form.parts) {
            say("names", part.name);
            for (const PartMeasure &measure : part.measures) say("names", measure.words);
        }
        FormMeasures measures = typicalMeasures(form, Unit::Centimetre);
        Cloth cloth;
        cloth.pattern = Pattern{.across = 30_cm, .along = 30_cm, .drop = {}, .motif = {}, .kept = {}};
        for (const Panel &panel : panelsFrom(form, measures, TradeRules(), cloth).panels) say("names", panel.name);
        int turn = 0;
        for (auto &[id, part] : measures) {
            part.twin = part.sizes;
            for (Length &length : part.twin->lengths) length = length * 2;
            part.twinMotif = false;
            for (Length &length : part.sizes.lengths)
                length = turn % 3 == 0 ? length * 3 : turn % 3 == 1 ? Length{} : length;
            ++turn;
        }
        for (const Doubt &doubt : doubtsOf(form, measures, Unit::Centimetre, 60_cm)) say("doubts", doubt.text);
    }
}

/// How long a sheet of sixty panels on more than 40 m takes: what lies where, every page, and the file. Processor time.
bool measureSheet(const std::filesystem::path &folder) {
    Job job = planted::sixtyPanels();
    job.layouts = {planted::inRows(job)};
    const Layout &layout = job.layouts.back();
    bool good = true;
    for (int run = 1; run <= 3; ++run) {
        const std::clock_t begin = std::clock();
        good = said(ui::writeCuttingSheet(job, layout, folder / "sixty.pdf")) && good;
        const double seconds = double(std::clock() - begin) / CLOCKS_PER_SEC;
        std::printf("%zu panels on %.1f m: %.2f s of processor time\n", layout.cuts.size(),
                    layout.cloths.front().length->toMillimetres() / 1000, seconds);
    }
    return good;
}

} // namespace

int main(int argc, char **argv) {
    if (argc < 3) return 2;
    qputenv("QT_QPA_PLATFORM", "offscreen");
    QGuiApplication app(argc, argv);
    const std::filesystem::path folder = argv[1];
    const std::string what = argv[2];
    if (what == "reasons")
        ui::takeTheReadersLanguage();
    else
        ui::lendCoreTheLanguage();
    if (what == "bench") return measureSheet(folder) ? 0 : 1;
    const auto all = jobs(argc > 3 ? std::atoi(argv[3]) : 12, argc > 4 ? std::atoi(argv[4]) : 1);
    if (what == "real") return writeReal(folder, all) ? 0 : 1;
    if (what == "foreign") return writeForeign(folder, all) ? 0 : 1;
    if (what == "reasons") sayReasons(all);
    if (what == "prices") return writePrices(folder, all) ? 0 : 1;
    if (what == "sheets") return writeSheets(folder, all) ? 0 : 1;
    bool good = true;
    for (const Named &named : all) {
        const auto file = [&](const char *ending) { return folder / (named.name + ending); };
        const Layout &layout = named.job.layouts.back();
        std::ofstream(file(".boltwright")) << writeJob(named.job);
        if (what == "list") std::ofstream(file(".csv")) << chalkCsv(named.job, chalkList(named.job, layout));
        if (what != "pictures") continue;
        good = said(ui::writeSvg(named.job, layout, file(".svg"))) && good;
        good = said(ui::writePng(named.job, layout, file(".png"), 60)) && good;
    }
    return good ? 0 : 1;
}
