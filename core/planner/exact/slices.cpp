#include "core/planner/exact/attempt.h"

#include <algorithm>
#include <numeric>
#include <optional>
#include <string>
#include <unordered_set>

// From the low end of the axis on: free items start at the low end or where another ends, those with motif places at
// the first of their places, or at one that has another's end behind it since the place before (whatever can be done
// can be done so: push everything down; an item that cannot go down to its place before is kept from it by one that
// ends on the way). At each such event some of the items left start, as far as the height allows; what stays empty is
// waste, and all waste together is no more than what the items leave of the room. States that led nowhere are kept:
// items left, what is still taken up ahead and, where there are motif places, when the last item ended: all that the
// rest depends on.
namespace boltwright::planner {
namespace {

using Ticks = BoxProblem::Ticks;

class SliceAttempt : public Attempt {
public:
    SliceAttempt(const BoxProblem &problem, bool alongX) {
        m_length = alongX ? problem.widths[0] : problem.heights[0];
        m_height = alongX ? problem.heights[0] : problem.widths[0];
        for (const BoxProblem::Item &item : problem.items) {
            const auto &mode = item.modes[0];
            const PlaceSet &places =
                problem.instance->items[std::size_t(item.item)].options[std::size_t(mode.option)].places;
            Sort sort{alongX ? mode.width : mode.height, alongX ? mode.height : mode.width, 1, {}};
            if (!(alongX ? places.freeX() : places.freeY())) {
                sort.places = alongX ? mode.xs : mode.ys;
                m_anyPlaces = true;
            }
            addItem(std::move(sort));
        }
        scale();
        std::sort(m_kinds.begin(), m_kinds.end(), [](const Sort &a, const Sort &b) {
            return std::pair{a.height, a.length} > std::pair{b.height, b.length};
        });
        m_waste = m_length * m_height;
        for (const Sort &kind : m_kinds) m_waste -= kind.length * kind.height * kind.left;
    }

    State run(std::int64_t steps, const std::function<bool()> &stop) override {
        if (m_waste < 0) return State::Cannot;
        m_stop = &stop;
        m_budget = m_nodes + steps * nodesAStep;
        m_cut = false;
        m_taken.clear();
        m_ended = 0;
        const bool found = search(0, m_waste);
        if (found) return State::GaveUp; // the axis alone says nothing
        return m_cut ? State::Open : State::Cannot;
    }
    std::vector<Placement> placements() const override { return {}; }
    std::int64_t steps() const override { return m_nodes / nodesAStep + 1; }

private:
    static constexpr std::int64_t nodesAStep = 160; ///< about as much time as a solver takes for a conflict
    static constexpr Ticks mostCounted = 4096;      ///< sums of heights are counted up to here; beyond, any will do
    static constexpr std::size_t mostKeptBytes = 48'000'000;

    struct Sort {
        Ticks length, height;
        int left;
        std::vector<Ticks> places; ///< rising; none: free
    };
    struct Taken {
        Ticks end, height;
    };

    void addItem(Sort item) {
        for (Sort &kind : m_kinds)
            if (kind.length == item.length && kind.height == item.height && kind.places == item.places) {
                ++kind.left;
                return;
            }
        m_kinds.push_back(std::move(item));
    }

    /// Lengths and heights in what they have in common; what is over of the room is of no use.
    void scale() {
        Ticks length = 0, height = 0;
        for (const Sort &kind : m_kinds) {
            length = std::gcd(length, kind.length);
            height = std::gcd(height, kind.height);
            for (Ticks place : kind.places) length = std::gcd(length, place);
        }
        if (length == 0 || height == 0) return;
        for (Sort &kind : m_kinds) {
            kind.length /= length;
            kind.height /= height;
            for (Ticks &place : kind.places) place /= length;
        }
        m_length /= length;
        m_height /= height;
    }

    /// Whether the items left can go on from `at`, with so much waste to spend.
    bool search(Ticks at, Ticks waste) {
        if (++m_nodes >= m_budget || (m_nodes % 1024 == 0 && (*m_stop)())) {
            m_cut = true;
            return false;
        }
        const Ticks endedBefore = m_ended;
        for (const Taken &t : m_taken)
            if (t.end <= at) m_ended = std::max(m_ended, t.end);
        std::erase_if(m_taken, [&](const Taken &t) { return t.end <= at; });
        const bool found = searchFrom(at, waste);
        m_ended = endedBefore;
        return found;
    }

    bool searchFrom(Ticks at, Ticks waste) {
        if (!roomAhead(at) || wasteAhead(at) > waste) return false;
        std::string key = keyOf(at);
        if (m_failed.contains(key)) return false;
        Ticks used = 0;
        for (const Taken &t : m_taken) used += t.height;
        const bool found = start(at, waste, m_height - used, 0);
        if (!found && !m_cut && m_keptBytes < mostKeptBytes) {
            m_keptBytes += key.size() + 48;
            m_failed.insert(std::move(key));
        }
        return found;
    }

    /// Starts items of the kinds from `kind` on at `at`, in the height `gap`, and goes on at the next end.
    bool start(Ticks at, Ticks waste, Ticks gap, std::size_t kind) {
        while (kind < m_kinds.size() && (m_kinds[kind].height > gap || !mayStart(m_kinds[kind], at))) ++kind;
        if (kind == m_kinds.size()) return goOn(at, waste, gap);
        // Cheapest waste there can still be: what no choice of heights that may start here fills, over at least one.
        if (gap - bestFill(gap, kind, at) > waste) return false;
        const Ticks end = at + m_kinds[kind].length;
        if (end <= m_length) {
            const auto before = m_taken;
            --m_kinds[kind].left;
            take(end, m_kinds[kind].height);
            const bool found = start(at, waste, gap - m_kinds[kind].height, kind);
            ++m_kinds[kind].left;
            m_taken = before;
            if (found) return true;
            if (m_cut) return false;
        }
        return start(at, waste, gap, kind + 1);
    }

    bool goOn(Ticks at, Ticks waste, Ticks gap) {
        // Nothing is left to start: what is empty from here on is the waste that was to spend.
        if (std::all_of(m_kinds.begin(), m_kinds.end(), [](const Sort &k) { return k.left == 0; })) return true;
        Ticks next = m_length;
        for (const Taken &t : m_taken) next = std::min(next, t.end);
        for (const Sort &kind : m_kinds)
            if (kind.left > 0)
                if (const auto place = std::upper_bound(kind.places.begin(), kind.places.end(), at);
                    place != kind.places.end())
                    next = std::min(next, *place);
        if (next == m_length || next <= at) return false; // items are left, and nothing starts any more
        const Ticks lost = gap * (next - at);
        if (lost > waste) return false;
        const auto before = m_taken;
        const bool found = search(next, waste - lost);
        m_taken = before;
        return found;
    }

    /// Whether an item left may start at `at`. Free ones where something ended, which any event is that is not a place.
    bool mayStart(const Sort &kind, Ticks at) const {
        if (kind.left == 0) return false;
        if (kind.places.empty()) return at == 0 || m_ended == at;
        const auto place = std::lower_bound(kind.places.begin(), kind.places.end(), at);
        if (place == kind.places.end() || *place != at) return false;
        return place == kind.places.begin() || m_ended > *std::prev(place);
    }

    void take(Ticks end, Ticks height) {
        for (Taken &t : m_taken)
            if (t.end == end) {
                t.height += height;
                return;
            }
        m_taken.insert(
            std::upper_bound(m_taken.begin(), m_taken.end(), end, [](Ticks e, const Taken &t) { return e < t.end; }),
            {end, height});
    }

    /// Each item left is short enough, and those of more than half the height, which exclude one another, are together.
    bool roomAhead(Ticks at) const {
        Ticks tall = 0;
        for (const Sort &kind : m_kinds) {
            if (kind.left == 0) continue;
            if (kind.length > m_length - at) return false;
            if (2 * kind.height > m_height) tall += kind.length * kind.left;
        }
        return tall <= m_length - at;
    }

    /// The waste there must still be: what no choice of the heights left fills, above what is taken up ahead.
    Ticks wasteAhead(Ticks at) {
        if (m_height >= mostCounted) return 0;
        countFills(m_height, 0, {});
        Ticks used = 0, waste = 0, from = at;
        for (const Taken &t : m_taken) used += t.height;
        for (const Taken &t : m_taken) {
            waste += (m_height - used - bestCounted(m_height - used)) * (t.end - from);
            used -= t.height;
            from = t.end;
        }
        return waste + (m_height - bestCounted(m_height)) * (m_length - from);
    }

    /// The most of `gap` that heights left which may start at `at`, of the kinds from `from` on, can fill.
    Ticks bestFill(Ticks gap, std::size_t from, Ticks at) {
        if (gap == 0) return 0;
        if (gap >= mostCounted) return gap;
        countFills(gap, from, at);
        return bestCounted(gap);
    }

    /// Marks what heights left (if `at` is given, of kinds that may start there) can add up to, to `gap` at most.
    void countFills(Ticks gap, std::size_t from, std::optional<Ticks> at) {
        m_fill.assign(std::size_t(gap) / 64 + 1, 0);
        m_fill[0] = 1;
        for (std::size_t k = from; k < m_kinds.size(); ++k) {
            if (at && !mayStart(m_kinds[k], *at)) continue;
            for (int c = 0; c < m_kinds[k].left && Ticks(c) * m_kinds[k].height <= gap; ++c)
                addMoved(std::size_t(m_kinds[k].height));
        }
    }

    Ticks bestCounted(Ticks gap) const {
        for (Ticks g = gap; g > 0; --g)
            if (m_fill[std::size_t(g) / 64] >> (std::size_t(g) % 64) & 1) return g;
        return 0;
    }

    void addMoved(std::size_t by) {
        const std::size_t words = by / 64, bits = by % 64;
        for (std::size_t i = m_fill.size(); i-- > words;) {
            std::uint64_t word = m_fill[i - words] << bits;
            if (bits && i > words) word |= m_fill[i - words - 1] >> (64 - bits);
            m_fill[i] |= word;
        }
    }

    std::string keyOf(Ticks at) const {
        std::string key;
        auto put = [&](Ticks value) {
            for (; value >= 128; value /= 128) key.push_back(char(128 + value % 128));
            key.push_back(char(value));
        };
        put(at);
        if (m_anyPlaces) put(at - m_ended);
        for (const Sort &kind : m_kinds) put(kind.left);
        for (const Taken &t : m_taken) {
            put(t.end - at);
            put(t.height);
        }
        return key;
    }

    Ticks m_length = 0, m_height = 0, m_waste = 0;
    Ticks m_ended = 0; ///< the last end at or before where the search is
    bool m_anyPlaces = false;
    std::vector<Sort> m_kinds;
    std::vector<Taken> m_taken; ///< rising by end
    std::vector<std::uint64_t> m_fill;
    std::unordered_set<std::string> m_failed;
    std::size_t m_keptBytes = 0;
    const std::function<bool()> *m_stop = nullptr;
    std::int64_t m_nodes = 0, m_budget = 0;
    bool m_cut = false;
};

} // namespace

std::unique_ptr<Attempt> sliceAttempt(const BoxProblem &problem, bool alongX) {
    if (problem.lefts.size() != 1) return nullptr;
    for (const BoxProblem::Item &item : problem.items)
        if (item.modes.size() != 1) return nullptr;
    return std::make_unique<SliceAttempt>(problem, alongX);
}

} // namespace boltwright::planner
