#pragma once

#include "core/geometry/polygon.h"

namespace boltwright {

/// The no-fit polygon of two convex counter-clockwise rings: where the origin of `b` may not be while `a` lies at its
/// own place and the two would overlap. Convex, counter-clockwise, without corners in the middle of an edge; its
/// outline is where they touch. Exact (the Minkowski sum of `a` and the reflected `b`).
ClothRing noFit(const ClothRing &a, const ClothRing &b);

/// The convex ring with every edge moved outwards by `distance`, corners mitred (and cut off square where a mitre would
/// reach beyond 2·distance). Exact for upright edges; others are off by less than a tick.
ClothRing grown(const ClothRing &convex, Length distance);

} // namespace boltwright
