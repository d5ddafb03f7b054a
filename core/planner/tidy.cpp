#include "core/planner/tidy.h"

#include "core/planner/rectangle_task.h"

#include <algorithm>
#include <optional>
#include <tuple>

namespace boltwright::planner {
namespace {

constexpr Tick inch = 8128;
constexpr Tick leastSide = 6 * inch;

/// Comparisons of two boxes, or as much; about a fiftieth of a second.
constexpr std::int64_t mostWork = 20'000'000;

struct Box {
    int sheet = -1;
    Tick x = 0, y = 0, xEnd = 0, yEnd = 0;
};

bool overlap(const Box &a, const Box &b) {
    return a.sheet == b.sheet && a.x < b.xEnd && b.x < a.xEnd && a.y < b.yEnd && b.y < a.yEnd;
}

/// Side by side: an edge of one lies along an edge of the other.
bool touch(const Box &a, const Box &b) {
    if (a.sheet != b.sheet) return false;
    const bool across = (a.xEnd == b.x || b.xEnd == a.x) && a.y < b.yEnd && b.y < a.yEnd;
    const bool along = (a.yEnd == b.y || b.yEnd == a.y) && a.x < b.xEnd && b.x < a.xEnd;
    return across || along;
}

void sortUnique(std::vector<Tick> &v) {
    std::sort(v.begin(), v.end());
    v.erase(std::unique(v.begin(), v.end()), v.end());
}

class Tidy {
public:
    Tidy(const Instance &instance, const std::vector<Placement> &placements)
        : m_instance(instance), m_task(instance), m_option(instance.items.size(), -1), m_boxes(instance.items.size()) {
        for (const Placement &p : placements) {
            const RectangleItem &item = m_task.items[std::size_t(p.item)];
            for (int o = item.firstOption; o < item.endOption; ++o)
                if (m_task.options[std::size_t(o)].index == p.option) m_option[std::size_t(p.item)] = o;
            // Laid by the double of an option: found under that one.
            for (int o = item.firstOption; o < item.endOption && m_option[std::size_t(p.item)] < 0; ++o)
                if (standsFor(p, m_task.options[std::size_t(o)])) m_option[std::size_t(p.item)] = o;
            if (m_option[std::size_t(p.item)] < 0) return;
            lay(p.item, m_option[std::size_t(p.item)], Tick(p.corner.x.ticks()), Tick(p.corner.y.ticks()));
        }
        m_understood = true;
        m_end = reached();
        for (const RectangleOption &o : m_task.options) m_places.push_back(placesOf(o));
    }

    bool understood() const { return m_understood; }
    Merits merits();
    void run();

    std::vector<Placement> placements() const {
        std::vector<Placement> all;
        for (std::size_t i = 0; i < m_boxes.size(); ++i)
            all.push_back(m_task.placement(m_task.options[std::size_t(m_option[i])], m_boxes[i].x, m_boxes[i].y));
        return all;
    }

private:
    bool standsFor(const Placement &p, const RectangleOption &o) const {
        const Item &item = m_instance.items[std::size_t(p.item)];
        const Option &as = item.options[std::size_t(p.option)], &mine = item.options[std::size_t(o.index)];
        const Outline &a = m_instance.outlines[std::size_t(as.outline)],
                      &b = m_instance.outlines[std::size_t(mine.outline)];
        return as.sheet == mine.sheet && as.places == mine.places && a.width == b.width && a.height == b.height;
    }

    void lay(int item, int option, Tick x, Tick y) {
        const RectangleOption &o = m_task.options[std::size_t(option)];
        m_option[std::size_t(item)] = option;
        m_boxes[std::size_t(item)] = {o.sheet, x, y, x + o.width, y + o.height};
    }

    Tick reached() const {
        Tick most = m_task.sheets.front().used;
        for (const Box &b : m_boxes)
            if (b.sheet == 0) most = std::max(most, b.yEnd);
        return most;
    }

    /// Where an option may lie as long as its group keeps the phase it has; nothing: not at all.
    std::optional<Places> placesOf(const RectangleOption &o) const {
        const RectangleItem &item = m_task.items[std::size_t(o.item)];
        if (item.group < 0) return o.places;
        // A group keeps its turn and its part of the motif.
        const int now = m_option[std::size_t(o.item)];
        if (&o != &m_task.options[std::size_t(now)]) return std::nullopt;
        const Option &option = m_instance.items[std::size_t(o.item)].options[std::size_t(o.index)];
        const auto &lattice = m_instance.sheets[std::size_t(o.sheet)].lattice;
        if (!lattice) return o.places;
        const Box &b = m_boxes[std::size_t(o.item)];
        const Vector phase = ClothPoint{Length::ticks(b.x), Length::ticks(b.y)} + option.anchor - lattice->motif();
        const auto places = placesInGroup(m_instance, option, phase);
        if (!places) return std::nullopt;
        return m_task.placesOf(*places, o.sheet, o.width);
    }

    Tick topOf(int sheet) const { return m_task.open() ? m_end : m_task.sheets[std::size_t(sheet)].y1; }

    bool free(int item, const Box &box) {
        m_work += std::int64_t(m_boxes.size());
        const RectangleSheet &s = m_task.sheets[std::size_t(box.sheet)];
        if (box.x < s.x0 || box.xEnd > s.x1 || box.y < s.y0 || box.yEnd > topOf(box.sheet)) return false;
        for (std::size_t j = 0; j < m_boxes.size(); ++j)
            if (int(j) != item && overlap(box, m_boxes[j])) return false;
        auto clear = [&](const Obstacle &o) { return !o.blocks(box.x, box.y, box.xEnd - box.x, box.yEnd - box.y); };
        return std::all_of(s.obstacles.begin(), s.obstacles.end(), clear) &&
               (m_task.items[std::size_t(item)].hidden || std::all_of(s.flaws.begin(), s.flaws.end(), clear));
    }

    bool spent() const { return m_work > mostWork; }

    Area largestFree(int sheet);
    bool isBetter();
    void push(bool fromRight);
    bool pushOne(int item, bool fromRight);
    bool moveOne(int item);
    bool tryAt(int item, int option, Tick x, Tick y);
    bool swapTwo(int a, int b);

    const Instance &m_instance;
    RectangleTask m_task;
    std::vector<int> m_option;                   ///< by item
    std::vector<Box> m_boxes;                    ///< by item, grown
    std::vector<std::optional<Places>> m_places; ///< by option
    Tick m_end = 0;
    bool m_understood = false;
    Merits m_best;
    std::int64_t m_work = 0;
    std::vector<Tick> m_xs, m_ys;
    std::vector<char> m_taken;
};

/// By cells between all edges, row by row as high as they are free.
Area Tidy::largestFree(int sheet) {
    const RectangleSheet &s = m_task.sheets[std::size_t(sheet)];
    const Tick gap = m_task.gap();
    const Tick x0 = s.x0, x1 = s.x1 - gap, y0 = s.y0, y1 = (m_task.open() ? reached() : s.y1) - gap;
    if (x1 - x0 < leastSide || y1 - y0 < leastSide) return 0;
    std::vector<Box> taken;
    for (const Box &b : m_boxes)
        if (b.sheet == sheet) taken.push_back({sheet, b.x - gap, b.y - gap, b.xEnd, b.yEnd});
    for (const auto *list : {&s.obstacles, &s.flaws})
        for (const Obstacle &o : *list) taken.push_back({sheet, o.x0 - gap, o.y0 - gap, o.x1, o.y1});
    m_xs = {x0, x1};
    m_ys = {y0, y1};
    for (const Box &b : taken) {
        for (const Tick x : {b.x, b.xEnd})
            if (x > x0 && x < x1) m_xs.push_back(x);
        for (const Tick y : {b.y, b.yEnd})
            if (y > y0 && y < y1) m_ys.push_back(y);
    }
    sortUnique(m_xs);
    sortUnique(m_ys);
    const std::size_t columns = m_xs.size() - 1, rows = m_ys.size() - 1;
    m_work += std::int64_t(columns * rows) * 4;
    m_taken.assign(columns * rows, 0);
    auto at = [](const std::vector<Tick> &lines, Tick t) {
        return std::size_t(std::lower_bound(lines.begin(), lines.end(), t) - lines.begin());
    };
    for (const Box &b : taken)
        for (std::size_t r = at(m_ys, b.y); r < rows && m_ys[r] < b.yEnd; ++r)
            for (std::size_t c = at(m_xs, b.x); c < columns && m_xs[c] < b.xEnd; ++c) m_taken[r * columns + c] = 1;
    Area best = 0;
    std::vector<std::size_t> since(columns, 0); // the first free row of the run that reaches this one
    struct Rising {
        std::size_t column, since;
    };
    std::vector<Rising> stack;
    for (std::size_t r = 0; r < rows; ++r) {
        for (std::size_t c = 0; c < columns; ++c)
            if (m_taken[r * columns + c]) since[c] = r + 1;
        stack.clear();
        for (std::size_t c = 0; c <= columns; ++c) {
            const std::size_t now = c < columns ? since[c] : rows + 1;
            std::size_t from = c;
            while (!stack.empty() && stack.back().since < now) {
                from = stack.back().column;
                const Tick width = m_xs[c] - m_xs[from],
                           height = m_ys[r + 1] - m_ys[std::min(r + 1, stack.back().since)];
                if (width >= leastSide && height >= leastSide) best = std::max(best, Area(width) * height);
                stack.pop_back();
            }
            if (stack.empty() || stack.back().since > now) stack.push_back({from, now});
        }
    }
    return best;
}

Merits Tidy::merits() {
    Merits m;
    for (std::size_t s = 0; s < m_task.sheets.size(); ++s)
        m.offcut = std::max<std::int64_t>(m.offcut, largestFree(int(s)) / (Area(inch) * inch));
    std::vector<std::pair<int, Tick>> levels;
    for (const Box &b : m_boxes) {
        levels.emplace_back(b.sheet, b.y);
        levels.emplace_back(b.sheet, b.yEnd);
    }
    std::sort(levels.begin(), levels.end());
    m.cutsAcross = -int(std::unique(levels.begin(), levels.end()) - levels.begin());
    const auto &items = m_instance.items;
    m_work += std::int64_t(items.size());
    for (std::size_t i = 0; i < items.size(); ++i) {
        bool like = false, beside = false;
        for (std::size_t j = 0; j < items.size() && !beside; ++j) {
            if (j == i || items[j].kind != items[i].kind) continue;
            like = true;
            beside = touch(m_boxes[i], m_boxes[j]);
        }
        if (like && !beside) --m.alone;
    }
    return m;
}

/// Whether what is laid now is better than the best until now, which it then is.
bool Tidy::isBetter() {
    const Tick end = reached();
    const Merits m = merits();
    if (end > m_end || (end == m_end && m <= m_best)) return false;
    m_end = end;
    m_best = m;
    return true;
}

void Tidy::run() {
    m_best = merits();
    const auto before = std::pair(m_option, m_boxes);
    auto best = before;
    for (const bool fromRight : {false, true}) {
        std::tie(m_option, m_boxes) = before;
        push(fromRight);
        if (isBetter()) best = {m_option, m_boxes};
    }
    std::tie(m_option, m_boxes) = best;
    for (bool better = true; better && !spent();) {
        better = false;
        for (std::size_t i = 0; i < m_boxes.size() && !spent(); ++i) better = moveOne(int(i)) || better;
        for (std::size_t a = 0; a < m_boxes.size() && !spent(); ++a)
            for (std::size_t b = a + 1; b < m_boxes.size() && !spent(); ++b) better = swapTwo(int(a), int(b)) || better;
    }
}

/// All items down and to one side, again and again until none gives.
void Tidy::push(bool fromRight) {
    std::vector<int> order(m_boxes.size());
    for (std::size_t i = 0; i < order.size(); ++i) order[i] = int(i);
    for (bool moved = true; moved && !spent();) {
        moved = false;
        std::stable_sort(order.begin(), order.end(),
                         [&](int a, int b) { return m_boxes[std::size_t(a)].y < m_boxes[std::size_t(b)].y; });
        for (const int i : order) {
            if (spent()) return; // with thousands of items one round alone takes seconds
            moved = pushOne(i, fromRight) || moved;
        }
    }
}

/// To the lowest free place in its columns, then as far to the side as it goes: each ends against something, or on the
/// last place of its lattice before that.
bool Tidy::pushOne(int item, bool fromRight) {
    const int option = m_option[std::size_t(item)];
    const auto &places = m_places[std::size_t(option)];
    if (!places) return false;
    const Box before = m_boxes[std::size_t(item)];
    Box box = before;
    auto step = [&](Tick x, Tick y) {
        const Box to{box.sheet, x, y, x + box.xEnd - box.x, y + box.yEnd - box.y};
        if (!free(item, to)) return false;
        box = to;
        return true;
    };
    const RectangleSheet &s = m_task.sheets[std::size_t(box.sheet)];
    std::vector<Tick> ys = {s.y0}, xs = {fromRight ? s.x1 - (box.xEnd - box.x) : s.x0};
    auto take = [&](const Box &b) {
        ys.push_back(b.yEnd);
        xs.push_back(fromRight ? b.x - (box.xEnd - box.x) : b.xEnd);
    };
    for (std::size_t j = 0; j < m_boxes.size(); ++j)
        if (int(j) != item && m_boxes[j].sheet == box.sheet) take(m_boxes[j]);
    for (const auto *list : {&s.obstacles, &s.flaws})
        for (const Obstacle &o : *list) take({box.sheet, o.x0, o.y0, o.x1, o.y1});
    sortUnique(ys);
    sortUnique(xs);
    if (fromRight) std::reverse(xs.begin(), xs.end());
    for (const Tick y : ys) {
        const Tick row = places->nextY(box.x, y);
        if (row < box.y && step(box.x, row)) break;
    }
    // Aside only within its row: with a drop another column has other rows.
    if (places->columnY0.empty())
        for (Tick x : xs) {
            if (!places->freeX()) {
                const Tick off = (x - places->xFirst) % places->xStep;
                if (off != 0)
                    x += fromRight ? -off - (off < 0 ? places->xStep : 0) : (off > 0 ? places->xStep : 0) - off;
            }
            if ((fromRight ? x > box.x : x < box.x) && step(x, box.y)) break;
        }
    m_boxes[std::size_t(item)] = box;
    return box.x != before.x || box.y != before.y;
}

/// To the first place that makes the merits greater: in corners that the others, the flaws and the edges leave.
bool Tidy::moveOne(int item) {
    const RectangleItem &mine = m_task.items[std::size_t(item)];
    bool better = false;
    for (int o = mine.firstOption; o < mine.endOption; ++o) {
        const auto &places = m_places[std::size_t(o)];
        if (!places) continue;
        const RectangleOption &option = m_task.options[std::size_t(o)];
        const RectangleSheet &s = m_task.sheets[std::size_t(option.sheet)];
        std::vector<Tick> xs = {s.x0, s.x1 - option.width}, ys = {s.y0, topOf(option.sheet) - option.height};
        auto take = [&](Tick x0, Tick y0, Tick x1, Tick y1) {
            xs.insert(xs.end(), {x1, x0 - option.width, x0, x1 - option.width});
            ys.insert(ys.end(), {y1, y0 - option.height, y0, y1 - option.height});
        };
        for (std::size_t j = 0; j < m_boxes.size(); ++j)
            if (int(j) != item && m_boxes[j].sheet == option.sheet)
                take(m_boxes[j].x, m_boxes[j].y, m_boxes[j].xEnd, m_boxes[j].yEnd);
        for (const auto *list : {&s.obstacles, &s.flaws})
            for (const Obstacle &b : *list) take(b.x0, b.y0, b.x1, b.y1);
        if (!places->freeX()) {
            xs.clear();
            for (Tick x = places->xFirst; x + option.width <= s.x1; x += places->xStep) xs.push_back(x);
        }
        sortUnique(xs);
        sortUnique(ys);
        for (const Tick x : xs) {
            if (spent()) return better;
            if (places->freeY()) {
                for (const Tick y : ys) better = tryAt(item, o, x, y) || better;
                continue;
            }
            for (Tick y = places->nextY(x, s.y0); y + option.height <= topOf(option.sheet); y = places->nextY(x, y + 1))
                better = tryAt(item, o, x, y) || better;
        }
    }
    return better;
}

bool Tidy::tryAt(int item, int option, Tick x, Tick y) {
    if (spent()) return false;
    const RectangleOption &o = m_task.options[std::size_t(option)];
    if (!free(item, {o.sheet, x, y, x + o.width, y + o.height})) return false;
    const int optionBefore = m_option[std::size_t(item)];
    const Box before = m_boxes[std::size_t(item)];
    lay(item, option, x, y);
    if (isBetter()) return true;
    m_option[std::size_t(item)] = optionBefore;
    m_boxes[std::size_t(item)] = before;
    return false;
}

/// Two of one size but not of one kind change places, where both may lie there.
bool Tidy::swapTwo(int a, int b) {
    const auto &items = m_instance.items;
    if (items[std::size_t(a)].kind == items[std::size_t(b)].kind) return false;
    if (items[std::size_t(a)].group >= 0 || items[std::size_t(b)].group >= 0) return false;
    Box &boxA = m_boxes[std::size_t(a)], &boxB = m_boxes[std::size_t(b)];
    if (boxA.xEnd - boxA.x != boxB.xEnd - boxB.x || boxA.yEnd - boxA.y != boxB.yEnd - boxB.y) return false;
    auto optionAt = [&](int item, const Box &box) {
        const RectangleItem &mine = m_task.items[std::size_t(item)];
        for (int o = mine.firstOption; o < mine.endOption; ++o) {
            const RectangleOption &option = m_task.options[std::size_t(o)];
            if (option.sheet != box.sheet || option.width != box.xEnd - box.x || option.height != box.yEnd - box.y)
                continue;
            const Places &p = option.places;
            if (!p.freeX() && (box.x < p.xFirst || (box.x - p.xFirst) % p.xStep != 0)) continue;
            if (p.nextY(box.x, box.y) == box.y) return o;
        }
        return -1;
    };
    const int optionA = optionAt(a, boxB), optionB = optionAt(b, boxA);
    if (optionA < 0 || optionB < 0) return false;
    const auto before = std::pair(m_option, m_boxes);
    std::swap(boxA, boxB);
    m_option[std::size_t(a)] = optionA;
    m_option[std::size_t(b)] = optionB;
    // Flaws may be crossed by one and not by the other.
    if (free(a, boxA) && free(b, boxB) && isBetter()) return true;
    std::tie(m_option, m_boxes) = before;
    return false;
}

} // namespace

Merits meritsOf(const Instance &instance, const std::vector<Placement> &placements) {
    if (!instance.rectilinear() || placements.size() != instance.items.size() || placements.empty()) return {};
    Tidy tidy(instance, placements);
    return tidy.understood() ? tidy.merits() : Merits{};
}

std::vector<Placement> tidied(const Instance &instance, const std::vector<Placement> &placements) {
    if (!instance.rectilinear() || placements.size() != instance.items.size() || placements.empty()) return placements;
    Tidy tidy(instance, placements);
    if (!tidy.understood()) return placements;
    tidy.run();
    const std::vector<Placement> better = tidy.placements();
    return holds(instance, better) ? better : placements;
}

} // namespace boltwright::planner
