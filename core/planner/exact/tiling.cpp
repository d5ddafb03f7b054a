#include "core/planner/exact/attempt.h"

#include <algorithm>
#include <array>
#include <bit>
#include <limits>
#include <numeric>
#include <utility>

// Perfect packings: the items fill the room to the last square, so in the corner between a gap's floor and a wall some
// item has its own corner, and there is nothing to choose but which. The gap with the fewest to choose from comes
// first. Before an item is laid it is asked whether every gap of the skyline can still be filled exactly, across by
// widths and up to the top by heights, and whether each item left still has a place. Skylines that led nowhere with the
// same items left are known again by a print of 128 bits. On plain cloth every layout can be mirrored both ways: one
// item, the only one of its size, lies left and low.
namespace boltwright::planner {
namespace {

using Ticks = BoxProblem::Ticks;

/// Numbers of sorts of items.
class SortSet {
public:
    static constexpr std::size_t most = 256;
    void add(int i) { m_words[std::size_t(i) / 64] |= bit(i); }
    void remove(int i) { m_words[std::size_t(i) / 64] &= ~bit(i); }
    /// Rising; `visit` returns false to end, and then so does this.
    template <class Visit>
    bool all(Visit visit) const {
        for (std::size_t w = 0; w < m_words.size(); ++w)
            for (std::uint64_t left = m_words[w]; left; left &= left - 1)
                if (!visit(int(w * 64) + std::countr_zero(left))) return false;
        return true;
    }

private:
    static std::uint64_t bit(int i) { return std::uint64_t(1) << (std::size_t(i) % 64); }
    std::array<std::uint64_t, most / 64> m_words = {};
};

/// Which sums some of a list of sizes can have, up to a greatest one.
class Sums {
public:
    void begin(Ticks most) {
        m_words.assign(std::size_t(most) / 64 + 1, 0);
        m_words[0] = 1;
    }
    void add(Ticks size) {
        const std::size_t by = std::size_t(size) / 64, bits = std::size_t(size) % 64;
        for (std::size_t i = m_words.size(); i-- > by;) {
            std::uint64_t word = m_words[i - by] << bits;
            if (bits && i > by) word |= m_words[i - by - 1] >> (64 - bits);
            m_words[i] |= word;
        }
    }
    /// The sums in one word, where that is all there are.
    bool inOneWord() const { return m_words.size() == 1; }
    void setWord(std::uint64_t word) { m_words[0] = word; }
    bool has(Ticks sum) const { // beyond what was counted any will do
        const std::size_t at = std::size_t(sum) / 64;
        return at >= m_words.size() || (m_words[at] >> (std::size_t(sum) % 64) & 1);
    }

private:
    std::vector<std::uint64_t> m_words;
};

/// Two independent numbers that stand for a state. That two states which differ have the same is as good as ruled out.
struct Print {
    std::uint64_t a = 0x243f6a8885a308d3u, b = 0x13198a2e03707344u;
    void mix(std::uint64_t value) {
        a = (a ^ value) * 0x9e3779b97f4a7c15u;
        a ^= a >> 29;
        b = (b + value) * 0xbf58476d1ce4e5b9u;
        b ^= b >> 31;
    }
    /// Of a heap of things, in whatever order they come and go.
    void operator+=(const Print &other) { a += other.a, b += other.b; }
    void operator-=(const Print &other) { a -= other.a, b -= other.b; }
    bool operator==(const Print &) const = default;
};

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
        m_sortsOf.resize(problem.items.size());
        for (std::size_t s = 0; s < m_kinds.size(); ++s) {
            m_open.add(int(s));
            for (const auto &[item, mode] : m_kinds[s].members) m_sortsOf[item].push_back(int(s));
        }
        m_itemPrints.resize(problem.items.size());
        for (std::size_t i = 0; i < problem.items.size(); ++i) {
            for (int s : m_sortsOf[i]) m_itemPrints[i].mix(std::uint64_t(s) + 1);
            m_leftPrint += m_itemPrints[i];
            m_grouped = m_grouped || problem.items[i].group >= 0;
        }
        m_before.resize(problem.items.size());
        if (problem.plain)
            for (std::size_t s = 0; s < m_kinds.size() && m_mirror < 0; ++s)
                if (m_kinds[s].members.size() == 1) m_mirror = int(s); // the largest
    }

    static bool applies(const BoxProblem &problem) {
        if (problem.lefts.size() != 1 || !problem.blocks.empty() || problem.groupsLeftOpen) return false;
        Ticks area = 0;
        std::size_t modes = 0;
        for (const BoxProblem::Item &item : problem.items) {
            modes += item.modes.size();
            // Either way round it covers the same, but widened it may not: then there is no telling.
            for (const auto &mode : item.modes)
                if (mode.width * mode.height != item.modes[0].width * item.modes[0].height) return false;
            area += item.modes[0].width * item.modes[0].height;
        }
        return modes <= SortSet::most && area == problem.widths[0] * problem.heights[0];
    }

    State run(std::int64_t steps, const std::function<bool()> &stop) override {
        m_stop = &stop;
        m_budget = m_nodes + steps * nodesAStep;
        m_cut = false;
        m_cutOff = std::exchange(m_path, {});
        if (search()) {
            readLayout();
            return State::Fits;
        }
        return m_cut ? State::Open : State::Cannot;
    }
    std::vector<Placement> placements() const override { return m_placements; }
    std::int64_t steps() const override { return m_nodes / nodesAStep + 1; }

private:
    static constexpr std::int64_t nodesAStep = 256; ///< about as much time as a solver takes for a conflict
    static constexpr std::size_t keptPrints = std::size_t(1) << 20; ///< later ones write over earlier ones
    static constexpr Ticks mostCounted = 8192;

    /// Items that may take one another's place, one way up.
    struct Sort {
        Ticks width, height;
        std::vector<std::pair<std::size_t, std::size_t>> members; ///< item and mode
        int left = 0;                                             ///< members not laid
    };
    /// A sort with members left, as the tests of a node want it.
    struct Open {
        Ticks width, height;
        int sort, left;
    };
    struct Segment {
        Ticks left, width, level;
    };
    struct Laid {
        std::size_t item, mode;
        Ticks x, y;
    };

    void addItem(std::size_t i) {
        m_turning = m_turning || m_problem.items[i].modes.size() > 1;
        for (std::size_t k = 0; k < m_problem.items[i].modes.size(); ++k) {
            const auto &mode = m_problem.items[i].modes[k];
            const Ticks width = m_upright ? mode.width : mode.height, height = m_upright ? mode.height : mode.width;
            // With places of their own, items of one size are not alike.
            auto sort = std::find_if(m_kinds.begin(), m_kinds.end(), [&](const Sort &s) {
                return s.width == width && s.height == height &&
                       (m_problem.plain || alike(m_problem.items[s.members[0].first], m_problem.items[i]));
            });
            if (sort == m_kinds.end()) sort = m_kinds.insert(sort, {width, height, {}});
            sort->members.emplace_back(i, k);
            ++sort->left;
        }
    }

    /// In a group it matters which of two is laid.
    static bool alike(const BoxProblem::Item &a, const BoxProblem::Item &b) {
        return a.kind == b.kind && a.group < 0 && b.group < 0;
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
        if (++m_nodes >= m_budget || (m_nodes % 4096 == 0 && (*m_stop)())) {
            m_cut = true;
            return false;
        }
        if (m_failed.empty()) m_failed.resize(keptPrints);
        const Print print = printOf();
        Print &kept = m_failed[std::size_t(print.a) % keptPrints];
        __builtin_prefetch(&kept); // it is far away, and wanted only after the tests
        if (!fillable() || kept == print) {
            m_cutOff.clear(); // it leads no further
            return false;
        }
        if (layNext()) return true;
        if (!m_cut) kept = print;
        return false;
    }

    /// Goes on where an earlier run was cut off: what comes before it has led nowhere.
    bool layNext() {
        const std::size_t at = tightestGap(), depth = m_laid.size();
        const Segment gap = m_skyline[at];
        const SortSet sorts = mayFill(gap);
        int from = 0;
        if (!m_cutOff.empty()) {
            from = m_cutOff.back();
            m_cutOff.pop_back();
        }
        m_before[depth] = m_skyline;
        return !sorts.all([&](int s) {
            if (s < from) return true;
            const Sort &sort = m_kinds[std::size_t(s)];
            const auto member =
                std::find_if(sort.members.begin(), sort.members.end(), [&](const auto &m) { return !m_used[m.first]; });
            if (!onItsSide(s, gap.left, gap.level) || !mayLie(*member, gap.left, gap.level)) return true;
            use(member->first);
            m_laid.push_back({member->first, member->second, gap.left, gap.level});
            raise(at, sort.width, sort.height);
            if (search()) return false;
            m_skyline = m_before[depth];
            m_laid.pop_back();
            giveBack(member->first);
            if (m_cut) m_path.push_back(s);
            return !m_cut;
        }) && !m_cut;
    }

    void use(std::size_t item) {
        m_used[item] = true;
        m_leftPrint -= m_itemPrints[item];
        for (int s : m_sortsOf[item])
            if (--m_kinds[std::size_t(s)].left == 0) m_open.remove(s);
    }
    void giveBack(std::size_t item) {
        m_used[item] = false;
        m_leftPrint += m_itemPrints[item];
        for (int s : m_sortsOf[item])
            if (m_kinds[std::size_t(s)].left++ == 0) m_open.add(s);
    }

    /// Among the gaps with higher walls both sides: whatever fills it has one of its items in the left corner.
    std::size_t tightestGap() const {
        std::size_t best = 0;
        int fewest = std::numeric_limits<int>::max();
        for (std::size_t k = 0; k < m_skyline.size(); ++k) {
            const Segment &gap = m_skyline[k];
            if (gap.level == m_height) continue;
            const bool leftWall = k == 0 || m_skyline[k - 1].level > gap.level;
            const bool rightWall = k + 1 == m_skyline.size() || m_skyline[k + 1].level > gap.level;
            if (!leftWall || !rightWall) continue;
            int choices = 0;
            for (const Open &open : m_list) {
                choices += mayFill(open, gap);
                if (choices >= fewest) break;
            }
            if (choices >= fewest) continue;
            fewest = choices;
            best = k;
        }
        return best;
    }

    /// Whether a gap could still be filled, across and up, beside and above something of this size.
    bool mayFill(const Open &open, const Segment &gap) const {
        return open.width <= gap.width && open.height <= m_height - gap.level && m_widths.has(gap.width - open.width) &&
               m_heights.has(m_height - gap.level - open.height);
    }

    SortSet mayFill(const Segment &gap) const {
        SortSet sorts;
        for (const Open &open : m_list)
            if (mayFill(open, gap)) sorts.add(open.sort);
        return sorts;
    }

    /// Of a layout and its mirror images one is enough: that in which the one item lies left and low.
    bool onItsSide(int s, Ticks x, Ticks y) const {
        const Sort &sort = m_kinds[std::size_t(s)];
        return s != m_mirror || (2 * x + sort.width <= m_width && 2 * y + sort.height <= m_height);
    }

    /// Lays a box into the left corner of a gap.
    void raise(std::size_t at, Ticks width, Ticks height) {
        const Segment gap = m_skyline[at];
        m_skyline[at] = {gap.left, width, gap.level + height};
        if (width < gap.width)
            m_skyline.insert(m_skyline.begin() + std::ptrdiff_t(at) + 1,
                             {gap.left + width, gap.width - width, gap.level});
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
    /// top; each item left has a place to stand; and what is to lie low is not too late for it.
    bool fillable() {
        countFills();
        Segment low = m_skyline.front();
        for (std::size_t k = 0; k < m_skyline.size(); ++k) {
            const Segment &s = m_skyline[k];
            if (s.level < low.level) low = s;
            if (!m_heights.has(m_height - s.level)) return false;
            if (s.level < m_height && !m_widths.has(widthAt(k))) return false;
        }
        if (m_mirror >= 0) {
            const Sort &mirror = m_kinds[std::size_t(m_mirror)];
            if (mirror.left > 0 && 2 * low.level + mirror.height > m_height) return false;
        }
        // An item has several sorts only where it may be turned, and one of them is enough.
        if (m_turning) return true;
        return std::all_of(m_list.begin(), m_list.end(), [&](const Open &open) {
            return (open.width <= low.width && open.height <= m_height - low.level) || hasRoom(open);
        });
    }

    /// Whether something of this size fits above the skyline anywhere.
    bool hasRoom(const Open &open) const {
        Ticks room = 0;
        for (const Segment &s : m_skyline) {
            room = s.level + open.height <= m_height ? room + s.width : 0;
            if (room >= open.width) return true;
        }
        return false;
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

    void countFills() {
        m_widths.begin(std::min(m_width, mostCounted));
        m_heights.begin(std::min(m_height, mostCounted));
        m_list.clear();
        m_open.all([this](int s) {
            const Sort &sort = m_kinds[std::size_t(s)];
            m_list.push_back({sort.width, sort.height, s, sort.left});
            return true;
        });
        // Each way up of an item counts, which only lets more through.
        if (m_widths.inOneWord() && m_heights.inOneWord()) {
            std::uint64_t widths = 1, heights = 1;
            for (const Open &open : m_list)
                for (int i = 0; i < open.left; ++i) {
                    widths |= widths << open.width % 64; // one that is too large adds nothing that is asked for
                    heights |= heights << open.height % 64;
                }
            m_widths.setWord(widths);
            m_heights.setWord(heights);
            return;
        }
        for (const Open &open : m_list)
            for (int i = 0; i < open.left; ++i) {
                m_widths.add(open.width);
                m_heights.add(open.height);
            }
    }

    /// All that the rest depends on: the skyline, the items left, and how those of groups lie.
    Print printOf() const {
        Print print;
        for (const Segment &s : m_skyline) print.mix(std::uint64_t(s.width) << 32 ^ std::uint64_t(s.level));
        print.a ^= m_leftPrint.a;
        print.b ^= m_leftPrint.b;
        print.mix(m_laid.size());
        if (!m_grouped) return print;
        std::uint64_t grouped = 0; // a sum, since it does not matter in which order they were laid
        for (const Laid &l : m_laid)
            if (m_problem.items[l.item].group >= 0) {
                Print one;
                one.mix(std::uint64_t(l.item) << 32 | std::uint64_t(l.mode));
                grouped += one.a;
            }
        print.mix(grouped);
        return print;
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
    std::vector<std::vector<int>> m_sortsOf; ///< by item: the sorts it is a member of
    SortSet m_open;                          ///< sorts with members left
    bool m_turning = false;                  ///< some item is of several sorts
    int m_mirror = -1;                       ///< the sort that breaks the mirrors
    std::vector<Segment> m_skyline;
    std::vector<Laid> m_laid;
    std::vector<bool> m_used;
    std::vector<std::vector<Segment>> m_before; ///< by number of items laid: the skyline to go back to
    std::vector<Open> m_list;                   ///< of the node at hand
    std::vector<Print> m_itemPrints;            ///< by item; the same for those that are of the same sorts
    Print m_leftPrint;                          ///< of all items left together
    bool m_grouped = false;                     ///< some item is of a group
    std::vector<int> m_path,
        m_cutOff; ///< the sorts laid where this run was cut off, and the one before; the last first
    Sums m_widths, m_heights;
    std::vector<Print> m_failed;
    std::vector<Placement> m_placements;
    const std::function<bool()> *m_stop = nullptr;
    std::int64_t m_nodes = 0, m_budget = 0;
    bool m_cut = false;
};

} // namespace

bool mayTile(const BoxProblem &problem) { return TilingAttempt::applies(problem); }

std::unique_ptr<Attempt> tilingAttempt(const BoxProblem &problem, bool upright) {
    if (!TilingAttempt::applies(problem)) return nullptr;
    return std::make_unique<TilingAttempt>(problem, upright);
}

} // namespace boltwright::planner
