#include "core/check/check.h"
#include "core/edit/moves.h"
#include "core/figures/figures.h"
#include "core/rules/rules.h"
#include "core/rules/settle.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <random>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

Panel trapezoid(std::string id, Length bottom, Length top, Length up, int count = 1) {
    Panel p = rectangle(std::move(id), bottom, up, count);
    p.shape = Trapezoid{bottom, top, up, {}};
    return p;
}

Job twoWay(Job job) {
    job.cloths.front().way = Way::Two;
    return job;
}

ClothPoint cornerOf(const Layout &layout, int cut) {
    return {layout.cuts[std::size_t(cut)].x, layout.cuts[std::size_t(cut)].y};
}

} // namespace

TEST_CASE("several panels move as far as each other, locked and cut ones stay", "[moves]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Seat", 10_in, 10_in, 4)});
    Layout layout = layoutOf({cutAt("Seat", 0_in, 0_in), cutAt("Seat", 12_in, 0_in, Turn::Deg0, 2),
                              cutAt("Seat", 24_in, 0_in, Turn::Deg0, 3), cutAt("Seat", 36_in, 0_in, Turn::Deg0, 4)});
    layout.cuts[2].state = CutState::Locked;
    layout.cuts[3].state = CutState::Cut;
    const Layout moved = withCutsMoved(job, layout, {0, 1, 2, 3}, {1_in, 5_in});
    CHECK(cornerOf(moved, 0) == ClothPoint{1_in, 5_in});
    CHECK(cornerOf(moved, 1) == ClothPoint{13_in, 5_in});
    CHECK(cornerOf(moved, 2) == ClothPoint{24_in, 0_in});
    CHECK(cornerOf(moved, 3) == ClothPoint{36_in, 0_in});
    CHECK(moved.cloths.front().length == 15_in);
}

TEST_CASE("a handful comes to rest against what any of its panels meets", "[moves]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Seat", 10_in, 10_in, 2), rectangle("Arm", 10_in, 4_in)}, 0.25_in);
    // The second seat meets the arm first, though the first one is in the hand.
    const Layout layout =
        layoutOf({cutAt("Seat", 0_in, 30_in), cutAt("Seat", 12_in, 30_in, Turn::Deg0, 2), cutAt("Arm", 12_in, 0_in)});
    const Settled s = settleTogether(job, layout, {0, 1}, 0, {0.5_in, 4.5_in}, 1_in);
    CHECK(s.right);
    CHECK(s.corner == ClothPoint{0_in, 4.25_in});
    REQUIRE(s.guides.size() == 2);
    const auto says = [&](const std::string &text) {
        return std::any_of(s.guides.begin(), s.guides.end(), [&](const Guide &g) { return g.text == text; });
    };
    CHECK(says("1/4 in from Arm"));
}

TEST_CASE("a handful goes from stripe to stripe with the one that is tied to them", "[moves]") {
    Cloth cloth = bolt(54_in);
    cloth.pattern = stripes(6_in, 3_in);
    const Job job =
        jobOf(cloth, {centred(rectangle("Seat", 10_in, 10_in), Centre::Across), rectangle("Arm", 5_in, 5_in)});
    const Layout layout = layoutOf({cutAt("Seat", 4_in, 0_in), cutAt("Arm", 20_in, 0_in)});
    // The arm is in the hand; the seat is centred on the stripe at 9 in and goes on to the one at 15 in.
    const Settled s = settleTogether(job, layout, {0, 1}, 1, {25_in, 20_in}, 0.5_in);
    CHECK(s.right);
    CHECK(s.corner.x == 26_in);
    const Settled free = settleTogether(job, layout, {0, 1}, 1, {25_in, 20_in}, Length{});
    CHECK_FALSE(free.right);
    CHECK(free.corner == ClothPoint{25_in, 20_in});
}

TEST_CASE("a handful let go on another panel rests where all of it may", "[moves]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Seat", 10_in, 10_in, 2), rectangle("Arm", 20_in, 20_in)}, 0.25_in);
    const Layout layout =
        layoutOf({cutAt("Seat", 30_in, 0_in), cutAt("Seat", 42_in, 0_in, Turn::Deg0, 2), cutAt("Arm", 0_in, 0_in)});
    const Settled s = restTogether(job, layout, {0, 1}, 0, {6_in, 5_in}, 0.5_in);
    REQUIRE(s.right);
    const Layout after = withCutsMoved(job, layout, {0, 1}, s.corner - ClothPoint{30_in, 0_in});
    CHECK(breaches(job, after).empty());
}

TEST_CASE("panels of one size change places exactly", "[moves]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Seat", 10_in, 10_in), rectangle("Back", 10_in, 10_in)});
    const Layout layout = layoutOf({cutAt("Seat", 0_in, 0_in), cutAt("Back", 30_in, 14_in)});
    const Moved moved = withCutsSwapped(job, layout, 0, 1);
    REQUIRE(moved.layout);
    CHECK(cornerOf(*moved.layout, 0) == ClothPoint{30_in, 14_in});
    CHECK(cornerOf(*moved.layout, 1) == ClothPoint{0_in, 0_in});
}

TEST_CASE("panels of two sizes change places as near as they may", "[moves]") {
    const Job job = jobOf(bolt(40_in), {rectangle("Seat", 20_in, 10_in), rectangle("Arm", 10_in, 10_in)}, 0.25_in);
    const Layout layout = layoutOf({cutAt("Seat", 0_in, 0_in), cutAt("Arm", 30_in, 0_in)});
    // Corner to corner the seat would hang over the edge of the cloth.
    const Moved moved = withCutsSwapped(job, layout, 0, 1);
    REQUIRE(moved.layout);
    CHECK(cornerOf(*moved.layout, 0) == ClothPoint{20_in, 0_in});
    CHECK(cornerOf(*moved.layout, 1) == ClothPoint{0_in, 0_in});
    CHECK(breaches(job, *moved.layout).empty());
}

TEST_CASE("what is locked or has no room does not change places, and is told why", "[moves]") {
    Job job = jobOf(bolt(54_in), {rectangle("Seat", 50_in, 20_in), rectangle("Arm", 10_in, 10_in)});
    job.cloths.front().bolt->length = 30_in;
    Layout layout = layoutOf({cutAt("Seat", 0_in, 0_in), cutAt("Arm", 40_in, 20_in)});
    const Moved crowded = withCutsSwapped(job, layout, 0, 1);
    CHECK(crowded.layout.has_value()); // the seat shifts to the bolt's end, the arm below it
    layout.cuts[1].state = CutState::Locked;
    const Moved locked = withCutsSwapped(job, layout, 0, 1);
    CHECK_FALSE(locked.layout);
    CHECK(locked.why == "Arm is locked: unlock it to move it");
    job.cloths.front().bolt->length = 24_in;
    layout = layoutOf({cutAt("Seat", 0_in, 0_in), cutAt("Arm", 40_in, 14_in)});
    const Moved none = withCutsSwapped(job, layout, 0, 1);
    CHECK_FALSE(none.layout);
    CHECK_FALSE(none.why.empty());
}

TEST_CASE("head to foot, tapered panels nest", "[moves]") {
    // Two pieces, 20 in at the bottom and 12 in at the top, 16 in up: each side leans in by 4 in, so that head to foot
    // the pair is as wide as 20 + 12 in, and not as two boxes, 40 in. Geometry: with parallel sides, both slants are
    // the same line.
    const Job job = twoWay(jobOf(bolt(54_in), {trapezoid("Arm", 20_in, 12_in, 16_in, 2)}));
    const Layout layout = layoutOf({cutAt("Arm", 0_in, 0_in), cutAt("Arm", 30_in, 20_in, Turn::Deg0, 2)});
    REQUIRE(pairOf(job, layout, 1) == 0);
    const Moved moved = withHeadToFoot(job, layout, 1, 0);
    REQUIRE(moved.layout);
    CHECK(moved.layout->cuts[1].turn == Turn::Deg180);
    CHECK(cornerOf(*moved.layout, 1).y == 0_in);
    CHECK(abs(cornerOf(*moved.layout, 1).x - 16_in) <= Length::ticks(4));
    CHECK(moved.layout->cloths.front().length == 16_in);
    CHECK(breaches(job, *moved.layout).empty());
}

TEST_CASE("on cloth with a nap nothing lies head to foot", "[moves]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Arm", 20_in, 16_in, 2)});
    const Layout layout = layoutOf({cutAt("Arm", 0_in, 0_in), cutAt("Arm", 30_in, 20_in, Turn::Deg0, 2)});
    const Moved moved = withHeadToFoot(job, layout, 1, 0);
    CHECK_FALSE(moved.layout);
    CHECK(moved.why == "Arm may not lie head to foot: nap, print or its own wish gives it a top");
}

TEST_CASE("a panel without a second copy makes no pair", "[moves]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Arm", 20_in, 16_in), rectangle("Seat", 20_in, 16_in)});
    const Layout layout = layoutOf({cutAt("Arm", 0_in, 0_in), cutAt("Seat", 30_in, 0_in)});
    CHECK_FALSE(pairOf(job, layout, 0));
}

TEST_CASE("pushed towards the cut end, panels close up and keep the gap", "[moves]") {
    Job job = jobOf(bolt(54_in), {rectangle("Seat", 20_in, 10_in, 3)}, 0.25_in);
    job.cloths.front().bolt->square = 1_in;
    const Layout layout = layoutOf({cutAt("Seat", 0_in, 50_in), cutAt("Seat", 5_in, 20_in, Turn::Deg0, 2),
                                    cutAt("Seat", 30_in, 33_in, Turn::Deg0, 3)});
    const Layout pushed = withCutsPushed(job, layout, {0, 1, 2});
    CHECK(cornerOf(pushed, 1) == ClothPoint{5_in, 1_in});
    CHECK(cornerOf(pushed, 0) == ClothPoint{0_in, 11.25_in});
    CHECK(cornerOf(pushed, 2) == ClothPoint{30_in, 1_in});
    CHECK(pushed.cloths.front().length == 21.25_in);
}

TEST_CASE("pushed, a panel tied to the pattern goes as many repeats as it can", "[moves]") {
    Cloth cloth = bolt(54_in);
    cloth.pattern = motifs(9_in, 7_in, {4.5_in, 3_in});
    const Job job = jobOf(cloth, {centred(rectangle("Seat", 9_in, 10_in), Centre::Both)});
    // Its middle lies on the motif at 3 + 6·7 in; the lowest motif that leaves it on the cloth is at 10 in.
    const Layout pushed = withCutsPushed(job, layoutOf({cutAt("Seat", 0_in, 40_in)}), {0});
    CHECK(cornerOf(pushed, 0) == ClothPoint{0_in, 5_in});
}

TEST_CASE("a pushed panel does not jump over one that is locked", "[moves]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Seat", 20_in, 10_in, 2)});
    Layout layout = layoutOf({cutAt("Seat", 0_in, 20_in), cutAt("Seat", 0_in, 40_in, Turn::Deg0, 2)});
    layout.cuts[0].state = CutState::Locked;
    const Layout pushed = withCutsPushed(job, layout, {0, 1});
    CHECK(cornerOf(pushed, 0) == ClothPoint{0_in, 20_in});
    CHECK(cornerOf(pushed, 1) == ClothPoint{0_in, 30_in});
}

TEST_CASE("slanted sides close up beyond their boxes", "[moves]") {
    // The lower one's right side falls by 10 in over 8 in; where the upper one's corner meets it, 6 in from its foot,
    // it is 7 1/2 in high (similar triangles).
    const Job job = jobOf(bolt(54_in), {trapezoid("Arm", 20_in, 4_in, 10_in, 2)});
    const Layout layout = layoutOf({cutAt("Arm", 0_in, 0_in), cutAt("Arm", 14_in, 30_in, Turn::Deg0, 2)});
    const Layout pushed = withCutsPushed(job, layout, {1});
    CHECK(abs(cornerOf(pushed, 1).y - 7.5_in) <= Length::ticks(4));
    CHECK(breaches(job, pushed).empty());
}

TEST_CASE("whatever is pushed, right layouts stay right and no panel goes up", "[moves]") {
    std::minstd_rand random(11);
    const auto upTo = [&](int most) { return int(random() % unsigned(most + 1)); };
    for (int round = 0; round < 60; ++round) {
        Cloth cloth = bolt(54_in);
        if (upTo(1)) cloth.pattern = motifs(9_in, 6_in, {2_in, 1_in}, upTo(1) ? 3_in : Length{});
        std::vector<Panel> panels;
        Layout layout;
        Length y;
        for (int i = 0; i < 6; ++i) {
            Panel p = rectangle("P" + std::to_string(i), (4 + upTo(20)) * 1_in, (4 + upTo(12)) * 1_in);
            if (cloth.pattern && upTo(2) == 0) p.motif = MotifWish{Centre::Both, {}, {}};
            panels.push_back(p);
        }
        const Job job = jobOf(cloth, panels, 0.25_in);
        for (int i = 0; i < 6; ++i) {
            layout.cuts.push_back(cutAt("P" + std::to_string(i), Length{}, Length{}));
            const Settled s = rest(job, layout, i, {upTo(40) * 1_in, y + upTo(10) * 1_in}, 1_in);
            REQUIRE(s.right);
            layout.cuts.back().x = s.corner.x;
            layout.cuts.back().y = s.corner.y;
            layout.cuts.back().state = upTo(5) == 0 ? CutState::Locked : CutState::Planned;
            y += upTo(12) * 1_in;
        }
        layout = withFigures(job, layout);
        std::vector<int> all{0, 1, 2, 3, 4, 5};
        const Layout pushed = withCutsPushed(job, layout, all);
        INFO("round " << round);
        CHECK(check(job, pushed).empty());
        for (std::size_t i = 0; i < 6; ++i) {
            CHECK(pushed.cuts[i].y <= layout.cuts[i].y);
            CHECK(pushed.cuts[i].x == layout.cuts[i].x);
            if (layout.cuts[i].state == CutState::Locked) CHECK(pushed.cuts[i] == layout.cuts[i]);
        }
        CHECK(withCutsPushed(job, pushed, all) == pushed); // there is nothing left to push
    }
}

TEST_CASE("put aside together, a copy that is partly cut stays", "[moves]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Seat", 10_in, 10_in, 3)});
    Layout layout = layoutOf({cutAt("Seat", 0_in, 0_in), cutAt("Seat", 12_in, 0_in, Turn::Deg0, 2),
                              cutAt("Seat", 24_in, 0_in, Turn::Deg0, 3)});
    layout.cuts[1].state = CutState::Cut;
    const Layout after = withCutsPutAside(job, layout, {0, 1});
    REQUIRE(after.cuts.size() == 2);
    CHECK(after.cuts[0].copy == 2);
    CHECK(after.cuts[1].copy == 3);
}
