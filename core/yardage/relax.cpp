#include "core/yardage/relax.h"

#include <algorithm>

namespace boltwright {

Job onlyCloth(Job job, const std::string &cloth) {
    std::erase_if(job.panels,
                  [&, main = job.cloths.front().id](const Panel &p) { return p.cloth.value_or(main) != cloth; });
    std::erase_if(job.flows, [&](const Flow &f) { return !job.panel(f.from.panel) || !job.panel(f.to.panel); });
    std::erase_if(job.cloths, [&](const Cloth &c) { return c.id != cloth; });
    for (Panel &p : job.panels) {
        p.cloth.reset();
        p.may.otherCloth = {};
    }
    job.layouts.clear();
    return job;
}

Job withoutSelvageAndGaps(Job job) {
    job.gap = {};
    for (Cloth &cloth : job.cloths) {
        cloth.selvage = cloth.edge = {};
        if (cloth.bolt) {
            cloth.bolt->square = {};
            cloth.bolt->flaws.clear();
        }
        for (Remnant &r : cloth.remnants) r.flaws.clear();
    }
    return job;
}

Job withoutFlow(Job job) {
    job.flows.clear();
    for (Panel &panel : job.panels) {
        panel.alike = false;
        panel.pieces.match = false;
    }
    return job;
}

Job withoutMotif(Job job) {
    for (Panel &panel : job.panels) panel.motif.reset();
    return job;
}

Job withoutDirection(Job job) {
    for (Cloth &cloth : job.cloths) {
        cloth.way = Way::Two;
        // Which way a panel runs by default hangs on the pattern's top; here no panel keeps a default.
    }
    for (Panel &panel : job.panels)
        if (panel.run != Run::Bias) panel.run = Run::Either; // the bias is the panel's shape, not the cloth's direction
    return job;
}

} // namespace boltwright
