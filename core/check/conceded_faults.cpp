#include "core/base/language.h"
#include "core/check/faults.h"
#include "core/check/saying.h"

#include <algorithm>
#include <set>
#include <tuple>

namespace boltwright::judge {

namespace {

using Kind = Finding::Kind;
using Given = Concession::Kind;

std::string spoken(Given kind) {
    switch (kind) {
    case Given::Trim:
        return phrase("a trimmed allowance");
    case Given::Stretcher:
        return phrase("a strip of other cloth");
    case Given::Seam:
        return phrase("a join");
    case Given::Turn:
        return phrase("a turn");
    case Given::Uncentre:
        return phrase("lying off centre");
    case Given::OtherCloth:
        return phrase("another cloth");
    }
    return {};
}

bool near(std::optional<Length> told, Length is) {
    return told && abs(*told - is) <= Length::ticks(int(placeTolerance));
}

bool isShort(const Copy &copy, std::size_t edge) {
    return allowanceLeft(*copy.panel, *copy.cuts.front(), edge) <
           preferredAllowance(*copy.panel, edge) - Length::ticks(int(placeTolerance));
}

/// The edge is short by just what the entry says, and the entry's kind gives leave for that much.
bool tells(const Concession &entry, const Copy &copy, std::size_t edge) {
    const Panel &panel = *copy.panel;
    const Length left = allowanceLeft(panel, *copy.cuts.front(), edge);
    if (!isShort(copy, edge) || !near(entry.from, preferredAllowance(panel, edge)) || !near(entry.to, left))
        return false;
    Length least = leastAllowanceOf(panel, edge);
    if (entry.kind == Given::Stretcher) {
        const auto strip = panel.may.stretcher.find(int(edge));
        if (strip == panel.may.stretcher.end()) return false;
        least = strip->second;
    }
    return left >= least - Length::ticks(int(placeTolerance));
}

std::size_t edgesOf(const Copy &copy) { return measuredCorners(copy.panel->shape).size(); }

/// Every edge has the same allowance and is left the same, so that one entry speaks for all.
bool allEdgesAlike(const Copy &copy) {
    const Panel &panel = *copy.panel;
    const Cut &cut = *copy.cuts.front();
    for (std::size_t edge = 1; edge < edgesOf(copy); ++edge)
        if (preferredAllowance(panel, edge) != preferredAllowance(panel, 0) ||
            allowanceLeft(panel, cut, edge) != allowanceLeft(panel, cut, 0))
            return false;
    return true;
}

/// Whether a trim or stretcher says something true of the copy.
bool shortened(const Concession &entry, const Copy &copy) {
    if (entry.edge)
        return *entry.edge >= 0 && std::size_t(*entry.edge) < edgesOf(copy) &&
               tells(entry, copy, std::size_t(*entry.edge));
    if (entry.kind != Given::Trim || !allEdgesAlike(copy)) return false;
    for (std::size_t edge = 0; edge < edgesOf(copy); ++edge)
        if (!tells(entry, copy, edge)) return false;
    return true;
}

bool asksForPattern(const Scene &scene, const Panel &panel) {
    return panel.motif || panel.alike ||
           std::any_of(scene.job.flows.begin(), scene.job.flows.end(),
                       [&](const Flow &flow) { return flow.from.panel == panel.id || flow.to.panel == panel.id; });
}

bool anyCut(const Copy &copy, const auto &holds) {
    return std::any_of(copy.cuts.begin(), copy.cuts.end(), [&](const Cut *cut) { return holds(*cut); });
}

/// Whether the layout does what the entry says it gives up.
bool wasMade(const Scene &scene, const Concession &entry, const Copy &copy) {
    const Panel &panel = *copy.panel;
    switch (entry.kind) {
    case Given::Trim:
    case Given::Stretcher:
        return shortened(entry, copy);
    case Given::Seam:
        return anyCut(copy, [](const Cut &cut) { return cut.of > 1; });
    case Given::Turn:
        return anyCut(copy, [&](const Cut &cut) {
            const Cloth *cloth = scene.clothOf(cut);
            return cloth && !runAllows(panel, *cloth, cut.turn);
        });
    case Given::Uncentre:
        return panel.may.uncentre && asksForPattern(scene, panel);
    case Given::OtherCloth:
        return anyCut(copy, [&](const Cut &cut) { return scene.clothOf(cut) != scene.homeOf(panel); });
    }
    return false;
}

Findings listedWithoutCause(const Scene &scene) {
    Findings findings;
    std::set<std::tuple<Given, std::string, int, std::optional<int>>> seen;
    for (const Concession &entry : scene.layout.conceded) {
        const Panel *panel = scene.panel(entry.panel);
        const auto say = [&](const std::string &text) {
            findings.push_back({Kind::Conceded, entry.panel, entry.copy, 0, text});
        };
        const std::string name = panel ? nameOf(*panel, entry.copy) : phrase("'%1'", {entry.panel});
        if (!seen.insert({entry.kind, entry.panel, entry.copy, entry.edge}).second)
            say(phrase("What we give up lists %1 twice for %2.", {spoken(entry.kind), name}));
        const auto copy = scene.copies.find({entry.panel, entry.copy});
        if (copy == scene.copies.end() || !wasMade(scene, entry, copy->second))
            say(phrase("What we give up lists %1 for %2 that is not so in the layout, or has no leave.",
                       {spoken(entry.kind), name}));
    }
    return findings;
}

/// How many entries speak for a short edge of the copy.
int entriesFor(const Scene &scene, const Copy &copy, std::size_t edge) {
    return int(std::count_if(scene.layout.conceded.begin(), scene.layout.conceded.end(), [&](const Concession &entry) {
        const bool shortens = entry.kind == Given::Trim || entry.kind == Given::Stretcher;
        return shortens && entry.panel == copy.panel->id && entry.copy == copy.number &&
               (!entry.edge || *entry.edge == int(edge)) && shortened(entry, copy);
    }));
}

void notListed(const Scene &scene, const Copy &copy, Findings &findings) {
    const auto say = [&](const std::string &does) {
        findings.push_back(about(Kind::Conceded, *copy.panel, copy.number, does));
    };
    for (std::size_t edge = 0; edge < edgesOf(copy); ++edge) {
        if (!isShort(copy, edge)) continue;
        const int entries = entriesFor(scene, copy, edge);
        if (entries == 0)
            say(phrase("is short on %1, which what we give up does not say rightly", {edgeOf(*copy.panel, edge)}));
        if (entries > 1)
            say(phrase("is short on %1, which what we give up says more than once", {edgeOf(*copy.panel, edge)}));
    }
    if (copy.pieced() && !scene.concedes(Given::Seam, copy.panel->id, copy.number))
        say(phrase("is joined from pieces, which is not listed among what we give up"));
}

} // namespace

Findings listedWrong(const Scene &scene) {
    Findings findings = listedWithoutCause(scene);
    for (const auto &[key, copy] : scene.copies) notListed(scene, copy, findings);
    return findings;
}

} // namespace boltwright::judge
