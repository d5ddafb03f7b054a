#pragma once

#include "core/planner/polygon/no_fit_table.h"

#include <cstdint>
#include <functional>
#include <vector>

namespace boltwright::planner {

/// Whether a layout without any waste could have exactly this length: one open sheet of plain cloth with nothing on it,
/// no gap, items free to lie anywhere, their area that of the cloth up to there.
bool couldFillExactly(const Instance &instance, Length length);

/// What came of the search for such a layout.
struct ExactFit {
    std::vector<Placement> placements; ///< empty: none was found, which proves nothing
    std::int64_t tried = 0;            ///< places that were tried
    std::size_t most = 0;              ///< items that lay at the same time, at the best
};

/// Lays items corner by corner without waste: whatever covers the lowest free point (the leftmost of these) has its own
/// lowest corner there, and one of its edges runs along the edge to the right of the point. So few items come into
/// question that jigsaws of a dozen pieces are searched at once. Corners and edges may be off by rounding to ticks.
/// Gives up after `most` places or when told to stop.
ExactFit fitExactly(const Instance &instance, const NoFitTable &noFits, Length length, std::int64_t most,
                    const std::function<bool()> &stop);

} // namespace boltwright::planner
