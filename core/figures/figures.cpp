#include "core/figures/figures.h"

#include "core/rules/cut_shape.h"

#include <algorithm>
#include <set>

namespace boltwright {

std::vector<ClothFigures> figuresOf(const Job &job, const Layout &layout) {
    std::vector<ClothFigures> all;
    std::vector<std::set<std::string>> remnantsUsed(job.cloths.size());
    for (const Cloth &cloth : job.cloths) all.push_back({cloth.id, {}, {}, 0, 0, 0});
    for (const Cut &cut : layout.cuts) {
        const Panel *panel = job.panel(cut.panel);
        if (!panel) continue;
        const std::size_t i = std::size_t(&job.clothOf(cut) - job.cloths.data());
        const LaidCut l = lay(*panel, cut, layout);
        all[i].cutArea += twiceArea(l.ring) / 2;
        all[i].laid += 1;
        if (job.cloths[i].bolt)
            all[i].length = std::max(all[i].length, l.box.high.y);
        else if (cut.on)
            remnantsUsed[i].insert(*cut.on);
    }
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Cloth &cloth = job.cloths[i];
        if (cloth.bolt) all[i].usedArea = all[i].length * (cloth.bolt->width - cloth.selvage * 2);
        for (const std::string &id : remnantsUsed[i])
            if (const Remnant *r = cloth.remnant(id))
                all[i].usedArea += std::max(twiceArea(r->outline), -twiceArea(r->outline)) / 2;
        for (const ClothUse &use : layout.cloths)
            if (use.id == cloth.id) all[i].bound = use.bound;
    }
    return all;
}

std::optional<Length> leftOver(const Cloth &cloth, Length used) {
    if (!cloth.bolt || !cloth.bolt->length) return std::nullopt;
    return *cloth.bolt->length - used;
}

Layout withFigures(const Job &job, Layout layout) {
    for (const ClothFigures &f : figuresOf(job, layout)) {
        const Cloth *cloth = job.cloth(f.cloth);
        auto it = std::find_if(layout.cloths.begin(), layout.cloths.end(),
                               [&](const ClothUse &u) { return u.id == f.cloth; });
        if (f.laid == 0) {
            if (it != layout.cloths.end()) layout.cloths.erase(it);
            continue;
        }
        if (it == layout.cloths.end())
            it = layout.cloths.insert(layout.cloths.end(), ClothUse{f.cloth, {}, {}, false, {}});
        it->length = cloth->bolt ? std::optional{f.length} : std::nullopt;
        if (it->bound && *it->bound > f.length) it->bound.reset(); // the rules it was computed for have changed
        it->proved = it->bound && *it->bound == f.length && it->proved;
    }
    return layout;
}

} // namespace boltwright
