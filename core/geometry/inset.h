#pragma once

#include "core/geometry/polygon.h"

#include <vector>

namespace boltwright {

/// The room inside `ring` (simple, counter-clockwise) at least `distance` from its outline; none when nothing is left,
/// several rings when it falls apart. Counter-clockwise and simple. Edges moved inwards are rounded to ticks; around a
/// corner of the ring that points inwards the room ends in an arc, drawn as chords that lie at most 4 ticks too
/// close: nothing that keeps the distance is lost by more than the rounding.
std::vector<ClothRing> inset(const ClothRing &ring, Length distance);

} // namespace boltwright
