#include "core/geometry/inset.h"

#include "core/base/ensure.h"
#include "core/geometry/distance.h"
#include "core/geometry/exact.h"

#include <boost/polygon/polygon.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>
#include <numbers>
#include <vector>

namespace boltwright {
namespace {

// Boost.Polygon cuts rings of whole numbers off each other without losing any: inexact cutting now and then loses a
// whole room where many edges meet in nearly one point.
using Whole = std::int32_t;
using Point = boost::polygon::point_data<Whole>;
using Shape = boost::polygon::polygon_data<Whole>;
using Region = boost::polygon::polygon_set_data<Whole>;

/// Farther out than any cloth with the strips beside it reaches, and the difference of two such is still a Whole.
constexpr double farthest = double(std::numeric_limits<Whole>::max()) / 2;

Point whole(double x, double y) {
    ensure(std::abs(x) < farthest && std::abs(y) < farthest, "a cloth reaches as far as lengths may");
    return {Whole(std::lround(x)), Whole(std::lround(y))};
}

Point whole(ClothPoint p) { return whole(double(p.x.ticks()), double(p.y.ticks())); }

Shape shape(const std::vector<Point> &corners) {
    Shape out;
    out.set(corners.begin(), corners.end());
    return out;
}

/// The strip of `distance` on the inner side of an edge. Beside a slanted edge it is a tick wider, so that what is
/// rounded there stays clear of the outline.
Shape strip(ClothPoint a, ClothPoint b, double distance) {
    const double ex = double((b.x - a.x).ticks()), ey = double((b.y - a.y).ticks()), length = std::hypot(ex, ey);
    if (ex != 0 && ey != 0) distance += 1;
    const double nx = -ey / length * distance, ny = ex / length * distance; // to the left of the walk: inwards
    auto inwards = [&](ClothPoint p) { return whole(double(p.x.ticks()) + nx, double(p.y.ticks()) + ny); };
    return shape({whole(a), whole(b), inwards(b), inwards(a)});
}

/// A disc as a polygon inside it whose chords are at most 4 ticks off the circle.
Shape disc(ClothPoint centre, double radius) {
    const double widest = radius > 8 ? 2 * std::acos(1 - 4 / radius) : std::numbers::pi / 2;
    const int corners = 4 * int(std::ceil(std::numbers::pi / 2 / widest));
    std::vector<Point> out;
    for (int i = 0; i < corners; ++i) {
        const double angle = 2 * std::numbers::pi * i / corners;
        out.push_back(whole(double(centre.x.ticks()) + radius * std::cos(angle),
                            double(centre.y.ticks()) + radius * std::sin(angle)));
    }
    return shape(out);
}

/// Its simple rings, counter-clockwise, without flat corners: rounding may pinch a room to a point, where it is parted.
std::vector<ClothRing> simpleRings(const Shape &room) {
    std::vector<ClothRing> out;
    auto keep = [&](ClothRing ring) {
        ring = withoutFlatCorners(ring);
        if (ring.size() < 3 || twiceArea(ring) == 0) return;
        if (twiceArea(ring) < 0) std::reverse(ring.begin(), ring.end());
        if (isSimple(ring)) out.push_back(std::move(ring));
    };
    ClothRing walked;
    for (const Point &p : room) {
        const ClothPoint corner{Length::ticks(p.x()), Length::ticks(p.y())};
        if (const auto before = std::find(walked.begin(), walked.end(), corner); before != walked.end()) {
            keep({before, walked.end()});
            walked.erase(before, walked.end());
        }
        walked.push_back(corner);
    }
    keep(std::move(walked));
    return out;
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

} // namespace

std::vector<ClothRing> inset(const ClothRing &ring, Length distance) {
    if (distance == Length{}) return {ring};
    const double d = double(distance.ticks());
    const std::size_t n = ring.size();
    Region room, near;
    std::vector<Point> corners;
    for (ClothPoint p : ring) corners.push_back(whole(p));
    room.insert(shape(corners));
    for (std::size_t i = 0; i < n; ++i) {
        near.insert(strip(ring[i], ring[(i + 1) % n], d));
        if (turning(ring[(i + n - 1) % n], ring[i], ring[(i + 1) % n]) < 0) near.insert(disc(ring[i], d + 1));
    }
    {
        using namespace boost::polygon::operators;
        room -= near;
    }
    std::vector<Shape> parts;
    room.get(parts);
    std::vector<ClothRing> out;
    for (const Shape &part : parts)
        for (ClothRing &found : simpleRings(part))
            // What keeps the distance is right, however it was found.
            if (keepsDistance(found, ring, d)) out.push_back(std::move(found));
    return out;
}

} // namespace boltwright
