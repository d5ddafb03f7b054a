#pragma once

#include "core/planner/instance.h"

#include <optional>
#include <vector>

namespace boltwright::planner {

/// The same instance with slanted items joined two by two where head to tail they make a rectangle. What can be laid of
/// it can be laid of the instance; the reverse need not be so.
struct Pairing {
    /// An item as part of an item of `joined`.
    struct Part {
        int item = 0, option = 0;
        Vector from; ///< from the joined box's lower left corner to the item's own
    };
    Instance joined;
    std::vector<std::vector<std::vector<Part>>> parts; ///< by item of `joined` and its option

    /// The placements of the instance itself.
    std::vector<Placement> apart(const std::vector<Placement> &ofJoined) const;
};

/// Joins what can be joined without loss to speak of: at most 1 in 64 of the rectangle's area. Only items without a
/// group that may lie anywhere are joined. Nothing when no two items make a rectangle.
std::optional<Pairing> pairUp(const Instance &instance);

} // namespace boltwright::planner
