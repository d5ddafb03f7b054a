#pragma once

#include "core/trimmings/strips.h"

namespace boltwright {

/// The four ways in which a strip's length may lie on the cloth.
enum class StripDirection {
    Across, ///< from selvage to selvage
    UpRoll, ///< along the selvage
    Rising, ///< at 45°, up to the right
    Falling ///< at 45°, down to the right
};

/// The best rows of strips of one direction in the convex `room`, off the convex rings `taken` (touching is allowed).
/// Patches of room that no strip connects are each solved alone: the greatest total of rows, one beside the other, by
/// dynamic programming over the heights at which a row may begin.
std::vector<Strip> bestRows(const ClothRing &room, const std::vector<ClothRing> &taken, StripDirection direction,
                            Length width, Length shortest);

} // namespace boltwright
