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

TEST_CASE("a bolt that is short is told how much more would do, as a remnant is", "[short]") {
    for (std::uint64_t seed = 1; seed <= 5; ++seed) {
        Short s = tooShort(6, seed);
        Cloth &cloth = s.job.cloths.front();
        const Length there = boxOf(cloth.remnants.front().outline).height();
        cloth.bolt = Bolt{};
        cloth.bolt->width = 54_in;
        cloth.bolt->length = there;
        cloth.remnants.clear();
        const auto e = extraLengths(s.job, "body", steps(3000));
        INFO("seed " << seed);
        REQUIRE(e.size() == 1);
        CHECK_FALSE(e[0].remnant);
        CHECK(e[0].extra == s.missing);
        CHECK(e[0].atLeast == e[0].extra);
        // What is said holds: that much longer it does, and an eighth of an inch less is refused.
        cloth.bolt->length = there + e[0].extra;
        CHECK(plan(s.job, steps(3000)).kind == planner::Outcome::Kind::Fits);
        cloth.bolt->length = there + e[0].extra - 0.125_in;
        CHECK(plan(s.job, steps(3000)).kind == planner::Outcome::Kind::CannotFit);
    }
}

TEST_CASE("what is cut already stays where it was when more is asked for", "[short]") {
    // Two seats would do on 60 in. The first was cut in the middle, so that the second has no place below or above it.
    Cloth cloth = bolt(54_in);
    cloth.bolt->length = 60_in;
    const Job job = jobOf(cloth, {rectangle("Seat", 30_in, 25_in, 2)});
    Layout begun = layoutOf({cutAt("Seat", 0_in, 20_in)});
    begun.cuts[0].state = CutState::Cut;
    PlanOptions o = steps(3000);
    CHECK(extraLengths(job, o).at(0).extra == 0_in);
    o.from = &begun;
    CHECK(extraLengths(job, o).at(0).extra == 10_in);
    Job scraps = job;
    scraps.cloths[0] = remnantCloth(boltwright::ringOf(ClothBox{{}, {54_in, 60_in}}));
    begun.cuts[0].on = "A";
    CHECK(extraLengths(scraps, o).empty());
}

TEST_CASE("how much more is said in the trade's words, rounded up to what is sold, with what is proved beside it",
          "[short]") {
    // Six 24 in squares are three rows on 54 in cloth, 72 in (TRADE T1.9); 1 1/2 yd is 18 in short.
    Cloth cloth = bolt(54_in);
    cloth.bolt->length = 54_in;
    const Job job = jobOf(cloth, {rectangle("Square", 24_in, 24_in, 6)});
    const auto e = extraLengths(job, steps(3000));
    REQUIRE(e.size() == 1);
    CHECK(extraInWords(job, e[0]) ==
          "The bolt would do if it were 18 in longer, and with less it will not: this is proved. Ask for 1/2 yd more, "
          "in one length with it.");
    CHECK(extraInWords(job, e[0], 1) == extraInWords(job, e[0])); // 18 in are 4/8 yd and not 5/8
    ExtraLength some = e[0];
    some.extra = 18.05_in; // a twentieth of an inch more is no half yard any more, and is not said as 18 in
    CHECK(extraInWords(job, some) ==
          "The bolt would do if it were 18 1/16 in longer; at least 18 in more is needed, and this is proved. Ask for "
          "3/4 yd more, in one length with it.");
    some.remnant = "A";
    some.atLeast = {};
    CHECK(extraInWords(job, some, 4) ==
          "Remnant A would do if it were 18 1/16 in longer. Ask for 1 yd more, in one length with it.");
    some.extra = {};
    CHECK(extraInWords(job, some) == "Remnant A does as it is.");
    Job metric = job;
    metric.unit = Unit::Centimetre;
    some = e[0];
    some.extra = some.atLeast = 45.75_cm;
    CHECK(extraInWords(metric, some) ==
          "The bolt would do if it were 45.8 cm longer, and with less it will not: this is proved. Ask for 0.5 m more, "
          "in one length with it.");
}

TEST_CASE("a second remnant takes what it can before the first has to be longer", "[short]") {
    // Two seats of 30 x 25 in: one remnant holds one of them, the other is 5 in too short for the second.
    Cloth cloth = remnantCloth(boltwright::ringOf(ClothBox{{}, {40_in, 30_in}}));
    Remnant second = cloth.remnants.front();
    second.id = "B";
    second.outline = boltwright::ringOf(ClothBox{{}, {54_in, 20_in}});
    cloth.remnants.push_back(second);
    const Job job = jobOf(cloth, {rectangle("Seat", 30_in, 25_in, 2)});
    const auto e = extraLengths(job, "body", steps(6000));
    REQUIRE(e.size() == 2);
    CHECK(e[0].remnant == "B");
    CHECK(e[0].extra == 5_in);
    CHECK(e[0].atLeast > 4.9_in); // refused with proof up to within a sixteenth
    CHECK(e[1].remnant == "A");
    CHECK(e[1].extra == 20_in);
}

TEST_CASE("every cloth of the job of which there is only so much is asked about, and no other", "[short]") {
    Cloth body = bolt(54_in), lining = remnantCloth(boltwright::ringOf(ClothBox{{}, {54_in, 20_in}}), "lining"),
          spare = remnantCloth(boltwright::ringOf(ClothBox{{}, {9_in, 9_in}}), "spare");
    body.bolt->length = 40_in;
    Panel seat = rectangle("Seat", 30_in, 25_in, 2), deck = rectangle("Deck", 50_in, 24_in);
    deck.cloth = "lining";
    Job job = jobOf(body, {seat, deck});
    job.cloths.push_back(lining);
    job.cloths.push_back(spare);
    const auto e = extraLengths(job, steps(4000));
    REQUIRE(e.size() == 2);
    CHECK(e[0].cloth == "body");
    CHECK(e[0].extra == 10_in);
    CHECK(e[1].cloth == "lining");
    CHECK(e[1].remnant == "A");
    CHECK(e[1].extra == 4_in);
    CHECK(extraInWords(job, e[0]).rfind("The bolt of body would do", 0) == 0);
    job.cloths.front().bolt->length.reset();
    CHECK(extraLengths(job, steps(4000)).size() == 1);
}
