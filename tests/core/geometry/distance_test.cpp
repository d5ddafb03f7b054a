#include "core/geometry/distance.h"
#include "tests/core/geometry/geos.h"
#include "tests/core/geometry/random_rings.h"

#include <catch2/catch.hpp>
#include <rapidcheck/catch.h>

#include <cmath>

using namespace boltwright;
using namespace boltwright::literals;

namespace {

ClothRing box(Length x, Length y, Length w, Length h) { return ringOf(ClothBox{{x, y}, {x + w, y + h}}); }

Vector by(ClothPoint p) { return p - ClothPoint{}; }

} // namespace

TEST_CASE("a ring that touches itself is not simple", "[distance]") {
    CHECK(isSimple(box(0_mm, 0_mm, 5_mm, 5_mm)));
    CHECK_FALSE(isSimple(ClothRing{{0_mm, 0_mm}, {5_mm, 5_mm}, {5_mm, 0_mm}, {0_mm, 5_mm}}));               // a bow
    CHECK_FALSE(isSimple(ClothRing{{0_mm, 0_mm}, {8_mm, 0_mm}, {8_mm, 5_mm}, {4_mm, 0_mm}, {0_mm, 5_mm}})); // touches
    CHECK_FALSE(isSimple(ClothRing{{0_mm, 0_mm}, {8_mm, 0_mm}, {4_mm, 0_mm}, {4_mm, 5_mm}}));               // goes back
    CHECK_FALSE(isSimple(ClothRing{{0_mm, 0_mm}, {8_mm, 0_mm}}));
}

TEST_CASE("panels side by side neither overlap nor keep a distance", "[distance]") {
    const auto a = box(0_mm, 0_mm, 10_mm, 10_mm), beside = box(10_mm, 0_mm, 10_mm, 10_mm);
    CHECK_FALSE(overlaps(a, beside));
    CHECK(distanceBetween(a, beside) == 0_mm);
    CHECK(overlaps(a, moved(beside, {-Length::ticks(3), 0_mm})));
    CHECK_FALSE(overlaps(a, moved(beside, {-Length::ticks(3), 0_mm}), Length::ticks(3)));
    CHECK(distanceBetween(a, box(13_mm, 14_mm, 1_mm, 1_mm)) == 5_mm); // 3, 4, 5
}

TEST_CASE("a panel in the notch of a remnant is inside it, one across the notch is not", "[distance]") {
    const ClothRing remnant = {{0_mm, 0_mm},   {60_mm, 0_mm},  {60_mm, 20_mm},
                               {20_mm, 20_mm}, {20_mm, 50_mm}, {0_mm, 50_mm}};
    CHECK(contains(remnant, box(0_mm, 20_mm, 20_mm, 30_mm)));
    CHECK_FALSE(contains(remnant, box(0_mm, 20_mm, 21_mm, 10_mm)));
    CHECK_FALSE(contains(remnant, box(-1_mm, 0_mm, 5_mm, 5_mm)));
    CHECK(contains(remnant, box(Length::ticks(-4), 20_mm, 20_mm, 30_mm), Length::ticks(4)));
    CHECK_FALSE(contains(remnant, box(Length::ticks(-5), 20_mm, 20_mm, 30_mm), Length::ticks(4)));
}

TEST_CASE("GEOS agrees which rings are simple", "[distance]") {
    rc::prop("valid polygons of GEOS are simple rings, except that ours may not touch themselves", [](bool small) {
        const ClothRing ring = random_rings::any(small ? 4 : 1000, 6);
        if (isSimple(ring)) RC_ASSERT(geos::valid(geos::shape(ring)));
        if (GEOSisSimple(geos::shape(ring).get()) != 1 || twiceArea(ring) == 0) RC_ASSERT(!isSimple(ring));
        if (!small && geos::valid(geos::shape(ring)) && twiceArea(ring) != 0) RC_CLASSIFY(isSimple(ring));
    });
}

TEST_CASE("GEOS agrees on overlap, distance and containment", "[distance]") {
    rc::prop("of two simple rings", [](bool small) {
        const int reach = small ? 8 : 50'000;
        const ClothRing a = random_rings::simple(reach, 10);
        const ClothRing b = moved(random_rings::simple(reach, 8), by(random_rings::point(reach * 3)));
        const auto p = geos::shape(a), q = geos::shape(b);
        const double shared = geos::area(geos::both(p, q));
        // Areas of whole-tick polygons that overlap in little may be tiny, so doubt near zero goes to ours.
        if (shared > 1e-3) RC_ASSERT(overlaps(a, b));
        if (shared == 0) RC_ASSERT(!overlaps(a, b));
        const double distance = geos::distance(p, q);
        RC_ASSERT(std::abs(distanceBetween(a, b).ticks() - std::floor(distance + 1e-9)) <= 1);
        RC_ASSERT(double(distanceBetween(a, b).ticks()) <= distance + 1e-6);
    });
    rc::prop("of a ring inside another", [](bool small) {
        const int reach = small ? 8 : 50'000;
        const ClothRing outer = random_rings::simple(reach, 10);
        const ClothRing inner = moved(random_rings::simple(reach / 3, 6), by(random_rings::point(reach / 2)));
        const double outside = geos::area(geos::without(geos::shape(inner), geos::shape(outer)));
        if (outside > 1e-3) RC_ASSERT(!contains(outer, inner));
        if (geos::covers(geos::shape(outer), geos::shape(inner))) RC_ASSERT(contains(outer, inner));
        RC_CLASSIFY(contains(outer, inner));
    });
}

TEST_CASE("a tolerance is a depth", "[distance]") {
    rc::prop("what overlaps by more than t still overlaps when t less", [] {
        const ClothRing a = random_rings::convex(5'000, 8);
        const ClothRing b = moved(random_rings::convex(5'000, 8), by(random_rings::point(5'000)));
        const Length t = Length::ticks(*rc::gen::inRange(1, 4'000));
        // Shrunk by t, a convex ring meets the other only if it reached deeper than t.
        const auto shrunk = geos::mitred(geos::shape(a), -double(t.ticks()));
        if (geos::area(geos::both(shrunk, geos::shape(b))) > 1) RC_ASSERT(overlaps(a, b, t));
        if (overlaps(a, b, t)) RC_ASSERT(overlaps(a, b));
    });
}
