#include "core/planner/bounds/reach.h"

#include <algorithm>
#include <cmath>

namespace boltwright::planner {
namespace {

// With a drop every column has rows of its own. A sheet with more columns than this does not occur; it would only make
// the reach a little too generous.
constexpr std::int64_t mostColumns = 4096;

void takeColumn(Reach &reach, bool &any, const PlaceSet &places, Length x, Length low, Length high) {
    const Length first = places.nextY(x, low), last = places.previousY(x, high);
    if (first > high || last < low) return;
    if (!any) {
        reach = {x, x, first, last};
        any = true;
        return;
    }
    reach.highX = x;
    reach.lowY = std::min(reach.lowY, first);
    reach.highY = std::max(reach.highY, last);
}

} // namespace

std::optional<Reach> reachOf(const Instance &instance, const Option &option) {
    const ClothBox room = boxOf(instance.sheets[std::size_t(option.sheet)].room);
    const Outline &outline = instance.outlines[std::size_t(option.outline)];
    const Length right = room.high.x - outline.width, top = room.high.y - outline.height;
    const PlaceSet &places = option.places;
    Reach reach{places.nextX(room.low.x), places.previousX(right), room.low.y, top};
    if (reach.lowX > reach.highX || top < room.low.y) return std::nullopt;
    if (!places.dropped()) {
        reach.lowY = places.nextY(reach.lowX, room.low.y);
        reach.highY = places.previousY(reach.lowX, top);
        if (reach.lowY > reach.highY) return std::nullopt;
        return reach;
    }
    if ((reach.highX - reach.lowX).ticks() / places.xStep.ticks() > mostColumns) return reach;
    bool any = false;
    const Length first = reach.lowX, last = reach.highX;
    for (Length x = first; x <= last; x += places.xStep) takeColumn(reach, any, places, x, room.low.y, top);
    if (!any) return std::nullopt;
    return reach;
}

const Sheet *openSheet(const Instance &instance) {
    for (const Sheet &sheet : instance.sheets)
        if (sheet.open) return &sheet;
    return nullptr;
}

std::optional<Core> coreOf(const Outline &outline) {
    if (outline.rectangle) return Core{{}, outline.width};
    if (!isConvex(outline.ring)) return std::nullopt;
    // In a convex ring the left side is nearest to the right at its lower or upper end: the leftmost corners of the
    // bottom and top rows, and likewise on the right.
    Core core{{}, outline.width};
    for (const Length row : {Length{}, outline.height}) {
        std::optional<Length> left, right;
        for (const ClothPoint &p : outline.ring) {
            if (p.y != row) continue;
            left = left ? std::min(*left, p.x) : p.x;
            right = right ? std::max(*right, p.x) : p.x;
        }
        if (!left) return std::nullopt;
        core.left = std::max(core.left, *left);
        core.right = std::min(core.right, *right);
    }
    if (core.left >= core.right) return std::nullopt;
    return core;
}

std::int64_t rootBelow(std::int64_t n) {
    auto root = std::int64_t(std::sqrt(double(n)));
    while (root * root > n) --root;
    while ((root + 1) * (root + 1) <= n) ++root;
    return root;
}

} // namespace boltwright::planner
