#include "core/planner/exact/attempt.h"

#include <algorithm>
#include <limits>
#include <numeric>
#include <string>
#include <unordered_set>

// Perfect packings: the items fill the room to the last square, so in each corner between a gap's floor and a wall some
// item has its own corner, and there is nothing to choose but which. The corner with the fewest to choose from comes
// first. Before an item is laid it is asked whether every gap of the skyline can still be filled exactly, across by
// widths and up to the top by heights. Skylines that led nowhere with the same items left are kept. On plain cloth
// every layout can be mirrored both ways: one item, the only one of its size, lies left and low.
namespace boltwright::planner {
namespace {

using Ticks = BoxProblem::Ticks;

class TilingAttempt : public Attempt {
public:
    TilingAttempt(const BoxProblem &problem, bool upright) : m_problem(problem), m_upright(upright) {
        m_width = upright ? problem.widths[0] : problem.heights[0];
        m_height = upright ? problem.heights[0] : problem.widths[0];
        for (std::size_t i = 0; i < problem.items.size(); ++i) addItem(i);
        scale();
        std::sort(m_kinds.begin(), m_kinds.end(), [](const Sort &a, const Sort &b) {
            return std::pair{a.width * a.height, a.width} > std::pair{b.width * b.height, b.width};
        });
        m_skyline = {{0, m_width, 0}};
        if (problem.plain)
            for (const Sort &sort : m_kinds)
                if (!m_mirror && sort.members.size() == 1) m_mirror = &sort; // the largest
    }

    static bool applies(const BoxProblem &problem) {
        if (problem.lefts.size() != 1 || !problem.blocks.empty() || problem.groupsLeftOpen) return false;
        Ticks area = 0;
        for (const BoxProblem::Item &item : problem.items) {
            // Either way round it covers the same, but widened it may not: then there is no telling.
            for (const auto &mode : item.modes)
                if (mode.width * mode.height != item.modes[0].width * item.modes[0].height) return false;
            area += item.modes[0].width * item.modes[0].height;
        }
        return area == problem.widths[0] * problem.heights[0];
    }

    State run(std::int64_t steps, const std::function<bool()> &stop) override {
        m_stop = &stop;
        m_budget = m_nodes + steps * nodesAStep;
        m_cut = false;
        if (search()) {
            readLayout();
            return State::Fits;
        }
        return m_cut ? State::Open : State::Cannot;
    }
    std::vector<Placement> placements() const override { return m_placements; }
    std::int64_t steps() const override { return m_nodes / nodesAStep + 1; }

private:
    static constexpr std::int64_t nodesAStep = 64;
    static constexpr std::size_t mostKeptBytes = 64'000'000;
    static constexpr Ticks mostCounted = 8192;

    /// Items that may take one another's place, one way up.
    struct Sort {
        Ticks width, height;
        std::vector<std::pair<std::size_t, std::size_t>> members; ///< item and mode
    };
    struct Segment {
        Ticks left, width, level;
    };
    struct Laid {
        std::size_t item, mode;
        Ticks x, y;
        const Sort *sort;
    };

    void addItem(std::size_t i) {
        for (std::size_t k = 0; k < m_problem.items[i].modes.size(); ++k) {
            const auto &mode = m_problem.items[i].modes[k];
            const Ticks width = m_upright ? mode.width : mode.height, height = m_upright ? mode.height : mode.width;
            // With places of their own, items of one size are not alike.
            auto sort = std::find_if(m_kinds.begin(), m_kinds.end(), [&](const Sort &s) {
                return s.width == width && s.height == height &&
                       (m_problem.plain || m_problem.items[s.members[0].first].kind == m_problem.items[i].kind);
            });
            if (sort == m_kinds.end()) sort = m_kinds.insert(sort, {width, height, {}});
            sort->members.emplace_back(i, k);
        }
    }

    void scale() {
        m_unitX = m_width;
        m_unitY = m_height;
        for (const Sort &sort : m_kinds) {
            m_unitX = std::gcd(m_unitX, sort.width);
            m_unitY = std::gcd(m_unitY, sort.height);
        }
        for (Sort &sort : m_kinds) {
            sort.width /= m_unitX;
            sort.height /= m_unitY;
        }
        m_width /= m_unitX;
        m_height /= m_unitY;
        m_used.assign(m_problem.items.size(), false);
    }

    bool search() {
        if (m_laid.size() == m_problem.items.size()) return true;
        if (++m_nodes >= m_budget || (m_nodes % 256 == 0 && (*m_stop)())) {
            m_cut = true;
            return false;
        }
        if (!fillable()) return false;
        std::string key = keyOf();
        if (m_failed.contains(key)) return false;
        const bool found = layNext();
        if (!found && !m_cut && m_keptBytes < mostKeptBytes) {
            m_keptBytes += key.size() + 48;
            m_failed.insert(std::move(key));
        }
        return found;
    }

    /// A corner of the skyline, and how many sorts may fill it.
    struct Corner {
        std::size_t at = 0;
        bool right = false;
        int choices = std::numeric_limits<int>::max();
    };

    bool layNext() {
        const Corner corner = tightestCorner();
        const Segment gap = m_skyline[corner.at];
        const auto before = m_skyline;
        for (const Sort &sort : m_kinds) {
            if (!mayFill(sort, gap)) continue;
            const auto member =
                std::find_if(sort.members.begin(), sort.members.end(), [&](const auto &m) { return !m_used[m.first]; });
            if (member == sort.members.end()) continue;
            const Ticks left = corner.right ? gap.left + gap.width - sort.width : gap.left;
            if (!mayLie(*member, left, gap.level) || !inOrder(sort, left, gap.level)) continue;
            m_used[member->first] = true;
            m_laid.push_back({member->first, member->second, left, gap.level, &sort});
            raise(corner, sort.width, sort.height);
            if (search()) return true;
            m_skyline = before;
            m_laid.pop_back();
            m_used[member->first] = false;
            if (m_cut) return false;
            countFills();
        }
        return false;
    }

    /// Among the corners of all gaps with higher walls both sides.
    Corner tightestCorner() const {
        Corner best;
        for (std::size_t k = 0; k < m_skyline.size(); ++k) {
            const Segment &s = m_skyline[k];
            if (s.level == m_height) continue;
            const bool leftWall = k == 0 || m_skyline[k - 1].level > s.level;
            const bool rightWall = k + 1 == m_skyline.size() || m_skyline[k + 1].level > s.level;
            if (!leftWall || !rightWall) continue;
            int choices = 0;
            for (const Sort &sort : m_kinds)
                choices += mayFill(sort, s) && std::any_of(sort.members.begin(), sort.members.end(),
                                                           [&](const auto &m) { return !m_used[m.first]; });
            if (choices < best.choices) best = {k, false, choices};
        }
        return best;
    }

    /// Whether a gap could still be filled, across and up, beside and above something of this size.
    bool mayFill(const Sort &sort, const Segment &gap) const {
        return sort.width <= gap.width && sort.height <= m_height - gap.level &&
               test(m_widths, gap.width - sort.width) && test(m_heights, m_height - gap.level - sort.height);
    }

    /// On plain cloth two boxes that together are a box can change places. Of all such layouts, and of a layout and its
    /// mirror images, one is enough: the one item lies left and low, and of any other two that could change places the
    /// earlier sort lies left or below. (Sorted so, the sum of rank · area · (x + y) rises, so the sorting ends.)
    bool inOrder(const Sort &sort, Ticks x, Ticks y) const {
        if (!m_mirror) return true;
        if (&sort == m_mirror) return 2 * x + sort.width <= m_width && 2 * y + sort.height <= m_height;
        return std::none_of(m_laid.begin(), m_laid.end(), [&](const Laid &l) {
            const Sort &other = *l.sort;
            if (&other == m_mirror) return false;
            const bool first = &sort<&other, last = &sort> & other;
            if (other.width == sort.width && l.x == x && l.y + other.height == y) return first;
            if (other.height != sort.height || l.y != y) return false;
            return (first && l.x + other.width == x) || (last && x + sort.width == l.x);
        });
    }

    /// Lays a box into a corner.
    void raise(const Corner &corner, Ticks width, Ticks height) {
        std::size_t at = corner.at;
        const Segment gap = m_skyline[at];
        const Ticks rest = gap.width - width;
        Segment top{gap.left, width, gap.level + height}, beside{gap.left + width, rest, gap.level};
        if (corner.right) {
            top.left += rest;
            beside.left = gap.left;
        }
        m_skyline[at] = top;
        if (rest > 0) {
            m_skyline.insert(m_skyline.begin() + std::ptrdiff_t(at) + !corner.right, beside);
            at += corner.right;
        }
        if (at + 1 < m_skyline.size() && m_skyline[at + 1].level == m_skyline[at].level) join(at);
        if (at > 0 && m_skyline[at - 1].level == m_skyline[at].level) join(at - 1);
    }
    void join(std::size_t at) {
        m_skyline[at].width += m_skyline[at + 1].width;
        m_skyline.erase(m_skyline.begin() + std::ptrdiff_t(at) + 1);
    }

    /// Whether the lattice and the other items of its group let an item lie there.
    bool mayLie(const std::pair<std::size_t, std::size_t> &member, Ticks left, Ticks level) const {
        const BoxProblem::Item &item = m_problem.items[member.first];
        const auto &mode = item.modes[member.second];
        const auto [x, y] = placeOf(left, level);
        const PlaceSet &places =
            m_problem.instance->items[std::size_t(item.item)].options[std::size_t(mode.option)].places;
        if (!places.holds(m_problem.cloth(mode, x, y))) return false;
        if (item.group < 0) return true;
        return std::all_of(m_laid.begin(), m_laid.end(), [&](const Laid &l) {
            const BoxProblem::Item &other = m_problem.items[l.item];
            return other.group != item.group || m_problem.together(mode, other.modes[l.mode]);
        });
    }

    std::pair<Ticks, Ticks> placeOf(Ticks x, Ticks y) const {
        return m_upright ? std::pair{x * m_unitX, y * m_unitY} : std::pair{y * m_unitY, x * m_unitX};
    }

    /// Whether widths left can fill every gap across, at each height of its walls, and heights left every gap up to the
    /// top; and what is to lie low is not too late for it.
    bool fillable() {
        countFills();
        Ticks lowest = m_height;
        for (std::size_t k = 0; k < m_skyline.size(); ++k) {
            const Segment &s = m_skyline[k];
            lowest = std::min(lowest, s.level);
            if (!test(m_heights, m_height - s.level)) return false;
            if (s.level < m_height && !test(m_widths, widthAt(k))) return false;
        }
        return !m_mirror || m_used[m_mirror->members[0].first] || 2 * lowest + m_mirror->height <= m_height;
    }

    /// How wide the gap is just above a segment: to the next higher ones both sides.
    Ticks widthAt(std::size_t k) const {
        Ticks width = m_skyline[k].width;
        for (std::size_t i = k; i > 0 && m_skyline[i - 1].level <= m_skyline[k].level; --i)
            width += m_skyline[i - 1].width;
        for (std::size_t i = k + 1; i < m_skyline.size() && m_skyline[i].level <= m_skyline[k].level; ++i)
            width += m_skyline[i].width;
        return width;
    }

    static bool test(const std::vector<std::uint64_t> &fills, Ticks size) {
        if (size >= mostCounted) return true;
        return fills[std::size_t(size) / 64] >> (std::size_t(size) % 64) & 1;
    }

    void countFills() {
        m_widths.assign(std::size_t(std::min(m_width, mostCounted)) / 64 + 1, 0);
        m_heights.assign(std::size_t(std::min(m_height, mostCounted)) / 64 + 1, 0);
        m_widths[0] = m_heights[0] = 1;
        for (const Sort &sort : m_kinds)
            for (const auto &[item, mode] : sort.members)
                if (!m_used[item]) { // each way up of an item counts, which only lets more through
                    addMoved(m_widths, std::size_t(sort.width));
                    addMoved(m_heights, std::size_t(sort.height));
                }
    }

    static void addMoved(std::vector<std::uint64_t> &fills, std::size_t by) {
        const std::size_t words = by / 64, bits = by % 64;
        for (std::size_t i = fills.size(); i-- > words;) {
            std::uint64_t word = fills[i - words] << bits;
            if (bits && i > words) word |= fills[i - words - 1] >> (64 - bits);
            fills[i] |= word;
        }
    }

    std::string keyOf() const {
        std::string key;
        auto put = [&](Ticks value) {
            for (; value >= 128; value /= 128) key.push_back(char(128 + value % 128));
            key.push_back(char(value));
        };
        for (const Segment &s : m_skyline) {
            put(s.width);
            put(s.level);
        }
        for (const Sort &sort : m_kinds)
            put(std::count_if(sort.members.begin(), sort.members.end(),
                              [&](const auto &m) { return !m_used[m.first]; }));
        return key;
    }

    void readLayout() {
        m_placements.resize(m_problem.items.size());
        for (const Laid &l : m_laid) {
            const BoxProblem::Item &item = m_problem.items[l.item];
            const auto &mode = item.modes[l.mode];
            const auto [x, y] = placeOf(l.x, l.y);
            m_placements[l.item] = {item.item, mode.option, m_problem.cloth(mode, x, y)};
        }
    }

    const BoxProblem &m_problem;
    bool m_upright;
    Ticks m_width = 0, m_height = 0, m_unitX = 1, m_unitY = 1;
    std::vector<Sort> m_kinds;
    const Sort *m_mirror = nullptr; ///< the item that breaks the mirrors
    std::vector<Segment> m_skyline;
    std::vector<Laid> m_laid;
    std::vector<bool> m_used;
    std::vector<std::uint64_t> m_widths, m_heights;
    std::unordered_set<std::string> m_failed;
    std::size_t m_keptBytes = 0;
    std::vector<Placement> m_placements;
    const std::function<bool()> *m_stop = nullptr;
    std::int64_t m_nodes = 0, m_budget = 0;
    bool m_cut = false;
};

} // namespace

std::unique_ptr<Attempt> tilingAttempt(const BoxProblem &problem, bool upright) {
    if (!TilingAttempt::applies(problem)) return nullptr;
    return std::make_unique<TilingAttempt>(problem, upright);
}

} // namespace boltwright::planner
