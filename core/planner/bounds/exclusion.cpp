#include "core/planner/bounds/bounds.h"
#include "core/planner/bounds/reach.h"

#include <algorithm>
#include <limits>
#include <numeric>

// Items that cannot share a row lie one above the other, and their heights add up. Whether two can share a row is a
// question of their places across alone: with motifs few are left.
//
// Everything here is said for rows; for the other axis of a remnant the same is asked of the instance seen with x and
// y swapped (see Axis).
namespace boltwright::planner {
namespace {

using Ticks = std::int64_t;

enum class Axis { Rows, Columns };

/// Places along the stacking axis, as far as they matter: level + whole steps of step/divide, give or take a tick where
/// that is no whole number.
struct Levels {
    Ticks level = 0, step = 0, divide = 1; ///< step 0: free
};

/// One way an item (or something fixed) can lie in a stack.
struct Way {
    int sheet = 0;
    Ticks lowAcross = 0, highAcross = 0; ///< reach of the corner on the other axis
    Ticks coreLow = 0, coreHigh = 0;     ///< what it fills there over its whole height, from the corner
    Ticks height = 0;
    Ticks first = 0; ///< lowest place along
    Levels levels;
};

struct Member {
    std::vector<Way> ways; ///< empty: not understood
    bool fixed = false;
    Ticks fixedFrom = 0, fixedTo = 0; ///< along, for something fixed
    Ticks height = 0;                 ///< least over the ways
};

Levels levelsOf(const PlaceSet &places, Axis axis) {
    if (axis == Axis::Columns) {
        if (places.freeX()) return {};
        return {places.x0.ticks(), places.xStep.ticks(), 1};
    }
    if (places.freeY()) return {};
    // With a drop any column may serve: the rows of all of them.
    const std::int64_t divide = places.yDivide * (places.dropped() ? places.riseDenominator : 1);
    return {places.y0.ticks(), places.yStep.ticks(), divide};
}

std::optional<Way> wayOf(const Instance &instance, const Option &option, Axis axis) {
    const Outline &outline = instance.outlines[std::size_t(option.outline)];
    const auto reach = reachOf(instance, option);
    if (!reach) return std::nullopt;
    Way way;
    way.sheet = option.sheet;
    way.levels = levelsOf(option.places, axis);
    if (axis == Axis::Rows) {
        const auto core = coreOf(outline);
        way.coreLow = core ? core->left.ticks() : 0;
        way.coreHigh = core ? core->right.ticks() : 0; // no core: an empty one excludes nothing
        way.lowAcross = reach->lowX.ticks();
        way.highAcross = reach->highX.ticks();
        way.height = outline.height.ticks();
        way.first = reach->lowY.ticks();
    } else {
        way.coreHigh = outline.rectangle ? outline.height.ticks() : 0;
        way.lowAcross = reach->lowY.ticks();
        way.highAcross = reach->highY.ticks();
        way.height = outline.width.ticks();
        way.first = reach->lowX.ticks();
    }
    return way;
}

Member memberOf(const Instance &instance, const Item &item, Axis axis) {
    Member member;
    member.height = std::numeric_limits<Ticks>::max();
    for (const Option &option : item.options) {
        if (const auto way = wayOf(instance, option, axis)) {
            member.ways.push_back(*way);
            member.height = std::min(member.height, way->height);
        }
    }
    return member;
}

Member memberOf(const Instance &instance, const Fixed &fixed, Axis axis) {
    const Outline &outline = instance.outlines[std::size_t(fixed.outline)];
    Way way;
    way.sheet = fixed.sheet;
    const bool rows = axis == Axis::Rows;
    way.lowAcross = way.highAcross = (rows ? fixed.corner.x : fixed.corner.y).ticks();
    const auto core = outline.rectangle || rows ? coreOf(outline) : std::nullopt;
    if (core) {
        way.coreLow = rows ? core->left.ticks() : 0;
        way.coreHigh = (rows ? core->right : outline.height).ticks();
    }
    way.height = (rows ? outline.height : outline.width).ticks();
    way.first = (rows ? fixed.corner.y : fixed.corner.x).ticks();
    const ClothBox room = boxOf(instance.sheets[std::size_t(fixed.sheet)].room);
    const Ticks low = (rows ? room.low.y : room.low.x).ticks(), high = (rows ? room.high.y : room.high.x).ticks();
    if (way.first < low || way.first + way.height > high) return {}; // reaches out of the room it would fill
    return {{way}, true, way.first, way.first + way.height, way.height};
}

/// The widest clear distance between the cores of two ways when they lie side by side; negative when they always meet.
Ticks widestBetween(const Way &a, const Way &b) {
    const Ticks bRight = b.highAcross + b.coreLow - (a.lowAcross + a.coreHigh);
    const Ticks aRight = a.highAcross + a.coreLow - (b.lowAcross + b.coreHigh);
    return std::max(bRight, aRight);
}

/// What two ways that cannot share a row keep between them along; nothing when they can share one.
std::optional<Ticks> separation(const Way &a, const Way &b, Ticks gap) {
    if (a.sheet != b.sheet) return gap; // each sheet has its own rows; see `room`
    if (a.coreLow >= a.coreHigh || b.coreLow >= b.coreHigh) return std::nullopt;
    const Ticks between = widestBetween(a, b);
    if (between < 0) return gap;
    if (between >= gap) return std::nullopt;
    // Corner to corner: the gap is kept as a slant, and along less than all of it is needed.
    const Ticks along = rootBelow(gap * gap - between * between);
    return along * along < gap * gap - between * between ? along + 1 : along;
}

std::optional<Ticks> separation(const Member &a, const Member &b, Ticks gap) {
    if (a.ways.empty() || b.ways.empty()) return std::nullopt;
    if (a.fixed && b.fixed) {
        // What lies there lies there, however near.
        if (a.ways[0].sheet != b.ways[0].sheet) return Ticks(0);
        if (a.fixedTo <= b.fixedFrom || b.fixedTo <= a.fixedFrom) return Ticks(0);
        return std::nullopt;
    }
    Ticks least = gap;
    for (const Way &wa : a.ways) {
        for (const Way &wb : b.ways) {
            const auto s = separation(wa, wb, gap);
            if (!s) return std::nullopt;
            least = std::min(least, *s);
        }
    }
    return least;
}

/// From the foot of one way to the foot of the next above it, at least: its height and the separation, raised to where
/// the other has a place.
Ticks stepUp(const Way &below, const Way &above, Ticks separation) {
    const Ticks bare = below.height + separation;
    const Levels &a = below.levels, &b = above.levels;
    if (below.sheet != above.sheet || a.step == 0 || b.step == 0 || a.step != b.step) return bare;
    const Ticks divide = std::lcm(a.divide, b.divide);
    if (divide > 1024) return bare;
    // Feet differ by (b.level - a.level) + m·step/divide; where that is not whole, each of both was rounded.
    const Ticks slack = a.step % divide == 0 ? 0 : 1;
    const Ticks shift = b.level - a.level;
    const Ticks need = (bare - slack - shift) * divide;
    const Ticks m = need >= 0 ? (need + a.step - 1) / a.step : -(-need / a.step);
    const Ticks raised = shift + m * a.step / divide - (m * a.step % divide < 0 ? 1 : 0);
    return std::max(bare, raised - slack);
}

Ticks stepUp(const Member &below, const Member &above, Ticks separation) {
    Ticks least = std::numeric_limits<Ticks>::max();
    for (const Way &a : below.ways)
        for (const Way &b : above.ways) least = std::min(least, stepUp(a, b, separation));
    return least;
}

class Stack {
public:
    Stack(std::vector<Member> members, Ticks gap) : m_members(std::move(members)), m_gap(gap) {
        const std::size_t n = m_members.size();
        m_apart.assign(n * n, -1);
        for (std::size_t i = 0; i < n; ++i)
            for (std::size_t j = i + 1; j < n; ++j)
                if (const auto s = separation(m_members[i], m_members[j], m_gap))
                    m_apart[i * n + j] = m_apart[j * n + i] = *s;
    }

    /// Sets of members that exclude one another, the heavy ones among them. Any such set gives a bound, so a short
    /// search may stop where it likes.
    std::vector<std::vector<std::size_t>> heavySets() const {
        std::vector<std::vector<std::size_t>> sets;
        std::vector<std::size_t> order(m_members.size());
        std::iota(order.begin(), order.end(), std::size_t(0));
        auto byHeight = [&](std::size_t a, std::size_t b) { return m_members[a].height > m_members[b].height; };
        auto byBonds = [&](std::size_t a, std::size_t b) { return bonds(a) > bonds(b); };
        std::stable_sort(order.begin(), order.end(), byHeight);
        sets.push_back(grown({}, order));
        std::stable_sort(order.begin(), order.end(), byBonds);
        sets.push_back(grown({}, order));
        // Wherever widths alone decide, bonds are nested and the order above finds the heaviest set but for its last
        // member; so start once from each.
        for (std::size_t first = 0; first < m_members.size() && first < 64; ++first)
            if (const std::size_t i = order[m_members.size() - 1 - first]; !m_members[i].ways.empty())
                sets.push_back(grown({i}, order));
        return sets;
    }

    /// From the foot of the lowest to the end of the highest of a set, at least.
    Ticks extent(const std::vector<std::size_t> &set) const {
        if (set.empty()) return 0;
        if (set.size() == 1) return m_members[set[0]].height;
        const std::size_t n = m_members.size();
        Ticks sum = 0, most = std::numeric_limits<Ticks>::min();
        for (std::size_t i : set) {
            Ticks least = std::numeric_limits<Ticks>::max();
            for (std::size_t j : set)
                if (j != i) least = std::min(least, stepUp(m_members[i], m_members[j], m_apart[i * n + j]));
            sum += least;
            most = std::max(most, least - m_members[i].height);
        }
        return sum - most; // one of them is the highest, and has nothing above it
    }

    /// The same, for sets spread over several rooms: heights and separations only.
    Ticks weight(const std::vector<std::size_t> &set) const {
        const std::size_t n = m_members.size();
        Ticks sum = 0, least = m_gap;
        for (std::size_t i : set) {
            sum += m_members[i].height;
            for (std::size_t j : set)
                if (j != i) least = std::min(least, m_apart[i * n + j]);
        }
        return sum + least * Ticks(set.size());
    }

    Ticks lowestFoot(const std::vector<std::size_t> &set) const {
        Ticks least = std::numeric_limits<Ticks>::max();
        for (std::size_t i : set)
            for (const Way &way : m_members[i].ways) least = std::min(least, way.first);
        return least;
    }

    Ticks gap() const { return m_gap; }

private:
    std::size_t bonds(std::size_t i) const {
        const std::size_t n = m_members.size();
        return std::size_t(std::count_if(m_apart.begin() + std::ptrdiff_t(i * n),
                                         m_apart.begin() + std::ptrdiff_t((i + 1) * n),
                                         [](Ticks s) { return s >= 0; }));
    }

    std::vector<std::size_t> grown(std::vector<std::size_t> set, const std::vector<std::size_t> &order) const {
        const std::size_t n = m_members.size();
        for (std::size_t i : order) {
            const bool fits = !m_members[i].ways.empty() && std::all_of(set.begin(), set.end(), [&](std::size_t j) {
                return j != i && m_apart[i * n + j] >= 0;
            });
            if (fits) set.push_back(i);
        }
        return set;
    }

    std::vector<Member> m_members;
    Ticks m_gap;
    std::vector<Ticks> m_apart; ///< separation of two members; -1: they can share a row
};

Stack stackOf(const Instance &instance, Axis axis) {
    std::vector<Member> members;
    for (const Item &item : instance.items) members.push_back(memberOf(instance, item, axis));
    for (const Fixed &fixed : instance.fixed) members.push_back(memberOf(instance, fixed, axis));
    return Stack(std::move(members), instance.gap.ticks());
}

bool exceeded(const Instance &instance, Axis axis) {
    const Stack stack = stackOf(instance, axis);
    Ticks room = 0, low = 0, high = 0;
    for (const Sheet &sheet : instance.sheets) {
        const ClothBox box = boxOf(sheet.room);
        low = (axis == Axis::Rows ? box.low.y : box.low.x).ticks();
        high = (axis == Axis::Rows ? box.high.y : box.high.x).ticks();
        room += high - low + stack.gap(); // the topmost on each sheet keeps no gap above
    }
    for (const auto &set : stack.heavySets()) {
        if (set.size() < 2) continue;
        if (stack.weight(set) > room) return true;
        if (instance.sheets.size() == 1 && stack.lowestFoot(set) + stack.extent(set) > high) return true;
    }
    return false;
}

} // namespace

Length leastByExclusion(const Instance &instance) {
    const Ticks low = boxOf(openSheet(instance)->room).low.y.ticks();
    const Stack stack = stackOf(instance, Axis::Rows);
    Ticks best = low;
    for (const auto &set : stack.heavySets())
        if (!set.empty()) best = std::max(best, std::max(low, stack.lowestFoot(set)) + stack.extent(set));
    return Length::ticks(best);
}

bool exclusionExceeded(const Instance &instance) {
    return exceeded(instance, Axis::Rows) || exceeded(instance, Axis::Columns);
}

} // namespace boltwright::planner
