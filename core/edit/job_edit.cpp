#include "core/edit/job_edit.h"

#include "core/edit/layout_edit.h"
#include "core/edit/match_edit.h"
#include "core/figures/figures.h"
#include "core/panel/edges.h"
#include "core/rules/cut_shape.h"

#include <algorithm>
#include <set>

namespace boltwright {

namespace {

using namespace literals;

std::string freeName(const std::string &stem, const std::set<std::string> &taken) {
    for (int number = 1;; ++number) {
        std::string name = stem + std::to_string(number);
        if (!taken.contains(name)) return name;
    }
}

template <class Parts, class Name>
std::set<std::string> namesOf(const Parts &parts, Name name) {
    std::set<std::string> names;
    for (const auto &part : parts) names.insert(name(part));
    return names;
}

std::set<std::string> panelIds(const Job &job) {
    return namesOf(job.panels, [](const Panel &p) { return p.id; });
}

std::set<std::string> marks(const Job &job) {
    return namesOf(job.panels, [](const Panel &p) { return p.mark; });
}

} // namespace

Job newJob(Unit unit) {
    Job job;
    job.unit = unit;
    job.cloths.push_back(newCloth(job));
    job.gap = unit == Unit::Inch ? 0.25_in : 5_mm;
    return job;
}

Panel newPanel(const Job &job) {
    Panel panel;
    panel.id = freeName("panel-", panelIds(job));
    panel.mark = freeName("P", marks(job));
    panel.shape = job.unit == Unit::Inch ? Rectangle{20_in, 20_in} : Rectangle{50_cm, 50_cm};
    panel.allow.assign(4, job.unit == Unit::Inch ? 0.5_in : 1_cm);
    panel.allowMin.assign(4, std::nullopt);
    return panel;
}

Panel copyOfPanel(const Job &job, const Panel &panel) {
    Panel copy = panel;
    copy.kept = Kept{};
    copy.id = freeName(panel.id + "-", panelIds(job));
    copy.mark = freeName(panel.mark, marks(job));
    return copy;
}

LeastAtEdges leastAtEdges(const Panel &panel) {
    LeastAtEdges all;
    bool first = true;
    for (int edge = 0; edge < int(edgeCount(panel.shape)); ++edge) {
        if (panel.allowance(edge) <= Length{}) continue;
        const Length least = panel.leastAllowance(edge);
        const auto given = least < panel.allowance(edge) ? std::optional(least) : std::nullopt;
        if (first) all.least = given;
        if (!first && given != all.least) return {std::nullopt, true};
        first = false;
    }
    return all;
}

Panel withLeastAtEdges(Panel panel, std::optional<Length> least) {
    panel.allowMin.assign(edgeCount(panel.shape), std::nullopt);
    for (std::size_t edge = 0; edge < panel.allowMin.size(); ++edge)
        if (least && *least < panel.allowance(int(edge))) panel.allowMin[edge] = least;
    return panel;
}

Panel withAllowanceAt(Panel panel, int edge, Length allowance) {
    const std::size_t edges = edgeCount(panel.shape), at = std::size_t(edge);
    panel.allow.resize(edges);
    panel.allowMin.resize(edges);
    panel.allow[at] = allowance;
    if (panel.allowMin[at] && *panel.allowMin[at] > allowance) panel.allowMin[at] = allowance;
    if (const auto strip = panel.may.stretcher.find(edge); strip != panel.may.stretcher.end())
        strip->second = std::min(strip->second, allowance);
    return panel;
}

Panel withLeastAt(Panel panel, int edge, std::optional<Length> least) {
    panel.allowMin.resize(edgeCount(panel.shape));
    panel.allowMin[std::size_t(edge)] = least;
    return panel;
}

Panel withStripAt(Panel panel, int edge, std::optional<Length> left) {
    if (left)
        panel.may.stretcher[edge] = *left;
    else
        panel.may.stretcher.erase(edge);
    return panel;
}

Panel withShape(Panel panel, Shape shape) {
    const Panel was = panel;
    panel.shape = std::move(shape);
    if (!std::holds_alternative<Rectangle>(panel.shape)) panel.pieces = {};
    const std::size_t edges = edgeCount(panel.shape);
    if (edges == edgeCount(was.shape)) return panel;
    panel.allow.assign(edges, was.allowance(0));
    panel.allowMin.assign(edges, std::nullopt);
    panel.may.stretcher.clear();
    for (int edge = 0; edge < int(edgeCount(was.shape)); ++edge) {
        const auto now = edgeThatBecame(was.shape, edge, panel.shape);
        if (!now) continue;
        const auto at = std::size_t(*now);
        panel.allow[at] = was.allowance(edge);
        if (std::size_t(edge) < was.allowMin.size()) panel.allowMin[at] = was.allowMin[std::size_t(edge)];
        if (const auto strip = was.may.stretcher.find(edge); strip != was.may.stretcher.end())
            panel.may.stretcher[*now] = strip->second;
    }
    return panel;
}

Cloth newCloth(const Job &job) {
    Cloth cloth;
    cloth.id = freeName("cloth-", namesOf(job.cloths, [](const Cloth &c) { return c.id; }));
    Bolt bolt;
    bolt.width = job.unit == Unit::Inch ? 54_in : 137_cm;
    bolt.square = job.unit == Unit::Inch ? 1_in : 2_cm;
    cloth.bolt = bolt;
    cloth.selvage = job.unit == Unit::Inch ? 0.5_in : 1_cm;
    return cloth;
}

namespace {

bool hasSheet(const Job &job, const Cut &cut) {
    const Cloth *cloth = nullptr;
    if (cut.cloth)
        cloth = job.cloth(*cut.cloth);
    else if (const Panel *panel = job.panel(cut.panel))
        cloth = panel->cloth ? job.cloth(*panel->cloth) : job.cloths.empty() ? nullptr : &job.cloths.front();
    if (!cloth) return false;
    return cut.on ? cloth->remnant(*cut.on) != nullptr : cloth->bolt.has_value();
}

bool hasCopy(const Job &job, const std::string &panel, int copy) {
    const Panel *p = job.panel(panel);
    return p && copy <= p->count;
}

bool wasTrimmed(const Layout &layout, const Cut &cut) {
    return std::any_of(layout.conceded.begin(), layout.conceded.end(), [&](const Concession &c) {
        return c.panel == cut.panel && c.copy == cut.copy &&
               (c.kind == Concession::Kind::Trim || c.kind == Concession::Kind::Stretcher);
    });
}

void followAllowances(const Job &before, const Job &after, const Layout &layout, Cut &cut) {
    const Panel *was = before.panel(cut.panel), *is = after.panel(cut.panel);
    if (!was || !is || was->allow == is->allow) return;
    if (cut.state == CutState::Cut && edgeCount(was->shape) == edgeCount(is->shape)) {
        const auto had = allowancesOf(*was, cut); // the scissors have been there: it keeps what it had
        cut.allow.assign(had.begin(), had.end());
        return;
    }
    if (!wasTrimmed(layout, cut) || edgeCount(was->shape) != edgeCount(is->shape)) cut.allow.clear();
}

Layout following(const Job &before, const Job &after, Layout layout) {
    std::erase_if(layout.cuts,
                  [&](const Cut &cut) { return !hasCopy(after, cut.panel, cut.copy) || !hasSheet(after, cut); });
    std::erase_if(layout.leftOut, [&](const LeftOut &l) { return !hasCopy(after, l.panel, l.copy); });
    std::erase_if(layout.conceded, [&](const Concession &c) { return !hasCopy(after, c.panel, c.copy); });
    std::erase_if(layout.cloths, [&](const ClothUse &u) { return !after.cloth(u.id); });
    for (Cut &cut : layout.cuts) followAllowances(before, after, layout, cut);
    for (ClothUse &use : layout.cloths) {
        use.bound.reset();
        use.proved = false;
    }
    return withFigures(after, std::move(layout));
}

} // namespace

namespace {

/// What the cloths are to the planner: their names, prices and what was asked about them are nothing to it.
std::vector<Cloth> asLaidOn(std::vector<Cloth> cloths) {
    for (Cloth &cloth : cloths) {
        cloth.name.clear();
        cloth.price.reset();
        cloth.asked.clear();
        cloth.bow = cloth.skew = Length{};
    }
    return cloths;
}

bool layTheSame(const Job &a, const Job &b) {
    return a.panels == b.panels && a.flows == b.flows && a.gap == b.gap && asLaidOn(a.cloths) == asLaidOn(b.cloths);
}

} // namespace

Job withLayoutsFollowing(const Job &before, Job after) {
    if (layTheSame(before, after)) return after;
    for (Panel &panel : after.panels) {
        if (panel.cloth && !after.cloth(*panel.cloth)) panel.cloth.reset();
        if (!panel.may.otherCloth.id.empty() && !after.cloth(panel.may.otherCloth.id)) panel.may.otherCloth.id.clear();
    }
    for (Trimming &trimming : after.trimmings)
        if (trimming.cloth && !after.cloth(*trimming.cloth)) trimming.cloth.reset();
    std::vector<Flow> flows;
    for (const Flow &flow : after.flows)
        if (auto follows = matchFollowing(before, after, flow)) flows.push_back(std::move(*follows));
    after.flows = std::move(flows);
    for (Layout &layout : after.layouts) layout = following(before, after, std::move(layout));
    return after;
}

} // namespace boltwright
