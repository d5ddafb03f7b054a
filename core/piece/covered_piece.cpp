#include "core/piece/covered_piece.h"

#include "core/geometry/exact.h"
#include "core/piece/piece_arranging.h"

#include <algorithm>
#include <array>
#include <map>

namespace boltwright {
namespace {

/// The indices of a copy's cuts, by piece.
using CutsOfCopies = std::map<CopyOf, std::vector<int>>;

CutsOfCopies cutsOfCopies(const Layout &layout) {
    CutsOfCopies cuts;
    for (int i = 0; i < int(layout.cuts.size()); ++i)
        cuts[{layout.cuts[std::size_t(i)].panel, layout.cuts[std::size_t(i)].copy}].push_back(i);
    for (auto &[copy, list] : cuts)
        std::stable_sort(list.begin(), list.end(), [&](int a, int b) {
            return layout.cuts[std::size_t(a)].piece < layout.cuts[std::size_t(b)].piece;
        });
    return cuts;
}

PieceRing seen(const PanelRing &ring, const PanelSeat &seat) {
    PieceRing out;
    for (const PanelPoint &p : ring) out.push_back(seat.at(p));
    if (twiceArea(out) < 0) std::reverse(out.begin(), out.end());
    return out;
}

class Coverer {
public:
    Coverer(const Job &job, const Layout &layout)
        : m_job(job), m_layout(layout), m_cuts(cutsOfCopies(layout)), m_laid(layAll(job, layout)),
          m_links(linksAskedFor(job, layout)) {}

    CoveredPiece piece() {
        listCopies();
        listJoins();
        const Arrangement arrangement = arranged(m_copies, m_joins);
        m_panelOf.assign(m_copies.size(), -1);
        for (std::size_t i = 0; i < m_copies.size(); ++i)
            if (arrangement.origins[i]) {
                m_panelOf[i] = int(m_piece.panels.size());
                m_piece.panels.push_back(covered(m_copies[i], *arrangement.origins[i], arrangement.joined[i]));
            }
        for (const CopyJoin &join : m_joins) addJoin(join);
        for (std::size_t i = 0; i < m_piece.panels.size(); ++i) addSeams(int(i));
        listOutOfSight();
        surround();
        return std::move(m_piece);
    }

private:
    const Panel &panelOf(const StandingCopy &copy) const { return m_job.panels[std::size_t(copy.panel)]; }
    const std::vector<int> *cutsOf(const CopyOf &copy) const {
        const auto it = m_cuts.find(copy);
        return it == m_cuts.end() ? nullptr : &it->second;
    }

    void listCopies() {
        for (int p = 0; p < int(m_job.panels.size()); ++p) {
            const Panel &panel = m_job.panels[std::size_t(p)];
            for (int k = 1; k <= panel.count; ++k) {
                const std::vector<int> *cuts = cutsOf({panel.id, k});
                const bool mirrored =
                    cuts ? m_layout.cuts[std::size_t(cuts->front())].mirrored : panel.mirror && k % 2 == 0;
                m_copies.push_back({p, k, mirrored, !panel.hidden,
                                    seen(measuredOutline(panel.shape), PanelSeat{PiecePoint{}, mirrored})});
            }
        }
    }

    void listJoins() {
        for (int f = 0; f < int(m_job.flows.size()); ++f) {
            const Flow &flow = m_job.flows[std::size_t(f)];
            for (int a = 0; a < int(m_copies.size()); ++a) {
                const StandingCopy &from = m_copies[std::size_t(a)];
                if (panelOf(from).id != flow.from.panel) continue;
                for (int b = 0; b < int(m_copies.size()); ++b) {
                    const StandingCopy &to = m_copies[std::size_t(b)];
                    if (a == b || panelOf(to).id != flow.to.panel) continue;
                    if (!joinsCopies(flow, panelOf(from), panelOf(to), from.copy, to.copy)) continue;
                    m_joins.push_back({f, a, b,
                                       PanelSeat{PiecePoint{}, from.mirrored}.at(pointOf(panelOf(from), flow.from)),
                                       PanelSeat{PiecePoint{}, to.mirrored}.at(pointOf(panelOf(to), flow.to))});
                }
            }
        }
    }

    CoveredPanel covered(const StandingCopy &copy, PiecePoint origin, bool joined) const {
        const Panel &panel = panelOf(copy);
        CoveredPanel out{{panel.id, copy.copy}, {origin, copy.mirrored}, {}, {}, joined};
        out.outline = seen(measuredOutline(panel.shape), out.seat);
        if (const std::vector<int> *cuts = cutsOf(out.copy))
            for (int cut : *cuts) out.parts.push_back(part(panel, out.seat, cut));
        return out;
    }

    CoveredPart part(const Panel &panel, const PanelSeat &seat, int index) const {
        const Cut &cut = m_layout.cuts[std::size_t(index)];
        PanelRing shape = measuredOutline(panel.shape);
        if (cut.of > 1) {
            const PieceSpan &span = m_laid[std::size_t(index)].span;
            PanelBox box = boxOf(shape); // only rectangles are made of pieces
            Length &low = span.sideToSide ? box.low.x : box.low.y, &high = span.sideToSide ? box.high.x : box.high.y;
            if (!span.first) low = std::clamp(span.from, low, high);
            if (!span.last) high = std::clamp(span.to, low, high);
            shape = ringOf(box);
        }
        return {index,    sheetOf(m_job, cut),
                cut.turn, seen(shape, seat),
                seat,     Laying(m_laid[std::size_t(index)].outline, cut.turn, cut.mirrored, {cut.x, cut.y})};
    }

    /// The edge of the panel that an end of a join means, as it stands in the picture; a point where there is none.
    CoveredJoin::Line edgeAt(const CoveredPanel &panel, const FlowEnd &end) const {
        const Panel &measured = *m_job.panel(panel.copy.panel);
        const PanelRing ring = measuredOutline(measured.shape);
        const PanelPoint at = pointOf(measured, end);
        const auto line = [&](std::size_t edge) {
            return CoveredJoin::Line{panel.seat.at(ring[edge]), panel.seat.at(ring[(edge + 1) % ring.size()])};
        };
        if (end.edge && std::size_t(*end.edge) < ring.size()) return line(std::size_t(*end.edge));
        for (std::size_t i = 0; i < ring.size(); ++i) {
            const PanelPoint from = ring[i], to = ring[(i + 1) % ring.size()];
            if (turning(from, to, at) == 0 && dot(at - from, to - from) >= 0 && dot(at - to, from - to) >= 0)
                return line(i);
        }
        return {panel.seat.at(at), panel.seat.at(at)};
    }

    void addJoin(const CopyJoin &join) {
        const Flow &flow = m_job.flows[std::size_t(join.flow)];
        CoveredJoin out;
        out.a = m_panelOf[std::size_t(join.a)];
        out.b = m_panelOf[std::size_t(join.b)];
        if (out.a < 0 || out.b < 0) return;
        const CoveredPanel &a = m_piece.panels[std::size_t(out.a)], &b = m_piece.panels[std::size_t(out.b)];
        out.touching = a.seat.origin + (join.atA - PiecePoint{}) == b.seat.origin + (join.atB - PiecePoint{});
        out.atA = edgeAt(a, flow.from);
        out.atB = edgeAt(b, flow.to);
        if (out.touching) out.atA = out.atB = inCommon(out.atA, out.atB);
        out.miss = missBetween(a.copy, b.copy, flow);
        m_piece.joins.push_back(out);
    }

    /// What two edges that lie on one upright or level line share; else the shorter of the two.
    static CoveredJoin::Line inCommon(const CoveredJoin::Line &a, const CoveredJoin::Line &b) {
        const auto shared = [](Length a0, Length a1, Length b0, Length b1) {
            return std::pair{std::max(std::min(a0, a1), std::min(b0, b1)),
                             std::min(std::max(a0, a1), std::max(b0, b1))};
        };
        const auto level = [](Length y, const CoveredJoin::Line &l) { return l.from.y == y && l.to.y == y; };
        const auto upright = [](Length x, const CoveredJoin::Line &l) { return l.from.x == x && l.to.x == x; };
        if (level(a.from.y, a) && level(a.from.y, b))
            if (const auto [low, high] = shared(a.from.x, a.to.x, b.from.x, b.to.x); low < high)
                return {{low, a.from.y}, {high, a.from.y}};
        if (upright(a.from.x, a) && upright(a.from.x, b))
            if (const auto [low, high] = shared(a.from.y, a.to.y, b.from.y, b.to.y); low < high)
                return {{a.from.x, low}, {a.from.x, high}};
        const Vector va = a.to - a.from, vb = b.to - b.from;
        const bool point = va == Vector{} || (vb != Vector{} && dot(vb, vb) < dot(va, va));
        return point ? b : a;
    }

    std::optional<PatternMiss> missBetween(const CopyOf &a, const CopyOf &b, const Flow &flow) {
        const PanelPoint end = pointOf(*m_job.panel(b.panel), flow.to);
        const auto copyOf = [&](int cut) {
            return CopyOf{m_layout.cuts[std::size_t(cut)].panel, m_layout.cuts[std::size_t(cut)].copy};
        };
        const auto it = std::find_if(m_links.begin(), m_links.end(), [&](const PhaseLink &l) {
            return l.kind == PhaseLink::Kind::Flow && copyOf(l.a) == a && copyOf(l.b) == b && l.atB == end;
        });
        if (it == m_links.end()) return std::nullopt;
        const PhaseLink link = *it;
        m_links.erase(it); // two joins of the same copies at the same point: each link speaks for one
        return missOf(m_job, m_laid, link);
    }

    /// Joins between the pieces of a panel, where the pattern is asked to run on over them.
    void addSeams(int index) {
        const CoveredPanel &panel = m_piece.panels[std::size_t(index)];
        for (std::size_t k = 0; k + 1 < panel.parts.size(); ++k) {
            const auto it = std::find_if(m_links.begin(), m_links.end(), [&](const PhaseLink &l) {
                return l.kind == PhaseLink::Kind::Join && l.a == panel.parts[k].cut && l.b == panel.parts[k + 1].cut;
            });
            if (it == m_links.end()) continue;
            const PieceBox here = boxOf(panel.parts[k].outline), whole = boxOf(panel.outline);
            const PiecePoint seam = panel.seat.at(it->atA);
            const bool sideToSide = m_laid[std::size_t(it->a)].span.sideToSide;
            const CoveredJoin::Line line = sideToSide
                                               ? CoveredJoin::Line{{seam.x, here.low.y}, {seam.x, here.high.y}}
                                               : CoveredJoin::Line{{whole.low.x, seam.y}, {whole.high.x, seam.y}};
            m_piece.joins.push_back({index, index, true, line, line, missOf(m_job, m_laid, *it)});
        }
    }

    void listOutOfSight() {
        for (std::size_t i = 0; i < m_copies.size(); ++i) {
            const std::string &id = panelOf(m_copies[i]).id;
            const bool listed = !m_piece.outOfSight.empty() && m_piece.outOfSight.back() == id;
            if (m_panelOf[i] < 0 && !listed) m_piece.outOfSight.push_back(id);
        }
    }

    void surround() {
        PieceRing corners;
        for (const CoveredPanel &panel : m_piece.panels)
            corners.insert(corners.end(), panel.outline.begin(), panel.outline.end());
        if (!corners.empty()) m_piece.box = boxOf(corners);
    }

    const Job &m_job;
    const Layout &m_layout;
    const CutsOfCopies m_cuts;
    const std::vector<LaidCut> m_laid;
    std::vector<PhaseLink> m_links;
    std::vector<StandingCopy> m_copies;
    std::vector<CopyJoin> m_joins;
    std::vector<int> m_panelOf; ///< the panel of the picture, by copy; -1: not shown
    CoveredPiece m_piece;
};

} // namespace

const CoveredPanel *CoveredPiece::panel(const CopyOf &copy) const {
    for (const CoveredPanel &p : panels)
        if (p.copy == copy) return &p;
    return nullptr;
}

CoveredPiece coveredPiece(const Job &job, const Layout &layout) { return Coverer(job, layout).piece(); }

} // namespace boltwright
