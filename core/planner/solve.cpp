#include "core/planner/solve.h"

#include "core/base/ensure.h"
#include "core/planner/bounds/bounds.h"
#include "core/planner/exact.h"
#include "core/planner/polygon_search.h"
#include "core/planner/rectangle_search.h"
#include "core/planner/tidy.h"

#include <algorithm>
#include <atomic>
#include <chrono>
#include <mutex>
#include <thread>
#include <utility>

namespace boltwright::planner {
namespace {

/// The search alone comes first: it settles most jobs in less, and gives the exact search something to beat.
constexpr double headStart = 0.1;
constexpr double longestHeadStart = 0.5; ///< seconds

/// On remnants of odd shape, or with many items, the search is the likelier to come to an end.
constexpr double longHeadStart = 0.4;

/// Where the items would have to fill the cloth to the last square, tiling finds what searches of orders do not; and
/// part layouts, given their time, what tiling does not find soon.
constexpr double shortHeadStart = 0.02, longestShortHeadStart = 0.1;
constexpr double searchBesideTiling = 2; ///< seconds; then both threads tile
constexpr std::size_t mostTiled = 32;    ///< beyond, it hardly ever comes to an end

/// Better layouts come thick and fast at first; to look at each would take longer than to find it. So there is a pause
/// after each that is told, and a longer one where whoever is told takes long.
constexpr double shortestPause = 0.1; ///< seconds
constexpr double pauseForLooking = 20;

bool searchIsLikelier(const Instance &instance) {
    const bool odd = std::any_of(instance.sheets.begin(), instance.sheets.end(), [](const Sheet &s) {
        return !s.open && (!s.flaws.empty() || !isUprightRectangle(s.room));
    });
    return !instance.sheets.front().open && instance.items.size() > (odd ? 12u : 24u);
}

bool isOpen(const Instance &instance) { return !instance.sheets.empty() && instance.sheets.front().open; }

/// Proved without a search.
bool isImpossible(const Instance &instance, Length bound) {
    if (!isOpen(instance)) return cannotFit(instance);
    return someItemHasNoPlace(instance) || bound > boxOf(instance.sheets.front().room).high.y;
}

/// One instance on its way to an outcome: search and exact search in turns or side by side, and what both have found.
class Solver {
public:
    Solver(const Instance &instance, const Limits &limits)
        : m_instance(instance), m_limits(limits), m_open(isOpen(instance)) {}

    Outcome run();

private:
    void search(const Limits &limits);
    void exact(const ExactLimits &limits);
    void inSteps();
    void inTime();
    void offer(const std::vector<Placement> &placements);
    void raiseBound(Length bound);
    void refuse();
    bool tiles() const;
    bool settled() const; ///< nothing is left to find or prove
    bool stopped() const { return m_settled || (m_limits.stop && m_limits.stop()); }
    double spent() const; ///< seconds
    double left() const;
    Limits part();
    void tell(Progress progress);
    void tellWhatWaits();
    void keepToTell(const std::vector<Placement> &placements, Length length);
    std::pair<Length, std::vector<Placement>> known() const;
    Outcome outcome() const;

    const Instance &m_instance;
    const Limits &m_limits;
    const bool m_open;
    const std::chrono::steady_clock::time_point m_begin = std::chrono::steady_clock::now();
    mutable std::mutex m_mutex; ///< guards what follows
    std::vector<Placement> m_placements;
    Length m_length, m_bound;
    bool m_refused = false;
    std::int64_t m_steps = 0;
    std::vector<Placement> m_toTell; ///< the best layout, until it is told
    std::optional<Length> m_told;    ///< the length of that, or of the last one told
    double m_tellAgain = 0;          ///< seconds from the beginning
    double m_share = 0;              ///< last told
    std::atomic<bool> m_settled{false};
};

Outcome Solver::run() {
    if (m_open) m_bound = lowerBound(m_instance);
    if (isImpossible(m_instance, m_bound)) refuse();
    if (m_refused) return outcome();
    if (!m_limits.start.empty()) {
        offer(m_limits.start);
        m_told = m_length; // whoever gave it knows it
    }
    if (!m_instance.rectilinear() || !decidable(m_instance))
        search(part());
    else if (m_limits.steps)
        inSteps();
    else
        inTime();
    return outcome();
}

/// Half the steps each, one after the other, so that threads do not matter.
void Solver::inSteps() {
    Limits half = part();
    half.steps = (*m_limits.steps + 1) / 2;
    search(half);
    if (!m_settled) exact({.seconds = {}, .steps = *m_limits.steps / 2, .stop = [this] { return stopped(); }});
}

void Solver::inTime() {
    Limits first = part();
    const double whole = m_limits.seconds.value_or(1e9);
    const bool tiling = tiles();
    first.seconds = tiling                         ? std::min(whole * shortHeadStart, longestShortHeadStart)
                    : searchIsLikelier(m_instance) ? whole * longHeadStart
                                                   : std::min(whole * headStart, longestHeadStart);
    search(first);
    if (m_settled || stopped()) return;
    const auto stop = [this] { return stopped(); };
    if (m_limits.threads <= 1) {
        exact({.seconds = left() / 2, .steps = {}, .stop = stop});
        if (!m_settled) search(part());
        return;
    }
    const bool both = tiling && m_instance.items.size() <= mostTiled;
    std::thread beside([&] { exact({.seconds = left(), .steps = {}, .stop = stop}); });
    Limits others = part();
    others.threads = m_limits.threads - 1;
    if (both) others.seconds = std::min(left(), searchBesideTiling);
    search(others);
    if (both && !m_settled && !stopped()) {
        exact({.seconds = left(), .steps = {}, .stop = stop, .part = ExactPart::Across});
        if (!m_settled && !stopped()) search(part()); // it gave up before its time
    }
    beside.join();
}

/// A layout that is as good as the bound would leave nothing over.
bool Solver::tiles() const { return fillsExactly(m_instance, known().first); }

double Solver::spent() const {
    return std::chrono::duration<double>(std::chrono::steady_clock::now() - m_begin).count();
}

double Solver::left() const { return std::max(0.0, m_limits.seconds.value_or(1e9) - spent()); }

/// The limits with what has been found until now, and ends and reports that know of both searches.
Limits Solver::part() {
    const std::lock_guard lock(m_mutex);
    Limits l = m_limits;
    if (m_limits.seconds) l.seconds = left();
    l.start = m_placements;
    l.seed = m_limits.seed + std::uint64_t(m_steps); // a search that goes on does not repeat itself
    l.stop = [this] { return stopped(); };
    if (m_limits.report) l.report = [this](const Progress &p) { tell(p); };
    return l;
}

void Solver::tell(Progress p) {
    m_share = p.share;
    std::vector<Placement> best;
    {
        const std::lock_guard alone(m_mutex);
        p.bound = m_bound;
        if (!m_placements.empty() && (!p.found || m_length <= p.length)) {
            p.found = true;
            p.length = m_length;
            keepToTell(m_placements, m_length);
        } else if (p.best) {
            keepToTell(*p.best, p.length);
        }
        if (p.found && m_open) p.bound = std::min(p.bound, p.length);
        if (!m_toTell.empty() && spent() >= m_tellAgain) best.swap(m_toTell);
    }
    p.best = best.empty() ? nullptr : &best;
    const double before = spent();
    m_limits.report(p);
    if (p.best) m_tellAgain = spent() + std::max(shortestPause, pauseForLooking * (spent() - before));
}

/// At the end of a search, after which nothing may be told for long.
void Solver::tellWhatWaits() {
    if (!m_limits.report || stopped()) return;
    m_tellAgain = 0;
    Progress p;
    p.share = m_share;
    p.laid = int(m_instance.items.size());
    tell(p);
}

void Solver::keepToTell(const std::vector<Placement> &placements, Length length) {
    if (m_told && length >= *m_told) return;
    m_toTell = placements;
    m_told = length;
}

void Solver::search(const Limits &limits) {
    const Length bound = known().first;
    const Outcome o = m_instance.rectilinear() ? searchRectangles(m_instance, limits, bound)
                                               : searchPolygons(m_instance, limits, bound);
    if (o.kind == Outcome::Kind::CannotFit) refuse();
    if (o.kind == Outcome::Kind::Fits) {
        offer(o.placements);
        tellWhatWaits();
    }
    const std::lock_guard lock(m_mutex);
    m_steps += o.steps;
}

void Solver::exact(const ExactLimits &limits) {
    if (!m_open) {
        const ExactOutcome o = decide(m_instance, {}, limits);
        if (o.kind == ExactOutcome::Kind::Cannot) refuse();
        if (o.kind == ExactOutcome::Kind::Fits) offer(o.placements);
        const std::lock_guard lock(m_mutex);
        m_steps += o.steps;
        return;
    }
    auto learn = [this](const Closing &c) {
        if (!c.placements.empty()) offer(c.placements);
        raiseBound(c.bound);
    };
    const auto [bound, placements] = known();
    const Closing c = closeExcess(m_instance, bound, placements, limits, learn);
    learn(c);
    const std::lock_guard lock(m_mutex);
    m_steps += c.steps;
}

std::pair<Length, std::vector<Placement>> Solver::known() const {
    const std::lock_guard lock(m_mutex);
    return {m_bound, m_placements};
}

void Solver::offer(const std::vector<Placement> &placements) {
    ensure(holds(m_instance, placements), "a layout that a search calls right is right");
    const Length length = m_open ? lengthUsed(m_instance, placements, 0) : Length{};
    const std::lock_guard lock(m_mutex);
    if (m_placements.empty() || length < m_length) {
        m_placements = placements;
        m_length = length;
    }
    if (settled()) m_settled = true;
}

void Solver::raiseBound(Length bound) {
    const std::lock_guard lock(m_mutex);
    m_bound = std::max(m_bound, bound);
    if (settled()) m_settled = true;
}

void Solver::refuse() {
    const std::lock_guard lock(m_mutex);
    ensure(m_placements.empty(), "what has a layout is not refused");
    m_refused = true;
    m_settled = true;
}

bool Solver::settled() const { return m_refused || (!m_placements.empty() && (!m_open || m_length <= m_bound)); }

Outcome Solver::outcome() const {
    Outcome o;
    o.steps = m_steps;
    o.proved = settled();
    if (m_refused) {
        o.kind = Outcome::Kind::CannotFit;
        return o;
    }
    o.bound = m_bound;
    if (m_placements.empty()) return o;
    o.kind = Outcome::Kind::Fits;
    o.placements = tidied(m_instance, m_placements);
    o.length = m_open ? lengthUsed(m_instance, o.placements, 0) : Length{};
    // Slanted edges round to ticks, and may leave a layout a few of them shorter than it was proved it could be.
    if (m_open) o.bound = std::min(m_bound, o.length);
    return o;
}

} // namespace

Outcome solve(const Instance &instance, const Limits &limits) { return Solver(instance, limits).run(); }

} // namespace boltwright::planner
