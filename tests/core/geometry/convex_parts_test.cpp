#include "core/geometry/convex_parts.h"
#include "tests/core/geometry/geos.h"
#include "tests/core/geometry/random_rings.h"

#include <catch2/catch.hpp>
#include <rapidcheck/catch.h>

using namespace boltwright;
using namespace boltwright::literals;

namespace {
const ClothRing notched = {{0_mm, 0_mm}, {60_mm, 0_mm}, {60_mm, 20_mm}, {20_mm, 20_mm}, {20_mm, 50_mm}, {0_mm, 50_mm}};
}

TEST_CASE("an L is two convex parts and has one pocket", "[convex parts]") {
    CHECK(convexParts(notched).size() == 2);
    const auto between = pockets(notched);
    REQUIRE(between.size() == 1);
    CHECK(twiceArea(between[0]) == 40_mm * 30_mm);
}

TEST_CASE("a convex ring is its own only part, flat corners and all", "[convex parts]") {
    const ClothRing ring = {{0_mm, 0_mm}, {5_mm, 0_mm}, {10_mm, 0_mm}, {10_mm, 10_mm}, {0_mm, 10_mm}};
    CHECK(convexParts(ring) == std::vector<ClothRing>{ring});
    CHECK(convexHull(ring).size() == 4);
    CHECK(pockets(ring).empty());
}

TEST_CASE("convex parts cover the ring and do not overlap", "[convex parts]") {
    rc::prop("areas add up and the union is the ring", [](bool small) {
        const ClothRing ring = random_rings::simple(small ? 6 : 100'000, 14);
        const auto parts = convexParts(ring);
        Area sum = 0;
        for (const ClothRing &part : parts) {
            RC_ASSERT(isConvex(part));
            RC_ASSERT(twiceArea(part) > 0);
            sum += twiceArea(part);
        }
        RC_ASSERT(sum == twiceArea(ring)); // exact: with the union below, no overlap
        const auto missing = geos::without(geos::shape(ring), geos::unionOf(parts));
        RC_ASSERT(geos::area(missing) <= 1e-9 * double(sum));
    });
}

TEST_CASE("a ring and its pockets make up its hull", "[convex parts]") {
    rc::prop("areas add up, exactly", [](bool small) {
        const ClothRing ring = random_rings::simple(small ? 6 : 100'000, 14);
        Area sum = twiceArea(ring);
        for (const ClothRing &pocket : pockets(ring)) {
            RC_ASSERT(isSimple(pocket));
            RC_ASSERT(twiceArea(pocket) > 0);
            sum += twiceArea(pocket);
        }
        RC_ASSERT(sum == twiceArea(convexHull(ring)));
    });
}
