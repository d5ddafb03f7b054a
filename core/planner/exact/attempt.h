#pragma once

#include "core/planner/exact/box_problem.h"

#include <functional>
#include <memory>

namespace boltwright::planner {

/// One way of deciding a BoxProblem (one that is not `impossible`), run in slices so that several can take turns.
class Attempt {
public:
    enum class State { Open, Fits, Cannot, GaveUp };

    virtual ~Attempt() = default;
    /// Searches on for about `steps` (at least one), or until `stop` says so. Deterministic but for `stop`.
    virtual State run(std::int64_t steps, const std::function<bool()> &stop) = 0;
    /// After Fits: a layout of the problem, by item.
    virtual std::vector<Placement> placements() const = 0;
    virtual std::int64_t steps() const = 0; ///< taken so far
};

/// Hands the problem to a SAT solver by the order encoding. Source: Soh, Inoue, Tamura, Banbara & Nabeshima 2010, "A
/// SAT-based method for solving the two-dimensional strip packing problem". A step is a conflict.
std::unique_ptr<Attempt> clauseAttempt(const BoxProblem &problem);

/// Whether an axis can hold the items when only that axis is looked at: each is cut into slices across it which stay
/// side by side, and slices may lie anywhere along the other axis. Only ever refuses or gives up. Null where it does
/// not apply: several sheets, or items with a choice. Source: the contiguous one-dimensional relaxation, Martello,
/// Monaci & Vigo 2003, "An exact approach to the strip packing problem" (from memory).
std::unique_ptr<Attempt> sliceAttempt(const BoxProblem &problem, bool alongX);

/// Looks for a layout that leaves no square empty, from the bottom up or (not `upright`) from the left. Null where the
/// items do not fill the room exactly, or something is in the way.
std::unique_ptr<Attempt> tilingAttempt(const BoxProblem &problem, bool upright);

/// Whether `tilingAttempt` applies.
bool mayTile(const BoxProblem &problem);

} // namespace boltwright::planner
