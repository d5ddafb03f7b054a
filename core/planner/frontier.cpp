#include "core/planner/frontier.h"

#include <algorithm>
#include <bit>
#include <limits>
#include <numeric>
#include <tuple>

namespace boltwright::planner {
namespace {

constexpr Tick wall = std::numeric_limits<Tick>::max();
constexpr std::size_t firstWidth = 32, mostWidth = 16384;
constexpr int nodesAStep = 4;

/// Of many columns the outer ones of a step.
constexpr Tick mostColumns = 8;

Obstacle swapped(Obstacle o) { return {o.y0, o.x0, o.y1, o.x1}; }

/// One axis turned end for end: what lay at `at` and was `size` long.
Tick turnedEnd(Tick low, Tick high, Tick at, Tick size) { return low + high - at - size; }

bool mayBeSwapped(const RectangleTask &task) {
    return !task.open() && std::all_of(task.options.begin(), task.options.end(), [](const RectangleOption &o) {
        return o.places.columnY0.empty() && o.places.yDivide == 1;
    });
}

void swapAxes(RectangleTask &task) {
    for (RectangleSheet &s : task.sheets) {
        std::swap(s.x0, s.y0);
        std::swap(s.x1, s.y1);
        for (auto *list : {&s.obstacles, &s.flaws})
            for (Obstacle &o : *list) o = swapped(o);
    }
    for (RectangleOption &o : task.options) {
        std::swap(o.width, o.height);
        std::swap(o.places.xStep, o.places.yStep);
        std::swap(o.places.xFirst, o.places.y0);
        const RectangleSheet &s = task.sheets[std::size_t(o.sheet)];
        if (o.places.xStep == 0) continue;
        o.places.xFirst = s.x0 + (o.places.xFirst - s.x0) % o.places.xStep;
        if (o.places.xFirst < s.x0) o.places.xFirst += o.places.xStep;
    }
}

void turnAcross(RectangleTask &task) {
    for (RectangleOption &o : task.options) {
        const RectangleSheet &s = task.sheets[std::size_t(o.sheet)];
        Places &p = o.places;
        if (p.freeX()) continue;
        const Tick columns = (s.x1 - o.width - p.xFirst) / p.xStep;
        if (s.x1 - o.width >= p.xFirst) p.xFirst = turnedEnd(s.x0, s.x1, p.xFirst + columns * p.xStep, o.width);
        std::reverse(p.columnY0.begin(), p.columnY0.end());
    }
    for (RectangleSheet &s : task.sheets)
        for (auto *list : {&s.obstacles, &s.flaws})
            for (Obstacle &o : *list) o = {turnedEnd(s.x0, s.x1, o.x1, 0), o.y0, turnedEnd(s.x0, s.x1, o.x0, 0), o.y1};
}

void turnAlong(RectangleTask &task) {
    for (RectangleOption &o : task.options) {
        const RectangleSheet &s = task.sheets[std::size_t(o.sheet)];
        o.places.y0 = turnedEnd(s.y0, s.y1, o.places.y0, o.height);
        for (Tick &y : o.places.columnY0) y = turnedEnd(s.y0, s.y1, y, o.height);
    }
    for (RectangleSheet &s : task.sheets)
        for (auto *list : {&s.obstacles, &s.flaws})
            for (Obstacle &o : *list) o = {o.x0, turnedEnd(s.y0, s.y1, o.y1, 0), o.x1, turnedEnd(s.y0, s.y1, o.y0, 0)};
}

} // namespace

std::optional<RectangleTask> seen(const RectangleTask &task, Seen as) {
    if ((as.swapped && !mayBeSwapped(task)) || (as.fromTop && task.open())) return std::nullopt;
    const auto whole = [](const RectangleOption &o) { return o.places.yDivide == 1; };
    if (as.fromTop && !std::all_of(task.options.begin(), task.options.end(), whole)) return std::nullopt;
    RectangleTask other = task;
    if (as.swapped) swapAxes(other);
    if (as.fromRight) turnAcross(other);
    if (as.fromTop) turnAlong(other);
    return other;
}

/// Where something seen so lies in truth.
Laid Frontier::unseen(Laid laid) const {
    const RectangleOption &o = m_task.options[std::size_t(laid.option)];
    const RectangleSheet &s = m_task.sheets[std::size_t(o.sheet)];
    if (m_seen.fromTop) laid.y = turnedEnd(s.y0, s.y1, laid.y, o.height);
    if (m_seen.fromRight) laid.x = turnedEnd(s.x0, s.x1, laid.x, o.width);
    if (m_seen.swapped) std::swap(laid.x, laid.y);
    return laid;
}

Frontier::Frontier(const RectangleTask &task, std::uint64_t seed, int number)
    : m_whole(task), m_task(task), m_random(seed * 7919 + std::uint64_t(number)), m_number(number),
      m_sheets(task.sheets.size()), m_twin(task.items.size(), -1), m_worths(task.items.size()),
      m_worthOf(task.items.size()), m_laid(task.items.size()) {
    std::iota(m_sheets.begin(), m_sheets.end(), 0);
    const auto &items = task.instance().items;
    for (std::size_t i = 0; i < items.size(); ++i)
        for (std::size_t j = i; j-- > 0 && m_twin[i] < 0;)
            if (items[j].kind == items[i].kind && items[i].group < 0 && items[j].group < 0) m_twin[i] = int(j);
    m_shift = std::max(0, int(std::bit_width(std::uint64_t(std::max<Area>(1, task.itemArea())))) - 22);
    prepare();
}

/// Looks at the task from another side, where it can be told so.
void Frontier::look(Seen as) {
    if (as == m_seen) return;
    auto other = seen(m_whole, as);
    if (!other) return;
    m_task = std::move(*other);
    m_seen = as;
    prepare();
}

/// What the task says, in the form that is asked for most.
void Frontier::prepare() {
    m_leastWidth.assign(m_task.items.size(), wall);
    m_leastHeight.assign(m_task.items.size(), wall);
    for (const RectangleOption &o : m_task.options) {
        Tick &width = m_leastWidth[std::size_t(o.item)], &height = m_leastHeight[std::size_t(o.item)];
        width = std::min(width, o.width);
        height = std::min(height, o.height);
    }
    m_byWidth.resize(m_task.items.size());
    std::iota(m_byWidth.begin(), m_byWidth.end(), 0);
    std::stable_sort(m_byWidth.begin(), m_byWidth.end(),
                     [&](int a, int b) { return m_leastWidth[std::size_t(a)] < m_leastWidth[std::size_t(b)]; });
    m_obstacles.clear();
    for (const RectangleSheet &s : m_task.sheets) {
        m_obstacles.push_back(s.obstacles);
        m_obstacles.back().insert(m_obstacles.back().end(), s.flaws.begin(), s.flaws.end());
    }
}

bool Frontier::applies(const RectangleTask &task) {
    return !task.items.empty() && task.items.size() <= mostItems &&
           std::all_of(task.items.begin(), task.items.end(), [](const RectangleItem &i) { return i.group < 0; });
}

Tick Frontier::topOf(int sheet) const { return m_task.open() ? m_top : m_task.sheets[std::size_t(sheet)].y1; }

void Frontier::aim(Tick top) {
    // Under a ceiling that had to be raised, what was too narrow before would be so again.
    m_width = m_begun && top >= m_top ? std::max(firstWidth, m_width / 2) : firstWidth;
    m_top = top;
    m_begun = true;
    m_runs = 0;
    m_spare = -m_task.itemArea();
    for (std::size_t s = 0; s < m_task.sheets.size(); ++s) {
        const RectangleSheet &sheet = m_task.sheets[s];
        m_spare += Area(sheet.x1 - sheet.x0) * (topOf(int(s)) - sheet.y0) -
                   blockedArea(int(s), sheet.x0, sheet.x1, sheet.y0, topOf(int(s)));
    }
    restart();
}

void Frontier::restart() {
    // By turns from the side that served best where it was tried, and from the others; each pair of turns wider.
    const int turn = m_number + m_runs;
    look({turn % 2 == 1, turn / 2 % 2 == 1, turn / 4 % 2 == 1});
    if (m_runs > 0 && m_runs % 2 == 0) m_width = std::min(m_width * 2, mostWidth);
    if (m_sheets.size() > 1 && m_runs > 0) m_random.shuffle(m_sheets);
    ++m_runs;
    m_worths.learn(m_random);
    for (std::size_t i = 0; i < m_worthOf.size(); ++i) m_worthOf[i] = Area(m_worths.of(int(i), m_whole.items[i].area));
    m_level.clear();
    m_links.clear();
    m_children.clear();
    m_at = 0;
    Node node;
    enter(0);
    m_pool = m_steps;
    node.steps = std::int32_t(m_steps.size());
    m_level.push_back(node);
    m_links.push_back({{-1, {}}});
}

void Frontier::enter(int sheet) {
    m_sheet = sheet;
    const RectangleSheet &s = m_task.sheets[std::size_t(m_sheets[std::size_t(sheet)])];
    m_steps.assign(1, {s.x0, s.x1, s.y0});
}

bool Frontier::step() {
    for (int k = 0; k < nodesAStep && m_at < m_level.size(); ++k) expand(m_level[m_at++]);
    if (m_children.size() > m_width * 12) keepBest(m_width * 3);
    if (m_at < m_level.size()) return false;
    if (nextLevel()) return true;
    if (m_level.empty()) restart();
    return false;
}

/// All that the node could become by one item more in its lowest step, or where none fits there, in the next one up.
void Frontier::expand(const Node &node) {
    const auto first = m_pool.begin() + node.firstStep;
    m_steps.assign(first, first + node.steps);
    m_sheet = node.sheet;
    m_waste = node.waste;
    for (;;) {
        swallow();
        const std::size_t low = lowestOf(m_steps);
        const Step step = m_steps[low];
        const Tick top = topOf(m_sheets[std::size_t(m_sheet)]);
        if (step.y >= top) {
            if (std::size_t(m_sheet) + 1 == m_sheets.size()) return;
            enter(m_sheet + 1);
            continue;
        }
        const Tick left = low > 0 ? m_steps[low - 1].y : wall;
        const Tick right = low + 1 < m_steps.size() ? m_steps[low + 1].y : wall;
        if (offer(node, step, left, right, m_waste)) return;
        if (!raiseLowest() || m_waste > m_spare) return;
    }
}

/// Steps that stand at the foot of an obstacle, or in it, go on above it.
void Frontier::swallow() {
    for (bool again = true; again;) {
        again = false;
        for (std::size_t i = 0; i < m_steps.size() && !again; ++i) {
            const Step step = m_steps[i];
            for (const Obstacle &b : m_obstacles[std::size_t(m_sheets[std::size_t(m_sheet)])]) {
                const Tick x = std::max(b.x0, step.x), end = std::min(b.x1, step.end);
                if (x >= end || b.y0 > step.y || b.y1 <= step.y) continue;
                m_steps[i] = {x, end, b.y1};
                if (end < step.end) m_steps.insert(m_steps.begin() + std::ptrdiff_t(i) + 1, {end, step.end, step.y});
                if (step.x < x) m_steps.insert(m_steps.begin() + std::ptrdiff_t(i), {step.x, x, step.y});
                joinAt(m_steps, i + (step.x < x));
                again = true;
                break;
            }
        }
    }
}

/// Gives up the lowest step: up to its lower neighbour, or to the next obstacle above it.
bool Frontier::raiseLowest() {
    const int sheet = m_sheets[std::size_t(m_sheet)];
    const std::size_t low = lowestOf(m_steps);
    Step &step = m_steps[low];
    Tick level = topOf(sheet);
    if (low > 0) level = std::min(level, m_steps[low - 1].y);
    if (low + 1 < m_steps.size()) level = std::min(level, m_steps[low + 1].y);
    for (const Obstacle &b : m_obstacles[std::size_t(sheet)])
        if (b.x0 < step.end && b.x1 > step.x) {
            if (b.y0 > step.y) level = std::min(level, b.y0);
            if (b.y1 > step.y) level = std::min(level, b.y1);
        }
    if (level <= step.y) return false;
    m_waste += Area(step.end - step.x) * (level - step.y);
    step.y = level;
    joinAt(m_steps, low);
    return true;
}

Tick Frontier::narrowestLeft(const Node &node) const {
    for (int i : m_byWidth)
        if (!node.mask.has(i)) return m_leastWidth[std::size_t(i)];
    return wall;
}

bool Frontier::offer(const Node &node, const Step &step, Tick left, Tick right, Area waste) {
    const std::size_t before = m_children.size();
    const int sheet = m_sheets[std::size_t(m_sheet)];
    const Tick top = topOf(sheet), room = step.end - step.x;
    const Tick narrowest = narrowestLeft(node);
    if (narrowest > room) return false;
    const std::size_t parent = std::size_t(&node - m_level.data());
    for (std::size_t i = 0; i < m_task.items.size(); ++i) {
        if (node.mask.has(int(i)) || (m_twin[i] >= 0 && !node.mask.has(m_twin[i]))) continue;
        const RectangleItem &item = m_task.items[i];
        for (int o = item.firstOption; o < item.endOption; ++o) {
            const RectangleOption &option = m_task.options[std::size_t(o)];
            if (option.sheet != sheet || option.width > room || option.height > top - step.y) continue;
            const Tick last = step.end - option.width;
            auto look = [&](Tick x) { offerAt(o, x, step, left, right, waste, narrowest); };
            if (!option.places.freeX()) {
                Tick x = step.x + (option.places.xFirst - step.x) % option.places.xStep;
                if (x < step.x) x += option.places.xStep;
                const Tick columns = x > last ? 0 : (last - x) / option.places.xStep + 1;
                for (Tick k = 0; k < columns; ++k) {
                    if (k == mostColumns / 2 && columns > mostColumns) k = columns - mostColumns / 2;
                    look(x + k * option.places.xStep);
                }
                continue;
            }
            look(step.x);
            if (last != step.x) look(last);
            for (const Obstacle &b : m_obstacles[std::size_t(sheet)]) {
                if (b.y1 <= step.y || b.x1 <= step.x || b.x0 >= step.end || b.y0 >= step.y + option.height) continue;
                if (b.x1 > step.x && b.x1 < last) look(b.x1);
                if (b.x0 - option.width > step.x && b.x0 - option.width < last) look(b.x0 - option.width);
            }
        }
    }
    for (std::size_t c = before; c < m_children.size(); ++c) {
        Child &child = m_children[c];
        child.parent = std::int32_t(parent);
        const auto item = std::size_t(m_task.options[std::size_t(child.last.option)].item);
        child.guide = guideOf(child.waste, node.worth + m_worthOf[item], int(m_links.size()));
    }
    return m_children.size() > before;
}

void Frontier::offerAt(int o, Tick x, const Step &step, Tick left, Tick right, Area waste, Tick narrowest) {
    const RectangleOption &option = m_task.options[std::size_t(o)];
    const int sheet = option.sheet;
    const Tick y = option.places.nextY(x, step.y), up = y + option.height;
    if (up > topOf(sheet) || !free(o, x, y)) return;
    const Tick leftGap = x - step.x, rightGap = step.end - x - option.width;
    if (y > step.y) waste += Area(y - step.y) * option.width - blockedArea(sheet, x, x + option.width, step.y, y);
    if (leftGap > 0 && leftGap < narrowest) waste += Area(leftGap) * (std::min(up, left) - step.y);
    if (rightGap > 0 && rightGap < narrowest) waste += Area(rightGap) * (std::min(up, right) - step.y);
    if (waste > m_spare) return;
    m_children.push_back({0, 0, {o, x, y}, m_sheet, m_waste, waste});
}

/// Waste by the mean worth of what is laid; a little waste is always taken for granted, so that the large go first.
std::int64_t Frontier::guideOf(Area waste, Area worth, int count) {
    const std::int64_t w = waste >> m_shift, p = std::max<Area>(1, worth >> m_shift);
    const std::int64_t granted = (p + w) >> ((m_number + m_runs) % 4 < 2 ? 5 : 3);
    const std::int64_t guide = ((w + granted) << 20) / (p + w) * count * 1024 / p;
    return guide + guide / 16 * m_random.below(256) / 256;
}

bool Frontier::free(int o, Tick x, Tick y) const {
    const RectangleOption &option = m_task.options[std::size_t(o)];
    const RectangleSheet &s = m_task.sheets[std::size_t(option.sheet)];
    auto clear = [&](const Obstacle &b) { return !b.blocks(x, y, option.width, option.height); };
    return std::all_of(s.obstacles.begin(), s.obstacles.end(), clear) &&
           (m_task.items[std::size_t(option.item)].hidden || std::all_of(s.flaws.begin(), s.flaws.end(), clear));
}

Area Frontier::blockedArea(int sheet, Tick x, Tick end, Tick y, Tick yEnd) const {
    Area sum = 0;
    for (const Obstacle &b : m_obstacles[std::size_t(sheet)]) {
        const Tick across = std::min(end, b.x1) - std::max(x, b.x0), along = std::min(yEnd, b.y1) - std::max(y, b.y0);
        if (across > 0 && along > 0) sum += Area(across) * along;
    }
    return sum;
}

bool Frontier::better(const Child &a, const Child &b) {
    return std::tie(a.guide, a.parent, a.last.option, a.last.x, a.last.y) <
           std::tie(b.guide, b.parent, b.last.option, b.last.x, b.last.y);
}

void Frontier::keepBest(std::size_t count) {
    if (m_children.size() <= count) return;
    std::nth_element(m_children.begin(), m_children.begin() + std::ptrdiff_t(count), m_children.end(), better);
    m_children.resize(count);
}

/// The best children become the next level. True when they hold everything.
bool Frontier::nextLevel() {
    keepBest(m_width * 3);
    std::sort(m_children.begin(), m_children.end(), better);
    m_nextLevel.clear();
    m_nextPool.clear();
    m_known.clear();
    const bool last = m_links.size() == m_task.items.size();
    for (std::size_t c = 0; c < m_children.size() && m_nextLevel.size() < m_width; ++c) {
        Node node;
        if (last) {
            node.parent = m_children[c].parent;
            node.last = m_children[c].last;
            read(node);
            return true;
        }
        if (!grow(m_children[c], node)) continue;
        node.firstStep = std::int32_t(m_nextPool.size());
        node.steps = std::int32_t(m_steps.size());
        if (!m_known.insert(hashOf(node)).second) continue;
        m_worths.note(node.placed, [&node](int i) { return !node.mask.has(i); });
        m_nextPool.insert(m_nextPool.end(), m_steps.begin(), m_steps.end());
        m_nextLevel.push_back(node);
    }
    m_children.clear();
    m_at = 0;
    std::swap(m_level, m_nextLevel);
    std::swap(m_pool, m_nextPool);
    std::vector<Link> links;
    for (const Node &n : m_level) links.push_back({n.parent, n.last});
    m_links.push_back(std::move(links));
    return false;
}

/// The part layout that a child stands for, with what can be given up at once given up. False: it leads nowhere.
bool Frontier::grow(const Child &child, Node &node) {
    const Node &parent = m_level[std::size_t(child.parent)];
    const RectangleOption &option = m_task.options[std::size_t(child.last.option)];
    node = parent;
    node.parent = child.parent;
    node.last = child.last;
    node.mask.add(option.item);
    node.placed += m_task.items[std::size_t(option.item)].area;
    node.worth += m_worthOf[std::size_t(option.item)];
    if (parent.sheet == child.sheet) {
        const auto first = m_pool.begin() + parent.firstStep;
        m_steps.assign(first, first + parent.steps);
        m_sheet = parent.sheet;
    } else {
        enter(child.sheet);
    }
    for (;;) {
        swallow();
        const Step &low = m_steps[lowestOf(m_steps)];
        if (low.x <= child.last.x && low.end >= child.last.x + option.width && low.y <= child.last.y) break;
        if (!raiseLowest()) return false;
    }
    m_waste = child.given;
    const std::size_t low = lowestOf(m_steps);
    const Step step = m_steps[low];
    const Step laid{child.last.x, child.last.x + option.width, child.last.y + option.height};
    if (child.last.y > step.y)
        m_waste += Area(child.last.y - step.y) * option.width -
                   blockedArea(option.sheet, laid.x, laid.end, step.y, child.last.y);
    m_steps[low] = laid;
    if (laid.end < step.end) m_steps.insert(m_steps.begin() + std::ptrdiff_t(low) + 1, {laid.end, step.end, step.y});
    if (step.x < laid.x) m_steps.insert(m_steps.begin() + std::ptrdiff_t(low), {step.x, laid.x, step.y});
    joinAt(m_steps, low + (step.x < laid.x));
    const Tick top = topOf(option.sheet);
    for (;;) {
        swallow();
        const Step lowestStep = m_steps[lowestOf(m_steps)];
        if (lowestStep.y >= top || somethingFits(node, lowestStep)) break;
        if (!raiseLowest()) break;
        if (m_waste > m_spare) return false;
    }
    node.sheet = m_sheet;
    node.waste = m_waste;
    return m_waste <= m_spare && (m_sheets.size() > 1 || allHavePlace(node));
}

bool Frontier::somethingFits(const Node &node, const Step &step) const {
    const Tick room = step.end - step.x, height = topOf(m_sheets[std::size_t(m_sheet)]) - step.y;
    for (int i : m_byWidth) {
        if (m_leastWidth[std::size_t(i)] > room) return false;
        if (!node.mask.has(i) && m_leastHeight[std::size_t(i)] <= height) return true;
    }
    return false;
}

/// Whether above the skyline there is height enough for each item left, somewhere.
bool Frontier::allHavePlace(const Node &node) const {
    const Tick top = topOf(m_sheets[std::size_t(m_sheet)]);
    auto hasPlace = [&](const RectangleOption &o) {
        for (std::size_t i = 0; i < m_steps.size(); ++i) {
            if (m_steps[i].y + o.height > top) continue;
            std::size_t j = i;
            while (j + 1 < m_steps.size() && m_steps[j + 1].y + o.height <= top) ++j;
            if (m_steps[j].end - m_steps[i].x >= o.width) return true;
            i = j;
        }
        return false;
    };
    for (std::size_t i = 0; i < m_task.items.size(); ++i) {
        if (node.mask.has(int(i))) continue;
        bool any = false;
        for (int o = m_task.items[i].firstOption; o < m_task.items[i].endOption && !any; ++o)
            any = hasPlace(m_task.options[std::size_t(o)]);
        if (!any) return false;
    }
    return true;
}

std::uint64_t Frontier::hashOf(const Node &node) const {
    std::uint64_t h = std::uint64_t(node.sheet);
    auto put = [&h](std::uint64_t v) {
        h = (h ^ v) * 0x9e3779b97f4a7c15u;
        h ^= h >> 29;
    };
    for (std::uint64_t w : node.mask.words) put(w);
    for (const Step &s : m_steps) put(std::uint64_t(std::uint32_t(s.x)) << 32 | std::uint32_t(s.y));
    return h;
}

void Frontier::read(const Node &node) {
    std::fill(m_laid.begin(), m_laid.end(), Laid{});
    m_reached = m_task.sheets.front().used;
    Link link{node.parent, node.last};
    for (std::size_t level = m_links.size(); level-- > 0;) {
        const RectangleOption &option = m_task.options[std::size_t(link.last.option)];
        m_laid[std::size_t(option.item)] = unseen(link.last);
        if (option.sheet == 0) m_reached = std::max(m_reached, link.last.y + option.height);
        if (level > 0) link = m_links[level][std::size_t(link.parent)];
    }
    m_children.clear();
    m_level.clear();
    m_at = 0;
}

} // namespace boltwright::planner
