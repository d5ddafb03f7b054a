#pragma once

#include "core/planner/solve.h"

namespace boltwright::planner {

/// Lays a rectilinear instance (Instance::rectilinear) as well as the limits allow. `bound` is a length known to be out
/// of reach below (open sheet): the search ends when it is met. Proves nothing itself.
Outcome searchRectangles(const Instance &instance, const Limits &limits, Length bound);

} // namespace boltwright::planner
