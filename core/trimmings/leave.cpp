#include "core/trimmings/leave.h"

#include <algorithm>

namespace boltwright {
namespace {

using Kind = Concession::Kind;

/// A seam that is narrower than the machine's guide pulls out, so that an edge is trimmed only where it has more.
std::optional<Length> leastOf(Length allowance, const TradeRules &rules) {
    const Length seam = std::max(rules.seam, rules.weltSeam);
    const Length least = std::max(seam, roundedUp(timesUp(allowance, rules.leastShare), rules.cuttingStep));
    return least < allowance ? std::optional(least) : std::nullopt;
}

bool followsPattern(const Job &job, const Panel &panel) {
    return panel.motif || panel.alike || std::any_of(job.flows.begin(), job.flows.end(), [&](const Flow &f) {
               return f.from.panel == panel.id || f.to.panel == panel.id;
           });
}

} // namespace

bool hasLeave(const Panel &panel, Kind kind) {
    switch (kind) {
    case Kind::Trim:
        for (int edge = 0; edge < int(edgeCount(panel.shape)); ++edge)
            if (panel.leastAllowance(edge) < panel.allowance(edge)) return true;
        return false;
    case Kind::Stretcher:
        return !panel.may.stretcher.empty();
    case Kind::Seam:
        return panel.pieces.most > 1;
    case Kind::Turn:
        return panel.may.turn;
    case Kind::Uncentre:
        return panel.may.uncentre;
    case Kind::OtherCloth:
        return panel.may.otherCloth != OtherCloth{};
    }
    return false;
}

bool mayBeGivenLeave(const Job &job, const Panel &panel, Kind kind, const TradeRules &rules) {
    return hasLeave(panel, kind) || hasLeave(withLeave(job, panel, kind, rules), kind);
}

Panel withLeave(const Job &job, Panel panel, Kind kind, const TradeRules &rules) {
    if (hasLeave(panel, kind)) return panel;
    const int edges = int(edgeCount(panel.shape));
    switch (kind) {
    case Kind::Trim:
        panel.allowMin.assign(std::size_t(edges), std::nullopt);
        for (int edge = 0; edge < edges; ++edge)
            panel.allowMin[std::size_t(edge)] = leastOf(panel.allowance(edge), rules);
        break;
    case Kind::Stretcher:
        for (int edge = 0; edge < edges; ++edge)
            if (panel.allowance(edge) >= rules.tuckIn && rules.tuckIn > rules.seam)
                panel.may.stretcher[edge] = rules.seam;
        break;
    case Kind::Seam:
        if (!std::holds_alternative<Rectangle>(panel.shape)) break;
        panel.pieces.most = panel.hidden ? 2 : 3;
        panel.pieces.where = panel.hidden ? Pieces::Where::Any : Pieces::Where::Balanced;
        panel.pieces.match = !panel.hidden && job.clothOf(panel).pattern.has_value();
        if (panel.pieces.seam == Length{}) panel.pieces.seam = rules.seam;
        if (panel.pieces.shortest == Length{}) panel.pieces.shortest = rules.nosing;
        break;
    case Kind::Turn:
        panel.may.turn = true;
        break;
    case Kind::Uncentre:
        panel.may.uncentre = followsPattern(job, panel);
        break;
    case Kind::OtherCloth: {
        const Cloth &own = job.clothOf(panel);
        const auto other =
            std::find_if(job.cloths.begin(), job.cloths.end(), [&](const Cloth &c) { return &c != &own; });
        if (other != job.cloths.end())
            panel.may.otherCloth.id = other->id;
        else
            panel.may.otherCloth.any = true;
        break;
    }
    }
    return panel;
}

Panel withoutLeave(Panel panel, Kind kind) {
    switch (kind) {
    case Kind::Trim:
        panel.allowMin.assign(edgeCount(panel.shape), std::nullopt);
        break;
    case Kind::Stretcher:
        panel.may.stretcher.clear();
        break;
    case Kind::Seam:
        panel.pieces.most = 1;
        break;
    case Kind::Turn:
        panel.may.turn = false;
        break;
    case Kind::Uncentre:
        panel.may.uncentre = false;
        break;
    case Kind::OtherCloth:
        panel.may.otherCloth = {};
        break;
    }
    return panel;
}

} // namespace boltwright
