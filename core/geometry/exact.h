#pragma once

#include "core/geometry/polygon.h"

#include <cstdint>

namespace boltwright {

/// Wide enough for the product of two areas.
__extension__ typedef __int128 Wide;

/// Positive when a, b, c turn left, negative when they turn right, zero on a line. Exact.
template <class Frame>
constexpr Area turning(PointIn<Frame> a, PointIn<Frame> b, PointIn<Frame> c) {
    return cross(b - a, c - a);
}

/// The greatest whole number whose square is at most `square` (>= 0).
std::int64_t rootDown(Wide square);

/// Whether the closed segments a-b and c-d have a point in common. Exact.
template <class Frame>
bool segmentsMeet(PointIn<Frame> a, PointIn<Frame> b, PointIn<Frame> c, PointIn<Frame> d) {
    auto within = [](PointIn<Frame> p, PointIn<Frame> q, PointIn<Frame> r) { // r on the line p-q: between them?
        return dot(p - r, q - r) <= 0;
    };
    auto side = [](Area t) { return (t > 0) - (t < 0); };
    const int c1 = side(turning(a, b, c)), d1 = side(turning(a, b, d));
    const int a2 = side(turning(c, d, a)), b2 = side(turning(c, d, b));
    if (c1 * d1 < 0 && a2 * b2 < 0) return true;
    return (c1 == 0 && within(a, b, c)) || (d1 == 0 && within(a, b, d)) || (a2 == 0 && within(c, d, a)) ||
           (b2 == 0 && within(c, d, b));
}

/// Where a point lies with regard to a simple ring: 1 inside, 0 on its outline, -1 outside. Exact.
int sideOf(const ClothRing &ring, ClothPoint p);

/// The ring without corners in the middle of a straight edge.
ClothRing withoutFlatCorners(const ClothRing &ring);

} // namespace boltwright
