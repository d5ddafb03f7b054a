#include "core/check/faults.h"
#include "core/check/saying.h"

#include <fmt/format.h>

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
        return say(fmt::format("The length used of {} is not told; the cuts reach {}.", name, reach));
    if (std::abs(ticksOf(*use->length) - *used) > placeTolerance)
        say(fmt::format("The length used of {} is told as {}, and the cuts reach {}.", name,
                        amount(scene, *use->length), reach));
    if (use->bound && ticksOf(*use->bound) > *used + placeTolerance)
        say(fmt::format("The least that {} can take is told as {}, and the cuts reach only {}.", name,
                        amount(scene, *use->bound), reach));
    if (use->proved && (!use->bound || ticksOf(*use->bound) < *used - placeTolerance))
        say(fmt::format("The length used of {} is told as proved, and the least it can take is less.", name));
}

} // namespace

Findings figuresWrong(const Scene &scene) {
    Findings findings;
    for (const ClothUse &use : scene.layout.cloths)
        if (!scene.cloth(use.id))
            findings.push_back(
                {Kind::Figures, "", 0, 0,
                 fmt::format("The layout gives figures for '{}', a cloth that the job has not.", use.id)});
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
