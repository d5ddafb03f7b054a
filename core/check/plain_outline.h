#pragma once

#include "core/geometry/polygon.h"

#include <vector>

/// The judge's own geometry, in the plainest form: corners as floating-point ticks, every question answered by looking
/// at all edges. Coordinates stay below 2^30 ticks or so, where a double is exact to 2^-22 of a tick; quarter turns
/// and upright rectangles are exact. `sharp` is what rounding may cost in a question about inside and outside, far
/// below every tolerance of the contract.
namespace boltwright::judge {

constexpr double sharp = 0.001;

struct Spot {
    double x = 0, y = 0;
    friend Spot operator+(Spot a, Spot b) { return {a.x + b.x, a.y + b.y}; }
    friend Spot operator-(Spot a, Spot b) { return {a.x - b.x, a.y - b.y}; }
    friend Spot operator*(double k, Spot a) { return {k * a.x, k * a.y}; }
};

template <class Frame>
Spot spotOf(PointIn<Frame> p) {
    return {double(p.x.ticks()), double(p.y.ticks())};
}

/// The corners in order, not closed.
using Outline = std::vector<Spot>;

/// The ring's corners, counter-clockwise, whichever way it runs.
Outline counterClockwiseOutline(const ClothRing &ring);

struct Bounds {
    Spot low, high;
};
Bounds boundsOf(const Outline &outline);

/// The unit normal of edge `k` (from corner k to the next) that points out of a counter-clockwise outline.
Spot outwards(const Outline &outline, std::size_t k);

/// Every edge of a counter-clockwise outline moved outwards by its own distance (inwards where negative), corners
/// mitred. Where two edges run on in one line the corner moves with the second.
Outline withEdgesMoved(const Outline &outline, const std::vector<double> &outwardsBy);
Outline withEdgesMoved(const Outline &outline, double outwardsBy);

/// No two edges meet, except neighbours at their corner.
bool crossesItself(const Outline &outline);

/// How deep a point lies inside the outline: its distance from the nearest edge, negative outside.
double depthIn(const Outline &outline, Spot p);

/// Whether the insides of two outlines have a point in common; touching is not meeting.
bool insidesMeet(const Outline &a, const Outline &b);

/// Whether all of `inner` lies in `outer`; touching its edge is inside.
bool liesIn(const Outline &inner, const Outline &outer);

/// The least distance between two outlines' edges, zero where edges touch or cross.
double distanceOfEdges(const Outline &a, const Outline &b);

} // namespace boltwright::judge
