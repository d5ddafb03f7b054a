#include "core/planner/exact.h"

#include "core/base/ensure.h"
#include "core/planner/bounds/bounds.h"
#include "core/planner/bounds/reach.h"
#include "core/planner/exact/attempt.h"
#include "core/planner/solve.h"

#include <algorithm>
#include <chrono>
#include <limits>
#include <map>

namespace boltwright::planner {
namespace {

using State = Attempt::State;
using Kind = ExactOutcome::Kind;

/// Above this many clauses a solver spends its time on reading them.
constexpr std::size_t mostClauses = 4'000'000;
constexpr std::size_t mostItems = 48;

/// When to end: by the clock, by steps or because somebody says so.
class Clock {
public:
    explicit Clock(const ExactLimits &limits) : m_limits(limits) {
        if (limits.seconds && !limits.steps)
            m_end = std::chrono::steady_clock::now() + std::chrono::duration_cast<std::chrono::steady_clock::duration>(
                                                           std::chrono::duration<double>(*limits.seconds));
        m_stop = [this] { return stopped(); };
    }
    bool stopped() const {
        return (m_limits.stop && m_limits.stop()) || (m_end && std::chrono::steady_clock::now() >= *m_end);
    }
    void spend(std::int64_t steps) { m_spent += steps; }
    std::int64_t spent() const { return m_spent; }
    std::int64_t left() const {
        return m_limits.steps ? std::max<std::int64_t>(0, *m_limits.steps - m_spent)
                              : std::numeric_limits<std::int64_t>::max();
    }
    bool over() const { return left() == 0 || stopped(); }
    const std::function<bool()> &stop() const { return m_stop; }
    ExactPart part() const { return m_limits.part; }

private:
    const ExactLimits &m_limits;
    std::optional<std::chrono::steady_clock::time_point> m_end;
    std::function<bool()> m_stop;
    std::int64_t m_spent = 0;
};

/// A problem, and what an answer to it settles.
struct Line {
    BoxProblem problem;
    bool proves = false; ///< that it cannot be done settles the instance
};

/// An attempt at one of the problems.
struct Try {
    const Line *line = nullptr;
    std::unique_ptr<Attempt> attempt;
    std::int64_t share = 1; ///< of a turn: one in so many
};

/// What an instance of this gap is widened by (see BoxProblem): first as found layouts want it, then for proofs.
struct Widened {
    BoxProblem::Widening widening;
    bool proves;
};
std::vector<Widened> widenings(Length gap) {
    const std::int64_t g = gap.ticks();
    if (g == 0) return {{{0, 0}, true}};
    const std::int64_t half = rootBelow(g * g / 2);
    return {{{g, g}, false}, {{0, g}, true}, {{half, half}, true}};
}

/// Lets the attempts take turns, each round for longer. Can be run again to search on.
class Decider {
public:
    Decider(const Instance &instance, Length length, ExactPart part) : m_instance(instance), m_length(length) {
        const bool all = part == ExactPart::All;
        for (const Widened &w : widenings(instance.gap)) {
            auto problem = boxProblem(instance, length, w.widening);
            if (!problem || problem->size() > mostClauses) continue;
            m_lines.push_back(std::make_unique<Line>(Line{std::move(*problem), w.proves}));
            const Line &line = *m_lines.back();
            if (line.problem.impossible) continue;
            if (all) add(line, tilingAttempt(line.problem, true), 1);
            add(line, tilingAttempt(line.problem, false), 1);
            if (all) add(line, clauseAttempt(line.problem), mayTile(line.problem) ? 2 : 1);
            if (!line.proves) continue;
            if (all) add(line, sliceAttempt(line.problem, true), 4);
            add(line, sliceAttempt(line.problem, false), 4);
        }
    }

    ExactOutcome run(Clock &clock) {
        const auto refusing = std::find_if(m_lines.begin(), m_lines.end(),
                                           [](const auto &line) { return line->proves && line->problem.impossible; });
        if (refusing != m_lines.end()) return refused(**refusing, clock);
        while (!m_tries.empty() && !clock.over()) {
            if (m_next >= m_tries.size()) {
                m_next = 0;
                m_slice *= 2;
            }
            if (auto done = turn(clock)) return *done;
        }
        return {Kind::Undecided, {}, {}, clock.spent()};
    }

    bool exhausted() const { return m_tries.empty(); } ///< and still without an answer

private:
    void add(const Line &line, std::unique_ptr<Attempt> attempt, std::int64_t share) {
        if (attempt) m_tries.push_back({&line, std::move(attempt), share});
    }

    ExactOutcome refused(const Line &line, const Clock &clock) const {
        ExactOutcome outcome{Kind::Cannot, {}, {}, clock.spent()};
        const Sheet *open = openSheet(m_instance);
        if (!open) return outcome;
        // Refused are all lengths up to where one step more would end.
        const auto s = std::size_t(open - m_instance.sheets.data());
        const BoxProblem &problem = line.problem;
        outcome.beyond =
            problem.origins[s].y + Length::ticks(problem.heights[s] + problem.steps[s] - problem.widening.along);
        outcome.beyond = nextEnd(m_instance, std::max(outcome.beyond, m_length + Length::ticks(1)));
        return outcome;
    }

    std::optional<ExactOutcome> turn(Clock &clock) {
        Try &now = m_tries[m_next];
        const Line &line = *now.line;
        const std::int64_t before = now.attempt->steps();
        const State state = now.attempt->run(std::min(m_slice / now.share, clock.left()), clock.stop());
        clock.spend(now.attempt->steps() - before);
        if (state == State::Open) {
            ++m_next;
            return std::nullopt;
        }
        if (state == State::Fits) {
            ExactOutcome found{Kind::Fits, now.attempt->placements(), {}, clock.spent()};
            // Widened for a proof, or with groups left free, it may break a rule: then there is no telling.
            if (line.problem.phasesAgree(found.placements) && holds(m_instance, found.placements)) return found;
        }
        if (state == State::Cannot && line.proves) return refused(line, clock);
        if (state == State::GaveUp)
            m_tries.erase(m_tries.begin() + std::ptrdiff_t(m_next));
        else
            dropLine(line); // that problem has had its answer
        return std::nullopt;
    }

    void dropLine(const Line &line) {
        const auto ofLine = [&](const Try &t) { return t.line == &line; };
        m_next -= std::size_t(std::count_if(m_tries.begin(), m_tries.begin() + std::ptrdiff_t(m_next), ofLine));
        std::erase_if(m_tries, ofLine);
    }

    const Instance &m_instance;
    Length m_length;
    std::vector<std::unique_ptr<Line>> m_lines;
    std::vector<Try> m_tries;
    std::size_t m_next = 0;
    std::int64_t m_slice = 2000;
};

bool smallEnough(const Instance &instance) { return understood(instance) && instance.items.size() <= mostItems; }

/// Where something fixed ends, every layout ends.
Length leastEnd(const Instance &instance) {
    const Sheet *open = openSheet(instance);
    return open ? lengthUsed(instance, {}, int(open - instance.sheets.data())) : Length{};
}

ExactOutcome decideWithin(const Instance &instance, Length length, Clock &clock) {
    if (!smallEnough(instance)) return {};
    if (openSheet(instance) && length < leastEnd(instance))
        return {Kind::Cannot, {}, nextEnd(instance, leastEnd(instance)), 0};
    return Decider(instance, length, clock.part()).run(clock);
}

/// Raises the bound and shortens the layout until they meet.
class Closer {
public:
    Closer(const Instance &instance, Length bound, const std::vector<Placement> &known, Clock &clock,
           const std::function<void(const Closing &)> &report)
        : m_instance(instance), m_sheet(int(openSheet(instance) - instance.sheets.data())), m_clock(clock),
          m_report(report) {
        m_closing.bound = nextEnd(instance, std::max(bound, leastEnd(instance)));
        if (!known.empty() || instance.items.empty()) take(known);
        judge();
    }

    Closing run() {
        if (!smallEnough(m_instance)) return m_closing;
        // Each question gets some steps; when a round of questions brings no answer, the next gets more.
        for (std::int64_t slice = 20'000; !done(); slice *= 2) {
            while (!done() && askOnce(slice)) {
            }
            if (hopeless()) break;
        }
        m_closing.steps = m_clock.spent();
        return m_closing;
    }

private:
    bool done() const { return m_closing.proved || m_closing.bound > roomEnd() || m_clock.over(); }

    Length roomEnd() const { return boxOf(m_instance.sheets[std::size_t(m_sheet)].room).high.y; }

    /// Asks where an answer says most: at the bound (it may be reached), below the layout (it may be best), between.
    bool askOnce(std::int64_t slice) {
        if (m_closing.placements.empty()) return ask(m_closing.bound, slice) || askAbove(slice);
        const Length shorter = m_closing.length - Length::ticks(1);
        if (shorter <= m_closing.bound || endOf(shorter) == endOf(m_closing.bound)) return ask(m_closing.bound, slice);
        // A refusal just below the layout known settles everything; most of the time goes there.
        if (ask(m_closing.bound, slice / 2)) return true;
        return ask(shorter, slice) ||
               ask(m_closing.bound + Length::ticks((shorter - m_closing.bound).ticks() / 2), slice / 4);
    }

    /// How far up anything can be of use; two lengths where this is the same are one question.
    std::optional<BoxProblem::Ticks> endOf(Length length) {
        auto &end = m_ends[length];
        if (!end) {
            const auto problem = boxProblem(m_instance, length, widenings(m_instance.gap).front().widening);
            end = problem ? problem->heights[std::size_t(m_sheet)] : length.ticks();
        }
        return end;
    }

    /// While there is no layout: longer and longer.
    bool askAbove(std::int64_t slice) {
        const Length high = roomEnd();
        const Length low = boxOf(m_instance.sheets[std::size_t(m_sheet)].room).low.y;
        for (std::int64_t part : {16, 4, 1, 0}) {
            const Length more = part ? Length::ticks((m_closing.bound - low).ticks() / part) : high - m_closing.bound;
            const Length length = std::min(high, m_closing.bound + more);
            if (length > m_closing.bound && ask(length, slice)) return true;
        }
        return false;
    }

    /// Whether the question was answered. Unanswered, it is kept, and searched on when asked again.
    bool ask(Length length, std::int64_t slice) {
        auto &decider = m_open[length];
        if (!decider) decider = std::make_unique<Decider>(m_instance, length, m_clock.part());
        ExactLimits limits;
        limits.steps = std::min(slice, m_clock.left());
        limits.stop = m_clock.stop();
        Clock clock(limits);
        const ExactOutcome outcome = decider->run(clock);
        m_clock.spend(std::max<std::int64_t>(1, outcome.steps));
        if (outcome.kind == Kind::Undecided) return false;
        if (outcome.kind == Kind::Cannot)
            m_closing.bound = std::max(m_closing.bound, outcome.beyond);
        else
            take(outcome.placements);
        // What is settled by the answer need not be asked any more.
        std::erase_if(m_open, [&](const auto &entry) {
            return entry.first < m_closing.bound || (!m_closing.placements.empty() && entry.first >= m_closing.length);
        });
        judge();
        return true;
    }

    bool hopeless() const {
        return std::all_of(m_open.begin(), m_open.end(), [](const auto &entry) { return entry.second->exhausted(); });
    }

    void take(const std::vector<Placement> &placements) {
        const Length length = lengthUsed(m_instance, placements, m_sheet);
        if (!m_closing.placements.empty() && length >= m_closing.length) return;
        m_closing.placements = placements;
        m_closing.length = length;
    }

    void judge() {
        m_closing.proved = !m_closing.placements.empty() && m_closing.length <= m_closing.bound;
        m_closing.steps = m_clock.spent();
        if (m_report) m_report(m_closing);
    }

    const Instance &m_instance;
    int m_sheet;
    Clock &m_clock;
    const std::function<void(const Closing &)> &m_report;
    Closing m_closing;
    std::map<Length, std::optional<BoxProblem::Ticks>> m_ends;
    std::map<Length, std::unique_ptr<Decider>> m_open; ///< questions asked and not answered, by length
};

} // namespace

ExactOutcome decide(const Instance &instance, Length length, const ExactLimits &limits) {
    Clock clock(limits);
    return decideWithin(instance, length, clock);
}

Closing closeExcess(const Instance &instance, Length bound, const std::vector<Placement> &known,
                    const ExactLimits &limits, const std::function<void(const Closing &)> &report) {
    ensure(openSheet(instance) != nullptr, "only an open sheet has an excess to close");
    Clock clock(limits);
    return Closer(instance, bound, known, clock, report).run();
}

bool fillsExactly(const Instance &instance, Length length) {
    if (!smallEnough(instance) || instance.gap.ticks() != 0) return false;
    const auto problem = boxProblem(instance, length, {0, 0});
    return problem && !problem->impossible && mayTile(*problem);
}

bool decidable(const Instance &instance) {
    if (!smallEnough(instance)) return false;
    const Sheet *open = openSheet(instance);
    const Length length = open ? lowerBound(instance) : Length{};
    const auto problem = boxProblem(instance, length, widenings(instance.gap).front().widening);
    return problem && problem->size() <= mostClauses;
}

} // namespace boltwright::planner
