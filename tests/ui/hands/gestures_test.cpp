// What is done with the mouse is done by key as well, and the other way round; and what stops a panel is told there.

#include "tests/ui/hands/hand.h"
#include "ui/drawing/colours.h"
#include "ui/panes/standing_pane.h"

#include <QHelpEvent>
#include <QMenu>
#include <QMenuBar>
#include <QScrollBar>
#include <QToolTip>
#include <QWheelEvent>

#include <functional>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;
using namespace boltwright::ui;
using namespace Qt::StringLiterals;

namespace {

/// Opens the menu that holds an action and presses on it, as a hand does.
void chooseFromMenu(MainWindow &window, QAction *wanted) {
    QMenuBar *bar = window.menuBar();
    for (QAction *title : bar->actions())
        if (title->menu() && title->menu()->actions().contains(wanted)) {
            QTest::mouseClick(bar, Qt::LeftButton, {}, bar->actionGeometry(title).center());
            QMenu *menu = title->menu();
            REQUIRE(QTest::qWaitForWindowExposed(menu));
            QTest::mouseClick(menu, Qt::LeftButton, {}, menu->actionGeometry(wanted).center());
            QTest::qWait(10);
            return;
        }
    FAIL("no menu holds it");
}

void turnWheel(Canvas &canvas, QPoint angle, Qt::KeyboardModifiers keys = {}) {
    const QPointF at(200, 200);
    QWheelEvent event(at, canvas.viewport()->mapToGlobal(at), {}, angle, Qt::NoButton, keys, Qt::NoScrollPhase, false);
    QApplication::sendEvent(canvas.viewport(), &event);
}

} // namespace

TEST_CASE("what is done to panels by key is done by the menu just so", "[hands]") {
    struct Deed {
        ActionId action;
        Qt::Key key;
        std::vector<int> selected;
    };
    Job job = fourSeats();
    job.layouts.front().cuts[2].y = 30_in; // something to push
    for (const Deed &deed : {Deed{ActionId::Turn, Qt::Key_R, {1}}, Deed{ActionId::HeadToFoot, Qt::Key_F, {1}},
                             Deed{ActionId::ChangePlaces, Qt::Key_X, {0, 2}},
                             Deed{ActionId::PushToCutEnd, Qt::Key_P, {}}, Deed{ActionId::Lock, Qt::Key_L, {1}},
                             Deed{ActionId::MarkCut, Qt::Key_C, {1}}, Deed{ActionId::PutAside, Qt::Key_Delete, {1}}}) {
        const auto after = [&](bool byKey) {
            Hand hand(job);
            for (std::size_t i = 0; i < deed.selected.size(); ++i)
                hand.click(hand.middleOf(deed.selected[i]), i > 0 ? Qt::ShiftModifier : Qt::NoModifier);
            if (byKey)
                hand.key(deed.key);
            else
                chooseFromMenu(hand.window(), hand.window().actions()[deed.action]);
            CHECK(hand.steps() == 1);
            return hand.document().layout();
        };
        INFO(actionTable()[std::size_t(deed.action)].text);
        const Layout key = after(true), menu = after(false);
        CHECK(key == menu);
        CHECK(key != job.layouts.front());
    }
    // Laid on the cloth again, each way.
    for (const bool byKey : {true, false}) {
        Hand hand(job);
        hand.click(hand.middleOf(1));
        hand.key(Qt::Key_Delete);
        REQUIRE(hand.document().layout().cuts.size() == 3);
        if (byKey)
            hand.key(Qt::Key_Insert);
        else
            chooseFromMenu(hand.window(), hand.window().actions()[ActionId::LayDown]);
        CHECK(hand.document().layout().cuts.size() == 4);
    }
}

TEST_CASE("the view is moved by hand, by wheel and by key, and a drag of the view moves no panel", "[hands]") {
    Hand hand(fourSeats());
    Canvas &canvas = hand.canvas();
    canvas.zoomBy(4);
    QTest::qWait(10);
    const auto seen = [&] { return hand.at(10_in, 10_in); };
    QScrollBar *along = canvas.horizontalScrollBar(), *across = canvas.verticalScrollBar();
    REQUIRE(along->maximum() > 200);
    REQUIRE(across->maximum() > 200);
    along->setValue(100);
    across->setValue(100);
    const QPoint home = seen(), from(300, 200), by(-40, -25);
    // The middle button takes hold of the view itself: the cloth stays under it.
    QTest::mousePress(canvas.viewport(), Qt::MiddleButton, {}, from);
    moveMouse(canvas.viewport(), from + by);
    QTest::mouseRelease(canvas.viewport(), Qt::MiddleButton, {}, from + by);
    CHECK(seen() == home + by);
    // So does Space held down, with the left one; let go of, a drag means panels again.
    QTest::keyPress(&canvas, Qt::Key_Space);
    hand.drag(from, from - by);
    QTest::keyRelease(&canvas, Qt::Key_Space);
    CHECK(seen() == home);
    CHECK(hand.steps() == 0);
    CHECK(hand.document().selection() == std::nullopt);
    // The wheel unrolls, with Shift it goes up and down, with Ctrl nearer and further.
    turnWheel(canvas, {0, -60});
    CHECK(seen() == home - QPoint(60, 0));
    turnWheel(canvas, {0, 60});
    turnWheel(canvas, {0, -60}, Qt::ShiftModifier);
    CHECK(seen() == home - QPoint(0, 60));
    turnWheel(canvas, {0, 60}, Qt::ShiftModifier);
    const Length before = canvas.lengthOf(100);
    turnWheel(canvas, {0, 240}, Qt::ControlModifier);
    CHECK(canvas.lengthOf(100) < before);
    // By key: Home and End, Page Down and Page Up, plus and minus.
    hand.key(Qt::Key_Home);
    CHECK(along->value() == 0);
    hand.key(Qt::Key_PageDown);
    CHECK(along->value() > 0);
    hand.key(Qt::Key_PageUp);
    CHECK(along->value() == 0);
    hand.key(Qt::Key_End);
    CHECK(along->value() == along->maximum());
    const Length near = canvas.lengthOf(100);
    QTest::keyClick(&hand.window(), Qt::Key_Minus, Qt::ControlModifier);
    CHECK(canvas.lengthOf(100) > near);
    QTest::keyClick(&hand.window(), Qt::Key_Plus, Qt::ControlModifier);
    CHECK(abs(canvas.lengthOf(100) - near) < 0.01_in);
}

namespace {

struct Stopped {
    const char *rule;
    Job job;
    int cut;       ///< the one that is dragged
    Vector by;     ///< how far, on the cloth
    QString words; ///< what is told then
};

Job withSeats(const std::function<void(Job &)> &change) {
    Job job = fourSeats();
    change(job);
    return job;
}

std::vector<Stopped> everyRule() {
    const auto alone = [](Job &job) { job.layouts.front().cuts.resize(1); };
    std::vector<Stopped> all;
    all.push_back({"off the cloth", withSeats(alone), 0, {-3_in, 0_in}, u"off the cloth at the left selvage"_s});
    all.push_back({"the selvage",
                   withSeats([&](Job &job) {
                       alone(job);
                       job.cloths[0].selvage = 2.5_in;
                       job.layouts.front().cuts[0].x = 3_in;
                   }),
                   0,
                   {-2_in, 0_in},
                   u"too near the left selvage"_s});
    all.push_back({"a flaw",
                   withSeats([&](Job &job) {
                       alone(job);
                       job.cloths[0].bolt->flaws = {{ringOf(ClothBox{{20_in, 2_in}, {22_in, 4_in}}), "slub", {}}};
                   }),
                   0,
                   {12_in, 0_in},
                   u"lies over a flaw (slub)"_s});
    all.push_back({"a neighbour", fourSeats(), 1, {-5_in, 0_in}, u"lies over"_s});
    all.push_back({"the gap", fourSeats(), 1, {-2.875_in, 0_in}, u"is kept between cuts"_s});
    all.push_back({"the motif",
                   withSeats([&](Job &job) {
                       alone(job);
                       job.cloths[0].pattern = stripes(6_in, 0_in);
                       job.panels[0].motif = MotifWish{Centre::Across, {}, {}};
                       job.layouts.front().cuts[0].x = 1_in;
                   }),
                   0,
                   {2_in, 0_in},
                   u"off the motif"_s});
    all.push_back({"its twins",
                   withSeats([&](Job &job) {
                       job.layouts.front().cuts.resize(2);
                       job.cloths[0].pattern = stripes(6_in, 0_in);
                       job.panels[0].alike = true;
                       job.layouts.front().cuts[1].x = 19_in;
                   }),
                   1,
                   {2_in, 0_in},
                   u"another part of the repeat than its twin"_s});
    all.push_back({"a pattern that runs on",
                   withSeats([&](Job &job) {
                       job.layouts.front().cuts.resize(1);
                       job.cloths[0].pattern = stripes(6_in, 0_in);
                       Panel back = rectangle("back", 10_in, 12_in);
                       back.name = "Back";
                       back.mark = "BK";
                       job.panels[0].count = 1;
                       job.panels.push_back(back);
                       Flow flow;
                       flow.from = {"back", Bottom, {}, {}};
                       flow.to = {"seat", Top, {}, {}};
                       job.flows = {flow};
                       job.layouts.front().cuts.push_back(cutAt("back", 19_in, 2_in));
                   }),
                   1,
                   {2_in, 0_in},
                   u"the pattern misses"_s});
    // A remnant with its lower right corner gone, and a panel in the middle of it.
    const auto onRemnant = [&](Length kept) {
        return withSeats([&](Job &job) {
            job.cloths = {remnantCloth({{0_in, 0_in}, {30_in, 0_in}, {40_in, 10_in}, {40_in, 30_in}, {0_in, 30_in}})};
            job.cloths[0].edge = kept;
            job.panels[0].count = 1;
            job.layouts.front().cuts = {cutAt("seat", 12_in, 8_in)};
            job.layouts.front().cuts[0].on = "A";
        });
    };
    all.push_back({"off a remnant", onRemnant({}), 0, {-14_in, 0_in}, u"reaches off the remnant"_s});
    all.push_back({"over a remnant's slanted edge", onRemnant({}), 0, {14_in, -6_in}, u"reaches off the remnant"_s});
    all.push_back(
        {"near a remnant's edge", onRemnant(1_in), 0, {-11.5_in, 0_in}, u"less than 1 in from the remnant's edge"_s});
    all.push_back({"near a remnant's slanted edge",
                   onRemnant(1_in),
                   0,
                   {13_in, -2_in},
                   u"less than 1 in from the remnant's edge"_s});
    return all;
}

int brokenPixels(Canvas &canvas, const QRectF &around) {
    const QImage image = canvas.viewport()->grab().toImage();
    const QRect area = around.toAlignedRect().adjusted(-4, -4, 4, 4) & image.rect();
    int count = 0;
    for (int y = area.top(); y <= area.bottom(); ++y)
        for (int x = area.left(); x <= area.right(); ++x)
            count += image.pixelColor(x, y) == coloursOf(canvas.palette()).broken;
    return count;
}

} // namespace

TEST_CASE("every rule that stops a panel is told where it stops it", "[hands]") {
    for (const Stopped &stopped : everyRule()) {
        INFO(stopped.rule);
        Hand hand(stopped.job);
        const auto told = [&] { return hand.window().standing().firstReason(stopped.cut); };
        REQUIRE_FALSE(hand.broken(stopped.cut));
        // What is red there already: the line of the last cut, which goes along the panel's edge.
        const int before = brokenPixels(hand.canvas(), hand.canvas().cutRect(stopped.cut));
        const auto tag = [&] { // where the words stand: below the panel, from its left edge on
            const QRectF panel = hand.canvas().cutRect(stopped.cut);
            return QRectF(panel.left() + 8, panel.bottom() + 14, 40, 8);
        };
        const QPoint from = hand.middleOf(stopped.cut);
        const QPoint to = from + hand.at(stopped.by.x, stopped.by.y) - hand.at(Length{}, Length{});
        hand.press(from);
        hand.move(to, Qt::AltModifier);
        // In the hand already: in words, in the list at the right, and drawn at the panel itself.
        INFO(told().toStdString());
        CHECK(told().contains(stopped.words));
        CHECK(hand.window().standingPane().sentences().join(u'\n').contains(stopped.words));
        CHECK(brokenPixels(hand.canvas(), hand.canvas().cutRect(stopped.cut)) > before + 40);
        CHECK(brokenPixels(hand.canvas(), tag()) > 200);
        hand.release(Qt::AltModifier);
        CHECK(hand.broken(stopped.cut));
        CHECK(told().contains(stopped.words));
        QHelpEvent asked(QEvent::ToolTip, hand.middleOf(stopped.cut),
                         hand.canvas().viewport()->mapToGlobal(hand.middleOf(stopped.cut)));
        QApplication::sendEvent(hand.canvas().viewport(), &asked);
        CHECK(QToolTip::text().contains(stopped.words));
        QToolTip::hideText();
        hand.undo();
        CHECK_FALSE(hand.broken(stopped.cut));
    }
}

TEST_CASE("what cannot be dragged into is told as well: a wrong turn, too little at an edge, cut already", "[hands]") {
    struct Told {
        Job job;
        QString words;
    };
    Job turned = fourSeats();
    turned.cloths[0].way = Way::One;
    turned.layouts.front().cuts[1].turn = Turn::Deg180;
    Job trimmed = fourSeats();
    trimmed.panels[0].allow.assign(4, 1_in);
    trimmed.layouts.front().cuts.resize(2);
    trimmed.layouts.front().cuts[1].x = 20_in;
    trimmed.layouts.front().cuts[1].allow = EdgeLengths(4, 0.5_in);
    Job done = fourSeats();
    done.layouts.front().name = "first";
    done.layouts.front().cuts[1].state = CutState::Cut;
    Layout later = fourSeats().layouts.front();
    later.cuts[1].y = 20_in;
    done.layouts.push_back(later);
    for (const Told &told : {Told{turned, u"and is to be"_s}, Told{trimmed, u"and it needs"_s},
                             Told{done, u"is already cut, and lay elsewhere"_s}}) {
        INFO(told.words.toStdString());
        Hand hand(told.job);
        for (int i = 0; i < int(told.job.layouts.size()); ++i) hand.document().setLayoutIndex(i);
        QTest::qWait(10);
        CHECK(hand.broken(1));
        CHECK(hand.window().standing().firstReason(1).contains(told.words));
        CHECK(hand.window().standingPane().sentences().join(u'\n').contains(told.words));
        CHECK(brokenPixels(hand.canvas(), hand.canvas().cutRect(1)) > 10);
    }
}

TEST_CASE("while a panel is in the hand its neighbours keep their outlines, and it alone is torn", "[hands]") {
    Hand hand(fourSeats());
    // The red of the tags and of the line of the last cut is not looked at: neighbours to the right, their upper half.
    const auto tornAt = [&](int cut) {
        QRectF upper = hand.canvas().cutRect(cut);
        upper.setHeight(upper.height() * 0.4);
        upper.setWidth(upper.width() * 0.5);
        return brokenPixels(hand.canvas(), upper);
    };
    const int before[] = {tornAt(0), tornAt(1), tornAt(2), tornAt(3)};
    const QPoint from = hand.middleOf(1);
    hand.press(from);
    hand.move(from + QPoint(0, int(hand.canvas().cutRect(1).height() * 0.9)), Qt::AltModifier); // over the third
    CHECK(hand.broken(1));
    CHECK(tornAt(0) == before[0]);
    CHECK(tornAt(3) == before[3]);
    hand.canvas().zoomBy(1.01); // everything that lies still is painted anew
    CHECK(tornAt(3) <= before[3] + 4);
    for (const int neighbour : {0, 2, 3}) {
        INFO(neighbour);
        CHECK_FALSE(hand.window().standing().isBrokenAtRest(neighbour));
    }
    CHECK(hand.window().standing().isBroken(2));
    hand.release(Qt::AltModifier);
    CHECK(hand.window().standing().isBrokenAtRest(2)); // let go of there, the two lie over each other
}
