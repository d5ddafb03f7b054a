#include "core/geometry/exact.h"
#include "core/geometry/no_fit.h"
#include "tests/core/geometry/geos.h"
#include "tests/core/geometry/random_rings.h"

#include <catch2/catch.hpp>
#include <rapidcheck/catch.h>

using namespace boltwright;
using namespace boltwright::literals;

namespace {
Vector by(ClothPoint p) { return p - ClothPoint{}; }
} // namespace

TEST_CASE("two squares may not overlap within the square twice as large", "[no-fit]") {
    const ClothRing a = ringOf(ClothBox{{0_mm, 0_mm}, {10_mm, 10_mm}}),
                    b = ringOf(ClothBox{{0_mm, 0_mm}, {4_mm, 4_mm}});
    CHECK(noFit(a, b) == ringOf(ClothBox{{-4_mm, -4_mm}, {10_mm, 10_mm}}));
}

TEST_CASE("inside the no-fit polygon is overlap, its outline is contact", "[no-fit]") {
    rc::prop("of two convex rings, at any place", [](bool small) {
        const int reach = small ? 6 : 100'000;
        const ClothRing a = random_rings::convex(reach, 9), b = random_rings::convex(reach, 9), n = noFit(a, b);
        RC_ASSERT(isSimple(n));
        RC_ASSERT(isConvex(n));
        ClothPoint at = random_rings::point(3 * reach);
        if (*rc::gen::arbitrary<bool>()) at = n[std::size_t(*rc::gen::inRange(0, int(n.size())))];
        const ClothRing there = moved(b, by(at));
        RC_ASSERT(overlaps(a, there) == (sideOf(n, at) > 0));
        if (sideOf(n, at) >= 0) RC_ASSERT(distanceBetween(a, there) == Length{});
        RC_CLASSIFY(sideOf(n, at) >= 0);
    });
}

TEST_CASE("GEOS finds no shared cloth outside the no-fit polygon, and some inside", "[no-fit]") {
    rc::prop("of two convex rings", [] {
        const ClothRing a = random_rings::convex(1'000, 9), b = random_rings::convex(1'000, 9), n = noFit(a, b);
        const ClothPoint at = random_rings::point(2'500);
        const double shared = geos::area(geos::both(geos::shape(a), geos::shape(moved(b, by(at)))));
        if (shared > 1e-3) RC_ASSERT(sideOf(n, at) > 0);
        if (shared == 0) RC_ASSERT(sideOf(n, at) <= 0);
    });
}

TEST_CASE("a grown square stays a square", "[no-fit]") {
    const ClothRing a = ringOf(ClothBox{{0_mm, 0_mm}, {10_mm, 10_mm}});
    const ClothRing g = grown(a, 2_mm);
    CHECK(boxOf(g) == ClothBox{{-2_mm, -2_mm}, {12_mm, 12_mm}});
    CHECK(isUprightRectangle(g));
}

TEST_CASE("a grown ring holds everything nearer than its distance", "[no-fit]") {
    rc::prop("GEOS's own buffer lies inside it, give or take two ticks, and it stays within twice the distance", [] {
        const ClothRing a = random_rings::convex(50'000, 9);
        const Length d = Length::ticks(*rc::gen::inRange(1, 9'000));
        const ClothRing g = grown(a, d);
        RC_ASSERT(isConvex(g));
        const auto near = geos::buffered(geos::shape(a), double(d.ticks()) - 2);
        RC_ASSERT(geos::area(geos::without(near, geos::shape(g))) < 1);
        RC_ASSERT(geos::covers(geos::buffered(geos::shape(a), 2.3 * double(d.ticks()) + 3), geos::shape(g)));
    });
}
