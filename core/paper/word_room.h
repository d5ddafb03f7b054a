#pragma once

#include "core/geometry/polygon.h"

namespace boltwright {

/// A large upright rectangle inside a simple ring, where words can stand: of those between corners' levels, the one
/// that holds the most, a little flatter ones preferred as words are. Never reaches outside; for an upright rectangle
/// the ring itself. Cheap: O(corners cubed).
ClothBox wordRoom(const ClothRing &ring);

} // namespace boltwright
