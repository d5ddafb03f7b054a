#include "core/base/language.h"
#include "core/check/faults.h"
#include "core/check/saying.h"

namespace boltwright::judge {

using Kind = Finding::Kind;

Findings turnsWrong(const Scene &scene) {
    Findings findings;
    for (const Cut &cut : scene.layout.cuts) {
        const Panel *panel = scene.panel(cut.panel);
        const Cloth *cloth = scene.clothOf(cut);
        if (!panel || !cloth || runAllows(*panel, *cloth, cut.turn)) continue;
        const bool leave = panel->may.turn && eitherAllows(*cloth, cut.turn);
        if (leave && scene.concedes(Concession::Kind::Turn, cut.panel, cut.copy)) continue;
        findings.push_back(
            about(Kind::Turn, scene, cut,
                  phrase("is %1 on %2, which %3", {turnedHow(cut.turn), nameOf(*cloth),
                                                   leave ? phrase("is not listed among what we give up")
                                                         : phrase("its nap or direction does not allow")})));
    }
    return findings;
}

Findings mirrorsWrong(const Scene &scene) {
    Findings findings;
    for (const Cut &cut : scene.layout.cuts) {
        const Panel *panel = scene.panel(cut.panel);
        if (!panel || cut.mirrored == (panel->mirror && cut.copy % 2 == 0)) continue;
        findings.push_back(about(Kind::Mirror, scene, cut,
                                 cut.mirrored ? phrase("lies mirrored, and it must not")
                                              : phrase("must lie mirrored, and it does not")));
    }
    return findings;
}

} // namespace boltwright::judge
