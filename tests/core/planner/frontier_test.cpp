#include "core/planner/beam.h"
#include "core/planner/frontier.h"
#include "core/planner/plain_frontier.h"
#include "core/planner/solve.h"
#include "tests/core/planner/tiny.h"
#include "tests/core/support/rounds.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <array>

using namespace boltwright;
using namespace boltwright::planner;
using namespace tiny;

namespace {

std::vector<Placement> placementsOf(const RectangleTask &task, const std::vector<planner::Laid> &laid) {
    std::vector<Placement> placements;
    for (const planner::Laid &l : laid)
        placements.push_back(task.placement(task.options[std::size_t(l.option)], l.x, l.y));
    return placements;
}

bool everythingHasAnOption(const RectangleTask &task) {
    return std::all_of(task.items.begin(), task.items.end(),
                       [](const RectangleItem &i) { return i.firstOption < i.endOption; });
}

/// Rectangles (x, y, w, h) that fill a remnant, by straight cuts of the largest.
std::vector<std::array<int, 4>> cutUp(Dice &dice, int width, int height, int count) {
    std::vector<std::array<int, 4>> all = {{0, 0, width, height}};
    while (int(all.size()) < count) {
        auto at = std::max_element(all.begin(), all.end(),
                                   [](const auto &a, const auto &b) { return a[2] * a[3] < b[2] * b[3]; });
        auto [x, y, w, h] = *at;
        const bool across = w >= h;
        const int span = across ? w : h, cut = dice(span / 3, span - span / 3);
        *at = across ? std::array{x, y, cut, h} : std::array{x, y, w, cut};
        all.push_back(across ? std::array{x + cut, y, w - cut, h} : std::array{x, y + cut, w, h - cut});
    }
    return all;
}

} // namespace

TEST_CASE("whichever side a frontier fills from, what it finds is right and it finds what there is", "[frontier]") {
    Dice dice(21);
    int found = 0, missed = 0;
    for (int round = 0; round < test::rounds(300); ++round) {
        const Instance instance = anything(dice, false);
        const RectangleTask task(instance);
        if (!Frontier::applies(task) || !everythingHasAnOption(task)) continue;
        bool any = false;
        for (int number = 0; number < 8; ++number) {
            CAPTURE(round, number);
            Frontier frontier(task, 1, number);
            frontier.aim(0);
            for (int k = 0; k < 60; ++k) {
                if (!frontier.step()) continue;
                REQUIRE(keepsRules(instance, placementsOf(task, frontier.laid())));
                any = true;
            }
        }
        if (any)
            ++found;
        else if (tiny::fits(instance, 0))
            ++missed;
    }
    CHECK(found > test::rounds(60));
    CHECK(missed * 10 < found); // one kept corner to corner, or pushed up for nothing
}

TEST_CASE("panels cut a little smaller find their way back on to a notched remnant with a flaw", "[frontier]") {
    Dice dice(5);
    for (int round = 0; round < 5; ++round) {
        auto pieces = cutUp(dice, 432, 900, 20);
        Instance instance = remnant(432, 900, {});
        instance.sheets[0].flaws = {box(pieces[7][0], pieces[7][1], pieces[7][2], pieces[7][3])};
        pieces.erase(pieces.begin() + 7);
        for (const auto &[x, y, w, h] : pieces) {
            Item item;
            item.kind = int(instance.items.size());
            item.options.push_back({0, Turn::Deg0, addRectangle(instance, w * 97 / 100, h * 97 / 100), {}, {}});
            instance.items.push_back(item);
        }
        CAPTURE(round);
        Limits limits;
        limits.steps = 400'000;
        const Outcome outcome = solve(instance, limits);
        CHECK(outcome.kind == Outcome::Kind::Fits);
    }
}

TEST_CASE("on plain bolts a frontier finds layouts that hold everything and keep the rules", "[frontier]") {
    Dice dice(33);
    int found = 0;
    for (int round = 0; round < 20; ++round) {
        std::vector<std::pair<int, int>> sizes;
        for (const auto &[x, y, w, h] : cutUp(dice, 40, 60, 16)) sizes.emplace_back(w, h);
        const Instance instance = bolt(40, sizes);
        const RectangleTask task(instance);
        REQUIRE(PlainFrontier::applies(task));
        PlainFrontier frontier(task, 1, round);
        const Tick least = task.sheets[0].y0 + Tick(task.itemArea() / (task.sheets[0].x1 - task.sheets[0].x0));
        frontier.aim(least - 1);
        for (int k = 0; k < 50; ++k) CHECK_FALSE(frontier.step()); // less than the area asks for
        frontier.aim(least + least / 10);
        for (int k = 0; k < 5000; ++k) {
            if (!frontier.step()) continue;
            CHECK(frontier.reached() <= frontier.top());
            REQUIRE(keepsRules(instance, placementsOf(task, frontier.laid())));
            ++found;
            break;
        }
    }
    CHECK(found == 20);
}

TEST_CASE("what the best part layout of a run leaves over is worth more in the next", "[frontier]") {
    Random random(3);
    Worths worths(3);
    CHECK(worths.of(2, 100) == 100);
    worths.learn(random); // nothing was laid: nothing to learn from
    CHECK(worths.of(2, 100) == 100);

    worths.note(40, [](int thing) { return thing != 0; });
    worths.note(60, [](int thing) { return thing == 2; });
    worths.note(50, [](int) { return true; }); // not the best of its run
    worths.learn(random);
    CHECK(worths.of(0, 100) == 100);
    CHECK(worths.of(1, 100) == 100);
    const double once = worths.of(2, 100);
    CHECK(once > 105);

    worths.note(10, [](int thing) { return thing == 1; }); // the best of the next run
    worths.learn(random);
    CHECK(worths.of(1, 100) > 105);
    CHECK(worths.of(2, 100) < once); // fades
    CHECK(worths.of(2, 100) > 100);
}

// Of these twenty a frontier that learns nothing lays two in as many steps.
TEST_CASE("learning from what was left over finds perfect packings", "[frontier]") {
    Dice dice(33);
    int found = 0;
    for (int round = 0; round < 20; ++round) {
        std::vector<std::pair<int, int>> sizes;
        for (const auto &[x, y, w, h] : cutUp(dice, 60, 60, 32)) sizes.emplace_back(w, h);
        const Instance instance = bolt(60, sizes);
        const RectangleTask task(instance);
        PlainFrontier frontier(task, 1, round);
        frontier.aim(task.sheets[0].y0 + 60);
        for (int k = 0; k < 60'000; ++k) {
            if (!frontier.step()) continue;
            CHECK(keepsRules(instance, placementsOf(task, frontier.laid())));
            ++found;
            break;
        }
    }
    CHECK(found >= 5);
}
