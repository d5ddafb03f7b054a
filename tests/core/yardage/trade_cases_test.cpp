// Worked cases of the trade against the planner: TRADE's ids stand beside each figure, with where it comes from.

#include "core/yardage/run_ways.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

#include <cstdio>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

PlanOptions quick() {
    PlanOptions o;
    o.seconds.reset();
    o.steps = 4000;
    o.threads = 1;
    return o;
}

Length plannedLength(const Job &job) {
    const Plan p = plan(job, quick());
    REQUIRE(p.kind == planner::Outcome::Kind::Fits);
    return p.layout.cloths.front().length.value_or(Length{});
}

/// Full widths side by side on the wall or in the skirt, the pattern running on from each to the next.
Job drops(int count, Length width, Length length, Length repeat, Length drop) {
    Cloth cloth = bolt(width);
    cloth.pattern = motifs(width, repeat, {}, drop);
    Job job = jobOf(cloth, {rectangle("Drop", width, length, count)});
    for (int copy = 1; copy < count; ++copy)
        job.flows.push_back({{"Drop", Right, {}, copy}, {"Drop", Left, {}, copy + 1}, {}, {}});
    return job;
}

struct Straight {
    const char *source;
    Length needed, repeat, cut;
    int count;
};

struct HalfDrop {
    const char *source;
    Length needed, repeat, total;
};

struct Strip {
    const char *source;
    Length long_, high, width, seam;
    int strips;
    Length total; ///< along the roll
};

} // namespace

TEST_CASE("widths that match straight across are cut a whole number of repeats apart", "[trade]") {
    const Straight cases[] = {
        {"T4.1, Workroom Threads, August 2011", 116_in, 25_in, 125_in, 2},
        {"T4.2, a drapery workroom's yardage page", 118_in, 13_in, 130_in, 2},
        {"T4.3, a home magazine, 'Figuring pattern repeats'", 96_in, 27_in, 108_in, 3},
        {"T4.4, a curtain wholesaler's sheet", 240_cm, 37_cm, 259_cm, 4},
        {"T4.5, a drapery measuring guide", 114_in, 11_in, 121_in, 4},
        {"T4.8, derived: an exact multiple is not bumped a repeat", 135_cm, 27_cm, 135_cm, 4},
        {"T4.10, a trade magazine's workroom column, April 1998", 87_in, 12_in, 96_in, 4},
    };
    for (const Straight &c : cases) {
        INFO(c.source);
        // The source counts whole cuts; behind the last one nothing has to be cut.
        const Length waste = c.cut - c.needed;
        Length expected = -waste;
        for (int i = 0; i < c.count; ++i) expected += c.cut;
        CHECK(plannedLength(drops(c.count, 54_in, c.needed, c.repeat, {})) == expected);
    }
}

TEST_CASE("widths of a half-drop are cut in the cheaper of the trade's two orders", "[trade]") {
    // T4.11 and T4.12, derived from phase arithmetic (the column of April 1998 sets the first up): alternate widths
    // each half a repeat on, or all of one phase and then all of the other. Totals for four widths as the source counts
    // them, with the waste behind the last cut.
    const HalfDrop cases[] = {
        {"T4.12: alternating, 4 x 90", 87_in, 12_in, 360_in - 3_in},
        {"T4.12: one phase after the other", 96_in, 27_in, 445.5_in - 12_in},
        {"T4.12: one phase after the other", 116_in, 25_in, 512.5_in - 9_in},
    };
    for (const HalfDrop &c : cases) {
        INFO(c.source);
        const Length half = Length::ticks(c.repeat.ticks() / 2);
        CHECK(plannedLength(drops(4, 54_in, c.needed, c.repeat, half)) == c.total);
    }
}

TEST_CASE("a strip longer than the width has ceil arithmetic's joins up the roll, and none railroaded", "[trade]") {
    const Strip cases[] = {
        {"T6.20, a worked chair of 2013: border 108 x 8 as two strips", 108_in, 8_in, 54_in, {}, 2, 16_in},
        {"T9.3, a home-guide page on gathered skirts", 554_in, 19_in, 54_in, {}, 11, 209_in},
        {"T9.4, a page on bed skirts", 660_in, 23_in, 54_in, {}, 13, 299_in},
        {"T9.5, a how-to page on tailored skirts", 250_in, 20.5_in, 45_in, {}, 6, 123_in},
        {"T4.9, a UK measuring guide: 320 cm of 122 cm cloth", 320_cm, 30_cm, 122_cm, {}, 3, 90_cm},
        {"derived: with half-inch seams two widths of 54 no longer make 108", 108_in, 8_in, 54_in, 0.5_in, 3, 24_in},
    };
    for (const Strip &c : cases) {
        INFO(c.source);
        Panel strip = rectangle("Border", c.long_, c.high);
        strip.pieces.most = 20;
        strip.pieces.seam = c.seam;
        const auto runs = compareRuns(jobOf(bolt(c.width), {strip}), quick());
        REQUIRE(runs.size() == 4);
        CHECK(runs[1].way == RunWay::UpRoll);
        CHECK(runs[1].joins == c.strips - 1);
        CHECK(runs[1].plan.layout.cloths.front().length == c.total);
        CHECK(runs[2].way == RunWay::Railroad);
        CHECK(runs[2].joins == 0);
    }
}
