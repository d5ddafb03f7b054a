#include "core/geometry/laying.h"

#include <algorithm>
#include <cmath>

namespace boltwright {
namespace {

/// k / √2 rounded to the nearest whole number; there are no ties, since √2 is irrational.
std::int64_t overRootTwo(std::int64_t k) {
    if (k < 0) return -overRootTwo(-k);
    // The greatest r with 2r - 1 <= k·√2, that is (2r - 1)² <= 2k². The estimate is off by one at most.
    auto tooGreat = [&](std::int64_t r) { return r > 0 && (2 * r - 1) * (2 * r - 1) > 2 * k * k; };
    std::int64_t r = std::int64_t(double(k) * 0.70710678118654752440) + 1;
    while (tooGreat(r)) --r;
    while (!tooGreat(r + 1)) ++r;
    return r;
}

Vector onBias(Length x, Length y) {
    return {Length::ticks(overRootTwo(x.ticks())), Length::ticks(overRootTwo(y.ticks()))};
}

Vector spun(Vector v, Turn turn, bool mirrored) {
    const Length x = mirrored ? -v.x : v.x, y = v.y;
    switch (turn) {
    case Turn::Deg0:
        return {x, y};
    case Turn::Deg90:
        return {-y, x};
    case Turn::Deg180:
        return {-x, -y};
    case Turn::Deg270:
        return {y, -x};
    case Turn::Deg45:
        return onBias(x - y, x + y);
    case Turn::Deg135:
        return onBias(-x - y, x - y);
    case Turn::Deg225:
        return onBias(y - x, -x - y);
    case Turn::Deg315:
        return onBias(x + y, y - x);
    }
    return v;
}

constexpr PanelPoint panelOrigin{};

} // namespace

Laying::Laying(const PanelRing &ring, Turn turn, bool mirrored, ClothPoint corner)
    : m_turn(turn), m_mirrored(mirrored) {
    Vector low = spun(ring.front() - panelOrigin, turn, mirrored);
    for (const PanelPoint &p : ring) {
        const Vector v = spun(p - panelOrigin, turn, mirrored);
        low = {std::min(low.x, v.x), std::min(low.y, v.y)};
    }
    m_move = (corner - ClothPoint{}) - low;
}

ClothPoint Laying::at(PanelPoint p) const { return ClothPoint{} + spun(p - panelOrigin, m_turn, m_mirrored) + m_move; }

Vector Laying::direction(Vector v) const { return spun(v, m_turn, m_mirrored); }

ClothRing laid(const PanelRing &ring, Turn turn, bool mirrored) {
    const Laying laying(ring, turn, mirrored, {});
    ClothRing out;
    for (const PanelPoint &p : ring) out.push_back(laying.at(p));
    return out;
}

ClothRing counterClockwise(ClothRing ring) {
    if (twiceArea(ring) < 0) std::reverse(ring.begin(), ring.end());
    return ring;
}

} // namespace boltwright
