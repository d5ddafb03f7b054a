#include "core/base/language.h"
#include "core/check/faults.h"
#include "core/check/saying.h"

namespace boltwright::judge {

namespace {

using Kind = Finding::Kind;

Spot pointOf(const FlowEnd &end, const Outline &measured) {
    return end.at ? spotOf(*end.at) : middleOf(measured, std::size_t(*end.edge));
}

/// An edge or a point is named, and the edge exists.
bool canBeTold(const FlowEnd &end, const Outline &measured) {
    return end.edge ? *end.edge >= 0 && std::size_t(*end.edge) < measured.size() : end.at.has_value();
}

/// The cuts that hold this end of the join: of every copy that it names, the piece on which the point lies.
std::vector<const LaidCut *> cutsAt(const Scene &scene, const FlowEnd &end) {
    std::vector<const LaidCut *> cuts;
    for (const LaidCut &laid : scene.laid)
        if (laid.cut->panel == end.panel && (!end.copy || laid.cut->copy == *end.copy) &&
            canBeTold(end, laid.measured) && laid.holds(pointOf(end, laid.measured)))
            cuts.push_back(&laid);
    return cuts;
}

/// Where the pattern of the first side meets the join, after what the join swallows, as it lies.
Spot joinOf(const Flow &flow, const LaidCut &laid) {
    const Spot at = laid.at(pointOf(flow.from, laid.measured));
    if (flow.lost == Length{} || !flow.from.edge) return at;
    return at + double(flow.lost.ticks()) * laid.turned(outwards(laid.measured, std::size_t(*flow.from.edge)));
}

std::optional<Finding> broken(const Scene &scene, const Flow &flow, const LaidCut &from, const LaidCut &to) {
    const auto say = [&](const std::string &why) {
        return about(Kind::Flow, scene, *from.cut,
                     phrase("does not run on into %1: %2", {nameOf(scene, *to.cut), why}));
    };
    if (from.cloth != to.cloth) return say(phrase("they are cut from different cloths"));
    if (from.cut->turn != to.cut->turn) return say(phrase("they are turned differently"));
    if (!from.grid) return std::nullopt;
    const Spot here = from.grid->phase(joinOf(flow, from));
    const Spot there = to.grid->phase(to.at(pointOf(flow.to, to.measured)));
    const double off = from.grid->offStep(here - there);
    if (off <= placeTolerance) return std::nullopt;
    return say(phrase("the pattern is off by %1", {amount(scene, off)}));
}

/// Copy k joins copy k where both panels have several and no copy is named.
bool bothHaveSeveral(const Scene &scene, const Flow &flow) {
    const Panel *from = scene.panel(flow.from.panel), *to = scene.panel(flow.to.panel);
    return from && to && from->count > 1 && to->count > 1;
}

} // namespace

Findings matchesBroken(const Scene &scene) {
    Findings findings;
    for (const Flow &flow : scene.job.flows) {
        const bool pairwise = !flow.from.copy && bothHaveSeveral(scene, flow);
        const auto ends = cutsAt(scene, flow.to);
        for (const LaidCut *from : cutsAt(scene, flow.from))
            for (const LaidCut *to : ends) {
                if (pairwise && from->cut->copy != to->cut->copy) continue;
                if (scene.offCentre(*from) || scene.offCentre(*to)) continue;
                if (const auto found = broken(scene, flow, *from, *to)) findings.push_back(*found);
            }
    }
    return findings;
}

} // namespace boltwright::judge
