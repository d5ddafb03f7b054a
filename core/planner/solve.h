#pragma once

#include "core/planner/instance.h"

#include <cstdint>
#include <functional>
#include <optional>

namespace boltwright::planner {

/// Where a search stands, for whoever waits.
struct Progress {
    bool found = false; ///< every item lies somewhere
    Length length;      ///< best so far (open sheet)
    Length bound;       ///< least it can take
    int laid = 0;       ///< items laid in the best try so far
    double share = 0;   ///< of the time or steps, 0 to 1
    /// The best layout, complete, when it is a new one; not each of many that come at once. Valid during the call.
    const std::vector<Placement> *best = nullptr;
};

struct Limits {
    std::optional<double> seconds; ///< wall clock; or
    std::optional<std::int64_t>
        steps; ///< a count of search steps: then the result depends on instance, seed and steps alone
    int threads = 1;
    std::uint64_t seed = 1;
    std::function<bool()> stop; ///< asked often, from any thread; true ends the search with what it has
    std::function<void(const Progress &)> report; ///< called now and then and at every better layout, from any thread
    /// A complete right set of placements to start from, where there is one; the result is never worse.
    std::vector<Placement> start;
};

struct Outcome {
    enum class Kind {
        Fits,      ///< `placements` is complete and right
        CannotFit, ///< proved: no set of placements exists
        NotFound,  ///< neither, in the time given
    };
    Kind kind = Kind::NotFound;
    std::vector<Placement> placements; ///< by item; complete when it fits
    Length length;                     ///< greatest y used (open sheet)
    Length bound;                      ///< no layout of this instance uses less (open sheet)
    bool proved = false;               ///< length equals bound, or the search of CannotFit ended
    std::int64_t steps = 0;
};

/// Lays every item, on an open sheet with the least length it can find; of layouts as long, the one that leaves the
/// better offcut (see tidy.h). Pure: the same instance, seed and steps give
/// the same outcome on every machine and with any number of threads.
Outcome solve(const Instance &instance, const Limits &limits);

/// A length that no layout of an open sheet can beat (its own greatest y); cheap. For remnants, see `cannotFit`.
Length lowerBound(const Instance &instance);

/// A cheap proof that the items cannot lie on the remnants; false says nothing.
bool cannotFit(const Instance &instance);

} // namespace boltwright::planner
