// Walks through the main job as a person would, with real mouse and key events, and writes a numbered picture of each
// step: the pictures of README come from here.
// `ui_walk FOLDER [SAMPLE] [WIDTHxHEIGHT] [dark] [TEXT%] [answers]`; with `answers` the pages that answer a question
// and the drawing of remnants, in place of the main job.

#include "core/edit/cloth_edit.h"
#include "core/planner/plan.h"
#include "tests/ui/window_fixture.h"
#include "ui/answers/ask_page.h"
#include "ui/answers/why_page.h"
#include "ui/canvas/canvas.h"
#include "ui/canvas/outline_bar.h"
#include "ui/document/standing.h"
#include "ui/window/look.h"
#include "ui/window/over_sheet.h"

#include <QApplication>
#include <QDir>
#include <QTableView>
#include <QTest>

#include <cstdio>

using namespace Qt::StringLiterals;
using namespace boltwright;
using namespace boltwright::ui;

namespace {

class Walk {
public:
    Walk(MainWindow &window, const QString &folder) : m_window(window), m_folder(folder) { QDir().mkpath(folder); }

    void picture(const QString &what) {
        QTest::qWait(60);
        m_window.grab().save(u"%1/%2-%3.png"_s.arg(m_folder).arg(++m_number, 2, 10, QLatin1Char('0')).arg(what));
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
    QString m_folder;
    int m_number = 0;
};

/// Takes a panel by its middle and moves it by some pixels; the button stays down.
QPoint takeAndMove(Canvas &canvas, int cut, QPoint by) {
    const QPoint from = canvas.cutRect(cut).center().toPoint();
    QTest::mousePress(canvas.viewport(), Qt::LeftButton, {}, from);
    for (int i = 1; i <= 6; ++i) moveMouse(canvas.viewport(), from + by * i / 6);
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

} // namespace

int main(int argc, char **argv) {
    if (qEnvironmentVariableIsEmpty("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QApplication application(argc, argv);
    const QStringList arguments = application.arguments();
    if (arguments.size() < 2) {
        std::fputs("usage: ui_walk FOLDER [SAMPLE] [WIDTHxHEIGHT] [dark] [TEXT%]\n", stderr);
        return 2;
    }
    WindowFixture fixture;
    QSize size(1440, 900);
    QString sample = u"striped-settee"_s;
    auto look = Preferences::Look::Light;
    int text = 100;
    bool answers = false;
    for (const QString &argument : arguments.mid(2)) {
        const QStringList sides = argument.split(u'x');
        if (argument == u"answers"_s)
            answers = true;
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
    (answers ? walkAnswers : walk)(window, arguments[1], u":/boltwright/samples/%1.boltwright"_s.arg(sample));
    fixture.leave();
    return 0;
}
