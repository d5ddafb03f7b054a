#include "core/planner/skyline.h"

#include <algorithm>
#include <bit>
#include <limits>
#include <numeric>

namespace boltwright::planner {
namespace {

constexpr Tick wall = std::numeric_limits<Tick>::max(); ///< the level beyond the sheet's sides

/// Fine stripes have hundreds of columns; a step's ends are where it pays to look.
constexpr int mostColumns = 8;

} // namespace

Skyline::Skyline(const RectangleTask &task)
    : m_task(task), m_laid(task.items.size()), m_groups(task.instance().groups.size()),
      m_memberOption(task.options.size(), -1), m_byWidth(task.items.size()) {
    std::vector<int> members(m_groups.size());
    for (std::size_t o = 0; o < task.options.size(); ++o) {
        const int group = task.items[std::size_t(task.options[o].item)].group;
        if (group >= 0) m_memberOption[o] = members[std::size_t(group)]++;
    }
    for (std::size_t g = 0; g < m_groups.size(); ++g) {
        m_groups[g].places.resize(std::size_t(members[g]));
        m_groups[g].possible.resize(std::size_t(members[g]));
    }
    for (const RectangleItem &item : task.items) {
        Tick least = wall;
        for (int o = item.firstOption; o < item.endOption; ++o)
            least = std::min(least, task.options[std::size_t(o)].width);
        m_width.push_back(least);
    }
    std::iota(m_byWidth.begin(), m_byWidth.end(), 0);
    std::stable_sort(m_byWidth.begin(), m_byWidth.end(),
                     [&](int a, int b) { return m_width[std::size_t(a)] < m_width[std::size_t(b)]; });
    const Area mean = task.items.empty() ? 1 : task.itemArea() / Area(task.items.size());
    m_wasteBits = std::max(0, int(std::bit_width(std::uint64_t(mean))) - 5);
}

Area Skyline::lay(const std::vector<int> &order, const std::vector<int> &sheetOrder, Tick top, Area limit) {
    begin(order);
    const RectangleSheet &only = m_task.sheets.front();
    const Tick end = m_task.open() ? top : only.y1;
    m_mostWasted = m_task.sheets.size() > 1 ? std::numeric_limits<Area>::max()
                                            : limit + Area(only.x1 - only.x0) * (end - only.y0) - m_leftArea;
    for (int sheet : sheetOrder) {
        if (m_left.empty()) break;
        fill(sheet, m_task.open() ? top : m_task.sheets[std::size_t(sheet)].y1);
    }
    return m_wasted > m_mostWasted ? limit + 1 : m_leftArea;
}

void Skyline::begin(const std::vector<int> &order) {
    m_left = order;
    m_leftArea = m_task.itemArea();
    std::fill(m_laid.begin(), m_laid.end(), Laid{});
    for (GroupState &g : m_groups) g.begun = false;
    m_narrowest = 0;
    m_wasted = 0;
    m_reached = m_task.sheets.front().used;
}

void Skyline::fill(int sheet, Tick top) {
    const RectangleSheet &s = m_task.sheets[std::size_t(sheet)];
    m_steps.assign(1, {s.x0, s.x1, s.y0});
    while (!m_left.empty()) {
        const std::size_t low = lowestOf(m_steps);
        const Step step = m_steps[low];
        if (step.y >= top) return;
        const Tick left = low > 0 ? m_steps[low - 1].y : wall;
        const Tick right = low + 1 < m_steps.size() ? m_steps[low + 1].y : wall;
        const Candidate c = best(sheet, step, left, right, top);
        if (c.option >= 0)
            put(sheet, low, c);
        else
            raise(sheet, low, top);
        if (m_wasted > m_mostWasted) return;
    }
}

Tick Skyline::narrowestLeft() const {
    while (m_narrowest < m_byWidth.size() && m_laid[std::size_t(m_byWidth[m_narrowest])].option >= 0) ++m_narrowest;
    return m_narrowest < m_byWidth.size() ? m_width[std::size_t(m_byWidth[m_narrowest])] : wall;
}

Skyline::Candidate Skyline::best(int sheet, const Step &step, Tick left, Tick right, Tick top) const {
    Candidate found;
    const Tick room = step.end - step.x;
    const Tick narrowest = narrowestLeft();
    if (narrowest > room) return found;
    for (std::size_t at = 0; at < m_left.size(); ++at) {
        const RectangleItem &item = m_task.items[std::size_t(m_left[at])];
        for (int o = item.firstOption; o < item.endOption; ++o) {
            const RectangleOption &option = m_task.options[std::size_t(o)];
            if (option.width > room || step.y + option.height > top || option.sheet != sheet) continue;
            const Places *places = placesNow(o);
            if (places) consider(found, o, at, *places, step, left, right, top, narrowest);
        }
        if (found.option >= 0 && found.score == 7) break; // nothing fits better
    }
    return found;
}

const Places *Skyline::placesNow(int option) const {
    const RectangleOption &o = m_task.options[std::size_t(option)];
    const int group = m_task.items[std::size_t(o.item)].group;
    if (group < 0) return &o.places;
    const GroupState &g = m_groups[std::size_t(group)];
    if (!g.begun) return &o.places;
    const auto member = std::size_t(m_memberOption[std::size_t(option)]);
    return g.possible[member] ? &g.places[member] : nullptr;
}

void Skyline::consider(Candidate &found, int option, std::size_t at, const Places &places, const Step &step, Tick left,
                       Tick right, Tick top, Tick narrowest) const {
    const RectangleOption &o = m_task.options[std::size_t(option)];
    const bool hidden = m_task.items[std::size_t(o.item)].hidden;
    auto look = [&](Tick x) {
        const Tick y = places.nextY(x, step.y);
        if (y + o.height > top) return;
        const int score = scoreOf(step, left, right, narrowest, x, y, o.width, o.height);
        if (found.option >= 0 && score <= found.score) return;
        if (!free(o.sheet, hidden, x, y, o.width, o.height)) return;
        found = {option, at, x, y, score};
    };
    const Tick last = step.end - o.width;
    if (places.freeX()) {
        // The side with the higher wall first: it wins among equals.
        const bool rightFirst = right > left;
        look(rightFirst ? last : step.x);
        if (last != step.x) look(rightFirst ? step.x : last);
        const RectangleSheet &sheet = m_task.sheets[std::size_t(o.sheet)];
        auto beside = [&](const std::vector<Obstacle> &obstacles) {
            for (const Obstacle &b : obstacles) {
                if (b.y1 <= step.y || b.x1 <= step.x || b.x0 >= step.end) continue;
                if (b.x1 > step.x && b.x1 <= last) look(b.x1);
                if (b.x0 - o.width >= step.x && b.x0 - o.width <= last) look(b.x0 - o.width);
            }
        };
        beside(sheet.obstacles);
        if (!hidden) beside(sheet.flaws);
        return;
    }
    Tick first = step.x + (places.xFirst - step.x) % places.xStep;
    if (first < step.x) first += places.xStep;
    if (first > last) return;
    const Tick columns = (last - first) / places.xStep + 1;
    for (Tick i = 0; i < columns; ++i) {
        if (i == mostColumns / 2 && columns > mostColumns) i = columns - mostColumns / 2;
        look(first + i * places.xStep);
    }
}

bool Skyline::free(int sheet, bool hidden, Tick x, Tick y, Tick width, Tick height) const {
    const RectangleSheet &s = m_task.sheets[std::size_t(sheet)];
    for (const Obstacle &b : s.obstacles)
        if (b.blocks(x, y, width, height)) return false;
    if (!hidden)
        for (const Obstacle &b : s.flaws)
            if (b.blocks(x, y, width, height)) return false;
    return true;
}

int Skyline::scoreOf(const Step &step, Tick left, Tick right, Tick narrowest, Tick x, Tick y, Tick width,
                     Tick height) const {
    const Tick leftGap = x - step.x, rightGap = step.end - x - width, up = y + height;
    Area waste = Area(y - step.y) * width;
    if (leftGap > 0 && leftGap < narrowest) waste += Area(leftGap) * (std::min(up, left) - step.y);
    if (rightGap > 0 && rightGap < narrowest) waste += Area(rightGap) * (std::min(up, right) - step.y);
    int fit = 0;
    if (leftGap == 0) fit += 1 + 2 * (up == left);
    if (rightGap == 0) fit += 1 + 2 * (up == right);
    if (leftGap == 0 && rightGap == 0) fit = std::min(7, fit + 2);
    if (waste == 0) return fit;
    return fit - 8 * (1 + std::max(0, int(std::bit_width(std::uint64_t(waste))) - m_wasteBits));
}

void Skyline::put(int sheet, std::size_t low, const Candidate &c) {
    const RectangleOption &o = m_task.options[std::size_t(c.option)];
    const RectangleItem &item = m_task.items[std::size_t(o.item)];
    m_laid[std::size_t(o.item)] = {c.option, c.x, c.y};
    m_leftArea -= item.area;
    m_left.erase(m_left.begin() + std::ptrdiff_t(c.at));
    if (sheet == 0) m_reached = std::max(m_reached, c.y + o.height);
    if (item.group >= 0 && !m_groups[std::size_t(item.group)].begun) beginGroup(item.group, o, c.x, c.y);

    const Step step = m_steps[low];
    const Step laid{c.x, c.x + o.width, c.y + o.height};
    m_wasted += Area(o.width) * (c.y - step.y); // buried under it
    m_steps[low] = laid;
    if (laid.end < step.end) m_steps.insert(m_steps.begin() + std::ptrdiff_t(low) + 1, {laid.end, step.end, step.y});
    if (step.x < laid.x) {
        m_steps.insert(m_steps.begin() + std::ptrdiff_t(low), {step.x, laid.x, step.y});
        ++low;
    }
    joinAt(m_steps, low);
}

void Skyline::raise(int sheet, std::size_t low, Tick top) {
    Step &step = m_steps[low];
    Tick level = top;
    if (low > 0) level = std::min(level, m_steps[low - 1].y);
    if (low + 1 < m_steps.size()) level = std::min(level, m_steps[low + 1].y);
    // What lay in the way from here may end before that.
    const RectangleSheet &s = m_task.sheets[std::size_t(sheet)];
    for (const auto *list : {&s.obstacles, &s.flaws})
        for (const Obstacle &b : *list)
            if (b.y1 > step.y && b.y1 < level && b.x0 < step.end && b.x1 > step.x) level = b.y1;
    m_wasted += Area(step.end - step.x) * (level - step.y);
    step.y = level;
    joinAt(m_steps, low);
}

void Skyline::beginGroup(int group, const RectangleOption &first, Tick x, Tick y) {
    GroupState &g = m_groups[std::size_t(group)];
    const Instance &instance = m_task.instance();
    const Sheet &sheet = instance.sheets[std::size_t(first.sheet)];
    const Option &laid = instance.items[std::size_t(first.item)].options[std::size_t(first.index)];
    g.begun = true;
    std::optional<Vector> phase;
    if (sheet.lattice) phase = ClothPoint{Length::ticks(x), Length::ticks(y)} + laid.anchor - sheet.lattice->motif();
    for (int i : instance.groups[std::size_t(group)].items) {
        const RectangleItem &item = m_task.items[std::size_t(i)];
        for (int o = item.firstOption; o < item.endOption; ++o) {
            const RectangleOption &option = m_task.options[std::size_t(o)];
            const auto member = std::size_t(m_memberOption[std::size_t(o)]);
            g.possible[member] = false;
            if (option.turn != first.turn || m_task.sheets[std::size_t(option.sheet)].lot != sheet.lot) continue;
            const auto places =
                placesInGroup(instance, instance.items[std::size_t(i)].options[std::size_t(option.index)], phase);
            if (!places) continue;
            g.possible[member] = true;
            g.places[member] = m_task.placesOf(*places, option.sheet, option.width);
        }
    }
}

} // namespace boltwright::planner
