#include "core/base/language.h"
#include "core/check/faults.h"
#include "core/check/saying.h"

#include <algorithm>

namespace boltwright::judge {

namespace {

using Kind = Finding::Kind;

/// Axes of the cloth on which something is asked.
struct Axes {
    bool across, along;
};

/// The panel's wish, which is in its own frame, on the cloth.
Axes axesAsked(Centre centre, Turn turn) {
    const bool side = centre != Centre::Up, up = centre != Centre::Across;
    return swapsAxes(turn) ? Axes{up, side} : Axes{side, up};
}

double offBy(const MotifGrid &grid, Spot at, Axes axes) {
    if (axes.across && axes.along) return grid.offMotif(at);
    return axes.across ? grid.offAcross(at.x) : axes.along ? grid.offAlong(at.y) : 0;
}

std::optional<Finding> motifMissed(const Scene &scene, const LaidCut &laid) {
    const auto say = [&](const std::string &does) { return about(Kind::Motif, scene, *laid.cut, does); };
    const bool away = laid.cloth != scene.homeOf(*laid.panel);
    if (!laid.grid) {
        if (away) return std::nullopt; // plain cloth in its place: there is nothing to centre on
        return say(phrase("is to be centred on a motif, and %1 has no repeat", {nameOf(*laid.cloth)}));
    }
    const MotifGrid &grid = *laid.grid;
    const Centre centre = laid.panel->motif->centre;
    Axes axes = axesAsked(centre, laid.cut->turn);
    const Axes there{axes.across && grid.repeatsAcross(), axes.along && grid.repeatsAlong()};
    if (isBias(laid.cut->turn)) {
        if (centre != Centre::Both) return say(phrase("lies on the bias, where only both ways at once can be centred"));
        axes = there;
    } else if (away) {
        axes = there;
    } else if (axes.across != there.across || axes.along != there.along) {
        return say(phrase("is %1, and asks for a repeat that %2 does not have that way",
                          {turnedHow(laid.cut->turn), nameOf(*laid.cloth)}));
    }
    const double off = offBy(grid, laid.at(motifPointOf(*laid.panel, laid.measured)), axes);
    if (off <= placeTolerance) return std::nullopt;
    return say(phrase("is %1 off its motif", {amount(scene, off)}));
}

/// Of the copies on one cloth the first, whose turn and part of the repeat the others share.
const LaidCut *showingPiece(const Scene &scene, const Copy &copy) {
    for (const LaidCut &laid : scene.laid)
        if (laid.cut->panel == copy.panel->id && laid.cut->copy == copy.number &&
            laid.holds(motifPointOf(*laid.panel, laid.measured)))
            return &laid;
    return nullptr;
}

std::optional<Finding> unlike(const Scene &scene, const LaidCut &first, const LaidCut &other) {
    const auto say = [&](const std::string &does) { return about(Kind::Alike, scene, *other.cut, does); };
    const std::string model = nameOf(scene, *first.cut);
    if (other.cut->turn != first.cut->turn) return say(phrase("is not turned as %1 is", {model}));
    if (!other.grid) return std::nullopt;
    const Spot here = other.grid->phase(other.at(motifPointOf(*other.panel, other.measured)));
    const Spot there = first.grid->phase(first.at(motifPointOf(*first.panel, first.measured)));
    const double off = other.grid->offStep(here - there);
    if (off <= placeTolerance) return std::nullopt;
    return say(phrase("does not show the same part of the repeat as %1, by %2", {model, amount(scene, off)}));
}

} // namespace

Findings motifsMissed(const Scene &scene) {
    Findings findings;
    for (const LaidCut &laid : scene.laid) {
        if (!laid.panel->motif || scene.offCentre(laid)) continue;
        if (!laid.holds(motifPointOf(*laid.panel, laid.measured))) continue;
        if (const auto found = motifMissed(scene, laid)) findings.push_back(*found);
    }
    return findings;
}

Findings copiesUnlike(const Scene &scene) {
    Findings findings;
    std::map<std::pair<const Panel *, const Cloth *>, const LaidCut *> models;
    for (const auto &[key, copy] : scene.copies) {
        if (!copy.panel->alike) continue;
        const LaidCut *laid = showingPiece(scene, copy);
        if (!laid || scene.offCentre(*laid)) continue;
        const LaidCut *model = models.emplace(std::pair{laid->panel, laid->cloth}, laid).first->second;
        if (const auto found = unlike(scene, *model, *laid)) findings.push_back(*found);
    }
    return findings;
}

} // namespace boltwright::judge
