#include "core/planner/bounds/bounds.h"
#include "core/planner/bounds/reach.h"

#include <algorithm>
#include <numeric>

// Shapes that keep the gap from one another stay apart when each is grown by a disc of half the gap; grown they lie in
// the room grown the same way. A convex shape of area A and perimeter P grows to A + P·gap/2 + pi·gap²/4.
namespace boltwright::planner {
namespace {

/// Sums of areas: a thousand items of a square kilometre in ticks pass 64 bits.
__extension__ using Sum = __int128;

/// pi/4·gap², rounded down and up.
Sum cornersBelow(Length gap) { return Sum(gap * gap) * 785398 / 1000000; }
Sum cornersAbove(Length gap) { return Sum(gap * gap) * 785399 / 1000000 + 1; }

Sum perimeterBelow(const ClothRing &ring) {
    Sum sum = 0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Vector edge = ring[(i + 1) % ring.size()] - ring[i];
        sum += rootBelow(dot(edge, edge));
    }
    return sum;
}

Sum perimeterAbove(const ClothRing &ring) { return perimeterBelow(ring) + Sum(ring.size()); }

Sum grownArea(const Outline &outline, Length gap) {
    if (gap == Length{} || !isConvex(outline.ring)) return outline.area;
    return Sum(outline.area) + perimeterBelow(outline.ring) * gap.ticks() / 2 + cornersBelow(gap);
}

/// What an item covers at least: the least over its options.
template <class AreaOf>
Sum covered(const Instance &instance, const Item &item, AreaOf areaOf) {
    Sum best = -1;
    for (const Option &option : item.options) {
        const Sum area = areaOf(instance.outlines[std::size_t(option.outline)]);
        best = best < 0 ? area : std::min(best, area);
    }
    return best;
}

bool apart(const ClothBox &a, const ClothBox &b) {
    return a.high.x <= b.low.x || b.high.x <= a.low.x || a.high.y <= b.low.y || b.high.y <= a.low.y;
}

bool inside(const ClothBox &inner, const ClothBox &outer) {
    return inner.low.x >= outer.low.x && inner.low.y >= outer.low.y && inner.high.x <= outer.high.x &&
           inner.high.y <= outer.high.y;
}

/// A patch of the cloth that no item may cover.
struct Patch {
    ClothBox box;
    Sum area;
};

/// Patches lost on one sheet, no two of them overlapping: fixed outlines, and flaws unless some item may cross them.
/// A patch that is not clearly inside the room and clear of the others is left out.
std::vector<Patch> lost(const Instance &instance, int sheet, bool flawsCount) {
    const ClothBox room = boxOf(instance.sheets[std::size_t(sheet)].room);
    std::vector<Patch> patches;
    auto take = [&](const Patch &patch) {
        if (!inside(patch.box, room)) return;
        for (const Patch &other : patches)
            if (!apart(patch.box, other.box)) return;
        patches.push_back(patch);
    };
    for (const Fixed &fixed : instance.fixed) {
        if (fixed.sheet != sheet) continue;
        const Outline &outline = instance.outlines[std::size_t(fixed.outline)];
        take({{fixed.corner, fixed.corner + Vector{outline.width, outline.height}}, outline.area});
    }
    if (flawsCount)
        for (const ClothRing &flaw : instance.sheets[std::size_t(sheet)].flaws)
            take({boxOf(flaw), twiceArea(flaw) / 2});
    return patches;
}

/// Least length of an open sheet for items that cover `need`, given what is lost below each height.
Length lengthFor(const Instance &instance, Sum need, bool flawsCount, Length gap) {
    const Sheet &sheet = *openSheet(instance);
    const ClothBox room = boxOf(sheet.room);
    const auto width = Sum(room.width().ticks()), rim = Sum(gap.ticks());
    std::vector<Patch> patches = lost(instance, int(&sheet - instance.sheets.data()), flawsCount);
    // Lowest first: a patch counts only once the length is known to pass it.
    std::sort(patches.begin(), patches.end(),
              [](const Patch &a, const Patch &b) { return a.box.high.y < b.box.high.y; });
    auto lengthOf = [&](Sum area) {
        const Sum rest = area - width * rim - (rim > 0 ? cornersAbove(gap) : 0);
        if (rest <= 0) return room.low.y;
        return room.low.y + Length::ticks(std::int64_t((rest + width + rim - 1) / (width + rim)));
    };
    Length length = lengthOf(need);
    for (const Patch &patch : patches) {
        if (patch.box.high.y > length) break;
        need += patch.area;
        length = lengthOf(need);
    }
    return length;
}

struct Need {
    Sum all = 0, visible = 0; ///< visible: the items that keep off flaws
};

template <class AreaOf>
Need needOf(const Instance &instance, AreaOf areaOf) {
    Need need;
    for (const Item &item : instance.items) {
        const Sum area = covered(instance, item, areaOf);
        need.all += area;
        if (!item.hidden) need.visible += area;
    }
    return need;
}

/// On remnants with a gap. A room of any shape grows by no more than its rim and the corners of a disc.
bool grownAreaExceeded(const Instance &instance) {
    const Length gap = instance.gap;
    const Need need = needOf(instance, [&](const Outline &o) { return grownArea(o, gap); });
    Sum room = 0;
    for (const Sheet &sheet : instance.sheets)
        room += twiceArea(sheet.room) / 2 + 1 + perimeterAbove(sheet.room) * gap.ticks() / 2 + 1 + cornersAbove(gap);
    return need.all > room;
}

} // namespace

Length leastByArea(const Instance &instance) {
    const Need bare = needOf(instance, [](const Outline &o) { return Sum(o.area); });
    // Neither flaws nor fixed outlines grow, so what is grown may reach over their rims: without them, then.
    const Need grown = needOf(instance, [&](const Outline &o) { return grownArea(o, instance.gap); });
    Length best = std::max(lengthFor(instance, bare.all, false, {}), lengthFor(instance, bare.visible, true, {}));
    Instance free;
    free.sheets = instance.sheets;
    return std::max(best, lengthFor(free, grown.all, false, instance.gap));
}

bool areaExceeded(const Instance &instance) {
    const Need need = needOf(instance, [](const Outline &o) { return Sum(o.area); });
    Sum room = 0, clear = 0;
    for (std::size_t s = 0; s < instance.sheets.size(); ++s) {
        const Sum area = twiceArea(instance.sheets[s].room) / 2 + 1; // rounded up; outlines are rounded down
        room += area;
        clear += area;
        // Patches inside the room's box may stick out of a room that is no box; then they may not count in full.
        if (!isUprightRectangle(instance.sheets[s].room)) continue;
        for (const Patch &patch : lost(instance, int(s), false)) room -= patch.area;
        for (const Patch &patch : lost(instance, int(s), true)) clear -= patch.area;
    }
    return need.all > room || need.visible > clear || grownAreaExceeded(instance);
}

} // namespace boltwright::planner
