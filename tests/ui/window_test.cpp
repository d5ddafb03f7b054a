// The window as its user meets it: real mouse and key events on the offscreen platform.

#include "core/check/check.h"
#include "core/edit/job_edit.h"
#include "core/files/job_file.h"
#include "core/planner/plan.h"
#include "tests/ui/file_dialog.h"
#include "tests/ui/window_fixture.h"
#include "ui/canvas/canvas.h"
#include "ui/document/autosave.h"
#include "ui/document/standing.h"
#include "ui/forms/panel_table.h"
#include "ui/panes/cut_list.h"
#include "ui/panes/standing_pane.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"
#include "ui/widgets/sheet_table.h"
#include "ui/window/notice_bar.h"
#include "ui/window/over_sheet.h"

#include <QAccessible>
#include <QAction>
#include <QApplication>
#include <QDir>
#include <QFile>
#include <QFileDialog>
#include <QLineEdit>
#include <QMenu>
#include <QMessageBox>
#include <QPushButton>
#include <QTest>
#include <QTimer>

#include <memory>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

using namespace literals;

namespace {

/// Two seats and a band on a plain 54 in bolt, both seats laid side by side at the cut end, the band put aside.
Job bench() {
    Job job = newJob(Unit::Inch);
    job.card.title = "Window bench";
    job.cloths.front().id = "body";
    job.cloths.front().way = Way::Two;
    job.cloths.front().bolt->square = Length{};
    const auto panel = [](const char *id, const char *mark, Length across, Length up, int count) {
        Panel p;
        p.id = id;
        p.mark = mark;
        p.name = std::string("Part ") + mark;
        p.shape = Rectangle{across, up};
        p.allow.assign(4, 0.5_in);
        p.allowMin.assign(4, std::nullopt);
        p.count = count;
        return p;
    };
    job.panels = {panel("seat", "ST", 19_in, 23_in, 2), panel("band", "FB", 30_in, 5_in, 1)};
    job.panels.back().run = Run::Either;
    Layout layout;
    for (int copy : {1, 2}) {
        Cut cut;
        cut.panel = "seat";
        cut.copy = copy;
        cut.x = 0.5_in + (copy - 1) * (20_in + 0.25_in);
        cut.y = Length{};
        layout.cuts.push_back(cut);
    }
    job.layouts = {withCopyPutAside(job, layout, {"band", 1})};
    return job;
}

/// Forty parts of sizes that leave waste however they are laid: planning goes on as long as it may.
Job endless() {
    Job job = bench();
    job.layouts.clear();
    job.panels.clear();
    for (int i = 0; i < 40; ++i) {
        Panel p;
        p.id = p.name = "Part " + std::to_string(i + 1);
        p.shape =
            Rectangle{5_in + Length::ticks(8128 * (i * 7 % 19) / 2), 6_in + Length::ticks(8128 * (i * 11 % 23) / 2)};
        job.panels.push_back(p);
    }
    return job;
}

} // namespace

class WindowTest : public QObject {
    Q_OBJECT

private:
    std::unique_ptr<WindowFixture> m_fixture;
    MainWindow *m_window = nullptr;

    JobDocument &document() { return m_window->document(); }
    Canvas &canvas() { return m_window->canvas(); }
    const Cut &cut(int i) { return document().layout().cuts.at(std::size_t(i)); }
    QPoint middleOf(int i) { return canvas().cutRect(i).center().toPoint(); }

    QString writeBench() {
        const QString name = m_fixture->folder() + u"/bench.boltwright"_s;
        if (!saveJob(bench(), name.toStdString())) return {};
        return name;
    }
    void openBench() { QVERIFY(m_window->openFile(writeBench())); }
    void press(QPoint at, Qt::KeyboardModifiers keys = {}) {
        QTest::mousePress(canvas().viewport(), Qt::LeftButton, keys, at);
    }
    void moveTo(QPoint from, QPoint to, Qt::KeyboardModifiers keys = {}) {
        for (int i = 1; i <= 5; ++i) moveMouse(canvas().viewport(), from + (to - from) * i / 5, keys);
    }
    void release(QPoint at, Qt::KeyboardModifiers keys = {}) {
        QTest::mouseRelease(canvas().viewport(), Qt::LeftButton, keys, at);
    }
    void key(Qt::Key k, Qt::KeyboardModifiers keys = {}) { QTest::keyClick(&canvas(), k, keys); }

    /// Answers the next message box by one of its buttons; says whether one came.
    std::shared_ptr<bool> answerNext(QMessageBox::StandardButton button) {
        auto came = std::make_shared<bool>(false);
        QTimer::singleShot(50, this, [came, button] {
            if (auto *box = qobject_cast<QMessageBox *>(QApplication::activeModalWidget())) {
                *came = true;
                box->button(button)->click();
            }
        });
        return came;
    }

    /// Types a name into the next dialog that asks for a file and takes it; empty: leaves it. Says whether one came.
    std::shared_ptr<bool> nameNext(const QString &name) {
        auto came = std::make_shared<bool>(false);
        auto *look = new QTimer(this);
        connect(look, &QTimer::timeout, this, [came, name, look] {
            auto *dialog = qobject_cast<QFileDialog *>(QApplication::activeModalWidget());
            if (!dialog) return;
            look->deleteLater();
            look->stop();
            *came = true;
            if (name.isEmpty() || !typeName(*dialog, name)) dialog->reject();
        });
        look->start(20);
        return came;
    }

private Q_SLOTS:
    void init() {
        m_fixture = std::make_unique<WindowFixture>();
        m_window = &m_fixture->show();
    }
    void cleanup() { m_fixture.reset(); }

    void opensAJobAndShowsItsPanels() {
        openBench();
        QCOMPARE(canvas().table().panels().size(), 2);
        QCOMPARE(m_window->cutList().list()->model()->rowCount(), 2);
        QVERIFY(waitFor([this] { return m_window->standing().verdict() != Standing::Verdict::Waiting; }));
        QVERIFY2(m_window->standingPane().sentences().contains(u"Part FB is put aside."_s),
                 qPrintable(m_window->standingPane().sentences().join(u'|')));
        QVERIFY(!document().isUnsaved());
    }

    void aFileThatIsNoJobIsToldInOneLine() {
        const QString name = m_fixture->folder() + u"/broken.boltwright"_s;
        QFile file(name);
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write("{\"boltwright\": 1, \"unit\": \"elbow\"}");
        file.close();
        openBench();
        QVERIFY(!m_window->openFile(name));
        QVERIFY(m_window->notice().sentence().contains(u"elbow"_s));
        QVERIFY(!m_window->notice().sentence().contains(u'\n'));
        QCOMPARE(document().job().panels.size(), std::size_t(2)); // the job that was open is still there
    }

    void aClickSelectsThePanelAndItsLineInTheList() {
        openBench();
        press(middleOf(1));
        release(middleOf(1));
        QCOMPARE(document().selectedCut(), 1);
        QCOMPARE(m_window->cutList().list()->currentIndex().row(), 0);
        QVERIFY(!document().isUnsaved()); // a click moves nothing
    }

    void aDragComesToRestAtTheNeighboursGapAndIsOneStep() {
        openBench();
        const QPoint from = middleOf(1);
        const Length before = cut(1).y;
        // Up the roll, and not quite beside its neighbour: within reach of the first one's side.
        const QPoint to = from + QPoint(60, 5);
        press(from);
        moveTo(from, to);
        QVERIFY(document().preview().has_value());
        QVERIFY(!document().isUnsaved());
        release(to);
        QVERIFY(!document().preview().has_value());
        QCOMPARE(document().history()->count(), 1);
        QVERIFY(cut(1).y > before);
        QCOMPARE(cut(1).x.ticks(), (0.5_in + 20_in + 0.25_in).ticks());
        QVERIFY(!m_window->standing().isBroken(1));
    }

    void aPanelLetGoOnAnotherRestsWhereItMay() {
        openBench();
        const QPoint from = middleOf(1), to = middleOf(0) + QPoint(6, 4);
        press(from);
        moveTo(from, to);
        QVERIFY(!document().preview()->settled.right); // told while it is held
        QVERIFY(!m_window->standing().firstReason(1).isEmpty());
        release(to);
        QVERIFY2(!m_window->standing().isBroken(1), "it comes to rest where it may lie");
    }

    void withAltItStaysWhereTheHandLetsGoAndIsToldWhy() {
        openBench();
        const QPoint from = middleOf(1), to = middleOf(0) + QPoint(6, 4);
        press(from, Qt::AltModifier);
        moveTo(from, to, Qt::AltModifier);
        release(to, Qt::AltModifier);
        QVERIFY(m_window->standing().isBroken(1));
        bool told = false;
        for (const QString &s : m_window->standingPane().sentences()) told |= s.startsWith(u"Part ST"_s);
        QVERIFY(told);
    }

    void figuresFollowTheHand() {
        openBench();
        const Length before = m_window->standing().figuresOfCloth("body")->length;
        const QPoint from = middleOf(1), to = from + QPoint(120, 0);
        press(from);
        moveTo(from, to);
        QVERIFY(m_window->standing().figuresOfCloth("body")->length > before);
        key(Qt::Key_Escape);
        QCOMPARE(m_window->standing().figuresOfCloth("body")->length.ticks(), before.ticks());
        release(to);
    }

    void escapeLeavesNoTrace() {
        openBench();
        const Job before = document().job();
        const QPoint from = middleOf(1), to = from + QPoint(90, 40);
        press(from);
        moveTo(from, to);
        key(Qt::Key_Escape);
        release(to);
        QVERIFY(document().job() == before);
        QCOMPARE(document().history()->count(), 0);
        QVERIFY(!document().isUnsaved());
    }

    void undoAndRedoSwapTheSameTwoLayouts() {
        openBench();
        const Layout before = document().layout();
        const QPoint from = middleOf(1), to = from + QPoint(80, 0);
        press(from);
        moveTo(from, to);
        release(to);
        const Layout after = document().layout();
        QVERIFY(!(after == before));
        m_window->actions()[ActionId::Undo]->trigger();
        QVERIFY(document().layout() == before);
        QVERIFY(!document().isUnsaved());
        m_window->actions()[ActionId::Redo]->trigger();
        QVERIFY(document().layout() == after);
    }

    void redoIsThereAsSoonAsAStepIsUndoneAndGoneWithTheNextOne() {
        openBench();
        QAction *undo = m_window->actions()[ActionId::Undo], *redo = m_window->actions()[ActionId::Redo];
        document().select(CutName{"seat", 2, 1});
        key(Qt::Key_Right);
        key(Qt::Key_L);
        QCOMPARE(document().history()->count(), 2);
        QVERIFY(undo->isEnabled() && !redo->isEnabled());
        undo->trigger();
        QVERIFY(redo->isEnabled());
        QVERIFY2(redo->text().contains(document().history()->redoText()), qPrintable(redo->text()));
        redo->trigger();
        QVERIFY(!redo->isEnabled());
        undo->trigger();
        key(Qt::Key_L);
        QVERIFY(!redo->isEnabled());
        undo->trigger();
        undo->trigger();
        QVERIFY(!undo->isEnabled());
    }

    void nudgesAreOneStepAndThereAndBackIsNone() {
        openBench();
        document().select(CutName{"seat", 2, 1});
        canvas().setFocus();
        const Length x = cut(1).x, y = cut(1).y;
        key(Qt::Key_Right);
        key(Qt::Key_Right);
        QCOMPARE((cut(1).y - y).ticks(), (0.25_in).ticks());
        QCOMPARE(cut(1).x.ticks(), x.ticks());
        QCOMPARE(document().history()->count(), 1);
        key(Qt::Key_Left);
        key(Qt::Key_Left);
        QCOMPARE(document().history()->count(), 0);
        QVERIFY(!document().isUnsaved());
    }

    void shiftAndArrowGoToTheNextAllowedPlace() {
        openBench();
        document().select(CutName{"seat", 2, 1});
        canvas().setFocus();
        key(Qt::Key_Right, Qt::ShiftModifier);
        // Level with its neighbour ends there is none nearer than just behind the first seat.
        QCOMPARE(cut(1).y.ticks(), (24_in + 0.25_in).ticks());
        QVERIFY(!m_window->standing().isBroken(1));
    }

    void tabGoesFromPanelToPanelAndLeavesAfterTheLast() {
        openBench();
        canvas().setFocus();
        key(Qt::Key_Tab);
        QCOMPARE(document().selectedCut(), 0);
        key(Qt::Key_Tab);
        QCOMPARE(document().selectedCut(), 1);
        key(Qt::Key_Tab, Qt::ShiftModifier);
        QCOMPARE(document().selectedCut(), 0);
        key(Qt::Key_Tab);
        key(Qt::Key_Tab);
        QVERIFY(!canvas().hasFocus());
    }

    void rTurnsToTheNextAllowedTurn() {
        openBench();
        document().select(CutName{"seat", 1, 1});
        canvas().setFocus();
        key(Qt::Key_R);
        QCOMPARE(degrees(cut(0).turn), 180); // cloth with no nap, up the roll: head to foot and nothing else
        key(Qt::Key_R);
        QCOMPARE(degrees(cut(0).turn), 0);
    }

    void lLocksAndALockedPanelStaysWhenDragged() {
        openBench();
        document().select(CutName{"seat", 2, 1});
        canvas().setFocus();
        key(Qt::Key_L);
        QCOMPARE(cut(1).state, CutState::Locked);
        const Cut before = cut(1);
        const QPoint from = middleOf(1), to = from + QPoint(80, 0);
        press(from);
        moveTo(from, to);
        release(to);
        QVERIFY(cut(1) == before);
        key(Qt::Key_L);
        QCOMPARE(cut(1).state, CutState::Planned);
    }

    void deletePutsAsideAndInsertLaysAgain() {
        openBench();
        document().select(CutName{"seat", 2, 1});
        canvas().setFocus();
        key(Qt::Key_Delete);
        QCOMPARE(document().layout().cuts.size(), std::size_t(1));
        document().selectPanel("band");
        key(Qt::Key_Insert);
        QCOMPARE(document().layout().cuts.size(), std::size_t(2));
        QCOMPARE(document().layout().cuts.back().panel, std::string("band"));
        QVERIFY2(!m_window->standing().isBroken(1), qPrintable(m_window->standing().firstReason(1)));
    }

    void dragsIntoTheTrayAndOutOfIt() {
        openBench();
        const QPoint from = middleOf(1), tray(300, canvas().viewport()->height() - 20);
        press(from);
        moveTo(from, tray);
        release(tray);
        QCOMPARE(document().layout().cuts.size(), std::size_t(1));
        QPoint card;
        for (int x = 0; x < canvas().viewport()->width() && card.isNull(); x += 4)
            if (const auto copy = canvas().trayCopyAt(QPoint(x, tray.y())); copy && copy->panel == "seat")
                card = {x, tray.y()};
        QVERIFY(!card.isNull());
        const QPoint onto = middleOf(0) + QPoint(180, 0);
        press(card);
        moveTo(card, onto);
        release(onto);
        QCOMPARE(document().layout().cuts.size(), std::size_t(2));
        QVERIFY(!m_window->standing().isBroken(1));
    }

    void plansEverythingAroundALockedPanel() {
        openBench();
        document().select(CutName{"seat", 2, 1});
        canvas().setFocus();
        key(Qt::Key_L);
        const Cut locked = cut(1);
        m_window->planOptions().seconds.reset();
        m_window->planOptions().steps = 200;
        m_window->actions()[ActionId::Plan]->trigger();
        QVERIFY(waitFor([this] { return !m_window->planning().isRunning(); }, 30000));
        QCOMPARE(document().layout().cuts.size(), std::size_t(3));
        QVERIFY(check(document().job(), document().layout()).empty());
        bool still = false;
        for (const Cut &c : document().layout().cuts)
            still |= c.state == CutState::Locked && c.x == locked.x && c.y == locked.y;
        QVERIFY(still);
        QCOMPARE(document().history()->count(), 2); // the lock, and the plan as one step
    }

    void planningIsDroppedWhenTheJobMovesOn() {
        openBench();
        m_window->planOptions().seconds = 30;
        m_window->actions()[ActionId::Plan]->trigger();
        QVERIFY(m_window->planning().isRunning());
        Job job = document().job();
        job.panels.front().shape = Rectangle{12_in, 12_in};
        document().changeJob(job, u"Change"_s);
        QVERIFY(!m_window->planning().isRunning());
        QVERIFY(!document().preview().has_value());
        QTest::qWait(50);
        QCOMPARE(document().history()->count(), 1);
    }

    void whatIsPlannedSoFarIsShownAndKeptWhenStopped() {
        document().startWith(endless());
        m_window->planOptions().seconds = 60;
        m_window->actions()[ActionId::Plan]->trigger();
        QVERIFY(waitFor([this] { return document().preview().has_value(); }, 20000));
        QVERIFY(m_window->planning().isRunning());
        QCOMPARE(document().layout().cuts.size(), std::size_t(40));
        QVERIFY(document().laidLayout().cuts.empty());
        m_window->actions()[ActionId::Stop]->trigger();
        QVERIFY(!m_window->planning().isRunning());
        QVERIFY(!document().preview().has_value());
        QCOMPARE(document().laidLayout().cuts.size(), std::size_t(40));
        QVERIFY(check(document().job(), document().laidLayout()).empty());
        QCOMPARE(document().history()->count(), 1);
        document().history()->undo();
        QVERIFY(document().laidLayout().cuts.empty());
    }

    void whateverEndsAPreviewTheTableShowsWhatIsThere() {
        openBench();
        Layout less = document().laidLayout();
        less.cuts.erase(less.cuts.begin());
        const auto shown = [this] { return std::size_t(canvas().table().panels().size()); };
        document().showPreview({less, -1, {}});
        QCOMPARE(shown(), document().laidLayout().cuts.size() - 1);
        QVERIFY(document().changeJob(document().job(), u"Nothing"_s));
        QCOMPARE(shown(), document().laidLayout().cuts.size());
        document().showPreview({less, -1, {}});
        Job job = document().job();
        Trimming gimp;
        gimp.kind = Trimming::Kind::Gimp;
        gimp.edges = 80_in;
        job.trimmings.push_back(gimp);
        QVERIFY(document().changeJob(job, u"Trimmings"_s));
        QCOMPARE(shown(), document().laidLayout().cuts.size());
    }

    void takingHoldOfWhatIsPlannedSoFarEndsPlanning() {
        document().startWith(endless());
        m_window->planOptions().seconds = 60;
        m_window->actions()[ActionId::Plan]->trigger();
        QVERIFY(waitFor([this] { return document().preview().has_value(); }, 20000));
        for (int i = 0; i < 40; ++i) QVERIFY(canvas().viewport()->rect().contains(middleOf(i))); // fitted
        const CutName name = nameOf(cut(0));
        const QPoint from = middleOf(0);
        press(from);
        QVERIFY(!m_window->planning().isRunning());
        QCOMPARE(document().laidLayout().cuts.size(), std::size_t(40)); // kept, with this panel in it
        QCOMPARE(document().history()->count(), 1);
        moveTo(from, from + QPoint(60, 40));
        QVERIFY(document().preview().has_value());
        QCOMPARE(nameOf(document().preview()->layout.cuts.at(std::size_t(document().preview()->cut))), name);
        release(from + QPoint(60, 40));
    }

    void aLengthIsEditedInTheTableInAnySpelling() {
        openBench();
        m_window->showPanelTable();
        auto *form = qobject_cast<PanelTable *>(m_window->sheet().content());
        QVERIFY(form);
        const auto type = [&](const QString &text) {
            const QModelIndex field = form->model()->index(0, PanelTableModel::Across);
            form->table()->setCurrentIndex(field);
            form->table()->edit(field);
            auto *editor = form->table()->findChild<QLineEdit *>();
            QVERIFY(editor);
            editor->selectAll();
            QTest::keyClicks(editor, text);
            QTest::keyClick(editor, Qt::Key_Return);
            QTest::qWait(10); // the field is handed over once its own key event is done
        };
        type(u"1' 8 1/2\""_s);
        QCOMPARE(form->refusal(), QString());
        QCOMPARE(std::get<Rectangle>(document().job().panels[0].shape).across.ticks(), (20.5_in).ticks());
        type(u"17,5"_s);
        QCOMPARE(std::get<Rectangle>(document().job().panels[0].shape).across.ticks(), (17.5_in).ticks());
        type(u"seventeen"_s);
        QCOMPARE(std::get<Rectangle>(document().job().panels[0].shape).across.ticks(), (17.5_in).ticks());
        QVERIFY(!form->refusal().isEmpty());
        m_window->actions()[ActionId::Undo]->trigger();
        QCOMPARE(std::get<Rectangle>(document().job().panels[0].shape).across.ticks(), (20.5_in).ticks());
    }

    void whatIsRefusedIsSaidInTheTradesWords() {
        openBench();
        m_window->showPanelTable();
        auto *form = qobject_cast<PanelTable *>(m_window->sheet().content());
        QVERIFY(form);
        const Job before = document().job();
        QVERIFY(!form->model()->setData(form->model()->index(0, PanelTableModel::Motif), u"across"_s));
        QVERIFY2(form->refusal().startsWith(u"Part ST, centred: cloth 'body' has no repeat to centre"_s),
                 qPrintable(form->refusal()));
        QVERIFY(document().job() == before);
        QVERIFY(!document().isUnsaved());
    }

    void clothWhoseRepeatAPanelNeedsIsNotTakenAway() {
        openBench();
        Job job = document().job();
        job.cloths.push_back(newCloth(job));
        job.cloths.back().pattern = Pattern{6_in, {}, {}, {3_in, {}}, {}};
        job.panels[0].cloth = job.cloths.back().id;
        job.panels[0].motif = MotifWish{Centre::Across, {}, {}};
        QVERIFY(document().changeJob(job, u"Stripes"_s));
        job = document().job();
        job.cloths.pop_back();
        const auto done = document().changeJob(job, u"Remove a cloth"_s);
        QVERIFY(!done);
        QVERIFY(document().job().cloths.size() == 2);
    }

    void aLengthFieldRefusesWithAReasonAndStepsWithTheArrows() {
        LengthEdit edit(Unit::Inch, LengthRange::AboveZero);
        edit.setLength(6.5_in);
        QCOMPARE(edit.text(), u"6 1/2"_s);
        QTest::keyClick(&edit, Qt::Key_Up);
        QCOMPARE(edit.length()->ticks(), (6.625_in).ticks());
        edit.clear();
        QTest::keyClicks(&edit, u"0"_s);
        QTest::keyClick(&edit, Qt::Key_Return);
        QVERIFY(!edit.refusal().isEmpty());
        QCOMPARE(edit.length()->ticks(), (6.625_in).ticks());
    }

    void savedAndOpenedAgainItIsTheSameByteForByte() {
        openBench();
        const QPoint from = middleOf(1), to = from + QPoint(70, 0);
        press(from);
        moveTo(from, to);
        release(to);
        QVERIFY(document().isUnsaved());
        QVERIFY(m_window->files().save());
        QVERIFY(!document().isUnsaved());
        const QString name = document().fileName();
        const auto bytes = [&] {
            QFile file(name);
            return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
        };
        const QByteArray first = bytes();
        QVERIFY(m_window->openFile(name));
        QVERIFY(m_window->files().save());
        QCOMPARE(bytes(), first);
    }

    void savedUnderAnotherNameTheWorkGoesOnThere() {
        openBench();
        const QString first = document().fileName();
        const auto bytesOf = [](const QString &name) {
            QFile file(name);
            return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
        };
        const QByteArray before = bytesOf(first);
        const auto putAside = [&](int copy) {
            document().changeLayout(withCopyPutAside(document().job(), document().layout(), {"seat", copy}),
                                    u"Put aside"_s);
        };
        putAside(2);
        // Asked for a name and given none, it saves nothing.
        const auto again = [this] { // the dialog had the keyboard
            m_window->activateWindow();
            QTest::qWait(20);
        };
        const auto cancelled = nameNext({});
        key(Qt::Key_S, Qt::ControlModifier | Qt::ShiftModifier);
        QVERIFY(*cancelled);
        QVERIFY(document().isUnsaved());
        QCOMPARE(document().fileName(), first);
        again();
        const auto named = nameNext(m_fixture->folder() + u"/hall bench"_s);
        key(Qt::Key_S, Qt::ControlModifier | Qt::ShiftModifier);
        QVERIFY(*named);
        const QString second = m_fixture->folder() + u"/hall bench.boltwright"_s; // as its kind is called
        QCOMPARE(document().fileName(), second);
        QVERIFY(!document().isUnsaved());
        QCOMPARE(bytesOf(first), before);
        QVERIFY(bytesOf(second) != before);
        QCOMPARE(m_fixture->preferences().recentFiles().value(0), second);
        // From now on, saving goes to the new file.
        again();
        putAside(1);
        key(Qt::Key_S, Qt::ControlModifier);
        QVERIFY(!document().isUnsaved());
        QCOMPARE(bytesOf(first), before);
        const auto there = loadJob(second.toStdString());
        QVERIFY(there.has_value());
        QVERIFY(there->layouts.front().cuts.empty());
    }

    void whatCannotBeSavedThereIsSaidAndNothingIsLost() {
        openBench();
        const QString first = document().fileName();
        document().changeLayout(withCopyPutAside(document().job(), document().layout(), {"seat", 2}), u"Put aside"_s);
        const QString nowhere = m_fixture->folder() + u"/taken.boltwright"_s;
        QVERIFY(QDir().mkdir(nowhere)); // a folder of that name
        QVERIFY(QFile::exists(nowhere));
        QVERIFY(!document().saveAs(nowhere).has_value());
        QCOMPARE(document().fileName(), first);
        QVERIFY(document().isUnsaved());
    }

    void filesUsedBeforeAreOfferedAndOneThatIsGoneIsForgotten() {
        const QString bench = writeBench(), other = m_fixture->folder() + u"/other.boltwright"_s;
        QVERIFY(QFile::copy(bench, other));
        QVERIFY(m_window->openFile(bench));
        QVERIFY(m_window->openFile(other));
        const auto offered = [this] {
            QStringList names;
            for (QMenu *menu : m_window->findChildren<QMenu *>())
                if (menu->title() == u"Used before"_s)
                    for (QAction *action : menu->actions()) names << action->toolTip();
            return names;
        };
        const auto choose = [this](const QString &file) {
            for (QAction *action : m_window->findChildren<QAction *>())
                if (action->toolTip() == file) return action->trigger();
            QFAIL("it is not offered");
        };
        QCOMPARE(offered(), QStringList({other, bench}));
        choose(bench);
        QCOMPARE(document().fileName(), bench);
        QCOMPARE(offered(), QStringList({bench, other}));

        QVERIFY(QFile::remove(other));
        choose(other);
        QVERIFY(m_window->notice().sentence().contains(u"other.boltwright"_s));
        QCOMPARE(document().fileName(), bench);
        QCOMPARE(offered(), QStringList({bench}));
    }

    void unsavedChangesAreAskedAbout() {
        openBench();
        document().changeLayout(withCopyPutAside(document().job(), document().layout(), {"seat", 2}), u"Put aside"_s);
        const auto cancelled = answerNext(QMessageBox::Cancel);
        QVERIFY(!m_window->close());
        QVERIFY(*cancelled);
        QVERIFY(document().isUnsaved());
        const auto discarded = answerNext(QMessageBox::Discard);
        QVERIFY(m_window->close());
        QVERIFY(*discarded);
    }

    void unsavedWorkIsKeptBesideTheFileAndOfferedAgain() {
        openBench();
        const QString name = document().fileName();
        document().changeLayout(withCopyPutAside(document().job(), document().layout(), {"seat", 2}), u"Put aside"_s);
        const Job lost = document().job();
        Autosave keeper(document());
        keeper.writeNow(); // what a timer does every few seconds
        QVERIFY(QFile::exists(Autosave::copyOf(name)));
        // As after a crash: another window opens the same file.
        WindowFixture second;
        MainWindow &again = second.show();
        QVERIFY(again.openFile(name));
        QVERIFY(again.notice().sentence().contains(u"unsaved work"_s));
        QTest::mouseClick(again.notice().answers().first(), Qt::LeftButton);
        QVERIFY(again.document().job() == lost);
        QVERIFY(again.document().isUnsaved());
        second.leave();
        Autosave::discard(name);
    }

    void aChangeOfTheFileByAnotherProgramIsNoticed() {
        openBench();
        Job other = bench();
        other.card.title = "Changed outside";
        QVERIFY(saveJob(other, document().fileName().toStdString()).has_value());
        QVERIFY(waitFor([this] { return !m_window->notice().sentence().isEmpty(); }));
        QTest::mouseClick(m_window->notice().answers().first(), Qt::LeftButton);
        QCOMPARE(document().job().card.title, std::string("Changed outside"));
    }

    void theListSelectsOnTheCloth() {
        openBench();
        auto *list = m_window->cutList().list();
        QTest::mouseClick(list->viewport(), Qt::LeftButton, {}, list->visualRect(list->model()->index(0, 0)).center());
        QCOMPARE(document().selectedCut(), 0);
    }

    void screenReadersHearEachPanel() {
        openBench();
        QAccessibleInterface *table = QAccessible::queryAccessibleInterface(&canvas());
        QVERIFY(table);
        QCOMPARE(table->childCount(), 2);
        QVERIFY(table->text(QAccessible::Name).contains(u"table"_s));
        QCOMPARE(table->child(1)->text(QAccessible::Name), u"ST, Part ST"_s);
        QVERIFY(table->child(1)->text(QAccessible::Description).contains(u"20 ¾ in from the left selvage"_s));
        QVERIFY(table->child(1)->rect().intersects(
            QRect(canvas().viewport()->mapToGlobal(QPoint()), canvas().viewport()->size())));
    }

    void zoomKeepsWhatIsUnderTheMouse() {
        openBench();
        const QPointF at(320, 300);
        const QPointF before = canvas().toSheet(0, at);
        canvas().zoomBy(2.0, at);
        const QPointF after = canvas().toSheet(0, at);
        // To the pixel: the scroll bars stand on whole ones.
        QVERIFY(std::abs(before.x() - after.x()) * canvas().zoom() < 1.5);
    }

    void everySampleOpens() {
        const QDir folder(u":/boltwright/samples"_s);
        const QStringList names = folder.entryList({u"*.boltwright"_s});
        QVERIFY(names.size() >= 6);
        for (const QString &name : names) {
            QVERIFY2(m_window->files().openSample(folder.filePath(name)), qPrintable(name));
            QVERIFY(!document().job().panels.empty());
            m_window->grab(); // everything is painted once
        }
    }

    void fractionsAreShownAsAPersonWritesThem() {
        QCOMPARE(withFractions(u"6 1/2 in"_s), u"6 ½ in"_s);
        QCOMPARE(withFractions(u"3 5/16"_s), u"3 ⁵⁄₁₆"_s);
        QCOMPARE(withFractions(u"92.5 cm"_s), u"92.5 cm"_s);
    }
};

} // namespace boltwright::ui

QTEST_MAIN(boltwright::ui::WindowTest)
#include "window_test.moc"
