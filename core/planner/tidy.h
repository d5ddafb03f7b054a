#pragma once

#include "core/planner/instance.h"

#include <compare>
#include <cstdint>
#include <vector>

/// Second wishes: which of the layouts of equal length is to be had.
namespace boltwright::planner {

/// What a layout of upright panels has beside its length; the greater value is the better layout. Told in the order in
/// which it is asked for.
struct Merits {
    /// The largest upright rectangle below the end (or on a remnant) that keeps the gap from everything, in whole
    /// square inches; none under 6 in either way, which serves for little.
    std::int64_t offcut = 0;
    /// At how many heights a panel begins or ends, and so the scissors go across; negative.
    int cutsAcross = 0;
    /// Copies of a panel that lie beside no other copy of it; negative.
    int alone = 0;
    auto operator<=>(const Merits &) const = default;
};

/// Of a complete set of placements that holds; for rectilinear instances.
Merits meritsOf(const Instance &instance, const std::vector<Placement> &placements);

/// The same layout with panels moved where that makes its merits greater and the length no greater: pushed together
/// towards either side, moved one at a time, swapped with others of their size. Ends after a fixed amount of work, some
/// hundredths of a second; pure. Where it does not understand the instance, or finds nothing, the layout as it was.
std::vector<Placement> tidied(const Instance &instance, const std::vector<Placement> &placements);

} // namespace boltwright::planner
