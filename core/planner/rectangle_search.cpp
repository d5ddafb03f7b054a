#include "core/planner/rectangle_search.h"

#include "core/planner/frontier.h"
#include "core/planner/order_walk.h"
#include "core/planner/plain_frontier.h"
#include "core/planner/plain_walk.h"
#include "core/planner/separation.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <limits>
#include <memory>
#include <thread>

namespace boltwright::planner {
namespace {

/// With steps given, this many walks share them, however many threads carry them out.
constexpr int walksInSteps = 4;

/// Rounds by the clock, in seconds.
constexpr double firstRound = 0.002, longestRound = 0.03;
constexpr double never = std::numeric_limits<double>::infinity();

/// Separation weighs every pair of items; beyond this many it is too slow to help.
constexpr std::size_t mostSeparated = 400;

/// With more items a single step takes so long that the clock is looked at after each.
constexpr std::size_t manyItems = 400;

/// A plain frontier that has been widened so often without success aims higher.
constexpr int triesAtOnce = 4;

std::unique_ptr<Walk> walkOn(const RectangleTask &task, std::uint64_t seed, int number) {
    if (isPlain(task)) return std::make_unique<PlainWalk>(task, seed, number);
    return std::make_unique<OrderWalk>(task, seed, number);
}

/// A bolt on which items may lie anywhere, one way up: there the order walks are hard to beat.
bool asksNothing(const RectangleTask &task) {
    return task.open() && task.sheets[0].obstacles.empty() && task.sheets[0].flaws.empty() &&
           task.options.size() == task.items.size() &&
           std::all_of(task.options.begin(), task.options.end(),
                       [](const RectangleOption &o) { return o.places.freeX() && o.places.freeY(); });
}

/// The state of one search: walks that go on side by side in rounds and meet after each to share the best layout.
class RectangleSearch {
public:
    RectangleSearch(const Instance &instance, const Limits &limits, Length bound)
        : m_instance(instance), m_limits(limits), m_task(instance), m_bound(Tick(bound.ticks()) + m_task.gap()) {}

    Outcome run();

private:
    struct Found {
        std::vector<Laid> laid;
        Tick reached = 0;
    };

    enum class Way { Order, Separation, Frontier };

    void takeStart();
    Way wayOf(std::size_t w) const;
    void reorder(std::size_t w, std::int64_t steps);
    void separate(std::size_t w, std::int64_t steps);
    void widenPlain(std::size_t w, std::int64_t steps);
    template <class F>
    void widen(std::size_t w, F &frontier, std::int64_t steps);
    bool outOfTime() const;
    void round(std::int64_t stepsEach);
    void walk(std::size_t w, std::int64_t steps);
    void share();
    Tick ceiling() const;
    bool done() const;
    bool stopped() const;
    double share01() const;
    void tell();
    double elapsed() const { return std::chrono::duration<double>(std::chrono::steady_clock::now() - m_begin).count(); }
    std::vector<Placement> placements() const;
    Outcome outcome() const;

    const Instance &m_instance;
    const Limits &m_limits;
    RectangleTask m_task;
    Tick m_bound;
    std::chrono::steady_clock::time_point m_begin = std::chrono::steady_clock::now();
    std::vector<std::unique_ptr<Walk>> m_walks;
    std::vector<std::unique_ptr<Separation>> m_separations;
    std::vector<std::unique_ptr<Frontier>> m_frontiers; ///< none where they do not apply
    std::vector<std::unique_ptr<PlainFrontier>> m_plainFrontiers;
    std::vector<Tick> m_strides; ///< by plain frontier: how far below the best it aims
    bool m_widens = false;       ///< they are worth their time
    std::vector<Way> m_wayBy;    ///< by walk: how it went on in this round
    Way m_lead = Way::Order;     ///< what found the best layout
    std::int64_t m_round = 0;
    std::vector<Found> m_foundBy; ///< by walk: its best of this round; empty for none
    std::vector<std::int64_t> m_stepsBy;
    Found m_best;
    std::int64_t m_steps = 0;
    Tick m_told = std::numeric_limits<Tick>::max(); ///< what the last layout told of reached
    int m_quiet = 0;                                ///< rounds since the last better layout
    double m_roundEnd = 0;                          ///< seconds since the beginning
    mutable std::atomic<bool> m_stop{false};
};

Outcome RectangleSearch::run() {
    for (const RectangleItem &item : m_task.items)
        if (item.firstOption == item.endOption) return {};
    takeStart();
    const bool counted = m_limits.steps.has_value();
    const int walks = counted ? walksInSteps : std::max(1, m_limits.threads);
    for (int w = 0; w < walks; ++w) {
        m_walks.push_back(walkOn(m_task, m_limits.seed, w));
        if (w == 0 && !m_best.laid.empty()) m_walks[0]->startFrom(m_best.laid);
        m_walks.back()->aim(ceiling());
        if (m_task.items.size() <= mostSeparated)
            m_separations.push_back(std::make_unique<Separation>(m_task, m_limits.seed * 77 + std::uint64_t(w)));
    }
    m_widens = Frontier::applies(m_task) && !asksNothing(m_task);
    for (int w = 0; w < walks && m_widens; ++w)
        m_frontiers.push_back(std::make_unique<Frontier>(m_task, m_limits.seed, w));
    for (int w = 0; w < walks && !m_widens && PlainFrontier::applies(m_task); ++w)
        m_plainFrontiers.push_back(std::make_unique<PlainFrontier>(m_task, m_limits.seed, w));
    m_strides.resize(m_plainFrontiers.size());
    m_foundBy.resize(m_walks.size());
    m_stepsBy.resize(m_walks.size());
    m_wayBy.resize(m_walks.size());
    std::int64_t each = 1;
    double lasts = firstRound;
    while (!done()) {
        // Short rounds at first, when better layouts come thick and fast and are worth sharing.
        m_roundEnd = counted ? never : std::min(elapsed() + lasts, m_limits.seconds.value_or(never));
        round(counted ? std::min(each, (*m_limits.steps - m_steps + walks - 1) / walks)
                      : std::numeric_limits<std::int64_t>::max());
        share();
        tell();
        each = std::min<std::int64_t>(each * 2, 256);
        lasts = std::min(lasts * 1.5, longestRound);
    }
    return outcome();
}

void RectangleSearch::takeStart() {
    if (m_limits.start.size() != m_instance.items.size() || m_instance.items.empty()) return;
    m_best.laid.resize(m_instance.items.size());
    m_best.reached = m_task.sheets.front().used;
    for (const Placement &p : m_limits.start) {
        const RectangleItem &item = m_task.items[std::size_t(p.item)];
        Laid &laid = m_best.laid[std::size_t(p.item)];
        laid.x = Tick(p.corner.x.ticks());
        laid.y = Tick(p.corner.y.ticks());
        // An option left out as the double of another stands under that one.
        const Item &given = m_instance.items[std::size_t(p.item)];
        const Option &as = given.options[std::size_t(p.option)];
        for (int o = item.firstOption; o < item.endOption; ++o) {
            const RectangleOption &mine = m_task.options[std::size_t(o)];
            const Option &option = given.options[std::size_t(mine.index)];
            const bool same =
                mine.index == p.option || (option.sheet == as.sheet && option.places == as.places && item.group < 0 &&
                                           m_instance.outlines[std::size_t(option.outline)].width ==
                                               m_instance.outlines[std::size_t(as.outline)].width &&
                                           m_instance.outlines[std::size_t(option.outline)].height ==
                                               m_instance.outlines[std::size_t(as.outline)].height);
            if (same) laid.option = o;
        }
        m_best.reached = std::max(m_best.reached, laid.y + m_task.options[std::size_t(laid.option)].height);
    }
    m_told = m_best.reached;
}

Tick RectangleSearch::ceiling() const {
    if (!m_task.open()) return 0;
    if (m_best.laid.empty()) return m_task.sheets.front().y1;
    // From far away in longer strides, shorter ones each time no walk gets there.
    Tick stride = (m_best.reached - m_bound) / 8 >> std::min(m_quiet / 6, 20);
    stride -= stride % m_task.unit();
    return m_best.reached - std::max(stride, m_task.unit());
}

bool RectangleSearch::done() const {
    if (stopped()) return true;
    if (!m_best.laid.empty() && (!m_task.open() || m_best.reached <= std::max(m_bound, m_task.sheets.front().used)))
        return true;
    if (m_limits.steps) return m_steps >= *m_limits.steps;
    if (m_steps == 0 && m_best.laid.empty()) return false; // however late: one layout is better than none
    return m_limits.seconds && elapsed() >= *m_limits.seconds;
}

/// Steps are counted between rounds: time must not decide where they are given.
bool RectangleSearch::outOfTime() const { return stopped() || (!m_limits.steps && elapsed() >= m_roundEnd); }

bool RectangleSearch::stopped() const {
    if (!m_stop && m_limits.stop && m_limits.stop()) m_stop = true;
    return m_stop;
}

void RectangleSearch::round(std::int64_t steps) {
    const auto threads = std::min<std::size_t>(m_walks.size(), std::size_t(std::max(1, m_limits.threads)));
    std::atomic<std::size_t> next{0};
    auto work = [&] {
        for (std::size_t w; (w = next++) < m_walks.size();) walk(w, steps);
    };
    std::vector<std::thread> others;
    for (std::size_t t = 1; t < threads; ++t) others.emplace_back(work);
    work();
    for (std::thread &t : others) t.join();
}

void RectangleSearch::walk(std::size_t w, std::int64_t steps) {
    m_stepsBy[w] = 0;
    m_wayBy[w] = wayOf(w);
    if (m_wayBy[w] == Way::Separation) return separate(w, steps);
    if (m_wayBy[w] == Way::Frontier && m_widens) return widen(w, *m_frontiers[w], steps);
    if (m_wayBy[w] == Way::Frontier) return widenPlain(w, steps);
    reorder(w, steps);
}

void RectangleSearch::reorder(std::size_t w, std::int64_t steps) {
    Walk &walk = *m_walks[w];
    const int patience = m_task.items.size() > manyItems ? 1 : 8;
    for (std::int64_t i = 0; i < steps; ++i) {
        if (i > 0 && i % patience == 0 && outOfTime()) return;
        ++m_stepsBy[w];
        if (!walk.step()) continue;
        m_foundBy[w] = {walk.laid(), walk.reached()};
        if (!m_task.open() || walk.reached() <= m_bound) return;
        walk.aim(walk.reached() - m_task.unit());
    }
}

/// Both ways take turns, the one that found the best layout most of the time: on plain cloth and with many items that
/// is the order, with motifs to keep the separation. But where more is asked than to lie on plain cloth, the frontier
/// has half of the time: on stripes and drops without a perfect layout it is worth 6 % of the length. On plain bolts it
/// has most of it: perfect layouts of some thirty panels are found by it, and hardly by the walks.
RectangleSearch::Way RectangleSearch::wayOf(std::size_t w) const {
    if (m_task.items.size() > mostSeparated || m_round < 2 || (m_task.open() && m_best.laid.empty())) return Way::Order;
    const std::int64_t turn = m_round + std::int64_t(w);
    if (m_widens && turn % 4 < 2) return Way::Frontier;
    if (!m_plainFrontiers.empty() && turn % 4 < 3) return Way::Frontier;
    const int rarely = m_task.items.size() > 60 ? 12 : 4;
    const bool other = m_best.laid.empty() ? turn % 2 == 1 : turn % rarely == rarely - 1;
    // Of the very last unit separation knows little.
    const bool last = !m_best.laid.empty() && m_best.reached - m_bound <= m_task.unit();
    if (!m_plainFrontiers.empty()) return turn % (last ? 16 : 8) == 7 ? Way::Separation : Way::Order;
    return (m_lead == Way::Order) == other ? Way::Separation : Way::Order;
}

void RectangleSearch::separate(std::size_t w, std::int64_t steps) {
    Separation &separation = *m_separations[w];
    if (m_best.laid.empty()) {
        if (!separation.begun()) separation.start(m_walks[w]->laid(), 0);
    } else if (separation.top() != ceiling()) {
        separation.start(m_best.laid, ceiling());
    }
    for (std::int64_t i = 0; i < steps; ++i) {
        if (i > 0 && i % 8 == 0 && outOfTime()) return;
        ++m_stepsBy[w];
        if (!separation.step()) continue;
        m_foundBy[w] = {separation.laid(), separation.reached()};
        if (!m_task.open() || separation.reached() <= m_bound) return;
        // From a layout just found a small stride is soon made.
        const Tick stride = std::max(m_task.unit(), (separation.reached() - m_bound) / 16);
        separation.start(separation.laid(), separation.reached() - stride);
    }
}

/// Aims halfway to the bound, and where that is out of reach, half as far.
void RectangleSearch::widenPlain(std::size_t w, std::int64_t steps) {
    PlainFrontier &frontier = *m_plainFrontiers[w];
    Tick &stride = m_strides[w];
    auto aim = [&](Tick from) {
        stride = std::min(stride, (from - m_bound) / 2);
        stride = std::max(stride - stride % m_task.unit(), m_task.unit());
        frontier.aim(std::max(m_bound, from - stride));
    };
    if (!frontier.begun()) stride = m_best.reached - m_bound;
    if (!frontier.begun() || frontier.top() >= m_best.reached) aim(m_best.reached);
    Tick best = m_best.reached;
    for (std::int64_t i = 0; i < steps; ++i) {
        if (i > 0 && i % 8 == 0 && outOfTime()) return;
        while (frontier.hopeless() && stride > m_task.unit()) stride /= 2, aim(best);
        if (frontier.hopeless()) return reorder(w, steps - i);
        ++m_stepsBy[w];
        if (!frontier.step()) {
            if (stride <= m_task.unit() || frontier.runs() <= triesAtOnce) continue;
            stride /= 2;
            aim(best);
            continue;
        }
        m_foundBy[w] = {frontier.laid(), frontier.reached()};
        best = frontier.reached();
        if (best <= m_bound) return;
        aim(best);
    }
}

template <class F>
void RectangleSearch::widen(std::size_t w, F &frontier, std::int64_t steps) {
    if (!frontier.begun() || (m_task.open() && frontier.top() != ceiling())) frontier.aim(ceiling());
    for (std::int64_t i = 0; i < steps; ++i) {
        if (i > 0 && i % 8 == 0 && outOfTime()) return;
        ++m_stepsBy[w];
        if (!frontier.step()) continue;
        m_foundBy[w] = {frontier.laid(), frontier.reached()};
        if (!m_task.open() || frontier.reached() <= m_bound) return;
        frontier.aim(frontier.reached() - std::max(m_task.unit(), (frontier.reached() - m_bound) / 16));
    }
}

void RectangleSearch::share() {
    bool better = false;
    for (std::size_t w = 0; w < m_walks.size(); ++w) {
        m_steps += m_stepsBy[w];
        Found &found = m_foundBy[w];
        if (!found.laid.empty() && (m_best.laid.empty() || found.reached < m_best.reached)) {
            m_best = std::move(found);
            m_lead = m_wayBy[w];
            better = true;
        }
        found = {};
    }
    ++m_round;
    m_quiet = better ? 0 : m_quiet + 1;
    const Tick top = ceiling();
    for (auto &walk : m_walks)
        if (m_task.open() && walk->top() != top) walk->aim(top);
}

void RectangleSearch::tell() {
    if (!m_limits.report) return;
    Progress p;
    p.found = !m_best.laid.empty();
    p.bound = Length::ticks(m_bound - m_task.gap());
    p.length = Length::ticks(m_best.reached - m_task.gap());
    p.laid = p.found ? int(m_task.items.size()) : 0;
    p.share = share01();
    std::vector<Placement> best;
    if (p.found && m_best.reached < m_told) {
        best = placements();
        p.best = &best;
        m_told = m_best.reached;
    }
    m_limits.report(p);
}

double RectangleSearch::share01() const {
    if (m_limits.steps) return *m_limits.steps > 0 ? std::min(1.0, double(m_steps) / double(*m_limits.steps)) : 1;
    return m_limits.seconds && *m_limits.seconds > 0 ? std::min(1.0, elapsed() / *m_limits.seconds) : 1;
}

std::vector<Placement> RectangleSearch::placements() const {
    std::vector<Placement> all;
    for (const Laid &l : m_best.laid) all.push_back(m_task.placement(m_task.options[std::size_t(l.option)], l.x, l.y));
    return all;
}

Outcome RectangleSearch::outcome() const {
    Outcome o;
    o.steps = m_steps;
    o.bound = Length::ticks(m_bound - m_task.gap());
    if (m_best.laid.empty()) return o;
    o.kind = Outcome::Kind::Fits;
    o.placements = placements();
    o.length = Length::ticks(m_best.reached - m_task.gap());
    return o;
}

} // namespace

Outcome searchRectangles(const Instance &instance, const Limits &limits, Length bound) {
    return RectangleSearch(instance, limits, bound).run();
}

} // namespace boltwright::planner
