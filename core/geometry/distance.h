#pragma once

#include "core/geometry/polygon.h"

namespace boltwright {

/// The ring's corners are distinct and its edges meet only at shared corners.
bool isSimple(const ClothRing &ring);
bool isSimple(const PanelRing &ring);

/// Least distance between two simple rings and what they enclose, zero when they meet; in ticks, rounded down.
Length distanceBetween(const ClothRing &a, const ClothRing &b);

/// Whether the insides of two simple counter-clockwise rings meet by more than `tolerance`: a depth, how far one convex
/// part would have to move to come free of the other. Exact.
bool overlaps(const ClothRing &a, const ClothRing &b, Length tolerance = {});

/// The same for rings that are convex.
bool convexOverlap(const ClothRing &a, const ClothRing &b, Length tolerance = {});

/// Whether `inner` lies inside `outer` (touching its edge is inside), give or take `tolerance`; both simple and
/// counter-clockwise. Exact.
bool contains(const ClothRing &outer, const ClothRing &inner, Length tolerance = {});

} // namespace boltwright
