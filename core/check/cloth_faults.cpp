#include "core/base/language.h"
#include "core/check/faults.h"
#include "core/check/saying.h"

#include <algorithm>

namespace boltwright::judge {

namespace {

using Kind = Finding::Kind;

/// What is wrong with the sheet a cut says it lies on; empty when nothing is.
std::string sheetFault(const Cloth &cloth, const Cut &cut) {
    if (cloth.bolt) return cut.on ? phrase("lies on remnant %1, and %2 is a bolt", {*cut.on, nameOf(cloth)}) : "";
    if (!cut.on) return phrase("lies on no remnant, and %1 is all remnants", {nameOf(cloth)});
    const bool known = std::any_of(cloth.remnants.begin(), cloth.remnants.end(),
                                   [&](const Remnant &remnant) { return remnant.id == *cut.on; });
    return known ? "" : phrase("lies on remnant %1, which %2 has not", {*cut.on, nameOf(cloth)});
}

} // namespace

Findings clothsWrong(const Scene &scene) {
    Findings findings;
    for (const Cut &cut : scene.layout.cuts) {
        const Panel *panel = scene.panel(cut.panel);
        if (!panel) continue;
        const auto say = [&](const std::string &does) { findings.push_back(about(Kind::Cloth, scene, cut, does)); };
        const Cloth *home = scene.homeOf(*panel), *cloth = scene.clothOf(cut);
        if (!home || !cloth) {
            say(phrase("is cut from a cloth that the job has not"));
            continue;
        }
        if (const std::string fault = sheetFault(*cloth, cut); !fault.empty()) say(fault);
        if (cloth == home) continue;
        if (panel->may.otherCloth.any || panel->may.otherCloth.id != cloth->id)
            say(phrase("is cut from %1, and it may not be", {nameOf(*cloth)}));
        else if (!scene.concedes(Concession::Kind::OtherCloth, cut.panel, cut.copy))
            say(phrase("is cut from %1, which is not listed among what we give up", {nameOf(*cloth)}));
    }
    return findings;
}

} // namespace boltwright::judge
