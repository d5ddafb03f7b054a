#include "core/cloth/place_set.h"

#include <catch2/catch.hpp>
#include <rapidcheck.h>

#include <cmath>
#include <vector>

using namespace boltwright;
using namespace boltwright::literals;

namespace {

Lattice lattice(Length across, Length along, Length drop, ClothPoint motif) {
    Pattern p;
    if (across > 0_in) p.across = across;
    if (along > 0_in) p.along = along;
    p.drop = drop;
    return Lattice(p, motif);
}

std::vector<Length> centresAcross(const Lattice &l, Length width) {
    std::vector<Length> all;
    const PlaceSet places = PlaceSet::ofMotifs(l, true, false);
    for (Length x = places.nextX(0_in); x <= width; x = places.nextX(x + Length::ticks(1))) all.push_back(x);
    return all;
}

Length randomLength(int low, int high) { return Length::ticks(*rc::gen::inRange(low, high)); }

/// Every motif in a window, straight from the definition: (mx + i·across, my + j·along + i·drop).
std::vector<ClothPoint> motifsAround(const Lattice &l, ClothPoint near, int reach) {
    std::vector<ClothPoint> all;
    const auto i0 = (near.x - l.motif().x).ticks() / l.across().ticks(),
               j0 = (near.y - l.motif().y).ticks() / l.along().ticks();
    for (auto i = i0 - reach; i <= i0 + reach; ++i)
        for (auto j = j0 - reach; j <= j0 + reach; ++j) {
            const double rise = double(l.along().ticks()) *
                                double(((i % l.dropDenominator()) * l.dropNumerator()) % l.dropDenominator()) /
                                l.dropDenominator();
            all.push_back(
                {l.motif().x + l.across() * i, l.motif().y + l.along() * j + Length::ticks(std::llround(rise))});
        }
    return all;
}

} // namespace

TEST_CASE("a 13 1/2 in repeat gives a 54 in bolt four motif centres", "[places]") {
    CHECK(centresAcross(lattice(13.5_in, 0_in, 0_in, {6.75_in, 0_in}), 54_in) ==
          std::vector{6.75_in, 20.25_in, 33.75_in, 47.25_in});
}

TEST_CASE("cloth with two motifs across 54 in repeats every 27 in", "[places]") {
    // TRADE T3.9: two motifs across 54 in, so 27 in from one to the next.
    CHECK(centresAcross(lattice(27_in, 0_in, 0_in, {13.5_in, 0_in}), 54_in) == std::vector{13.5_in, 40.5_in});
}

TEST_CASE("with a half-drop, a level wish is met twice as often as a place on a motif", "[places]") {
    const Lattice l = lattice(18_in, 24_in, 12_in, {0_in, 0_in});
    const PlaceSet level = PlaceSet::ofMotifs(l, false, true), on = PlaceSet::ofMotifs(l, true, true);
    CHECK(level.nextY(5_in, 1_in) == 12_in);
    CHECK(on.nextY(0_in, 1_in) == 24_in);
    CHECK(on.nextY(18_in, 1_in) == 12_in);
    CHECK(level.freeX());
}

TEST_CASE("successive whole widths of a half-drop alternate by half a repeat", "[places]") {
    // TRADE T4.15: every other horizontal repeat sits half a vertical repeat off.
    const PlaceSet on = PlaceSet::ofMotifs(lattice(27_in, 12_in, 6_in, {}), true, true);
    CHECK(on.nextY(0_in, 0_in) == 0_in);
    CHECK(on.nextY(27_in, 0_in) == 6_in);
    CHECK(on.nextY(54_in, 0_in) == 0_in);
}

TEST_CASE("next and previous bracket any point, and both are allowed", "[places][property]") {
    rc::check("next and previous", [] {
        const Lattice l = lattice(randomLength(500, 60000), randomLength(500, 60000), randomLength(0, 60000),
                                  {randomLength(-90000, 90000), randomLength(-90000, 90000)});
        const bool x = *rc::gen::arbitrary<bool>(), y = *rc::gen::arbitrary<bool>();
        const PlaceSet s = PlaceSet::ofMotifs(l, x, y);
        const Length atX = s.nextX(randomLength(-300000, 300000)), atY = randomLength(-300000, 300000);
        const Length up = s.nextY(atX, atY), down = s.previousY(atX, atY);
        RC_ASSERT(down <= atY);
        RC_ASSERT(up >= atY);
        RC_ASSERT(s.holds({atX, up}));
        RC_ASSERT(s.holds({atX, down}));
        if (!s.freeY() && down < atY) RC_ASSERT(s.nextY(atX, down + Length::ticks(1)) == up);
    });
}

TEST_CASE("the places on a motif are the motifs, and the nearest is the nearest of them", "[places][property]") {
    rc::check("nearest motif", [] {
        const Length along = randomLength(2000, 20000);
        const int q = *rc::gen::inRange(1, 9), p = *rc::gen::inRange(0, q);
        const Length drop = Length::ticks(std::llround(double(along.ticks()) * p / q));
        const Lattice l =
            lattice(randomLength(2000, 20000), along, drop, {randomLength(-9000, 9000), randomLength(-9000, 9000)});
        const PlaceSet s = PlaceSet::ofMotifs(l, true, true);
        const ClothPoint hand{randomLength(-40000, 40000), randomLength(-40000, 40000)};
        Area best = -1;
        for (const ClothPoint &m : motifsAround(l, hand, 20)) {
            const Area d = dot(m - hand, m - hand);
            if (best < 0 || d < best) best = d;
        }
        const ClothPoint found = s.nearest(hand);
        const double slack = 2 * std::sqrt(double(best)) + 2; // a tick either way, from rounding the rise
        RC_ASSERT(std::abs(double(dot(found - hand, found - hand) - best)) <= slack);
    });
}

TEST_CASE("what two sets have in common is what both hold", "[places][property]") {
    rc::check("common", [] {
        // Repeats that divide evenly, so that nothing is decided by rounding.
        const int q = *rc::gen::inRange(1, 5);
        const Lattice l =
            lattice(Length::ticks(40), Length::ticks(60 * q), Length::ticks(60 * (*rc::gen::inRange(0, q))), {});
        const auto set = [&] {
            return PlaceSet::ofMotifs(l, *rc::gen::arbitrary<bool>(), *rc::gen::arbitrary<bool>())
                .movedBy({Length::ticks(20 * *rc::gen::inRange(-3, 3)), Length::ticks(30 * *rc::gen::inRange(-3, 3))});
        };
        const PlaceSet a = set(), b = set();
        const auto both = PlaceSet::common(a, b, {});
        for (int x = -200; x <= 200; x += 20)
            for (int y = -400; y <= 400; y += 30) {
                const ClothPoint p{Length::ticks(x), Length::ticks(y)};
                RC_ASSERT((a.holds(p) && b.holds(p)) == (both && both->holds(p)));
            }
    });
}

TEST_CASE("sets that miss each other have nothing in common", "[places]") {
    const Lattice l = lattice(18_in, 24_in, 0_in, {});
    const PlaceSet a = PlaceSet::ofMotifs(l, true, false);
    CHECK_FALSE(PlaceSet::common(a, a.movedBy({1_in, 0_in})));
    CHECK(PlaceSet::common(a, a.movedBy({36_in, 5_in})));
}
