#include "core/base/language.h"
#include "core/check/faults.h"
#include "core/check/saying.h"

#include <algorithm>
#include <cmath>

namespace boltwright::judge {

namespace {

using Kind = Finding::Kind;

/// The least that any leave permits on that edge: trimmed, or with a strip of other cloth sewn on.
Length leastWithLeave(const Panel &panel, std::size_t edge) {
    const auto strip = panel.may.stretcher.find(int(edge));
    const Length trimmed = leastAllowanceOf(panel, edge);
    return strip == panel.may.stretcher.end() ? trimmed : std::min(trimmed, strip->second);
}

void edgeFaults(const Scene &scene, const Cut &cut, const Panel &panel, std::size_t edge, Findings &findings) {
    const Length left = allowanceLeft(panel, cut, edge), wanted = preferredAllowance(panel, edge);
    const Length least = leastWithLeave(panel, edge), tolerance = Length::ticks(int(placeTolerance));
    const auto say = [&](const std::string &rule) {
        findings.push_back(about(Kind::Allowance, scene, cut,
                                 phrase("leaves %1 on %2, and %3", {amount(scene, left), edgeOf(panel, edge), rule})));
    };
    if (left > wanted + tolerance) say(phrase("only %1 belong there", {amount(scene, wanted)}));
    if (left < std::min(least, wanted) - tolerance) say(phrase("at least %1 are needed", {amount(scene, least)}));
}

} // namespace

Findings allowancesWrong(const Scene &scene) {
    Findings findings;
    for (const Cut &cut : scene.layout.cuts) {
        const Panel *panel = scene.panel(cut.panel);
        if (!panel) continue;
        const std::size_t edges = measuredCorners(panel->shape).size();
        if (cut.allow.size() > edges)
            findings.push_back(
                about(Kind::Allowance, scene, cut, phrase("leaves something on an edge that it does not have")));
        for (std::size_t edge = 0; edge < edges; ++edge) edgeFaults(scene, cut, *panel, edge, findings);
        if (crossesItself(wholeCutOutline(*panel, cut)))
            findings.push_back(
                about(Kind::Allowance, scene, cut, phrase("has allowances that make its outline cross itself")));
    }
    return findings;
}

} // namespace boltwright::judge
