#pragma once

#include "core/job/job.h"

#include <string>

/// Jobs in two lines, for tests. Everything that is not said is left out.
namespace boltwright::test {

inline Cloth bolt(Length width, std::string id = "body") {
    Cloth c;
    c.id = std::move(id);
    c.bolt = Bolt{};
    c.bolt->width = width;
    return c;
}

inline Cloth remnantCloth(ClothRing outline, std::string id = "body") {
    Cloth c;
    c.id = std::move(id);
    Remnant r;
    r.id = "A";
    r.outline = std::move(outline);
    c.remnants.push_back(std::move(r));
    return c;
}

inline Pattern stripes(Length across, Length first = {}) {
    Pattern p;
    p.across = across;
    p.motif = {first, {}};
    return p;
}

inline Pattern motifs(Length across, Length along, ClothPoint first = {}, Length drop = {}) {
    Pattern p;
    p.across = across;
    p.along = along;
    p.motif = first;
    p.drop = drop;
    return p;
}

inline Panel rectangle(std::string id, Length across, Length up, int count = 1) {
    Panel p;
    p.id = std::move(id);
    p.name = p.id;
    p.count = count;
    p.shape = Rectangle{across, up};
    return p;
}

inline Panel centred(Panel p, Centre centre) {
    p.motif = MotifWish{centre, {}, {}};
    return p;
}

inline Cut cutAt(std::string panel, Length x, Length y, Turn turn = Turn::Deg0, int copy = 1) {
    Cut c;
    c.panel = std::move(panel);
    c.copy = copy;
    c.x = x;
    c.y = y;
    c.turn = turn;
    return c;
}

inline Job jobOf(Cloth cloth, std::vector<Panel> panels, Length gap = {}) {
    Job job;
    job.cloths.push_back(std::move(cloth));
    job.panels = std::move(panels);
    job.gap = gap;
    return job;
}

inline Layout layoutOf(std::vector<Cut> cuts) {
    Layout l;
    l.cuts = std::move(cuts);
    return l;
}

} // namespace boltwright::test
