#include "core/geometry/laying.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;

namespace {
const PanelRing wedge = {{0_mm, 0_mm}, {40_mm, 0_mm}, {30_mm, 10_mm}, {0_mm, 10_mm}};
}

TEST_CASE("a panel turned to the left lies with its top towards the left selvage", "[laying]") {
    CHECK(laid(wedge, Turn::Deg90, false) == ClothRing{{10_mm, 0_mm}, {10_mm, 40_mm}, {0_mm, 30_mm}, {0_mm, 0_mm}});
}

TEST_CASE("a mirrored panel lies the other way round and runs clockwise", "[laying]") {
    const ClothRing ring = laid(wedge, Turn::Deg0, true);
    CHECK(ring == ClothRing{{40_mm, 0_mm}, {0_mm, 0_mm}, {10_mm, 10_mm}, {40_mm, 10_mm}});
    CHECK(twiceArea(ring) < 0);
    CHECK(twiceArea(counterClockwise(ring)) > 0);
}

TEST_CASE("a square on the bias is as wide as its diagonal", "[laying]") {
    const PanelRing square = {{0_mm, 0_mm}, {100_mm, 0_mm}, {100_mm, 100_mm}, {0_mm, 100_mm}};
    // 100 mm = 32000 ticks; 32000 · √2 = 45254.83 ticks: in one rounding up the roll, in two halves of 22627.42 across
    const auto box = boxOf(laid(square, Turn::Deg45, false));
    CHECK(box.width() == Length::ticks(45254));
    CHECK(box.height() == Length::ticks(45255));
}

TEST_CASE("every turn keeps a point of the panel at its place in the laid ring", "[laying]") {
    for (Turn turn : allTurns)
        for (bool mirrored : {false, true}) {
            const ClothRing ring = laid(wedge, turn, mirrored);
            CHECK(boxOf(ring).low == ClothPoint{});
            const ClothPoint corner{7_mm, 3_mm};
            const Laying laying(wedge, turn, mirrored, corner);
            for (std::size_t i = 0; i < wedge.size(); ++i)
                CHECK(laying.at(wedge[i]) == ring[i] + (corner - ClothPoint{}));
        }
}

TEST_CASE("turns by 45 degrees are a rounding away from the eighth of a circle", "[laying]") {
    const Laying laying({{0_mm, 0_mm}}, Turn::Deg45, false, {});
    const Vector v = laying.direction({Length::ticks(320'000'000), Length::ticks(1)});
    // 319999999 / √2 = 226274169.27.. and 320000001 / √2 = 226274170.69.., to 30 digits by Python's decimal
    CHECK(v.x.ticks() == 226274169);
    CHECK(v.y.ticks() == 226274171);
}
