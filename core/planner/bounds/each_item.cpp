#include "core/planner/bounds/bounds.h"
#include "core/planner/bounds/reach.h"

#include <algorithm>

namespace boltwright::planner {

namespace {

/// The lowest end of one item; nothing where it has no place.
std::optional<Length> lowestEnd(const Instance &instance, const Item &item) {
    std::optional<Length> best;
    for (const Option &option : item.options) {
        const auto reach = reachOf(instance, option);
        if (!reach) continue;
        const Length end = reach->lowY + instance.outlines[std::size_t(option.outline)].height;
        best = best ? std::min(*best, end) : end;
    }
    return best;
}

} // namespace

Length leastOfEachItem(const Instance &instance) {
    Length best = boxOf(openSheet(instance)->room).low.y;
    for (const Fixed &fixed : instance.fixed)
        best = std::max(best, fixed.corner.y + instance.outlines[std::size_t(fixed.outline)].height);
    for (const Item &item : instance.items) best = std::max(best, lowestEnd(instance, item).value_or(best));
    return best;
}

bool someItemHasNoPlace(const Instance &instance) {
    return std::any_of(instance.items.begin(), instance.items.end(),
                       [&](const Item &item) { return !lowestEnd(instance, item); });
}

Length nextEnd(const Instance &instance, Length bound) {
    // The length is the end of some item, or of something fixed; the least end at or above the bound is a bound.
    std::optional<Length> best;
    auto take = [&](Length end) { best = best ? std::min(*best, end) : end; };
    for (const Fixed &fixed : instance.fixed) {
        const Length end = fixed.corner.y + instance.outlines[std::size_t(fixed.outline)].height;
        if (end >= bound) take(end);
    }
    for (const Item &item : instance.items) {
        for (const Option &option : item.options) {
            const Length height = instance.outlines[std::size_t(option.outline)].height;
            const auto reach = reachOf(instance, option);
            if (!reach) continue;
            if (option.places.freeY()) {
                take(std::max(bound, reach->lowY + height));
            } else if (!option.places.dropped()) {
                take(option.places.nextY(reach->lowX, std::max(bound - height, reach->lowY)) + height);
            } else {
                std::int64_t columns = 0;
                for (Length x = reach->lowX; x <= reach->highX; x += option.places.xStep) {
                    if (++columns > 4096) return bound;
                    take(option.places.nextY(x, std::max(bound - height, reach->lowY)) + height);
                }
            }
        }
    }
    return best.value_or(bound);
}

} // namespace boltwright::planner
