#include "core/geometry/inset.h"

#include "core/geometry/boost_adapt.h"
#include "core/geometry/distance.h"
#include "core/geometry/exact.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <optional>

namespace boltwright {
namespace {

using boost_adapt::MultiPolygon;
using boost_adapt::Polygon;

/// The strip of `distance` on the inner side of an edge, a hair wider on its outer side so that cutting it off leaves
/// no sliver of the outline.
Polygon strip(ClothPoint a, ClothPoint b, double distance) {
    const double ex = double((b.x - a.x).ticks()), ey = double((b.y - a.y).ticks()), length = std::hypot(ex, ey);
    const double nx = -ey / length, ny = ex / length; // to the left of the walk: inwards
    auto point = [](ClothPoint p, double x, double y) {
        return boost_adapt::Point(double(p.x.ticks()) + x, double(p.y.ticks()) + y);
    };
    constexpr double outer = 64;
    Polygon out;
    out.outer() = {point(a, -nx * outer, -ny * outer), point(b, -nx * outer, -ny * outer),
                   point(b, nx * distance, ny * distance), point(a, nx * distance, ny * distance)};
    return out;
}

/// A disc as a polygon inside it whose chords are at most 4 ticks off the circle.
Polygon disc(ClothPoint centre, double radius) {
    const double widest = radius > 8 ? 2 * std::acos(1 - 4 / radius) : std::numbers::pi / 2;
    const int corners = 4 * int(std::ceil(std::numbers::pi / 2 / widest));
    Polygon out;
    for (int i = 0; i < corners; ++i) {
        const double angle = 2 * std::numbers::pi * i / corners;
        out.outer().emplace_back(double(centre.x.ticks()) + radius * std::cos(angle),
                                 double(centre.y.ticks()) + radius * std::sin(angle));
    }
    return out;
}

MultiPolygon cutOff(const MultiPolygon &room, const Polygon &part) {
    MultiPolygon left;
    boost::geometry::difference(room, part, left);
    return left;
}

/// Rounded to ticks, without flat corners; nothing when rounding left no simple ring with an inside.
std::optional<ClothRing> tidied(const Polygon &polygon) {
    ClothRing ring = withoutFlatCorners(boost_adapt::fromBoost(polygon));
    if (ring.size() < 3) return std::nullopt;
    if (twiceArea(ring) <= 0 || !isSimple(ring)) return std::nullopt;
    return ring;
}

double distanceTo(ClothPoint p, ClothPoint a, ClothPoint b) {
    const double ex = double((b.x - a.x).ticks()), ey = double((b.y - a.y).ticks());
    const double px = double((p.x - a.x).ticks()), py = double((p.y - a.y).ticks());
    const double t = std::clamp((px * ex + py * ey) / (ex * ex + ey * ey), 0., 1.);
    return std::hypot(px - t * ex, py - t * ey);
}

/// The room lies inside the ring and nowhere nearer to its outline than `distance`, rounding and chords allowed for.
bool keepsDistance(const ClothRing &room, const ClothRing &ring, double distance) {
    constexpr double allowed = 6; // 4 for a chord, 2 for rounding both its ends
    if (sideOf(ring, room.front()) <= 0) return false;
    for (std::size_t i = 0; i < room.size(); ++i)
        for (std::size_t j = 0; j < ring.size(); ++j) {
            const ClothPoint a = room[i], b = room[(i + 1) % room.size()], c = ring[j], d = ring[(j + 1) % ring.size()];
            if (segmentsMeet(a, b, c, d)) return false;
            if (std::min(distanceTo(a, c, d), distanceTo(c, a, b)) < distance - allowed) return false;
        }
    return true;
}

/// Cuts off all strips and discs, beginning with the `first`. The library now and then loses a cut where many edges
/// meet in nearly one point; then another order helps.
std::vector<ClothRing> cutAll(const ClothRing &ring, double distance, std::size_t first, bool discsFirst) {
    const std::size_t n = ring.size();
    MultiPolygon room{boost_adapt::toBoost(ring)};
    auto strips = [&] {
        for (std::size_t k = 0; k < n; ++k) {
            const std::size_t i = (first + k) % n;
            room = cutOff(room, strip(ring[i], ring[(i + 1) % n], distance));
        }
    };
    if (!discsFirst) strips();
    for (std::size_t k = 0; k < n; ++k) {
        const std::size_t i = (first + k) % n;
        if (turning(ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]) < 0)
            room = cutOff(room, disc(ring[i], distance));
    }
    if (discsFirst) strips();
    std::vector<ClothRing> out;
    for (const Polygon &part : room)
        if (auto tidy = tidied(part)) out.push_back(std::move(*tidy));
    return out;
}

} // namespace

std::vector<ClothRing> inset(const ClothRing &ring, Length distance) {
    if (distance == Length{}) return {ring};
    const double d = double(distance.ticks());
    auto area = [](const std::vector<ClothRing> &rooms) {
        Area sum = 0;
        for (const ClothRing &r : rooms) sum += twiceArea(r);
        return sum;
    };
    std::vector<ClothRing> best;
    const std::size_t n = ring.size();
    // What keeps the distance is right; of several orders the one that lost least is kept.
    for (std::size_t first : {std::size_t(0), n / 3, 2 * n / 3})
        for (bool discsFirst : {false, true}) {
            auto rooms = cutAll(ring, d, first, discsFirst);
            std::erase_if(rooms, [&](const ClothRing &r) { return !keepsDistance(r, ring, d); });
            if (area(rooms) > area(best)) best = std::move(rooms);
        }
    return best;
}

} // namespace boltwright
