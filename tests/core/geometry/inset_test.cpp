#include "core/geometry/inset.h"
#include "tests/core/geometry/geos.h"
#include "tests/core/geometry/random_rings.h"

#include <catch2/catch.hpp>
#include <rapidcheck/catch.h>

#include <cmath>

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("a rectangle loses its edge all round", "[inset]") {
    const ClothRing ring = ringOf(ClothBox{{0_in, 0_in}, {54_in, 20_in}});
    const auto room = inset(ring, 0.5_in);
    REQUIRE(room.size() == 1);
    CHECK(isUprightRectangle(room[0]));
    CHECK(boxOf(room[0]) == ClothBox{{0.5_in, 0.5_in}, {53.5_in, 19.5_in}});
    CHECK(inset(ring, 10_in).empty());
    CHECK(inset(ring, 0_in) == std::vector<ClothRing>{ring});
}

TEST_CASE("a dumbbell falls apart when its bar is too thin", "[inset]") {
    const ClothRing ring = {{0_mm, 0_mm},   {20_mm, 0_mm},  {20_mm, 8_mm},  {50_mm, 8_mm},
                            {50_mm, 0_mm},  {70_mm, 0_mm},  {70_mm, 20_mm}, {50_mm, 20_mm},
                            {50_mm, 12_mm}, {20_mm, 12_mm}, {20_mm, 20_mm}, {0_mm, 20_mm}};
    CHECK(inset(ring, 1_mm).size() == 1);
    CHECK(inset(ring, 3_mm).size() == 2);
}

TEST_CASE("a room is there whole where the lines beside three edges nearly meet in a point", "[inset]") {
    auto at = [](int x, int y) { return ClothPoint{Length::ticks(x), Length::ticks(y)}; };
    const ClothRing ring = {at(-1013, 2045), at(-32'795, 66'173), at(-100'000, -100'000), at(41'000, -82'725)};
    REQUIRE(isSimple(ring));
    const auto room = inset(ring, Length::ticks(1006));
    REQUIRE(room.size() == 1);
    // The outline is some 530,000 ticks long, and what is lost at most that times the distance.
    CHECK(double(twiceArea(ring) - twiceArea(room[0])) < 2 * 530'000. * 1007);
}

TEST_CASE("GEOS finds the same room at a distance from the outline", "[inset]") {
    rc::prop("within 8 ticks either way, counter-clockwise and simple", [](bool jagged) {
        const ClothRing ring = random_rings::simple(100'000, jagged ? 9 : 6);
        const Length d = Length::ticks(*rc::gen::inRange(1, 12'000));
        // GEOS leaves out edges that are short beside the distance (its BufferInputLineSimplifier, at a hundredth).
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const auto edge = ring[(i + 1) % ring.size()] - ring[i];
            RC_PRE(std::hypot(double(edge.x.ticks()), double(edge.y.ticks())) > double(d.ticks()) / 50);
        }
        const auto rooms = inset(ring, d);
        for (const ClothRing &room : rooms) RC_ASSERT(isSimple(room) && twiceArea(room) > 0);
        const auto ours = geos::unionOf(rooms), whole = geos::shape(ring);
        const auto narrow = geos::buffered(whole, -double(d.ticks()) - 3),
                   wide = geos::buffered(whole, -double(d.ticks()) + 8);
        // Points and rooms that are hardly wider than the rounding are lost to it: 0.1 mm counts for nothing.
        RC_ASSERT(geos::area(geos::buffered(geos::without(narrow, ours), -16)) == 0);
        RC_ASSERT(geos::area(geos::buffered(geos::without(ours, wide), -1)) == 0);
    });
}
