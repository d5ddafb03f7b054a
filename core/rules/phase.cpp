#include "core/rules/phase.h"

#include <algorithm>
#include <cmath>

namespace boltwright {
namespace {

/// The cuts of one copy.
struct Copy {
    int number = 0;
    std::vector<int> cuts;
};

std::vector<Copy> copiesOf(const Panel &panel, const Layout &layout) {
    std::vector<Copy> copies;
    for (int i = 0; i < int(layout.cuts.size()); ++i) {
        const Cut &cut = layout.cuts[i];
        if (cut.panel != panel.id) continue;
        auto it = std::find_if(copies.begin(), copies.end(), [&](const Copy &c) { return c.number == cut.copy; });
        if (it == copies.end()) it = copies.insert(copies.end(), Copy{cut.copy, {}});
        it->cuts.push_back(i);
    }
    return copies;
}

/// The cut of a copy that holds a point of the panel.
std::optional<int> holder(const Panel &panel, const Copy &copy, const Layout &layout, PanelPoint p) {
    for (int i : copy.cuts)
        if (layout.cuts[i].of <= 1 || spanOf(panel, layout.cuts[i], layout).holds(p)) return i;
    return std::nullopt;
}

/// A point moved outwards from an edge of the measured shape, to the nearest tick.
PanelPoint outwards(const Shape &shape, int edge, PanelPoint from, Length by) {
    if (by == Length{}) return from;
    const PanelRing ring = measuredOutline(shape);
    const Vector along = ring[(std::size_t(edge) + 1) % ring.size()] - ring[std::size_t(edge)];
    const double length = std::hypot(double(along.x.ticks()), double(along.y.ticks()));
    const auto part = [&](Length side) {
        return Length::ticks(std::llround(double(side.ticks()) * double(by.ticks()) / length));
    };
    return from + Vector{part(along.y), -part(along.x)};
}

class Linker {
public:
    Linker(const Job &job, const Layout &layout) : m_job(job), m_layout(layout) {}

    std::vector<PhaseLink> links() {
        for (const Panel &panel : m_job.panels) {
            if (panel.alike && panel.count > 1) alike(panel);
            if (panel.pieces.match && panel.pieces.most > 1) pieces(panel);
        }
        for (const Flow &flow : m_job.flows) this->flow(flow);
        return std::move(m_links);
    }

private:
    void add(PhaseLink::Kind kind, int a, PanelPoint atA, int b, PanelPoint atB) {
        if (a == b || free(a) || free(b)) return;
        m_links.push_back({kind, a, b, atA, atB});
    }
    bool free(int cut) const { return isOffCentre(m_job, m_layout, m_layout.cuts[cut]); }

    void alike(const Panel &panel) {
        const PanelPoint anchor = anchorOf(panel);
        std::vector<int> first; // of each cloth
        for (const Copy &copy : copiesOf(panel, m_layout)) {
            const int cut = holder(panel, copy, m_layout, anchor).value_or(copy.cuts.front());
            if (free(cut)) continue;
            const auto sameCloth = [&](int other) {
                return &m_job.clothOf(m_layout.cuts[other]) == &m_job.clothOf(m_layout.cuts[cut]);
            };
            const auto it = std::find_if(first.begin(), first.end(), sameCloth);
            if (it == first.end())
                first.push_back(cut);
            else
                add(PhaseLink::Kind::Alike, *it, anchor, cut, anchor);
        }
    }

    void pieces(const Panel &panel) {
        for (const Copy &copy : copiesOf(panel, m_layout)) {
            std::vector<int> cuts = copy.cuts;
            std::sort(cuts.begin(), cuts.end(),
                      [&](int a, int b) { return m_layout.cuts[a].piece < m_layout.cuts[b].piece; });
            for (std::size_t k = 0; k + 1 < cuts.size(); ++k) {
                const PieceSpan span = spanOf(panel, m_layout.cuts[cuts[k]], m_layout);
                const PanelPoint join = span.sideToSide ? PanelPoint{span.to, {}} : PanelPoint{{}, span.to};
                // A join is sewn whatever else is given up, so being off centre does not free it.
                m_links.push_back({PhaseLink::Kind::Join, cuts[k], cuts[k + 1], join, join});
            }
        }
    }

    void flow(const Flow &flow) {
        const Panel *from = m_job.panel(flow.from.panel), *to = m_job.panel(flow.to.panel);
        if (!from || !to) return;
        const PanelPoint start = pointOf(*from, flow.from), end = pointOf(*to, flow.to);
        const PanelPoint moved = flow.from.edge ? outwards(from->shape, *flow.from.edge, start, flow.lost) : start;
        const std::vector<Copy> toCopies = copiesOf(*to, m_layout);
        for (const Copy &a : copiesOf(*from, m_layout)) {
            const auto cutA = holder(*from, a, m_layout, start);
            for (const Copy &b : toCopies) {
                if (!joinsCopies(flow, *from, *to, a.number, b.number)) continue;
                const auto cutB = holder(*to, b, m_layout, end);
                if (cutA && cutB) add(PhaseLink::Kind::Flow, *cutA, moved, *cutB, end);
            }
        }
    }

    const Job &m_job;
    const Layout &m_layout;
    std::vector<PhaseLink> m_links;
};

} // namespace

PanelPoint pointOf(const Panel &panel, const FlowEnd &end) {
    return end.at ? *end.at : middleOfEdge(panel.shape, end.edge.value_or(0));
}

bool joinsCopies(const Flow &flow, const Panel &from, const Panel &to, int copyFrom, int copyTo) {
    if (flow.from.copy && *flow.from.copy != copyFrom) return false;
    if (flow.to.copy && *flow.to.copy != copyTo) return false;
    if (flow.from.copy) return true;
    return from.count <= 1 || to.count <= 1 || copyFrom == copyTo;
}

bool isOffCentre(const Job &job, const Layout &layout, const Cut &cut) {
    const Panel *panel = job.panel(cut.panel);
    if (!panel || !panel->may.uncentre) return false;
    return std::any_of(layout.conceded.begin(), layout.conceded.end(), [&](const Concession &c) {
        return c.kind == Concession::Kind::Uncentre && c.panel == cut.panel && c.copy == cut.copy;
    });
}

std::vector<PhaseLink> phaseLinks(const Job &job, const Layout &layout) { return Linker(job, layout).links(); }

} // namespace boltwright
