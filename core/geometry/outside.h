#pragma once

#include "core/geometry/polygon.h"

#include <vector>

namespace boltwright {

/// The parts of a box that a simple counter-clockwise ring inside it does not cover, each a simple counter-clockwise
/// ring, rounded to ticks.
std::vector<ClothRing> outside(const ClothBox &box, const ClothRing &ring);

} // namespace boltwright
