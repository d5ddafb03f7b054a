// Writes jobs with layouts and everything that is made of them into a folder, for tests that measure the files.
// usage: paper_pages DIR pictures|sheets|list [COUNT]      COUNT: how many random jobs

#include "core/files/job_file.h"
#include "core/paper/chalk_list.h"
#include "tests/core/paper/planted.h"
#include "ui/paper/client_page.h"
#include "ui/paper/cutting_sheet.h"
#include "ui/picture/picture.h"

#include <QGuiApplication>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>

#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <vector>

using namespace boltwright;
using namespace Qt::StringLiterals;

namespace {

struct Named {
    std::string name;
    Job job;
};

std::vector<Named> jobs(int random) {
    std::vector<Named> out = {
        {"chairs", planted::chairs()}, {"remnants", planted::footstools()}, {"pieces", planted::joinedBack()}};
    for (int seed = 1; seed <= random; ++seed)
        out.push_back({"random-" + std::to_string(seed),
                       planted::anyJob(std::uint64_t(seed), seed % 20 == 0 ? 60 : 4 + seed % 9)});
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

/// Every job on a paper, way round and scale of its own; the planted ones on several.
bool writeSheets(const std::filesystem::path &folder, const std::vector<Named> &all) {
    bool good = true;
    int turn = 0;
    for (const Named &named : all) {
        good = said(ui::writeClientPage(named.job, named.job.layouts.back(), folder / (named.name + "-client.pdf"),
                                        turn % 2 ? Paper::A4 : Paper::Letter)) &&
               good;
        const bool planted = named.name.find("random") != 0;
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
    const auto all = jobs(argc > 3 ? std::atoi(argv[3]) : 12);
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
