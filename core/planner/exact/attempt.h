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

} // namespace boltwright::planner
