#include "tests/ui/hands/hand.h"

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::ui;

TEST_CASE("a ring of chalk selects what it meets, and a drag moves all of it in one step", "[hands]") {
    Hand hand(fourSeats());
    // Begun on bare table beyond the last panel, drawn over the second and third.
    hand.drag(hand.at(15_in, 30_in), hand.at(36_in, 8_in));
    CHECK(hand.document().selectedCuts().size() == 2);
    CHECK(hand.document().isSelected(1));
    CHECK(hand.document().isSelected(2));
    const Vector apart = hand.cornerOf(2) - hand.cornerOf(1);
    const Length firstX = hand.cornerOf(0).x;
    hand.drag(hand.middleOf(1), hand.middleOf(1) + QPoint(100, 0));
    CHECK(hand.cornerOf(1).y > 2_in);
    CHECK(hand.cornerOf(2) - hand.cornerOf(1) == apart);
    CHECK(hand.cornerOf(0) == ClothPoint{firstX, 2_in});
    CHECK(hand.steps() == 1);
    CHECK(hand.document().selectedCuts().size() == 2);
    hand.undo();
    CHECK(hand.cornerOf(1).y == 2_in);
}

TEST_CASE("with Shift a click takes a panel along, and leaves it out again", "[hands]") {
    Hand hand(fourSeats());
    hand.click(hand.middleOf(0));
    hand.click(hand.middleOf(2), Qt::ShiftModifier);
    CHECK(hand.document().selectedCuts().size() == 2);
    hand.click(hand.middleOf(0), Qt::ShiftModifier);
    CHECK(hand.document().selectedCuts() == std::vector<int>{2});
    hand.click(hand.middleOf(3));
    CHECK(hand.document().selectedCuts() == std::vector<int>{3});
}

TEST_CASE("a plain click on one of several is about that one", "[hands]") {
    Hand hand(fourSeats());
    hand.key(Qt::Key_A, Qt::ControlModifier);
    REQUIRE(hand.document().selectedCuts().size() == 4);
    hand.click(hand.middleOf(1));
    CHECK(hand.document().selectedCuts() == std::vector<int>{1});
}

TEST_CASE("by keys, panels are taken along one after the other and nudged together", "[hands]") {
    Hand hand(fourSeats());
    hand.key(Qt::Key_Tab);
    CHECK(hand.document().selectedCut() == 0);
    hand.key(Qt::Key_Right, Qt::ControlModifier | Qt::ShiftModifier);
    hand.key(Qt::Key_Right, Qt::ControlModifier | Qt::ShiftModifier);
    CHECK(hand.document().selectedCuts().size() == 3);
    hand.key(Qt::Key_Right);
    hand.key(Qt::Key_Right);
    for (int i : {0, 1, 2}) CHECK(hand.cornerOf(i).y == 2.25_in);
    CHECK(hand.cornerOf(3).y == 2_in);
    CHECK(hand.steps() == 1);
    hand.key(Qt::Key_Right, Qt::ShiftModifier);
    CHECK(hand.cornerOf(0).y == 3.25_in);
    hand.key(Qt::Key_Escape);
    CHECK(hand.document().selectedCuts().empty());
}

TEST_CASE("of several, the locked ones stay", "[hands]") {
    Job job = fourSeats();
    job.layouts.front().cuts[1].state = CutState::Locked;
    Hand hand(job);
    hand.key(Qt::Key_A, Qt::ControlModifier);
    hand.drag(hand.middleOf(0), hand.middleOf(0) + QPoint(80, 0));
    CHECK(hand.cornerOf(0).y > 2_in);
    CHECK(hand.cornerOf(3).y == hand.cornerOf(0).y);
    CHECK(hand.cornerOf(1).y == 2_in);
    hand.key(Qt::Key_Up);
    CHECK(hand.cornerOf(1) == ClothPoint{14_in, 2_in});
}

TEST_CASE("several go to the tray together, by mouse and by key", "[hands]") {
    Hand hand(fourSeats());
    hand.click(hand.middleOf(0));
    hand.click(hand.middleOf(1), Qt::ShiftModifier);
    hand.drag(hand.middleOf(0), QPoint(300, hand.canvas().viewport()->height() - 8));
    CHECK(hand.document().layout().cuts.size() == 2);
    CHECK(hand.steps() == 1);
    hand.key(Qt::Key_A, Qt::ControlModifier);
    hand.key(Qt::Key_Delete);
    CHECK(hand.document().layout().cuts.empty());
    CHECK(hand.steps() == 2);
    hand.key(Qt::Key_Insert);
    CHECK(hand.document().layout().cuts.size() == 1);
    hand.undo();
    hand.undo();
    hand.undo();
    CHECK(hand.document().layout().cuts.size() == 4);
}

TEST_CASE("two panels change places", "[hands]") {
    Job job = fourSeats();
    job.layouts.front().cuts[3].y = 20_in;
    Hand hand(job);
    hand.click(hand.middleOf(0));
    CHECK_FALSE(hand.window().actions()[ActionId::ChangePlaces]->isEnabled());
    hand.click(hand.middleOf(3), Qt::ShiftModifier);
    hand.key(Qt::Key_X);
    CHECK(hand.cornerOf(0) == ClothPoint{40_in, 20_in});
    CHECK(hand.cornerOf(3) == ClothPoint{1_in, 2_in});
    CHECK(hand.steps() == 1);
    hand.undo();
    CHECK(hand.cornerOf(0) == ClothPoint{1_in, 2_in});
}

TEST_CASE("a panel is laid head to foot against its pair", "[hands]") {
    Hand hand(fourSeats());
    hand.click(hand.middleOf(1));
    hand.key(Qt::Key_F);
    CHECK(degrees(hand.cut(1).turn) == 180);
    CHECK_FALSE(hand.broken(1));
    CHECK(hand.steps() == 1);
    // On cloth with a nap it may not, and the table says so in words.
    Job napped = fourSeats();
    napped.cloths.front().way = Way::One;
    Hand second(napped);
    second.click(second.middleOf(1));
    second.key(Qt::Key_F);
    CHECK(second.steps() == 0);
}

TEST_CASE("everything is pushed towards the cut end", "[hands]") {
    Job job = fourSeats();
    job.layouts.front().cuts[2].x = 1_in;
    job.layouts.front().cuts[2].y = 40_in;
    Hand hand(job);
    hand.key(Qt::Key_P);
    CHECK(hand.cornerOf(0) == ClothPoint{1_in, 0_in});
    CHECK(hand.cornerOf(2) == ClothPoint{1_in, 12.25_in});
    CHECK(hand.steps() == 1);
    hand.key(Qt::Key_P);
    CHECK(hand.steps() == 1); // nothing is left to push
    hand.undo();
    CHECK(hand.cornerOf(0) == ClothPoint{1_in, 2_in});
}

TEST_CASE("near means as near on the screen at every zoom", "[hands]") {
    for (const double zoom : {1.0, 2.5}) {
        Hand hand(fourSeats());
        hand.canvas().zoomBy(zoom, QPointF(200, 300));
        hand.document().select(CutName{"seat", 1, 1});
        hand.canvas().showSelection();
        // Six pixels beyond level with its neighbours attracts; twenty do not.
        hand.press(hand.middleOf(0));
        hand.move(hand.middleOf(0) + QPoint(26, 0));
        const Length off = hand.canvas().lengthOf(26);
        CHECK(hand.document().preview()->layout.cuts[0].y == 2_in + off);
        hand.move(hand.middleOf(0) - QPoint(20, 0)); // 6 px above where it lay
        CHECK(hand.document().preview()->layout.cuts[0].y == 2_in);
        hand.key(Qt::Key_Escape);
        hand.release();
    }
}

TEST_CASE("with Ctrl or Alt held nothing attracts, and what is broken is told", "[hands]") {
    for (const Qt::KeyboardModifier held : {Qt::ControlModifier, Qt::AltModifier}) {
        Hand hand(fourSeats());
        const QPoint from = hand.middleOf(1), to = hand.middleOf(0) + QPoint(5, 3);
        hand.press(from);
        hand.move(to, held);
        CHECK_FALSE(hand.document().preview()->settled.right);
        CHECK(hand.document().preview()->settled.guides.empty());
        hand.release(held);
        CHECK(hand.broken(1));
        CHECK_FALSE(hand.window().standing().firstReason(1).isEmpty());
    }
}
