#include "core/planner/rectangle_search.h"
#include "core/planner/separation.h"
#include "core/planner/solve.h"
#include "tests/core/planner/tiny.h"

#include <catch2/catch.hpp>

#include <string>
#include <utility>
#include <vector>

using namespace boltwright;
using namespace boltwright::planner;

namespace {

Limits stepsOnly(std::int64_t steps, int threads = 1) {
    Limits limits;
    limits.steps = steps;
    limits.threads = threads;
    return limits;
}

/// Hopper & Turton 2001, "An empirical investigation of meta-heuristic and heuristic algorithms for a 2D packing
/// problem", European Journal of Operational Research 128: 34-57, class C: rectangles cut from a sheet without waste,
/// so that the height of the sheet is the least there is.
struct PerfectPacking {
    std::string name;
    int width, height;
    std::vector<std::pair<int, int>> sizes;
};

const std::vector<PerfectPacking> perfectPackings = {
    {"C1P1",
     20,
     20,
     {{2, 12},
      {7, 12},
      {8, 6},
      {3, 6},
      {3, 5},
      {5, 5},
      {3, 12},
      {3, 7},
      {5, 7},
      {2, 6},
      {3, 2},
      {4, 2},
      {3, 4},
      {4, 4},
      {9, 2},
      {11, 2}}},
    {"C1P2",
     20,
     20,
     {{4, 1},
      {4, 5},
      {9, 4},
      {3, 5},
      {3, 9},
      {1, 4},
      {5, 3},
      {4, 1},
      {5, 5},
      {7, 2},
      {9, 3},
      {3, 13},
      {2, 8},
      {15, 4},
      {5, 4},
      {10, 6},
      {7, 2}}},
    {"C1P3",
     20,
     20,
     {{4, 14},
      {5, 2},
      {2, 2},
      {9, 7},
      {5, 5},
      {2, 5},
      {7, 7},
      {3, 5},
      {6, 5},
      {3, 2},
      {6, 2},
      {4, 6},
      {6, 3},
      {10, 3},
      {6, 3},
      {10, 3}}},
    {"C2P1", 40, 15, {{11, 3}, {13, 3}, {9, 2},  {7, 2},  {9, 3},  {7, 3}, {11, 2}, {13, 2}, {11, 4},
                      {13, 4}, {3, 5},  {11, 2}, {2, 2},  {11, 3}, {2, 3}, {5, 4},  {6, 4},  {12, 2},
                      {1, 2},  {3, 5},  {13, 5}, {12, 4}, {1, 4},  {5, 2}, {6, 2}}},
    {"C3P1", 60, 30, {{7, 5},  {14, 5},  {14, 8}, {4, 8}, {21, 13}, {7, 11}, {14, 11}, {14, 5}, {4, 5}, {18, 3},
                      {21, 3}, {17, 11}, {4, 11}, {7, 4}, {5, 4},   {6, 7},  {18, 5},  {3, 5},  {7, 3}, {5, 3},
                      {18, 4}, {3, 4},   {12, 2}, {6, 2}, {18, 5},  {21, 5}, {17, 3},  {4, 3}}},
};

} // namespace

TEST_CASE("perfect packings of the literature are found again", "[rectangles]") {
    for (const PerfectPacking &p : perfectPackings) {
        INFO(p.name);
        const Instance instance = tiny::bolt(p.width, p.sizes);
        const Outcome o = solve(instance, stepsOnly(20000));
        REQUIRE(o.kind == Outcome::Kind::Fits);
        CHECK(holds(instance, o.placements));
        CHECK(o.length == Length::ticks(p.height));
        CHECK(o.proved);
    }
}

TEST_CASE("panels that go side by side lie side by side", "[rectangles]") {
    const Outcome o = solve(tiny::bolt(10, {{6, 4}, {4, 4}, {10, 3}}), stepsOnly(50));
    REQUIRE(o.kind == Outcome::Kind::Fits);
    CHECK(o.length == Length::ticks(7));
    CHECK(o.proved);
}

TEST_CASE("the gap is kept between panels and not at the selvage", "[rectangles]") {
    CHECK(solve(tiny::bolt(11, {{5, 4}, {5, 4}, {11, 3}}, 1), stepsOnly(50)).length == Length::ticks(8));
    CHECK(solve(tiny::bolt(10, {{5, 4}, {5, 4}}, 1), stepsOnly(50)).length == Length::ticks(9));
}

TEST_CASE("a panel tied to a motif waits for it, and another fills the room below", "[rectangles]") {
    Instance instance = tiny::bolt(10, {{10, 5}, {10, 3}});
    instance.items[0].options[0].places.yStep = Length::ticks(20);
    instance.items[0].options[0].places.y0 = Length::ticks(3);
    const Outcome o = solve(instance, stepsOnly(100));
    REQUIRE(o.kind == Outcome::Kind::Fits);
    CHECK(o.length == Length::ticks(8));
}

TEST_CASE("a notched remnant with a flaw is filled to the last tick", "[rectangles]") {
    // 10 by 10 without its upper right quarter and without a flaw of 2 by 2 in the lower left corner.
    Instance instance = tiny::remnant(10, 10, {{8, 2}, {10, 3}, {5, 5}});
    auto at = [](int x, int y) { return ClothPoint{Length::ticks(x), Length::ticks(y)}; };
    instance.sheets[0].room = {at(0, 0), at(10, 0), at(10, 5), at(5, 5), at(5, 10), at(0, 10)};
    instance.sheets[0].flaws.push_back(tiny::box(0, 0, 2, 2));
    const Outcome o = solve(instance, stepsOnly(200));
    REQUIRE(o.kind == Outcome::Kind::Fits);
    CHECK(holds(instance, o.placements));
    instance.items.push_back(instance.items[2]);
    CHECK(solve(instance, stepsOnly(200)).kind == Outcome::Kind::CannotFit);
}

TEST_CASE("panels alike lie at the same part of the repeat", "[rectangles]") {
    Instance instance = tiny::bolt(100, {{30, 20}, {30, 20}, {30, 20}});
    instance.sheets[0].lattice = Lattice(Pattern{.across = Length::ticks(40)}, {});
    instance.groups.push_back({{0, 1, 2}});
    for (Item &item : instance.items) item.group = 0;
    const Outcome o = solve(instance, stepsOnly(200));
    REQUIRE(o.kind == Outcome::Kind::Fits);
    CHECK(o.length == Length::ticks(40)); // 40 apart only two go side by side, though three are wide enough for it
    for (const Placement &p : o.placements)
        CHECK(modulo(p.corner.x - o.placements[0].corner.x, Length::ticks(40)) == Length{});
}

TEST_CASE("panels laid on top of each other come apart", "[rectangles]") {
    const Instance instance = tiny::bolt(10, {{5, 4}, {5, 4}, {10, 3}, {4, 2}, {6, 2}});
    const RectangleTask task(instance);
    Separation separation(task, 1);
    std::vector<Laid> heap(instance.items.size());
    for (std::size_t i = 0; i < heap.size(); ++i) heap[i] = {int(i), 0, 0};
    separation.start(heap, 9);
    bool apart = false;
    for (int i = 0; i < 5000 && !apart; ++i) apart = separation.step();
    REQUIRE(apart);
    CHECK(separation.reached() <= 9);
    std::vector<Placement> placements;
    for (const Laid &l : separation.laid())
        placements.push_back(task.placement(task.options[std::size_t(l.option)], l.x, l.y));
    CHECK(holds(instance, placements));
}

TEST_CASE("however little time there is, upright panels get one layout", "[rectangles]") {
    Limits limits;
    limits.seconds = 0;
    CHECK(solve(tiny::bolt(10, {{6, 4}, {4, 4}, {10, 3}}), limits).kind == Outcome::Kind::Fits);
}

TEST_CASE("whatever is laid keeps every rule, and nothing possible is refused", "[rectangles]") {
    tiny::Dice dice(7);
    for (int i = 0; i < 400; ++i) {
        INFO(i);
        const Instance instance = tiny::anything(dice, i % 2 == 0);
        const Outcome o = solve(instance, stepsOnly(60));
        const bool open = instance.sheets.front().open;
        const int length = int(o.length.ticks());
        if (o.kind == Outcome::Kind::Fits) {
            // Phases that differ by two ticks count as one, which on cloth this small is a lot: groups are judged by
            // holds.
            CHECK((instance.groups.empty() ? tiny::keepsRules(instance, o.placements) : holds(instance, o.placements)));
            CHECK(o.bound <= o.length);
            if (open && o.proved && length > 0) CHECK_FALSE(tiny::fits(instance, length - 1));
        } else if (o.kind == Outcome::Kind::CannotFit) {
            CHECK_FALSE(tiny::fits(instance, 60));
        }
    }
}

TEST_CASE("upright panels lie the same for the same seed and steps with any number of threads", "[rectangles]") {
    const PerfectPacking &p = perfectPackings.back();
    const Instance instance = tiny::bolt(p.width, p.sizes);
    const Outcome one = solve(instance, stepsOnly(300, 1));
    for (int threads : {2, 3, 5}) {
        const Outcome more = solve(instance, stepsOnly(300, threads));
        CHECK(more.placements == one.placements);
        CHECK(more.steps == one.steps);
    }
}

TEST_CASE("a layout of upright panels to start from is never made worse", "[rectangles]") {
    const PerfectPacking &p = perfectPackings.back();
    const Instance instance = tiny::bolt(p.width, p.sizes);
    Limits limits = stepsOnly(2000);
    limits.start = solve(instance, stepsOnly(5000)).placements;
    const Length before = lengthUsed(instance, limits.start, 0);
    limits.seed = 99;
    for (int steps : {0, 1, 50}) {
        limits.steps = steps;
        CHECK(solve(instance, limits).length <= before);
    }
}

TEST_CASE("a search of upright panels that is told to stop ends with what it has", "[rectangles]") {
    const PerfectPacking &p = perfectPackings.back();
    const Instance instance = tiny::bolt(p.width, p.sizes);
    Limits limits;
    int reports = 0;
    limits.report = [&](const Progress &progress) { reports += progress.found; };
    limits.stop = [&] { return reports > 0; };
    const Outcome o = solve(instance, limits);
    CHECK(o.kind == Outcome::Kind::Fits);
    CHECK(holds(instance, o.placements));
}
