#include "core/planner/bounds/bounds.h"
#include "core/planner/bounds/dual_feasible.h"
#include "core/planner/bounds/reach.h"
#include "core/planner/solve.h"
#include "tests/core/planner/tiny.h"
#include "tests/core/support/rounds.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::planner;
using namespace tiny;

namespace {

Length t(int ticks) { return Length::ticks(ticks); }

/// A trapezoid like a cushion's border: level bottom and top.
int addTrapezoid(Instance &instance, int bottom, int top, int up, int shift = 0) {
    Outline outline;
    const int left = (bottom - top) / 2 + shift, origin = std::min(0, left);
    outline.ring = {
        {t(-origin), t(0)}, {t(bottom - origin), t(0)}, {t(left + top - origin), t(up)}, {t(left - origin), t(up)}};
    outline.parts = {outline.ring};
    outline.width = boxOf(outline.ring).width();
    outline.height = t(up);
    outline.area = twiceArea(outline.ring) / 2;
    instance.outlines.push_back(outline);
    return int(instance.outlines.size()) - 1;
}

void addItem(Instance &instance, int outline) {
    Item item;
    Option option;
    option.outline = outline;
    item.options = {option};
    item.kind = int(instance.items.size());
    instance.items.push_back(item);
}

} // namespace

TEST_CASE("no bound is above the least length that trying every place finds", "[bounds]") {
    Dice dice(1);
    int tight = 0, asked = 0;
    for (int round = 0; round < test::rounds(1500); ++round) {
        const Instance instance = anything(dice, true);
        const auto least = tiny::leastLength(instance, 14);
        if (!least) continue;
        CAPTURE(round);
        for (const Bound &bound : allBounds()) {
            CAPTURE(std::string(bound.name));
            if (bound.least) REQUIRE(bound.least(instance) <= t(*least));
            // A bound alone, and raised to where a layout can end.
            REQUIRE(leastOf({bound}, instance) <= t(*least));
        }
        const Length all = lowerBound(instance);
        REQUIRE(all <= t(*least));
        ++asked;
        if (all == t(*least)) ++tight;
    }
    // Bounds that said nothing would pass all of the above.
    CHECK(asked > test::rounds(900));
    CHECK(tight * 2 > asked);
}

TEST_CASE("what a bound refuses on remnants, trying every place does not find", "[bounds]") {
    Dice dice(2);
    int refused = 0, impossible = 0;
    for (int round = 0; round < test::rounds(1500); ++round) {
        const Instance instance = anything(dice, false);
        const bool possible = tiny::fits(instance, 0);
        CAPTURE(round);
        for (const Bound &bound : allBounds()) {
            CAPTURE(std::string(bound.name));
            if (possible && bound.refutes) REQUIRE_FALSE(bound.refutes(instance));
        }
        impossible += possible ? 0 : 1;
        refused += cannotFit(instance) ? 1 : 0;
    }
    CHECK(impossible > test::rounds(200));
    CHECK(refused * 3 > impossible);
}

TEST_CASE("any choice of bounds is still a bound, and more of them say no less", "[bounds]") {
    Dice dice(3);
    for (int round = 0; round < 200; ++round) {
        const Instance instance = anything(dice, true);
        std::vector<Bound> some;
        Length before = leastOf(some, instance);
        for (const Bound &bound : allBounds()) {
            some.push_back(bound);
            const Length now = leastOf(some, instance);
            REQUIRE(now >= before);
            before = now;
        }
        REQUIRE(before == lowerBound(instance));
    }
}

TEST_CASE("four panels wider than half the bolt lie one above the other, a gap between", "[bounds]") {
    const Instance instance = bolt(54, {{30, 10}, {28, 12}, {40, 7}, {31, 9}}, 2);
    CHECK(leastByExclusion(instance) == t(10 + 12 + 7 + 9 + 3 * 2));
    CHECK(lowerBound(instance) == t(44));
}

TEST_CASE("on motif places narrow panels exclude one another as well", "[bounds]") {
    // Motifs 27 apart on 54, each panel centred on one: only x = 3.5 and 30.5 would do for 20 wide, and 34 wide has
    // one place, which leaves no second column.
    Instance instance = bolt(54, {{34, 10}, {20, 10}});
    CHECK(leastByExclusion(instance) == t(10));
    instance.items[0].options[0].places.xStep = t(27);
    instance.items[0].options[0].places.x0 = t(10);
    instance.items[1].options[0].places.xStep = t(27);
    instance.items[1].options[0].places.x0 = t(17);
    CHECK(leastByExclusion(instance) == t(20));
    // Level with a motif too: the second starts at the next of its rows.
    for (Item &item : instance.items) item.options[0].places.yStep = t(27);
    CHECK(leastByExclusion(instance) == t(37));
}

TEST_CASE("the bound ends where a panel on its motif place can end", "[bounds]") {
    Instance instance = bolt(54, {{54, 10}, {54, 12}});
    for (Item &item : instance.items) {
        item.options[0].places.yStep = t(9);
        item.options[0].places.y0 = t(4);
    }
    // 4..14 and 22..34, or 4..16 and 22..32.
    CHECK(lowerBound(instance) == t(32));
}

TEST_CASE("too many panels that exclude one another are refused though their area would fit", "[bounds]") {
    const Instance instance = remnant(432, 500, {{230, 170}, {220, 180}, {250, 160}});
    CHECK_FALSE(areaExceeded(instance));
    CHECK(exclusionExceeded(instance));
    CHECK(cannotFit(instance));
    CHECK_FALSE(cannotFit(remnant(432, 510, {{230, 170}, {220, 180}, {250, 160}})));
}

TEST_CASE("trapezoids that tile a bolt have the length of the tiling as their bound", "[bounds]") {
    Instance instance = bolt(40, {});
    addItem(instance, addTrapezoid(instance, 24, 16, 10, -4));
    addItem(instance, addTrapezoid(instance, 16, 24, 10, 4));
    CHECK(lowerBound(instance) == t(10));
    // Both are 22 wide all the way up: no room for two of them on 40.
    Instance wide = bolt(40, {});
    addItem(wide, addTrapezoid(wide, 30, 22, 10));
    addItem(wide, addTrapezoid(wide, 22, 30, 15));
    CHECK(leastByExclusion(wide) == t(25));
}

TEST_CASE("a gap kept corner to corner is less than a gap kept along", "[bounds]") {
    // 5 and 4 on 12 with a gap of 5: three remain between them, so four along keep five slantwise.
    CHECK(tiny::leastLength(bolt(12, {{5, 3}, {4, 3}}, 5), 20) == 10);
    CHECK(leastByExclusion(bolt(12, {{5, 3}, {4, 3}}, 5)) == t(10));
}

TEST_CASE("a flaw and a locked panel take room from the area", "[bounds]") {
    Instance instance = bolt(10, {{5, 10}, {5, 10}});
    CHECK(leastByArea(instance) == t(10));
    instance.sheets[0].flaws = {box(0, 0, 10, 2)};
    CHECK(leastByArea(instance) == t(12));
    instance.fixed.push_back({0, addRectangle(instance, 10, 3), {t(0), t(4)}});
    CHECK(leastByArea(instance) == t(15));
    for (Item &item : instance.items) item.hidden = true;
    CHECK(leastByArea(instance) == t(13));
}

TEST_CASE("dual-feasible functions are superadditive and never fall", "[bounds]") {
    for (std::int64_t capacity : {1, 7, 12, 20, 31}) {
        std::vector<std::int64_t> sizes;
        for (std::int64_t size = 0; size <= capacity; ++size) sizes.push_back(size);
        for (const DualFeasible &f : dualFeasibleFor(sizes, capacity, 100)) {
            for (std::int64_t x = 0; x <= capacity; ++x) {
                REQUIRE(f(x) >= 0);
                if (x > 0) REQUIRE(f(x) >= f(x - 1));
                for (std::int64_t y = 0; x + y <= capacity; ++y) REQUIRE(f(x) + f(y) <= f(x + y));
            }
        }
    }
}

TEST_CASE("dual-feasible functions see that three panels just over a third across take a second row", "[bounds]") {
    const Instance instance = bolt(20, {{7, 6}, {7, 6}, {7, 6}});
    CHECK(leastByArea(instance) == t(7));
    CHECK(leastByDualFeasible(instance) == t(12));
}

TEST_CASE("six to fourteen panels wider than half a remnant too short for them are refused at once", "[bounds]") {
    Dice dice(5);
    for (int n = 6; n <= 14; ++n) {
        std::vector<std::pair<int, int>> sizes;
        int sum = 0;
        for (int i = 0; i < n; ++i) {
            sizes.emplace_back(dice(220, 300), dice(96, 200));
            sum += sizes.back().second;
        }
        CAPTURE(n);
        CHECK(cannotFit(remnant(432, sum - dice(8, 40), sizes)));
        CHECK_FALSE(cannotFit(remnant(432, sum, sizes)));
    }
}

TEST_CASE("bars see more than all other bounds on some cloth, and never too much", "[bounds]") {
    std::vector<Bound> others;
    for (const Bound &bound : allBounds())
        if (bound.name != "bars") others.push_back(bound);
    REQUIRE(others.size() + 1 == allBounds().size());
    Dice dice(7);
    int more = 0;
    for (int round = 0; round < test::rounds(1500); ++round) {
        const Instance instance = anything(dice, true);
        const auto least = tiny::leastLength(instance, 14);
        if (!least) continue;
        CAPTURE(round);
        const Length bars = nextEnd(instance, leastByBars(instance));
        REQUIRE(bars <= t(*least));
        if (bars > leastOf(others, instance)) ++more;
    }
    CHECK(more > test::rounds(10));
}

TEST_CASE("on columns of motifs wide panels lie two to a row, whatever their area says", "[bounds]") {
    // Motifs 10 apart on cloth of 60, panels 21 wide that begin at 4 on a motif: at 4, 14, 24 or 34, so two in a row
    // begin at least 30 apart; and a row has room for no more than two.
    Instance instance = bolt(60, {{21, 10}, {21, 10}, {21, 10}, {21, 10}, {21, 10}});
    for (Item &item : instance.items) {
        item.options[0].places.xStep = t(10);
        item.options[0].places.x0 = t(4);
    }
    CHECK(leastByArea(instance) == t(18));
    CHECK(leastByBars(instance) == t(25));
}
