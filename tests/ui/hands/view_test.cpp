// What of the cloth is seen: pushed about with the mouse and by keys, nearer, further, and all of it.

#include "tests/ui/hands/hand.h"

#include <QApplication>
#include <QScrollBar>
#include <QWheelEvent>

#include <algorithm>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::ui;

namespace {

/// Near enough that there is more cloth than room, both ways.
void comeNear(Hand &hand) {
    hand.canvas().zoomToFit();
    for (int i = 0; i < 8; ++i) QTest::keyClick(&hand.window(), Qt::Key_Plus, Qt::ControlModifier);
    REQUIRE(hand.canvas().horizontalScrollBar()->maximum() > 200);
    REQUIRE(hand.canvas().verticalScrollBar()->maximum() > 200);
    hand.canvas().horizontalScrollBar()->setValue(100);
    hand.canvas().verticalScrollBar()->setValue(100);
}

/// Where the cloth's lower left corner is seen.
QPointF corner(Hand &hand) { return hand.canvas().toViewport(0).map(onTable(ClothPoint{})); }

void moveWith(Hand &hand, Qt::MouseButton button, QPoint to) {
    QWidget *view = hand.canvas().viewport();
    QMouseEvent move(QEvent::MouseMove, QPointF(to), view->mapToGlobal(QPointF(to)), Qt::NoButton, button, {});
    QApplication::sendEvent(view, &move);
}

void roll(Hand &hand, int eighths, Qt::KeyboardModifiers keys = {}) {
    QWidget *view = hand.canvas().viewport();
    const QPointF at = view->rect().center();
    QWheelEvent wheel(at, view->mapToGlobal(at), {}, {0, eighths}, Qt::NoButton, keys, Qt::NoScrollPhase, false);
    QApplication::sendEvent(view, &wheel);
}

} // namespace

TEST_CASE("the middle button pushes the cloth about, and panels stay on it", "[hands][view]") {
    Hand hand(fourSeats());
    comeNear(hand);
    const Layout before = hand.document().layout();
    const QPointF from = corner(hand);
    QTest::mousePress(hand.canvas().viewport(), Qt::MiddleButton, {}, {200, 200});
    moveWith(hand, Qt::MiddleButton, {170, 215});
    CHECK(corner(hand) == from + QPointF(-30, 15));
    moveWith(hand, Qt::MiddleButton, {160, 240});
    CHECK(corner(hand) == from + QPointF(-40, 40));
    QTest::mouseRelease(hand.canvas().viewport(), Qt::MiddleButton, {}, {160, 240});
    moveWith(hand, Qt::NoButton, {300, 300}); // let go, it stays
    CHECK(corner(hand) == from + QPointF(-40, 40));
    CHECK(hand.document().layout() == before);
    CHECK(hand.steps() == 0);
}

TEST_CASE("with the space bar held, the left button pushes the cloth and takes hold of no panel", "[hands][view]") {
    Hand hand(fourSeats());
    comeNear(hand);
    const QPointF from = corner(hand);
    const QPoint onPanel = hand.middleOf(0);
    REQUIRE(hand.canvas().viewport()->rect().contains(onPanel));
    QTest::keyPress(&hand.canvas(), Qt::Key_Space);
    CHECK(hand.canvas().viewport()->cursor().shape() == Qt::OpenHandCursor);
    hand.press(onPanel);
    CHECK(hand.canvas().viewport()->cursor().shape() == Qt::ClosedHandCursor);
    hand.move(onPanel + QPoint(-35, -20));
    hand.release();
    QTest::keyRelease(&hand.canvas(), Qt::Key_Space);
    CHECK(corner(hand) == from + QPointF(-35, -20));
    CHECK(hand.steps() == 0);
    CHECK(hand.document().selectedCut() < 0);
    // Without it, the same gesture moves the panel and not the cloth.
    const QPointF now = corner(hand);
    hand.drag(hand.middleOf(0), hand.middleOf(0) + QPoint(0, 40), Qt::AltModifier);
    CHECK(hand.steps() == 1);
    CHECK(corner(hand) == now);
}

TEST_CASE("keys go along the cloth: arrows by steps, pages, and to either end", "[hands][view]") {
    Hand hand(fourSeats());
    comeNear(hand);
    QScrollBar &along = *hand.canvas().horizontalScrollBar(), &across = *hand.canvas().verticalScrollBar();
    REQUIRE(hand.document().selectedCut() < 0); // with a panel selected, arrows move that
    hand.key(Qt::Key_Right);
    CHECK(along.value() == 100 + along.singleStep());
    hand.key(Qt::Key_Left);
    CHECK(along.value() == 100);
    hand.key(Qt::Key_Down);
    CHECK(across.value() == 100 + across.singleStep());
    hand.key(Qt::Key_Up);
    CHECK(across.value() == 100);
    hand.key(Qt::Key_PageDown);
    CHECK(along.value() == std::min(along.maximum(), 100 + along.pageStep()));
    hand.key(Qt::Key_End);
    CHECK(along.value() == along.maximum());
    hand.key(Qt::Key_PageUp);
    CHECK(along.value() == along.maximum() - along.pageStep());
    hand.key(Qt::Key_Home);
    CHECK(along.value() == 0);
    CHECK(across.value() == 100);
    CHECK(hand.steps() == 0);
}

TEST_CASE("the wheel unrolls the cloth, with Shift goes across it, with Ctrl nearer", "[hands][view]") {
    Hand hand(fourSeats());
    comeNear(hand);
    QScrollBar &along = *hand.canvas().horizontalScrollBar(), &across = *hand.canvas().verticalScrollBar();
    roll(hand, -60);
    CHECK(along.value() == 160);
    CHECK(across.value() == 100);
    roll(hand, 40, Qt::ShiftModifier);
    CHECK(across.value() == 60);
    CHECK(along.value() == 160);
    const double zoom = hand.canvas().zoom();
    roll(hand, 120, Qt::ControlModifier);
    CHECK(hand.canvas().zoom() > zoom * 1.1);
}

TEST_CASE("see all: whatever was looked at, all that is used is in sight again, and stays so", "[hands][view]") {
    Hand hand(fourSeats());
    hand.canvas().zoomToFit();
    const double fitted = hand.canvas().zoom();
    comeNear(hand);
    CHECK_FALSE(hand.canvas().isFitted());
    CHECK(hand.canvas().zoom() > fitted * 2);
    QTest::keyClick(&hand.window(), Qt::Key_0, Qt::ControlModifier);
    CHECK(hand.canvas().isFitted());
    CHECK(hand.canvas().zoom() == Approx(fitted));
    for (int i = 0; i < 4; ++i) CHECK(hand.canvas().clothRoom().contains(hand.canvas().cutRect(i)));
    // In a smaller window it is fitted anew, as long as nobody came nearer.
    hand.window().resize(1000, 700);
    QTest::qWait(30);
    CHECK(hand.canvas().zoom() < fitted);
    for (int i = 0; i < 4; ++i) CHECK(hand.canvas().clothRoom().contains(hand.canvas().cutRect(i)));
    QTest::keyClick(&hand.window(), Qt::Key_Minus, Qt::ControlModifier);
    const double further = hand.canvas().zoom();
    hand.window().resize(1200, 800);
    QTest::qWait(30);
    CHECK(hand.canvas().zoom() == Approx(further));
}
