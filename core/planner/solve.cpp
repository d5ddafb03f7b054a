#include "core/planner/solve.h"

#include "core/base/ensure.h"
#include "core/planner/bounds/bounds.h"
#include "core/planner/polygon_search.h"
#include "core/planner/rectangle_search.h"

namespace boltwright::planner {
namespace {

Outcome refused() {
    Outcome o;
    o.kind = Outcome::Kind::CannotFit;
    o.proved = true;
    return o;
}

bool isOpen(const Instance &instance) { return !instance.sheets.empty() && instance.sheets.front().open; }

/// Proved without a search.
bool isImpossible(const Instance &instance, Length bound) {
    if (!isOpen(instance)) return cannotFit(instance);
    return someItemHasNoPlace(instance) || bound > boxOf(instance.sheets.front().room).high.y;
}

/// What is known about the outcome whoever found it.
Outcome judged(const Instance &instance, Length bound, Outcome o) {
    if (o.kind == Outcome::Kind::CannotFit) return refused();
    o.bound = bound;
    if (o.kind != Outcome::Kind::Fits) return o;
    ensure(holds(instance, o.placements), "a layout that the search calls right is right");
    if (isOpen(instance)) o.length = lengthUsed(instance, o.placements, 0);
    o.proved = !isOpen(instance) || o.length <= bound;
    return o;
}

} // namespace

Outcome solve(const Instance &instance, const Limits &limits) {
    const Length bound = isOpen(instance) ? lowerBound(instance) : Length{};
    if (isImpossible(instance, bound)) return refused();
    if (instance.rectilinear()) return judged(instance, bound, searchRectangles(instance, limits, bound));
    return judged(instance, bound, searchPolygons(instance, limits, bound));
}

} // namespace boltwright::planner
