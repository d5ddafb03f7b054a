// The planner against worked examples of the trade. Sources stand beside each; lengths in inches unless said.

#include "core/check/check.h"
#include "core/planner/plan.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <vector>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;
using Fits = planner::Outcome::Kind;

namespace {

PlanOptions steps(std::int64_t count) {
    PlanOptions o;
    o.seconds.reset();
    o.steps = count;
    o.threads = 2;
    return o;
}

Length planned(const Job &job, std::int64_t count = 20000) {
    const Plan p = plan(job, steps(count));
    INFO(p.reason);
    REQUIRE(p.kind == Fits::Fits);
    CHECK(check(job, p.layout).empty());
    return *p.layout.cloths.at(0).length;
}

double inches(Length l) { return double(l.ticks()) / 8128; }

/// Drops of one length cut one above the other from cloth as wide as they are, all beginning at the same place of the
/// repeat: what one drop takes of the roll is the whole repeats from one to the next.
Length takenByEach(Length drop, Length repeat) {
    Cloth cloth = bolt(54_in);
    cloth.pattern = Pattern{};
    cloth.pattern->along = repeat;
    Panel panel = rectangle("Drop", 54_in, drop, 4);
    panel.alike = true;
    const Length all = planned(jobOf(cloth, {panel}));
    const Length three = all - drop;
    CHECK(three.ticks() % 3 == 0);
    return Length::ticks(three.ticks() / 3);
}

/// Widths hung side by side in a half-drop: each begins half a repeat off its neighbour.
Length halfDropWidths(int widths, Length drop, Length repeat) {
    Cloth cloth = bolt(54_in);
    cloth.pattern = motifs(54_in, repeat, {}, Length::ticks(repeat.ticks() / 2));
    std::vector<Panel> panels;
    for (int i = 0; i < widths; ++i) panels.push_back(rectangle("Width " + std::to_string(i + 1), 54_in, drop));
    Job job = jobOf(cloth, panels);
    for (int i = 0; i + 1 < widths; ++i)
        job.flows.push_back({{panels[i].id, Right, {}, {}}, {panels[i + 1].id, Left, {}, {}}, {}, {}});
    return planned(job);
}

/// The part list of a whole chair, side to side by up and down, as its source lays it out in rows.
Job chair(Length width, Length selvage) {
    Cloth cloth = bolt(width);
    cloth.selvage = selvage;
    Panel border = rectangle("Border and piping", 108_in, 8_in);
    border.pieces.most = 3;
    return jobOf(cloth, {rectangle("Inside back", 36_in, 32_in), rectangle("Inside arm", 32_in, 27_in, 2),
                         rectangle("Outside back", 30_in, 30_in), rectangle("Outside arm", 27_in, 18_in, 2),
                         rectangle("Seat edge", 47_in, 18_in), rectangle("Seat cushion", 31_in, 29_in, 2), border,
                         rectangle("Back cushion", 36_in, 24_in, 2)});
}

Fits squaresFit(Length across, Length along, Length square, int count) {
    const Cloth cloth = remnantCloth({{0_in, 0_in}, {across, 0_in}, {across, along}, {0_in, along}});
    return plan(jobOf(cloth, {rectangle("Square", square, square, count)}), steps(3000)).kind;
}

} // namespace

TEST_CASE("drops that match are cut in whole repeats", "[trade]") {
    struct Row {
        Length drop, repeat, cut;
    };
    const auto row = GENERATE(values<Row>({
        {116_in, 25_in, 125_in}, // T4.1: Workroom Threads newsletter, August 2011
        {118_in, 13_in, 130_in}, // T4.2: published drapery yardage example
        {96_in, 27_in, 108_in},  // T4.3: home-decorating magazine, "Figuring pattern repeats"
        {240_cm, 37_cm, 259_cm}, // T4.4: wholesaler's curtain sheet, centimetres
        {114_in, 11_in, 121_in}, // T4.5: drapery measuring guide
        {135_cm, 27_cm, 135_cm}, // T4.8: an exact multiple is not bumped a repeat (derived)
        {87_in, 12_in, 96_in},   // T4.10: trade-magazine workroom column, April 1998
    }));
    CHECK(takenByEach(row.drop, row.repeat) == row.cut);
}

TEST_CASE("four widths in a half-drop take the better of the two ways to cut them", "[trade]") {
    // T4.11 and T4.12 (derived there from the rule of the 1998 column): the next n + 1/2 repeats each, or odd widths
    // first and then the even ones. The totals there count a whole cut for the last width; what is left over above its
    // drop is taken off here, since a layout ends at its last cut.
    CHECK(inches(halfDropWidths(2, 87_in, 12_in)) == Approx(90 + 87));
    CHECK(inches(halfDropWidths(4, 87_in, 12_in)) == Approx(360 - (90 - 87)));
    CHECK(inches(halfDropWidths(4, 96_in, 27_in)) == Approx(445.5 - (108 - 96)));
    CHECK(inches(halfDropWidths(4, 116_in, 25_in)) == Approx(512.5 - (125 - 116)));
}

TEST_CASE("a whole chair takes what its source's rows take when nothing turns, proved, and less when parts may",
          "[trade]") {
    // T6.20: a worked chair of 2013, 54 in plain cloth: the source's rows add up to 274 in, its parts' area to 184.96
    // in (deck from off-cuts, as there). No two of its parts but the outside arms lie side by side, so unturned nothing
    // is shorter than the rows; on plain cloth, which may be turned (T6.11), the planner beats them. With 53 in usable
    // the same rows need 300 in.
    const Plan upright = plan(chair(54_in, 0_in), steps(20000));
    REQUIRE(upright.kind == Fits::Fits);
    CHECK(upright.layout.cloths.at(0).length == 274_in);
    CHECK(upright.proved);
    const double on53 = inches(planned(chair(54_in, 0.5_in)));
    CHECK(on53 <= 300);
    CHECK(on53 >= 274);
    Job turnable = chair(54_in, 0_in);
    turnable.cloths[0].way = Way::Two;
    for (Panel &p : turnable.panels) p.run = Run::Either;
    const double turned = inches(planned(turnable));
    CHECK(turned < 274);
    CHECK(turned >= 184.96);
}

TEST_CASE("six 24 in squares take 2 yd of 54 in cloth", "[trade]") {
    // T1.9: hide houses' worked example, two across by three rows.
    CHECK(planned(jobOf(bolt(54_in), {rectangle("Square", 24_in, 24_in, 6)})) == 72_in);
}

TEST_CASE("as many squares fit a piece as the quilter's chart says, and no more", "[trade]") {
    struct Row {
        Length across, along, square;
        int count;
    };
    const auto row = GENERATE(values<Row>({
        // T8.11: floor(W/w) x floor(L/l), a published chart and a worked answer.
        {45_in, 36_in, 10_in, 12},
        {40_in, 36_in, 5_in, 56},
        {43_in, 35_in, 4_in, 80},
        {43_in, 35_in, 6_in, 35},
        {43_in, 35_in, 3_in, 154},
    }));
    CHECK(squaresFit(row.across, row.along, row.square, row.count) == Fits::Fits);
    CHECK(squaresFit(row.across, row.along, row.square, row.count + 1) != Fits::Fits);
}

TEST_CASE("a pair of 27 in parts fits 54 in of usable cloth and not 53", "[trade]") {
    // TRADE, rule 6 and T6.20: nominal is not usable width.
    const Panel arm = rectangle("Outside arm", 27_in, 18_in, 2);
    Cloth cloth = bolt(54_in);
    CHECK(planned(jobOf(cloth, {arm})) == 18_in);
    cloth.selvage = 0.5_in;
    CHECK(planned(jobOf(cloth, {arm})) == 36_in);
}
