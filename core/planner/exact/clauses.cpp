#include "core/planner/exact/attempt.h"

#include <algorithm>
#include <cadical.hpp>
#include <limits>
#include <numeric>
#include <optional>

// For every item and axis and each of its places p but the last there is a variable "the corner is at p or before".
// That a is wholly left of b is one variable; it links the two rows of variables. Two items are apart when a is left
// of b, right of it, below or above.
//
// What pairs do not say is how much all of them together take up. So what lies over one x is added up as well: stacked,
// it is no higher than the room, and where nothing is left over, as high. The same of what lies side by side at one y.
namespace boltwright::planner {
namespace {

using Ticks = BoxProblem::Ticks;
using Item = BoxProblem::Item;
using Mode = BoxProblem::Mode;

class Stopper : public CaDiCaL::Terminator {
public:
    bool terminate() override { return stop && *stop && (*stop)(); }
    const std::function<bool()> *stop = nullptr;
};

/// A literal, or known to be true or false.
constexpr int yes = std::numeric_limits<int>::max(), no = -yes;

/// Sums are counted where they take about so many variables. Measured: NGCUT12, 20'000 of them, is proved in 0.3 s, and
/// not in 20 s without; with 200'000, jobs with sizes in inches and eighths come to an end later, or not at all.
constexpr std::size_t mostSums = 64'000;

class ClauseAttempt : public Attempt {
public:
    explicit ClauseAttempt(const BoxProblem &problem) : m_problem(problem) {
        m_solver.set("quiet", 1);
        m_solver.connect_terminator(&m_stopper);
        nameVariables();
        for (const Item &item : problem.items) restrictToModes(item);
        for (std::size_t i = 0; i < problem.items.size(); ++i) {
            for (std::size_t j = i + 1; j < problem.items.size(); ++j) keepApart(i, j);
            for (const BoxProblem::Block &block : problem.blocks) keepOff(i, block);
        }
        keepGroupsTogether();
        if (problem.plain) breakMirrors();
        countHeights();
    }
    ~ClauseAttempt() override { m_solver.disconnect_terminator(); }

    State run(std::int64_t steps, const std::function<bool()> &stop) override {
        m_stopper.stop = &stop;
        const auto slice = std::clamp<std::int64_t>(steps, 1, std::numeric_limits<int>::max());
        m_solver.limit("conflicts", int(slice));
        const int answer = m_solver.solve();
        m_stopper.stop = nullptr;
        m_steps += slice; // the solver tells no count; what it was given is the same on every machine
        if (answer == 20) return State::Cannot;
        if (answer != 10) return State::Open;
        readLayout();
        return State::Fits;
    }

    std::vector<Placement> placements() const override { return m_placements; }
    std::int64_t steps() const override { return m_steps; }

private:
    struct Names {
        int x = 0, y = 0; ///< of the first place; the others follow
        std::vector<int> modes;
    };

    int fresh() { return ++m_last; }

    void nameVariables() {
        for (const Item &item : m_problem.items) {
            Names names;
            names.x = m_last + 1;
            m_last += int(item.xs.size()) - 1;
            names.y = m_last + 1;
            m_last += int(item.ys.size()) - 1;
            for (std::size_t k = 0; k < item.modes.size(); ++k)
                names.modes.push_back(item.modes.size() == 1 ? yes : fresh());
            addOrder(names.x, item.xs.size());
            addOrder(names.y, item.ys.size());
            m_names.push_back(names);
        }
    }

    void addOrder(int first, std::size_t places) {
        for (std::size_t k = 0; k + 2 < places; ++k) add({-(first + int(k)), first + int(k) + 1});
    }

    /// A clause; known literals are dropped or make it true.
    void add(std::initializer_list<int> literals) { add(literals.begin(), literals.end()); }
    void add(const std::vector<int> &literals) { add(literals.begin(), literals.end()); }
    template <class It>
    void add(It begin, It end) {
        if (std::find(begin, end, yes) != end) return;
        for (It it = begin; it != end; ++it)
            if (*it != no) m_solver.add(*it);
        m_solver.add(0);
    }

    /// "The corner is at `value` or before."
    static int atMost(const std::vector<Ticks> &places, int first, Ticks value) {
        const auto above = std::upper_bound(places.begin(), places.end(), value) - places.begin();
        if (above == 0) return no;
        if (above == std::ptrdiff_t(places.size())) return yes;
        return first + int(above) - 1;
    }
    int xAtMost(std::size_t i, Ticks value) const { return atMost(m_problem.items[i].xs, m_names[i].x, value); }
    int yAtMost(std::size_t i, Ticks value) const { return atMost(m_problem.items[i].ys, m_names[i].y, value); }

    void restrictToModes(const Item &item) {
        const std::size_t i = std::size_t(&item - m_problem.items.data());
        const Names &names = m_names[i];
        if (item.modes.size() > 1) add(names.modes);
        for (std::size_t k = 0; k < item.modes.size(); ++k) {
            const Mode &mode = item.modes[k];
            const int off = -names.modes[k];
            auto only = [&](const std::vector<Ticks> &all, const std::vector<Ticks> &own, int first) {
                for (Ticks p : all)
                    if (!std::binary_search(own.begin(), own.end(), p))
                        add({off, atMost(all, first, p - 1), -atMost(all, first, p)});
            };
            only(item.xs, mode.xs, names.x);
            only(item.ys, mode.ys, names.y);
            if (!mode.dropped) continue;
            for (Ticks x : mode.xs)
                for (Ticks y : mode.ys)
                    if (!m_problem.open(mode, x, y))
                        add({off, xAtMost(i, x - 1), -xAtMost(i, x), yAtMost(i, y - 1), -yAtMost(i, y)});
        }
    }

    /// "If `literal`, then a ends at or before the corner of b", on one axis; false when that cannot be.
    template <class SizeOf>
    int endsBefore(std::size_t a, std::size_t b, const std::vector<Ticks> &placesA, int firstA,
                   const std::vector<Ticks> &placesB, int firstB, SizeOf sizeOf) {
        const Item &item = m_problem.items[a];
        bool possible = false;
        for (const Mode &mode : item.modes) possible = possible || placesA.front() + sizeOf(mode) <= placesB.back();
        if (!possible || b == a) return no;
        const int literal = fresh();
        for (std::size_t k = 0; k < item.modes.size(); ++k) {
            const Ticks size = sizeOf(item.modes[k]);
            const int off = -m_names[a].modes[k];
            for (std::size_t p = 0; p < placesB.size(); ++p) {
                const int then = atMost(placesA, firstA, placesB[p] - size);
                if (then == yes) break;
                // Of several places with the same consequence the last says it for all.
                if (p + 1 < placesB.size() && atMost(placesA, firstA, placesB[p + 1] - size) == then) continue;
                add({off, -literal, -atMost(placesB, firstB, placesB[p]), then});
            }
        }
        return literal;
    }

    int leftOf(std::size_t a, std::size_t b) {
        return endsBefore(a, b, m_problem.items[a].xs, m_names[a].x, m_problem.items[b].xs, m_names[b].x,
                          [](const Mode &m) { return m.width; });
    }
    int below(std::size_t a, std::size_t b) {
        return endsBefore(a, b, m_problem.items[a].ys, m_names[a].y, m_problem.items[b].ys, m_names[b].y,
                          [](const Mode &m) { return m.height; });
    }

    void keepApart(std::size_t i, std::size_t j) {
        const int left = leftOf(i, j), right = leftOf(j, i), under = below(i, j), over = below(j, i);
        add({left, right, under, over});
        // Rectangles that keep apart can be told in an order in which each lies left of all later ones or below them
        // (the second order of a sequence pair, Murata et al. 1996). Like items may take their names from it.
        const Item &a = m_problem.items[i], &b = m_problem.items[j];
        if (a.kind == b.kind && a.group < 0 && b.group < 0) add({left, under});
    }

    void keepOff(std::size_t i, const BoxProblem::Block &block) {
        const Item &item = m_problem.items[i];
        if (block.flaw && item.hidden) return;
        for (std::size_t k = 0; k < item.modes.size(); ++k) {
            const Mode &mode = item.modes[k];
            if (mode.sheet != block.sheet) continue;
            add({-m_names[i].modes[k], xAtMost(i, block.x1 - mode.width), -xAtMost(i, block.x2 - 1),
                 yAtMost(i, block.y1 - mode.height), -yAtMost(i, block.y2 - 1)});
        }
    }

    void keepGroupsTogether() {
        for (std::size_t i = 0; i < m_problem.items.size(); ++i)
            for (std::size_t j = i + 1; j < m_problem.items.size(); ++j) {
                const Item &a = m_problem.items[i], &b = m_problem.items[j];
                if (a.group < 0 || a.group != b.group) continue;
                for (std::size_t k = 0; k < a.modes.size(); ++k)
                    for (std::size_t l = 0; l < b.modes.size(); ++l)
                        if (!m_problem.together(a.modes[k], b.modes[l]))
                            add({-m_names[i].modes[k], -m_names[j].modes[l]});
            }
    }

    /// On plain cloth every layout can be mirrored both ways: some item lies in the lower left quarter. It has to be
    /// the only one of its kind, since like items are told in an order of their own; and to be pushed down from there,
    /// not up, which would carry it out again.
    void breakMirrors() {
        std::optional<std::size_t> largest;
        for (std::size_t i = 0; i < m_problem.items.size(); ++i) {
            const Item &item = m_problem.items[i];
            const auto like = std::count_if(m_problem.items.begin(), m_problem.items.end(),
                                            [&](const Item &other) { return other.kind == item.kind; });
            if (like != 1) continue;
            if (!largest || area(item) > area(m_problem.items[*largest])) largest = i;
        }
        if (!largest) return;
        const Mode &mode = m_problem.items[*largest].modes[0];
        const Ticks middleX = (m_problem.widths[0] - mode.width) / 2,
                    middleY = (m_problem.heights[0] - mode.height) / 2;
        if (m_problem.lineX > middleX) add({xAtMost(*largest, middleX)});
        if (m_problem.lineY > middleY) add({yAtMost(*largest, middleY)});
    }

    /// The sums over every x at which an item can begin, and at every y: what there is elsewhere is there too.
    void countHeights() {
        if (m_problem.lefts.size() != 1) return;
        const std::vector<Ticks> xs = starts(true), ys = starts(false);
        const std::size_t sums =
            (xs.size() * sumsThereAre(false) + ys.size() * sumsThereAre(true)) * m_problem.items.size() / 2;
        if (sums > mostSums) return;
        m_bySize.resize(m_problem.items.size());
        std::iota(m_bySize.begin(), m_bySize.end(), std::size_t(0));
        std::stable_sort(m_bySize.begin(), m_bySize.end(), [&](std::size_t a, std::size_t b) {
            return area(m_problem.items[a]) > area(m_problem.items[b]);
        });
        const bool full = nothingLeftOver();
        for (Ticks x : xs) countHeight(x, true, full, m_problem.heights[0]);
        for (Ticks y : ys) countHeight(y, false, full, m_problem.widths[0]);
    }

    std::vector<Ticks> starts(bool alongX) const {
        std::vector<Ticks> all;
        for (const Item &item : m_problem.items) {
            const std::vector<Ticks> &places = alongX ? item.xs : item.ys;
            all.insert(all.end(), places.begin(), places.end());
        }
        std::sort(all.begin(), all.end());
        all.erase(std::unique(all.begin(), all.end()), all.end());
        return all;
    }

    /// How many different sums the sizes along an axis can have within the room, at most.
    std::size_t sumsThereAre(bool alongX) const {
        const Ticks room = (alongX ? m_problem.widths : m_problem.heights)[0];
        Ticks step = 0;
        for (const Item &item : m_problem.items)
            for (const Mode &mode : item.modes) step = std::gcd(step, sizeAlong(mode, alongX));
        return step > 0 ? std::size_t(room / step) : 0;
    }

    static Ticks sizeAlong(const Mode &mode, bool alongX) { return alongX ? mode.width : mode.height; }

    bool nothingLeftOver() const {
        Ticks over = m_problem.widths[0] * m_problem.heights[0];
        for (const Item &item : m_problem.items) {
            Ticks least = over;
            for (const Mode &mode : item.modes) least = std::min(least, mode.width * mode.height);
            over -= least;
        }
        return over == 0;
    }

    /// "Together at least so high", for each height that some of the items come to, rising; the first is 0.
    struct Sum {
        Ticks height;
        int reached;
    };
    static int reached(const std::vector<Sum> &sums, Ticks height) {
        const auto at = std::lower_bound(sums.begin(), sums.end(), height,
                                         [](const Sum &sum, Ticks wanted) { return sum.height < wanted; });
        return at == sums.end() ? no : at->reached;
    }

    void countHeight(Ticks at, bool overX, bool full, Ticks room) {
        std::vector<Sum> sums = {{0, yes}};
        for (std::size_t i : m_bySize)
            for (std::size_t k = 0; k < m_problem.items[i].modes.size(); ++k) {
                const Mode &mode = m_problem.items[i].modes[k];
                const int lies = liesOver(i, k, at, overX);
                if (lies == no) continue;
                const Ticks height = sizeAlong(mode, !overX);
                add({-reached(sums, room - height + 1), -lies}); // no room for it
                sums = withOneMore(sums, height, lies, room, full);
            }
        if (full) add({reached(sums, room)});
    }

    std::vector<Sum> withOneMore(const std::vector<Sum> &sums, Ticks height, int lies, Ticks room, bool full) {
        std::vector<Ticks> heights;
        for (const Sum &sum : sums) {
            heights.push_back(sum.height);
            if (sum.height + height <= room) heights.push_back(sum.height + height);
        }
        std::sort(heights.begin(), heights.end());
        heights.erase(std::unique(heights.begin(), heights.end()), heights.end());
        std::vector<Sum> more = {{0, yes}};
        for (std::size_t k = 1; k < heights.size(); ++k) {
            const int without = reached(sums, heights[k]), with = reached(sums, heights[k] - height);
            if (without == with || lies == yes) {
                more.push_back({heights[k], with});
                continue;
            }
            const int now = fresh();
            add({-without, now});
            add({-with, -lies, now});
            if (full) {
                add({-now, without, lies});
                add({-now, with});
            }
            more.push_back({heights[k], now});
        }
        return more;
    }

    /// "The item, in this mode, lies over x" (or at y).
    int liesOver(std::size_t i, std::size_t k, Ticks at, bool overX) {
        const Ticks size = sizeAlong(m_problem.items[i].modes[k], overX);
        const int mode = m_names[i].modes[k], begun = overX ? xAtMost(i, at) : yAtMost(i, at),
                  ended = overX ? xAtMost(i, at - size) : yAtMost(i, at - size);
        if (begun == no || ended == yes) return no;
        if (begun == yes && ended == no) return mode;
        if (mode == yes && begun == yes) return -ended;
        if (mode == yes && ended == no) return begun;
        const int lies = fresh();
        add({-mode, -begun, ended, lies});
        add({-lies, mode});
        add({-lies, begun});
        add({-lies, -ended});
        return lies;
    }

    static Ticks area(const Item &item) { return item.modes[0].width * item.modes[0].height; }

    void readLayout() {
        m_placements.clear();
        for (std::size_t i = 0; i < m_problem.items.size(); ++i) {
            const Item &item = m_problem.items[i];
            std::size_t k = 0;
            while (m_names[i].modes[k] != yes && m_solver.val(m_names[i].modes[k]) < 0) ++k;
            auto valueOf = [&](const std::vector<Ticks> &places, int first) {
                std::size_t p = 0;
                while (p + 1 < places.size() && m_solver.val(first + int(p)) < 0) ++p;
                return places[p];
            };
            const Mode &mode = item.modes[k];
            m_placements.push_back(
                {item.item, mode.option,
                 m_problem.cloth(mode, valueOf(item.xs, m_names[i].x), valueOf(item.ys, m_names[i].y))});
        }
    }

    const BoxProblem &m_problem;
    CaDiCaL::Solver m_solver;
    Stopper m_stopper;
    int m_last = 0;
    std::vector<Names> m_names;
    std::vector<std::size_t> m_bySize; ///< items, largest first: so their sums are the fewest
    std::vector<Placement> m_placements;
    std::int64_t m_steps = 0;
};

} // namespace

std::unique_ptr<Attempt> clauseAttempt(const BoxProblem &problem) { return std::make_unique<ClauseAttempt>(problem); }

} // namespace boltwright::planner
