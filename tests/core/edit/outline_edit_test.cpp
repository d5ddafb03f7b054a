#include "core/edit/outline_edit.h"
#include "core/geometry/distance.h"
#include "core/geometry/exact.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;

namespace {

const ClothRing remnant{{0_in, 0_in}, {54_in, 0_in}, {54_in, 40_in}, {0_in, 40_in}};

} // namespace

TEST_CASE("the hand snaps to whole inches, or whole centimetres", "[outline edit]") {
    CHECK(snapped({12.4_in, 7.6_in}, wholeStep(Unit::Inch)) == ClothPoint{12_in, 8_in});
    CHECK(snapped({12.4_cm, 7.6_cm}, wholeStep(Unit::Centimetre)) == ClothPoint{12_cm, 8_cm});
    CHECK(snapped({12.4_in, 7.6_in}, Length{}) == ClothPoint{12.4_in, 7.6_in});
}

TEST_CASE("a step goes to the next whole inch, from one as from between two", "[outline edit]") {
    CHECK(steppedTo(12_in, 1_in, 1) == 13_in);
    CHECK(steppedTo(12.25_in, 1_in, 1) == 13_in);
    CHECK(steppedTo(12.25_in, 1_in, -1) == 12_in);
    CHECK(steppedTo(12_in, 1_in, -1) == 11_in);
    CHECK(steppedTo(-0.5_in, 1_in, 1) == 0_in);
    CHECK(steppedTo(-0.5_in, 1_in, -1) == -1_in);
}

TEST_CASE("a corner cut out leaves a notch in its place", "[outline edit]") {
    const auto cut = withCornerCutOut(remnant, 1, 10_in, 4_in);
    REQUIRE(cut);
    CHECK(*cut == ClothRing{{0_in, 0_in}, {44_in, 0_in}, {44_in, 4_in}, {54_in, 4_in}, {54_in, 40_in}, {0_in, 40_in}});
    const auto first = withCornerCutOut(remnant, 0, 4_in, 10_in);
    REQUIRE(first);
    CHECK(twiceArea(*first) == twiceArea(remnant) - 2 * (4_in * 10_in));
}

TEST_CASE("a corner cut out is smaller than the sides it is cut from", "[outline edit]") {
    CHECK_FALSE(withCornerCutOut(remnant, 1, 54_in, 4_in));
    CHECK_FALSE(withCornerCutOut(remnant, 1, 10_in, 0_in));
}

TEST_CASE("corners are moved, added and taken away", "[outline edit]") {
    CHECK(withCornerMoved(remnant, 2, {50_in, 38_in})[2] == ClothPoint{50_in, 38_in});
    const ClothRing more = withCornerAdded(remnant, 3, {0_in, 20_in});
    CHECK(more.back() == ClothPoint{0_in, 20_in});
    CHECK(withoutCorner(more, 4) == remnant);
}

TEST_CASE("what is no outline is told in a sentence", "[outline edit]") {
    CHECK_FALSE(faultOfOutline(remnant));
    CHECK(faultOfOutline({{0_in, 0_in}, {1_in, 0_in}}) == "an outline needs at least three corners");
    CHECK(faultOfOutline(withCornerMoved(remnant, 2, {0_in, 0_in})) == "two corners would lie on one another");
    CHECK(faultOfOutline({{0_in, 0_in}, {1_in, 0_in}, {2_in, 0_in}}) == "the corners would lie in one line");
    CHECK(faultOfOutline({{0_in, 0_in}, {9_in, 9_in}, {9_in, 0_in}, {0_in, 8_in}}) == "the outline would cross itself");
}

TEST_CASE("all cloth within a spot's radius is inside its outline, and little more", "[outline edit]") {
    for (const Length radius : {0.25_in, 1_in, 2.5_in, 37_mm}) {
        const Spot spot{{20_in, 10_in}, radius};
        const ClothRing ring = ringOf(spot);
        REQUIRE_FALSE(faultOfOutline(ring));
        for (std::size_t i = 0; i < ring.size(); ++i) {
            // The middle's distance from each side, as twice the triangle's area over that side.
            const Vector side = ring[(i + 1) % ring.size()] - ring[i], in = spot.middle - ring[i];
            const double away = double(cross(side, in)) / std::sqrt(double(dot(side, side)));
            CHECK(away >= double(radius.ticks()) - 1e-6);
            CHECK(std::sqrt(double(dot(in, in))) <= double(radius.ticks()) * 1.02 + 2);
        }
        CHECK(spotIn(ring) == spot);
    }
}

TEST_CASE("an outline that is no spot is not taken for one", "[outline edit]") {
    CHECK_FALSE(spotIn(remnant));
    ClothRing dented = ringOf(Spot{{20_in, 10_in}, 2_in});
    dented[3].x += 1_mm;
    CHECK_FALSE(spotIn(dented));
}
