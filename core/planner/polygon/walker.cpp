#include "core/planner/polygon/walker.h"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace boltwright::planner {
namespace {

constexpr double farAway = 1e300;
constexpr double leastShare = 0.0005; // of the length, by which the end is drawn in
constexpr double takenShare = 0.25;   // of how much longer than the best a layout to be squeezed is, at a time
constexpr int patience = 60;          // passes without less overlap before a try is given up

const Outline &outlineOf(const Instance &instance, int item, int option) {
    const Option &o = instance.items[std::size_t(item)].options[std::size_t(option)];
    return instance.outlines[std::size_t(o.outline)];
}

/// Greater first: the orders in which items are laid from nothing.
double rank(const Instance &instance, int item, int order) {
    const Outline &o = outlineOf(instance, item, 0);
    const double width = double(o.width.ticks()), height = double(o.height.ticks());
    switch (order) {
    case 0:
        return double(o.area);
    case 1:
        return height;
    case 2:
        return width;
    case 3:
        return std::max(width, height);
    default:
        return width + height;
    }
}

} // namespace

Walker::Walker(const Model &model, std::uint64_t seed, std::function<bool()> stop)
    : m_model(model), m_random(seed), m_stop(std::move(stop)), m_arrangement(model, m_random) {}

void Walker::layItem(int item) {
    const int group = m_model.instance.items[std::size_t(item)].group;
    if (m_model.open) {
        // No further up than it can be needed, so that a lattice is not searched up a whole bolt.
        double step = 0, height = 0;
        for (const Option &o : m_model.instance.items[std::size_t(item)].options) {
            step = std::max(step, double((o.places.yStep * 2).ticks()));
            height = std::max(height, double(m_model.instance.outlines[std::size_t(o.outline)].height.ticks()));
            if (const auto &lattice = m_model.instance.sheets[0].lattice)
                step = std::max(step, double((lattice->along() * 2).ticks()));
        }
        const double gap = double(m_model.instance.gap.ticks());
        const double needed = std::max(m_arrangement.used(), m_model.obstaclesTop) + 2 * height + step + 4 * gap;
        m_arrangement.setTop(std::min(m_model.ceiling, needed));
    }
    if (group >= 0 && !m_arrangement.settled(group)) m_arrangement.regroup(group);
    if (const auto where = m_arrangement.lowest(item))
        m_arrangement.put(item, *where);
    else if (const auto least = m_arrangement.cheapest(item, farAway))
        m_arrangement.put(item, *least);
}

void Walker::lay(int order) {
    m_arrangement.clear();
    std::vector<int> items(std::size_t(m_arrangement.size()));
    std::iota(items.begin(), items.end(), 0);
    const bool free = order > 4;
    if (free)
        m_random.shuffle(items);
    else
        std::stable_sort(items.begin(), items.end(), [&](int a, int b) {
            return rank(m_model.instance, a, order) > rank(m_model.instance, b, order);
        });
    for (int item : items) layItem(item);
    m_arrangement.setTop(m_model.ceiling);
    keepIfRight();
    tighten();
}

void Walker::keepIfRight() {
    if (!m_arrangement.right()) return;
    if (m_model.open) settleDown();
    const double length = m_arrangement.used();
    if (m_taken > 0) m_taken = length;
    if (m_found && (!m_model.open || length >= m_length)) return;
    m_found = true;
    m_length = length;
    m_best = m_arrangement.places();
}

void Walker::settleDown() {
    std::vector<int> items(std::size_t(m_arrangement.size()));
    std::iota(items.begin(), items.end(), 0);
    std::stable_sort(items.begin(), items.end(),
                     [&](int a, int b) { return m_arrangement.at(a).y < m_arrangement.at(b).y; });
    for (int item : items) {
        if (m_stop()) return;
        const Where before = m_arrangement.at(item);
        const double top = before.y + double(outlineOf(m_model.instance, item, before.option).height.ticks());
        m_arrangement.lift(item);
        const auto where = m_arrangement.lowestNear(item, before);
        const bool lower =
            where && where->y + double(outlineOf(m_model.instance, item, where->option).height.ticks()) < top;
        m_arrangement.put(item, lower ? *where : before);
    }
}

/// Draws the end in below the best layout, and moves what reaches beyond it.
void Walker::tighten() {
    if (m_model.open) {
        double top = m_model.ceiling;
        if (m_found) top = std::min(m_length - 1, std::floor(m_length - (m_length - m_model.bottom) * m_share));
        if (m_taken > m_length) top = std::max(top, std::floor(m_taken - (m_taken - top) * takenShare));
        m_arrangement.setTop(std::max(top, m_found ? std::min(m_bound, m_length - 1) : 0));
    }
    m_arrangement.resetWeights();
    placeOut();
    m_least = farAway;
    m_idle = 0;
}

void Walker::placeOut() {
    for (int item = 0; item < m_arrangement.size(); ++item) {
        const bool lies = m_arrangement.at(item).option >= 0;
        if (lies && !m_arrangement.beyondTop(item)) continue;
        if (m_stop() && m_found) return;
        if (lies) m_arrangement.lift(item);
        if (const auto where = m_arrangement.cheapest(item, farAway)) m_arrangement.put(item, *where);
    }
}

void Walker::separateOnce() {
    std::vector<int> items;
    for (int i = 0; i < m_arrangement.size(); ++i)
        if (m_arrangement.misplaced(i)) items.push_back(i);
    m_random.shuffle(items);
    for (int item : items) {
        if (m_stop()) return;
        if (!m_arrangement.misplaced(item)) continue;
        const bool out = m_arrangement.at(item).option < 0 || m_arrangement.beyondTop(item);
        const double now = out ? farAway : m_arrangement.weightedOverlap(item);
        if (const auto where = m_arrangement.cheapestNear(item, now)) m_arrangement.put(item, *where);
    }
}

void Walker::run(std::int64_t moves) {
    const std::int64_t end = m_arrangement.moves() + moves;
    if (m_handedOver) {
        m_handedOver = false;
        m_arrangement.setTop(m_model.ceiling);
        m_arrangement.restore(m_best);
        keepIfRight();
        tighten();
    }
    while (m_arrangement.moves() < end && !m_stop() && !done()) {
        if (pass()) continue;
        ++m_failed;
        // Now a little, now much: where pieces fit exactly there is nothing between the best length and the next, and a
        // small step only ever leads back.
        if (m_found) m_share = leastShare * double(1 << m_random.below(1 + m_random.below(8)));
        m_arrangement.restore(m_found && m_random.oneIn(2) ? m_best : m_closest);
        disturb();
        tighten();
    }
}

/// Moves each item in the way once. False when it is time to give the try up.
bool Walker::pass() {
    const std::int64_t before = m_arrangement.moves();
    separateOnce();
    if (m_arrangement.right()) {
        keepIfRight();
        if (done()) return true;
        m_failed = 0;
        tighten();
        return true;
    }
    const double overlap = m_arrangement.totalOverlap();
    if (overlap < m_least) {
        if (overlap < m_least * 0.98) m_idle = 0;
        m_least = overlap;
        m_closest = m_arrangement.places();
    } else {
        ++m_idle;
    }
    m_arrangement.raiseWeights();
    return m_idle < patience && m_arrangement.moves() > before;
}

void Walker::take(const std::vector<Where> &layout) {
    m_arrangement.setTop(m_model.ceiling);
    m_arrangement.restore(layout);
    m_taken = m_arrangement.used();
    keepIfRight();
    m_share = leastShare;
    tighten();
}

bool Walker::squeeze(std::int64_t untilMoves) {
    while (m_arrangement.moves() < untilMoves && !m_stop() && !done())
        if (!pass()) {
            m_taken = 0;
            return false;
        }
    return true;
}

void Walker::adopt(const std::vector<Where> &layout, double length) {
    if (m_found && (!m_model.open || length >= m_length)) return;
    m_found = true;
    m_length = length;
    m_best = layout;
    m_handedOver = true;
}

void Walker::disturb() {
    const int groups = int(m_model.instance.groups.size());
    if (groups > 0 && m_random.oneIn(3))
        relayGroup(m_random.below(groups));
    else if (m_random.oneIn(2))
        swapTwo();
    else
        relayNear();
}

void Walker::relayGroup(int group) {
    m_arrangement.regroup(group);
    std::vector<int> items = m_model.instance.groups[std::size_t(group)].items;
    m_random.shuffle(items);
    for (int item : items)
        if (const auto where = m_arrangement.cheapest(item, farAway)) m_arrangement.put(item, *where);
}

/// Two items of the larger ones change places, more or less: each goes to the cheapest place while the other is away.
void Walker::swapTwo() {
    const int n = m_arrangement.size();
    if (n < 2) return;
    auto large = [&] {
        int best = m_random.below(n);
        const int other = m_random.below(n);
        return rank(m_model.instance, other, 0) > rank(m_model.instance, best, 0) ? other : best;
    };
    const int a = large(), b = large();
    if (a == b) return;
    const Where p = m_arrangement.at(a), q = m_arrangement.at(b);
    const auto &itemA = m_model.instance.items[std::size_t(a)], &itemB = m_model.instance.items[std::size_t(b)];
    const bool plain = itemA.group < 0 && itemB.group < 0 && p.option >= 0 && q.option >= 0;
    m_arrangement.lift(a);
    m_arrangement.lift(b);
    if (plain) {
        // Straight to where the other was, corner on corner, where their wishes leave them free to.
        auto go = [&](int item, const Where &own, const Where &there) {
            const auto &options = m_model.instance.items[std::size_t(item)].options;
            const ClothPoint near = options[std::size_t(own.option)].places.nearest(
                {Length::ticks(std::int64_t(there.x)), Length::ticks(std::int64_t(there.y))});
            m_arrangement.put(item, {own.option, double(near.x.ticks()), double(near.y.ticks())});
            if (!m_arrangement.inRoom(item)) m_arrangement.lift(item);
        };
        go(a, p, q);
        go(b, q, p);
    }
    for (int item : {a, b})
        if (m_arrangement.at(item).option < 0)
            if (const auto where = m_arrangement.cheapest(item, farAway)) m_arrangement.put(item, *where);
}

/// Some neighbours are taken up and laid again in another order.
void Walker::relayNear() {
    const int n = m_arrangement.size();
    const Where centre = m_arrangement.at(m_random.below(n));
    std::vector<int> items(static_cast<std::size_t>(n));
    std::iota(items.begin(), items.end(), 0);
    std::stable_sort(items.begin(), items.end(), [&](int a, int b) {
        auto away = [&](int i) {
            const Where &w = m_arrangement.at(i);
            return std::max(std::abs(w.x - centre.x), std::abs(w.y - centre.y));
        };
        return away(a) < away(b);
    });
    items.resize(std::size_t(std::min(n, 2 + m_random.below(std::max(2, n / 4)))));
    for (int item : items) m_arrangement.lift(item);
    m_random.shuffle(items);
    for (int item : items)
        if (const auto where = m_arrangement.cheapest(item, farAway)) m_arrangement.put(item, *where);
}

} // namespace boltwright::planner
