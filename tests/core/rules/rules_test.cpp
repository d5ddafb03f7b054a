#include "core/rules/rules.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

/// What the cut numbered `cut` of the layout breaks, as sentences.
std::vector<std::string> broken(const Job &job, const Layout &layout, int cut = 0) {
    std::vector<std::string> texts;
    for (const Breach &b : breachesOf(job, layout, layAll(job, layout), cut)) texts.push_back(b.text);
    return texts;
}

using Texts = std::vector<std::string>;

} // namespace

TEST_CASE("a panel runs as the cloth's pattern says unless it says so itself", "[rules]") {
    Cloth cloth = bolt(54_in);
    const Panel seat = rectangle("Seat", 20_in, 22_in);
    CHECK(turnsOf(seat, cloth, cloth) == std::vector{Turn::Deg0});
    cloth.up = PatternUp::Across;
    CHECK(turnsOf(seat, cloth, cloth) == std::vector{Turn::Deg90});
    cloth.way = Way::Two;
    CHECK(turnsOf(seat, cloth, cloth) == std::vector{Turn::Deg90, Turn::Deg270});
    Panel bias = seat;
    bias.run = Run::Bias;
    CHECK(turnsOf(bias, cloth, cloth) == std::vector{Turn::Deg45, Turn::Deg315, Turn::Deg135, Turn::Deg225});
}

TEST_CASE("a turn in which the motif has no repeat is no turn for the panel", "[rules]") {
    Cloth cloth = bolt(54_in);
    cloth.pattern = stripes(3_in);
    Panel border = centred(rectangle("Border", 20_in, 6_in), Centre::Across);
    border.run = Run::Either;
    // Stripes run up the roll: only upright does a stripe fall in the middle side to side.
    CHECK(turnsOf(border, cloth, cloth) == std::vector{Turn::Deg0});
    border.motif->centre = Centre::Up;
    CHECK(turnsOf(border, cloth, cloth) == std::vector{Turn::Deg90});
}

TEST_CASE("a panel centred on a stripe lies where its middle is on one", "[rules]") {
    Cloth cloth = bolt(54_in);
    cloth.pattern = stripes(6_in, 3_in);
    const Job job = jobOf(cloth, {centred(rectangle("Seat", 20_in, 22_in), Centre::Across)});
    const PlaceSet places = *allowedPlaces(job, layoutOf({cutAt("Seat", 0_in, 0_in)}), 0);
    CHECK(places.freeY());
    CHECK(places.nextX(0_in) == 5_in); // 5 + 10 = 15 = 3 + 2 × 6
    CHECK(broken(job, layoutOf({cutAt("Seat", 5_in, 0_in)})).empty());
    CHECK(broken(job, layoutOf({cutAt("Seat", 5.5_in, 0_in)})) == Texts{"1/2 in off the motif"});
}

TEST_CASE("railroaded, side to side lies along the roll", "[rules]") {
    Cloth cloth = bolt(54_in);
    cloth.pattern = motifs(9_in, 12_in, {0_in, 2_in});
    Panel border = centred(rectangle("Border", 40_in, 6_in), Centre::Across);
    border.run = Run::Railroad;
    const Job job = jobOf(cloth, {border});
    const PlaceSet places = *allowedPlaces(job, layoutOf({cutAt("Border", 0_in, 0_in, Turn::Deg90)}), 0);
    CHECK(places.freeX());
    CHECK(places.nextY(0_in, 0_in) == 6_in); // 6 + 20 = 26 = 2 + 2 × 12
}

TEST_CASE("too near a selvage, off the cloth, over a neighbour: each in its own words", "[rules]") {
    Cloth cloth = bolt(54_in);
    cloth.selvage = 0.5_in;
    cloth.bolt->square = 1_in;
    const Job job = jobOf(cloth, {rectangle("Seat", 20_in, 22_in), rectangle("Arm", 10_in, 10_in)}, 0.25_in);
    const auto with = [&](Length x, Length y) { return layoutOf({cutAt("Seat", x, y), cutAt("Arm", 30_in, 1_in)}); };
    CHECK(broken(job, with(0.5_in, 1_in)).empty());
    CHECK(broken(job, with(0.25_in, 1_in)) == Texts{"1/4 in too near the left selvage"});
    CHECK(broken(job, with(-2_in, 1_in)) == Texts{"2 in off the cloth at the left selvage"});
    CHECK(broken(job, with(0.5_in, 0.5_in)) == Texts{"1/2 in too near the cut end"});
    CHECK(broken(job, with(9.75_in, 1_in)).empty());
    CHECK(broken(job, with(9.875_in, 1_in)) == Texts{"1/8 in from Arm, and 1/4 in is kept between cuts"});
    CHECK(broken(job, with(15_in, 1_in)) == Texts{"lies over Arm"});
}

TEST_CASE("a panel that is out of sight may lie over a flaw, others may not", "[rules]") {
    Cloth cloth = bolt(54_in);
    cloth.bolt->flaws.push_back(
        {{{10_in, 10_in}, {12_in, 10_in}, {12_in, 12_in}, {10_in, 12_in}}, "pulled thread", {}});
    Job job = jobOf(cloth, {rectangle("Seat", 20_in, 22_in)});
    const Layout layout = layoutOf({cutAt("Seat", 0_in, 0_in)});
    CHECK(broken(job, layout) == Texts{"lies over a flaw (pulled thread)"});
    job.panels[0].hidden = true;
    CHECK(broken(job, layout).empty());
}

TEST_CASE("the pattern runs on from back to seat less what the tuck-in hides", "[rules]") {
    Cloth cloth = bolt(54_in);
    cloth.pattern = motifs(27_in, 18_in);
    Job job = jobOf(cloth, {rectangle("Back", 24_in, 30_in), rectangle("Seat", 24_in, 20_in)});
    job.flows.push_back({{"Back", Bottom, {}, {}}, {"Seat", Top, {}, {}}, 4_in, {}});
    // The back's lower edge lies at y = 40; 4 in further down, at 36, the pattern comes out of the tuck-in. The seat's
    // top edge must show that part: y ≡ 36 ≡ 0 mod 18, so its lower edge at 16, 34, ...
    const Layout layout = layoutOf({cutAt("Back", 0_in, 40_in), cutAt("Seat", 27_in, 16_in)});
    CHECK(broken(job, layout, 0).empty());
    CHECK(broken(job, layout, 1).empty());
    const PlaceSet places = *allowedPlaces(job, layout, 1);
    CHECK(places.nextY(places.nextX(0_in), 0_in) == 16_in);
    CHECK(places.nextX(1_in) == 27_in);
    CHECK(broken(job, layoutOf({cutAt("Back", 0_in, 40_in), cutAt("Seat", 27_in, 17_in)}), 1) ==
          Texts{"the pattern misses Back by 1 in"});
}

TEST_CASE("copies that are alike show the same part of the repeat, wherever that is", "[rules]") {
    Cloth cloth = bolt(54_in);
    cloth.pattern = motifs(13.5_in, 27_in);
    Panel cushion = rectangle("Cushion", 22_in, 24_in, 2);
    cushion.alike = true;
    const Job job = jobOf(cloth, {cushion});
    const Layout apart = layoutOf({cutAt("Cushion", 1_in, 2_in), cutAt("Cushion", 28_in, 2_in, Turn::Deg0, 2)});
    CHECK(broken(job, apart, 1).empty());
    const Layout off = layoutOf({cutAt("Cushion", 1_in, 2_in), cutAt("Cushion", 28_in, 4_in, Turn::Deg0, 2)});
    CHECK(broken(job, off, 1) == Texts{"shows another part of the repeat than its twin, by 2 in"});
}

TEST_CASE("what is not in the layout is put aside", "[rules]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Seat", 20_in, 22_in, 3)});
    const auto aside = putAside(job, layoutOf({cutAt("Seat", 0_in, 0_in, Turn::Deg0, 2)}));
    REQUIRE(aside.size() == 2);
    CHECK(aside[0].copy == 1);
    CHECK(aside[1].copy == 3);
}
