#pragma once

#include "core/planner/instance.h"

#include <optional>

namespace boltwright::planner {

/// How far the corner of an option's box can go on its sheet, its places kept: least and greatest x and y. By the box
/// of the room alone; flaws, neighbours and slanted edges are not looked at, so true places lie within.
struct Reach {
    Length lowX, highX, lowY, highY;
};

/// Where an option can go; nothing where it has no place in the room's box.
std::optional<Reach> reachOf(const Instance &instance, const Option &option);

/// The open sheet of the instance; null when there are only remnants.
const Sheet *openSheet(const Instance &instance);

/// The rows in which the option's outline is known to be at least [left, right] wide from bottom to top: a box of full
/// height inside it, as x from the box's corner. A rectangle's is all of it; nothing where there is none.
struct Core {
    Length left, right;
};
std::optional<Core> coreOf(const Outline &outline);

/// The largest whole number whose square is at most `n` (n at least 0).
std::int64_t rootBelow(std::int64_t n);

} // namespace boltwright::planner
