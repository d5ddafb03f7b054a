#pragma once

#include "core/planner/instance.h"
#include "core/planner/solve.h"

#include <functional>

namespace boltwright::planner {

/// The search for items and rooms of any shape. Right on every instance, made for those that are not rectilinear.
/// `Outcome::bound` and `proved` are left to whoever knows bounds, except that an item which fits nowhere even alone
/// proves that no layout exists. Pure in the sense of `solve`.
/// `bound`: a length that cannot be beaten, where the caller has one; the search ends when it gets there.
/// `clock`: seconds since the search began; none: by the clock on the wall.
Outcome searchPolygons(const Instance &instance, const Limits &limits, Length bound = {},
                       const std::function<double()> &clock = nullptr);

} // namespace boltwright::planner
