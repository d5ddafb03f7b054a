#include "core/planner/instance.h"

#include "core/geometry/shape_ops.h"

#include <algorithm>

namespace boltwright::planner {
namespace {

constexpr Length placeTolerance = Length::ticks(4); // turning by 45 degrees and mitres round to ticks
constexpr Length gapTolerance = Length::ticks(8);   // the same on both sides of a gap

bool hasUprightEdges(const ClothRing &ring) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Vector edge = ring[(i + 1) % ring.size()] - ring[i];
        if (edge.x != Length{} && edge.y != Length{}) return false;
    }
    return true;
}

/// Where an anchor of this phase may lie on a sheet with this lattice.
PlaceSet anchorPlaces(const Lattice &lattice, Vector phase) {
    const ClothPoint origin = lattice.motif() + phase;
    PlaceSet s;
    if (lattice.repeatsAcross()) {
        s.xStep = lattice.across();
        s.x0 = origin.x;
    }
    if (lattice.repeatsAlong()) {
        s.yStep = lattice.along();
        s.y0 = origin.y;
    }
    if (lattice.repeatsAcross() && lattice.repeatsAlong()) {
        s.riseNumerator = lattice.dropNumerator();
        s.riseDenominator = lattice.dropDenominator();
    }
    return s;
}

/// Something on a sheet, in the sheet's own frame.
struct Laid {
    int sheet = 0;
    ClothRing ring;
    bool rectangle = false;
};

Laid laidAt(const Instance &instance, int sheet, int outline, ClothPoint corner) {
    const Outline &o = instance.outlines[std::size_t(outline)];
    return {sheet, moved(o.ring, corner - ClothPoint{}), o.rectangle};
}

const Option &optionOf(const Instance &instance, const Placement &p) {
    return instance.items[std::size_t(p.item)].options[std::size_t(p.option)];
}

bool namesEveryItemOnce(const Instance &instance, const std::vector<Placement> &placements) {
    std::vector<int> times(instance.items.size());
    for (const Placement &p : placements) {
        if (p.item < 0 || p.item >= int(times.size())) return false;
        if (p.option < 0 || p.option >= int(instance.items[std::size_t(p.item)].options.size())) return false;
        ++times[std::size_t(p.item)];
    }
    return std::all_of(times.begin(), times.end(), [](int t) { return t == 1; });
}

bool liesOnItsSheet(const Instance &instance, const Placement &p) {
    const Option &option = optionOf(instance, p);
    const Sheet &sheet = instance.sheets[std::size_t(option.sheet)];
    const Laid laid = laidAt(instance, option.sheet, option.outline, p.corner);
    // Upright edges are exact; slanted ones were rounded to ticks.
    const Length slack = laid.rectangle && hasUprightEdges(sheet.room) ? Length{} : placeTolerance;
    if (!option.places.holds(p.corner, placeTolerance) || !contains(sheet.room, laid.ring, slack)) return false;
    if (instance.items[std::size_t(p.item)].hidden) return true;
    return std::none_of(sheet.flaws.begin(), sheet.flaws.end(), [&](const ClothRing &flaw) {
        return overlaps(flaw, laid.ring, laid.rectangle && hasUprightEdges(flaw) ? Length{} : placeTolerance);
    });
}

bool keepTheGap(const Laid &a, const Laid &b, Length gap) {
    if (a.sheet != b.sheet) return true;
    const bool upright = a.rectangle && b.rectangle;
    if (overlaps(a.ring, b.ring, upright ? Length{} : placeTolerance)) return false;
    return gap == Length{} || distanceBetween(a.ring, b.ring) >= gap - (upright ? Length{} : gapTolerance);
}

bool sharesItsPhase(const Instance &instance, const Group &group, const std::vector<const Placement *> &of) {
    const Placement &first = *of[std::size_t(group.items.front())];
    const Option &lead = optionOf(instance, first);
    const Sheet &home = instance.sheets[std::size_t(lead.sheet)];
    return std::all_of(group.items.begin(), group.items.end(), [&](int item) {
        const Placement &p = *of[std::size_t(item)];
        const Option &option = optionOf(instance, p);
        const Sheet &sheet = instance.sheets[std::size_t(option.sheet)];
        if (option.turn != lead.turn || sheet.lot != home.lot) return false;
        if (!sheet.lattice || !home.lattice) return true;
        const PlaceSet places = anchorPlaces(*sheet.lattice, first.corner + lead.anchor - home.lattice->motif());
        return places.holds(p.corner + option.anchor, placeTolerance);
    });
}

} // namespace

bool Instance::rectilinear() const {
    return std::all_of(outlines.begin(), outlines.end(), [](const Outline &o) { return o.rectangle; }) &&
           std::all_of(sheets.begin(), sheets.end(), [](const Sheet &s) {
               return hasUprightEdges(s.room) && std::all_of(s.flaws.begin(), s.flaws.end(), hasUprightEdges);
           });
}

Outline makeOutline(ClothRing ring) {
    Outline o;
    ring = counterClockwise(std::move(ring));
    const Vector toOrigin = ClothPoint{} - boxOf(ring).low;
    o.ring = moved(std::move(ring), toOrigin);
    const ClothBox box = boxOf(o.ring);
    o.parts = convexParts(o.ring);
    o.width = box.width();
    o.height = box.height();
    o.rectangle = isUprightRectangle(o.ring);
    o.area = twiceArea(o.ring) / 2;
    return o;
}

std::optional<PlaceSet> placesInGroup(const Instance &instance, const Option &option, std::optional<Vector> phase) {
    const auto &lattice = instance.sheets[std::size_t(option.sheet)].lattice;
    if (!phase || !lattice) return option.places;
    return PlaceSet::common(option.places, anchorPlaces(*lattice, *phase).movedBy(-option.anchor));
}

Length lengthUsed(const Instance &instance, const std::vector<Placement> &placements, int sheet) {
    Length most = boxOf(instance.sheets[std::size_t(sheet)].room).low.y;
    auto reach = [&](int outline, ClothPoint corner) {
        most = std::max(most, corner.y + instance.outlines[std::size_t(outline)].height);
    };
    for (const Fixed &f : instance.fixed)
        if (f.sheet == sheet) reach(f.outline, f.corner);
    for (const Placement &p : placements) {
        const Option &option = optionOf(instance, p);
        if (option.sheet == sheet) reach(option.outline, p.corner);
    }
    return most;
}

bool holds(const Instance &instance, const std::vector<Placement> &placements) {
    if (!namesEveryItemOnce(instance, placements)) return false;
    std::vector<Laid> all;
    std::vector<const Placement *> of(instance.items.size());
    for (const Fixed &f : instance.fixed) all.push_back(laidAt(instance, f.sheet, f.outline, f.corner));
    for (const Placement &p : placements) {
        if (!liesOnItsSheet(instance, p)) return false;
        const Option &option = optionOf(instance, p);
        Laid laid = laidAt(instance, option.sheet, option.outline, p.corner);
        for (const Laid &other : all)
            if (!keepTheGap(laid, other, instance.gap)) return false;
        all.push_back(std::move(laid));
        of[std::size_t(p.item)] = &p;
    }
    return std::all_of(instance.groups.begin(), instance.groups.end(),
                       [&](const Group &g) { return g.items.empty() || sharesItsPhase(instance, g, of); });
}

} // namespace boltwright::planner
