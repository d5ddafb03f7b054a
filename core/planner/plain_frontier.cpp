#include "core/planner/plain_frontier.h"

#include "core/planner/plain_walk.h"

#include <algorithm>
#include <bit>
#include <limits>
#include <numeric>
#include <tuple>

namespace boltwright::planner {
namespace {

constexpr Tick wall = std::numeric_limits<Tick>::max() / 2;
constexpr std::size_t firstWidth = 48, mostWidth = 32768;
constexpr int nodesAStep = 4;

/// Sums are counted where the sheet is no more units than this across or up.
constexpr Tick mostUnits = 2048;

} // namespace

void PlainFrontier::Sums::setUp(Tick unit, Tick most) {
    m_unit = std::max<Tick>(1, unit);
    m_words.clear();
    if (most / m_unit <= mostUnits) m_words.resize(std::size_t(most / m_unit) / 64 + 1);
}

void PlainFrontier::Sums::begin() {
    if (m_words.empty()) return;
    std::fill(m_words.begin(), m_words.end(), 0);
    m_words[0] = 1;
}

void PlainFrontier::Sums::add(Tick size) {
    const std::size_t units = std::size_t(size / m_unit), by = units / 64, bits = units % 64;
    for (std::size_t i = m_words.size(); i-- > by;) {
        std::uint64_t word = m_words[i - by] << bits;
        if (bits && i > by) word |= m_words[i - by - 1] >> (64 - bits);
        m_words[i] |= word;
    }
}

Tick PlainFrontier::Sums::best(Tick room) const {
    if (m_words.empty()) return room;
    const std::size_t units = std::size_t(room / m_unit);
    std::size_t at = units / 64;
    if (at >= m_words.size()) return room;
    std::uint64_t word = m_words[at] & (~std::uint64_t(0) >> (63 - units % 64));
    while (!word) word = m_words[--at]; // nothing at all is a sum
    return Tick(at * 64 + std::size_t(63 - std::countl_zero(word))) * m_unit;
}

PlainFrontier::PlainFrontier(const RectangleTask &task, std::uint64_t seed, int number)
    : m_task(task), m_random(seed * 104729 + std::uint64_t(number)), m_number(number), m_x0(task.sheets[0].x0),
      m_y0(task.sheets[0].y0), m_x1(task.sheets[0].x1), m_byArea(task.options.size()), m_twin(task.items.size(), -1),
      m_leastWidth(task.items.size(), wall), m_leastHeight(task.items.size(), wall), m_laid(task.items.size()) {
    auto sizes = [&](int i) {
        std::vector<std::pair<Tick, Tick>> all;
        for (int o = task.items[std::size_t(i)].firstOption; o < task.items[std::size_t(i)].endOption; ++o)
            all.emplace_back(task.options[std::size_t(o)].width, task.options[std::size_t(o)].height);
        return all;
    };
    for (int i = 0; i < int(task.items.size()); ++i)
        for (int j = i; j-- > 0 && m_twin[std::size_t(i)] < 0;)
            if (sizes(i) == sizes(j)) m_twin[std::size_t(i)] = j;
    std::iota(m_byArea.begin(), m_byArea.end(), 0);
    auto area = [&](int o) { return task.items[std::size_t(task.options[std::size_t(o)].item)].area; };
    std::stable_sort(m_byArea.begin(), m_byArea.end(), [&](int a, int b) { return area(a) > area(b); });
    for (const RectangleOption &o : task.options) {
        const auto i = std::size_t(o.item);
        m_leastWidth[i] = std::min(m_leastWidth[i], o.width);
        m_leastHeight[i] = std::min(m_leastHeight[i], o.height);
    }
}

bool PlainFrontier::applies(const RectangleTask &task) {
    return task.open() && isPlain(task) && task.items.size() > 1 && task.items.size() <= mostItems;
}

void PlainFrontier::aim(Tick top) {
    // Under a ceiling that had to be raised, what was too narrow before would be so again.
    m_width = m_begun && top >= m_top ? std::max(firstWidth, m_width / 2) : std::max(firstWidth, m_width / 8);
    m_top = top;
    m_begun = true;
    m_runs = 0;
    m_spare = Area(m_x1 - m_x0) * (m_top - m_y0) - m_task.itemArea();
    Tick across = 0, along = 0;
    for (const RectangleOption &o : m_task.options) {
        across = std::gcd(across, o.width);
        along = std::gcd(along, o.height);
    }
    m_widths.setUp(across, m_x1 - m_x0);
    m_heights.setUp(along, std::max<Tick>(0, m_top - m_y0));
    restart();
}

void PlainFrontier::restart() {
    if (m_runs++ > 0) m_width = std::min(m_width * 2, mostWidth);
    m_level.clear();
    m_links.clear();
    m_children.clear();
    m_at = 0;
    m_pool.assign(1, {m_x0, m_x1, m_y0});
    Node node;
    node.steps = 1;
    m_level.push_back(node);
    m_links.push_back({{-1, {}}});
}

bool PlainFrontier::step() {
    if (m_spare < 0) return false; // not even the area is there
    for (int k = 0; k < nodesAStep && m_at < m_level.size(); ++k) expand(m_at++);
    if (m_children.size() > m_width * 12) keepBest(m_width * 3);
    if (m_at < m_level.size()) return false;
    if (nextLevel()) return true;
    if (m_level.empty()) restart();
    return false;
}

/// What the look ahead asks for of the items left.
void PlainFrontier::countLeft(const Node &node) {
    m_widths.begin();
    m_heights.begin();
    m_narrowest = m_lowestItem = wall;
    for (std::size_t i = 0; i < m_task.items.size(); ++i) {
        if (node.mask.has(int(i))) continue;
        m_narrowest = std::min(m_narrowest, m_leastWidth[i]);
        m_lowestItem = std::min(m_lowestItem, m_leastHeight[i]);
        const RectangleItem &item = m_task.items[i];
        for (int o = item.firstOption; o < item.endOption; ++o) {
            m_widths.add(m_task.options[std::size_t(o)].width);
            m_heights.add(m_task.options[std::size_t(o)].height);
        }
    }
}

/// All that a part layout could become by one item more in its lowest gap, or where none fits there, in the next one.
void PlainFrontier::expand(std::size_t at) {
    const Node &node = m_level[at];
    const auto first = m_pool.begin() + node.firstStep;
    m_steps.assign(first, first + node.steps);
    m_waste = node.waste;
    countLeft(node);
    for (;;) {
        const std::size_t low = lowestOf(m_steps);
        if (m_steps[low].y >= m_top) return;
        if (m_narrowest <= m_steps[low].end - m_steps[low].x && offer(node, at, low, m_waste)) return;
        if (!raiseLowest() || m_waste > m_spare) return;
    }
}

bool PlainFrontier::offer(const Node &node, std::size_t at, std::size_t low, Area waste) {
    const Step step = m_steps[low];
    const Tick room = step.end - step.x, height = m_top - step.y;
    const Tick left = low > 0 ? m_steps[low - 1].y : wall;
    const Tick right = low + 1 < m_steps.size() ? m_steps[low + 1].y : wall;
    bool any = false;
    for (int o : m_byArea) {
        const RectangleOption &option = m_task.options[std::size_t(o)];
        const Tick w = option.width, h = option.height;
        if (w > room || h > height || node.mask.has(option.item)) continue;
        const int twin = m_twin[std::size_t(option.item)];
        if (twin >= 0 && !node.mask.has(twin)) continue;
        any = true;
        const Tick up = step.y + h, rest = room - w, above = height - h;
        const bool atRight = up != left && (up == right || right > left);
        Area wasted = waste;
        if (rest > 0) {
            const Tick beside = std::min(up, atRight ? left : right) - step.y;
            const Tick lost = rest < m_narrowest ? rest : rest - m_widths.best(rest);
            wasted += Area(lost) * (rest < m_narrowest ? beside : std::min(beside, m_lowestItem));
        }
        wasted += Area(w) * (above < m_lowestItem ? above : above - m_heights.best(above));
        if (wasted > m_spare) continue;
        // By turns waste weighed against what is laid, or set off against it; a little chance, so that no two runs are
        // alike.
        const double placed = double(node.placed + m_task.items[std::size_t(option.item)].area);
        const double all = double(m_task.itemArea()), share = placed / all;
        const double noise = m_random.share();
        const double guide = (m_runs + m_number) % 2 == 0
                                 ? double(wasted) / double(std::max<Area>(1, m_spare)) - share + 0.002 * noise
                                 : (double(wasted) / all + 1e-6) / share * (1 + 0.02 * noise) - 1e-7 * share;
        m_children.push_back({guide, std::int32_t(at), {o, atRight ? step.end - w : step.x, step.y}, waste});
    }
    return any;
}

/// Gives the lowest gap up to where its lower wall ends. False when there is nothing to gain.
bool PlainFrontier::raiseLowest() {
    const std::size_t low = lowestOf(m_steps);
    Step &step = m_steps[low];
    Tick level = m_top;
    if (low > 0) level = std::min(level, m_steps[low - 1].y);
    if (low + 1 < m_steps.size()) level = std::min(level, m_steps[low + 1].y);
    if (level <= step.y) return false;
    m_waste += Area(step.end - step.x) * (level - step.y);
    step.y = level;
    joinAt(m_steps, low);
    return true;
}

/// The best come first; among equals those that were offered first.
void PlainFrontier::keepBest(std::size_t count) {
    const auto better = [](const Child &a, const Child &b) {
        return std::tie(a.guide, a.parent, a.last.option) < std::tie(b.guide, b.parent, b.last.option);
    };
    if (m_children.size() > count) {
        std::nth_element(m_children.begin(), m_children.begin() + std::ptrdiff_t(count), m_children.end(), better);
        m_children.resize(count);
    }
    std::sort(m_children.begin(), m_children.end(), better);
}

bool PlainFrontier::nextLevel() {
    keepBest(m_width * 3);
    m_nextLevel.clear();
    m_nextPool.clear();
    m_known.clear();
    std::vector<Link> links;
    for (const Child &child : m_children) {
        if (m_nextLevel.size() >= m_width) break;
        Node node;
        if (!grow(child, node)) continue;
        links.push_back({child.parent, child.last});
        m_nextLevel.push_back(node);
        if (m_links.size() == m_task.items.size()) {
            m_links.push_back(std::move(links));
            read(node);
            m_level.clear(); // the next step begins anew
            return true;
        }
    }
    m_children.clear();
    std::swap(m_level, m_nextLevel);
    std::swap(m_pool, m_nextPool);
    m_links.push_back(std::move(links));
    m_at = 0;
    return false;
}

/// False when the same was there before.
bool PlainFrontier::grow(const Child &child, Node &node) {
    const Node &parent = m_level[std::size_t(child.parent)];
    const RectangleOption &option = m_task.options[std::size_t(child.last.option)];
    const auto first = m_pool.begin() + parent.firstStep;
    m_steps.assign(first, first + parent.steps);
    // What was given up on the way to this gap.
    const auto isThere = [&](const Step &s) {
        return s.y == child.last.y && s.x <= child.last.x && child.last.x < s.end;
    };
    while (!isThere(m_steps[lowestOf(m_steps)]))
        if (!raiseLowest()) return false;
    std::size_t low = lowestOf(m_steps);
    const Step step = m_steps[low], laid{child.last.x, child.last.x + option.width, child.last.y + option.height};
    m_steps[low] = laid;
    if (laid.end < step.end) m_steps.insert(m_steps.begin() + std::ptrdiff_t(low) + 1, {laid.end, step.end, step.y});
    if (step.x < laid.x) {
        m_steps.insert(m_steps.begin() + std::ptrdiff_t(low), {step.x, laid.x, step.y});
        ++low;
    }
    joinAt(m_steps, low);
    node.parent = child.parent;
    node.last = child.last;
    node.waste = child.given;
    node.placed = parent.placed + m_task.items[std::size_t(option.item)].area;
    node.mask = parent.mask;
    node.mask.add(option.item);
    if (!m_known.insert(hashOf(node)).second) return false;
    node.firstStep = std::int32_t(m_nextPool.size());
    node.steps = std::int32_t(m_steps.size());
    m_nextPool.insert(m_nextPool.end(), m_steps.begin(), m_steps.end());
    return true;
}

std::uint64_t PlainFrontier::hashOf(const Node &node) const {
    std::uint64_t hash = 0;
    auto mix = [&](std::uint64_t value) {
        hash = (hash ^ value) * 0x9e3779b97f4a7c15u;
        hash ^= hash >> 29;
    };
    for (const Step &s : m_steps) mix(std::uint64_t(std::uint32_t(s.x)) << 32 | std::uint32_t(s.y));
    for (std::uint64_t word : node.mask.words) mix(word);
    return hash;
}

void PlainFrontier::read(const Node &node) {
    m_reached = m_y0;
    Laid last = node.last;
    std::int32_t parent = node.parent;
    for (std::size_t level = m_links.size() - 1; level > 0; --level) {
        const RectangleOption &option = m_task.options[std::size_t(last.option)];
        m_laid[std::size_t(option.item)] = last;
        m_reached = std::max(m_reached, last.y + option.height);
        const Link &link = m_links[level - 1][std::size_t(parent)];
        parent = link.parent;
        last = link.last;
    }
}

} // namespace boltwright::planner
