// Paper and the table from the window: pages asked for, seen and kept as PDF; pieces cut, spoiled and planned again, by
// real mouse and key events.

#include "core/check/check.h"
#include "core/edit/job_edit.h"
#include "core/files/job_file.h"
#include "core/paper/words.h"
#include "core/planner/plan.h"
#include "tests/ui/window_fixture.h"
#include "ui/canvas/canvas.h"
#include "ui/document/standing.h"
#include "ui/forms/flaw_form.h"
#include "ui/kept/kept_layouts.h"
#include "ui/paper/cutting_sheet.h"
#include "ui/printing/print_page.h"
#include "ui/widgets/length_edit.h"
#include "ui/window/notice_bar.h"
#include "ui/window/over_sheet.h"

#include <QComboBox>
#include <QFile>
#include <QPrintPreviewWidget>
#include <QPushButton>
#include <QSpinBox>
#include <QTest>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

using namespace literals;

class PaperTest : public QObject {
    Q_OBJECT

private:
    std::unique_ptr<WindowFixture> m_fixture;
    MainWindow *m_window = nullptr;

    JobDocument &document() { return m_window->document(); }
    Canvas &canvas() { return m_window->canvas(); }
    const Cut &cut(int i) { return document().layout().cuts.at(std::size_t(i)); }
    void key(Qt::Key k, Qt::KeyboardModifiers keys = {}) { QTest::keyClick(&canvas(), k, keys); }
    QPoint middleOf(int i) { return canvas().cutRect(i).center().toPoint(); }

    /// Two seats and a back on plain cloth.
    void open() {
        Job job = newJob(Unit::Inch);
        job.card.title = "Window bench";
        job.cloths.front().way = Way::Two;
        job.cloths.front().bolt->square = Length{};
        Panel seat;
        seat.id = "seat";
        seat.mark = "ST";
        seat.name = "Seat";
        seat.shape = Rectangle{19_in, 23_in};
        seat.allow.assign(4, 0.5_in);
        seat.allowMin.assign(4, std::nullopt);
        seat.count = 3;
        job.panels = {seat};
        Layout layout;
        for (int copy : {1, 2, 3}) {
            Cut cut;
            cut.panel = "seat";
            cut.copy = copy;
            cut.x = 0.5_in + (copy == 2 ? 1 : 0) * 20.25_in;
            cut.y = copy == 3 ? 24.25_in : Length{};
            layout.cuts.push_back(cut);
        }
        job.layouts = {layout};
        job = withLayoutsFollowing(job, job);
        const QString name = m_fixture->folder() + u"/bench.boltwright"_s;
        QVERIFY(bool(saveJob(job, name.toStdString())));
        QVERIFY(m_window->openFile(name));
        PlanOptions &options = m_window->planOptions();
        options.seconds.reset();
        options.steps = 100;
    }

    void markCut(int i) {
        QTest::mouseClick(canvas().viewport(), Qt::LeftButton, {}, middleOf(i));
        key(Qt::Key_C);
        QCOMPARE(int(cut(i).state), int(CutState::Cut));
    }

    /// The choice field beside which that label stands.
    template <class Field>
    Field *field(QWidget *page, const QString &item) {
        for (Field *one : page->findChildren<Field *>())
            if (one->findText(item) >= 0) return one;
        return nullptr;
    }
    void choose(QWidget *page, const QString &item) {
        auto *box = field<QComboBox>(page, item);
        QVERIFY2(box, qPrintable(item));
        box->setFocus();
        const int wanted = box->findText(item);
        while (box->currentIndex() < wanted) QTest::keyClick(box, Qt::Key_Down);
        while (box->currentIndex() > wanted) QTest::keyClick(box, Qt::Key_Up);
        QCOMPARE(box->currentText(), item);
    }

private Q_SLOTS:
    void init() {
        m_fixture = std::make_unique<WindowFixture>();
        m_window = &m_fixture->show();
        open();
    }
    void cleanup() {
        m_fixture->leave();
        m_fixture.reset();
    }

    void whatIsCutMovesNeitherByMouseNorByKeyNorByPlanning() {
        markCut(0);
        const Cut before = cut(0);
        const QPoint from = middleOf(0);
        QTest::mousePress(canvas().viewport(), Qt::LeftButton, {}, from);
        for (int i = 1; i <= 5; ++i) moveMouse(canvas().viewport(), from + QPoint(20 * i, 10 * i));
        QTest::mouseRelease(canvas().viewport(), Qt::LeftButton, {}, from + QPoint(100, 50));
        QCOMPARE(cut(0), before);
        for (Qt::Key k : {Qt::Key_Right, Qt::Key_Up, Qt::Key_R, Qt::Key_L, Qt::Key_Delete}) key(k);
        key(Qt::Key_Right, Qt::ShiftModifier);
        QCOMPARE(cut(0), before);
        m_window->actions()[ActionId::Plan]->trigger();
        QVERIFY(waitFor([&] { return !m_window->planning().isRunning(); }, 30000));
        QCOMPARE(cut(0).x, before.x);
        QCOMPARE(cut(0).y, before.y);
        QCOMPARE(int(cut(0).state), int(CutState::Cut));
    }

    void aCutThatWentWrongIsPlannedAgainAndAFreshSheetIsOffered() {
        markCut(0);
        markCut(1);
        const Cut kept = cut(0), spoiled = cut(1);
        key(Qt::Key_C, Qt::ShiftModifier); // the second is selected
        QVERIFY(waitFor([&] { return !m_window->planning().isRunning(); }, 30000));
        const auto &flaws = document().job().cloths.front().bolt->flaws;
        QCOMPARE(flaws.size(), std::size_t(1));
        QCOMPARE(boxOf(flaws.front().outline).low, (ClothPoint{spoiled.x, spoiled.y}));
        QCOMPARE(cut(0), kept);
        QCOMPARE(document().layout().cuts.size(), std::size_t(3));
        QVERIFY(check(document().job(), document().layout()).empty());
        QPushButton *answer = m_window->notice().answers().front();
        QVERIFY(answer->isVisible());
        QTest::mouseClick(answer, Qt::LeftButton);
        auto *page = qobject_cast<PrintPage *>(m_window->sheet().content());
        QVERIFY(page);
        const auto *sheet = dynamic_cast<const CuttingSheet *>(page->pages().get());
        QVERIFY(sheet);
        QCOMPARE(sheet->drawnFrom(), 1); // one page of changes, then the cloth
        m_window->sheet().close();
        while (document().history()->canUndo() && document().job().layouts.size() > 1)
            m_window->actions()[ActionId::Undo]->trigger();
        QVERIFY(document().job().cloths.front().bolt->flaws.empty());
        QCOMPARE(cut(1), spoiled);
    }

    void nothingIsPrintedToCutByWhereAPanelReachesOffTheClothOrLiesOverAnother() {
        const Job &job = document().job();
        QVERIFY(CuttingSheet::make(job, document().layout()));
        Layout off = document().layout(), over = off;
        off.cuts[0].x = -1_in;
        over.cuts[0].x = over.cuts[1].x;
        over.cuts[0].y = over.cuts[1].y + 1_in;
        for (const Layout &layout : {off, over}) {
            const auto sheet = CuttingSheet::make(job, layout);
            QVERIFY(!sheet);
            QVERIFY2(sheet.error().text.find("cannot be cut: Seat (") != std::string::npos, sheet.error().text.c_str());
        }
    }

    void whatIsCutIsCutInKeptLayoutsToo() {
        document().keepLayout(u"Before lunch"_s);
        markCut(0);
        QCOMPARE(int(document().job().layouts[0].cuts[0].state), int(CutState::Cut));
        // The third is moved before it is cut, so that the layout kept has it elsewhere.
        QTest::mouseClick(canvas().viewport(), Qt::LeftButton, {}, middleOf(2));
        key(Qt::Key_Up);
        QVERIFY(cut(2) != document().job().layouts[0].cuts[2]);
        QVERIFY(CuttingSheet::make(document().job(), document().job().layouts[0]));
        markCut(2);
        QCOMPARE(int(document().job().layouts[0].cuts[2].state), int(CutState::Planned));
        const KeptCard *card = m_window->kept().cards().front();
        QVERIFY2(
            card->accessibleDescription().contains(u"no longer possible: ST 3 is already cut, and lay elsewhere"_s),
            qPrintable(card->accessibleDescription()));
        // Nothing is printed to cut by, and laid on the table it says why.
        const auto sheet = CuttingSheet::make(document().job(), document().job().layouts[0]);
        QVERIFY(!sheet);
        QVERIFY(sheet.error().text.find("no longer possible") != std::string::npos);
        document().setLayoutIndex(0);
        QVERIFY(waitFor([&] {
            const auto &broken = m_window->standing().broken();
            return std::any_of(broken.begin(), broken.end(),
                               [](const Breach &b) { return b.kind == Breach::Kind::AlreadyCut; });
        }));
        // Said not to be cut after all, it is so in both, and both may be taken.
        document().setLayoutIndex(1);
        QTest::mouseClick(canvas().viewport(), Qt::LeftButton, {}, middleOf(2));
        key(Qt::Key_C);
        QCOMPARE(int(cut(2).state), int(CutState::Planned));
        QVERIFY(CuttingSheet::make(document().job(), document().job().layouts[0]));
        m_window->actions()[ActionId::Undo]->trigger();
        QCOMPARE(int(cut(2).state), int(CutState::Cut));
    }

    void aFlawIsEnteredAndWhatLiesOnItMoves() {
        markCut(0);
        const Cut kept = cut(0);
        m_window->actions()[ActionId::FlawFound]->trigger();
        auto *form = qobject_cast<FlawForm *>(m_window->sheet().content());
        QVERIFY(form);
        const auto type = [&](const char *name, const char *text) {
            auto *edit = form->findChild<LengthEdit *>(QString::fromLatin1(name));
            QVERIFY(edit);
            edit->selectAll();
            QTest::keyClicks(edit, QString::fromLatin1(text));
            QTest::keyClick(edit, Qt::Key_Tab);
        };
        type("flawFromSelvage", "25");
        type("flawFromEnd", "10");
        type("flawWidth", "1 1/2");
        type("flawLength", "2");
        QTest::mouseClick(form->findChild<QPushButton *>(u"mainButton"_s), Qt::LeftButton);
        QVERIFY(waitFor([&] { return !m_window->planning().isRunning(); }, 30000));
        QCOMPARE(document().job().cloths.front().bolt->flaws.size(), std::size_t(1));
        QCOMPARE(cut(0), kept);
        QVERIFY(check(document().job(), document().layout()).empty());
    }

    void aJobWithoutATitleIsPrintedUnderItsFilesName() {
        Job job = document().job();
        job.card.title.clear();
        QVERIFY(bool(document().changeJob(job, u"Title"_s)));
        QTest::keyClick(m_window, Qt::Key_P, Qt::ControlModifier);
        auto *page = qobject_cast<PrintPage *>(m_window->sheet().content());
        QVERIFY(page && page->pages());
        QCOMPARE(page->pages()->title(), u"bench · cutting sheet"_s);
        choose(page, u"Labels"_s);
        QCOMPARE(page->pages()->title(), u"bench · labels"_s);
        // A job without a file: the piece stands in.
        Job fresh = job;
        fresh.card.piece = "Window seat";
        QCOMPARE(QString::fromStdString(namedForPaper(fresh, {}).card.title), u"Window seat"_s);
    }

    void everyKindOfPageIsSeenAndKeptAsPdf() {
        QTest::keyClick(m_window, Qt::Key_P, Qt::ControlModifier);
        auto *page = qobject_cast<PrintPage *>(m_window->sheet().content());
        QVERIFY(page);
        page->setSeconds(0);
        const auto kept = [&](const QString &name) {
            const QString file = m_fixture->folder() + u'/' + name;
            if (!page->writePdfTo(file)) return false;
            QFile pdf(file + u".pdf"_s);
            return pdf.open(QIODevice::ReadOnly) && pdf.read(5) == "%PDF-";
        };
        QVERIFY(page->pages());
        QVERIFY(page->findChild<QPrintPreviewWidget *>()->pageCount() >= 2);
        choose(page, u"1:10"_s);
        QCOMPARE(dynamic_cast<const CuttingSheet *>(page->pages().get())->plan().scale, 10);
        choose(page, u"A3"_s);
        choose(page, u"upright"_s);
        QCOMPARE(page->pages()->paper(), sizeOf(Paper::A3));
        QVERIFY(kept(u"sheet"_s));
        choose(page, u"all on one page"_s);
        QCOMPARE(dynamic_cast<const CuttingSheet *>(page->pages().get())->plan().pages.size(), std::size_t(1));
        choose(page, u"Labels"_s);
        QVERIFY(kept(u"labels"_s));
        choose(page, u"of my own"_s);
        auto *columns = page->findChildren<QSpinBox *>().front();
        columns->setFocus();
        columns->setValue(1);
        QVERIFY2(page->pages(), qPrintable(page->refusal()));
        QCOMPARE(m_fixture->preferences().labelGrid().columns, 1); // there again next time
        columns->setValue(20);
        QVERIFY(!page->pages());
        QVERIFY(!page->refusal().isEmpty());
        columns->setValue(1);
        choose(page, u"True size"_s);
        QVERIFY(kept(u"whole"_s));
        choose(page, u"ST · Seat, 2 of 3"_s);
        QVERIFY(kept(u"panel"_s));
        choose(page, u"Client's page"_s);
        QCOMPARE(page->pages()->count(), 1);
        QVERIFY(kept(u"client"_s));
    }
};

} // namespace boltwright::ui

QTEST_MAIN(boltwright::ui::PaperTest)
#include "paper_test.moc"
