#include "core/planner/rectangle_task.h"

#include "core/base/ensure.h"

#include <algorithm>
#include <numeric>
#include <set>

namespace boltwright::planner {
namespace {

Tick tick(Length l) { return Tick(l.ticks()); }
Length length(Tick t) { return Length::ticks(t); }

struct Span {
    Tick low, high;
    bool operator==(const Span &) const = default;
};

/// Where an upright ring covers the line 2·x = `twice` (no corner lies on it): spans of y, from below.
std::vector<Span> coveredAt(const ClothRing &ring, std::int64_t twice) {
    std::vector<Tick> crossings;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const ClothPoint a = ring[i], b = ring[(i + 1) % ring.size()];
        if (a.y == b.y && (2 * a.x.ticks() < twice) != (2 * b.x.ticks() < twice)) crossings.push_back(tick(a.y));
    }
    std::sort(crossings.begin(), crossings.end());
    std::vector<Span> spans;
    for (std::size_t i = 0; i + 1 < crossings.size(); i += 2) spans.push_back({crossings[i], crossings[i + 1]});
    return spans;
}

/// The upright ring as rectangles, slab by slab from the left; equal neighbours are one. `complement`: what the ring
/// leaves of its box instead.
std::vector<Obstacle> slabs(const ClothRing &ring, bool complement) {
    std::set<Tick> xs;
    for (const ClothPoint p : ring) xs.insert(tick(p.x));
    const ClothBox box = boxOf(ring);
    std::vector<Obstacle> all;
    std::vector<Span> before;
    std::size_t firstBefore = 0;
    for (auto x = xs.begin(); std::next(x) != xs.end(); ++x) {
        const Tick low = *x, high = *std::next(x);
        std::vector<Span> spans = coveredAt(ring, std::int64_t(low) + high);
        if (complement) {
            std::vector<Span> rest;
            Tick y = tick(box.low.y);
            for (const Span s : spans) {
                if (s.low > y) rest.push_back({y, s.low});
                y = s.high;
            }
            if (y < tick(box.high.y)) rest.push_back({y, tick(box.high.y)});
            spans = rest;
        }
        if (spans == before) {
            for (std::size_t i = firstBefore; i < all.size(); ++i) all[i].x1 = high;
            continue;
        }
        firstBefore = all.size();
        for (const Span s : spans) all.push_back({low, s.low, high, s.high});
        before = spans;
    }
    return all;
}

RectangleSheet compiled(const Sheet &sheet, Tick gap) {
    const ClothBox box = boxOf(sheet.room);
    RectangleSheet s{tick(box.low.x), tick(box.low.y), tick(box.high.x) + gap, tick(box.high.y) + gap, {}, {},
                     tick(box.low.y), sheet.lot};
    auto withoutGap = [gap](Obstacle o) { return Obstacle{o.x0 + gap, o.y0 + gap, o.x1, o.y1}; };
    for (const Obstacle &o : slabs(sheet.room, true)) s.obstacles.push_back(withoutGap(o));
    for (const ClothRing &flaw : sheet.flaws)
        for (const Obstacle &o : slabs(flaw, false)) s.flaws.push_back(withoutGap(o));
    return s;
}

} // namespace

Tick Places::nextY(Tick x, Tick from) const {
    if (yStep == 0) return from;
    const Tick row = columnY0.empty() ? y0 : columnY0[std::size_t((x - xFirst) / xStep)];
    Tick up = (row - from) % yStep;
    if (up < 0) up += yStep;
    if (yDivide == 1) return from + up;
    // Rows in between: the j-th lies round(j·yStep / yDivide) above the row below `from`.
    const Tick base = from + up - yStep;
    std::int64_t j = std::int64_t(from - base) * yDivide / yStep;
    auto at = [&](std::int64_t k) { return base + Tick(roundedQuotient(k * yStep, yDivide)); };
    while (j > 0 && at(j - 1) >= from) --j;
    while (at(j) < from) ++j;
    return at(j);
}

Places RectangleTask::placesOf(const PlaceSet &set, int sheet, Tick width) const {
    const RectangleSheet &s = sheets[std::size_t(sheet)];
    Places p;
    p.xStep = tick(set.xStep);
    p.yStep = tick(set.yStep);
    p.yDivide = Tick(set.yDivide);
    p.xFirst = tick(set.nextX(length(s.x0)));
    p.y0 = tick(set.nextY(length(p.xFirst), length(s.y0)));
    if (set.yDivide > 1 && !set.freeY()) p.y0 = tick(set.y0); // only this row has nothing rounded below it
    if (set.dropped())
        for (Tick x = p.xFirst; x + width <= s.x1; x += p.xStep)
            p.columnY0.push_back(tick(set.nextY(length(x), length(s.y0))));
    return p;
}

RectangleTask::RectangleTask(const Instance &instance) : m_instance(&instance), m_gap(tick(instance.gap)) {
    for (const Sheet &sheet : instance.sheets) sheets.push_back(compiled(sheet, m_gap));
    m_open = !instance.sheets.empty() && instance.sheets.front().open;
    for (const Fixed &f : instance.fixed) {
        const Outline &o = instance.outlines[std::size_t(f.outline)];
        RectangleSheet &s = sheets[std::size_t(f.sheet)];
        const Tick x = tick(f.corner.x), y = tick(f.corner.y);
        s.obstacles.push_back({x, y, x + tick(o.width) + m_gap, y + tick(o.height) + m_gap});
        s.used = std::max(s.used, y + tick(o.height) + m_gap);
    }
    std::int64_t unit = 0;
    auto measure = [&unit](std::int64_t t) { unit = std::gcd(unit, t); };
    for (std::size_t i = 0; i < instance.items.size(); ++i) {
        const Item &item = instance.items[i];
        RectangleItem mine{int(options.size()), 0, item.group, item.hidden, 0};
        std::vector<std::size_t> kept;
        for (std::size_t k = 0; k < item.options.size(); ++k) {
            const Option &o = item.options[k];
            const Outline &outline = instance.outlines[std::size_t(o.outline)];
            // A rectangle turned end for end is the same cut, unless a group has to turn with it.
            const bool seen = item.group < 0 && std::any_of(kept.begin(), kept.end(), [&](std::size_t j) {
                                  const Option &p = item.options[j];
                                  const Outline &q = instance.outlines[std::size_t(p.outline)];
                                  return p.sheet == o.sheet && q.width == outline.width && q.height == outline.height &&
                                         p.places == o.places;
                              });
            const RectangleSheet &s = sheets[std::size_t(o.sheet)];
            RectangleOption mineOption{
                int(i), int(k), o.sheet, o.turn, tick(outline.width) + m_gap, tick(outline.height) + m_gap, {}};
            if (seen || mineOption.width > s.x1 - s.x0 || mineOption.height > s.y1 - s.y0) continue;
            kept.push_back(k);
            mineOption.places = placesOf(o.places, o.sheet, mineOption.width);
            measure(mineOption.height);
            if (mineOption.places.yStep > 0) {
                measure(mineOption.places.yDivide == 1 ? mineOption.places.yStep : 1);
                measure(mineOption.places.y0 - s.y0);
                for (Tick y : mineOption.places.columnY0) measure(y - s.y0);
            } else if (item.group >= 0 && instance.sheets[std::size_t(o.sheet)].lattice) {
                measure(1);
            }
            const Area area = Area(mineOption.width) * mineOption.height;
            mine.area = mine.area == 0 ? area : std::min(mine.area, area);
            options.push_back(std::move(mineOption));
        }
        mine.endOption = int(options.size());
        m_itemArea += mine.area;
        items.push_back(mine);
    }
    for (const RectangleSheet &s : sheets)
        for (const auto *list : {&s.obstacles, &s.flaws})
            for (const Obstacle &o : *list) measure(o.y1 - s.y0);
    m_unit = Tick(std::max<std::int64_t>(unit, 1));
}

Placement RectangleTask::placement(const RectangleOption &option, Tick x, Tick y) const {
    return {option.item, option.index, {length(x), length(y)}};
}

} // namespace boltwright::planner
