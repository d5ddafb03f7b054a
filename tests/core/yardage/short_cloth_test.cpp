#include "core/concede/concede.h"
#include "core/edit/outline_edit.h"
#include "core/planner/random.h"
#include "core/yardage/ask.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

PlanOptions steps(std::int64_t count) {
    PlanOptions o;
    o.seconds.reset();
    o.steps = count;
    o.threads = 1;
    return o;
}

/// Parts of which no two lie side by side, and a remnant a few inches shorter than all of them one above the other.
struct Short {
    Job job;
    Length missing;
};

Short tooShort(int count, std::uint64_t seed) {
    planner::Random dice(seed);
    Length all;
    std::vector<Panel> panels;
    for (int i = 0; i < count; ++i) {
        const Length up = Length::ticks((96 + dice.below(105)) * 1016),
                     across = Length::ticks((220 + dice.below(81)) * 1016);
        panels.push_back(rectangle("p" + std::to_string(i), across, up));
        all += up;
    }
    const Length missing = Length::ticks((8 + dice.below(33)) * 1016);
    return {jobOf(remnantCloth(boltwright::ringOf(ClothBox{{}, {54_in, all - missing}})), panels), missing};
}

} // namespace

TEST_CASE("a remnant too short for parts that exclude one another is refused with proof", "[short]") {
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
        const Plan p = planOrConcede(tooShort(5, seed).job, steps(3000));
        CHECK(p.kind == planner::Outcome::Kind::CannotFit);
        CHECK(p.proved);
        CHECK_FALSE(p.reason.empty());
    }
}

TEST_CASE("how much more would do is known exactly where nothing lies side by side", "[short]") {
    // The same jobs as the outside maker of planted jobs makes for its family `short`: the least that would do is what
    // their heights add up to, so there is nothing to compare a longer search with.
    for (int count : {6, 8, 10, 12, 14})
        for (std::uint64_t seed = 1; seed <= 3; ++seed) {
            INFO(count << " parts, seed " << seed);
            const Short s = tooShort(count, seed);
            const auto e = extraLengths(s.job, "body", steps(3000));
            REQUIRE(e.size() == 1);
            CHECK(e[0].extra == s.missing);
            CHECK(e[0].atLeast == e[0].extra); // and it is proved
        }
}

TEST_CASE("the piece asked for is within 2 % of the best that a long search finds on a longer one", "[short]") {
    // Remnants with a corner cut out and parts of many sizes; the long search has twenty times the steps, and the
    // longer remnant is the same with its far side moved away.
    for (std::uint64_t seed = 1; seed <= 4; ++seed) {
        planner::Random dice(seed + 40);
        std::vector<Panel> panels;
        for (int i = 0; i < 7; ++i)
            panels.push_back(rectangle("p" + std::to_string(i), Length::ticks((80 + dice.below(160)) * 1016),
                                       Length::ticks((64 + dice.below(120)) * 1016)));
        const ClothRing outline =
            withCornerCutOut(boltwright::ringOf(ClothBox{{}, {54_in, 30_in}}), 1, 12_in, 8_in).value();
        const Job job = jobOf(remnantCloth(outline), panels, 0.25_in);
        const auto quick = extraLengths(job, "body", steps(2000)), slow = extraLengths(job, "body", steps(40000));
        REQUIRE(quick.size() == 1);
        REQUIRE(slow.size() == 1);
        const Length asked = 30_in + quick[0].extra, best = 30_in + slow[0].extra;
        INFO("seed " << seed);
        CHECK(asked.ticks() * 100 <= best.ticks() * 102);
        CHECK(quick[0].extra > Length{});
    }
}
