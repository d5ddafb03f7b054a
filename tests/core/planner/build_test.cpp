#include "core/planner/build.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;
using planner::buildInstances;
using planner::ClothInstance;

namespace {

ClothInstance onlyInstance(const Job &job, const Layout *from = nullptr) {
    auto all = buildInstances(job, from);
    REQUIRE(all.size() == 1);
    return all.front();
}

std::vector<Length> lengthsOf(const ClothInstance &c) {
    std::vector<Length> lengths;
    for (const Cut &d : c.drafts) lengths.push_back(d.length.value_or(Length{}));
    return lengths;
}

Panel border(Length across, Length seam, int most) {
    Panel p = rectangle("Border", across, 8_in);
    p.pieces.most = most;
    p.pieces.seam = seam;
    p.pieces.shortest = 10_in;
    return p;
}

} // namespace

TEST_CASE("a border twice as long as the cloth is wide is two full widths without seams, three with", "[build]") {
    // TRADE T6.20: border and piping 108 x 8 on 54 in cloth is two strips of 54.
    CHECK(lengthsOf(onlyInstance(jobOf(bolt(54_in), {border(108_in, 0_in, 4)}))) == std::vector{54_in, 54_in});
    const auto seamed = lengthsOf(onlyInstance(jobOf(bolt(54_in), {border(108_in, 0.5_in, 4)})));
    REQUIRE(seamed.size() == 3);
    CHECK(seamed[0] + seamed[1] + seamed[2] == 108_in + 4 * 0.5_in);
}

TEST_CASE("a border that fits whole is not pieced, and railroaded it always fits", "[build]") {
    CHECK(onlyInstance(jobOf(bolt(54_in), {border(50_in, 0.5_in, 3)})).drafts.size() == 1);
    Panel railroaded = border(108_in, 0.5_in, 3);
    railroaded.run = Run::Railroad;
    CHECK(onlyInstance(jobOf(bolt(54_in), {railroaded})).drafts.size() == 1);
}

TEST_CASE("balanced pieces are equal about the middle, a full width in the centre", "[build]") {
    Panel back = border(96_in, 0.5_in, 3);
    back.pieces.where = Pieces::Where::Balanced;
    const auto lengths = lengthsOf(onlyInstance(jobOf(bolt(54_in), {back})));
    // Two would need 48.5 in each; with one seam in the middle of the back that is the fewest joins.
    CHECK(lengths == std::vector{48.5_in, 48.5_in});
    back.shape = Rectangle{120_in, 8_in};
    const auto three = lengthsOf(onlyInstance(jobOf(bolt(54_in), {back})));
    REQUIRE(three.size() == 3);
    CHECK(three[1] == 54_in);
    CHECK(three[0] == three[2]);
}

TEST_CASE("a part that must sit on a motif is joined where its pieces find one in the width", "[build]") {
    // Motifs at 0, 27 and 54: two equal halves would have theirs at the join, and one of them would not fit about it.
    Cloth cloth = bolt(54_in);
    cloth.pattern = motifs(27_in, 27_in);
    Panel back = centred(rectangle("Back", 70_in, 28_in), Centre::Across);
    back.pieces.most = 3;
    back.pieces.where = Pieces::Where::Balanced;
    back.pieces.match = true;
    const ClothInstance c = onlyInstance(jobOf(cloth, {back}));
    CHECK(c.impossible.empty());
    REQUIRE(c.drafts.size() == 3);
    CHECK(c.drafts[1].length == 54_in);
    CHECK(c.drafts[0].length == 8_in);
}

TEST_CASE("a part that fits the width but not about a motif is joined where it may be", "[build]") {
    // Stripes at 6 3/4, 20 1/4, 33 3/4: about the second there is room for 40 1/2 in.
    Cloth cloth = bolt(54_in);
    cloth.pattern = stripes(13.5_in, 6.75_in);
    Panel cushion = centred(rectangle("Cushion", 47_in, 19_in), Centre::Across);
    CHECK(onlyInstance(jobOf(cloth, {cushion})).drafts.size() == 1);
    cushion.pieces.most = 3;
    const ClothInstance c = onlyInstance(jobOf(cloth, {cushion}));
    REQUIRE(c.drafts.size() == 3);
    CHECK(c.drafts[1].length == 40.5_in);
    CHECK(c.drafts[0].length == 3.25_in);
}

TEST_CASE("what cannot lie on the cloth at all is said by name, with both measures", "[build]") {
    const ClothInstance c = onlyInstance(jobOf(bolt(54_in), {rectangle("Back", 60_in, 20_in)}));
    CHECK(c.impossible == "Back is cut 60 × 20 in, and the cloth is 54 in wide between the selvages");
}

TEST_CASE("a flow partner inherits the other's motif", "[build]") {
    Cloth cloth = bolt(54_in);
    cloth.pattern = stripes(6_in, 3_in);
    Job job = jobOf(cloth, {centred(rectangle("Back", 20_in, 30_in), Centre::Across), rectangle("Seat", 24_in, 20_in)});
    job.flows.push_back({{"Back", Bottom, {}, {}}, {"Seat", Top, {}, {}}, 0_in, {}});
    const ClothInstance c = onlyInstance(job);
    REQUIRE(c.instance.groups.size() == 1);
    // The seat's middle must be on a stripe too: x + 12 ≡ 3 (mod 6).
    CHECK(c.instance.items[1].options.front().places.nextX(0_in) == 3_in);
    CHECK(c.instance.items[0].options.front().places.nextX(0_in) == 5_in);
}

TEST_CASE("wishes that cannot be met together are refused before any search", "[build]") {
    Cloth cloth = bolt(54_in);
    cloth.pattern = stripes(6_in, 3_in);
    Panel seat = centred(rectangle("Seat", 24_in, 20_in), Centre::Across);
    seat.motif->at = PanelPoint{10_in, 10_in}; // two inches off its middle, while the back joins middle to middle
    Job job = jobOf(cloth, {centred(rectangle("Back", 20_in, 30_in), Centre::Across), seat});
    job.flows.push_back({{"Back", Bottom, {}, {}}, {"Seat", Top, {}, {}}, 0_in, {}});
    CHECK(onlyInstance(job).impossible == "Back cannot lie on its motif and run on from its neighbours at once");
}

TEST_CASE("a locked panel stays, and gives its partners their phase", "[build]") {
    Cloth cloth = bolt(54_in);
    cloth.pattern = motifs(9_in, 12_in);
    Panel cushion = rectangle("Cushion", 20_in, 20_in, 2);
    cushion.alike = true;
    const Job job = jobOf(cloth, {cushion});
    Layout from = layoutOf({cutAt("Cushion", 4_in, 5_in)});
    from.cuts[0].state = CutState::Locked;
    const ClothInstance c = onlyInstance(job, &from);
    REQUIRE(c.drafts.size() == 1);
    CHECK(c.drafts[0].copy == 2);
    CHECK(c.instance.fixed.size() == 1);
    const PlaceSet places = c.instance.items[0].options[0].places;
    CHECK(places.holds({13_in, 17_in}));
    CHECK_FALSE(places.holds({14_in, 17_in}));
}
