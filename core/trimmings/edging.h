#pragma once

#include "core/trimmings/trade_rules.h"

namespace boltwright {

/// Gimp, cord or double welt to order for edges that measure `edges` together: their length, what `joins` take, and
/// the rules' reserve on all of it, rounded up to a tick (T7.9; double welt takes the place of gimp, same length).
constexpr Length edgingNeeded(Length edges, int joins, Length join, const TradeRules &rules) {
    return timesUp(edges + join * joins, {100 + rules.edgingReservePercent, 100});
}

} // namespace boltwright
