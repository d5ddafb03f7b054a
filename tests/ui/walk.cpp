// Walks through the main job as a person would, with real mouse and key events, and writes a numbered picture of each
// step: the pictures of README come from here.
// `ui_walk FOLDER [SAMPLE] [WIDTHxHEIGHT] [dark] [TEXT%] [answers] [photograph] [measures] [pages]`; with `answers` the
// pages that answer a question and the drawing of remnants, in place of the main job, with `photograph` or `measures`
// only that walk, with `pages` every page once.

#include "core/edit/cloth_edit.h"
#include "core/edit/job_edit.h"
#include "core/planner/plan.h"
#include "tests/ui/synthetic_photo.h"
#include "tests/ui/window_fixture.h"
#include "ui/answers/ask_page.h"
#include "ui/answers/why_page.h"
#include "ui/canvas/canvas.h"
#include "ui/canvas/outline_bar.h"
#include "ui/document/standing.h"
#include "ui/drawing/table_frame.h"
#include "ui/forms/piece_form_page.h"
#include "ui/kept/kept_layouts.h"
#include "ui/photo/remnant_page.h"
#include "ui/photo/tape_page.h"
#include "ui/trimmings/trimmings_page.h"
#include "ui/widgets/sheet_table.h"
#include "ui/window/look.h"
#include "ui/window/over_sheet.h"

#include <QApplication>
#include <QComboBox>
#include <QDir>
#include <QLineEdit>
#include <QPushButton>
#include <QTableView>
#include <QTest>

#include <cstdio>

using namespace Qt::StringLiterals;
using namespace boltwright;
using namespace boltwright::ui;
using namespace boltwright::literals;

namespace {

class Walk {
public:
    Walk(MainWindow &window, const QString &folder, const QString &before = {})
        : m_window(window), m_folder(folder), m_before(before) {
        QDir().mkpath(folder);
    }

    void picture(const QString &what) {
        QTest::qWait(60);
        m_window.grab().save(
            u"%1/%2%3-%4.png"_s.arg(m_folder, m_before).arg(++m_number, 2, 10, QLatin1Char('0')).arg(what));
    }

    void plan(std::int64_t steps) {
        m_window.planOptions().seconds.reset();
        m_window.planOptions().steps = steps;
        m_window.actions()[ActionId::Plan]->trigger();
        waitFor([this] { return !m_window.planning().isRunning(); }, 60000);
        waitFor([this] { return m_window.standing().verdict() != Standing::Verdict::Waiting; }, 20000);
        m_window.canvas().zoomToFit();
        QTest::qWait(50);
    }

private:
    MainWindow &m_window;
    QString m_folder, m_before;
    int m_number = 0;
};

/// Takes a panel by its middle and moves it by some pixels; the button stays down.
QPoint takeAndMove(Canvas &canvas, int cut, QPoint by, Qt::KeyboardModifiers with = {}) {
    const QPoint from = canvas.cutRect(cut).center().toPoint();
    QTest::mousePress(canvas.viewport(), Qt::LeftButton, {}, from);
    for (int i = 1; i <= 6; ++i) moveMouse(canvas.viewport(), from + by * i / 6, with);
    return from + by;
}

void walk(MainWindow &window, const QString &folder, const QString &sample) {
    Walk walk(window, folder);
    walk.picture(u"start"_s);
    window.files().openSample(sample);
    walk.picture(u"cloth-and-list"_s);
    walk.plan(3000);
    walk.picture(u"planned"_s);
    Canvas &canvas = window.canvas();
    if (!canvas.table().panels().isEmpty()) {
        const int cut = int(canvas.table().panels().size()) / 2;
        QPoint at = takeAndMove(canvas, cut, QPoint(70, 30));
        walk.picture(u"drag-in-the-way"_s);
        QTest::keyClick(&canvas, Qt::Key_Escape);
        QTest::mouseRelease(canvas.viewport(), Qt::LeftButton, {}, at);
        int last = 0;
        for (int i = 0; i < canvas.table().panels().size(); ++i)
            if (canvas.cutRect(i).right() > canvas.cutRect(last).right()) last = i;
        at = takeAndMove(canvas, last, QPoint(46, 5));
        walk.picture(u"drag-with-guide"_s);
        QTest::mouseRelease(canvas.viewport(), Qt::LeftButton, {}, at);
        walk.picture(u"moved"_s);
        QTest::keyClick(&canvas, Qt::Key_L);
        walk.picture(u"locked"_s);
        QTest::keyClick(&canvas, Qt::Key_Tab);
        QTest::keyClick(&canvas, Qt::Key_Delete);
        walk.picture(u"put-aside"_s);
    }
    window.showPanelTable();
    walk.picture(u"panels"_s);
    window.sheet().close();
    window.showClothForm();
    walk.picture(u"cloth"_s);
    window.sheet().close();
    canvas.zoomBy(2.2, QPointF(300, 250));
    walk.picture(u"nearer"_s);
}

/// Remnants and flaws on the table, and each page with its answers.
void walkAnswers(MainWindow &window, const QString &folder, const QString &sample) {
    Walk walk(window, folder);
    window.files().openSample(sample);
    window.actions()[ActionId::Outlines]->trigger();
    window.canvas().zoomToFit();
    walk.picture(u"outlines"_s);
    QTest::keyClick(&window.canvas(), Qt::Key_Tab);
    walk.picture(u"corner"_s);
    window.outlines().tool().begin(OutlineTool::Task::Remnant);
    walk.picture(u"draw"_s);
    window.outlines().tool().begin(OutlineTool::Task::Spot);
    const QPoint at = window.canvas().viewport()->rect().center();
    QTest::mouseClick(window.canvas().viewport(), Qt::LeftButton, {}, at);
    walk.picture(u"spot"_s);
    window.actions()[ActionId::Undo]->trigger();
    window.outlines().close();
    window.showClothForm();
    walk.picture(u"cloth-form"_s);
    const auto answer = [&](ActionId id, const QString &name, auto choose) {
        window.actions()[id]->trigger();
        auto *page = qobject_cast<QuestionPage *>(window.sheet().content());
        walk.picture(name + u"-before"_s);
        QTest::mouseClick(page->askButton(), Qt::LeftButton);
        waitFor([page] { return !page->answering().isRunning(); }, 120000);
        QTest::qWait(50);
        choose(page);
        walk.picture(name);
    };
    // Cloth that is short: the last remnant has gone missing.
    const auto outlines = outlinesOf(window.document().job());
    for (auto it = outlines.rbegin(); it != outlines.rend(); ++it)
        if (!it->flaw && window.document().job().cloth(it->sheet.cloth)->remnants.size() > 1) {
            window.document().changeJob(*withoutOutline(window.document().job(), *it), u"Remove a remnant"_s);
            break;
        }
    answer(ActionId::WaysToFit, u"ways"_s, [](QuestionPage *) {});
    answer(ActionId::HowToRun, u"runs"_s, [](QuestionPage *) {});
    answer(ActionId::AskFor, u"ask"_s, [](QuestionPage *page) {
        QTableView *table = qobject_cast<AskPage *>(page)->table();
        table->setCurrentIndex(table->model()->index(3, 2));
    });
    answer(ActionId::Why, u"why"_s, [](QuestionPage *page) {
        if (StaircaseView *stairs = qobject_cast<WhyPage *>(page)->stairs())
            for (int i = 0; i < 3; ++i) QTest::keyClick(stairs, Qt::Key_Down);
    });
}

QString photographIn(const QString &folder);

/// Every page of the window one after the other, to be looked at in each look, size of text and size of window. What
/// does not fit is told on the way.
void walkPages(MainWindow &window, const QString &folder, const QString &sample, QSize size) {
    Walk walk(window, folder, u"page-"_s);
    const auto tell = [&](const char *what) {
        if (window.width() > size.width() || window.height() > size.height())
            std::printf("%s: the window is %d x %d\n", what, window.width(), window.height());
    };
    walk.picture(u"start"_s);
    tell("start");
    window.files().openSample(sample);
    walk.plan(1500);
    window.document().keepLayout(u"as planned"_s);
    QTest::keyClick(&window.canvas(), Qt::Key_Tab);
    walk.picture(u"table"_s);
    tell("table");
    Job job = window.document().job();
    for (Trimming::Kind kind : {Trimming::Kind::Welt, Trimming::Kind::Nails}) {
        Trimming t;
        t.kind = kind;
        t.edges = 120_in;
        t.strip = 1.5_in;
        t.shortest = 12_in;
        t.from = kind == Trimming::Kind::Welt ? StripsFrom::Scraps : StripsFrom::Bought;
        t.head = 0.5_in;
        job.trimmings.push_back(t);
    }
    window.document().changeJob(job, u"Trimmings"_s);
    for (ActionId id : {ActionId::Measure, ActionId::Panels, ActionId::Matches, ActionId::Cloths,
                        ActionId::ClothQuestions, ActionId::Trimmings, ActionId::ShopRules, ActionId::JobCard,
                        ActionId::RemnantFromPhotograph, ActionId::WaysToFit, ActionId::HowToRun, ActionId::AskFor,
                        ActionId::Why, ActionId::HowTo, ActionId::Keys, ActionId::FlawFound, ActionId::Print}) {
        window.actions()[id]->trigger();
        const QString name = window.actions()[id]->text().remove(u'…').toLower().replace(u' ', u'-');
        if (id == ActionId::RemnantFromPhotograph)
            qobject_cast<RemnantPage *>(window.sheet().content())->openPicture(photographIn(folder));
        walk.picture(name);
        tell(qPrintable(name));
        window.sheet().close();
    }
    window.showSwatchPage(0);
    walk.picture(u"swatch"_s);
    window.sheet().close();
    if (window.kept().cards().size() > 1) Q_EMIT window.kept().comparisonWanted(0);
    walk.picture(u"compared"_s);
    window.sheet().close();
    window.actions()[ActionId::Outlines]->trigger();
    QTest::keyClick(&window.canvas(), Qt::Key_Tab);
    walk.picture(u"outlines"_s);
    tell("outlines");
}

// From a photograph to two layouts compared, on cloth and photograph that nobody made but this.

const QPolygonF photographedCloth({{-890, -560}, {890, -560}, {890, 300}, {560, 560}, {-890, 560}});
constexpr double stripe = 127; // millimetres: 5 in

Camera aboveTheTable() {
    Camera camera;
    camera.tilt = 16;
    camera.spin = -5;
    camera.height = 2700;
    return camera;
}

QPolygonF yardsticks() { return rectangleAt({-120, -20}, 914.4, 609.6); }

QString photographIn(const QString &folder) {
    const QString file = folder + u"/remnant.jpg"_s;
    const QColor wood(0xE0, 0xB9, 0x5A);
    photograph(aboveTheTable(),
               {{photographedCloth, QColor(0xDD, 0xD3, 0xBA)},
                {rectangleAt({520, -260}, 70, 46, 20), QColor(0x7E, 0x5B, 0x48)},
                {rectangleAt({-120, -20 - 304.8 + 14}, 914.4, 28), wood},
                {rectangleAt({-120, -20 + 304.8 - 14}, 914.4, 28), wood}},
               0, stripe)
        .save(file, "JPEG", 90);
    return file;
}

/// A window bench of our own invention: back, seat and front band in one run of stripes, and two bolsters.
Job windowBench() {
    Job job = newJob(Unit::Inch);
    job.card.title = "Window bench, landing";
    job.card.client = "The Aldermoor Library";
    Cloth &cloth = job.cloths.front();
    cloth.name = "Striped remnant";
    cloth.way = Way::Two;
    cloth.pattern = Pattern{.across = 5_in, .along = {}, .drop = {}, .motif = {2.5_in, Length{}}, .kept = {}};
    const auto panel = [](const char *id, const char *mark, const char *name, Length across, Length up, int count) {
        Panel p;
        p.id = id;
        p.mark = mark;
        p.name = name;
        p.shape = Rectangle{across, up};
        p.count = count;
        p.allow.assign(4, 0.5_in);
        p.allowMin.assign(4, std::nullopt);
        return p;
    };
    Panel back = panel("inside-back", "IB", "Inside back", 26_in, 13_in, 1),
          seat = panel("seat", "ST", "Seat", 26_in, 15_in, 1),
          band = panel("band", "FB", "Front band", 26_in, 4.5_in, 1);
    for (Panel *p : {&back, &seat}) p->motif = MotifWish{Centre::Across, {}, {}};
    job.panels = {back, seat, band, panel("bolster", "BO", "Bolster", 19_in, 12_in, 2),
                  panel("bolster-end", "BE", "Bolster end", 6_in, 6_in, 4)};
    for (const auto &[from, to] : {std::pair("inside-back", "seat"), std::pair("seat", "band")}) {
        Flow flow;
        flow.from = {from, Bottom, {}, {}};
        flow.to = {to, Top, {}, {}};
        job.flows.push_back(flow);
    }
    return job;
}

void click(MarkedPicture &picture, QPointF at) {
    QTest::mouseClick(&picture, Qt::LeftButton, {}, picture.toWidget(at).toPoint());
}

void press(QWidget &page, const QString &text) {
    for (QPushButton *button : page.findChildren<QPushButton *>())
        if (button->text() == text && button->isVisible()) QTest::mouseClick(button, Qt::LeftButton);
    QTest::qWait(40);
}

void traceRemnant(Walk &walk, MainWindow &window, const QString &photo) {
    window.actions()[ActionId::RemnantFromPhotograph]->trigger();
    auto &page = *qobject_cast<RemnantPage *>(window.sheet().content());
    page.openPicture(photo);
    auto *known = page.findChild<QComboBox *>(u"known"_s);
    known->setFocus();
    QTest::keyClick(known, Qt::Key_Down); // from a sheet of Letter paper to a yardstick laid twice
    for (const QPointF &corner : aboveTheTable().toPicture().map(yardsticks())) click(page.picture(), corner);
    walk.picture(u"photograph"_s);
    press(page, u"Trace the outline"_s);
    const QTransform seen = aboveTheTable().toPicture() * straightened(page.find()).fromPhoto;
    const QPolygonF outline = seen.map(photographedCloth);
    for (const QPointF &corner : outline) click(page.picture(), corner);
    click(page.picture(), outline.first());
    press(page, u"Mark a flaw"_s);
    for (const QPointF &corner : seen.map(rectangleAt({520, -260}, 90, 70, 20))) click(page.picture(), corner);
    QTest::keyClick(&page.picture(), Qt::Key_Return, Qt::ControlModifier);
    walk.picture(u"outline"_s);
    press(page, u"Put it on the table"_s);
}

void tapeIt(Walk &walk, MainWindow &window) {
    auto &page = *qobject_cast<TapePage *>(window.sheet().content());
    const Remnant &remnant = window.document().job().cloths.front().remnants.front();
    const QPolygonF corners = page.fromTable().map(onTable(remnant.outline));
    for (const int corner : {0, 1, 0, 4}) click(page.picture(), corners[corner]);
    for (const auto &[name, taped] : {std::pair(u"first length"_s, u"70 1/16"_s), {u"second length"_s, u"44 1/8"_s}}) {
        auto *length = page.findChild<QLineEdit *>(name);
        length->setFocus();
        QTest::keyClicks(length, taped);
        QTest::keyClick(length, Qt::Key_Return);
    }
    walk.picture(u"tape"_s);
    press(page, u"Confirm the scale"_s);
}

void walkFromPhotograph(WindowFixture &fixture, MainWindow &window, const QString &folder) {
    Walk walk(window, folder, u"photo-"_s);
    window.document().startWith(windowBench());
    traceRemnant(walk, window, photographIn(fixture.folder()));
    tapeIt(walk, window);
    window.showPanelTable();
    walk.picture(u"panels"_s);
    window.sheet().close();
    walk.plan(3000);
    walk.picture(u"planned"_s);
    Canvas &canvas = window.canvas();
    window.kept().keepButton()->setFocus();
    QTest::keyClick(window.kept().keepButton(), Qt::Key_Space);
    for (KeptCard *card : window.kept().cards())
        if (!card->nameField()->isHidden()) {
            QTest::keyClicks(card->nameField(), u"as planned"_s);
            QTest::keyClick(card->nameField(), Qt::Key_Return);
            break;
        }
    // The seat is dragged off its stripe, to see at once what becomes of the piece.
    int seat = 0;
    const auto &cuts = window.document().layout().cuts;
    for (int i = 0; i < int(cuts.size()); ++i)
        if (cuts[std::size_t(i)].panel == "seat") seat = i;
    const QPoint at = takeAndMove(canvas, seat, QPoint(9, 17), Qt::AltModifier);
    walk.picture(u"dragged"_s);
    QTest::mouseRelease(canvas.viewport(), Qt::LeftButton, Qt::AltModifier, at);
    QTest::qWait(400);
    walk.picture(u"piece"_s);
    // Compared with what was kept, by key alone.
    for (KeptCard *card : window.kept().cards())
        if (!card->isChecked()) {
            card->setFocus();
            QTest::keyClick(card, Qt::Key_C);
            break;
        }
    walk.picture(u"compared"_s);
    window.sheet().close();
}

/// From the tape measure to the cut list, and the trimmings cut from what is left over.
void walkMeasures(MainWindow &window, const QString &folder) {
    Walk walk(window, folder, u"measure-"_s);
    Job job = newJob(Unit::Inch);
    job.card.title = "Two club chairs";
    job.card.client = "The Aldermoor Library";
    Cloth &cloth = job.cloths.front();
    cloth.name = "Ribbed weave";
    cloth.way = Way::Two;
    cloth.price = Price{"yd", 52, "USD", {}};
    job.gap = 0.125_in;
    window.document().startWith(job);
    const auto key = [](int k, Qt::KeyboardModifiers with = {}) {
        QTest::keyClick(QApplication::focusWidget(), Qt::Key(k), with);
        QTest::qWait(20);
    };
    const auto type = [](const QString &text) {
        for (QChar c : text) QTest::keyClick(QApplication::focusWidget(), c.toLatin1());
    };
    window.actions()[ActionId::Measure]->trigger();
    auto *form = qobject_cast<PieceFormPage *>(window.sheet().content());
    form->choose("club-chair");
    form->table()->setFocus();
    walk.picture(u"form"_s);
    for (const QString &length : {u"23 1/2"_s, u"24"_s}) {
        type(length);
        key(Qt::Key_Tab);
    }
    form->table()->setCurrentIndex(form->model()->index(form->model()->rowOf("inside-arm"), MeasureTableModel::Second));
    walk.picture(u"arm"_s);
    key(Qt::Key_T, Qt::AltModifier);
    waitFor([&] { return !window.sheet().isVisible(); });
    window.actions()[ActionId::ShopRules]->trigger();
    walk.picture(u"rules"_s);
    window.sheet().close();
    walk.plan(2000);
    walk.picture(u"planned"_s);
    window.actions()[ActionId::Trimmings]->trigger();
    for (int letter : {Qt::Key_W, Qt::Key_G, Qt::Key_N}) {
        QTest::keyClick(window.sheet().content(), Qt::Key(letter), Qt::AltModifier);
        QTest::qWait(60);
    }
    waitFor(
        [&] { return !qobject_cast<TrimmingsPage *>(window.sheet().content())->sentence(1).contains(u"Looking"_s); });
    walk.picture(u"trimmings"_s);
    window.sheet().close();
    walk.picture(u"strips"_s);
    window.actions()[ActionId::ClothQuestions]->trigger();
    walk.picture(u"cloth-questions"_s);
    window.sheet().close();
}

} // namespace

int main(int argc, char **argv) {
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    const QStringList arguments = application.arguments();
    if (arguments.size() < 2) {
        std::fputs("usage: ui_walk FOLDER [SAMPLE] [WIDTHxHEIGHT] [dark] [TEXT%] [answers] [photograph] [measures] "
                   "[pages]\n",
                   stderr);
        return 2;
    }
    WindowFixture fixture;
    QSize size(1440, 900);
    QString sample = u"striped-settee"_s;
    auto look = Preferences::Look::Light;
    int text = 100;
    bool answers = false, onlyPhotograph = false, onlyMeasures = false, pages = false;
    for (const QString &argument : arguments.mid(2)) {
        const QStringList sides = argument.split(u'x');
        if (argument == u"photograph"_s)
            onlyPhotograph = true;
        else if (argument == u"measures"_s)
            onlyMeasures = true;
        else if (argument == u"answers"_s)
            answers = true;
        else if (argument == u"pages"_s)
            pages = true;
        else if (argument == u"dark"_s)
            look = Preferences::Look::Dark;
        else if (argument.endsWith(u'%'))
            text = argument.chopped(1).toInt();
        else if (sides.size() == 2 && sides[0].toInt() > 0)
            size = {sides[0].toInt(), sides[1].toInt()};
        else
            sample = argument;
    }
    applyLook(application, look, text);
    MainWindow &window = fixture.show(size);
    // A sample by its name, or any job by its file.
    const QString job = sample.contains(u'/') ? sample : u":/boltwright/samples/%1.boltwright"_s.arg(sample);
    if (answers)
        walkAnswers(window, arguments[1], job);
    else if (pages)
        walkPages(window, arguments[1], job, size);
    else if (!onlyPhotograph && !onlyMeasures)
        walk(window, arguments[1], job);
    if (!answers && !pages && !onlyMeasures) walkFromPhotograph(fixture, window, arguments[1]);
    if (!answers && !pages && !onlyPhotograph) walkMeasures(window, arguments[1]);
    fixture.leave();
    return 0;
}
