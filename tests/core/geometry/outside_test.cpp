#include "core/geometry/distance.h"
#include "core/geometry/outside.h"
#include "tests/core/geometry/geos.h"
#include "tests/core/geometry/random_rings.h"

#include <catch2/catch.hpp>
#include <rapidcheck/catch.h>

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("a cut-out corner is what its box has and the outline has not", "[outside]") {
    const ClothRing ring = {{0_in, 0_in}, {40_in, 0_in}, {40_in, 20_in}, {30_in, 20_in}, {30_in, 30_in}, {0_in, 30_in}};
    const auto parts = outside(boxOf(ring), ring);
    REQUIRE(parts.size() == 1);
    CHECK(boxOf(parts[0]) == ClothBox{{30_in, 20_in}, {40_in, 30_in}});
    CHECK(twiceArea(parts[0]) == twiceArea(ringOf(boxOf(parts[0]))));
}

TEST_CASE("GEOS finds the same cloth missing from a box", "[outside]") {
    rc::prop("within 2 ticks, counter-clockwise and simple", [](bool jagged) {
        const ClothRing ring = random_rings::simple(100'000, jagged ? 9 : 6);
        const ClothBox box = boxOf(ring);
        const auto parts = outside(box, ring);
        for (const ClothRing &part : parts) RC_ASSERT(isSimple(part) && twiceArea(part) > 0);
        const auto ours = geos::unionOf(parts), theirs = geos::without(geos::shape(ringOf(box)), geos::shape(ring));
        RC_ASSERT(geos::area(geos::buffered(geos::without(ours, theirs), -2)) == 0);
        RC_ASSERT(geos::area(geos::buffered(geos::without(theirs, ours), -2)) == 0);
    });
}
