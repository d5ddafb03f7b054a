#pragma once

#include "core/job/job.h"
#include "core/trimmings/trade_rules.h"

/// Leave to give something up when the cloth is short, as it is given with one tick: how far it goes is what the shop's
/// rules say. Finer leave is given edge by edge.
namespace boltwright {

bool hasLeave(const Panel &panel, Concession::Kind kind);

/// Whether one tick says enough: there is an edge that is more than sewn, a part that may be pieced, a motif to leave.
bool mayBeGivenLeave(const Job &job, const Panel &panel, Concession::Kind kind, const TradeRules &rules);

/// What has leave already stays as it is. Given: trims of every edge that is more than sewn, down to the rules' share
/// in whole steps for the chalk; a strip at edges that are tucked in; another cloth of the job, or where it has none
/// one that is not of this job; for a part that is seen two more joins, the same on both sides of the middle (TRADE
/// T6.19), for one out of sight a single join. The panel as it is where `mayBeGivenLeave` says no.
Panel withLeave(const Job &job, Panel panel, Concession::Kind kind, const TradeRules &rules);

/// All leave of that kind taken back: allowances stay full, the part is cut whole, and so on.
Panel withoutLeave(Panel panel, Concession::Kind kind);

} // namespace boltwright
