#pragma once

#include "core/paper/cloth_sheet.h"

#include <vector>

namespace boltwright {

/// The order in which a sheet is cut so that it works at the table:
///
///   1. What is already off the cloth is done, and leaves open room behind.
///   2. On a bolt, first every straight cut across the full width: the one that squares the end, then each level that
///      no panel crosses, from the cut end up. They part the cloth into sections; a section lies on the table alone.
///   3. Within a section a panel's turn comes when one of its four sides lies open: straight from that side to the
///      section's edge no panel stands that is still to be cut. So the scissors reach it without going round another.
///      Rectangles always leave at least one such panel. Shapes that hook into each other may not; then the one that
///      reaches furthest towards the left selvage comes next, whose outermost point lies open.
///   4. Copies of one panel that lie in one section are cut one after the other wherever rule 3 lets them.
///   5. Otherwise from the cut end up, and from the left selvage.
///
/// Remnants are one section each and have no straight cuts.
struct CuttingOrder {
    std::vector<Length> across; ///< y of the straight cuts, upwards
    std::vector<int> done;      ///< already cut: indices into the sheet's cuts
    std::vector<int> cuts;      ///< still to cut, in order: indices into the sheet's cuts
};
CuttingOrder cuttingOrder(const Job &job, const Layout &layout, const ClothSheet &sheet);

} // namespace boltwright
