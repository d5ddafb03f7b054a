#include "core/planner/exact.h"

#include "core/base/ensure.h"
#include "core/planner/bounds/bounds.h"
#include "core/planner/bounds/reach.h"
#include "core/planner/exact/attempt.h"
#include "core/planner/solve.h"

#include <algorithm>
#include <chrono>
#include <limits>

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
            m_end = std::chrono::steady_clock::now() +
                    std::chrono::duration_cast<std::chrono::steady_clock::duration>(std::chrono::duration<double>(*limits.seconds));
        m_stop = [this] { return stopped(); };
    }
    bool stopped() const {
        return (m_limits.stop && m_limits.stop()) || (m_end && std::chrono::steady_clock::now() >= *m_end);
    }
    void spend(std::int64_t steps) { m_spent += steps; }
    std::int64_t spent() const { return m_spent; }
    std::int64_t left() const {
        return m_limits.steps ? std::max<std::int64_t>(0, *m_limits.steps - m_spent) : std::numeric_limits<std::int64_t>::max();
    }
    bool over() const { return left() == 0 || stopped(); }
    const std::function<bool()> &stop() const { return m_stop; }

private:
    const ExactLimits &m_limits;
    std::optional<std::chrono::steady_clock::time_point> m_end;
    std::function<bool()> m_stop;
    std::int64_t m_spent = 0;
};

/// A problem with the attempts made on it.
struct Line {
    BoxProblem problem;
    bool proves = false; ///< that it cannot be done settles the instance
    std::vector<std::unique_ptr<Attempt>> attempts;
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

/// Lets the attempts take turns, each time for longer.
class Decider {
public:
    Decider(const Instance &instance, Length length, Clock &clock) : m_instance(instance), m_length(length), m_clock(clock) {
        for (const Widened &w : widenings(instance.gap)) {
            auto problem = boxProblem(instance, length, w.widening);
            if (!problem || problem->size() > mostClauses) continue;
            auto line = std::make_unique<Line>();
            line->problem = std::move(*problem);
            line->proves = w.proves;
            if (!line->problem.impossible) line->attempts.push_back(clauseAttempt(line->problem));
            m_lines.push_back(std::move(line));
        }
    }

    ExactOutcome run() {
        for (const auto &line : m_lines)
            if (line->proves && line->problem.impossible) return refused(*line);
        for (std::int64_t slice = firstSlice; !m_clock.over(); slice *= 2) {
            bool any = false;
            for (const auto &line : m_lines)
                for (auto &attempt : line->attempts) {
                    if (!attempt || m_clock.over()) continue;
                    any = true;
                    if (auto done = turn(*line, attempt, slice)) return *done;
                }
            if (!any) break;
        }
        return {Kind::Undecided, {}, {}, m_clock.spent()};
    }

private:
    static constexpr std::int64_t firstSlice = 2000;

    ExactOutcome refused(const Line &line) const {
        ExactOutcome outcome{Kind::Cannot, {}, {}, m_clock.spent()};
        const Sheet *open = openSheet(m_instance);
        if (!open) return outcome;
        // Refused are all lengths up to where one step more would end.
        const auto s = std::size_t(open - m_instance.sheets.data());
        const BoxProblem &problem = line.problem;
        outcome.beyond = problem.origins[s].y + Length::ticks(problem.heights[s] + problem.steps[s] - problem.widening.along);
        outcome.beyond = nextEnd(m_instance, std::max(outcome.beyond, m_length + Length::ticks(1)));
        return outcome;
    }

    std::optional<ExactOutcome> turn(Line &line, std::unique_ptr<Attempt> &attempt, std::int64_t slice) {
        const std::int64_t before = attempt->steps();
        const State state = attempt->run(std::min(slice, m_clock.left()), m_clock.stop());
        m_clock.spend(attempt->steps() - before);
        if (state == State::Open) return std::nullopt;
        if (state == State::Fits) {
            ExactOutcome found{Kind::Fits, attempt->placements(), {}, m_clock.spent()};
            // Widened for a proof, or with groups left free, it may break a rule: then there is no telling.
            if (line.problem.phasesAgree(found.placements) && holds(m_instance, found.placements)) return found;
        }
        if (state == State::Cannot && line.proves) return refused(line);
        if (state != State::GaveUp) line.attempts.clear(); // the whole problem has had its answer
        else attempt.reset();
        return std::nullopt;
    }

    const Instance &m_instance;
    Length m_length;
    Clock &m_clock;
    std::vector<std::unique_ptr<Line>> m_lines;
};

bool smallEnough(const Instance &instance) { return understood(instance) && instance.items.size() <= mostItems; }

/// Where something fixed ends, every layout ends.
Length leastEnd(const Instance &instance) {
    const Sheet *open = openSheet(instance);
    return open ? lengthUsed(instance, {}, int(open - instance.sheets.data())) : Length{};
}

ExactOutcome decideWithin(const Instance &instance, Length length, Clock &clock) {
    if (!smallEnough(instance)) return {};
    if (openSheet(instance) && length < leastEnd(instance)) return {Kind::Cannot, {}, nextEnd(instance, leastEnd(instance)), 0};
    return Decider(instance, length, clock).run();
}

/// Raises the bound and shortens the layout until they meet.
class Closer {
public:
    Closer(const Instance &instance, Length bound, const std::vector<Placement> &known, Clock &clock,
           const std::function<void(const Closing &)> &report)
        : m_instance(instance), m_sheet(int(openSheet(instance) - instance.sheets.data())), m_clock(clock), m_report(report) {
        m_closing.bound = nextEnd(instance, std::max(bound, leastEnd(instance)));
        if (!known.empty() || instance.items.empty()) take(known);
        judge();
    }

    Closing run() {
        // Each question gets some steps; when a round of questions brings no answer, the next gets more.
        for (std::int64_t slice = 20'000; !done(); slice *= 4) {
            while (!done() && askOnce(slice)) {}
            if (m_clock.over() || !smallEnough(m_instance)) break;
        }
        m_closing.steps = m_clock.spent();
        return m_closing;
    }

private:
    bool done() const { return m_closing.proved || m_closing.bound > roomEnd() || m_clock.over(); }

    Length roomEnd() const { return boxOf(m_instance.sheets[std::size_t(m_sheet)].room).high.y; }

    /// Asks where an answer says most: at the bound (it may be reached), below the layout (it may be best), between.
    bool askOnce(std::int64_t slice) {
        if (ask(m_closing.bound, slice)) return true;
        if (m_closing.placements.empty()) return askAbove(slice);
        const Length shorter = m_closing.length - Length::ticks(1);
        if (shorter <= m_closing.bound) return false;
        return ask(shorter, slice) || ask(m_closing.bound + Length::ticks((shorter - m_closing.bound).ticks() / 2), slice);
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

    /// Whether the question was answered.
    bool ask(Length length, std::int64_t slice) {
        ExactLimits limits;
        limits.steps = std::min(slice, m_clock.left());
        limits.stop = m_clock.stop();
        Clock clock(limits);
        const ExactOutcome outcome = decideWithin(m_instance, length, clock);
        m_clock.spend(std::max<std::int64_t>(1, outcome.steps));
        if (outcome.kind == Kind::Undecided) return false;
        if (outcome.kind == Kind::Cannot) m_closing.bound = std::max(m_closing.bound, outcome.beyond);
        else take(outcome.placements);
        judge();
        return true;
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
};

} // namespace

ExactOutcome decide(const Instance &instance, Length length, const ExactLimits &limits) {
    Clock clock(limits);
    return decideWithin(instance, length, clock);
}

Closing closeExcess(const Instance &instance, Length bound, const std::vector<Placement> &known, const ExactLimits &limits,
                    const std::function<void(const Closing &)> &report) {
    ensure(openSheet(instance) != nullptr, "only an open sheet has an excess to close");
    Clock clock(limits);
    return Closer(instance, bound, known, clock, report).run();
}

bool decidable(const Instance &instance) {
    if (!smallEnough(instance)) return false;
    const Sheet *open = openSheet(instance);
    const Length length = open ? lowerBound(instance) : Length{};
    const auto problem = boxProblem(instance, length, widenings(instance.gap).front().widening);
    return problem && problem->size() <= mostClauses;
}

} // namespace boltwright::planner
