#include "core/check/check.h"
#include "core/edit/layout_edit.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

/// A 54 in bolt with half an inch of selvage and an inch to square the end; a seat, and two arms.
Job armchair() {
    Cloth cloth = bolt(54_in);
    cloth.selvage = 0.5_in;
    cloth.bolt->square = 1_in;
    return jobOf(cloth, {rectangle("Seat", 24_in, 22_in), rectangle("Arm", 10_in, 20_in, 2)}, 0.25_in);
}

const SheetOf theBolt{"body", std::nullopt};

ClothPoint placeOf(const Layout &layout, int cut) {
    const Cut &c = layout.cuts[std::size_t(cut)];
    return {c.x, c.y};
}

std::optional<Length> lengthOf(const Layout &layout) {
    return layout.cloths.empty() ? std::nullopt : layout.cloths.front().length;
}

} // namespace

TEST_CASE("what is not on the cloth waits beside it, copy by copy, in the order of the list", "[edit]") {
    const Job job = armchair();
    const Layout layout = layoutOf({cutAt("Arm", 0.5_in, 1_in)});
    CHECK(copiesPutAside(job, layout) == std::vector<CopyOf>{{"Seat", 1}, {"Arm", 2}});
    CHECK(copiesLaid(layout, "Arm") == 1);
    CHECK(copiesLaid(layout, "Seat") == 0);
}

TEST_CASE("a copy of two pieces is one copy", "[edit]") {
    Layout layout = layoutOf({cutAt("Arm", 0_in, 0_in), cutAt("Arm", 0_in, 12_in)});
    layout.cuts[0].of = layout.cuts[1].of = 2;
    layout.cuts[1].piece = 2;
    CHECK(copiesLaid(layout, "Arm") == 1);
}

TEST_CASE("a panel laid at the mouse has its middle there, and the length follows", "[edit]") {
    const Layout layout = withCopyLaid(armchair(), {}, {"Seat", 1}, theBolt, {20_in, 15_in});
    REQUIRE(layout.cuts.size() == 1);
    CHECK(placeOf(layout, 0) == ClothPoint{8_in, 4_in});
    CHECK(lengthOf(layout) == 26_in);
}

TEST_CASE("a panel is laid in the turn it likes best", "[edit]") {
    Job job = armchair();
    job.panels[0].run = Run::Railroad;
    const Layout layout = withCopyLaid(job, {}, {"Seat", 1}, theBolt, {20_in, 15_in});
    CHECK(layout.cuts.front().turn == Turn::Deg90);
    CHECK(placeOf(layout, 0) == ClothPoint{9_in, 3_in}); // 22 across and 24 along the roll
}

TEST_CASE("every second copy of a mirrored panel is laid as the mirror image", "[edit]") {
    Job job = armchair();
    job.panels[1].mirror = true;
    Layout layout = withCopyLaid(job, {}, {"Arm", 1}, theBolt, {10_in, 15_in});
    layout = withCopyLaid(job, layout, {"Arm", 2}, theBolt, {30_in, 15_in});
    CHECK_FALSE(layout.cuts[0].mirrored);
    CHECK(layout.cuts[1].mirrored);
}

TEST_CASE("a panel moved beyond the others makes the layout longer, and back again shorter", "[edit]") {
    const Job job = armchair();
    const Layout before = layoutOf({cutAt("Seat", 0.5_in, 1_in), cutAt("Arm", 25_in, 1_in)});
    const Layout beyond = withCutMoved(job, before, 1, theBolt, {25_in, 40_in});
    CHECK(lengthOf(beyond) == 60_in);
    CHECK(lengthOf(withCutMoved(job, beyond, 1, theBolt, {25_in, 1_in})) == 23_in);
}

TEST_CASE("a panel may be put where it breaks every rule: the hand is not held", "[edit]") {
    const Job job = armchair();
    const Layout layout = withCutMoved(job, layoutOf({cutAt("Seat", 0.5_in, 1_in)}), 0, theBolt, {-3_in, 0_in});
    CHECK(placeOf(layout, 0) == ClothPoint{-3_in, 0_in});
}

TEST_CASE("a move to another cloth is told with the cut, and the way home leaves the cut as it was", "[edit]") {
    Job job = armchair();
    job.cloths.push_back(remnantCloth({{0_in, 0_in}, {30_in, 0_in}, {30_in, 30_in}, {0_in, 30_in}}, "left-over"));
    const Layout before = withCutMoved(job, layoutOf({cutAt("Arm", 25_in, 1_in)}), 0, theBolt, {25_in, 1_in});
    const Layout away = withCutMoved(job, before, 0, {"left-over", "A"}, {2_in, 3_in});
    CHECK(away.cuts[0].cloth == "left-over");
    CHECK(away.cuts[0].on == "A");
    CHECK(sheetOf(job, away.cuts[0]) == SheetOf{"left-over", "A"});
    CHECK(lengthOf(away) == std::nullopt); // a remnant has no length to buy
    const Layout home = withCutMoved(job, away, 0, theBolt, {25_in, 1_in});
    CHECK(sheetOf(job, home.cuts[0]) == theBolt);
    CHECK(home.cloths == before.cloths);
}

TEST_CASE("a turn goes about the middle", "[edit]") {
    Job job = armchair();
    job.panels[1].run = Run::Either;
    const Layout layout = withCutTurned(job, layoutOf({cutAt("Arm", 10_in, 10_in)}), 0, Turn::Deg90);
    CHECK(boxOnCloth(job, layout, layout.cuts[0]) == ClothBox{{5_in, 15_in}, {25_in, 25_in}});
    CHECK(layout.conceded.empty());
    CHECK(withCutTurned(job, layout, 0, Turn::Deg0).cuts[0].x == 10_in);
}

TEST_CASE("a turn that is given up for is listed once, and taken off the list with the way back", "[edit]") {
    Job job = armchair();
    job.panels[1].may.turn = true;
    const Layout before = layoutOf({cutAt("Arm", 10_in, 10_in)});
    Layout turned = withCutTurned(job, before, 0, Turn::Deg90);
    turned = withCutTurned(job, turned, 0, Turn::Deg90);
    REQUIRE(turned.conceded.size() == 1);
    CHECK(turned.conceded[0].kind == Concession::Kind::Turn);
    CHECK(turned.conceded[0].panel == "Arm");
    CHECK(withCutTurned(job, turned, 0, Turn::Deg0).conceded.empty());
}

TEST_CASE("the turns offered: what asks nothing first, then what the leave allows", "[edit]") {
    Job job = armchair();
    const Cut arm = cutAt("Arm", 10_in, 10_in);
    using Turns = std::vector<Turn>;
    CHECK(turnsByHand(job, arm) == Turns{Turn::Deg0});
    job.cloths[0].way = Way::Two;
    CHECK(turnsByHand(job, arm) == Turns{Turn::Deg0, Turn::Deg180});
    job.panels[1].may.turn = true;
    CHECK(turnsByHand(job, arm) == Turns{Turn::Deg0, Turn::Deg180, Turn::Deg90, Turn::Deg270});
}

TEST_CASE("a copy put aside takes all its pieces along, and what was given up for it", "[edit]") {
    const Job job = armchair();
    Layout layout = layoutOf({cutAt("Seat", 0.5_in, 1_in), cutAt("Arm", 25_in, 1_in), cutAt("Arm", 25_in, 13_in)});
    layout.cuts[1].of = layout.cuts[2].of = 2;
    layout.cuts[2].piece = 2;
    layout.conceded.push_back({Concession::Kind::Seam, "Arm", 1, {}, {}, {}, {}});
    layout.conceded.push_back({Concession::Kind::Uncentre, "Seat", 1, {}, {}, {}, {}});
    const Layout after = withCopyPutAside(job, layout, {"Arm", 1});
    REQUIRE(after.cuts.size() == 1);
    CHECK(after.cuts[0].panel == "Seat");
    REQUIRE(after.conceded.size() == 1);
    CHECK(after.conceded[0].panel == "Seat");
    CHECK(after.leftOut.empty()); // it waits; nobody said that it may come from other cloth
}

TEST_CASE("a copy that may be cut from any other cloth is left out when put aside, until it is laid again", "[edit]") {
    Job job = armchair();
    job.panels[1].may.otherCloth.any = true;
    const Layout aside = withCopyPutAside(job, layoutOf({cutAt("Arm", 25_in, 1_in)}), {"Arm", 1});
    REQUIRE(aside.leftOut.size() == 1);
    CHECK(aside.leftOut[0].panel == "Arm");
    CHECK(withCopyPutAside(job, aside, {"Arm", 1}).leftOut.size() == 1);
    CHECK(withCopyLaid(job, aside, {"Arm", 1}, theBolt, {20_in, 20_in}).leftOut.empty());
}

TEST_CASE("a nudge is an eighth of an inch, or two millimetres", "[edit]") {
    Job job = armchair();
    const Cut seat = cutAt("Seat", 10_in, 20_in);
    CHECK(oneNudge(job, seat, Heading::TowardsLeft) == ClothPoint{9.875_in, 20_in});
    CHECK(oneNudge(job, seat, Heading::UpTheRoll) == ClothPoint{10_in, 20.125_in});
    job.unit = Unit::Centimetre;
    CHECK(oneNudge(job, seat, Heading::TowardsRight) == ClothPoint{10_in + 2_mm, 20_in});
    CHECK(oneNudge(job, seat, Heading::DownTheRoll) == ClothPoint{10_in, 20_in - 2_mm});
}

TEST_CASE("the next place that way: level with a neighbour, beside it with the gap, at the selvage", "[edit]") {
    const Job job = armchair();
    const Layout layout = layoutOf({cutAt("Seat", 0.5_in, 1_in), cutAt("Arm", 30_in, 9_in)});
    CHECK(nextPlace(job, layout, 1, Heading::DownTheRoll) == ClothPoint{30_in, 3_in}); // tops level
    CHECK(nextPlace(job, layout, 1, Heading::TowardsLeft) == ClothPoint{24.75_in, 9_in});
    CHECK(nextPlace(job, layout, 1, Heading::TowardsRight) == ClothPoint{43.5_in, 9_in});
}

TEST_CASE("before the cloth's edge there is no next place", "[edit]") {
    const Job job = armchair();
    const Layout layout = layoutOf({cutAt("Seat", 0.5_in, 1_in)});
    CHECK(nextPlace(job, layout, 0, Heading::TowardsLeft) == std::nullopt);
    CHECK(nextPlace(job, layout, 0, Heading::DownTheRoll) == std::nullopt);
}

TEST_CASE("a panel centred on a stripe steps from stripe to stripe", "[edit]") {
    Job job = armchair();
    job.cloths[0].pattern = stripes(6_in, 3_in);
    job.panels[0].motif = MotifWish{Centre::Across, {}, {}};
    const Layout layout = layoutOf({cutAt("Seat", 3_in, 1_in)}); // its middle on the stripe at 15 in
    CHECK(nextPlace(job, layout, 0, Heading::TowardsRight) == ClothPoint{9_in, 1_in});
    CHECK(nextPlace(job, layout, 0, Heading::TowardsLeft) == std::nullopt); // 3 in further would lie on the selvage
}

TEST_CASE("laid, stepped into place and judged: what the hand makes is right by the judge too", "[edit]") {
    const Job job = armchair();
    Layout layout = withCopyLaid(job, {}, {"Seat", 1}, theBolt, {12.5_in, 12_in});
    layout = withCopyLaid(job, layout, {"Arm", 1}, theBolt, {29.75_in, 11_in});
    layout = withCopyLaid(job, layout, {"Arm", 2}, theBolt, {40_in, 11_in});
    CHECK(check(job, layout).empty());
    CHECK(lengthOf(layout) == 23_in);
    CHECK_FALSE(check(job, withCutMoved(job, layout, 2, theBolt, {34.5_in, 1_in})).empty());
}
