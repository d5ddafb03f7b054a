#pragma once

#include "core/geometry/point.h"

#include <vector>

namespace boltwright {

/// An upright box; `low` is its lower left corner. Empty boxes do not occur.
template <class Frame>
struct BoxIn {
    PointIn<Frame> low, high;
    constexpr Length width() const { return high.x - low.x; }
    constexpr Length height() const { return high.y - low.y; }
    friend constexpr bool operator==(const BoxIn &, const BoxIn &) = default;
};

/// The corners of a polygon in order, not closed (the last is not the first again).
/// What else holds (simple, counter-clockwise) is said where one is used.
template <class Frame>
using RingIn = std::vector<PointIn<Frame>>;

using ClothBox = BoxIn<ClothFrame>;
using PanelBox = BoxIn<PanelFrame>;
using ClothRing = RingIn<ClothFrame>;
using PanelRing = RingIn<PanelFrame>;

/// The smallest upright box around a ring of at least one corner.
template <class Frame>
BoxIn<Frame> boxOf(const RingIn<Frame> &ring) {
    BoxIn<Frame> box{ring.front(), ring.front()};
    for (const auto &p : ring) {
        if (p.x < box.low.x) box.low.x = p.x;
        if (p.y < box.low.y) box.low.y = p.y;
        if (p.x > box.high.x) box.high.x = p.x;
        if (p.y > box.high.y) box.high.y = p.y;
    }
    return box;
}

/// Twice the signed area; positive for a counter-clockwise ring. Exact for a simple ring.
template <class Frame>
Area twiceArea(const RingIn<Frame> &ring) {
    // Without a sign, since the sums in between may run over and come back.
    std::uint64_t sum = 0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        // From the first corner, so that the products stay small however far the ring lies from the origin.
        sum += std::uint64_t(cross(ring[i] - ring.front(), ring[(i + 1) % ring.size()] - ring.front()));
    }
    return Area(sum);
}

/// Every inner angle is at most 180 degrees; for a counter-clockwise simple ring.
template <class Frame>
bool isConvex(const RingIn<Frame> &ring) {
    const std::size_t n = ring.size();
    for (std::size_t i = 0; i < n; ++i)
        if (cross(ring[(i + 1) % n] - ring[i], ring[(i + 2) % n] - ring[(i + 1) % n]) < 0) return false;
    return true;
}

/// The ring is its own bounding box.
template <class Frame>
bool isUprightRectangle(const RingIn<Frame> &ring) {
    if (ring.size() != 4) return false;
    const auto box = boxOf(ring);
    return twiceArea(ring) == 2 * (box.width() * box.height());
}

template <class Frame>
RingIn<Frame> moved(RingIn<Frame> ring, Vector by) {
    for (auto &p : ring) p = p + by;
    return ring;
}

/// An upright rectangle from its box, counter-clockwise from the lower left corner.
template <class Frame>
RingIn<Frame> ringOf(const BoxIn<Frame> &b) {
    return {b.low, {b.high.x, b.low.y}, b.high, {b.low.x, b.high.y}};
}

} // namespace boltwright
