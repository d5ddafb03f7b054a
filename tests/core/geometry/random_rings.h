#pragma once

#include "core/geometry/convex_parts.h"
#include "core/geometry/distance.h"
#include "core/geometry/laying.h"

#include <rapidcheck.h>

#include <algorithm>

namespace boltwright::random_rings {

/// A point within `reach` ticks of the origin on both axes.
inline ClothPoint point(int reach) {
    return {Length::ticks(*rc::gen::inRange(-reach, reach + 1)), Length::ticks(*rc::gen::inRange(-reach, reach + 1))};
}

/// Any corners, any order: mostly not simple.
inline ClothRing any(int reach, int most) {
    ClothRing ring;
    const int n = *rc::gen::inRange(3, most + 1);
    for (int i = 0; i < n; ++i) ring.push_back(point(reach));
    return ring;
}

/// A simple counter-clockwise ring, often concave: corners in order of direction as seen from the origin.
inline ClothRing simple(int reach, int most) {
    ClothRing ring = any(reach, most);
    auto half = [](ClothPoint p) { return p.y < Length{} || (p.y == Length{} && p.x < Length{}); };
    std::sort(ring.begin(), ring.end(), [&](ClothPoint a, ClothPoint b) {
        if (half(a) != half(b)) return half(a) < half(b);
        const Area turn = cross(a - ClothPoint{}, b - ClothPoint{});
        return turn != 0 ? turn > 0 : a < b;
    });
    ring.erase(std::unique(ring.begin(), ring.end()), ring.end());
    if (ring.size() < 3 || !isSimple(ring)) return {{}, {Length::ticks(reach), {}}, {{}, Length::ticks(reach)}};
    return counterClockwise(ring);
}

inline ClothRing convex(int reach, int most) {
    const ClothRing hull = convexHull(any(reach, most));
    if (hull.size() < 3) return {{}, {Length::ticks(reach), {}}, {{}, Length::ticks(reach)}};
    return hull;
}

} // namespace boltwright::random_rings
