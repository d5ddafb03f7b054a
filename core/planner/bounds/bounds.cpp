#include "core/planner/bounds/bounds.h"

#include "core/base/ensure.h"
#include "core/planner/bounds/reach.h"
#include "core/planner/solve.h"

#include <algorithm>

namespace boltwright::planner {

const std::vector<Bound> &allBounds() {
    static const std::vector<Bound> bounds = {
        {"each item", leastOfEachItem, someItemHasNoPlace},
        {"area", leastByArea, areaExceeded},
        {"exclusion", leastByExclusion, exclusionExceeded},
        {"dual feasible", leastByDualFeasible, dualFeasibleExceeded},
        {"bars", leastByBars, barsExceeded},
    };
    return bounds;
}

Length leastOf(const std::vector<Bound> &bounds, const Instance &instance) {
    const Sheet *sheet = openSheet(instance);
    ensure(sheet != nullptr, "a least length needs an open sheet");
    Length best = boxOf(sheet->room).low.y;
    for (const Bound &bound : bounds)
        if (bound.least) best = std::max(best, bound.least(instance));
    return nextEnd(instance, best);
}

bool refutedBy(const std::vector<Bound> &bounds, const Instance &instance) {
    return std::any_of(bounds.begin(), bounds.end(),
                       [&](const Bound &bound) { return bound.refutes && bound.refutes(instance); });
}

Length lowerBound(const Instance &instance) { return leastOf(allBounds(), instance); }

bool cannotFit(const Instance &instance) { return refutedBy(allBounds(), instance); }

} // namespace boltwright::planner
