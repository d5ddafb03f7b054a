#include "core/concede/grow_back.h"

#include "core/check/check.h"
#include "core/concede/trim_flow.h"
#include "core/figures/figures.h"
#include "core/geometry/outside.h"
#include "core/rules/rules.h"

#include <algorithm>
#include <array>

namespace boltwright {
namespace {

/// The panel's edges as they lie: at the low x, high x, low y and high y side of the cut's box.
std::array<int, 4> edgesAtSides(Turn turn, bool mirrored) {
    const int left = mirrored ? Right : Left, right = mirrored ? Left : Right;
    switch (turn) {
    case Turn::Deg90:
        return {Top, Bottom, left, right};
    case Turn::Deg180:
        return {right, left, Top, Bottom};
    case Turn::Deg270:
        return {Bottom, Top, right, left};
    default:
        return {left, right, Bottom, Top};
    }
}

/// One axis of one sheet: sides as variables, and what holds them apart.
class AxisModel {
public:
    explicit AxisModel(bool x) : m_x(x), m_start{Length{}} {}

    int add(const ClothBox &box) {
        const int low = int(m_start.size());
        m_start.push_back(side(box, false));
        m_start.push_back(side(box, true));
        return low;
    }
    void freeze(int low) {
        for (int v : {low, low + 1}) between(v, m_start[std::size_t(v)], m_start[std::size_t(v)]);
    }
    void between(int v, Length least, Length most) {
        limit(v, 0, -least);
        limit(0, v, most);
    }
    void width(int low, Length least, Length most) {
        limit(low, low + 1, most);
        limit(low + 1, low, -least);
    }
    /// Side `before` stays at least `gap` below side `after`; what rounding already took of it is let be.
    void apart(int before, int after, Length gap) {
        const Length now = m_start[std::size_t(after)] - m_start[std::size_t(before)];
        limit(after, before, -std::min(gap, now));
    }
    void grow(int low) { m_boxes.push_back({low, low + 1}); }
    void solve() {
        if (!m_boxes.empty()) m_start = widest(m_start, m_limits, m_boxes);
    }
    Length at(int v) const { return m_start[std::size_t(v)]; }
    Length side(const ClothBox &box, bool high) const {
        const ClothPoint &p = high ? box.high : box.low;
        return m_x ? p.x : p.y;
    }

private:
    void limit(int from, int to, Length most) { m_limits.push_back({from, to, most}); }
    bool m_x;
    std::vector<Length> m_start;
    std::vector<SideLimit> m_limits;
    std::vector<BoxSides> m_boxes;
};

struct Obstacle {
    ClothBox box;
    Length gap;
    bool flaw = false;
};

/// All cuts of one sheet.
class SheetModel {
public:
    SheetModel(const Job &job, const Layout &layout, const std::vector<LaidCut> &laid,
               const std::vector<PhaseLink> &links, std::vector<int> cuts)
        : m_job(job), m_layout(layout), m_laid(laid), m_cuts(std::move(cuts)) {
        const Cut &first = layout.cuts[std::size_t(m_cuts.front())];
        m_cloth = &job.clothOf(first);
        m_on = first.on;
        for (int c : m_cuts) {
            const bool linked =
                std::any_of(links.begin(), links.end(), [&](const PhaseLink &l) { return l.a == c || l.b == c; });
            m_linked.push_back(linked);
        }
    }

    /// Moves and grows the cuts of `layout` (the one it was made from).
    void growInto(Layout &layout) {
        AxisModel x(true), y(false);
        std::vector<int> vx, vy;
        for (int c : m_cuts) {
            vx.push_back(x.add(m_laid[std::size_t(c)].box));
            vy.push_back(y.add(m_laid[std::size_t(c)].box));
        }
        room(x, y, vx, vy);
        for (std::size_t i = 0; i < m_cuts.size(); ++i) sides(x, y, vx[i], vy[i], i);
        for (std::size_t i = 0; i < m_cuts.size(); ++i)
            for (std::size_t j = 0; j < i; ++j) keepOrder(x, y, vx, vy, i, j);
        x.solve();
        y.solve();
        for (std::size_t i = 0; i < m_cuts.size(); ++i)
            if (grows(i)) take(layout.cuts[std::size_t(m_cuts[i])], i, x, y, vx[i], vy[i]);
    }

private:
    const LaidCut &laid(std::size_t i) const { return m_laid[std::size_t(m_cuts[i])]; }
    bool grows(std::size_t i) const {
        const Cut &cut = *laid(i).cut;
        return cut.state == CutState::Planned && cut.of <= 1 && laid(i).rectangle &&
               std::holds_alternative<Rectangle>(laid(i).panel->shape);
    }
    Length full(std::size_t i, int edge) const { return laid(i).panel->allowance(edge); }
    Length least(std::size_t i, int edge) const {
        const Length has = allowancesOf(*laid(i).panel, *laid(i).cut)[std::size_t(edge)];
        return std::min(has, laid(i).panel->leastAllowance(edge));
    }

    void room(AxisModel &x, AxisModel &y, const std::vector<int> &vx, const std::vector<int> &vy) {
        const ClothRing ring = roomOf(*m_cloth, m_on);
        const Length edge = m_cloth->bolt ? Length{} : m_cloth->edge;
        const ClothBox box = boxOf(ring);
        for (std::size_t i = 0; i < m_cuts.size(); ++i) {
            x.between(vx[i], std::min(box.low.x + edge, x.at(vx[i])), Length::limit() * 2);
            x.between(vx[i] + 1, -Length::limit(), std::max(box.high.x - edge, x.at(vx[i] + 1)));
            y.between(vy[i], std::min(box.low.y + edge, y.at(vy[i])), Length::limit() * 2);
            y.between(vy[i] + 1, -Length::limit(), std::max(box.high.y - edge, y.at(vy[i] + 1)));
        }
        std::vector<Obstacle> obstacles;
        if (!m_cloth->bolt)
            for (const ClothRing &missing : outside(box, ring)) obstacles.push_back({boxOf(missing), edge, false});
        for (const Flaw &flaw : flawsOn(*m_cloth, m_on)) obstacles.push_back({boxOf(flaw.outline), {}, true});
        for (const Obstacle &o : obstacles) {
            const int ox = x.add(o.box), oy = y.add(o.box);
            x.freeze(ox);
            y.freeze(oy);
            for (std::size_t i = 0; i < m_cuts.size(); ++i)
                if (!(o.flaw && laid(i).panel->hidden))
                    keepApart(x, y, vx[i], vy[i], ox, oy, laid(i).box, o.box, o.gap);
        }
    }

    /// What the pattern ties stays where it is and grows about that point; what it leaves free moves.
    void sides(AxisModel &x, AxisModel &y, int vx, int vy, std::size_t i) {
        if (!grows(i)) {
            x.freeze(vx);
            y.freeze(vy);
            return;
        }
        const auto edges = edgesAtSides(laid(i).cut->turn, laid(i).cut->mirrored);
        const auto lattice = m_cloth->latticeOn(m_on);
        const PlaceSet wished = wishedPlaces(m_job, m_layout, laid(i));
        const bool tiedX = !wished.freeX() || (m_linked[i] && lattice && lattice->repeatsAcross());
        const bool tiedY = !wished.freeY() || (m_linked[i] && lattice && lattice->repeatsAlong());
        axis(x, vx, i, edges[0], edges[1], tiedX);
        axis(y, vy, i, edges[2], edges[3], tiedY);
    }

    void axis(AxisModel &m, int low, std::size_t i, int lowEdge, int highEdge, bool tied) {
        const std::vector<Length> has = allowancesOf(*laid(i).panel, *laid(i).cut);
        const Length lowMore = full(i, lowEdge) - has[std::size_t(lowEdge)],
                     highMore = full(i, highEdge) - has[std::size_t(highEdge)];
        const Length lowLess = has[std::size_t(lowEdge)] - least(i, lowEdge),
                     highLess = has[std::size_t(highEdge)] - least(i, highEdge);
        const Length now = m.at(low + 1) - m.at(low);
        if (tied) {
            m.between(low, m.at(low) - lowMore, m.at(low) + lowLess);
            m.between(low + 1, m.at(low + 1) - highLess, m.at(low + 1) + highMore);
        }
        m.width(low, now - lowLess - highLess, now + lowMore + highMore);
        m.grow(low);
    }

    void keepOrder(AxisModel &x, AxisModel &y, const std::vector<int> &vx, const std::vector<int> &vy, std::size_t i,
                   std::size_t j) {
        keepApart(x, y, vx[i], vy[i], vx[j], vy[j], laid(i).box, laid(j).box, m_job.gap);
    }

    /// Holds two boxes apart on the axis on which they lie further apart now; boxes that do not (slanted shapes inside
    /// each other's box) stay where they are.
    void keepApart(AxisModel &x, AxisModel &y, int ax, int ay, int bx, int by, const ClothBox &a, const ClothBox &b,
                   Length gap) {
        const Length right = b.low.x - a.high.x, left = a.low.x - b.high.x, up = b.low.y - a.high.y,
                     down = a.low.y - b.high.y;
        const Length most = std::max({right, left, up, down});
        if (most < -Length::ticks(8)) {
            for (int v : {ax, bx}) x.freeze(v);
            for (int v : {ay, by}) y.freeze(v);
        } else if (most == right)
            x.apart(ax + 1, bx, gap);
        else if (most == left)
            x.apart(bx + 1, ax, gap);
        else if (most == up)
            y.apart(ay + 1, by, gap);
        else
            y.apart(by + 1, ay, gap);
    }

    void take(Cut &cut, std::size_t i, const AxisModel &x, const AxisModel &y, int vx, int vy) const {
        const auto edges = edgesAtSides(cut.turn, cut.mirrored);
        EdgeLengths allow(4);
        const auto give = [&](const AxisModel &m, int low, int lowEdge, int highEdge, bool x_) {
            const auto lattice = m_cloth->latticeOn(m_on);
            const PlaceSet wished = wishedPlaces(m_job, m_layout, laid(i));
            const bool tied = x_ ? !wished.freeX() || (m_linked[i] && lattice && lattice->repeatsAcross())
                                 : !wished.freeY() || (m_linked[i] && lattice && lattice->repeatsAlong());
            const std::vector<Length> has = allowancesOf(*laid(i).panel, *laid(i).cut);
            const ClothBox &box = laid(i).box;
            if (tied) {
                allow[std::size_t(lowEdge)] = has[std::size_t(lowEdge)] + (m.side(box, false) - m.at(low));
                allow[std::size_t(highEdge)] = has[std::size_t(highEdge)] + (m.at(low + 1) - m.side(box, true));
                return;
            }
            // Free: what is short comes off one edge as far as it may, the one that may give more; then the other.
            const Length grown = (m.at(low + 1) - m.at(low)) - (m.side(box, true) - m.side(box, false));
            Length isShort =
                full(i, lowEdge) + full(i, highEdge) - has[std::size_t(lowEdge)] - has[std::size_t(highEdge)] - grown;
            const Length lowLeave = full(i, lowEdge) - least(i, lowEdge),
                         highLeave = full(i, highEdge) - least(i, highEdge);
            const bool lowFirst = lowLeave >= highLeave;
            const Length first = std::min(isShort, lowFirst ? lowLeave : highLeave);
            const Length second = isShort - first;
            allow[std::size_t(lowEdge)] = full(i, lowEdge) - (lowFirst ? first : second);
            allow[std::size_t(highEdge)] = full(i, highEdge) - (lowFirst ? second : first);
        };
        give(x, vx, edges[0], edges[1], true);
        give(y, vy, edges[2], edges[3], false);
        for (int e = 0; e < 4; ++e)
            if (allow[std::size_t(e)] == full(i, e)) allow[std::size_t(e)].reset();
        if (std::none_of(allow.begin(), allow.end(), [](const auto &a) { return a.has_value(); })) allow.clear();
        cut.allow = allow;
        cut.x = x.at(vx);
        cut.y = y.at(vy);
    }

    const Job &m_job;
    const Layout &m_layout;
    const std::vector<LaidCut> &m_laid;
    std::vector<int> m_cuts;
    std::vector<bool> m_linked;
    const Cloth *m_cloth = nullptr;
    std::optional<std::string> m_on;
};

/// The layout's list of trims and strips brought up to date with what its cuts have now.
void relist(const Job &job, Layout &layout) {
    std::erase_if(layout.conceded, [](const Concession &c) {
        return c.kind == Concession::Kind::Trim || c.kind == Concession::Kind::Stretcher;
    });
    for (const Cut &cut : layout.cuts)
        if (const Panel *panel = job.panel(cut.panel))
            for (Concession &trim : trimsOf(*panel, cut)) layout.conceded.push_back(std::move(trim));
}

/// A cut of any shape, back to the panel's full allowances where it lies, if nothing is in the way.
bool restore(const Job &job, Layout &layout, std::size_t i) {
    Cut &cut = layout.cuts[i];
    const Panel &panel = *job.panel(cut.panel);
    if (cut.allow.empty() || cut.of > 1 || cut.state != CutState::Planned) return false;
    const Cut before = cut;
    const LaidCut was = lay(panel, before, layout);
    // The measured shape's first corner stays where it is.
    const PanelPoint corner = measuredOutline(panel.shape).front();
    const ClothPoint at = was.at(corner);
    cut.allow.clear();
    const LaidCut is = lay(panel, cut, layout);
    const Vector move = at - is.at(corner);
    cut.x += move.x;
    cut.y += move.y;
    relist(job, layout);
    if (check(job, withFigures(job, layout)).empty()) return true;
    cut = before;
    relist(job, layout);
    return false;
}

} // namespace

Layout growBack(const Job &job, Layout layout) {
    const Layout original = layout;
    const std::vector<LaidCut> laid = layAll(job, original);
    const std::vector<PhaseLink> links = phaseLinks(job, original);
    std::vector<char> seen(layout.cuts.size(), 0);
    for (std::size_t i = 0; i < layout.cuts.size(); ++i) {
        if (seen[i]) continue;
        std::vector<int> sheet;
        for (std::size_t j = i; j < layout.cuts.size(); ++j) {
            const bool same = original.cuts[j].on == original.cuts[i].on &&
                              &job.clothOf(original.cuts[j]) == &job.clothOf(original.cuts[i]);
            if (!same || seen[j]) continue;
            seen[j] = 1;
            sheet.push_back(int(j));
        }
        SheetModel(job, original, laid, links, std::move(sheet)).growInto(layout);
    }
    relist(job, layout);
    layout = withFigures(job, std::move(layout));
    if (!check(job, layout).empty()) layout = original;
    for (std::size_t i = 0; i < layout.cuts.size(); ++i)
        if (!std::holds_alternative<Rectangle>(job.panel(layout.cuts[i].panel)->shape)) restore(job, layout, i);
    return withFigures(job, std::move(layout));
}

Length trimmedInAll(const Layout &layout) {
    Length sum;
    for (const Concession &c : layout.conceded)
        if ((c.kind == Concession::Kind::Trim || c.kind == Concession::Kind::Stretcher) && c.from && c.to)
            sum += *c.from - *c.to;
    return sum;
}

} // namespace boltwright
