#include "core/geometry/inset.h"

#include "core/geometry/boost_adapt.h"
#include "core/geometry/distance.h"
#include "core/geometry/exact.h"

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

} // namespace

std::vector<ClothRing> inset(const ClothRing &ring, Length distance) {
    if (distance == Length{}) return {ring};
    const double d = double(distance.ticks());
    const std::size_t n = ring.size();
    MultiPolygon room{boost_adapt::toBoost(ring)};
    for (std::size_t i = 0; i < n; ++i) room = cutOff(room, strip(ring[i], ring[(i + 1) % n], d));
    for (std::size_t i = 0; i < n; ++i)
        if (turning(ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]) < 0) room = cutOff(room, disc(ring[i], d));
    std::vector<ClothRing> out;
    for (const Polygon &part : room)
        if (auto tidy = tidied(part)) out.push_back(std::move(*tidy));
    return out;
}

} // namespace boltwright
