#include "core/geometry/exact.h"

#include <cmath>

namespace boltwright {

std::int64_t rootDown(Wide square) {
    // The estimate is close; two steps either way settle what rounding left open.
    std::int64_t r = std::int64_t(std::sqrt(double(square)));
    while (r > 0 && Wide(r) * r > square) --r;
    while (Wide(r + 1) * (r + 1) <= square) ++r;
    return r;
}

int sideOf(const ClothRing &ring, ClothPoint p) {
    bool inside = false;
    for (std::size_t i = 0, n = ring.size(); i < n; ++i) {
        const ClothPoint a = ring[i], b = ring[(i + 1) % n];
        const Area t = turning(a, b, p);
        if (t == 0 && dot(a - p, b - p) <= 0) return 0;
        if ((a.y > p.y) != (b.y > p.y) && (t > 0) == (b.y > a.y)) inside = !inside;
    }
    return inside ? 1 : -1;
}

ClothRing withoutFlatCorners(const ClothRing &ring) {
    ClothRing out;
    for (std::size_t i = 0, n = ring.size(); i < n; ++i)
        if (turning(ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]) != 0) out.push_back(ring[i]);
    return out;
}

} // namespace boltwright
