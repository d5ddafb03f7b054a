#include "core/edit/match_edit.h"

#include "core/base/language.h"
#include "core/job/fault_words.h"
#include "core/measure/length_text.h"
#include "core/panel/edges.h"
#include "core/rules/phase_groups.h"
#include "core/rules/rules.h"

#include <algorithm>
#include <cctype>
#include <initializer_list>
#include <set>

namespace boltwright {
namespace {

std::string clothName(const Cloth &cloth) { return cloth.name.empty() ? cloth.id : cloth.name; }

std::string called(const Panel &panel) {
    return !panel.name.empty() ? panel.name : !panel.mark.empty() ? panel.mark : panel.id;
}

std::string said(Length length, Unit unit) { return localised(spokenWithUnit(length, unit)); }

std::string endInWords(const Job &job, const FlowEnd &end) {
    const Panel *panel = job.panel(end.panel);
    if (!panel) return end.panel;
    std::string text = panelInWords(job, *panel);
    if (end.copy && panel->count > 1)
        text = phrase("%1 (%2 of %3)", {text, std::to_string(*end.copy), std::to_string(panel->count)});
    if (end.edge && *end.edge >= 0 && std::size_t(*end.edge) < edgeCount(panel->shape))
        text = phrase("%1, %2", {text, edgeInWords(panel->shape, *end.edge)});
    if (end.at) text = phrase("%1, %2 across and %3 up", {text, said(end.at->x, job.unit), said(end.at->y, job.unit)});
    return text;
}

/// A reason why a match can't be, and of what kind it is.
struct Refusal {
    enum class Kind { End, Itself, Twice, Cloths, NoRepeat, Turns };
    Kind kind;
    std::string text;
};

bool hasEdge(const Panel &panel, int edge) { return edge >= 0 && std::size_t(edge) < edgeCount(panel.shape); }

std::optional<Refusal> refusalOfEnd(const Job &job, const FlowEnd &end) {
    const auto no = [](std::string text) { return Refusal{Refusal::Kind::End, std::move(text)}; };
    const Panel *panel = job.panel(end.panel);
    if (!panel) return no(phrase("Choose the two panels that the pattern runs on between."));
    const std::string name = panelInWords(job, *panel);
    if (!end.edge && !end.at) return no(phrase("%1: choose an edge, or give a point of it.", {name}));
    if (end.edge && !hasEdge(*panel, *end.edge))
        return no(phrase("%1 has no edge %2.", {name, std::to_string(*end.edge + 1)}));
    if (end.copy && (*end.copy < 1 || *end.copy > panel->count))
        return no(panel->count == 1 ? phrase("There is only one of %1.", {name})
                                    : phrase("There are %1 of %2: give one of them by its number.",
                                             {std::to_string(panel->count), name}));
    return std::nullopt;
}

bool isAtSamePlace(FlowEnd a, FlowEnd b) {
    // With a point, the edge only says which way what is lost goes.
    if (a.at && b.at) a.edge = b.edge = std::nullopt;
    return a == b;
}

bool joinTheSame(const Flow &a, const Flow &b) {
    return (isAtSamePlace(a.from, b.from) && isAtSamePlace(a.to, b.to)) ||
           (isAtSamePlace(a.from, b.to) && isAtSamePlace(a.to, b.from));
}

std::vector<Turn> turnsThatMayBe(const Panel &panel, const Cloth &cloth) {
    std::vector<Turn> turns = turnsOf(panel, cloth, cloth);
    if (panel.may.turn)
        for (Turn t : widerTurns(cloth.way))
            if (motifRepeats(panel, cloth, t)) turns.push_back(t);
    return turns;
}

bool shareTurn(const Panel &a, const Panel &b, const Cloth &cloth) {
    const auto mine = turnsThatMayBe(a, cloth), theirs = turnsThatMayBe(b, cloth);
    return std::any_of(mine.begin(), mine.end(),
                       [&](Turn t) { return std::find(theirs.begin(), theirs.end(), t) != theirs.end(); });
}

/// The first reason why that match of the job can't be, but for what all of them together ask.
std::optional<Refusal> refusalOf(const Job &job, std::size_t index) {
    using Kind = Refusal::Kind;
    const Flow &match = job.flows[index];
    if (auto no = refusalOfEnd(job, match.from)) return no;
    if (auto no = refusalOfEnd(job, match.to)) return no;
    const Panel &from = *job.panel(match.from.panel), &to = *job.panel(match.to.panel);
    const std::string fromName = panelInWords(job, from), toName = panelInWords(job, to);
    if (match.lost < Length{}) return Refusal{Kind::End, phrase("What is lost in the join is 0 or more.")};
    if (match.lost > Length{} && !match.from.edge)
        return Refusal{Kind::End, phrase("%1: choose the edge over which the pattern is lost.", {fromName})};
    if (&from == &to && from.count < 2)
        return Refusal{Kind::Itself,
                       phrase("There is only one of %1, and the pattern can't run on from it to itself.", {fromName})};
    if (&from == &to && !(match.from.copy && match.to.copy && match.from.copy != match.to.copy))
        return Refusal{Kind::Itself,
                       phrase("From %1 to %1 the pattern runs on between two of them: give both numbers.", {fromName})};
    for (std::size_t i = 0; i < job.flows.size(); ++i)
        if (i != index && joinTheSame(job.flows[i], match))
            return Refusal{Kind::Twice, phrase("The pattern runs on there already: %1.", {matchInWords(job, match)})};
    const Cloth &cloth = job.clothOf(from);
    if (&job.clothOf(to) != &cloth)
        return Refusal{Kind::Cloths, phrase("%1 is cut from %2 and %3 from %4: no pattern runs on from one cloth to "
                                            "another.",
                                            {fromName, clothName(cloth), toName, clothName(job.clothOf(to))})};
    if (!cloth.pattern)
        return Refusal{Kind::NoRepeat, phrase("%1 has no repeat, so there is no pattern that could run on. Give the "
                                              "cloth its repeat first.",
                                              {clothName(cloth)})};
    if (!shareTurn(from, to, cloth))
        return Refusal{Kind::Turns, phrase("%1 and %2 are not run the same way, and where the pattern runs on they lie "
                                           "alike. Run one as the other.",
                                           {fromName, toName})};
    return std::nullopt;
}

/// Cuts that stand for all copies, whole and not laid yet: enough to ask which phases of the pattern they need.
Layout unlaid(const Job &job) {
    Layout layout;
    for (const Panel &panel : job.panels)
        for (int copy = 1; copy <= panel.count; ++copy) {
            Cut cut;
            cut.panel = panel.id;
            cut.copy = copy;
            cut.mirrored = panel.mirror && copy % 2 == 0;
            layout.cuts.push_back(std::move(cut));
        }
    return layout;
}

/// Where the pieces of a panel need not match, its points may lie on different ones, and nothing is sure of it.
bool isSure(const Panel &panel) { return panel.pieces.most <= 1 || panel.pieces.match; }

struct Group {
    std::vector<const Panel *> panels; ///< in the job's order, each once
    bool agrees = true;                ///< the links suit each other in a turn that all may have
    bool onMotif = true;               ///< and all can lie on their motif there
};

/// Whether, with that turn, one place of the pattern suits the motifs of all cuts of the group.
bool motifsAgree(const Job &job, Layout layout, const PhaseGroup &group, Turn turn) {
    const std::vector<Vector> &anchors = group.anchors.at(turn);
    std::optional<PlaceSet> shared;
    for (std::size_t k = 0; k < group.cuts.size(); ++k) {
        Cut &cut = layout.cuts[std::size_t(group.cuts[k])];
        cut.turn = turn;
        const PlaceSet here = wishedPlaces(job, layout, lay(*job.panel(cut.panel), cut, layout)).movedBy(anchors[k]);
        shared = shared ? PlaceSet::common(*shared, here, Length::ticks(4)) : here;
        if (!shared) return false;
    }
    return true;
}

std::vector<Group> groupsOf(const Job &job) {
    const Layout layout = unlaid(job);
    std::vector<PhaseLink> links = phaseLinks(job, layout);
    const auto panelOf = [&](int cut) { return job.panel(layout.cuts[std::size_t(cut)].panel); };
    std::erase_if(links, [&](const PhaseLink &l) {
        return !isSure(*panelOf(l.a)) || !isSure(*panelOf(l.b)) ||
               &job.clothOf(*panelOf(l.a)) != &job.clothOf(*panelOf(l.b));
    });
    std::vector<Group> groups;
    for (const PhaseGroup &phases : phaseGroups(job, layout, links)) {
        Group group;
        std::set<const Panel *> in;
        for (int cut : phases.cuts) in.insert(panelOf(cut));
        for (const Panel &panel : job.panels)
            if (in.contains(&panel)) group.panels.push_back(&panel);
        const Cloth &cloth = job.clothOf(*group.panels.front());
        std::vector<Turn> turns = turnsThatMayBe(*group.panels.front(), cloth);
        std::erase_if(turns, [&](Turn t) {
            return std::any_of(group.panels.begin(), group.panels.end(), [&](const Panel *panel) {
                const auto theirs = turnsThatMayBe(*panel, cloth);
                return std::find(theirs.begin(), theirs.end(), t) == theirs.end();
            });
        });
        if (!turns.empty() && cloth.pattern) {
            std::erase_if(turns, [&](Turn t) { return !phases.anchors.contains(t); });
            group.agrees = !turns.empty();
            group.onMotif =
                std::any_of(turns.begin(), turns.end(), [&](Turn t) { return motifsAgree(job, layout, phases, t); });
        }
        groups.push_back(std::move(group));
    }
    return groups;
}

std::string namesOf(const Job &job, const std::vector<const Panel *> &panels) {
    std::string names;
    for (std::size_t i = 0; i < panels.size(); ++i) {
        const std::string name = panelInWords(job, *panels[i]);
        names = i == 0                   ? name
                : i + 1 == panels.size() ? phrase("%1 and %2", {names, name})
                                         : phrase("%1, %2", {names, name});
    }
    return names;
}

std::optional<std::string> disagreement(const Job &job) {
    for (const Group &group : groupsOf(job))
        if (!group.agrees)
            return group.panels.size() == 1
                       ? phrase("No place of the pattern suits all matches of %1 at once.",
                                {panelInWords(job, *group.panels.front())})
                       : phrase("No place of the pattern suits all matches between %1 at once. Where one of them can "
                                "be seen least, leave it out.",
                                {namesOf(job, group.panels)});
    return std::nullopt;
}

/// Where a panel sits on a piece, from the words of its name: back above seat above border above skirt. None: it is at
/// a side or behind, or the name does not tell (and another language's never does). Common practice, no source.
std::optional<int> heightOnPiece(const Panel &panel) {
    std::string name = panel.name;
    std::transform(name.begin(), name.end(), name.begin(), [](unsigned char c) { return char(std::tolower(c)); });
    const auto has = [&](std::initializer_list<const char *> words) {
        return std::any_of(words.begin(), words.end(),
                           [&](const char *word) { return name.find(word) != std::string::npos; });
    };
    if (has({"outside", "side", "arm", "wing", "gusset"}) && !has({"inside back"})) return std::nullopt;
    if (has({"skirt", "valance"})) return 3;
    const bool border = has({"border", "band", "boxing", "facing"});
    if (border && has({"back"})) return std::nullopt;
    if (border || has({"front"})) return 2;
    if (has({"seat", "cushion", "deck", "platform", "top"}) && !has({"back"})) return 1;
    if (has({"back"})) return 0;
    return std::nullopt;
}

Length widthOf(const Panel &panel) { return boxOf(measuredOutline(panel.shape)).width(); }

/// How likely a person means the join from `from` down to `to`; the more the likelier.
int likelihood(const Job &job, const Panel &from, const Panel &to, const std::string &first) {
    int points = 0;
    const auto above = heightOnPiece(from), below = heightOnPiece(to);
    if (above && below) points += *below == *above + 1 ? 80 : *below > *above ? 40 : -80;
    if (from.id == first || to.id == first) points += 50;
    const Length wide = std::max(widthOf(from), widthOf(to)), narrow = std::min(widthOf(from), widthOf(to));
    if (narrow * 10 >= wide * 9) points += 20;
    if (from.count == to.count) points += 4;
    if (&from < &to) points += 10; // in the order in which they were written down
    if (&from + 1 == &to) points += 2;
    if (&job.clothOf(from) != &job.clothOf(to)) points -= 200;
    return points;
}

bool needsEdge(const Flow &match, MatchSide side) { return side == MatchSide::From && match.lost > Length{}; }

/// Whether the end is still there; brings its edge up to date.
bool endFollows(const Job &before, const Job &after, const Flow &match, MatchSide side, FlowEnd &end) {
    const Panel *was = before.panel(end.panel), *is = after.panel(end.panel);
    if (!is || (end.copy && *end.copy > is->count)) return false;
    if (!end.edge) return true;
    const bool isOld = std::find(before.flows.begin(), before.flows.end(), match) != before.flows.end();
    if (was && isOld && hasEdge(*was, *end.edge))
        end.edge = edgeThatBecame(was->shape, *end.edge, is->shape);
    else if (!hasEdge(*is, *end.edge))
        end.edge.reset();
    return end.edge || (end.at && !needsEdge(match, side));
}

} // namespace

std::string panelInWords(const Job &job, const Panel &panel) {
    const std::string name = called(panel);
    const bool isOnlyOne = std::all_of(job.panels.begin(), job.panels.end(), [&](const Panel &other) {
        return other.id == panel.id || called(other) != name;
    });
    return isOnlyOne || panel.mark.empty() || panel.mark == name ? name : phrase("%1 (%2)", {name, panel.mark});
}

std::string matchInWords(const Job &job, const Flow &match) {
    const std::string text = phrase("%1 → %2", {endInWords(job, match.from), endInWords(job, match.to)});
    return match.lost == Length{} ? text : phrase("%1; %2 lost in the join", {text, said(match.lost, job.unit)});
}

Result<Job> withMatch(Job job, Flow match) {
    const auto before = disagreement(job);
    job.flows.push_back(std::move(match));
    if (const auto no = refusalOf(job, job.flows.size() - 1)) return fault(no->text);
    if (const auto no = disagreement(job); no && !before) return fault(*no);
    if (const auto faults = faultsInWords(job); !faults.empty()) return fault(faults.front());
    return job;
}

Result<Job> withMatchChanged(Job job, std::size_t index, Flow match) {
    const auto refusedBefore = refusalOf(job, index);
    const auto before = disagreement(job);
    job.flows[index] = std::move(match);
    if (const auto no = refusalOf(job, index); no && !(refusedBefore && refusedBefore->kind == no->kind))
        return fault(no->text);
    if (const auto no = disagreement(job); no && !before) return fault(*no);
    if (const auto faults = faultsInWords(job); !faults.empty()) return fault(faults.front());
    return job;
}

Job withoutMatch(Job job, std::size_t index) {
    if (index < job.flows.size()) job.flows.erase(job.flows.begin() + std::ptrdiff_t(index));
    return job;
}

Result<Flow> newMatch(const Job &job, const std::string &first) {
    struct Pair {
        const Panel *from, *to;
        int points;
    };
    std::vector<Pair> pairs;
    for (const Panel &from : job.panels)
        for (const Panel &to : job.panels) {
            const bool known = std::any_of(job.flows.begin(), job.flows.end(), [&](const Flow &f) {
                return (f.from.panel == from.id && f.to.panel == to.id) ||
                       (f.from.panel == to.id && f.to.panel == from.id);
            });
            if (&from != &to && !known) pairs.push_back({&from, &to, likelihood(job, from, to, first)});
        }
    std::stable_sort(pairs.begin(), pairs.end(), [](const Pair &a, const Pair &b) { return a.points > b.points; });
    std::optional<Fault> why;
    for (const Pair &pair : pairs) {
        const int top = std::holds_alternative<PolygonShape>(pair.to->shape) ? 0 : int(Top);
        const Flow match{{pair.from->id, int(Bottom), {}, {}}, {pair.to->id, top, {}, {}}, {}, {}};
        const auto tried = withMatch(job, match);
        if (tried) return match;
        if (!why) why = tried.error();
    }
    if (why) return fault(*why);
    if (job.panels.size() < 2)
        return fault(phrase("The pattern runs on from one panel to another: add two panels first."));
    return fault(phrase("Every panel is matched with every other already."));
}

namespace {

/// Told from below upwards, as from border to seat, a join is at the upper edge of the one and the lower of the other.
Flow asItSits(const Job &job, Flow match) {
    const Panel *from = job.panel(match.from.panel), *to = job.panel(match.to.panel);
    if (!from || !to || from == to || !match.from.edge || !match.to.edge || match.from.at || match.to.at) return match;
    const auto above = heightOnPiece(*from), below = heightOnPiece(*to);
    if (!above || !below || std::holds_alternative<PolygonShape>(from->shape) ||
        std::holds_alternative<PolygonShape>(to->shape))
        return match;
    if (*above > *below && *match.from.edge == Bottom && *match.to.edge == Top)
        std::swap(match.from.edge, match.to.edge);
    if (*above < *below && *match.from.edge == Top && *match.to.edge == Bottom)
        std::swap(match.from.edge, match.to.edge);
    return match;
}

} // namespace

Flow withEndOn(const Job &job, Flow match, MatchSide side, const std::string &panel) {
    const Panel *is = job.panel(panel);
    if (!is) return match;
    const auto put = [&](FlowEnd &end, const Panel &on) {
        const Panel *was = job.panel(end.panel);
        std::optional<int> edge;
        if (was && end.edge && hasEdge(*was, *end.edge)) edge = edgeNamed(on.shape, edgeName(was->shape, *end.edge));
        end.panel = on.id;
        end.edge = edge.value_or(0);
        end.at.reset();
        if (end.copy && *end.copy > on.count) end.copy.reset();
    };
    FlowEnd &end = side == MatchSide::From ? match.from : match.to;
    FlowEnd &other = side == MatchSide::From ? match.to : match.from;
    const Panel *was = job.panel(end.panel);
    // Of a panel that there is one of, the other end takes the panel that this one had: the two change places.
    if (other.panel == panel && is->count < 2 && was && was != is) put(other, *was);
    put(end, *is);
    if (other.panel == panel && is->count > 1 && !(end.copy && other.copy && end.copy != other.copy)) {
        match.from.copy = 1;
        match.to.copy = 2;
    }
    return asItSits(job, std::move(match));
}

std::vector<std::string> matchDoubts(const Job &job) {
    std::vector<std::string> doubts;
    for (const Group &group : groupsOf(job)) {
        const bool mayUncentre =
            std::any_of(group.panels.begin(), group.panels.end(), [](const Panel *p) { return p->may.uncentre; });
        if (group.agrees && !group.onMotif && !mayUncentre && group.panels.size() > 1)
            doubts.push_back(
                phrase("%1 cannot all lie on their motif and run on from each other.", {namesOf(job, group.panels)}));
    }
    return doubts;
}

std::optional<Flow> matchFollowing(const Job &before, const Job &after, const Flow &match) {
    Flow follows = match;
    if (!endFollows(before, after, match, MatchSide::From, follows.from)) return std::nullopt;
    if (!endFollows(before, after, match, MatchSide::To, follows.to)) return std::nullopt;
    return follows;
}

std::vector<std::string> matchesDropped(const Job &before, const Job &after) {
    std::vector<std::string> words;
    for (const Flow &match : after.flows)
        if (!matchFollowing(before, after, match)) words.push_back(matchInWords(before, match));
    return words;
}

} // namespace boltwright
