// Cloth that is there and does not do: what the window says, what it offers, and leave that is given on the spot; by
// real mouse and key events.

#include "core/check/check.h"
#include "core/edit/job_edit.h"
#include "tests/ui/window_fixture.h"
#include "ui/answers/ask_page.h"
#include "ui/answers/runs_page.h"
#include "ui/answers/ways_page.h"
#include "ui/canvas/canvas.h"
#include "ui/models/leave_table_model.h"
#include "ui/panes/standing_pane.h"
#include "ui/picture/layout_card.h"
#include "ui/window/notice_bar.h"
#include "ui/window/over_sheet.h"

#include <QFile>
#include <QLabel>
#include <QRegularExpression>
#include <QTest>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

using namespace literals;
using ConcededKind = Concession::Kind;

namespace {

/// Two seats, each alone across a bolt of which there is so much: 23 in each as cut, and a quarter between them.
Job onBolt(std::optional<Length> there) {
    Job job = newJob(Unit::Inch);
    Cloth &cloth = job.cloths.front();
    cloth.id = "body";
    cloth.bolt->length = there;
    cloth.bolt->square = Length{};
    job.gap = 0.25_in;
    Panel seat;
    seat.id = "seat";
    seat.mark = "ST";
    seat.name = "Seat";
    seat.shape = Rectangle{40_in, 19_in};
    seat.allow.assign(4, 2_in);
    seat.allowMin.assign(4, std::nullopt);
    seat.count = 2;
    job.panels = {seat};
    return job;
}

} // namespace

class ShortClothTest : public QObject {
    Q_OBJECT

private:
    std::unique_ptr<WindowFixture> m_fixture;
    MainWindow *m_window = nullptr;

    JobDocument &document() { return m_window->document(); }
    QString notice() { return m_window->notice().sentence(); }

    template <class Page>
    Page *open(ActionId id) {
        m_window->actions()[id]->trigger();
        QTest::qWait(10);
        return qobject_cast<Page *>(m_window->sheet().content());
    }
    template <class Page>
    Page *shown() {
        QTest::qWait(10);
        return qobject_cast<Page *>(m_window->sheet().content());
    }
    bool waitForAnswer(QuestionPage *page) {
        return waitFor([page] { return !page->answering().isRunning(); }, 60000);
    }
    QString textIn(QWidget *widget) {
        QStringList all;
        for (QLabel *label : widget->findChildren<QLabel *>()) all << label->text();
        return all.join(u'|');
    }
    /// Plans by the button until it is done.
    void plan(double seconds) {
        m_window->planOptions().seconds = seconds;
        m_window->actions()[ActionId::Plan]->trigger();
        QVERIFY(waitFor([this] { return !m_window->planning().isRunning(); }, 30000));
    }
    QString figures() {
        QStringList all;
        for (QLabel *label : m_window->standingPane().findChildren<QLabel *>())
            if (label->accessibleName() == u"Figures of this layout"_s) all << label->text();
        return all.join(u'|').remove(QRegularExpression(u"<[^>]*>"_s));
    }

private Q_SLOTS:
    void init() {
        m_fixture = std::make_unique<WindowFixture>();
        m_window = &m_fixture->show();
    }
    void cleanup() { m_fixture.reset(); }

    void aBoltThatIsShortIsToldHowMuchMoreWouldDo() {
        document().startWith(onBolt(40_in));
        auto *page = open<AskPage>(ActionId::AskFor);
        page->setSecondsEach(0.2);
        page->model()->setCloths({54_in}, {{}});
        QTest::mouseClick(page->askButton(), Qt::LeftButton);
        QVERIFY(waitForAnswer(page));
        const QString said = textIn(page);
        QVERIFY2(
            said.contains(u"The bolt would do if it were 6 ¼ in longer, and with less it will not: this is proved. "
                          u"Ask for ¼ yd more, in one length with it."_s),
            qPrintable(said));
        page->step()->setCurrentIndex(2); // sold by the half yard
        QVERIFY2(textIn(page).contains(u"Ask for ½ yd more"_s), qPrintable(textIn(page)));
    }

    void whatDoesNotFitIsToldWithWhatCanBeDoneAndHowFarOffItIs() {
        document().startWith(onBolt(40_in));
        plan(1);
        QVERIFY(!notice().isEmpty());
        const auto buttons = m_window->notice().answers();
        QStringList offered;
        for (QPushButton *button : buttons)
            if (button->isVisible()) offered << button->text();
        QCOMPARE(offered, (QStringList{u"Ways to fit"_s, u"How much more"_s, u"As it falls best"_s, u"Close"_s}));
        QVERIFY2(waitFor([this] { return notice().contains(u"6 ¼ in longer"_s); }, 10000), qPrintable(notice()));
        QVERIFY(notice().contains(u"Ask for ¼ yd more"_s));
    }

    void whatWasSaidOfTheJobAsItWasGoesWithTheNextChange() {
        document().startWith(onBolt(40_in));
        plan(0.5);
        QVERIFY(!notice().isEmpty());
        Job job = document().job();
        job.panels.front().count = 1;
        QVERIFY(document().changeJob(std::move(job), u"One"_s));
        QVERIFY2(notice().isEmpty(), qPrintable(notice()));
    }

    void theNextStepIsTakenByKeyboardAlone() {
        document().startWith(onBolt(40_in));
        m_window->canvas().setFocus();
        plan(0.5);
        const auto buttons = m_window->notice().answers();
        QVERIFY2(buttons[0]->hasFocus(), "where nobody types elsewhere, the first button has the keyboard");
        QTest::keyClick(buttons[0], Qt::Key_Tab);
        QVERIFY(buttons[1]->hasFocus());
        QTest::keyClick(buttons[1], Qt::Key_Backtab);
        QTest::keyClick(buttons[0], Qt::Key_Space);
        auto *ways = shown<WaysPage>();
        QVERIFY(ways);
        // It is asked at once; without any leave the answer is soon there.
        QTRY_VERIFY_WITH_TIMEOUT(ways->leaveSheet(), 20000);
        m_window->sheet().close();
        plan(0.5);
        buttons[2]->setFocus();
        QTest::keyClick(buttons[2], Qt::Key_Space);
        QVERIFY(shown<RunsPage>());
        m_window->sheet().close();
        plan(0.5);
        QTest::keyClick(buttons[0], Qt::Key_Escape);
        QVERIFY(notice().isEmpty());
        QVERIFY(m_window->canvas().hasFocus());
    }

    void clothOnHandIsNotToBeBought() {
        document().startWith(onBolt(90_in));
        plan(0.5);
        QCOMPARE(document().layout().cuts.size(), std::size_t(2));
        const QString there = figures();
        QVERIFY2(there.contains(u"on hand2 yd 18 in"_s) && there.contains(u"left over1 yd 7 ¾ in"_s),
                 qPrintable(there));
        QVERIFY2(!there.contains(u"buy"_s), qPrintable(there));
        document().startWith(onBolt({}));
        plan(0.5);
        const QString bought = figures();
        QVERIFY2(bought.contains(u"buy1 ½ yd"_s) && !bought.contains(u"on hand"_s), qPrintable(bought));
    }

    void leaveIsGivenWhereNothingFitsAsOneStepAndTheSearchGoesOn() {
        document().startWith(onBolt(44_in)); // two trims of 1 in each, and some
        auto *page = open<WaysPage>(ActionId::WaysToFit);
        page->setSeconds(1);
        QTest::mouseClick(page->askButton(), Qt::LeftButton);
        QVERIFY(waitForAnswer(page));
        LeaveSheet *leave = page->leaveSheet();
        QVERIFY2(leave, "where nothing fits for want of leave, it is given there");
        QTRY_VERIFY(leave->isVisible());
        QVERIFY(!leave->giveButton()->isEnabled());
        // By keyboard: the first field is "every part, trim".
        leave->table()->setFocus();
        const QModelIndex trim = leave->model()->index(0, 0);
        leave->table()->setCurrentIndex(trim);
        QTest::keyClick(leave->table(), Qt::Key_Space);
        QCOMPARE(trim.data(Qt::CheckStateRole).toInt(), int(Qt::Checked));
        QCOMPARE(leave->model()->index(1, 0).data(Qt::CheckStateRole).toInt(), int(Qt::Checked));
        QVERIFY2(leave->model()->meaningOf(leave->model()->index(1, 0)).contains(u"top edge from 2 in to 1 in"_s),
                 qPrintable(leave->model()->meaningOf(leave->model()->index(1, 0))));
        QVERIFY(leave->giveButton()->isEnabled());
        QTest::keyClick(leave->giveButton(), Qt::Key_Space);
        QCOMPARE(document().history()->count(), 1);
        QVERIFY(document().job().panels.front().leastAllowance(Top) == 1_in);
        QVERIFY(waitForAnswer(page));
        const auto cards = page->findChildren<LayoutCard *>();
        QVERIFY2(!cards.isEmpty(), qPrintable(textIn(page)));
        QVERIFY(textIn(cards.front()).contains(u"Checked: every rule holds."_s));
        m_window->sheet().close();
        m_window->actions()[ActionId::Undo]->trigger();
        QVERIFY(document().job().panels.front().leastAllowance(Top) == 2_in);
    }

    void leaveCanBeSeenAndTakenBackAtAnyTime() {
        Job job = onBolt(90_in);
        job.panels.front().may.turn = true;
        job.panels.front().allowMin.assign(4, 1.75_in); // finer than a tick
        document().startWith(job);
        auto *page = open<WaysPage>(ActionId::WaysToFit);
        QTest::mouseClick(page->leaveButton(), Qt::LeftButton);
        LeaveSheet *leave = page->leaveSheet();
        QVERIFY(leave);
        LeaveTableModel *model = leave->model();
        int turn = 0;
        while (LeaveTableModel::kindOf(turn) != ConcededKind::Turn) ++turn;
        QCOMPARE(model->index(1, turn).data(Qt::CheckStateRole).toInt(), int(Qt::Checked));
        QVERIFY(model->setData(model->index(1, turn), Qt::Unchecked, Qt::CheckStateRole));
        // Off and on again is as it was.
        QVERIFY(model->setData(model->index(1, 0), Qt::Unchecked, Qt::CheckStateRole));
        QVERIFY(model->setData(model->index(1, 0), Qt::Checked, Qt::CheckStateRole));
        const Job after = model->withTicks();
        QVERIFY(!after.panels.front().may.turn);
        QVERIFY(after.panels.front().leastAllowance(Top) == 1.75_in);
        // No edge is tucked in, so there is no tick for a strip, and it says why.
        int strip = 0;
        while (LeaveTableModel::kindOf(strip) != ConcededKind::Stretcher) ++strip;
        QVERIFY(!model->index(1, strip).data(Qt::CheckStateRole).isValid());
        QVERIFY(model->meaningOf(model->index(1, strip)).contains(u"no edge is tucked in"_s));
    }

    void aFileThatIsRefusedIsToldInTheTradesWords() {
        const QString name = m_fixture->folder() + u"/sofa.boltwright"_s;
        QFile file(name);
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write(R"({"boltwright": 1, "unit": "in", "cloths": [{"id": "body", "bolt": {"width": 54}}],
            "panels": [{"id": "ib", "name": "Inside back", "shape": {"kind": "rectangle", "across": 24, "up": 17},
                        "allow": 1, "allow_min": {"top": 2}}]})");
        file.close();
        QVERIFY(!m_window->openFile(name));
        const QString said = notice();
        QVERIFY2(
            said.startsWith(u"sofa.boltwright is not opened. Inside back, least allowance, top: 2 in is more than"_s),
            qPrintable(said));
        QVERIFY2(said.endsWith(u"(In the file: panels[0] 'ib', allow_min.top)"_s), qPrintable(said));
    }
};

} // namespace boltwright::ui

QTEST_MAIN(boltwright::ui::ShortClothTest)
#include "short_cloth_test.moc"
