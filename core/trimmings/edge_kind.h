#pragma once

#include "core/trimmings/trade_rules.h"

#include <array>
#include <optional>
#include <string_view>

namespace boltwright {

/// What becomes of a panel's edge; it decides what is added there.
enum class EdgeKind {
    Plain,    ///< nothing is added: measured to where it is cut
    Pull,     ///< drawn over the frame and tacked
    SeatTack, ///< drawn round a small seat and tacked underneath
    Seam,     ///< sewn to the next part
    Welt,     ///< sewn with a welt in the seam; counts towards the welt's length
    TuckIn,   ///< pushed down between two parts
};

inline constexpr std::array<EdgeKind, 6> edgeKinds = {EdgeKind::Plain, EdgeKind::Pull, EdgeKind::SeatTack,
                                                      EdgeKind::Seam,  EdgeKind::Welt, EdgeKind::TuckIn};

/// "pull and tack", "seam", ...: as screen and stored forms say it.
std::string_view nameOf(EdgeKind kind);
std::optional<EdgeKind> edgeKindNamed(std::string_view name);

/// What is added beyond the measured edge.
Length allowanceFor(EdgeKind kind, const TradeRules &rules);

/// What that may shrink to when cloth is short, in whole steps for the chalk. A seam keeps all of its allowance.
Length leastAllowanceFor(EdgeKind kind, const TradeRules &rules);

/// Whether the edge lies out of sight once the piece is covered, so that a strip of other cloth may be sewn on there.
bool mayTakeStretcher(EdgeKind kind);

} // namespace boltwright
