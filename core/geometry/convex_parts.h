#pragma once

#include "core/geometry/polygon.h"

#include <vector>

namespace boltwright {

/// Convex counter-clockwise parts that together are the simple counter-clockwise ring; the ring itself when convex.
/// By clipping ears, then joining neighbours while they stay convex (Hertel and Mehlhorn 1983): at most four times
/// as many parts as there must be. Exact: corners of the ring only.
std::vector<ClothRing> convexParts(const ClothRing &ring);

/// The smallest convex ring around the ring, counter-clockwise, without corners in the middle of an edge.
ClothRing convexHull(const ClothRing &ring);

/// What lies between a simple counter-clockwise ring and its hull: simple counter-clockwise rings that touch one
/// another at corners at most. None when the ring is convex.
std::vector<ClothRing> pockets(const ClothRing &ring);

} // namespace boltwright
