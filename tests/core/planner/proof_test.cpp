#include "core/planner/solve.h"
#include "tests/core/planner/tiny.h"
#include "tests/core/support/rounds.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace boltwright;
using namespace boltwright::planner;
using namespace tiny;

TEST_CASE("what is called proved is what trying every place of every panel finds", "[proof]") {
    Dice dice(41);
    int shortest = 0, refused = 0;
    for (int round = 0; round < test::rounds(400); ++round) {
        const bool open = dice.oneIn(2);
        const Instance instance = anything(dice, open);
        // The planner lets a phase be off by 4 ticks, which is all of so small a lattice.
        const bool loose = !instance.groups.empty() && instance.sheets[0].lattice;
        Limits limits;
        limits.steps = 3000;
        limits.seed = std::uint64_t(round);
        const Outcome outcome = solve(instance, limits);
        CAPTURE(round, open);
        if (outcome.kind == Outcome::Kind::Fits && open) REQUIRE(outcome.bound <= outcome.length);
        if (!outcome.proved) continue;
        if (outcome.kind == Outcome::Kind::CannotFit) {
            const bool fits = open ? tiny::leastLength(instance, 20).has_value() : tiny::fits(instance, 0);
            REQUIRE_FALSE(fits);
            ++refused;
        } else if (open && !loose) {
            const int length = int(outcome.length.ticks());
            if (length > 20) continue; // trying takes too long
            REQUIRE(tiny::leastLength(instance, length) == length);
            ++shortest;
        }
    }
    CHECK(shortest > test::rounds(80));
    CHECK(refused > test::rounds(20));
}

TEST_CASE("a bound is never above a layout that trying finds, whatever was searched", "[proof]") {
    Dice dice(42);
    int asked = 0;
    for (int round = 0; round < test::rounds(200); ++round) {
        const Instance instance = anything(dice, true);
        Limits limits;
        limits.steps = 40;
        const Outcome outcome = solve(instance, limits);
        const auto least = tiny::leastLength(instance, 14);
        if (!least || outcome.kind != Outcome::Kind::Fits) continue;
        CAPTURE(round);
        REQUIRE(outcome.bound <= Length::ticks(*least));
        ++asked;
    }
    CHECK(asked > test::rounds(60));
}
