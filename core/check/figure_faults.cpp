#include "core/base/language.h"
#include "core/check/faults.h"
#include "core/check/saying.h"

#include <algorithm>
#include <cmath>

namespace boltwright::judge {

namespace {

using Kind = Finding::Kind;

/// The greatest y of any cut on the cloth; none without cuts.
std::optional<double> lengthUsed(const Scene &scene, const Cloth &cloth) {
    std::optional<double> used;
    for (const LaidCut &laid : scene.laid)
        if (laid.cloth == &cloth) used = std::max(used.value_or(laid.bounds.high.y), laid.bounds.high.y);
    return used;
}

void figureFaults(const Scene &scene, const Cloth &cloth, const ClothUse *use, Findings &findings) {
    const auto used = lengthUsed(scene, cloth);
    if (!cloth.bolt || !used) return;
    const auto say = [&](const std::string &text) { findings.push_back({Kind::Figures, "", 0, 0, text}); };
    const std::string name = nameOf(cloth), reach = amount(scene, *used);
    if (!use || !use->length)
        return say(phrase("The length used of %1 is not told; the cuts reach %2.", {name, reach}));
    if (std::abs(ticksOf(*use->length) - *used) > placeTolerance)
        say(phrase("The length used of %1 is told as %2, and the cuts reach %3.",
                   {name, amount(scene, *use->length), reach}));
    if (use->bound && ticksOf(*use->bound) > *used + placeTolerance)
        say(phrase("The least that %1 can take is told as %2, and the cuts reach only %3.",
                   {name, amount(scene, *use->bound), reach}));
    if (use->proved && (!use->bound || ticksOf(*use->bound) < *used - placeTolerance))
        say(phrase("The length used of %1 is told as proved, and the least it can take is less.", {name}));
}

} // namespace

Findings figuresWrong(const Scene &scene) {
    Findings findings;
    for (const ClothUse &use : scene.layout.cloths)
        if (!scene.cloth(use.id))
            findings.push_back({Kind::Figures, "", 0, 0,
                                phrase("The layout gives figures for '%1', a cloth that the job has not.", {use.id})});
    for (const Cloth &cloth : scene.job.cloths) {
        // Told twice, the last counts; told nowhere, that is the fault.
        const ClothUse *told = nullptr;
        for (const ClothUse &use : scene.layout.cloths)
            if (use.id == cloth.id) told = &use;
        figureFaults(scene, cloth, told, findings);
    }
    return findings;
}

} // namespace boltwright::judge
