#include "core/geometry/no_fit.h"

#include "core/geometry/convex_parts.h"
#include "core/geometry/exact.h"

#include <algorithm>
#include <cmath>

namespace boltwright {
namespace {

/// The corner where a walk by rising direction of the edges begins: the lowest, among those the leftmost.
std::size_t firstCorner(const ClothRing &ring) {
    auto lower = [](ClothPoint a, ClothPoint b) { return a.y != b.y ? a.y < b.y : a.x < b.x; };
    return std::size_t(std::min_element(ring.begin(), ring.end(), lower) - ring.begin());
}

ClothRing reflected(const ClothRing &ring) {
    ClothRing out;
    for (ClothPoint p : ring) out.push_back({-p.x, -p.y});
    return out;
}

struct Real {
    double x, y;
};

/// The unit normal of an edge, to the right of the walk: outwards.
Real outwards(Vector edge) {
    const double x = double(edge.y.ticks()), y = -double(edge.x.ticks()), length = std::sqrt(x * x + y * y);
    return {x / length, y / length};
}

/// A coordinate moved away from the ring's inside: up where the corner looks up, down where it looks down.
Length awayFrom(Length from, double by) {
    constexpr double hair = 1e-6; // what the arithmetic may be off by
    if (by > hair) return from + Length::ticks(std::int64_t(std::ceil(by - hair)));
    if (by < -hair) return from + Length::ticks(std::int64_t(std::floor(by + hair)));
    return from;
}

} // namespace

ClothRing noFit(const ClothRing &a, const ClothRing &b) {
    const ClothRing c = reflected(b);
    const std::size_t n = a.size(), m = c.size(), i0 = firstCorner(a), j0 = firstCorner(c);
    ClothRing out;
    ClothPoint at = a[i0] + (c[j0] - ClothPoint{});
    std::size_t i = 0, j = 0;
    Vector last{};
    auto step = [&](Vector by) {
        if (by == Vector{}) return;
        if (out.empty() || cross(last, by) != 0) out.push_back(at);
        at = at + by;
        last = by;
    };
    while (i < n || j < m) {
        const Vector u = a[(i0 + i + 1) % n] - a[(i0 + i) % n], v = c[(j0 + j + 1) % m] - c[(j0 + j) % m];
        const bool first = j == m || (i < n && cross(u, v) >= 0);
        step(first ? u : v);
        first ? ++i : ++j;
    }
    return out;
}

ClothRing grown(const ClothRing &convex, Length distance) {
    ClothRing ring = withoutFlatCorners(convex);
    if (distance == Length{}) return ring;
    const double d = double(distance.ticks());
    ClothRing out;
    for (std::size_t k = 0, n = ring.size(); k < n; ++k) {
        const ClothPoint p = ring[k];
        const Real a = outwards(p - ring[(k + n - 1) % n]), b = outwards(ring[(k + 1) % n] - p);
        auto add = [&](double x, double y) { out.push_back({awayFrom(p.x, x), awayFrom(p.y, y)}); };
        // The mitre is the sum of the two normals, stretched by 1 / (1 + cos) of the angle between them.
        const double cosine = a.x * b.x + a.y * b.y;
        if (cosine >= -0.5) { // it reaches d / cos(half the angle), at most 2·d
            const double s = d / (1 + cosine);
            add((a.x + b.x) * s, (a.y + b.y) * s);
        } else {
            // Cut off square at 2·distance, along the bisector of the corner: each edge runs on until there.
            const double half = std::sqrt((1 - cosine) / 2);            // sine of half the angle between the normals
            const double on = (2 - std::sqrt((1 + cosine) / 2)) / half; // how far along the edge, in units of d
            add((a.x - a.y * on) * d, (a.y + a.x * on) * d);
            add((b.x + b.y * on) * d, (b.y - b.x * on) * d);
        }
    }
    // Rounding may have bent the outline by a tick; the hull only adds.
    return convexHull(out);
}

} // namespace boltwright
