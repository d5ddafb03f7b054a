#include "core/check/check.h"
#include "core/yardage/ask.h"
#include "core/yardage/run_ways.h"
#include "tests/core/support/jobs.h"
#include "tests/core/support/part_lists.h"

#include <catch2/catch.hpp>

#include <algorithm>

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
    CHECK_FALSE(onCloth(job, {54_in, {}, {}, false}).job.panels[0].motif);
    CHECK(onCloth(job, {54_in, 3_in, {}, false}).job.panels[0].motif->centre == Centre::Across);
    const Job plain = jobOf(bolt(54_in), {rectangle("Seat", 20_in, 22_in), deck});
    const Job printed = onCloth(plain, {48_in, 12_in, 18_in, true}).job;
    CHECK(printed.panels[0].motif);
    CHECK_FALSE(printed.panels[1].motif);
    CHECK(printed.cloths[0].pattern->drop == 9_in);
    CHECK(printed.cloths[0].bolt->width == 48_in);
}

TEST_CASE("a back that no motif leaves room to either side is centred between two", "[ask]") {
    // TRADE T3.9: two motifs across 54 in stand 27 in apart, so at 13 1/2 and 40 1/2 in; a back of 50 in has its middle
    // between 25 and 29 in wherever it lies. T6.15: every panel is centred. Asked for on a motif by the job itself.
    const Panel back = centred(rectangle("Back", 50_in, 34_in), Centre::Both);
    const Job job = jobOf(bolt(54_in), {back});
    for (const AskCloth &cloth : {AskCloth{54_in, 27_in, 27_in, false}, AskCloth{54_in, 27_in, 27_in, true},
                                  AskCloth{60_in, 30_in, 27_in, false}}) {
        const auto a = askFor(job, {cloth}, quick());
        REQUIRE(a.size() == 1);
        REQUIRE(a[0].plan.kind == planner::Outcome::Kind::Fits);
        CHECK(a[0].otherwise == std::vector<OtherwiseLaid>{{"Back", true, false, 0}});
        CHECK(check(a[0].job, a[0].plan.layout).empty());
        const Cut &cut = a[0].plan.layout.cuts.at(0);
        CHECK(cut.x + 25_in == Length::ticks(cloth.width.ticks() / 2)); // between the two columns is the middle
    }
    // Three columns of 18 in: one stands in the middle, and nothing has to be given up.
    const auto three = askFor(job, {{54_in, 18_in, 18_in, false}}, quick());
    CHECK(three.at(0).otherwise.empty());
    CHECK(three.at(0).plan.kind == planner::Outcome::Kind::Fits);
}

TEST_CASE("a back wider than the cloth is joined: a full width in the centre and equal sides", "[ask]") {
    // TRADE T6.19: whole width in the centre, part widths each side, not one seam mid-back. T6.6: seams of 1/2 in.
    const Job job = jobOf(bolt(54_in), {rectangle("Back", 70_in, 34_in)});
    const auto a =
        askFor(job, {{54_in, {}, {}, false}, {54_in, 27_in, 27_in, false}, {54_in, 18_in, 18_in, false}}, quick());
    REQUIRE(a.size() == 3);
    for (const AskAnswer &answer : a) {
        REQUIRE(answer.plan.kind == planner::Outcome::Kind::Fits);
        CHECK(check(answer.job, answer.plan.layout).empty());
        REQUIRE(answer.otherwise.size() == 1);
        CHECK(answer.otherwise[0].joins == 2);
        std::vector<Length> pieces;
        for (const Cut &cut : answer.plan.layout.cuts) pieces.push_back(cut.length.value_or(Length{}));
        CHECK(pieces == std::vector<Length>{9_in, 54_in, 9_in}); // 8 1/2 + 53 + 8 1/2 = 70, and the seams
    }
    // The sides lie side by side: two rows of 34 in.
    CHECK(a[0].planned == 68_in);
    // With two columns a full width has its middle between them, with three on one.
    CHECK(a[1].otherwise[0].betweenMotifs);
    CHECK_FALSE(a[2].otherwise[0].betweenMotifs);
}

TEST_CASE("no join lies at the very edge of a part that is seen", "[ask]") {
    const auto a = askFor(jobOf(bolt(54_in), {rectangle("Back", 55_in, 34_in)}), {{54_in, {}, {}, false}}, quick());
    REQUIRE(a.at(0).plan.kind == planner::Outcome::Kind::Fits);
    for (const Cut &cut : a[0].plan.layout.cuts) CHECK(cut.length.value_or(Length{}) >= 4.5_in);
}

TEST_CASE("a hidden border longer than the cloth is made of full widths and the rest", "[ask]") {
    // TRADE T6.20, a worked chair of 2013: border 108 x 8; with half-inch seams two widths no longer make it.
    Panel border = rectangle("Border", 108_in, 8_in);
    border.hidden = true;
    const auto a = askFor(jobOf(bolt(54_in), {border}), {{54_in, {}, {}, false}, {60_in, {}, {}, false}}, quick());
    REQUIRE(a.size() == 2);
    CHECK(a[0].otherwise == std::vector<OtherwiseLaid>{{"Border", false, false, 2}});
    CHECK(a[0].planned == 24_in);
    CHECK(a[1].otherwise == std::vector<OtherwiseLaid>{{"Border", false, false, 1}});
    CHECK(a[1].planned == 16_in);
}

TEST_CASE("where the pattern runs on, one part leads and the others follow", "[ask]") {
    Job job = jobOf(bolt(54_in), {rectangle("Back", 25_in, 28_in), rectangle("Seat", 25_in, 24_in)});
    job.flows.push_back({{"Back", Bottom, {}, {}}, {"Seat", Top, {}, {}}, {}, {}});
    // No panel asks for a motif: the back is centred, the seat lies where the pattern runs on to.
    const JobOnCloth plain = onCloth(job, {54_in, 27_in, 27_in, false});
    CHECK(plain.job.panels[0].motif);
    CHECK_FALSE(plain.job.panels[1].motif);
    // Both ask, and 26 in from middle to middle is no whole repeat.
    for (Panel &panel : job.panels) panel.motif = MotifWish{};
    const auto a = askFor(job, {{54_in, 27_in, 27_in, false}}, quick());
    REQUIRE(a.at(0).plan.kind == planner::Outcome::Kind::Fits);
    CHECK(a[0].otherwise == std::vector<OtherwiseLaid>{{"Seat", false, true, 0}});
}

TEST_CASE("every width and repeat of the usual table can be had for a settee", "[ask]") {
    // Widths and repeats of TRADE T1.1 and T3.8; the back is 50 in wide, the boxing 96.
    std::vector<AskCloth> cloths;
    for (Length width : {48_in, 54_in, 60_in}) {
        cloths.push_back({width, {}, {}, false});
        cloths.push_back({width, 3_in, {}, false});
        for (Length repeat : {9_in, 13.5_in, 18_in, 27_in})
            for (bool drop : {false, true}) {
                const std::int64_t columns = std::max<std::int64_t>(1, roundedQuotient(width.ticks(), repeat.ticks()));
                cloths.push_back({width, Length::ticks(width.ticks() / columns), repeat, drop});
            }
    }
    AskOptions o = quick();
    o.plan.steps = 400;
    std::vector<Panel> parts = settee();
    for (Panel &part : parts)
        if (part.motif) part.pieces.most = 1;
    for (const AskAnswer &a : askFor(jobOf(bolt(54_in), parts), cloths, o)) {
        INFO(double(a.cloth.width.ticks()) / 8128 << " wide, repeat "
                                                  << double(a.cloth.along.value_or(Length{}).ticks()) / 8128);
        CHECK(a.plan.kind == planner::Outcome::Kind::Fits);
    }
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
