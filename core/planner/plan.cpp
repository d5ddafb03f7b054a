#include "core/planner/plan.h"

#include "core/base/language.h"
#include "core/check/check.h"
#include "core/figures/figures.h"
#include "core/planner/build.h"
#include "core/planner/pair_lots.h"
#include "core/rules/rules.h"

#include <algorithm>
#include <chrono>
#include <mutex>
#include <set>
#include <tuple>

namespace boltwright {
namespace {

using planner::ClothInstance;
using Kind = planner::Outcome::Kind;

std::string nameOf(const Panel &panel) { return panel.name.empty() ? panel.id : panel.name; }

/// Cuts in the job's order of panels, then by copy and piece: the order a person looks for them in.
void sortCuts(const Job &job, std::vector<Cut> &cuts) {
    const auto rank = [&](const Cut &c) { return job.panel(c.panel) - job.panels.data(); };
    std::stable_sort(cuts.begin(), cuts.end(), [&](const Cut &a, const Cut &b) {
        return std::tuple(rank(a), a.copy, a.piece) < std::tuple(rank(b), b.copy, b.piece);
    });
}

bool listed(const Layout &layout, const Concession &c) {
    return std::any_of(layout.conceded.begin(), layout.conceded.end(), [&](const Concession &o) {
        return o.kind == c.kind && o.panel == c.panel && o.copy == c.copy && o.edge == c.edge;
    });
}

/// Everything that this layout departs from, once each: pieces, trims, turns, other cloth as the cuts show them; being
/// off centre as it was given; and for what stays locked, what its own layout conceded.
void listConcessions(const Job &job, const Layout *from, const planner::GivenUp *given, Layout &layout) {
    std::vector<Concession> all;
    for (const Cut &cut : layout.cuts) {
        const Panel &panel = *job.panel(cut.panel);
        const auto add = [&](Concession::Kind kind) { all.push_back({kind, cut.panel, cut.copy, {}, {}, {}, {}}); };
        if (cut.of > 1) add(Concession::Kind::Seam);
        const Cloth &home = job.clothOf(panel), &cloth = job.clothOf(cut);
        if (&home != &cloth) add(Concession::Kind::OtherCloth);
        const auto turns = turnsOf(panel, home, cloth);
        if (std::find(turns.begin(), turns.end(), cut.turn) == turns.end()) add(Concession::Kind::Turn);
        if (given && given->offCentre.count({cut.panel, cut.copy})) add(Concession::Kind::Uncentre);
        for (Concession &trim : trimsOf(panel, cut)) all.push_back(std::move(trim));
    }
    if (from)
        for (const Concession &c : from->conceded) {
            const bool stays = std::any_of(layout.cuts.begin(), layout.cuts.end(), [&](const Cut &cut) {
                return cut.state != CutState::Planned && cut.panel == c.panel && cut.copy == c.copy;
            });
            if (stays && c.kind == Concession::Kind::Uncentre) all.push_back(c);
        }
    for (Concession &c : all)
        if (!listed(layout, c)) layout.conceded.push_back(std::move(c));
    if (given)
        for (const planner::CopyKey &copy : given->leftOut) layout.leftOut.push_back({copy.first, copy.second, {}});
}

/// Shares of the time: a cloth with more to lay gets more of it.
std::vector<double> sharesOf(const std::vector<ClothInstance> &cloths) {
    double all = 0;
    std::vector<double> shares;
    for (const ClothInstance &c : cloths) shares.push_back(double(c.instance.items.size())), all += shares.back();
    for (double &s : shares) s = all > 0 ? s / all : 1.0;
    return shares;
}

class Planner {
public:
    Planner(const Job &job, const PlanOptions &options)
        : m_job(job), m_options(options),
          m_cloths(planner::buildInstances(job, options.from, options.given ? *options.given : planner::GivenUp{})),
          m_outcomes(m_cloths.size()) {}

    Plan run() {
        if (const std::string why = flowBetweenCloths(); !why.empty()) return no(Kind::CannotFit, why);
        for (const ClothInstance &c : m_cloths)
            if (!c.impossible.empty()) return no(Kind::CannotFit, c.impossible);
        const std::vector<double> shares = sharesOf(m_cloths);
        for (std::size_t i = 0; i < m_cloths.size(); ++i)
            if (m_cloths[i].instance.items.empty()) m_outcomes[i] = allStays(m_cloths[i]);
        std::int64_t steps = 0;
        for (std::size_t i = 0; i < m_cloths.size(); ++i) {
            m_outcomes[i] = solve(i, shares[i]);
            steps += m_outcomes[i].steps;
            m_shareDone += shares[i];
            if (m_outcomes[i].kind != Kind::Fits) return no(m_outcomes[i].kind, whyNot(m_cloths[i], m_outcomes[i]));
        }
        Plan plan;
        plan.kind = Kind::Fits;
        plan.layout = layout();
        plan.steps = steps;
        plan.proved =
            !plan.layout.cloths.empty() && std::all_of(plan.layout.cloths.begin(), plan.layout.cloths.end(),
                                                       [&](const ClothUse &u) { return u.proved || !u.length; });
        const std::vector<Finding> findings = check(m_job, plan.layout);
        if (!findings.empty()) return no(Kind::NotFound, findings.front().text);
        return plan;
    }

private:
    static Plan no(Kind kind, const std::string &why) {
        Plan plan;
        plan.kind = kind;
        plan.proved = kind == Kind::CannotFit;
        plan.reason = why;
        return plan;
    }

    std::string flowBetweenCloths() const {
        for (const Flow &flow : m_job.flows) {
            const Panel *a = m_job.panel(flow.from.panel), *b = m_job.panel(flow.to.panel);
            if (a && b && &m_job.clothOf(*a) != &m_job.clothOf(*b))
                return phrase("the pattern is to run on from %1 to %2, and they are cut from different cloths",
                              {nameOf(*a), nameOf(*b)});
        }
        return {};
    }

    /// Where mirrored pairs have dye lots to choose between, one choice after the other.
    planner::Outcome solve(std::size_t i, double share) {
        planner::PairLots lots = planner::pairLots(m_job, m_cloths[i]);
        if (lots.choices.empty()) {
            planner::Outcome none;
            none.kind = lots.all ? Kind::CannotFit : Kind::NotFound;
            return none;
        }
        planner::Outcome outcome;
        bool proved = lots.all;
        // What a choice that is soon refuted leaves of its time goes to the others.
        const auto begin = std::chrono::steady_clock::now();
        const double seconds = m_options.seconds.value_or(5) * share;
        for (std::size_t k = 0; k < lots.choices.size(); ++k) {
            m_cloths[i] = std::move(lots.choices[k]);
            double left = share;
            if (!m_options.steps && seconds > 0) {
                const double gone =
                    std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count() / seconds;
                left = share * std::max(0., 1 - gone) * double(lots.choices.size()) / double(lots.choices.size() - k);
            }
            outcome = solveOne(i, left / double(lots.choices.size()));
            if (outcome.kind == Kind::Fits) return outcome;
            proved = proved && outcome.kind == Kind::CannotFit;
        }
        if (!proved) outcome.kind = Kind::NotFound;
        return outcome;
    }

    planner::Outcome solveOne(std::size_t i, double share) {
        const ClothInstance &cloth = m_cloths[i];
        if (cloth.instance.items.empty()) return allStays(cloth);
        planner::Limits limits;
        if (m_options.steps)
            limits.steps = std::max<std::int64_t>(1, std::int64_t(double(*m_options.steps) * share));
        else
            limits.seconds = m_options.seconds.value_or(5) * share;
        limits.threads = m_options.threads;
        limits.seed = m_options.seed;
        limits.stop = m_options.stop;
        if (m_options.from) limits.start = placementsFrom(cloth, *m_options.from);
        if (!limits.start.empty() && !planner::holds(cloth.instance, limits.start)) limits.start.clear();
        if (m_options.report && i > 0 && !limits.start.empty()) tellOfOthers(i, share, limits.start);
        if (m_options.report) limits.report = [this, i, share](const planner::Progress &p) { report(i, share, p); };
        planner::Outcome outcome = planner::solve(cloth.instance, limits);
        if (outcome.kind == Kind::CannotFit && !cloth.exactRooms) outcome.kind = Kind::NotFound;
        return outcome;
    }

    /// Everything on this cloth is locked or cut: nothing to search.
    static planner::Outcome allStays(const ClothInstance &cloth) {
        planner::Outcome o;
        o.kind = Kind::Fits;
        if (!cloth.instance.sheets.empty() && cloth.instance.sheets.front().open) {
            o.length = o.bound = planner::lengthUsed(cloth.instance, {}, 0);
            o.proved = true;
        }
        return o;
    }

    /// Nothing is searched for on the cloths after this one.
    bool isLast(std::size_t i) const {
        return std::all_of(m_cloths.begin() + std::ptrdiff_t(i) + 1, m_cloths.end(),
                           [](const ClothInstance &c) { return c.instance.items.empty(); });
    }

    /// What the cloths before this one came to is told before this one is bettered too, which may never be.
    void tellOfOthers(std::size_t i, double share, const std::vector<planner::Placement> &start) {
        planner::Progress p;
        p.found = true;
        p.best = &start;
        if (m_cloths[i].instance.sheets.front().open) {
            p.length = planner::lengthUsed(m_cloths[i].instance, start, 0);
            p.bound = planner::lowerBound(m_cloths[i].instance);
        }
        report(i, share, p);
    }

    void report(std::size_t i, double share, const planner::Progress &p) {
        const std::scoped_lock lock(m_reporting);
        PlanProgress progress;
        progress.share = std::min(1.0, m_shareDone + share * p.share);
        progress.cloth = m_cloths[i].cloth;
        progress.found = p.found;
        progress.length = p.length;
        progress.bound = p.bound;
        Layout better;
        if (p.best && isLast(i)) {
            m_outcomes[i].placements = *p.best;
            m_outcomes[i].length = p.length;
            m_outcomes[i].bound = p.bound;
            better = layout();
            if (check(m_job, better).empty()) progress.better = &better;
        }
        m_options.report(progress);
    }

    Layout layout() const {
        Layout layout;
        layout.madeBy = "plan";
        for (std::size_t i = 0; i < m_cloths.size(); ++i) {
            const ClothInstance &cloth = m_cloths[i];
            for (const planner::Placement &p : m_outcomes[i].placements) {
                layout.cuts.push_back(cutFrom(cloth, p));
            }
            layout.cuts.insert(layout.cuts.end(), cloth.staying.begin(), cloth.staying.end());
        }
        sortCuts(m_job, layout.cuts);
        listConcessions(m_job, m_options.from, m_options.given, layout);
        layout = withFigures(m_job, std::move(layout));
        for (std::size_t i = 0; i < m_cloths.size(); ++i)
            for (ClothUse &use : layout.cloths)
                if (use.id == m_cloths[i].cloth && use.length) {
                    // The search's own bound, never above what the cuts reach once their places are whole ticks.
                    use.bound = std::min(m_outcomes[i].bound, *use.length);
                    use.proved = m_outcomes[i].proved && use.bound == use.length;
                }
        return layout;
    }

    std::string whyNot(const ClothInstance &c, const planner::Outcome &outcome) const {
        const Cloth &cloth = *m_job.cloth(c.cloth);
        const bool proved = outcome.kind == Kind::CannotFit;
        const std::string where = cloth.bolt
                                      ? (cloth.bolt->length ? phrase("length of cloth there is") : phrase("cloth"))
                                  : cloth.remnants.size() > 1 ? phrase("remnants")
                                                              : phrase("remnant");
        return proved ? phrase("the panels do not fit on the %1, however they are laid", {where})
                      : phrase("no way to lay all panels on the %1 was found in the time given", {where});
    }

    const Job &m_job;
    const PlanOptions &m_options;
    std::vector<ClothInstance> m_cloths;
    std::vector<planner::Outcome> m_outcomes;
    double m_shareDone = 0;
    std::mutex m_reporting;
};

} // namespace

Plan plan(const Job &job, const PlanOptions &options) { return Planner(job, options).run(); }

} // namespace boltwright
