#pragma once

#include "core/planner/rectangle_task.h"

#include <cstddef>
#include <vector>

namespace boltwright::planner {

/// One tread of a skyline: what is laid below it, from x to end, reaches up to y.
struct Step {
    Tick x, end, y;
};
/// From left to right, without gaps; neighbours differ in height.
using Steps = std::vector<Step>;

/// The lowest step, the leftmost of several.
inline std::size_t lowestOf(const Steps &steps) {
    std::size_t low = 0;
    for (std::size_t i = 1; i < steps.size(); ++i)
        if (steps[i].y < steps[low].y) low = i;
    return low;
}

/// Makes one step of the one at `at` and of those beside it that are as high.
inline void joinAt(Steps &steps, std::size_t at) {
    if (at + 1 < steps.size() && steps[at + 1].y == steps[at].y) {
        steps[at].end = steps[at + 1].end;
        steps.erase(steps.begin() + std::ptrdiff_t(at) + 1);
    }
    if (at > 0 && steps[at - 1].y == steps[at].y) {
        steps[at - 1].end = steps[at].end;
        steps.erase(steps.begin() + std::ptrdiff_t(at));
    }
}

} // namespace boltwright::planner
