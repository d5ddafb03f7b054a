#pragma once

#include "core/planner/plan.h"

namespace boltwright {

/// Plans what is left once cutting has begun. What is cut or locked stays; so does every other piece of `options.from`
/// that lies on no flaw, since it may be chalked already, as long as that takes no more cloth to buy than laying all of
/// them anew. Half of the time or steps goes to either. Without `options.from` the same as `plan`.
Plan planAgain(const Job &job, const PlanOptions &options);

} // namespace boltwright
