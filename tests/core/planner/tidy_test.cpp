#include "core/planner/solve.h"
#include "core/planner/tidy.h"
#include "tests/core/planner/tiny.h"
#include "tests/core/support/rounds.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace boltwright;
using namespace boltwright::planner;
using namespace tiny;

namespace {

constexpr int inch = 8128;

Placement at(int item, int x, int y) { return {item, 0, {Length::ticks(x * inch), Length::ticks(y * inch)}}; }

Instance boltInInches(int width, std::vector<std::pair<int, int>> sizes) {
    for (auto &[w, h] : sizes) w *= inch, h *= inch;
    return bolt(width * inch, sizes, 0, 1000 * inch);
}

/// The largest free rectangle, by trying all of whole inches.
int offcutByTrying(const Instance &instance, const std::vector<Placement> &placements, int width) {
    const int length = int(lengthUsed(instance, placements, 0).ticks()) / inch;
    auto freeCell = [&](int x, int y) {
        return std::none_of(placements.begin(), placements.end(), [&](const Placement &p) {
            const Outline &o =
                instance
                    .outlines[std::size_t(instance.items[std::size_t(p.item)].options[std::size_t(p.option)].outline)];
            const auto in = [](Length low, Length size, int v) {
                return v * inch >= low.ticks() && v * inch < (low + size).ticks();
            };
            return in(p.corner.x, o.width, x) && in(p.corner.y, o.height, y);
        });
    };
    int best = 0;
    for (int x = 0; x < width; ++x)
        for (int y = 0; y < length; ++y) {
            int most = width - x;
            for (int h = 0; y + h < length && most > 0; ++h) {
                int w = 0;
                while (w < most && freeCell(x + w, y + h)) ++w;
                most = w;
                if (most >= 6 && h + 1 >= 6) best = std::max(best, most * (h + 1));
            }
        }
    return best;
}

} // namespace

TEST_CASE("a panel in the middle of the cloth goes aside, so that what is left is in one piece", "[tidy]") {
    const Instance instance = boltInInches(50, {{50, 20}, {10, 30}});
    const std::vector<Placement> middle = {at(0, 0, 0), at(1, 20, 20)};
    CHECK(meritsOf(instance, middle).offcut == 20 * 30);
    const auto better = tidied(instance, middle);
    CHECK(meritsOf(instance, better).offcut == 40 * 30);
    CHECK(lengthUsed(instance, better, 0) == lengthUsed(instance, middle, 0));
}

TEST_CASE("with the same offcut, panels end level where they can, and the scissors go across less often", "[tidy]") {
    // A tall panel, and two short ones beside it one above the other with some room to spare.
    const Instance instance = boltInInches(20, {{10, 20}, {10, 8}, {10, 8}});
    const std::vector<Placement> loose = {at(0, 0, 0), at(1, 10, 1), at(2, 10, 11)};
    CHECK(meritsOf(instance, loose).cutsAcross == -6); // 0, 1, 9, 11, 19, 20
    CHECK(meritsOf(instance, tidied(instance, loose)).cutsAcross == -4);
}

TEST_CASE("copies of a panel come to lie beside each other", "[tidy]") {
    Instance instance = boltInInches(40, {{10, 10}, {10, 10}, {10, 10}, {10, 10}});
    for (std::size_t i = 0; i < 4; ++i) instance.items[i].kind = int(i % 2);
    const std::vector<Placement> mixed = {at(0, 0, 0), at(1, 10, 0), at(2, 20, 0), at(3, 30, 0)};
    CHECK(meritsOf(instance, mixed).alone == -4);
    CHECK(meritsOf(instance, tidied(instance, mixed)).alone == 0);
}

TEST_CASE("the offcut is what trying every rectangle finds, and tidying never makes it less", "[tidy]") {
    Dice dice(31);
    int gained = 0;
    for (int round = 0; round < 40; ++round) {
        std::vector<std::pair<int, int>> sizes;
        const int width = dice(14, 24);
        for (int i = dice(2, 7); i > 0; --i) sizes.emplace_back(dice(2, 12), dice(2, 12));
        const Instance instance = boltInInches(width, sizes);
        // One above the other, here and there across.
        std::vector<Placement> placements;
        int y = 0;
        for (std::size_t i = 0; i < sizes.size(); ++i) {
            placements.push_back(at(int(i), dice(0, width - sizes[i].first), y));
            y += sizes[i].second;
        }
        CAPTURE(round);
        REQUIRE(meritsOf(instance, placements).offcut == offcutByTrying(instance, placements, width));
        const auto better = tidied(instance, placements);
        REQUIRE(lengthUsed(instance, better, 0) <= lengthUsed(instance, placements, 0));
        if (lengthUsed(instance, better, 0) == lengthUsed(instance, placements, 0))
            REQUIRE(meritsOf(instance, better) >= meritsOf(instance, placements));
        gained += meritsOf(instance, better).offcut > meritsOf(instance, placements).offcut;
    }
    CHECK(gained > 5);
}

TEST_CASE("tidied layouts keep every rule, whatever is asked of them", "[tidy]") {
    Dice dice(32);
    int laid = 0, changed = 0;
    for (int round = 0; round < test::rounds(300); ++round) {
        const Instance instance = anything(dice, dice.oneIn(2));
        // The planner lets a phase be off by 4 ticks, which is all of so small a lattice.
        if (!instance.groups.empty() && instance.sheets[0].lattice) continue;
        Limits limits;
        limits.steps = 200;
        const Outcome outcome = solve(instance, limits);
        if (outcome.kind != Outcome::Kind::Fits) continue;
        CAPTURE(round);
        const auto again = tidied(instance, outcome.placements);
        REQUIRE(keepsRules(instance, outcome.placements));
        REQUIRE(keepsRules(instance, again));
        REQUIRE(meritsOf(instance, again) >= meritsOf(instance, outcome.placements));
        ++laid;
        changed += again != outcome.placements;
    }
    CHECK(laid > test::rounds(150));
    CHECK(changed * 10 < laid); // what was tidied stays as it is
}
