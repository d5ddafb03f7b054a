#pragma once

#include "core/base/result.h"
#include "core/job/job.h"
#include "core/planner/solve.h"

namespace boltwright {

namespace planner {
struct GivenUp;
}

/// Where planning stands, for whoever waits.
struct PlanProgress {
    double share = 0;               ///< of the time or steps, 0 to 1
    std::string cloth;              ///< the cloth being planned
    bool found = false;             ///< all its panels lie somewhere
    Length length, bound;           ///< best so far and the least it can take (bolt)
    const Layout *better = nullptr; ///< a better layout of all cloths found so far, checked; valid during the call
};

struct PlanOptions {
    std::optional<double> seconds = 5;
    std::optional<std::int64_t> steps; ///< in place of seconds: the same layout on every machine
    int threads = 2;
    std::uint64_t seed = 1;
    std::function<bool()> stop;
    std::function<void(const PlanProgress &)> report; ///< from any thread, one call at a time
    /// Cuts that are locked or already off the cloth are taken from this layout and stay; a complete one is also a
    /// start that the result is never worse than.
    const Layout *from = nullptr;
    /// What is given up from the start (see core/planner/build.h); null: nothing. The layout lists what of it was used.
    const planner::GivenUp *given = nullptr;
};

/// What planning came to: an answer with its reason, never a bare no.
struct Plan {
    planner::Outcome::Kind kind = planner::Outcome::Kind::NotFound;
    bool proved = false;
    Layout layout;      ///< right by `check` when it fits; otherwise empty
    std::string reason; ///< when it does not fit: one sentence in the trade's words
    std::int64_t steps = 0;
};

/// Makes the best layout it can of all panels of the job. A pure function of job, options.from, seed and steps when
/// steps are given. Every layout it returns has passed `check`.
Plan plan(const Job &job, const PlanOptions &options);

} // namespace boltwright
