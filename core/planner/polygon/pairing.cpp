#include "core/planner/polygon/pairing.h"

#include "core/geometry/shape_ops.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace boltwright::planner {
namespace {

/// Two options side by side, as a box.
struct Match {
    int optionA = 0, optionB = 0;
    Vector a, b; ///< from the box's corner
    Length width, height;
    Area waste = 0;
};

bool mayBeJoined(const Item &item) {
    return item.group < 0 && std::all_of(item.options.begin(), item.options.end(),
                                         [](const Option &o) { return o.places == PlaceSet{}; });
}

bool isSlanted(const Instance &instance, const Item &item) {
    return std::any_of(item.options.begin(), item.options.end(),
                       [&](const Option &o) { return !instance.outlines[std::size_t(o.outline)].rectangle; });
}

/// Where the level y = `level` enters and leaves a convex ring, rounded outwards; nothing where it misses it.
std::vector<Length> crossings(const ClothRing &ring, Length level) {
    double from = 1e300, to = -1e300;
    const double y = double(level.ticks());
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const ClothPoint a = ring[i], b = ring[(i + 1) % ring.size()];
        const double ax = double(a.x.ticks()), ay = double(a.y.ticks()), bx = double(b.x.ticks()),
                     by = double(b.y.ticks());
        if ((ay < y && by < y) || (ay > y && by > y)) continue;
        for (double x : {ay == by ? ax : ax + (bx - ax) * ((y - ay) / (by - ay)),
                         ay == by ? bx : ax + (bx - ax) * ((y - ay) / (by - ay))}) {
            from = std::min(from, x);
            to = std::max(to, x);
        }
    }
    if (from > to) return {};
    return {Length::ticks(std::int64_t(std::floor(from + 1e-6))), Length::ticks(std::int64_t(std::ceil(to - 1e-6)))};
}

ClothRing swapped(const ClothRing &ring) {
    ClothRing out;
    for (ClothPoint p : ring) out.push_back({p.y, p.x});
    return out;
}

/// All ways in which convex outlines a and b make a box: touching, and with two of their corners level or one above
/// the other.
std::vector<Match> boxesOf(const Outline &a, const Outline &b, Length gap) {
    std::vector<Match> out;
    if (a.parts.size() > 1 || b.parts.size() > 1) return out;
    auto add = [&](Vector at) {
        const Length lowX = std::min(Length{}, at.x), lowY = std::min(Length{}, at.y);
        Match m;
        m.width = std::max(a.width, at.x + b.width) - lowX;
        m.height = std::max(a.height, at.y + b.height) - lowY;
        m.waste = m.width * m.height - a.area - b.area;
        m.a = {-lowX, -lowY};
        m.b = m.a + at;
        const bool isNew =
            std::none_of(out.begin(), out.end(), [&](const Match &o) { return o.a == m.a && o.b == m.b; });
        if (m.waste * 64 <= m.width * m.height && isNew) out.push_back(m);
    };
    // Level at the foot or at the top, or flush on the left or on the right: what else makes no box.
    const ClothRing apart = noFit(grown(a.parts[0], gap), b.parts[0]), turned = swapped(apart);
    for (Length y : {Length{}, a.height - b.height})
        for (Length x : crossings(apart, y)) add({x, y});
    for (Length x : {Length{}, a.width - b.width})
        for (Length y : crossings(turned, x)) add({x, y});
    return out;
}

} // namespace

std::vector<Placement> Pairing::apart(const std::vector<Placement> &ofJoined) const {
    std::vector<Placement> out;
    for (const Placement &p : ofJoined)
        for (const Part &part : parts[std::size_t(p.item)][std::size_t(p.option)])
            out.push_back({part.item, part.option, p.corner + part.from});
    std::sort(out.begin(), out.end(), [](const Placement &a, const Placement &b) { return a.item < b.item; });
    return out;
}

std::optional<Pairing> pairUp(const Instance &instance) {
    std::map<std::pair<int, int>, std::vector<Match>> known; // by outlines
    auto matches = [&](int a, int b) -> const std::vector<Match> & {
        auto [it, isNew] = known.try_emplace({a, b});
        if (isNew)
            it->second = boxesOf(instance.outlines[std::size_t(a)], instance.outlines[std::size_t(b)], instance.gap);
        return it->second;
    };
    struct Pair {
        Area waste;
        int a, b;
    };
    std::vector<Pair> pairs;
    const int n = int(instance.items.size());
    for (int a = 0; a < n; ++a) {
        const Item &itemA = instance.items[std::size_t(a)];
        if (!mayBeJoined(itemA) || !isSlanted(instance, itemA)) continue;
        for (int b = a + 1; b < n; ++b) {
            const Item &itemB = instance.items[std::size_t(b)];
            if (!mayBeJoined(itemB) || !isSlanted(instance, itemB) || itemA.hidden != itemB.hidden) continue;
            std::optional<Area> least;
            for (const Option &p : itemA.options)
                for (const Option &q : itemB.options)
                    if (p.sheet == q.sheet)
                        for (const Match &m : matches(p.outline, q.outline))
                            if (!least || m.waste < *least) least = m.waste;
            if (least) pairs.push_back({*least, a, b});
        }
    }
    if (pairs.empty()) return std::nullopt;
    std::sort(pairs.begin(), pairs.end(),
              [](const Pair &p, const Pair &q) { return std::tie(p.waste, p.a, p.b) < std::tie(q.waste, q.a, q.b); });

    Pairing out;
    out.joined = instance;
    out.joined.items.clear();
    std::vector<int> joinedItem(std::size_t(n), -1);
    for (const Pair &pair : pairs) {
        if (joinedItem[std::size_t(pair.a)] >= 0 || joinedItem[std::size_t(pair.b)] >= 0) continue;
        joinedItem[std::size_t(pair.a)] = joinedItem[std::size_t(pair.b)] = int(out.joined.items.size());
        const auto &optionsA = instance.items[std::size_t(pair.a)].options,
                   &optionsB = instance.items[std::size_t(pair.b)].options;
        Item both;
        both.hidden = instance.items[std::size_t(pair.a)].hidden;
        out.parts.emplace_back();
        for (int i = 0; i < int(optionsA.size()); ++i)
            for (int j = 0; j < int(optionsB.size()); ++j) {
                const Option &p = optionsA[std::size_t(i)], &q = optionsB[std::size_t(j)];
                if (p.sheet != q.sheet) continue;
                for (const Match &m : matches(p.outline, q.outline)) {
                    Option option;
                    option.sheet = p.sheet;
                    option.outline = int(out.joined.outlines.size());
                    out.joined.outlines.push_back(makeOutline(ringOf(ClothBox{{}, {m.width, m.height}})));
                    both.options.push_back(option);
                    out.parts.back().push_back({{pair.a, i, m.a}, {pair.b, j, m.b}});
                }
            }
        out.joined.items.push_back(std::move(both));
    }
    std::map<int, int> groupedAs; // item -> item of joined
    for (int i = 0; i < n; ++i) {
        if (joinedItem[std::size_t(i)] >= 0) continue;
        groupedAs[i] = int(out.joined.items.size());
        out.joined.items.push_back(instance.items[std::size_t(i)]);
        out.parts.emplace_back();
        for (int o = 0; o < int(instance.items[std::size_t(i)].options.size()); ++o)
            out.parts.back().push_back({{i, o, {}}});
    }
    for (Group &group : out.joined.groups)
        for (int &item : group.items) item = groupedAs.at(item);
    for (std::size_t i = 0; i < out.joined.items.size(); ++i)
        out.joined.items[i].kind = int(i); // none taken to be alike
    // Only what is laid still matters: a slanted outline that nobody uses would hide that all is upright.
    std::vector<Outline> used;
    std::map<int, int> renumbered;
    auto keep = [&](int &outline) {
        auto [it, isNew] = renumbered.try_emplace(outline, int(used.size()));
        if (isNew) used.push_back(out.joined.outlines[std::size_t(outline)]);
        outline = it->second;
    };
    for (Item &item : out.joined.items)
        for (Option &option : item.options) keep(option.outline);
    for (Fixed &f : out.joined.fixed) keep(f.outline);
    out.joined.outlines = std::move(used);
    return out;
}

} // namespace boltwright::planner
