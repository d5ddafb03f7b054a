#include "core/geometry/convex_parts.h"

#include "core/geometry/exact.h"

#include <algorithm>
#include <optional>

namespace boltwright {
namespace {

/// Whether p lies in the closed triangle, its corners excepted.
bool inTriangle(ClothPoint a, ClothPoint b, ClothPoint c, ClothPoint p) {
    if (p == a || p == b || p == c) return false;
    return turning(a, b, p) >= 0 && turning(b, c, p) >= 0 && turning(c, a, p) >= 0;
}

bool isEar(const ClothRing &ring, std::size_t i) {
    const std::size_t n = ring.size();
    const ClothPoint a = ring[(i + n - 1) % n], b = ring[i], c = ring[(i + 1) % n];
    if (turning(a, b, c) <= 0) return false;
    return std::none_of(ring.begin(), ring.end(), [&](ClothPoint p) { return inTriangle(a, b, c, p); });
}

std::vector<ClothRing> triangles(ClothRing ring) {
    std::vector<ClothRing> out;
    std::size_t from = 0;
    while (ring.size() > 3) {
        const std::size_t n = ring.size();
        std::size_t k = 0;
        auto at = [&](std::size_t j) { return (from + j) % n; };
        auto flat = [&](std::size_t i) { return turning(ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]) == 0; };
        while (k < n && !flat(at(k)) && !isEar(ring, at(k))) ++k;
        if (k == n) break; // not a simple ring
        const std::size_t i = at(k);
        if (!flat(i)) out.push_back({ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]});
        ring.erase(ring.begin() + std::ptrdiff_t(i));
        // On with the corner after the next, so that the triangles do not all fan out from one.
        from = i % ring.size() + 1;
    }
    if (ring.size() == 3 && twiceArea(ring) > 0) out.push_back(ring);
    return out;
}

/// The two rings joined over an edge they share, when that is convex.
std::optional<ClothRing> joined(const ClothRing &a, const ClothRing &b) {
    for (std::size_t i = 0; i < a.size(); ++i)
        for (std::size_t j = 0; j < b.size(); ++j) {
            if (a[i] != b[(j + 1) % b.size()] || a[(i + 1) % a.size()] != b[j]) continue;
            ClothRing both;
            for (std::size_t k = 1; k <= a.size(); ++k) both.push_back(a[(i + k) % a.size()]);
            for (std::size_t k = 2; k < b.size(); ++k) both.push_back(b[(j + k) % b.size()]);
            if (isConvex(both)) return withoutFlatCorners(both);
        }
    return std::nullopt;
}

} // namespace

std::vector<ClothRing> convexParts(const ClothRing &ring) {
    if (isConvex(ring)) return {ring};
    std::vector<ClothRing> parts = triangles(withoutFlatCorners(ring));
    for (std::size_t i = 0; i < parts.size(); ++i)
        for (std::size_t j = i + 1; j < parts.size();) {
            if (auto both = joined(parts[i], parts[j])) {
                parts[i] = *both;
                parts.erase(parts.begin() + std::ptrdiff_t(j));
                j = i + 1;
            } else {
                ++j;
            }
        }
    return parts;
}

ClothRing convexHull(const ClothRing &ring) {
    ClothRing points = ring, hull;
    std::sort(points.begin(), points.end());
    points.erase(std::unique(points.begin(), points.end()), points.end());
    if (points.size() < 3) return points;
    auto chain = [&](auto first, auto last) {
        const std::size_t start = hull.size();
        for (auto it = first; it != last; ++it) {
            while (hull.size() >= start + 2 && turning(hull[hull.size() - 2], hull.back(), *it) <= 0) hull.pop_back();
            hull.push_back(*it);
        }
        hull.pop_back();
    };
    chain(points.begin(), points.end());
    chain(points.rbegin(), points.rend());
    return hull;
}

std::vector<ClothRing> pockets(const ClothRing &ring) {
    const ClothRing hull = convexHull(ring);
    const std::size_t n = ring.size();
    std::vector<std::size_t> onHull;
    for (std::size_t i = 0; i < n; ++i)
        if (sideOf(hull, ring[i]) == 0) onHull.push_back(i);
    std::vector<ClothRing> out;
    for (std::size_t k = 0; k < onHull.size(); ++k) {
        const std::size_t from = onHull[k], to = onHull[(k + 1) % onHull.size()];
        ClothRing pocket;
        for (std::size_t i = from; i != to; i = (i + 1) % n) pocket.push_back(ring[i]);
        pocket.push_back(ring[to]);
        if (pocket.size() < 3) continue;
        std::reverse(pocket.begin(), pocket.end());
        out.push_back(std::move(pocket));
    }
    return out;
}

} // namespace boltwright
