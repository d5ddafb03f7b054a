#include "core/check/check.h"
#include "core/planner/plan.h"
#include "core/trimmings/reckoned.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

Trimming welt(Length edges, StripsFrom from, StripRun run) {
    Trimming t;
    t.edges = edges;
    t.strip = 1.5_in;
    t.from = from;
    t.run = run;
    t.shortest = 15_in;
    return t;
}

} // namespace

TEST_CASE("welt across the cloth takes whole strips", "[trimmings]") {
    // T5.11: 950 in of welt, 54 in cloth, 1 1/2 in strips: 18 strips and 27 in, joins not counted. With joins on the
    // slant a strip gives 52 1/2, and where the run ends it laps itself: 951 1/2 from 1 1/2 + 18 × 52 1/2 = 946 1/2,
    // so 19.
    const Job job = jobOf(bolt(54_in), {});
    const Reckoned r = reckoned(job, {}, welt(950_in, StripsFrom::Cloth, StripRun::Across));
    CHECK(r.need == 951.5_in);
    CHECK(r.pieces == 19);
    CHECK(r.cloth == 28.5_in);
    CHECK(r.enough);
    CHECK(trimmingWords(job, {}, welt(950_in, StripsFrom::Cloth, StripRun::Across)) ==
          "Welt, 26 yd 15 1/2 in with its joins: 19 strips 1 1/2 in wide across the cloth, each 54 in, about 28 1/2 in "
          "of "
          "the cloth.");
}

TEST_CASE("strips become a panel of the job under an id that is free", "[trimmings]") {
    Job job = jobOf(bolt(54_in), {rectangle("welt", 10_in, 10_in)});
    job.cloths[0].selvage = 0.5_in;
    const auto panel = stripPanel(job, welt(950_in, StripsFrom::Cloth, StripRun::Across));
    REQUIRE(panel);
    CHECK(panel->id == "welt-2");
    CHECK(panel->shape == Shape(Rectangle{53_in, 1.5_in}));
    CHECK(panel->count == 19);
    CHECK(panel->run == Run::UpRoll);
    const auto bias = stripPanel(job, welt(950_in, StripsFrom::Cloth, StripRun::Bias));
    REQUIRE(bias);
    CHECK(bias->run == Run::Bias);
    // 53·√2 = 74.95, less the strip's width at its square ends.
    CHECK(std::get<Rectangle>(bias->shape).across > 73.4_in);
    CHECK(std::get<Rectangle>(bias->shape).across < 73.5_in);
    job.panels.push_back(*panel);
    job.panels.push_back(*stripPanel(job, welt(950_in, StripsFrom::Cloth, StripRun::UpRoll)));
    CHECK(std::get<Rectangle>(job.panels.back().shape).up == 53_in);
    CHECK(faultsOfJob(job).empty());
    CHECK_FALSE(stripPanel(job, welt(950_in, StripsFrom::Scraps, StripRun::Bias)));
    CHECK_FALSE(stripPanel(job, welt(950_in, StripsFrom::Cloth, StripRun::Across)) == std::nullopt);
}

TEST_CASE("whether what is left over is enough is said", "[trimmings]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Back", 48_in, 30_in)});
    const Layout layout = layoutOf({cutAt("Back", 0_in, 0_in)});
    // Four strips of 30 in up the roll make 120 - 3 × 1 1/2.
    Trimming t = welt(100_in, StripsFrom::Scraps, StripRun::UpRoll);
    CHECK(reckoned(job, layout, t).made == 115.5_in);
    CHECK(reckoned(job, layout, t).enough);
    CHECK(trimmingWords(job, layout, t) == "Welt, 2 yd 29 1/2 in with its joins: strips 1 1/2 in wide along the roll "
                                           "from what is left over. Enough: 4 pieces "
                                           "of at least 15 in make 3 yd 7 1/2 in.");
    t.edges = 120_in;
    t.name = "Club chair";
    CHECK_FALSE(reckoned(job, layout, t).enough);
    CHECK(trimmingWords(job, layout, t) == "Welt (Club chair), 3 yd 13 1/2 in with its joins: strips 1 1/2 in wide "
                                           "along the roll from what is left over. Not "
                                           "enough: 4 pieces of at least 15 in make 3 yd 7 1/2 in, 6 in are missing.");
    CHECK(trimmingWords(job, {}, t).ends_with("nothing there is long enough yet."));
}

TEST_CASE("what one trimming takes of the scraps is not there for the next", "[trimmings]") {
    Job job = jobOf(bolt(54_in), {rectangle("Back", 48_in, 30_in)});
    const Layout layout = layoutOf({cutAt("Back", 0_in, 0_in)});
    // Beside the back lie four strips of 30 in. Two make the first welt: 58 1/2 of the 56 1/2 it needs.
    Trimming first = welt(55_in, StripsFrom::Scraps, StripRun::UpRoll), second = first;
    second.name = "Cushions";
    second.edges = 57_in;
    job.trimmings = {first, second};
    const auto all = reckonedAll(job, layout);
    REQUIRE(all.size() == 2);
    CHECK(all[0].used.size() == 2);
    CHECK(all[0].made == 115.5_in);
    CHECK(all[1].made == 58.5_in); // what the other two make
    CHECK(all[1].enough);
    for (const Strip &a : all[0].used)
        for (const Strip &b : all[1].used)
            CHECK((boxOf(a.ring).high.x <= boxOf(b.ring).low.x || boxOf(b.ring).high.x <= boxOf(a.ring).low.x));
    CHECK(all == std::vector{reckoned(job, layout, first), reckoned(job, layout, second)});
    // Asked for more, it is told what is missing, though alone it would have had enough.
    job.trimmings[1].edges = 60_in;
    CHECK_FALSE(reckoned(job, layout, job.trimmings[1]).enough);
    std::swap(job.trimmings[0], job.trimmings[1]);
    CHECK(reckoned(job, layout, job.trimmings[0]).enough);
}

TEST_CASE("gimp is ordered with its reserve, nails by the head or by their spacing", "[trimmings]") {
    const Job job = jobOf(bolt(54_in), {});
    Trimming t;
    t.kind = Trimming::Kind::Gimp;
    t.edges = 100_in;
    t.from = StripsFrom::Bought;
    t.reserve = 10; // T7.9, from memory
    CHECK(reckoned(job, {}, t).need == 110_in);
    CHECK(trimmingWords(job, {}, t) == "Gimp: order 3 yd 2 in for 2 yd 28 in of edge, 10 in the hundred of reserve.");
    t.kind = Trimming::Kind::Nails;
    t.reserve = 0;
    t.edges = 36_in;
    t.head = 0.5_in;
    CHECK(reckoned(job, {}, t).pieces == 72); // T7.4
    t.pitch = 2_in;
    CHECK(reckoned(job, {}, t).pieces == 19); // T7.5
    t.runs = 2;
    CHECK(reckoned(job, {}, t).pieces == 20); // two runs of 18 in, ten nails each
    CHECK(trimmingWords(job, {}, t) == "Nails: 20 with heads of 1/2 in, 2 in apart along 1 yd.");
}

TEST_CASE("cloth that is too narrow for strips, or no bolt, gives none", "[trimmings]") {
    CHECK_FALSE(reckoned(jobOf(bolt(1_in), {}), {}, welt(100_in, StripsFrom::Cloth, StripRun::Across)).enough);
    const Job remnants = jobOf(remnantCloth({{0_in, 0_in}, {12_in, 0_in}, {12_in, 12_in}, {0_in, 12_in}}), {});
    CHECK_FALSE(reckoned(remnants, {}, welt(100_in, StripsFrom::Cloth, StripRun::Across)).enough);
    // Scraps of a remnant serve all the same: a square of 12 in has one piece of 15 in along its diagonal of 16.97
    // (T5.12).
    CHECK(reckoned(remnants, {}, welt(20_in, StripsFrom::Scraps, StripRun::Bias)).pieces == 1);
}

TEST_CASE("a strip is no longer than the cloth, and the joins that short cloth asks for are counted", "[trimmings]") {
    // Strips are cut up the roll in most shops (T5.20); on a bolt of which 39 in are left none can be longer.
    Job job = jobOf(bolt(54_in), {});
    job.cloths[0].bolt->length = 40_in;
    job.cloths[0].bolt->square = 1_in;
    const Reckoned up = reckoned(job, {}, welt(100_in, StripsFrom::Cloth, StripRun::UpRoll));
    CHECK(up.pieceLength == 39_in);
    CHECK(up.need == 101.5_in);
    // Each join on the slant costs a strip's width: 2 strips make 76 1/2, 3 make 114.
    CHECK(up.pieces == 3);
    const auto panel = stripPanel(job, welt(100_in, StripsFrom::Cloth, StripRun::UpRoll));
    REQUIRE(panel);
    CHECK(std::get<Rectangle>(panel->shape).up == 39_in);
    // On the bias a strip reaches as far along the roll as across: 39·√2 = 55.15, less its width at square ends.
    const Reckoned bias = reckoned(job, {}, welt(100_in, StripsFrom::Cloth, StripRun::Bias));
    CHECK(bias.pieceLength > 53.6_in);
    CHECK(bias.pieceLength < 53.7_in);
    // Across the cloth its length along the roll asks for nothing.
    CHECK(reckoned(job, {}, welt(100_in, StripsFrom::Cloth, StripRun::Across)).pieceLength == 54_in);
    job.cloths[0].bolt->length = 1.5_in;
    CHECK_FALSE(reckoned(job, {}, welt(100_in, StripsFrom::Cloth, StripRun::UpRoll)).enough);
    CHECK(trimmingWords(job, {}, welt(100_in, StripsFrom::Cloth, StripRun::UpRoll)) ==
          "Welt, 2 yd 29 1/2 in: the cloth is too small for such strips.");
}

TEST_CASE("strips that short cloth allows are planned where they lie, and the check finds them right", "[trimmings]") {
    Job job = jobOf(bolt(54_in), {});
    job.cloths[0].bolt->length = 40_in;
    job.cloths[0].bolt->square = 1_in;
    for (StripRun run : {StripRun::UpRoll, StripRun::Across, StripRun::Bias}) {
        Job with = job;
        with.panels.push_back(*stripPanel(job, welt(100_in, StripsFrom::Cloth, run)));
        PlanOptions options;
        options.seconds.reset();
        options.steps = 50;
        const Plan planned = plan(with, options);
        REQUIRE(planned.kind == planner::Outcome::Kind::Fits);
        CHECK(check(with, planned.layout).empty());
    }
}

TEST_CASE("of remnants it is said that there is no bolt to cut strips from", "[trimmings]") {
    const Job remnants = jobOf(remnantCloth({{0_in, 0_in}, {40_in, 0_in}, {40_in, 40_in}, {0_in, 40_in}}), {});
    CHECK(trimmingWords(remnants, {}, welt(100_in, StripsFrom::Cloth, StripRun::Across)) ==
          "Welt, 2 yd 29 1/2 in: there is no bolt to cut such strips from, but what is left over of the remnants may "
          "serve.");
}
