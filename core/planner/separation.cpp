#include "core/planner/separation.h"

#include <algorithm>
#include <bit>
#include <limits>

namespace boltwright::planner {
namespace {

constexpr std::int64_t unitWeight = 256;
constexpr std::int64_t mostWeight = 1 << 24;
constexpr std::int64_t never = std::numeric_limits<std::int64_t>::max();

/// On a free axis, or one with very many columns, so many are tried at a time.
constexpr std::size_t mostColumns = 24;

/// Rounds without success before something is stirred up.
constexpr int mostRounds = 1000;

} // namespace

Separation::Separation(const RectangleTask &task, std::uint64_t seed)
    : m_task(task), m_random(seed), m_laid(task.items.size()), m_boxes(task.items.size()),
      m_weights(task.items.size() * task.items.size(), unitWeight), m_memberOption(task.options.size(), -1) {
    Area largest = 1;
    for (const RectangleItem &i : task.items) largest = std::max(largest, i.area);
    m_shift = std::max(0, int(std::bit_width(std::uint64_t(largest))) - 22);
    std::vector<std::size_t> members(task.instance().groups.size());
    for (std::size_t o = 0; o < task.options.size(); ++o) {
        const int group = task.items[std::size_t(task.options[o].item)].group;
        if (group >= 0) m_memberOption[o] = int(members[std::size_t(group)]++);
    }
    for (std::size_t n : members) {
        m_groupPlaces.emplace_back(n);
        m_groupPossible.emplace_back(n);
    }
}

Tick Separation::topOf(int sheet) const { return m_task.open() ? m_top : m_task.sheets[std::size_t(sheet)].y1; }

void Separation::start(const std::vector<Laid> &laid, Tick top) {
    m_top = top;
    m_begun = true;
    m_rounds = 0;
    m_laid = laid;
    std::fill(m_weights.begin(), m_weights.end(), unitWeight);
    for (std::size_t g = 0; g < m_groupPlaces.size(); ++g) {
        const auto &members = m_task.instance().groups[g].items;
        const auto lead =
            std::find_if(members.begin(), members.end(), [&](int i) { return m_laid[std::size_t(i)].option >= 0; });
        if (lead != members.end()) {
            const Laid &l = m_laid[std::size_t(*lead)];
            beginGroup(int(g), l.option, l.x, l.y);
        } else if (!members.empty()) {
            const int option = m_task.items[std::size_t(members.front())].firstOption;
            const RectangleOption &o = m_task.options[std::size_t(option)];
            const Tick x = o.places.xFirst;
            beginGroup(int(g), option, x, o.places.nextY(x, m_task.sheets[std::size_t(o.sheet)].y0));
        }
    }
    for (std::size_t i = 0; i < m_laid.size(); ++i) measure(int(i));
    for (std::size_t i = 0; i < m_laid.size(); ++i)
        if (isOut(int(i))) pushDown(int(i));
    m_queue.clear();
}

/// Lies nowhere yet, or sticks out over the ceiling.
bool Separation::isOut(int i) const {
    const Box &b = m_boxes[std::size_t(i)];
    return b.sheet < 0 || b.yEnd > topOf(b.sheet);
}

void Separation::pushDown(int i) {
    Choice best;
    const RectangleItem &item = m_task.items[std::size_t(i)];
    for (int o = item.firstOption; o < item.endOption; ++o)
        if (const Places *places = placesNow(o)) tryOption(i, o, *places, best);
    if (best.option >= 0) move(i, best);
}

bool Separation::step() {
    if (m_queue.empty()) {
        if (++m_rounds > mostRounds) stir();
        gather();
        if (m_queue.empty()) return true;
    }
    const int i = m_queue.back();
    m_queue.pop_back();
    Choice best;
    const RectangleItem &item = m_task.items[std::size_t(i)];
    if (item.group >= 0 && m_random.oneIn(8)) {
        changeGroup(item.group);
        return false;
    }
    // Where it lies sets the mark: most other places are given up as soon as they weigh more.
    if (!isOut(i))
        best = {m_laid[std::size_t(i)].option, m_laid[std::size_t(i)].x, m_laid[std::size_t(i)].y, costOf(i), 1};
    for (int o = item.firstOption; o < item.endOption; ++o)
        if (const Places *places = placesNow(o)) tryOption(i, o, *places, best);
    if (best.option >= 0) move(i, best);
    return false;
}

std::int64_t Separation::costOf(int i) const {
    std::int64_t cost = 0;
    for (std::size_t j = 0; j < m_boxes.size(); ++j)
        if (int(j) != i) cost += overlapOf(i, int(j)) * m_weights[std::size_t(i) * m_laid.size() + j];
    return cost;
}

/// A few items change places, and the weights are forgotten: what has not come apart for long will not.
void Separation::stir() {
    m_rounds = 0;
    std::fill(m_weights.begin(), m_weights.end(), unitWeight);
    const int n = int(m_laid.size());
    for (int k = 0; k < 2 + n / 10; ++k) {
        const int i = m_random.below(n);
        const Laid before = m_laid[std::size_t(i)];
        m_laid[std::size_t(i)].option = -1;
        measure(i);
        pushDown(i);
        if (m_laid[std::size_t(i)].option < 0) m_laid[std::size_t(i)] = before, measure(i);
    }
}

/// Ends a round: overlapping items are queued for the next, in a new order, and their overlaps weigh more.
void Separation::gather() {
    std::int64_t total = 0, largest = 0;
    const int n = int(m_laid.size());
    std::vector<char> overlapping(std::size_t(n), 0);
    for (int i = 0; i < n; ++i)
        for (int j = i + 1; j < n; ++j)
            if (const std::int64_t o = overlapOf(i, j)) {
                total += o;
                largest = std::max(largest, o);
                overlapping[std::size_t(i)] = overlapping[std::size_t(j)] = 1;
            }
    for (int i = 0; i < n; ++i)
        if (overlapping[std::size_t(i)] || isOut(i)) m_queue.push_back(i);
    m_random.shuffle(m_queue);
    if (total == 0) return;
    for (int i = 0; i < n; ++i)
        for (int j = i + 1; j < n; ++j) {
            const std::int64_t o = overlapOf(i, j);
            std::int64_t w = weight(i, j);
            if (o > 0)
                w = std::min(mostWeight, w + w / 5 + w * 4 / 5 * (o * 256 / largest) / 256);
            else
                w = std::max(unitWeight, w - w / 20);
            weight(i, j) = weight(j, i) = w;
        }
}

std::int64_t Separation::overlapOf(int i, int j) const {
    const Box &a = m_boxes[std::size_t(i)], &b = m_boxes[std::size_t(j)];
    if (a.sheet != b.sheet) return 0;
    const Tick across = std::min(a.xEnd, b.xEnd) - std::max(a.x, b.x),
               along = std::min(a.yEnd, b.yEnd) - std::max(a.y, b.y);
    return across > 0 && along > 0 ? overlap(across, along) : 0;
}

void Separation::tryOption(int i, int option, const Places &places, Choice &best) {
    const RectangleOption &o = m_task.options[std::size_t(option)];
    const RectangleSheet &s = m_task.sheets[std::size_t(o.sheet)];
    const Tick last = s.x1 - o.width;
    m_xs.clear();
    if (places.freeX()) {
        m_xs.push_back(s.x0);
        m_xs.push_back(last);
        auto add = [&](Tick x) {
            if (x > s.x0 && x < last) m_xs.push_back(x);
        };
        for (std::size_t j = 0; j < m_boxes.size(); ++j) {
            if (int(j) == i || m_boxes[j].sheet != o.sheet) continue;
            add(m_boxes[j].xEnd);
            add(m_boxes[j].x - o.width);
        }
        for (const auto *list : {&s.obstacles, &s.flaws})
            for (const Obstacle &b : *list) {
                add(b.x1);
                add(b.x0 - o.width);
            }
    } else {
        for (Tick x = places.xFirst; x <= last; x += places.xStep) m_xs.push_back(x);
    }
    if (m_xs.size() > mostColumns) {
        for (std::size_t k = 0; k < mostColumns; ++k)
            std::swap(m_xs[k], m_xs[k + std::size_t(m_random.below(int(m_xs.size() - k)))]);
        m_xs.resize(mostColumns);
    }
    for (const Tick x : m_xs) tryColumn(i, option, places, x, best);
}

void Separation::tryColumn(int i, int option, const Places &places, Tick x, Choice &best) {
    const RectangleOption &o = m_task.options[std::size_t(option)];
    const RectangleSheet &s = m_task.sheets[std::size_t(o.sheet)];
    const Tick xEnd = x + o.width, low = s.y0, high = topOf(o.sheet) - o.height;
    if (high < low) return;
    m_blockers.clear();
    const std::int64_t *weights = &m_weights[std::size_t(i) * m_laid.size()];
    for (std::size_t j = 0; j < m_boxes.size(); ++j) {
        const Box &b = m_boxes[j];
        const Tick across = std::min(xEnd, b.xEnd) - std::max(x, b.x);
        if (across > 0 && int(j) != i && b.sheet == o.sheet) m_blockers.push_back({b.y, b.yEnd, across, weights[j]});
    }
    auto block = [&](const std::vector<Obstacle> &list) {
        for (const Obstacle &b : list)
            if (x < b.x1 && xEnd > b.x0) m_blockers.push_back({b.y0, b.y1, 0, 0});
    };
    block(s.obstacles);
    if (!m_task.items[std::size_t(i)].hidden) block(s.flaws);
    auto tryRow = [&](Tick y) {
        std::int64_t cost = 0;
        const std::int64_t enough = best.option < 0 ? never : best.cost;
        for (const Blocker &b : m_blockers) {
            const Tick yEnd = y + o.height;
            if (b.y >= yEnd || b.yEnd <= y) continue;
            if (b.across == 0) return;
            cost += overlap(b.across, std::min(yEnd, b.yEnd) - std::max(y, b.y)) * b.weight;
            if (cost > enough) return;
        }
        if (cost == enough && m_random.below(++best.equals) != 0) return;
        if (cost < enough) best.equals = 1;
        best = {option, x, y, cost, best.equals};
    };
    if (!places.freeY()) {
        for (Tick y = places.nextY(x, low); y <= high; y = places.nextY(x, y + 1)) tryRow(y);
        return;
    }
    m_ys.clear();
    m_ys.push_back(low);
    m_ys.push_back(high);
    for (const Blocker &b : m_blockers) {
        if (b.yEnd > low && b.yEnd < high) m_ys.push_back(b.yEnd);
        if (b.y - o.height > low && b.y - o.height < high) m_ys.push_back(b.y - o.height);
    }
    for (const Tick y : m_ys) tryRow(y);
}

void Separation::move(int i, const Choice &to) {
    m_laid[std::size_t(i)] = {to.option, to.x, to.y};
    measure(i);
}

void Separation::measure(int i) {
    const Laid &l = m_laid[std::size_t(i)];
    if (l.option < 0) {
        m_boxes[std::size_t(i)] = {-1, 0, 0, 0, 0};
        return;
    }
    const RectangleOption &o = m_task.options[std::size_t(l.option)];
    m_boxes[std::size_t(i)] = {o.sheet, l.x, l.y, l.x + o.width, l.y + o.height};
}

Tick Separation::reached() const {
    Tick most = m_task.sheets.front().used;
    for (const Box &b : m_boxes)
        if (b.sheet == 0) most = std::max(most, b.yEnd);
    return most;
}

const Places *Separation::placesNow(int option) const {
    const RectangleOption &o = m_task.options[std::size_t(option)];
    const int group = m_task.items[std::size_t(o.item)].group;
    if (group < 0) return &o.places;
    const auto member = std::size_t(m_memberOption[std::size_t(option)]);
    return m_groupPossible[std::size_t(group)][member] ? &m_groupPlaces[std::size_t(group)][member] : nullptr;
}

void Separation::beginGroup(int group, int option, Tick x, Tick y) {
    const RectangleOption &first = m_task.options[std::size_t(option)];
    const Instance &instance = m_task.instance();
    const Sheet &sheet = instance.sheets[std::size_t(first.sheet)];
    const Option &laid = instance.items[std::size_t(first.item)].options[std::size_t(first.index)];
    std::optional<Vector> phase;
    if (sheet.lattice) phase = ClothPoint{Length::ticks(x), Length::ticks(y)} + laid.anchor - sheet.lattice->motif();
    for (int i : instance.groups[std::size_t(group)].items) {
        const RectangleItem &item = m_task.items[std::size_t(i)];
        for (int o = item.firstOption; o < item.endOption; ++o) {
            const RectangleOption &mine = m_task.options[std::size_t(o)];
            const auto member = std::size_t(m_memberOption[std::size_t(o)]);
            m_groupPossible[std::size_t(group)][member] = false;
            if (mine.turn != first.turn || instance.sheets[std::size_t(mine.sheet)].lot != sheet.lot) continue;
            const auto places =
                placesInGroup(instance, instance.items[std::size_t(i)].options[std::size_t(mine.index)], phase);
            if (!places) continue;
            m_groupPossible[std::size_t(group)][member] = true;
            m_groupPlaces[std::size_t(group)][member] = m_task.placesOf(*places, mine.sheet, mine.width);
        }
    }
}

/// Tries another phase for a whole group: one member goes where it would by its own wishes, the others follow.
void Separation::changeGroup(int group) {
    const auto &members = m_task.instance().groups[std::size_t(group)].items;
    const int lead = members[std::size_t(m_random.below(int(members.size())))];
    const RectangleItem &item = m_task.items[std::size_t(lead)];
    Choice best;
    for (int o = item.firstOption; o < item.endOption; ++o)
        tryOption(lead, o, m_task.options[std::size_t(o)].places, best);
    if (best.option < 0) return;
    const auto before = m_groupPossible[std::size_t(group)];
    const auto placesBefore = m_groupPlaces[std::size_t(group)];
    const auto laidBefore = m_laid;
    beginGroup(group, best.option, best.x, best.y);
    move(lead, best);
    for (int i : members) {
        if (i == lead) continue;
        Choice to;
        const RectangleItem &other = m_task.items[std::size_t(i)];
        for (int o = other.firstOption; o < other.endOption; ++o)
            if (const Places *places = placesNow(o)) tryOption(i, o, *places, to);
        if (to.option < 0) {
            m_groupPossible[std::size_t(group)] = before;
            m_groupPlaces[std::size_t(group)] = placesBefore;
            m_laid = laidBefore;
            for (int k : members) measure(k);
            return;
        }
        move(i, to);
    }
}

} // namespace boltwright::planner
