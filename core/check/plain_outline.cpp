#include "core/check/plain_outline.h"

#include <algorithm>
#include <cmath>

namespace boltwright::judge {

namespace {

double crossOf(Spot a, Spot b) { return a.x * b.y - a.y * b.x; }
double dotOf(Spot a, Spot b) { return a.x * b.x + a.y * b.y; }
double lengthOf(Spot a) { return std::hypot(a.x, a.y); }
Spot cornerAfter(const Outline &outline, std::size_t k) { return outline[(k + 1) % outline.size()]; }

double distanceToSegment(Spot p, Spot a, Spot b) {
    const Spot along = b - a;
    const double square = dotOf(along, along);
    const double share = square > 0 ? std::clamp(dotOf(p - a, along) / square, 0.0, 1.0) : 0.0;
    return lengthOf(p - (a + share * along));
}

bool segmentsCross(Spot a, Spot b, Spot c, Spot d) {
    const double c1 = crossOf(b - a, c - a), c2 = crossOf(b - a, d - a);
    const double d1 = crossOf(d - c, a - c), d2 = crossOf(d - c, b - c);
    return c1 * c2 < 0 && d1 * d2 < 0;
}

double distanceOfSegments(Spot a, Spot b, Spot c, Spot d) {
    if (segmentsCross(a, b, c, d)) return 0;
    return std::min({distanceToSegment(a, c, d), distanceToSegment(b, c, d), distanceToSegment(c, a, b),
                     distanceToSegment(d, a, b)});
}

/// Where along a-b (0 to 1) something of `other` begins or ends: a crossing, or a corner on the same line. A share too
/// many does no harm.
std::vector<double> sharesMet(Spot a, Spot b, const Outline &other) {
    std::vector<double> shares = {0, 1};
    const Spot along = b - a;
    const auto add = [&](double share) {
        if (share > 0 && share < 1) shares.push_back(share);
    };
    for (std::size_t k = 0; k < other.size(); ++k) {
        const Spot c = other[k], side = cornerAfter(other, k) - c;
        const double turn = crossOf(along, side);
        if (std::abs(turn) > 1e-9 * lengthOf(along) * lengthOf(side)) {
            const double onSide = crossOf(c - a, along) / turn;
            if (onSide > -0.01 && onSide < 1.01) add(crossOf(c - a, side) / turn);
        } else {
            add(dotOf(c - a, along) / dotOf(along, along));
            add(dotOf(c + side - a, along) / dotOf(along, along));
        }
    }
    std::sort(shares.begin(), shares.end());
    return shares;
}

/// Points of `outline`'s edges, at least one on every stretch that lies wholly inside, on or outside `other`.
Outline samplesBetween(const Outline &outline, const Outline &other) {
    Outline samples;
    for (std::size_t k = 0; k < outline.size(); ++k) {
        const Spot a = outline[k], along = cornerAfter(outline, k) - a;
        const auto shares = sharesMet(a, a + along, other);
        for (std::size_t i = 0; i + 1 < shares.size(); ++i)
            samples.push_back(a + 0.5 * (shares[i] + shares[i + 1]) * along);
    }
    return samples;
}

/// Some point well inside: halfway through the outline where it first lies on a line across, the line taken in the
/// middle of the widest band that holds no corner.
Spot somePointIn(const Outline &outline) {
    std::vector<double> levels;
    for (const Spot p : outline) levels.push_back(p.y);
    std::sort(levels.begin(), levels.end());
    std::size_t widest = 0;
    for (std::size_t i = 0; i + 1 < levels.size(); ++i)
        if (levels[i + 1] - levels[i] > levels[widest + 1] - levels[widest]) widest = i;
    const double y = (levels[widest] + levels[widest + 1]) / 2;
    std::vector<double> met;
    for (std::size_t k = 0; k < outline.size(); ++k) {
        const Spot a = outline[k], b = cornerAfter(outline, k);
        if ((a.y < y) != (b.y < y)) met.push_back(a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x));
    }
    std::sort(met.begin(), met.end());
    return met.size() < 2 ? outline.front() : Spot{(met[0] + met[1]) / 2, y};
}

bool edgesReachInto(const Outline &a, const Outline &b) {
    const Outline samples = samplesBetween(a, b);
    return std::any_of(samples.begin(), samples.end(), [&](Spot p) { return depthIn(b, p) > sharp; });
}

} // namespace

Outline counterClockwiseOutline(const ClothRing &ring) {
    Outline outline;
    for (const ClothPoint &p : ring) outline.push_back(spotOf(p));
    double area = 0;
    for (std::size_t k = 0; k < outline.size(); ++k)
        area += crossOf(outline[k] - outline[0], cornerAfter(outline, k) - outline[0]);
    if (area < 0) std::reverse(outline.begin(), outline.end());
    return outline;
}

Bounds boundsOf(const Outline &outline) {
    Bounds bounds{outline.front(), outline.front()};
    for (const Spot p : outline) {
        bounds.low = {std::min(bounds.low.x, p.x), std::min(bounds.low.y, p.y)};
        bounds.high = {std::max(bounds.high.x, p.x), std::max(bounds.high.y, p.y)};
    }
    return bounds;
}

Spot outwards(const Outline &outline, std::size_t k) {
    const Spot along = cornerAfter(outline, k) - outline[k];
    const double length = lengthOf(along);
    return {along.y / length, -along.x / length};
}

Outline withEdgesMoved(const Outline &outline, const std::vector<double> &outwardsBy) {
    Outline moved;
    const std::size_t n = outline.size();
    for (std::size_t k = 0; k < n; ++k) {
        const std::size_t before = (k + n - 1) % n;
        const Spot m = outwards(outline, before), o = outwards(outline, k);
        const double turn = crossOf(m, o);
        if (std::abs(turn) < 1e-12) {
            moved.push_back(outline[k] + outwardsBy[k] * o);
            continue;
        }
        // The corner moves by the vector whose parts along both normals are the two distances.
        const double p = outwardsBy[before] / turn, q = outwardsBy[k] / turn;
        moved.push_back(outline[k] + Spot{p * o.y - q * m.y, q * m.x - p * o.x});
    }
    return moved;
}

Outline withEdgesMoved(const Outline &outline, double outwardsBy) {
    return withEdgesMoved(outline, std::vector<double>(outline.size(), outwardsBy));
}

bool crossesItself(const Outline &outline) {
    const std::size_t n = outline.size();
    for (std::size_t i = 0; i < n; ++i)
        for (std::size_t j = i + 1; j < n; ++j) {
            const bool neighbours = j == i + 1 || (i == 0 && j == n - 1);
            const Spot a = outline[i], b = cornerAfter(outline, i), c = outline[j], d = cornerAfter(outline, j);
            if (neighbours ? segmentsCross(a, b, c, d) : distanceOfSegments(a, b, c, d) < sharp) return true;
        }
    return false;
}

double depthIn(const Outline &outline, Spot p) {
    bool inside = false;
    double nearest = -1;
    for (std::size_t k = 0; k < outline.size(); ++k) {
        const Spot a = outline[k], b = cornerAfter(outline, k);
        const double distance = distanceToSegment(p, a, b);
        if (nearest < 0 || distance < nearest) nearest = distance;
        if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)) inside = !inside;
    }
    return inside ? nearest : -nearest;
}

bool insidesMeet(const Outline &a, const Outline &b) {
    // Either an edge of one runs through the inside of the other, or one covers the other exactly.
    return edgesReachInto(a, b) || edgesReachInto(b, a) || depthIn(b, somePointIn(a)) > sharp;
}

bool liesIn(const Outline &inner, const Outline &outer) {
    // The outer outline has no holes, so what keeps its edges inside keeps all of itself inside.
    const Outline samples = samplesBetween(inner, outer);
    return std::all_of(samples.begin(), samples.end(), [&](Spot p) { return depthIn(outer, p) >= -sharp; });
}

double distanceOfEdges(const Outline &a, const Outline &b) {
    double least = -1;
    for (std::size_t i = 0; i < a.size(); ++i)
        for (std::size_t j = 0; j < b.size(); ++j) {
            const double d = distanceOfSegments(a[i], cornerAfter(a, i), b[j], cornerAfter(b, j));
            if (least < 0 || d < least) least = d;
        }
    return least;
}

} // namespace boltwright::judge
