#include "core/concede/concede.h"

#include "core/base/language.h"
#include "core/concede/given_in.h"
#include "core/concede/grow_back.h"
#include "core/measure/length_text.h"
#include "core/panel/edges.h"
#include "core/planner/random.h"
#include "core/rules/joins.h"
#include "core/rules/rules.h"

#include <algorithm>
#include <chrono>
#include <set>

namespace boltwright {
namespace {

using Kind = Concession::Kind;
using planner::CopyKey;
using planner::GivenUp;
using Fits = planner::Outcome::Kind;

bool has(const std::vector<Kind> &kinds, Kind kind) {
    return std::find(kinds.begin(), kinds.end(), kind) != kinds.end();
}

std::string nameOf(const Panel &panel) { return panel.name.empty() ? panel.id : panel.name; }

/// What a copy is left with on its edges when all that these kinds allow is taken.
EdgeLengths leastEdges(const Panel &panel, bool trim, bool stretcher) {
    EdgeLengths allow(edgeCount(panel.shape));
    bool any = false;
    for (int edge = 0; edge < int(allow.size()); ++edge) {
        Length least = panel.allowance(edge);
        if (trim) least = std::min(least, panel.leastAllowance(edge));
        if (const auto it = panel.may.stretcher.find(edge); stretcher && it != panel.may.stretcher.end())
            least = std::min(least, it->second);
        if (least == panel.allowance(edge)) continue;
        allow[std::size_t(edge)] = least;
        any = true;
    }
    return any ? allow : EdgeLengths{};
}

/// Where one more join goes in a strip that goes round a piece; all other panels are joined in equal pieces.
enum class Joins { Equal, AtBack };

/// Everything that these kinds allow, given up at once, on the cloths of the job.
GivenUp everything(const Job &job, const std::vector<Kind> &kinds, Joins joins = Joins::Equal) {
    GivenUp given;
    for (const Panel &panel : job.panels)
        for (int copy = 1; copy <= panel.count; ++copy) {
            const CopyKey key{panel.id, copy};
            if (has(kinds, Kind::Trim) || has(kinds, Kind::Stretcher))
                if (EdgeLengths least = leastEdges(panel, has(kinds, Kind::Trim), has(kinds, Kind::Stretcher));
                    !least.empty())
                    given.allow[key] = least;
            if (has(kinds, Kind::Turn) && panel.may.turn) given.turned.insert(key);
            if (has(kinds, Kind::Uncentre) && panel.may.uncentre) given.offCentre.insert(key);
            if (has(kinds, Kind::OtherCloth)) {
                if (panel.may.otherCloth.any)
                    given.leftOut.insert(key);
                else if (!panel.may.otherCloth.id.empty())
                    given.otherCloth[key] = panel.may.otherCloth.id;
            }
            if (!has(kinds, Kind::Seam) || panel.pieces.most <= 1) continue;
            std::vector<Length> pieces;
            if (joins == Joins::AtBack) pieces = planner::piecesJoinedAtBack(job, panel);
            if (pieces.empty()) pieces = planner::morePieces(job, panel);
            if (!pieces.empty()) given.pieces[key] = std::move(pieces);
        }
    // A copy in pieces keeps its full allowances: both at once would hide a seam in a trimmed edge.
    for (const auto &[key, pieces] : given.pieces) given.allow.erase(key);
    return given;
}

/// One thing given up for one copy, that can be taken back alone.
struct Atom {
    Kind kind;
    CopyKey copy;
};

std::vector<Atom> atomsOf(const GivenUp &given) {
    std::vector<Atom> atoms;
    for (const auto &[key, pieces] : given.pieces) atoms.push_back({Kind::Seam, key});
    for (const CopyKey &key : given.turned) atoms.push_back({Kind::Turn, key});
    for (const CopyKey &key : given.offCentre) atoms.push_back({Kind::Uncentre, key});
    for (const auto &[key, cloth] : given.otherCloth) atoms.push_back({Kind::OtherCloth, key});
    for (const CopyKey &key : given.leftOut) atoms.push_back({Kind::OtherCloth, key});
    return atoms;
}

GivenUp without(GivenUp given, const Atom &atom) {
    switch (atom.kind) {
    case Kind::Seam:
        given.pieces.erase(atom.copy);
        break;
    case Kind::Turn:
        given.turned.erase(atom.copy);
        break;
    case Kind::Uncentre:
        given.offCentre.erase(atom.copy);
        break;
    case Kind::OtherCloth:
        given.otherCloth.erase(atom.copy);
        given.leftOut.erase(atom.copy);
        break;
    default:
        given.allow.erase(atom.copy);
    }
    return given;
}

/// The time or the steps of one question, shared out over many small plans.
class Budget {
public:
    explicit Budget(const PlanOptions &options) : m_options(options), m_begin(std::chrono::steady_clock::now()) {
        if (options.steps) m_left = *options.steps;
    }
    bool over() const {
        if (m_options.stop && m_options.stop()) return true;
        return m_options.steps ? m_left <= 0 : elapsed() >= m_options.seconds.value_or(5);
    }
    double shareGone() const {
        return m_options.steps ? 1.0 - double(m_left) / double(std::max<std::int64_t>(1, *m_options.steps))
                               : elapsed() / m_options.seconds.value_or(5);
    }
    /// Options for a plan that may take `share` of all there was at the start, and no more than is left.
    PlanOptions slice(double share) const {
        PlanOptions o = m_options;
        o.report = nullptr;
        o.given = nullptr;
        if (m_options.steps)
            o.steps = std::max<std::int64_t>(
                1, std::min<std::int64_t>(m_left, std::int64_t(share * double(*m_options.steps))));
        else
            o.seconds = std::max(
                0.01, std::min(m_options.seconds.value_or(5) - elapsed(), share * m_options.seconds.value_or(5)));
        return o;
    }
    /// Counts what a plan was allowed, not what it took: the same on every machine.
    void spend(const PlanOptions &slice) {
        if (slice.steps) m_left -= *slice.steps;
    }

private:
    double elapsed() const { return std::chrono::duration<double>(std::chrono::steady_clock::now() - m_begin).count(); }
    PlanOptions m_options;
    std::chrono::steady_clock::time_point m_begin;
    std::int64_t m_left = 0;
};

/// How much a layout gives up, kind by kind from the last of the order to the first; less is better.
std::vector<std::int64_t> costOf(const Layout &layout, const std::vector<Kind> &order, bool fewestFirst) {
    std::vector<std::int64_t> cost;
    for (auto it = order.rbegin(); it != order.rend(); ++it) {
        std::set<CopyKey> copies;
        Length length;
        for (const Concession &c : layout.conceded)
            if (c.kind == *it) {
                copies.insert({c.panel, c.copy});
                if (c.from && c.to) length += *c.from - *c.to;
            }
        if (*it == Kind::OtherCloth)
            for (const LeftOut &l : layout.leftOut) copies.insert({l.panel, l.copy});
        const std::int64_t count = std::int64_t(copies.size()), cloth = length.ticks();
        cost.push_back(fewestFirst ? count : cloth);
        cost.push_back(fewestFirst ? cloth : count);
    }
    return cost;
}

/// The job with the leave taken back for every kind that the order forbids, so that none comes in by another door: a
/// join because a panel is larger than the cloth, a trim because a strip could be sewn on where it stops.
Job withoutForbidden(Job job, const std::vector<Kind> &order) {
    for (Panel &panel : job.panels) {
        if (!has(order, Kind::Trim)) panel.allowMin.assign(panel.allowMin.size(), std::nullopt);
        if (!has(order, Kind::Stretcher)) panel.may.stretcher.clear();
        if (!has(order, Kind::OtherCloth)) panel.may.otherCloth = {};
        if (!has(order, Kind::Uncentre)) panel.may.uncentre = false;
        if (!has(order, Kind::Turn)) panel.may.turn = false;
        if (!has(order, Kind::Seam)) panel.pieces.most = 1;
    }
    return job;
}

class Search {
public:
    Search(const Job &job, const ConcedeOptions &options)
        : m_job(withoutForbidden(job, options.order)), m_options(options), m_budget(options.plan),
          m_random(options.plan.seed) {}

    Conceding run() {
        Conceding answer;
        const Plan asked = planGiving({}, 0.3);
        if (asked.kind == Fits::Fits) {
            answer.kind = Fits::Fits;
            answer.nothingNeeded = true;
            answer.ways.push_back(describe(asked.layout));
            return answer;
        }
        answer.reason = asked.reason;
        answer.kind = asked.kind;
        levels(answer);
        if (m_options.plan.steps) lookAgain(answer);
        others(answer);
        if (!answer.ways.empty()) answer.kind = Fits::Fits;
        return answer;
    }

private:
    /// With steps, which are asked for so that an answer can be relied upon, the best way is looked at once more with
    /// as many again each time: whether the kinds before its last one would have done, and the rest without each single
    /// thing. What a second search of the same steps and seed finds without it is not given up.
    void lookAgain(Conceding &answer) {
        if (answer.ways.empty()) return;
        Layout &best = answer.ways.front().layout;
        while (!answer.ways.front().kinds.empty() && !stopped()) {
            ConcedeOptions fewer = m_options;
            fewer.ways = 1;
            fewer.progress = nullptr;
            fewer.order.assign(m_options.order.begin(),
                               m_options.order.begin() + rank(answer.ways.front().kinds.back()));
            if (fewer.order.empty()) break;
            Conceding without = Search(m_job, fewer).run();
            if (without.ways.empty()) break;
            answer.ways.front() = std::move(without.ways.front());
        }
        best = withoutIdle(std::move(best), [this](std::size_t) {
            PlanOptions o = m_options.plan;
            o.report = nullptr;
            return stopped() ? std::nullopt : std::optional(o);
        });
        answer.ways.front() = describe(best);
    }

    bool stopped() const { return m_options.plan.stop && m_options.plan.stop(); }

    Plan planGiving(const GivenUp &given, double share) {
        if (m_options.progress) m_options.progress(std::min(1.0, m_budget.shareGone()));
        PlanOptions o = m_budget.slice(share);
        o.given = &given;
        o.seed = m_options.plan.seed + std::uint64_t(m_plans++);
        Plan p = plan(m_job, o);
        m_budget.spend(o);
        return p;
    }

    /// All that may be given up, one kind more from level to level; kinds without any leave make none of their own.
    std::vector<GivenUp> levelsOfOrder() const {
        std::vector<GivenUp> all;
        std::vector<Kind> kinds;
        GivenUp before;
        for (Kind kind : m_options.order) {
            kinds.push_back(kind);
            // A join out of sight at the back is a smaller sacrifice than one that shows.
            for (const Joins joins : {Joins::AtBack, Joins::Equal}) {
                GivenUp given = everything(m_job, kinds, joins);
                if (given == before) continue;
                before = given;
                all.push_back(std::move(given));
            }
        }
        return all;
    }

    /// Kind after kind in the order asked, until what is allowed does. Tight cloth takes longer to fill: where a quick
    /// look finds nothing, a longer one follows.
    void levels(Conceding &answer) {
        const std::vector<GivenUp> all = levelsOfOrder();
        std::vector<bool> cannot(all.size());
        for (const double share : {0.05, 0.2, 0.4})
            for (std::size_t level = 0; level < all.size(); ++level) {
                if (m_budget.over()) return;
                if (cannot[level]) continue;
                Plan p = planGiving(all[level], share);
                cannot[level] = p.kind == Fits::CannotFit;
                if (level + 1 == all.size()) answer.kind = p.kind;
                if (p.kind != Fits::Fits) continue;
                if (share < 0.2) level = earlier(all, cannot, level, p);
                answer.ways.push_back(
                    describe(least(all[level], p.layout, all.size() > 1 && m_options.ways > 1 ? 0.75 : 1.0)));
                return;
            }
    }

    /// Before a later kind is taken, the earlier ones get a longer look: the level that does, with its plan in `p`.
    std::size_t earlier(const std::vector<GivenUp> &all, const std::vector<bool> &cannot, std::size_t level, Plan &p) {
        while (level > 0 && !cannot[level - 1] && !m_budget.over()) {
            Plan again = planGiving(all[level - 1], 0.15);
            if (again.kind != Fits::Fits) break;
            p = std::move(again);
            --level;
        }
        return level;
    }

    /// The first way's kinds with the joins of strips that go round put elsewhere: side by side with it, so that the
    /// user may choose where they show.
    void joinsElsewhere(Conceding &answer) {
        const ConcedeWay first = answer.ways.front();
        if (!has(first.kinds, Kind::Seam) || int(answer.ways.size()) >= m_options.ways || m_budget.over()) return;
        const bool back = std::any_of(first.layout.conceded.begin(), first.layout.conceded.end(), [&](const auto &c) {
            return c.kind == Kind::Seam &&
                   joinedAtBack(*m_job.panel(c.panel), pieceLengths(first.layout, c.panel, c.copy));
        });
        const GivenUp given = everything(m_job, first.kinds, back ? Joins::Equal : Joins::AtBack);
        if (given == everything(m_job, first.kinds, back ? Joins::AtBack : Joins::Equal)) return;
        const Plan p = planGiving(given, 0.08);
        if (p.kind != Fits::Fits) return;
        ConcedeWay way = describe(least(given, p.layout, std::min(1.0, m_budget.shareGone() + 0.08)));
        if (way.words != first.words) answer.ways.push_back(std::move(way));
    }

    /// Other ways: without the kinds that the first one gives up, and each single kind alone.
    void others(Conceding &answer) {
        if (answer.ways.empty()) return;
        joinsElsewhere(answer);
        std::vector<std::vector<Kind>> sets(1);
        for (Kind kind : m_options.order)
            if (!has(answer.ways.front().kinds, kind)) sets.front().push_back(kind);
        for (Kind kind : m_options.order) sets.push_back({kind});
        std::vector<GivenUp> tried{{}};
        for (const std::vector<Kind> &kinds : sets) {
            if (int(answer.ways.size()) >= m_options.ways || m_budget.over()) return;
            const GivenUp given = everything(m_job, kinds);
            if (std::find(tried.begin(), tried.end(), given) != tried.end()) continue;
            tried.push_back(given);
            const Plan p = planGiving(given, 0.08);
            if (p.kind != Fits::Fits) continue;
            ConcedeWay way = describe(least(given, p.layout, std::min(1.0, m_budget.shareGone() + 0.08)));
            const bool known = std::any_of(answer.ways.begin(), answer.ways.end(),
                                           [&](const ConcedeWay &w) { return w.kinds == way.kinds; });
            if (!known) answer.ways.push_back(std::move(way));
        }
    }

    bool better(const Layout &a, const Layout &b) const {
        return costOf(a, m_options.order, m_options.fewestPanelsFirst) <
               costOf(b, m_options.order, m_options.fewestPanelsFirst);
    }

    /// From a layout in which all that may be given up was, to one that gives up as little as the time allows to find:
    /// first whole things are taken back one by one, the last kind first; then trims are given back.
    Layout least(GivenUp given, const Layout &first, double until) {
        Layout best = growBack(m_job, first);
        std::vector<Atom> atoms = atomsOf(given);
        std::stable_sort(atoms.begin(), atoms.end(),
                         [&](const Atom &a, const Atom &b) { return rank(a.kind) > rank(b.kind); });
        for (const Atom &atom : atoms) {
            if (m_budget.over() || m_budget.shareGone() >= until) return best;
            const GivenUp fewer = without(given, atom);
            const Plan p = planGiving(fewer, 0.3 / double(atoms.size()));
            if (p.kind != Fits::Fits) continue;
            given = fewer;
            if (Layout l = growBack(m_job, p.layout); better(l, best)) best = std::move(l);
        }
        // The last part of the time is for what is left: nothing is given up of which the rest does without.
        const double forTrims = until - 0.2 * (until - std::min(until, m_budget.shareGone()));
        best = trims(given, std::move(best), forTrims);
        return withoutIdle(std::move(best), [&](std::size_t left) -> std::optional<PlanOptions> {
            if (m_budget.over() || m_budget.shareGone() >= until) return {};
            PlanOptions o = m_budget.slice((until - m_budget.shareGone()) / double(left));
            o.seed = m_options.plan.seed + std::uint64_t(m_plans++);
            m_budget.spend(o);
            return o;
        });
    }

    /// Looks for each single thing given up, the last kind first, whether all the others do without it. `lookFor` says
    /// how long a look may take while so many are left; none: no more of them.
    Layout withoutIdle(Layout best, const std::function<std::optional<PlanOptions>(std::size_t left)> &lookFor) {
        std::set<GivenOne> needed;
        for (;;) {
            std::vector<GivenOne> left;
            for (const GivenOne &one : givenIn(best))
                if (!needed.contains(one)) left.push_back(one);
            if (left.empty()) return best;
            auto look = lookFor(left.size());
            if (!look) return best;
            const GivenOne one = *std::max_element(left.begin(), left.end(), [&](const GivenOne &a, const GivenOne &b) {
                return rank(a.kind) < rank(b.kind);
            });
            needed.insert(one);
            const GivenUp rest = allBut(m_job, best, one);
            look->given = &rest;
            const Plan p = plan(m_job, *look);
            if (p.kind != Fits::Fits) continue;
            Layout l = growBack(m_job, p.layout);
            if (!better(l, best)) continue;
            best = std::move(l);
            needed.clear();
        }
    }

    std::ptrdiff_t rank(Kind k) const {
        return std::find(m_options.order.begin(), m_options.order.end(), k) - m_options.order.begin();
    }

    /// Some copies are held to their full allowances, the others may give all; what then fits is grown back, and kept
    /// when it gives up less.
    Layout trims(const GivenUp &given, Layout best, double until) {
        if (given.allow.empty()) return best;
        std::int64_t failures = 0;
        while (!m_budget.over() && m_budget.shareGone() < until && trimmedInAll(best) > Length{}) {
            const Plan p = planGiving(holdSome(given, best), failures % 8 == 7 ? 0.02 : 0.004);
            if (p.kind != Fits::Fits) {
                ++failures;
                continue;
            }
            Layout l = growBack(m_job, p.layout);
            if (better(l, best)) {
                best = std::move(l);
                failures = 0;
            } else
                ++failures;
        }
        return best;
    }

    GivenUp holdSome(const GivenUp &given, const Layout &best) {
        GivenUp held = given;
        std::set<CopyKey> trimmed;
        for (const Concession &c : best.conceded)
            if (c.kind == Kind::Trim || c.kind == Kind::Stretcher) trimmed.insert({c.panel, c.copy});
        for (auto &[key, allow] : held.allow) {
            const Panel &panel = *m_job.panel(key.first);
            for (int edge = 0; edge < int(allow.size()); ++edge) {
                if (!allow[std::size_t(edge)]) continue;
                // Edges that need nothing now are mostly held; those that do are sometimes tried without.
                Length now = panel.allowance(edge);
                for (const Concession &c : best.conceded)
                    if (c.panel == key.first && c.copy == key.second && c.edge == edge && c.to) now = *c.to;
                const bool isTrimmed = now < panel.allowance(edge);
                const int dice = m_random.below(8);
                if (isTrimmed ? dice == 0 : dice < 5)
                    allow[std::size_t(edge)].reset();
                else if (isTrimmed && dice < 4)
                    allow[std::size_t(edge)] = now;
            }
        }
        std::erase_if(held.allow, [](const auto &entry) {
            return std::none_of(entry.second.begin(), entry.second.end(), [](const auto &a) { return a.has_value(); });
        });
        return held;
    }

    ConcedeWay describe(const Layout &layout) const {
        ConcedeWay way;
        way.layout = layout;
        way.trimmed = trimmedInAll(layout);
        std::set<CopyKey> copies;
        for (const Concession &c : layout.conceded) copies.insert({c.panel, c.copy});
        for (const LeftOut &l : layout.leftOut) copies.insert({l.panel, l.copy});
        way.panels = int(copies.size());
        for (Kind kind : m_options.order) {
            const bool used = std::any_of(layout.conceded.begin(), layout.conceded.end(),
                                          [&](const Concession &c) { return c.kind == kind; }) ||
                              (kind == Kind::OtherCloth && !layout.leftOut.empty());
            if (used) way.kinds.push_back(kind);
        }
        way.words = concededInWords(m_job, layout);
        return way;
    }

    const Job m_job;
    const ConcedeOptions &m_options;
    Budget m_budget;
    planner::Random m_random;
    int m_plans = 0;
};

std::string copyName(const Panel &panel, int copy) {
    return panel.count > 1 ? phrase("%1 (%2 of %3)", {nameOf(panel), std::to_string(copy), std::to_string(panel.count)})
                           : nameOf(panel);
}

std::string inWords(const Job &job, const Layout &layout, const Panel &panel, const Concession &c) {
    std::string who = copyName(panel, c.copy);
    const auto said = [&](std::optional<Length> l) {
        return localised(spokenWithUnit(l.value_or(Length{}), job.unit));
    };
    const std::string edge = c.edge ? edgeInWords(panel.shape, *c.edge) : phrase("all edges");
    switch (c.kind) {
    case Kind::Trim:
        return phrase("%1: %2 from %3 to %4", {who, edge, said(c.from), said(c.to)});
    case Kind::Stretcher:
        return phrase("%1: a strip of other cloth sewn on at %2, face cloth from %3 to %4",
                      {who, c.edge ? theEdgeInWords(panel.shape, *c.edge) : edge, said(c.from), said(c.to)});
    case Kind::Seam: {
        if (const auto lengths = pieceLengths(layout, c.panel, c.copy); joinedAtBack(panel, lengths)) {
            std::string each;
            for (const Length length : lengths)
                each = each.empty() ? said(length) : phrase("%1 and %2", {each, said(length)});
            return phrase("%1: joined at the back, out of sight: %2", {who, each});
        }
        const auto cut = std::find_if(layout.cuts.begin(), layout.cuts.end(),
                                      [&](const Cut &k) { return k.panel == c.panel && k.copy == c.copy; });
        const int of = cut == layout.cuts.end() ? 2 : cut->of;
        return of == 2 ? phrase("%1: made of 2 pieces, 1 join", {who})
                       : phrase("%1: made of %2 pieces, %3 joins", {who, std::to_string(of), std::to_string(of - 1)});
    }
    case Kind::Turn:
        return phrase("%1: turned the other way", {who});
    case Kind::Uncentre:
        return phrase("%1: off centre", {who});
    case Kind::OtherCloth:
        return phrase("%1: cut from other cloth", {who});
    }
    return who;
}

} // namespace

std::vector<Kind> usualOrder() {
    return {Kind::Trim, Kind::Stretcher, Kind::OtherCloth, Kind::Uncentre, Kind::Turn, Kind::Seam};
}

std::vector<Kind> kindsWithoutLeave(const Job &job, std::vector<Kind> kinds) {
    std::erase_if(kinds, [&](Kind kind) { return everything(job, {kind}) != GivenUp{}; });
    return kinds;
}

Conceding concede(const Job &job, const ConcedeOptions &options) { return Search(job, options).run(); }

Plan planOrConcede(const Job &job, const PlanOptions &options) {
    if (everything(job, usualOrder()) == GivenUp{}) return plan(job, options);
    // A bolt without an end holds whatever fits its width: nothing needs giving up, so no time is set aside for it.
    const bool endless =
        std::all_of(job.cloths.begin(), job.cloths.end(), [](const Cloth &c) { return c.bolt && !c.bolt->length; });
    if (endless)
        if (Plan p = plan(job, options); p.kind == Fits::Fits) return p;
    ConcedeOptions o;
    o.plan = options;
    o.ways = 1;
    const Conceding c = concede(job, o);
    Plan p;
    p.kind = c.kind;
    p.proved = c.kind == Fits::CannotFit;
    p.reason = c.reason;
    if (c.ways.empty()) return p;
    p.layout = c.ways.front().layout;
    p.proved = std::all_of(p.layout.cloths.begin(), p.layout.cloths.end(),
                           [](const ClothUse &u) { return u.proved || !u.length; });
    return p;
}

std::vector<std::string> concededInWords(const Job &job, const Layout &layout) {
    std::vector<std::string> words;
    for (const Concession &c : layout.conceded)
        if (const Panel *panel = job.panel(c.panel)) words.push_back(inWords(job, layout, *panel, c));
    for (const LeftOut &l : layout.leftOut)
        if (const Panel *panel = job.panel(l.panel))
            words.push_back(copyName(*panel, l.copy) + ": cut from other cloth");
    return words;
}

} // namespace boltwright
