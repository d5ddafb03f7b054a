// Remnants and flaws, drawn and changed on the table by real mouse and key events.

#include "core/edit/cloth_edit.h"
#include "core/edit/job_edit.h"
#include "core/edit/outline_edit.h"
#include "tests/ui/window_fixture.h"
#include "ui/canvas/canvas.h"
#include "ui/canvas/outline_bar.h"
#include "ui/drawing/table_frame.h"
#include "ui/widgets/length_edit.h"

#include <QComboBox>
#include <QTest>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

using namespace literals;

namespace {

/// One remnant, 54 by 40 in, and a seat that is not laid yet.
Job onRemnant(Unit unit = Unit::Inch) {
    Job job = newJob(unit);
    Cloth &cloth = job.cloths.front();
    cloth.id = "body";
    cloth.bolt.reset();
    cloth.selvage = Length{};
    Pattern pattern;
    pattern.across = 9_in;
    cloth.pattern = pattern;
    Remnant remnant;
    remnant.id = "A";
    remnant.outline = ringOf(ClothBox{{}, {54_in, 40_in}});
    cloth.remnants = {remnant};
    Panel seat = newPanel(job);
    job.panels = {seat};
    return job;
}

} // namespace

class OutlinesTest : public QObject {
    Q_OBJECT

private:
    std::unique_ptr<WindowFixture> m_fixture;
    MainWindow *m_window = nullptr;

    JobDocument &document() { return m_window->document(); }
    Canvas &canvas() { return m_window->canvas(); }
    OutlineTool &tool() { return m_window->outlines().tool(); }
    const Remnant &remnant(int i = 0) { return document().job().cloths.front().remnants.at(std::size_t(i)); }

    void open(const Job &job) {
        document().startWith(job);
        m_window->actions()[ActionId::Outlines]->trigger();
        canvas().zoomToFit();
        QTest::qWait(10);
    }
    QPoint at(Length x, Length y, int sheet = 0) {
        return canvas().toViewport(sheet).map(onTable(ClothPoint{x, y})).toPoint();
    }
    void press(QPoint p, Qt::KeyboardModifiers keys = {}) {
        QTest::mousePress(canvas().viewport(), Qt::LeftButton, keys, p);
    }
    void release(QPoint p, Qt::KeyboardModifiers keys = {}) {
        QTest::mouseRelease(canvas().viewport(), Qt::LeftButton, keys, p);
    }
    void click(QPoint p) {
        press(p);
        release(p);
    }
    void drag(QPoint from, QPoint to, Qt::KeyboardModifiers keys = {}) {
        press(from, keys);
        for (int i = 1; i <= 5; ++i) moveMouse(canvas().viewport(), from + (to - from) * i / 5, keys);
        release(to, keys);
    }
    void key(Qt::Key k, Qt::KeyboardModifiers keys = {}) { QTest::keyClick(&canvas(), k, keys); }
    void type(const QString &field, const QString &text) {
        auto *edit = m_window->outlines().findChild<QLineEdit *>(u"outline "_s + field);
        QVERIFY2(edit && edit->isVisible(), qPrintable(field));
        edit->setFocus();
        edit->selectAll();
        QTest::keyClicks(edit, text);
        QTest::keyClick(edit, Qt::Key_Return);
    }
    void pressButton(const QString &text) {
        for (QPushButton *button : m_window->outlines().findChildren<QPushButton *>())
            if (button->text() == text && button->isVisible()) {
                QTest::mouseClick(button, Qt::LeftButton);
                return;
            }
        QFAIL(qPrintable(text));
    }

private Q_SLOTS:
    void init() {
        m_fixture = std::make_unique<WindowFixture>();
        m_window = &m_fixture->show();
    }
    void cleanup() { m_fixture.reset(); }

    void aCornerIsPutRightBeforeTheOutlineIsClosed() {
        open(onRemnant());
        pressButton(u"Draw a remnant"_s);
        const auto &ring = tool().editor().ring();
        const QPoint origin = at(10_in, 50_in);
        for (const QPoint step : {QPoint(0, 0), QPoint(120, 0), QPoint(120, 90)}) click(origin + step);
        QCOMPARE(int(ring.size()), 3);
        const ClothRing traced = ring;
        drag(origin + QPoint(120, 0), origin + QPoint(150, 0));
        QCOMPARE(int(ring.size()), 3);
        QVERIFY(ring[1] != traced[1]);
        QVERIFY(ring[0] == traced[0] && ring[2] == traced[2]);
        // Let go of by Escape while it is dragged, it goes back; a click on it leaves it where it is.
        const ClothRing moved = ring;
        press(origin + QPoint(120, 90));
        moveMouse(canvas().viewport(), origin + QPoint(60, 90));
        key(Qt::Key_Escape);
        release(origin + QPoint(60, 90));
        QVERIFY(ring == moved);
        click(origin + QPoint(120, 90));
        QVERIFY(ring == moved);
        // And the next click goes on with the outline.
        click(origin + QPoint(0, 90));
        QCOMPARE(int(ring.size()), 4);
        click(origin);
        QCOMPARE(int(document().job().cloths.front().remnants.size()), 2);
        QCOMPARE(document().history()->count(), 1);
    }

    void aDraggedCornerComesToRestOnWholeInchesAndIsOneStep() {
        open(onRemnant());
        drag(at(54_in, 40_in), at(50.3_in, 36.2_in));
        QCOMPARE(remnant().outline[2].x.ticks(), (50_in).ticks());
        QCOMPARE(remnant().outline[2].y.ticks(), (36_in).ticks());
        QCOMPARE(document().history()->count(), 1);
        m_window->actions()[ActionId::Undo]->trigger();
        QVERIFY(remnant().outline == onRemnant().cloths.front().remnants.front().outline);
        QCOMPARE(tool().editor().ring().size(), std::size_t(4)); // what is shown follows
        QVERIFY(tool().editor().ring() == remnant().outline);
    }

    void withAltACornerStaysWhereTheHandLetsGo() {
        open(onRemnant());
        drag(at(54_in, 40_in), at(50.4_in, 36.4_in), Qt::AltModifier);
        QVERIFY(remnant().outline[2].x.ticks() % (1_in).ticks() != 0);
    }

    void aMetricJobSnapsToWholeCentimetres() {
        open(onRemnant(Unit::Centimetre));
        drag(at(54_in, 40_in), at(125.2_cm, 90.2_cm));
        QCOMPARE(remnant().outline[2].x.ticks(), (125_cm).ticks());
        QCOMPARE(remnant().outline[2].y.ticks(), (90_cm).ticks());
    }

    void escapeWhileDraggingLeavesNoTrace() {
        open(onRemnant());
        press(at(54_in, 40_in));
        moveMouse(canvas().viewport(), at(40_in, 30_in));
        QVERIFY(tool().editor().ring() != remnant().outline);
        key(Qt::Key_Escape);
        release(at(40_in, 30_in));
        QCOMPARE(document().history()->count(), 0);
        QVERIFY(tool().editor().ring() == remnant().outline);
    }

    void anOutlineThatWouldCrossItselfIsRefused() {
        open(onRemnant());
        drag(at(54_in, 40_in), at(-6_in, 10_in));
        QCOMPARE(document().history()->count(), 0);
        QVERIFY(tool().editor().ring() == remnant().outline);
    }

    void theMiddleOfASideIsDraggedIntoACornerMore() {
        open(onRemnant());
        drag(at(54_in, 20_in), at(48_in, 20_in));
        QCOMPARE(remnant().outline.size(), std::size_t(5));
        QVERIFY(remnant().outline[2] == (ClothPoint{48_in, 20_in}));
    }

    void byKeyboardACornerIsChosenMovedAddedAndTakenAway() {
        open(onRemnant());
        key(Qt::Key_Tab);
        QCOMPARE(tool().editor().corner(), 0);
        key(Qt::Key_Tab);
        key(Qt::Key_Down);
        key(Qt::Key_Right, Qt::ShiftModifier);
        QVERIFY(remnant().outline[1] == (ClothPoint{55_in, 0.125_in}));
        QCOMPARE(document().history()->count(), 1); // nudges of one corner are one step
        key(Qt::Key_Insert);
        QCOMPARE(remnant().outline.size(), std::size_t(5));
        QCOMPARE(tool().editor().corner(), 2);
        key(Qt::Key_Delete);
        QCOMPARE(remnant().outline.size(), std::size_t(4));
        key(Qt::Key_Escape);
        QCOMPARE(tool().editor().corner(), -1);
        key(Qt::Key_Escape);
        QVERIFY(m_window->outlines().isHidden());
        QVERIFY(&canvas().tool() != &tool());
    }

    void aCornerIsTypedInAnySpelling() {
        open(onRemnant());
        click(at(54_in, 40_in));
        type(u"corner from the left"_s, u"4' 2 1/2\""_s);
        QCOMPARE(remnant().outline[2].x.ticks(), (50.5_in).ticks());
        type(u"corner up the roll"_s, u"1 yd"_s);
        QCOMPARE(remnant().outline[2].y.ticks(), (36_in).ticks());
    }

    void aCornerIsCutOut() {
        open(onRemnant());
        click(at(54_in, 40_in));
        type(u"cut out along the side before"_s, u"12"_s);
        type(u"cut out along the side after"_s, u"20 1/2"_s);
        pressButton(u"Cut corner out"_s);
        const ClothRing &ring = remnant().outline;
        QCOMPARE(ring.size(), std::size_t(6));
        QVERIFY(ring[2] == (ClothPoint{54_in, 28_in}));
        QVERIFY(ring[3] == (ClothPoint{33.5_in, 28_in}));
        QVERIFY(ring[4] == (ClothPoint{33.5_in, 40_in}));
        QCOMPARE(document().history()->count(), 1);
    }

    void aRemnantIsDrawnByClicks() {
        open(onRemnant());
        pressButton(u"Draw a remnant"_s);
        const QPoint o = at(4_in, 2_in);
        const QPoint right = at(4_in, 22_in) - o, down = at(14_in, 2_in) - o;
        for (const QPoint &p : {o, o + right, o + right + down, o + down}) click(p);
        QCOMPARE(document().job().cloths.front().remnants.size(), std::size_t(1)); // not closed yet
        click(o);
        QCOMPARE(document().job().cloths.front().remnants.size(), std::size_t(2));
        QCOMPARE(remnant(1).id, std::string("B"));
        const ClothBox box = boxOf(remnant(1).outline);
        QVERIFY(box.low == ClothPoint{});
        QCOMPARE(box.width().ticks(), (10_in).ticks());
        QCOMPARE(box.height().ticks(), (20_in).ticks());
        QCOMPARE(document().history()->count(), 1);
        QVERIFY(tool().chosen() == (OutlineOf{{"body", "B"}, {}}));
    }

    void aRemnantIsTypedCornerByCorner() {
        open(onRemnant());
        pressButton(u"Draw a remnant"_s);
        for (const auto &[x, y] : {std::pair{u"0"_s, u"0"_s}, {u"30"_s, u"0"_s}, {u"24 1/2"_s, u"18"_s}}) {
            type(u"next corner from the left"_s, x);
            type(u"next corner up the roll"_s, y);
            pressButton(u"Set corner"_s);
        }
        pressButton(u"Close outline"_s);
        QVERIFY(remnant(1).outline == (ClothRing{{0_in, 0_in}, {30_in, 0_in}, {24.5_in, 18_in}}));
    }

    void aRectangleOfARemnantIsTypedAndABoltThatIsNotInUseBecomesIt() {
        Job job = newJob(Unit::Inch);
        open(job);
        pressButton(u"Draw a remnant"_s);
        type(u"rectangle across"_s, u"54"_s);
        type(u"rectangle up the roll"_s, u"2 yd"_s);
        pressButton(u"Add it"_s);
        QVERIFY(!document().job().cloths.front().bolt);
        QVERIFY(remnant().outline == ringOf(ClothBox{{}, {54_in, 72_in}}));
        m_window->actions()[ActionId::Undo]->trigger();
        QVERIFY(document().job().cloths == job.cloths);
    }

    void aFlawIsDrawnMovedAndNamed() {
        open(onRemnant());
        pressButton(u"Mark a flaw"_s);
        for (const ClothPoint &p : {ClothPoint{10_in, 10_in}, {18_in, 10_in}, {18_in, 18_in}}) click(at(p.x, p.y));
        key(Qt::Key_Return);
        QCOMPARE(remnant().flaws.size(), std::size_t(1));
        QVERIFY(remnant().flaws[0].outline == (ClothRing{{10_in, 10_in}, {18_in, 10_in}, {18_in, 18_in}}));
        type(u"note"_s, u"pulled thread"_s);
        QCOMPARE(remnant().flaws[0].note, std::string("pulled thread"));
        drag(at(16_in, 12_in), at(21.1_in, 14.2_in)); // by its inside, in whole inches
        QVERIFY(remnant().flaws[0].outline[0] == (ClothPoint{15_in, 12_in}));
        pressButton(u"Remove"_s);
        QVERIFY(remnant().flaws.empty());
        QVERIFY(tool().chosen() == (OutlineOf{{"body", "A"}, {}}));
    }

    void aSpotIsMarkedByDraggingItsRadiusAndChangedByTyping() {
        open(onRemnant());
        pressButton(u"Mark a spot"_s);
        drag(at(20_in, 15_in), at(20_in, 18_in));
        QCOMPARE(remnant().flaws.size(), std::size_t(1));
        const auto spot = spotIn(remnant().flaws[0].outline);
        QVERIFY(spot.has_value());
        QVERIFY(spot->middle == (ClothPoint{20_in, 15_in}));
        QVERIFY(std::abs((spot->radius - 3_in).ticks()) <= (0.25_in).ticks());
        type(u"spot radius"_s, u"2 1/4"_s);
        QVERIFY(spotIn(remnant().flaws[0].outline) == (Spot{{20_in, 15_in}, 2.25_in}));
        canvas().setFocus();
        key(Qt::Key_Right); // the arrows move it, while no handle is chosen
        QVERIFY(spotIn(remnant().flaws[0].outline) == (Spot{{20_in, 16_in}, 2.25_in}));
        key(Qt::Key_Tab);
        key(Qt::Key_Right); // its handle, and with it the radius
        QVERIFY(spotIn(remnant().flaws[0].outline) == (Spot{{20_in, 16_in}, 2.375_in}));
    }

    void aSpotIsTyped() {
        open(onRemnant());
        pressButton(u"Mark a spot"_s);
        type(u"spot from the left"_s, u"9"_s);
        type(u"spot up the roll"_s, u"30"_s);
        type(u"spot radius"_s, u"1 1/2"_s);
        pressButton(u"Mark it"_s);
        QVERIFY(spotIn(remnant().flaws[0].outline) == (Spot{{9_in, 30_in}, 1.5_in}));
    }

    void aFlawIsMarkedOnABoltToo() {
        open(newJob(Unit::Inch));
        pressButton(u"Mark a spot"_s);
        click(at(20_in, 15_in));
        QCOMPARE(document().job().cloths.front().bolt->flaws.size(), std::size_t(1));
    }

    void eachRemnantHasItsOwnLotAndMotif() {
        open(onRemnant());
        type(u"lot"_s, u"7731"_s);
        QCOMPARE(remnant().lot, std::string("7731"));
        type(u"motif from the left"_s, u"4 1/2"_s);
        type(u"motif up the roll"_s, u"3"_s);
        QVERIFY(remnant().motif == (ClothPoint{4.5_in, 3_in}));
        pressButton(u"Point at it"_s);
        click(at(7_in, 5_in));
        QVERIFY(remnant().motif == (ClothPoint{7_in, 5_in}));
        QCOMPARE(document().history()->undoText(), u"Show where a motif sits"_s);
    }

    void anotherOutlineIsChosenByAClickOrInTheList() {
        Job job = onRemnant();
        job = withFlaw(job, {"body", "A"}, ringOf(Spot{{20_in, 10_in}, 2_in}))->first;
        open(job);
        QVERIFY(tool().chosen() == (OutlineOf{{"body", "A"}, {}}));
        click(at(20_in, 10_in));
        QVERIFY(tool().chosen() == (OutlineOf{{"body", "A"}, 0}));
        auto *which = m_window->outlines().findChild<QComboBox *>();
        which->setFocus();
        QTest::keyClick(which, Qt::Key_Up);
        QVERIFY(tool().chosen() == (OutlineOf{{"body", "A"}, {}}));
    }
};

} // namespace boltwright::ui

QTEST_MAIN(boltwright::ui::OutlinesTest)
#include "outlines_test.moc"
