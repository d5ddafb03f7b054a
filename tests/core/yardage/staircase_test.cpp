#include "core/check/check.h"
#include "core/yardage/staircase.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

StaircaseOptions quick() {
    StaircaseOptions o;
    o.plan.seconds.reset();
    o.plan.steps = 10000;
    o.plan.threads = 1;
    return o;
}

/// A chair of our own: back, seat and two arms on a printed cloth with nap.
Job chair() {
    Cloth cloth = bolt(54_in);
    cloth.selvage = 0.5_in;
    cloth.bolt->square = 1_in;
    cloth.pattern = motifs(13.5_in, 18_in, {6.75_in, 5_in});
    Panel back = centred(rectangle("Back", 24_in, 28_in), Centre::Both), seat = rectangle("Seat", 26_in, 24_in),
          arm = rectangle("Arm", 12_in, 22_in, 2);
    for (Panel *p : {&back, &seat, &arm}) p->allow = EdgeLengths(4, 1_in);
    Job job = jobOf(cloth, {back, seat, arm}, 0.25_in);
    job.flows.push_back({{"Back", Bottom, {}, {}}, {"Seat", Top, {}, {}}, 3_in, {}});
    return job;
}

} // namespace

TEST_CASE("the steps of a staircase add up to what is bought, and none is negative", "[staircase]") {
    const Job job = chair();
    const auto s = staircaseOf(job, "body", quick());
    REQUIRE(s);
    REQUIRE(s->stairs.size() == 8);
    Length sum;
    for (const Stair &stair : s->stairs) {
        CHECK(stair.step >= Length{});
        sum += stair.step;
        CHECK(stair.length == sum);
    }
    CHECK(sum == s->buy);
    CHECK(s->buy >= s->needed);
    CHECK(s->stairs[6].length == s->needed);
}

TEST_CASE("the bare area is the measured shapes over the full width, the next the cut ones", "[staircase]") {
    const auto s = staircaseOf(chair(), "body", quick());
    REQUIRE(s);
    const double measured = 24 * 28 + 26 * 24 + 2 * 12 * 22, cut = 26 * 30 + 28 * 26 + 2 * 14 * 24;
    CHECK(double(s->stairs[0].length.ticks()) / 8128 == Approx(measured / 54).epsilon(1e-5));
    CHECK(double(s->stairs[1].length.ticks()) / 8128 == Approx(cut / 54).epsilon(1e-5));
}

TEST_CASE("the tightest landing is a right layout of the job itself", "[staircase]") {
    const Job job = chair();
    const auto s = staircaseOf(job, "body", quick());
    REQUIRE(s);
    CHECK(check(job, s->stairs[6].layout).empty());
}

TEST_CASE("plain cloth that may be turned has no step for direction, motif or match", "[staircase]") {
    Cloth cloth = bolt(54_in);
    cloth.way = Way::Two;
    Panel seat = rectangle("Seat", 20_in, 22_in, 3);
    seat.run = Run::Either;
    const auto s = staircaseOf(jobOf(cloth, {seat}), "body", quick());
    REQUIRE(s);
    for (std::size_t i : {3u, 4u, 5u, 6u}) CHECK(s->stairs[i].step == Length{});
}

TEST_CASE("there is nothing to explain about a remnant or cloth that nothing is cut from", "[staircase]") {
    CHECK_FALSE(
        staircaseOf(jobOf(remnantCloth({{0_in, 0_in}, {9_in, 0_in}, {9_in, 9_in}}), {rectangle("a", 1_in, 1_in)}),
                    "body", quick()));
    Job job = jobOf(bolt(54_in), {rectangle("a", 1_in, 1_in)});
    job.cloths.push_back(bolt(54_in, "other"));
    CHECK_FALSE(staircaseOf(job, "other", quick()));
}
