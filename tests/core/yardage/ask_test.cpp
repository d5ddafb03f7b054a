#include "core/check/check.h"
#include "core/yardage/ask.h"
#include "core/yardage/run_ways.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

AskOptions quick() {
    AskOptions o;
    o.plan.seconds.reset();
    o.plan.steps = 4000;
    o.plan.threads = 2;
    return o;
}

} // namespace

TEST_CASE("six 24 in squares on 54 in cloth are two across and three rows: 2 yd", "[ask]") {
    // TRADE T1.9 (hide houses' worked example): 2 across x 3 rows = 72 in = 2 yd.
    const auto a =
        askFor(jobOf(bolt(54_in), {rectangle("Square", 24_in, 24_in, 6)}), {{54_in, {}, {}, false}}, quick());
    REQUIRE(a.size() == 1);
    CHECK(a[0].planned == 72_in);
    CHECK(a[0].buy == 72_in);
}

TEST_CASE("seats that nearly fill a repeat each take a whole one along the roll", "[ask]") {
    // TRADE T4.3 for the rule: 96 in with a 27 in repeat is cut as 4 repeats, 108 in. Here three seats one below the
    // other on cloth just wide enough for one, each 24 in: motif to motif is a whole repeat, so the last ends at most
    // two repeats after the first begins plus its own length.
    const auto a = askFor(jobOf(bolt(30_in), {rectangle("Seat", 20_in, 24_in, 3)}),
                          {{30_in, {}, {}, false}, {30_in, {}, 27_in, false}}, quick());
    REQUIRE(a.size() == 2);
    CHECK(a[0].planned == 72_in);
    CHECK(a[1].firstMotif == 27_in);
    CHECK(a[1].planned >= 27_in * 2 + 24_in);
    CHECK(a[1].planned < 27_in * 3 + 24_in);
    CHECK(a[1].buy >= a[1].planned + 27_in);
}

TEST_CASE("a wish for a repeat that the new cloth has not is dropped, and seen panels are centred on one it has",
          "[ask]") {
    Cloth cloth = bolt(54_in);
    cloth.pattern = motifs(9_in, 12_in);
    Panel seat = centred(rectangle("Seat", 20_in, 22_in), Centre::Both), deck = rectangle("Deck", 20_in, 20_in);
    deck.hidden = true;
    const Job job = jobOf(cloth, {seat, deck});
    CHECK_FALSE(onCloth(job, {54_in, {}, {}, false}).panels[0].motif);
    CHECK(onCloth(job, {54_in, 3_in, {}, false}).panels[0].motif->centre == Centre::Across);
    const Job plain = jobOf(bolt(54_in), {rectangle("Seat", 20_in, 22_in), deck});
    const Job printed = onCloth(plain, {48_in, 12_in, 18_in, true});
    CHECK(printed.panels[0].motif);
    CHECK_FALSE(printed.panels[1].motif);
    CHECK(printed.cloths[0].pattern->drop == 9_in);
    CHECK(printed.cloths[0].bolt->width == 48_in);
}

TEST_CASE("a remnant that is short needs what the planner finds on a longer one, and not less than is proved",
          "[ask]") {
    const Job job = jobOf(remnantCloth({{0_in, 0_in}, {54_in, 0_in}, {54_in, 40_in}, {0_in, 40_in}}),
                          {rectangle("Seat", 30_in, 25_in, 2)});
    PlanOptions o;
    o.seconds.reset();
    o.steps = 4000;
    const auto e = extraLengths(job, "body", o);
    REQUIRE(e.size() == 1);
    CHECK(e[0].extra == 10_in);
    CHECK(e[0].atLeast == 10_in);
}

TEST_CASE("a cut-out corner is not cloth on the longer piece either", "[ask]") {
    const Job job = jobOf(
        remnantCloth({{0_in, 0_in}, {54_in, 0_in}, {54_in, 20_in}, {20_in, 20_in}, {20_in, 40_in}, {0_in, 40_in}}),
        {rectangle("Seat", 30_in, 25_in)});
    PlanOptions o;
    o.seconds.reset();
    o.steps = 4000;
    const auto e = extraLengths(job, "body", o);
    REQUIRE(e.size() == 1);
    CHECK(e[0].extra == 25_in); // the seat can only lie above the notch, from 40 in up
}

TEST_CASE("a sofa back railroads whole where up the roll it needs joins", "[run]") {
    // TRADE T6.10: railroaded, a back can be one piece of any length up to the roll.
    Panel back = rectangle("Back", 84_in, 30_in);
    back.pieces.most = 3;
    back.pieces.seam = 0.5_in;
    back.pieces.shortest = 12_in;
    Cloth cloth = bolt(54_in);
    PlanOptions o;
    o.seconds.reset();
    o.steps = 4000;
    const auto answers = compareRuns(jobOf(cloth, {back}), o);
    REQUIRE(answers.size() == 4);
    CHECK(answers[1].way == RunWay::UpRoll);
    CHECK(answers[1].joins == 1);
    CHECK(answers[2].joins == 0);
    CHECK(answers[2].turned == std::vector<std::string>{"Back: railroaded instead of up the roll"});
    for (const RunAnswer &a : answers) CHECK(check(a.job, a.plan.layout).empty());
    // As it falls, a join that is not needed is not made; without joins it is never longer than railroaded.
    CHECK(answers[3].joins == 0);
    CHECK(*answers[3].plan.layout.cloths[0].length <= *answers[2].plan.layout.cloths[0].length);
}
