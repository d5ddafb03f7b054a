#include "core/geometry/distance.h"

#include "core/geometry/convex_parts.h"
#include "core/geometry/exact.h"

#include <algorithm>

namespace boltwright {
namespace {

template <class Frame>
bool simple(const RingIn<Frame> &ring) {
    const std::size_t n = ring.size();
    if (n < 3) return false;
    auto corner = [&](std::size_t i) { return ring[i % n]; };
    for (std::size_t i = 0; i < n; ++i) {
        const auto a = corner(i), b = corner(i + 1), c = corner(i + 2);
        // Neighbouring edges share a corner and nothing else: they may go straight on, never back.
        if (a == b || (turning(a, b, c) == 0 && dot(b - a, c - b) <= 0)) return false;
        for (std::size_t j = i + 2; j < n; ++j)
            if ((j + 1) % n != i && segmentsMeet(a, b, corner(j), corner(j + 1))) return false;
    }
    return true;
}

Length distanceToSegment(ClothPoint p, ClothPoint a, ClothPoint b) {
    const Vector edge = b - a;
    auto length = [](Vector v) { return Length::ticks(rootDown(Wide(dot(v, v)))); };
    if (dot(p - a, edge) <= 0) return length(p - a);
    if (dot(p - b, edge) >= 0) return length(p - b);
    const Wide doubled = turning(a, b, p);
    return Length::ticks(rootDown(doubled * doubled / dot(edge, edge)));
}

/// How far `b` reaches over to the inner side of the edge p-q of another ring, against `tolerance`: whether by more.
bool reachesOver(ClothPoint p, ClothPoint q, const ClothRing &b, Length tolerance) {
    Area most = turning(p, q, b.front());
    for (ClothPoint c : b) most = std::max(most, turning(p, q, c));
    if (most <= 0) return false;
    if (tolerance == Length{}) return true;
    // most / |edge| > tolerance, without the root. An edge of more than 1 km of cloth does not occur.
    const Wide left = Wide(most) * most;
    const Vector edge = q - p;
    const Wide right = Wide(dot(edge, edge)) * (tolerance * tolerance);
    return left > right;
}

bool reachesOverAll(const ClothRing &a, const ClothRing &b, Length tolerance) {
    for (std::size_t i = 0; i < a.size(); ++i)
        if (!reachesOver(a[i], a[(i + 1) % a.size()], b, tolerance)) return false;
    return true;
}

bool boxesMeet(const ClothRing &a, const ClothRing &b) {
    const ClothBox p = boxOf(a), q = boxOf(b);
    return p.low.x < q.high.x && q.low.x < p.high.x && p.low.y < q.high.y && q.low.y < p.high.y;
}

} // namespace

bool isSimple(const ClothRing &ring) { return simple(ring); }
bool isSimple(const PanelRing &ring) { return simple(ring); }

Length distanceBetween(const ClothRing &a, const ClothRing &b) {
    if (sideOf(a, b.front()) >= 0 || sideOf(b, a.front()) >= 0) return {};
    Length least = Length::limit() * 4;
    for (std::size_t i = 0; i < a.size(); ++i)
        for (std::size_t j = 0; j < b.size(); ++j) {
            const ClothPoint p = a[i], q = a[(i + 1) % a.size()], r = b[j], s = b[(j + 1) % b.size()];
            if (segmentsMeet(p, q, r, s)) return {};
            least = std::min({least, distanceToSegment(p, r, s), distanceToSegment(q, r, s), distanceToSegment(r, p, q),
                              distanceToSegment(s, p, q)});
        }
    return least;
}

bool convexOverlap(const ClothRing &a, const ClothRing &b, Length tolerance) {
    return boxesMeet(a, b) && reachesOverAll(a, b, tolerance) && reachesOverAll(b, a, tolerance);
}

bool overlaps(const ClothRing &a, const ClothRing &b, Length tolerance) {
    if (!boxesMeet(a, b)) return false;
    const auto left = convexParts(a), right = convexParts(b);
    for (const ClothRing &p : left)
        for (const ClothRing &q : right)
            if (convexOverlap(p, q, tolerance)) return true;
    return false;
}

bool contains(const ClothRing &outer, const ClothRing &inner, Length tolerance) {
    const ClothRing hull = convexHull(outer);
    // Inside the hull: nothing reaches over the outer side of its edges.
    for (std::size_t i = 0; i < hull.size(); ++i)
        if (reachesOver(hull[(i + 1) % hull.size()], hull[i], inner, tolerance)) return false;
    for (const ClothRing &pocket : pockets(outer))
        if (overlaps(pocket, inner, tolerance)) return false;
    return true;
}

} // namespace boltwright
