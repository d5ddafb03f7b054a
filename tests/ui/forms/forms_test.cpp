// From the tape measure to the cut list, as its user meets it: real key and mouse events on the offscreen platform.

#include "core/cloth/cloth_questions.h"
#include "core/edit/job_edit.h"
#include "core/files/cut_list_csv.h"
#include "core/files/job_file.h"
#include "core/forms/forms.h"
#include "tests/ui/window_fixture.h"
#include "ui/canvas/canvas.h"
#include "ui/forms/cloth_form.h"
#include "ui/forms/panel_table.h"
#include "ui/forms/piece_form_page.h"
#include "ui/shop/rules_page.h"
#include "ui/text/words.h"
#include "ui/trimmings/trimming_watch.h"
#include "ui/trimmings/trimmings_page.h"
#include "ui/widgets/length_edit.h"
#include "ui/widgets/sheet_table.h"
#include "ui/window/over_sheet.h"

#include <QApplication>
#include <QCheckBox>
#include <QClipboard>
#include <QComboBox>
#include <QDoubleSpinBox>
#include <QInputDialog>
#include <QPushButton>
#include <QSpinBox>
#include <QTest>
#include <QTimer>

#include <algorithm>
#include <memory>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

using namespace literals;

class FormsTest : public QObject {
    Q_OBJECT

private:
    std::unique_ptr<WindowFixture> m_fixture;
    MainWindow *m_window = nullptr;

    JobDocument &document() { return m_window->document(); }
    const Job &job() { return document().job(); }

    // What a hand at the keyboard does, wherever the focus is.
    void key(Qt::Key k, Qt::KeyboardModifiers keys = {}) {
        // After a dialog the offscreen platform gives no window the focus, as a window system would.
        if (!QApplication::activeWindow()) {
            m_window->activateWindow();
            (void)QTest::qWaitForWindowActive(m_window);
        }
        QWidget *there = QApplication::focusWidget();
        QTest::keyClick(there ? there : m_window, k, keys);
        QCoreApplication::processEvents(); // Enter closes an editor a moment later
    }
    static void type(const QString &text) {
        // The first letter may open an editor, which gets the rest.
        for (QChar c : text) QTest::keyClick(QApplication::focusWidget(), c.toLatin1());
    }

    template <class Page>
    Page *page() {
        return qobject_cast<Page *>(m_window->sheet().content());
    }
    PieceFormPage *openForm() {
        key(Qt::Key_M, Qt::ControlModifier);
        return page<PieceFormPage>();
    }
    PieceFormPage *openForm(const char *id) {
        PieceFormPage *form = openForm();
        if (form) form->choose(id);
        if (form) form->table()->setFocus();
        return form;
    }
    static Rectangle sizeOf(const Panel &panel) {
        const auto *rectangle = std::get_if<Rectangle>(&panel.shape);
        return rectangle ? *rectangle : Rectangle{};
    }
    const Panel &panel(const char *id) {
        static const Panel none;
        const Panel *found = job().panel(id);
        return found ? *found : none;
    }

private Q_SLOTS:
    void init() {
        m_fixture = std::make_unique<WindowFixture>();
        m_window = &m_fixture->show({1300, 860});
        QVERIFY(QTest::qWaitForWindowActive(m_window));
    }
    void cleanup() { m_fixture.reset(); }

    void aSofaWithCushionsIsEnteredByKeyboardAlone() {
        key(Qt::Key_M, Qt::ControlModifier);
        auto *form = page<PieceFormPage>();
        QVERIFY(form);
        // The list of pieces has the focus.
        key(Qt::Key_Home);
        for (int i = 0; i < 20 && form->model()->form().id != "three-seat-sofa"; ++i) key(Qt::Key_Down);
        QCOMPARE(fromCore(form->model()->form().id), u"three-seat-sofa"_s);
        key(Qt::Key_Tab);
        QCOMPARE(QApplication::focusWidget(), static_cast<QWidget *>(form->table()));

        // Inside back; then back cushions, which this sofa has: Space under There adds them.
        type(u"24 1/2"_s);
        key(Qt::Key_Tab);
        type(u"6'"_s);
        key(Qt::Key_Enter);
        QCOMPARE(form->model()->partOf(form->table()->currentIndex().row())->id, std::string("inside-arm"));
        key(Qt::Key_Up);
        key(Qt::Key_Left);
        key(Qt::Key_Left);
        key(Qt::Key_Space);
        key(Qt::Key_Right);
        key(Qt::Key_Right);
        // One after the other, in the order of the table: front to back or up and down, side to side, and the rest.
        const QList<QStringList> sizes = {{u"20"_s, u"23-1/2"_s, u"6"_s},
                                          {u"20,5"_s, u"26"_s},
                                          {u"28"_s, u"82"_s},
                                          {u"20"_s, u"32"_s},
                                          {u"20"_s, u"7"_s},
                                          {u"9"_s, u"72"_s},
                                          {u"7"_s, u"76"_s},
                                          {u"20"_s, u"72"_s},
                                          {u"24"_s, u"23 1/2"_s, u"5"_s}};
        for (const QStringList &row : sizes) {
            for (qsizetype i = 0; i < row.size(); ++i) {
                type(row[i]);
                key(i + 1 < row.size() ? Qt::Key_Tab : Qt::Key_Enter);
            }
        }
        QVERIFY2(form->refusal().isEmpty(), qPrintable(form->refusal()));
        QCOMPARE(form->model()->notMeasured(), 0);
        QVERIFY(job().panels.empty());
        key(Qt::Key_T, Qt::AltModifier); // Take these panels; the button goes down and up again first
        QVERIFY(waitFor([&] { return !m_window->sheet().isVisible(); }));
        QCOMPARE(sizeOf(panel("inside-back")), (Rectangle{72_in, 24.5_in}));
        QCOMPARE(sizeOf(panel("inside-arm")), (Rectangle{26_in, 20.5_in}));
        QCOMPARE(panel("inside-arm").count, 2);
        QVERIFY(panel("inside-arm").mirror);
        QCOMPARE(panel("back-cushion").count, 3);
        QCOMPARE(sizeOf(panel("back-cushion")), (Rectangle{23.5_in, 20_in}));
        QCOMPARE(sizeOf(panel("seat-cushion-front")),
                 (Rectangle{23.5_in, 5_in}));         // T8.3: boxing is as high as the cushion
        QCOMPARE(panel("seat-cushion-zip").count, 6); // two for each cushion
        QVERIFY(panel("deck").hidden);
        // Welt round both plates of six cushions, the arm fronts, and where the back and band are sewn with it.
        QCOMPARE(job().trimmings.size(), std::size_t(1));
        QVERIFY(job().trimmings.front().edges > 1000_in);
        QVERIFY(job().panel(job().trimmings.front().panel));
        QVERIFY(faultsOfJob(job()).empty());
        // All of it is one step.
        key(Qt::Key_Z, Qt::ControlModifier);
        QVERIFY(job().panels.empty() && job().trimmings.empty());
    }

    void whatIsNoLengthIsRefusedAndTheCursorStays() {
        PieceFormPage *form = openForm("wing-chair");
        QVERIFY(form);
        const QModelIndex at = form->table()->currentIndex();
        type(u"2o"_s);
        key(Qt::Key_Tab);
        QVERIFY2(form->refusal().startsWith(u"Inside back, up and down:"_s), qPrintable(form->refusal()));
        QCOMPARE(form->table()->currentIndex(), at);
        type(u"29"_s);
        key(Qt::Key_Tab);
        QVERIFY(form->refusal().isEmpty());
        QCOMPARE(form->table()->currentIndex().column(), at.column() + 1);
    }

    void doubtsAreRaisedWhileOneTypes() {
        PieceFormPage *form = openForm("wing-chair");
        QVERIFY(form);
        QVERIFY(!form->doubts().contains(u"twice"_s));
        type(u"60"_s);
        key(Qt::Key_Enter);
        QVERIFY2(form->doubts().contains(u"Inside back: up and down is more than twice what is usual"_s),
                 qPrintable(form->doubts()));
    }

    void theRightOneOfAPairIsMeasuredApart() {
        PieceFormPage *form = openForm("wing-chair");
        QVERIFY(form);
        const int row = form->model()->rowOf("inside-arm");
        PartMeasured measured = form->model()->measures().at("inside-arm");
        measured.twin = measured.sizes;
        form->model()->setMeasured("inside-arm", measured);
        form->table()->setCurrentIndex(form->model()->index(row + 1, MeasureTableModel::First));
        QVERIFY(form->model()->isTwin(row + 1));
        type(u"19"_s);
        key(Qt::Key_Enter);
        QVERIFY2(form->doubts().contains(u"left and right differ by 3 in up and down"_s), qPrintable(form->doubts()));
        const Job made = form->added(job());
        QCOMPARE(sizeOf(*made.panel("inside-arm-right")).up, 19_in);
        QCOMPARE(sizeOf(*made.panel("inside-arm-left")).up, 16_in);
    }

    void aFormOfTheShopIsKeptAndStandsInTheList() {
        PieceFormPage *form = openForm("ottoman");
        QVERIFY(form);
        type(u"30"_s);
        key(Qt::Key_Enter);
        QTimer answer;
        connect(&answer, &QTimer::timeout, this, [] {
            auto *dialog = qobject_cast<QInputDialog *>(QApplication::activeModalWidget());
            if (!dialog) return;
            dialog->setTextValue(u"Hall ottoman"_s);
            dialog->accept();
        });
        answer.start(20);
        key(Qt::Key_K, Qt::AltModifier);
        QVERIFY(waitFor([&] { return m_window->shop().isOwn("own-hall-ottoman"); }));
        QCOMPARE(fromCore(form->model()->form().name), u"Hall ottoman"_s);
        QCOMPARE(form->model()->form().id, std::string("own-hall-ottoman"));
        // Another day: its own sizes are what is usual.
        m_window->sheet().close();
        form = openForm("own-hall-ottoman");
        QVERIFY(form);
        QCOMPARE(form->model()->form().id, std::string("own-hall-ottoman"));
        QCOMPARE(form->model()->measures().at("top").sizes[Measure::Up], 30_in);
    }

    void aPartIsAddedNamedAndTaken() {
        PieceFormPage *form = openForm("ottoman");
        QVERIFY(form);
        const int rows = form->model()->rowCount();
        key(Qt::Key_A, Qt::AltModifier);
        QVERIFY(waitFor([&] { return form->model()->rowCount() == rows + 1; }));
        type(u"Lid lining"_s); // its name has the focus
        key(Qt::Key_Enter);
        QCOMPARE(form->model()->form().parts.back().name, std::string("Lid lining"));
        key(Qt::Key_T, Qt::AltModifier);
        QVERIFY(waitFor([&] { return !m_window->sheet().isVisible(); }));
        QVERIFY(std::any_of(job().panels.begin(), job().panels.end(),
                            [](const Panel &p) { return p.name == "Lid lining"; }));
    }

    void aMeasuredPieceMayBecomeAJobOfItsOwn() {
        Job before = newJob(Unit::Inch);
        before.card.title = "Hall bench";
        before.panels = {newPanel(before)};
        const QString name = m_fixture->folder() + u"/hall.boltwright"_s;
        QVERIFY(saveJob(before, name.toStdString()).has_value());
        QVERIFY(m_window->openFile(name));
        QVERIFY(openForm("headboard"));
        key(Qt::Key_N, Qt::AltModifier);
        QVERIFY(waitFor([&] { return job().card.title == "Headboard"; }));
        QCOMPARE(job().panels.size(), std::size_t(1));
        QVERIFY(document().fileName().isEmpty());
        // The bench lies in its file as it was.
        QCOMPARE(loadJob(name.toStdString())->panels.size(), before.panels.size());
    }

    void theShopsRulesAreWhatFormsAdd() {
        m_window->actions()[ActionId::ShopRules]->trigger();
        auto *rules = page<RulesPage>();
        QVERIFY(rules);
        QCOMPARE(rules->model()->data(rules->model()->index(0, RulesModel::Figure), Qt::DisplayRole).toString(),
                 u"2 in"_s);
        type(u"2 1/2"_s); // the first: pulled over the frame and tacked
        key(Qt::Key_Enter);
        QVERIFY2(rules->refusal().isEmpty(), qPrintable(rules->refusal()));
        type(u"a lot"_s);
        key(Qt::Key_Enter);
        QVERIFY(!rules->refusal().isEmpty());
        m_window->sheet().close();
        PieceFormPage *form = openForm("headboard");
        QVERIFY(form);
        QCOMPARE(form->added(job()).panel("face")->allowance(Top), 2.5_in);
        QCOMPARE(m_window->shop().rules(Unit::Inch).pull, 2.5_in);
    }

    void aColumnFromASpreadsheetGoesDownTheTable() {
        PieceFormPage *form = openForm("headboard");
        QVERIFY(form);
        QApplication::clipboard()->setText(u"27 1/2\t60,5\n"_s);
        key(Qt::Key_V, Qt::ControlModifier);
        QVERIFY2(form->refusal().isEmpty(), qPrintable(form->refusal()));
        QCOMPARE(form->model()->measures().at("face").sizes[Measure::Up], 27.5_in);
        QCOMPARE(form->model()->measures().at("face").sizes[Measure::Across], 60.5_in);
        QApplication::clipboard()->setText(u"high\t61"_s);
        key(Qt::Key_V, Qt::ControlModifier);
        QVERIFY2(form->refusal().startsWith(u"Not taken: row 1, column 1:"_s), qPrintable(form->refusal()));
        QCOMPARE(form->model()->measures().at("face").sizes[Measure::Across], 61_in);
    }

    void panelsAreTypedAndPastedAsInASpreadsheet() {
        m_window->showPanelTable();
        auto *panels = page<PanelTable>();
        QVERIFY(panels);
        QApplication::clipboard()->setText(u"Mark\tName\tCount\tSide to side\tUp and down\n"
                                           "IB\tInside back\t1\t24\t17 1/2\n"
                                           "IA\tInside arm\t2\t26\t3' 2\"\n"_s);
        key(Qt::Key_V, Qt::ControlModifier);
        QCOMPARE(job().panels.size(), std::size_t(2));
        QCOMPARE(sizeOf(job().panels[1]), (Rectangle{26_in, 38_in}));
        QVERIFY2(panels->doubts().contains(u"IA: taller than the back is wide"_s), qPrintable(panels->doubts()));
        // Tab along the row, Enter down to where it began.
        SheetTable *table = panels->table();
        table->setCurrentIndex(panels->model()->index(0, PanelTableModel::Across));
        type(u"25"_s);
        key(Qt::Key_Tab);
        type(u"18,5"_s);
        key(Qt::Key_Enter);
        QCOMPARE(sizeOf(job().panels[0]), (Rectangle{25_in, 18.5_in}));
        QCOMPARE(table->currentIndex(), panels->model()->index(1, PanelTableModel::Across));
        // A block of cells goes where the cursor is, as one step.
        const int steps = document().history()->index();
        QApplication::clipboard()->setText(u"27\t\t20\n"_s);
        key(Qt::Key_V, Qt::ControlModifier);
        QCOMPARE(sizeOf(job().panels[1]), (Rectangle{27_in, 20_in}));
        QCOMPARE(document().history()->index(), steps + 1);
        // And out again.
        table->setCurrentIndex(panels->model()->index(1, PanelTableModel::Across));
        key(Qt::Key_C, Qt::ControlModifier);
        QCOMPARE(QApplication::clipboard()->text().trimmed(), u"27"_s);
    }

    void whatTheFileSaysOfAPanelStaysUntilItIsTypedOver() {
        Job before = newJob(Unit::Inch);
        Cloth lining = newCloth(before);
        lining.id = "lining";
        before.cloths.push_back(lining);
        before.cloths.front().price = Price{"yd", 24.125, "USD", {}};
        before.panels = {newPanel(before)};
        Panel &back = before.panels.front();
        back.allow = {3_in, 1_in, 1_in, Length{}};
        back.allowMin = {2_in, std::nullopt, 0.75_in, std::nullopt};
        back.may.otherCloth = {false, "lining"};
        const QString name = m_fixture->folder() + u"/kept.boltwright"_s;
        QVERIFY(saveJob(before, name.toStdString()).has_value());
        QVERIFY(m_window->openFile(name));
        m_window->showPanelTable();
        auto *panels = page<PanelTable>();
        QVERIFY(panels);
        panels->table()->setCurrentIndex(panels->model()->index(0, PanelTableModel::Mark));
        LengthEdit *least = nullptr;
        for (LengthEdit *edit : panels->findChildren<LengthEdit *>())
            if (edit->placeholderText() == u"differs by edge"_s) least = edit;
        QVERIFY(least);
        least->setFocus();
        key(Qt::Key_Tab); // passed through, it changes nothing
        QCOMPARE(job().panels.front().allowMin, back.allowMin);
        least->setFocus();
        type(u"1/2"_s);
        key(Qt::Key_Enter);
        QCOMPARE(job().panels.front().allowMin, (EdgeLengths{0.5_in, 0.5_in, 0.5_in, std::nullopt}));
        QComboBox *other = nullptr;
        for (QComboBox *box : panels->findChildren<QComboBox *>())
            if (box->currentText() == u"lining"_s) other = box;
        QVERIFY(other);
        other->setFocus();
        key(Qt::Key_Tab); // passed through, it changes nothing
        QCOMPARE(job().panels.front().may.otherCloth, back.may.otherCloth);
        other->setFocus();
        key(Qt::Key_Home); // no
        QCOMPARE(job().panels.front().may.otherCloth, OtherCloth{});

        m_window->showClothForm();
        auto *price = page<ClothForm>()->findChild<QDoubleSpinBox *>(u"field price"_s);
        QVERIFY(price);
        price->setFocus();
        key(Qt::Key_Tab);
        key(Qt::Key_Tab);
        QCOMPARE(job().cloths.front().price->amount, 24.125);
    }

    void aBrokenListNamesRowAndColumnAndChangesNothing() {
        m_window->showPanelTable();
        auto *panels = page<PanelTable>();
        QVERIFY(panels);
        QVERIFY(!panels->takeCutList("Name;Width;Height\nSeat;20;2o\n"));
        QVERIFY2(panels->refusal().startsWith(u"row 2, column C (Up and down):"_s), qPrintable(panels->refusal()));
        QVERIFY(!panels->takeCutList("Name;Width;Height\nSeat;20;\xff\n"));
        QVERIFY2(panels->refusal().startsWith(u"row 2, column C: the text is not UTF-8"_s),
                 qPrintable(panels->refusal()));
        QVERIFY(job().panels.empty());
        QVERIFY(panels->takeCutList("Name;Width;Height;Colour\nSeat;20;21,5;red\n"));
        QVERIFY2(panels->refusal().contains(u"Colour"_s), qPrintable(panels->refusal()));
        QCOMPARE(sizeOf(job().panels.front()), (Rectangle{20_in, 21.5_in}));
    }

    void aRepeatIsMeasuredOverSeveral() {
        m_window->showClothForm();
        auto *form = page<ClothForm>();
        QVERIFY(form);
        auto *many = form->findChild<QSpinBox *>(u"repeats Vertical repeat"_s);
        auto *together = form->findChild<LengthEdit *>(u"measured Vertical repeat"_s);
        QVERIFY(many && together);
        many->setValue(4);
        together->setFocus();
        type(u"108 1/2"_s);
        key(Qt::Key_Enter);
        QVERIFY(job().cloths.front().pattern);
        QCOMPARE(*job().cloths.front().pattern->along, 27.125_in);
    }

    void theWidthBetweenTheSelvagesSaysHowWideTheyAre() {
        m_window->showClothForm();
        auto *edit = page<ClothForm>()->findChild<LengthEdit *>(u"field Width between the selvages"_s);
        QVERIFY(edit);
        edit->setFocus();
        edit->selectAll();
        type(u"52 1/2"_s);
        key(Qt::Key_Enter);
        QCOMPARE(job().cloths.front().bolt->width, 54_in);
        QCOMPARE(job().cloths.front().selvage, 0.75_in);
    }

    void skewIsShownAsTheShiftAcrossTheWidth() {
        m_window->showClothForm();
        auto *edit = page<ClothForm>()->findChild<LengthEdit *>(u"field Skew"_s);
        QVERIFY(edit);
        edit->setFocus();
        edit->selectAll();
        type(u"-1"_s);
        key(Qt::Key_Enter);
        QCOMPARE(job().cloths.front().skew, -1_in);
        QTest::qWait(30);
        // T12.9: 1 in on 54 is 1.85 in the hundred.
        bool said = false;
        for (const QLabel *label : page<ClothForm>()->findChildren<QLabel *>())
            said |= label->text().contains(u"shifts by 1 in from selvage to selvage, 1.85 %"_s);
        QVERIFY(said);
    }

    void weltFromWhatIsLeftOverIsShownAndReckoned() {
        Job started = newJob(Unit::Inch);
        started.cloths.front().id = "body";
        started.cloths.front().selvage = Length{};
        started.cloths.front().bolt->square = Length{};
        Panel back = newPanel(started);
        back.id = "back";
        back.shape = Rectangle{48_in, 30_in};
        back.allow.assign(4, Length{});
        started.panels = {back};
        Cut cut;
        cut.panel = "back";
        cut.copy = 1;
        Layout layout;
        layout.cuts = {cut};
        started.layouts = {layout};
        const QString name = m_fixture->folder() + u"/welt.boltwright"_s;
        QVERIFY(saveJob(started, name.toStdString()).has_value());
        QVERIFY(m_window->openFile(name));
        m_window->showTrimmings();
        auto *trimmings = page<TrimmingsPage>();
        QVERIFY(trimmings);
        key(Qt::Key_W, Qt::AltModifier); // add welt
        QVERIFY(waitFor([&] { return job().trimmings.size() == 1; }));
        QTest::qWait(20);
        auto *run = trimmings->findChild<QComboBox *>(u"It runs 0"_s);
        QVERIFY(run);
        run->setFocus();
        key(Qt::Key_Home); // along the roll
        QVERIFY(waitFor([&] { return trimmings->sentence(0).contains(u"nough: 3 pieces"_s); }));
        QVERIFY2(trimmings->sentence(0).contains(u"Enough: 3 pieces of at least 15 in make 2 yd 15"_s),
                 qPrintable(trimmings->sentence(0)));
        QVERIFY(!m_window->canvas().stripsShown().isEmpty());
        m_window->actions()[ActionId::ShowStrips]->trigger();
        QVERIFY(m_window->canvas().stripsShown().isEmpty());
        m_window->actions()[ActionId::ShowStrips]->trigger();
        QVERIFY(!m_window->canvas().stripsShown().isEmpty());
        // An answer, a name, a trimming: the layout and what is proved of it stay as they were.
        QCOMPARE(document().laidLayout().cuts.size(), std::size_t(1));
    }

    void whatTheClothMustBeIsAnsweredAndKept() {
        m_window->actions()[ActionId::ClothQuestions]->trigger();
        auto *fire = m_window->sheet().content()->findChild<QComboBox *>(u"said fire"_s);
        QVERIFY(fire);
        fire->setFocus();
        key(Qt::Key_Down);
        QCOMPARE(answerTo(job().cloths.front(), "fire").said, ClothAnswer::Said::Good);
        const auto again = readJob(writeJob(job()));
        QVERIFY(again.has_value());
        QCOMPARE(answerTo(again->cloths.front(), "fire").said, ClothAnswer::Said::Good);
    }
};

} // namespace boltwright::ui

QTEST_MAIN(boltwright::ui::FormsTest)
#include "forms_test.moc"
