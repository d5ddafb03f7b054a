// The pages that answer a question, by real mouse and key events: asked, watched, stopped, taken.

#include "core/check/check.h"
#include "core/edit/job_edit.h"
#include "core/figures/figures.h"
#include "tests/ui/file_dialog.h"
#include "tests/ui/window_fixture.h"
#include "ui/answers/ask_page.h"
#include "ui/answers/runs_page.h"
#include "ui/answers/ways_page.h"
#include "ui/answers/why_page.h"
#include "ui/picture/layout_card.h"
#include "ui/picture/staircase_picture.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"
#include "ui/window/over_sheet.h"

#include <QDir>
#include <QElapsedTimer>
#include <QFile>
#include <QFileDialog>
#include <QLineEdit>
#include <QTest>
#include <QTimer>
#include <QXmlStreamReader>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

using namespace literals;
using ConcededKind = Concession::Kind;

namespace {

Panel part(const char *id, Length across, Length up, int count) {
    Panel p;
    p.id = id;
    p.mark = id;
    p.name = std::string("Part ") + id;
    p.shape = Rectangle{across, up};
    p.allow.assign(4, 1.5_in);
    p.allowMin.assign(4, 0.5_in);
    p.count = count;
    return p;
}

/// Two seats that a remnant holds only when an inch is trimmed, or when one goes to other cloth.
Job shortRemnant() {
    Job job = newJob(Unit::Inch);
    Cloth &cloth = job.cloths.front();
    cloth.id = "body";
    cloth.bolt.reset();
    cloth.selvage = Length{};
    Remnant remnant;
    remnant.id = "A";
    remnant.outline = ringOf(ClothBox{{}, {41_in, 22_in}});
    cloth.remnants = {remnant};
    job.gap = Length{};
    Panel seat = part("ST", 18_in, 18_in, 2);
    seat.may.otherCloth.any = true;
    job.panels = {seat};
    return job;
}

/// A chair on a bolt with a repeat: back, seat and arms.
Job chair() {
    Job job = newJob(Unit::Inch);
    Cloth &cloth = job.cloths.front();
    cloth.id = "body";
    Pattern pattern;
    pattern.across = 13.5_in;
    pattern.along = 18_in;
    cloth.pattern = pattern;
    job.panels = {part("IB", 24_in, 28_in, 1), part("ST", 26_in, 24_in, 1), part("IA", 12_in, 22_in, 2)};
    for (int i : {0, 1}) job.panels[std::size_t(i)].motif = MotifWish{};
    return job;
}

/// More parts of odd sizes than any search is done with.
Job manyParts() {
    Job job = newJob(Unit::Inch);
    job.cloths.front().id = "body";
    for (int i = 0; i < 12; ++i)
        job.panels.push_back(
            part(std::string(1, char('A' + i)).c_str(), 7_in + i * 1.3125_in, 19_in - (i * 5 % 12) * 0.8125_in, 3));
    return job;
}

} // namespace

class PagesTest : public QObject {
    Q_OBJECT

private:
    std::unique_ptr<WindowFixture> m_fixture;
    MainWindow *m_window = nullptr;

    JobDocument &document() { return m_window->document(); }

    template <class Page>
    Page *open(ActionId id) {
        m_window->actions()[id]->trigger();
        QTest::qWait(10);
        return qobject_cast<Page *>(m_window->sheet().content());
    }
    void ask(QuestionPage *page) { QTest::mouseClick(page->askButton(), Qt::LeftButton); }
    bool waitForAnswer(QuestionPage *page) {
        return waitFor([page] { return !page->answering().isRunning(); }, 60000);
    }
    QList<LayoutCard *> cards(QWidget *page) {
        QTest::qWait(10); // what was cleared is gone
        return page->findChildren<LayoutCard *>();
    }
    QString textIn(QWidget *widget) {
        QStringList all;
        for (QLabel *label : widget->findChildren<QLabel *>()) all << label->text();
        return all.join(u'|');
    }

private Q_SLOTS:
    void init() {
        m_fixture = std::make_unique<WindowFixture>();
        m_window = &m_fixture->show();
    }
    void cleanup() { m_fixture.reset(); }

    // Ways to make it do.

    void waysStandSideBySideWithPictureWordsAndCheckAndOneIsTaken() {
        document().startWith(shortRemnant());
        auto *page = open<WaysPage>(ActionId::WaysToFit);
        page->setSeconds(1.5);
        ask(page);
        QVERIFY(waitForAnswer(page));
        const auto all = cards(page);
        QVERIFY2(all.size() >= 2, "trimmed, and one seat from other cloth");
        for (LayoutCard *card : all) {
            QVERIFY(card->findChild<LayoutThumbnail *>());
            QVERIFY2(textIn(card).contains(u"Checked: every rule holds."_s), qPrintable(textIn(card)));
        }
        QVERIFY(textIn(all[0]) != textIn(all[1]));
        QVERIFY2(textIn(all[0]).contains(u"edge from 1 ½ in to"_s), qPrintable(textIn(all[0])));
        QTest::mouseClick(all[0]->takeButton(), Qt::LeftButton);
        QVERIFY(m_window->sheet().isHidden());
        QCOMPARE(document().layout().cuts.size(), std::size_t(2));
        QVERIFY(!document().layout().conceded.empty());
        QVERIFY(check(document().job(), document().layout()).empty());
        QCOMPARE(document().history()->count(), 1);
        m_window->actions()[ActionId::Undo]->trigger();
        QVERIFY(document().layout().cuts.empty());
    }

    void aTickWithoutLeaveIsToldWhereNothingFits() {
        Job job = shortRemnant();
        Panel &seat = job.panels.front();
        seat.allowMin.assign(4, std::nullopt);
        seat.may.otherCloth.any = false;
        document().startWith(job);
        auto *page = open<WaysPage>(ActionId::WaysToFit);
        page->setSeconds(1);
        ask(page);
        QVERIFY(waitForAnswer(page));
        QVERIFY(cards(page).isEmpty());
        const QString said = textIn(page);
        QVERIFY2(said.contains(u"With what its parts may give up it does not fit"_s), qPrintable(said));
        QVERIFY2(said.contains(u"No part has leave for this yet: Trim an allowance, "_s), qPrintable(said));
        m_window->sheet().close();
        // Where leave was given and is not enough, that kind is not named.
        seat.may.turn = true;
        document().startWith(job);
        page = open<WaysPage>(ActionId::WaysToFit);
        page->setSeconds(1);
        ask(page);
        QVERIFY(waitForAnswer(page));
        const QString then = textIn(page);
        QVERIFY2(cards(page).isEmpty() && then.contains(u"No part has leave"_s), qPrintable(then));
        QVERIFY2(!then.contains(u"turn a part the other way"_s), qPrintable(then));
    }

    void theOrderIsDraggedAndRemembered() {
        document().startWith(shortRemnant());
        auto *page = open<WaysPage>(ActionId::WaysToFit);
        QVERIFY(page->order().front() == ConcededKind::Trim);
        OrderList *list = page->list();
        const auto middle = [&](int row) { return list->visualRect(list->model()->index(row, 0)).center(); };
        QTest::mousePress(list->viewport(), Qt::LeftButton, {}, middle(0));
        for (int row = 0; row <= 2; ++row) moveMouse(list->viewport(), middle(row));
        QTest::mouseRelease(list->viewport(), Qt::LeftButton, {}, middle(2));
        QVERIFY(page->order()[2] == ConcededKind::Trim);
        QCOMPARE(page->order().size(), std::size_t(6));
        m_window->sheet().close();
        page = open<WaysPage>(ActionId::WaysToFit);
        QVERIFY(page->order()[2] == ConcededKind::Trim);
    }

    void theOrderIsMovedAndTickedByKeyboardAndObeyed() {
        document().startWith(shortRemnant());
        auto *page = open<WaysPage>(ActionId::WaysToFit);
        OrderList *list = page->list();
        list->setFocus();
        list->setCurrentIndex(list->model()->index(2, 0)); // cut from other cloth
        QTest::keyClick(list, Qt::Key_Up, Qt::AltModifier);
        QTest::keyClick(list, Qt::Key_Up, Qt::AltModifier);
        QVERIFY(page->order().front() == ConcededKind::OtherCloth);
        QTest::keyClick(list, Qt::Key_Down); // the trim, now second
        QTest::keyClick(list, Qt::Key_Space);
        QVERIFY(std::ranges::count(page->order(), ConcededKind::Trim) == 0);
        page->setSeconds(1);
        QTest::keyClick(page->askButton(), Qt::Key_Space);
        QVERIFY(waitForAnswer(page));
        for (LayoutCard *card : cards(page)) QVERIFY(!textIn(card).contains(u"edge from"_s));
        QVERIFY(!cards(page).isEmpty());
        QTest::keyClick(cards(page).front()->takeButton(), Qt::Key_Space);
        QCOMPARE(document().layout().leftOut.size(), std::size_t(1));
    }

    void leastClothOrFewestPartsIsChosenAndRemembered() {
        document().startWith(shortRemnant());
        auto *page = open<WaysPage>(ActionId::WaysToFit);
        page->within()->setFocus();
        QTest::keyClick(page->within(), Qt::Key_Down);
        m_window->sheet().close();
        QCOMPARE(open<WaysPage>(ActionId::WaysToFit)->within()->currentIndex(), 1);
    }

    void stoppedAtOnceItKeepsWhatItHasFoundAndTheWindowStaysAlive() {
        document().startWith(shortRemnant());
        auto *page = open<WaysPage>(ActionId::WaysToFit);
        page->setSeconds(600);
        ask(page);
        QVERIFY(page->answering().isRunning());
        // While it works the window is the user's: the list can be put in another order, time and again.
        page->list()->setFocus();
        page->list()->setCurrentIndex(page->list()->model()->index(0, 0));
        for (int i = 0; i < 20; ++i) {
            QTest::keyClick(page->list(), i % 2 ? Qt::Key_Up : Qt::Key_Down, Qt::AltModifier);
            QCoreApplication::processEvents();
        }
        QVERIFY(page->answering().isRunning());
        QTest::qWait(300);
        QTest::mouseClick(page->stopButton(), Qt::LeftButton);
        QVERIFY2(waitFor([page] { return !page->answering().isRunning(); }, 10000), "long before the ten minutes");
        QVERIFY(!cards(page).isEmpty());
    }

    void aChangeOfTheJobDropsTheQuestion() {
        document().startWith(shortRemnant());
        auto *page = open<WaysPage>(ActionId::WaysToFit);
        page->setSeconds(600);
        ask(page);
        Job job = document().job();
        job.gap = 1_in;
        document().changeJob(std::move(job), u"Gap"_s);
        QVERIFY(!page->answering().isRunning());
        QVERIFY(page->askButton()->isEnabled());
    }

    void closingThePageEndsItsQuestion() {
        document().startWith(shortRemnant());
        auto *page = open<WaysPage>(ActionId::WaysToFit);
        page->setSeconds(600);
        ask(page);
        QTest::keyClick(page, Qt::Key_Escape);
        QVERIFY(m_window->sheet().isHidden());
    }

    // What was found stays.

    void waysStandThereAgainWhenThePageIsOpenedAgain() {
        document().startWith(shortRemnant());
        auto *page = open<WaysPage>(ActionId::WaysToFit);
        page->setSeconds(1);
        ask(page);
        QVERIFY(waitForAnswer(page));
        const QString before = textIn(cards(page).front());
        QTest::keyClick(page, Qt::Key_Escape);
        page = open<WaysPage>(ActionId::WaysToFit);
        QVERIFY(!cards(page).isEmpty());
        QCOMPARE(textIn(cards(page).front()), before);
        QVERIFY2(textIn(page).contains(u"the job is still the same"_s), qPrintable(textIn(page)));
        QTest::mouseClick(cards(page).front()->takeButton(), Qt::LeftButton);
        QVERIFY(check(document().job(), document().layout()).empty());
    }

    void aChangedJobIsToldAndItsOldAnswerGoneUntilTheChangeIsUndone() {
        document().startWith(shortRemnant());
        auto *page = open<WaysPage>(ActionId::WaysToFit);
        page->setSeconds(0.5);
        ask(page);
        QVERIFY(waitForAnswer(page));
        QVERIFY(!cards(page).isEmpty());
        Job job = document().job();
        job.gap = 0.5_in;
        document().changeJob(std::move(job), u"Gap"_s); // while the page is open
        QVERIFY(cards(page).isEmpty());
        QVERIFY2(textIn(page).contains(u"The job has changed since"_s), qPrintable(textIn(page)));
        m_window->sheet().close();
        page = open<WaysPage>(ActionId::WaysToFit);
        QVERIFY(cards(page).isEmpty());
        QVERIFY(textIn(page).contains(u"The job has changed since"_s));
        m_window->sheet().close();
        m_window->actions()[ActionId::Undo]->trigger();
        QVERIFY(!cards(open<WaysPage>(ActionId::WaysToFit)).isEmpty());
        // Of another job nothing was ever asked.
        m_window->sheet().close();
        document().startWith(chair());
        page = open<WaysPage>(ActionId::WaysToFit);
        QVERIFY(cards(page).isEmpty());
        QVERIFY(!textIn(page).contains(u"has changed"_s));
    }

    void whatWasFoundUntilThePageWasClosedIsKept() {
        document().startWith(shortRemnant());
        auto *page = open<WaysPage>(ActionId::WaysToFit);
        page->setSeconds(600);
        ask(page);
        QTest::qWait(500);
        QElapsedTimer closing;
        closing.start();
        QTest::keyClick(page, Qt::Key_Escape);
        QTest::qWait(10);
        QVERIFY2(closing.elapsed() < 10000, "long before the ten minutes");
        QVERIFY(!cards(open<WaysPage>(ActionId::WaysToFit)).isEmpty());
    }

    void runsStairsAndTheTableStayToo() {
        document().startWith(chair());
        auto *runs = open<RunsPage>(ActionId::HowToRun);
        runs->setSeconds(0.4);
        ask(runs);
        QVERIFY(waitForAnswer(runs));
        const qsizetype count = cards(runs).size();
        QVERIFY(count > 0);
        m_window->sheet().close();
        QCOMPARE(cards(open<RunsPage>(ActionId::HowToRun)).size(), count);
        m_window->sheet().close();

        auto *why = open<WhyPage>(ActionId::Why);
        why->setSeconds(0.5);
        ask(why);
        QVERIFY(waitForAnswer(why));
        m_window->sheet().close();
        QVERIFY(open<WhyPage>(ActionId::Why)->stairs());
        m_window->sheet().close();

        auto *table = open<AskPage>(ActionId::AskFor);
        table->setSecondsEach(0.05);
        table->model()->setCloths({54_in, 66_in}, {{}});
        table->reserve()->setFocus();
        table->reserve()->selectAll();
        QTest::keyClicks(table->reserve(), u"1/2 yd"_s);
        QTest::keyClick(table->reserve(), Qt::Key_Return);
        table->step()->setCurrentIndex(2);
        ask(table);
        QVERIFY(waitForAnswer(table));
        const QString said = table->model()->index(1, 2).data().toString();
        m_window->sheet().close();
        table = open<AskPage>(ActionId::AskFor);
        QCOMPARE(table->model()->widths().size(), std::size_t(2));
        QCOMPARE(table->model()->index(1, 2).data().toString(), said);
        QCOMPARE(table->reserve()->length()->ticks(), (18_in).ticks());
        QCOMPARE(table->step()->currentIndex(), 2);
        m_window->sheet().close();
        // The table is the user's and stays, whatever becomes of the job; its answers do not.
        Job job = document().job();
        job.panels.front().count = 2;
        document().changeJob(std::move(job), u"Two"_s);
        table = open<AskPage>(ActionId::AskFor);
        QCOMPARE(table->model()->widths().size(), std::size_t(2));
        QVERIFY(!table->model()->answerAt(table->model()->index(1, 2)));
        QVERIFY2(textIn(table).contains(u"The job has changed since"_s), qPrintable(textIn(table)));
    }

    void whatIsDoneOtherwiseStandsInTheField() {
        Job job = newJob(Unit::Inch);
        job.cloths.front().id = "body";
        Panel back = part("OB", 47_in, 28_in, 1), wide = part("IB", 67_in, 28_in, 1);
        back.motif = MotifWish{};
        job.panels = {back, wide};
        document().startWith(job);
        auto *page = open<AskPage>(ActionId::AskFor);
        page->setSecondsEach(0.1);
        page->model()->setCloths({54_in}, {AskTableModel::Kind{27_in, false, false}});
        ask(page);
        QVERIFY(waitForAnswer(page));
        const QModelIndex field = page->model()->index(1, 1);
        const QString said = field.data().toString();
        QVERIFY2(said.contains(u" yd\ncentred between two motifs, 2 joins"_s), qPrintable(said));
        page->table()->setCurrentIndex(field);
        QVERIFY2(page->detail().contains(u"Part IB: 2 joins, a full width in the centre"_s),
                 qPrintable(page->detail()));
    }

    void aSlantedPartWiderThanTheClothIsToldInItsField() {
        Job job = newJob(Unit::Inch);
        job.cloths.front().id = "body";
        Panel back = part("OB", 62_in, 28_in, 1);
        back.shape = Trapezoid{62_in, 58_in, 28_in, {}};
        job.panels = {back};
        document().startWith(job);
        auto *page = open<AskPage>(ActionId::AskFor);
        page->setSecondsEach(0.1);
        page->model()->setCloths({54_in, 72_in}, {{}});
        ask(page);
        QVERIFY(waitForAnswer(page));
        const QString narrow = page->model()->index(1, 1).data().toString(),
                      wide = page->model()->index(1, 2).data().toString();
        QCOMPARE(narrow, u"cannot be\nPart OB: wider than the cloth as one piece; join it and ask again"_s);
        QVERIFY2(wide.endsWith(u" yd"_s), qPrintable(wide));
    }

    void clothThatDoesAsAskedNeedsNothing() {
        Job job = shortRemnant();
        job.cloths.front().remnants.front().outline = ringOf(ClothBox{{}, {42_in, 22_in}});
        document().startWith(job);
        auto *page = open<WaysPage>(ActionId::WaysToFit);
        page->setSeconds(0.5);
        ask(page);
        QVERIFY(waitForAnswer(page));
        QVERIFY(textIn(page).contains(u"nothing is given up"_s));
    }

    // How to run it.

    void theRunsStandSideBySideAndOneClickTakesOne() {
        Job job = newJob(Unit::Inch);
        job.cloths.front().id = "body";
        Panel back = part("IB", 84_in, 30_in, 1);
        back.allow.assign(4, Length{});
        back.allowMin.assign(4, std::nullopt);
        back.pieces.most = 3;
        back.pieces.seam = 0.5_in;
        back.pieces.shortest = 12_in;
        job.panels = {back};
        document().startWith(job);
        auto *page = open<RunsPage>(ActionId::HowToRun);
        page->setSeconds(0.8);
        ask(page);
        QVERIFY(waitForAnswer(page));
        const auto all = cards(page);
        QCOMPARE(all.size(), 4);
        QVERIFY2(textIn(all[1]).contains(u"1 join"_s), qPrintable(textIn(all[1])));
        QVERIFY2(textIn(all[2]).contains(u"no joins"_s), qPrintable(textIn(all[2])));
        QVERIFY(textIn(all[2]).contains(u"buy"_s) && textIn(all[2]).contains(u"waste"_s));
        QVERIFY2(textIn(all[2]).contains(u"Part IB: railroaded instead of up the roll"_s), qPrintable(textIn(all[2])));
        QTest::mouseClick(all[2]->takeButton(), Qt::LeftButton);
        QVERIFY(m_window->sheet().isHidden());
        QVERIFY(document().job().panels[0].run == Run::Railroad);
        QCOMPARE(document().layout().cuts.size(), std::size_t(1));
        QVERIFY(check(document().job(), document().layout()).empty());
        QCOMPARE(document().history()->count(), 1); // run and layout are one step
    }

    void runsStopAtOnceAndKeepThoseThatAreKnown() {
        document().startWith(chair());
        auto *page = open<RunsPage>(ActionId::HowToRun);
        page->setSeconds(600);
        ask(page);
        QTest::qWait(200);
        QTest::keyClick(page->stopButton(), Qt::Key_Space);
        QVERIFY(waitFor([page] { return !page->answering().isRunning(); }, 10000));
        QVERIFY(!cards(page).isEmpty());
    }

    // How much to ask for.

    void theTableOfWidthsAndRepeatsIsTypedOverAndFills() {
        document().startWith(chair());
        auto *page = open<AskPage>(ActionId::AskFor);
        page->setSecondsEach(0.05);
        QTableView *table = page->table();
        AskTableModel *model = page->model();
        const auto type = [&](int row, int column, const QString &text) {
            table->setFocus();
            table->setCurrentIndex(model->index(row, column));
            QTest::keyClick(table, Qt::Key_F2);
            auto *editor = table->findChild<QLineEdit *>();
            QVERIFY(editor);
            editor->selectAll();
            QTest::keyClicks(editor, text);
            QTest::keyClick(editor, Qt::Key_Return);
            QTest::qWait(10);
        };
        const int rows = model->rowCount(), columns = model->columnCount();
        type(0, 1, u"4' 6\""_s);
        QCOMPARE(model->cloths().front().width.ticks(), (54_in).ticks());
        type(0, columns - 1, u"66"_s); // one more
        QCOMPARE(model->columnCount(), columns + 1);
        type(rows - 1, 0, u"19 1/2 half-drop"_s);
        QCOMPARE(model->rowCount(), rows + 1);
        QVERIFY(model->cloths().back().halfDrop);
        QCOMPARE(model->cloths().back().along->ticks(), (19.5_in).ticks());
        type(2, 0, u"elbow"_s); // refused, and the row stays
        QCOMPARE(model->rowCount(), rows + 1);
        QVERIFY(textIn(page).contains(u"elbow is no cloth"_s));
        while (model->columnCount() > 3) {
            table->setCurrentIndex(model->index(0, 1));
            QTest::keyClick(table, Qt::Key_Delete);
        }
        while (model->rowCount() > 4) {
            table->setCurrentIndex(model->index(model->rowCount() - 2, 0));
            QTest::keyClick(table, Qt::Key_Delete);
        }
        QCOMPARE(model->cloths().size(), std::size_t(2));
        ask(page);
        QVERIFY(waitForAnswer(page));
        for (int row : {1, 2}) {
            const QString said = model->index(row, 1).data().toString();
            QVERIFY2(said.endsWith(u" yd"_s), qPrintable(said));
        }
        // The layout behind a field is one click away, with what it is made up of.
        const QPoint at = table->visualRect(model->index(2, 1)).center();
        QTest::mouseClick(table->viewport(), Qt::LeftButton, {}, at);
        QVERIFY2(page->detail().contains(u"first motif"_s), qPrintable(page->detail()));
        QVERIFY(!page->findChild<LayoutThumbnail *>()->isHidden());
    }

    void reserveAndStepAreTheUsers() {
        document().startWith(chair());
        auto *page = open<AskPage>(ActionId::AskFor);
        page->setSecondsEach(0.05);
        page->model()->setCloths({54_in}, {{}});
        page->reserve()->setFocus();
        page->reserve()->selectAll();
        QTest::keyClicks(page->reserve(), u"1/4 yd"_s);
        QTest::keyClick(page->reserve(), Qt::Key_Return);
        ask(page);
        QVERIFY(waitForAnswer(page));
        const QModelIndex field = page->model()->index(1, 1);
        const AskAnswer *answer = page->model()->answerAt(field);
        QVERIFY(answer);
        QCOMPARE(answer->reserve.ticks(), (9_in).ticks());
        page->table()->setCurrentIndex(field);
        for (int step : {0, 1, 2}) {
            page->step()->setCurrentIndex(step);
            const Length buy = page->model()->answerAt(field)->buy;
            const std::int64_t shop = (4.5_in).ticks() << step;
            QVERIFY(buy.ticks() % shop == 0);
            QVERIFY(buy >= answer->planned + 9_in);
            QVERIFY((buy - answer->planned - 9_in).ticks() < shop);
        }
    }

    void theTableStopsAtOnceAndKeepsItsFields() {
        document().startWith(chair());
        auto *page = open<AskPage>(ActionId::AskFor);
        page->setSecondsEach(0.2);
        ask(page);
        QVERIFY(waitFor([page] { return page->model()->answerAt(page->model()->index(1, 1)) != nullptr; }, 30000));
        QTest::mouseClick(page->stopButton(), Qt::LeftButton);
        QVERIFY(waitFor([page] { return !page->answering().isRunning(); }, 10000));
        QVERIFY(page->model()->answerAt(page->model()->index(1, 1)));
    }

    void aShortRemnantIsToldHowMuchMoreWouldDo() {
        Job job = shortRemnant();
        job.panels.front().shape = Rectangle{38_in, 20_in};
        document().startWith(job);
        auto *page = open<AskPage>(ActionId::AskFor);
        page->setSecondsEach(0.1);
        page->model()->setCloths({54_in}, {{}});
        ask(page);
        QVERIFY(waitForAnswer(page));
        // Two cuts of 41 by 23, one above the other: 46 in, of which 22 are there.
        QVERIFY2(textIn(page).contains(u"would do if it were 24 in longer"_s), qPrintable(textIn(page)));
    }

    // Where it goes.

    void theStaircaseIsClimbedByMouseAndByKeyboardAndShowsTheLayoutsBehind() {
        document().startWith(chair());
        auto *page = open<WhyPage>(ActionId::Why);
        page->setSeconds(1);
        ask(page);
        QVERIFY(waitForAnswer(page));
        StaircaseView *stairs = page->stairs();
        QVERIFY(stairs);
        QTest::qWait(30); // painted once, so that it knows where its steps are
        QVERIFY(!page->isLayoutShown());
        QTest::mouseClick(stairs, Qt::LeftButton, {}, QPoint(60, 26));
        QCOMPARE(stairs->chosen(), 0);
        QVERIFY(page->advice().startsWith(u"The parts as measured, bare"_s));
        stairs->setFocus();
        for (int i = 0; i < 8 && !page->isLayoutShown(); ++i) QTest::keyClick(stairs, Qt::Key_Down);
        QVERIFY(page->isLayoutShown());
        QVERIFY(stairs->accessibleDescription().contains(u"Rounding up"_s));
    }

    void theStaircaseStopsAtOnceWithWhatItHas() {
        document().startWith(chair());
        auto *page = open<WhyPage>(ActionId::Why);
        page->setSeconds(600);
        ask(page);
        QTest::qWait(300);
        QTest::mouseClick(page->stopButton(), Qt::LeftButton);
        QVERIFY(waitFor([page] { return !page->answering().isRunning(); }, 10000));
        QVERIFY(page->stairs());
    }

    void theStaircaseIsSavedAsAPictureWhoseStepsAddUp() {
        document().startWith(chair());
        auto *page = open<WhyPage>(ActionId::Why);
        page->setSeconds(1);
        ask(page);
        QVERIFY(waitForAnswer(page));
        const QString file = QDir(m_fixture->folder()).filePath(u"stairs.svg"_s);
        QPushButton *save = nullptr;
        for (QPushButton *button : page->findChildren<QPushButton *>())
            if (button->text().startsWith(u"Save as a picture"_s)) save = button;
        QVERIFY(save);
        QTimer typing;
        connect(&typing, &QTimer::timeout, this, [&] {
            auto *dialog = qobject_cast<QFileDialog *>(QApplication::activeModalWidget());
            if (!dialog) return;
            typing.stop();
            // The ending is put to it. A dialog that does not take the name is closed: the file will be missed below.
            if (!typeName(*dialog, file.chopped(4))) dialog->reject();
        });
        typing.start(20);
        save->setFocus();
        QTest::keyClick(save, Qt::Key_Space);
        QFile saved(file);
        QVERIFY2(saved.open(QIODevice::ReadOnly), qPrintable(textIn(page)));
        QVERIFY2(textIn(page).contains(u"Saved as stairs.svg."_s), qPrintable(textIn(page)));
        // Well-formed, and read back without any of the code that wrote it.
        QXmlStreamReader xml(&saved);
        QStringList words;
        QString root;
        while (!xml.atEnd()) {
            if (xml.readNext() != QXmlStreamReader::StartElement) continue;
            if (root.isEmpty()) root = xml.name().toString();
            if (xml.name() == "text"_L1) words << xml.readElementText(QXmlStreamReader::IncludeChildElements);
        }
        QVERIFY2(!xml.hasError(), qPrintable(xml.errorString()));
        QCOMPARE(root, u"svg"_s);
        const QString all = words.join(u'|');
        const Staircase &found = page->found();
        Length sum;
        for (const Stair &stair : found.stairs) {
            sum += stair.step;
            if (stair.step <= Length{}) continue;
            QVERIFY2(words.contains(shownName(stair.kind)), qPrintable(all));
            QVERIFY2(words.contains(shownStep(stair, Unit::Inch)), qPrintable(all));
        }
        QCOMPARE(sum.ticks(), found.buy.ticks());
        QVERIFY2(words.contains(shownPurchase(found.buy, Unit::Inch)), qPrintable(all));
    }

    // The window while a question is worked out.

    void theWindowTurnsWhileAQuestionIsWorkedOutAndStopBringsWhatWasFound_data() {
        QTest::addColumn<int>("question");
        QTest::newRow("ways to make it do") << int(ActionId::WaysToFit);
        QTest::newRow("how to run it") << int(ActionId::HowToRun);
        QTest::newRow("how much to ask for") << int(ActionId::AskFor);
        QTest::newRow("where the yardage goes") << int(ActionId::Why);
    }
    void theWindowTurnsWhileAQuestionIsWorkedOutAndStopBringsWhatWasFound() {
        QFETCH(int, question);
        const auto id = ActionId(question);
        document().startWith(id == ActionId::WaysToFit ? shortRemnant() : manyParts());
        auto *page = open<QuestionPage>(id);
        QVERIFY(page);
        if (auto *ways = qobject_cast<WaysPage *>(page)) ways->setSeconds(600);
        if (auto *runs = qobject_cast<RunsPage *>(page)) runs->setSeconds(600);
        if (auto *table = qobject_cast<AskPage *>(page)) table->setSecondsEach(600);
        if (auto *why = qobject_cast<WhyPage *>(page)) why->setSeconds(600);
        ask(page);
        // Turns of the window's events, counted and not timed: a window that waits for the answer turns none.
        int turns = 0;
        QTimer turning;
        connect(&turning, &QTimer::timeout, this, [&] { turns += page->answering().isRunning() ? 1 : 0; });
        turning.start(1);
        QVERIFY(waitFor([&] { return turns >= 300 || !page->answering().isRunning(); }, 60000));
        QVERIFY2(page->answering().isRunning(), "nothing is known about a window beside a search that is over");
        QTest::mouseClick(page->stopButton(), Qt::LeftButton);
        QVERIFY(waitFor([page] { return !page->answering().isRunning(); }, 30000));
        if (auto *table = qobject_cast<AskPage *>(page)) {
            const AskTableModel &model = *table->model();
            int known = 0;
            for (int row = 1; row < model.rowCount(); ++row)
                for (int column = 1; column < model.columnCount(); ++column)
                    known += model.answerAt(model.index(row, column)) != nullptr;
            QVERIFY2(known > 0, "what the field in work had found is kept");
        } else if (auto *why = qobject_cast<WhyPage *>(page)) {
            QVERIFY2(why->stairs(), qPrintable(textIn(page)));
        } else {
            QVERIFY2(!cards(page).isEmpty(), qPrintable(textIn(page)));
        }
    }
};

} // namespace boltwright::ui

QTEST_MAIN(boltwright::ui::PagesTest)
#include "pages_test.moc"
