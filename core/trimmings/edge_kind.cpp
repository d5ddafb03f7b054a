#include "core/trimmings/edge_kind.h"

#include "core/base/ensure.h"

namespace boltwright {

std::string_view nameOf(EdgeKind kind) {
    switch (kind) {
    case EdgeKind::Plain:
        return "as measured";
    case EdgeKind::Pull:
        return "pull and tack";
    case EdgeKind::SeatTack:
        return "tack under";
    case EdgeKind::Seam:
        return "seam";
    case EdgeKind::Welt:
        return "welt";
    case EdgeKind::TuckIn:
        return "tuck in";
    }
    ensure(false, "a kind of edge that is not in the list");
    return {};
}

std::optional<EdgeKind> edgeKindNamed(std::string_view name) {
    for (EdgeKind kind : edgeKinds)
        if (nameOf(kind) == name) return kind;
    return std::nullopt;
}

Length allowanceFor(EdgeKind kind, const TradeRules &rules) {
    switch (kind) {
    case EdgeKind::Plain:
        return {};
    case EdgeKind::Pull:
        return rules.pull;
    case EdgeKind::SeatTack:
        return rules.seatTack;
    case EdgeKind::Seam:
        return rules.seam;
    case EdgeKind::Welt:
        return rules.weltSeam;
    case EdgeKind::TuckIn:
        return rules.tuckIn;
    }
    ensure(false, "a kind of edge that is not in the list");
    return {};
}

Length leastAllowanceFor(EdgeKind kind, const TradeRules &rules) {
    const Length full = allowanceFor(kind, rules);
    // A seam that is narrower than the machine's guide pulls out.
    if (kind == EdgeKind::Plain || kind == EdgeKind::Seam || kind == EdgeKind::Welt) return full;
    const Length least = roundedUp(timesUp(full, rules.leastShare), rules.cuttingStep);
    return least < full ? least : full;
}

bool mayTakeStretcher(EdgeKind kind) { return kind == EdgeKind::TuckIn; }

} // namespace boltwright
