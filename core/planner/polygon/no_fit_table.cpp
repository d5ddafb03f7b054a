#include "core/planner/polygon/no_fit_table.h"

#include "core/geometry/shape_ops.h"

#include <algorithm>
#include <cmath>

namespace boltwright::planner {
namespace {

using Corner = ConvexNoFit::Corner;
using Line = ConvexNoFit::Line;

constexpr double slantGives = 1; // ticks

Corner cornerOf(ClothPoint p) { return {double(p.x.ticks()), double(p.y.ticks())}; }

/// The line from a to b with its normal to the right, moved by `out` along the normal when slanted.
Line lineThrough(Corner a, Corner b, double out) {
    const double x = b.x - a.x, y = b.y - a.y;
    if (x == 0) return {y > 0 ? 1. : -1., 0, y > 0 ? a.x : -a.x};
    if (y == 0) return {0, x > 0 ? -1. : 1., x > 0 ? -a.y : a.y};
    const double length = std::sqrt(x * x + y * y), nx = y / length, ny = -x / length;
    return {nx, ny, nx * a.x + ny * a.y + out};
}

std::vector<ClothRing> partsOf(const std::vector<ClothRing> &rings) {
    std::vector<ClothRing> out;
    for (const ClothRing &ring : rings)
        for (ClothRing &part : convexParts(ring)) out.push_back(std::move(part));
    return out;
}

/// What of a convex polygon lies on the inner side of a line.
std::vector<Corner> cutBy(const std::vector<Corner> &corners, const Line &line) {
    std::vector<Corner> out;
    for (std::size_t i = 0; i < corners.size(); ++i) {
        const Corner a = corners[i], b = corners[(i + 1) % corners.size()];
        const double da = line.nx * a.x + line.ny * a.y - line.c, db = line.nx * b.x + line.ny * b.y - line.c;
        if (da <= 0) out.push_back(a);
        if ((da < 0 && db > 0) || (da > 0 && db < 0)) {
            const double t = da / (da - db);
            Corner p{a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t};
            if (line.ny == 0) p.x = line.nx * line.c; // upright edges stay exact
            if (line.nx == 0) p.y = line.ny * line.c;
            out.push_back(p);
        }
    }
    return out;
}

} // namespace

ConvexNoFit::ConvexNoFit(const ClothRing &ring) {
    const ClothBox box = boxOf(ring);
    lowX = double(box.low.x.ticks());
    lowY = double(box.low.y.ticks());
    highX = double(box.high.x.ticks());
    highY = double(box.high.y.ticks());
    for (ClothPoint p : ring) corners.push_back(cornerOf(p));
    for (std::size_t i = 0; i < corners.size(); ++i)
        lines.push_back(lineThrough(corners[i], corners[(i + 1) % corners.size()], -slantGives));
    buried.assign(lines.size(), 0);
}

double ConvexNoFit::depth(double x, double y) const {
    if (x <= lowX || x >= highX || y <= lowY || y >= highY) return 0;
    double least = highX - lowX;
    for (const Line &l : lines) {
        least = std::min(least, l.c - l.nx * x - l.ny * y);
        if (least <= 0) return 0;
    }
    return least;
}

NoFit::NoFit(std::vector<ConvexNoFit> all) : parts(std::move(all)) {
    if (parts.size() == 1) corners = parts[0].corners;
    if (parts.size() <= 1) return;
    auto within = [&](Corner c, std::size_t besides, std::size_t andBesides) {
        for (std::size_t k = 0; k < parts.size(); ++k)
            if (k != besides && k != andBesides && parts[k].depth(c.x, c.y) > 0) return true;
        return false;
    };
    for (std::size_t i = 0; i < parts.size(); ++i) {
        ConvexNoFit &p = parts[i];
        for (std::size_t k = 0; k < p.corners.size(); ++k) {
            if (!within(p.corners[k], i, i)) corners.push_back(p.corners[k]);
            const Corner a = p.corners[k], b = p.corners[(k + 1) % p.corners.size()];
            // A part is convex: with both ends well inside, so is all between.
            p.buried[k] = std::any_of(parts.begin(), parts.end(), [&](const ConvexNoFit &q) {
                return &q != &p && q.depth(a.x, a.y) > 0 && q.depth(b.x, b.y) > 0;
            });
        }
    }
    for (std::size_t i = 0; i < parts.size(); ++i)
        for (std::size_t j = i + 1; j < parts.size(); ++j)
            parts[i].eachCrossing({0, 0}, parts[j], {0, 0}, [&](double x, double y) {
                const Corner c{std::nearbyint(x), std::nearbyint(y)};
                if (!within(c, i, j)) corners.push_back(c);
            });
}

bool InnerFit::holds(double x, double y) const {
    if (x < lowX || x > highX || y < lowY || y > highY) return false;
    if (upright) return true;
    return std::all_of(lines.begin(), lines.end(), [&](const Line &l) { return l.nx * x + l.ny * y <= l.c; });
}

NoFitTable::NoFitTable(const Instance &instance)
    : m_instance(instance), m_outlines(instance.outlines.size()), m_pairs(m_outlines * m_outlines),
      m_onSheets(instance.sheets.size() * m_outlines * 2) {
    for (const Outline &o : instance.outlines) {
        m_grown.emplace_back();
        for (const ClothRing &part : o.parts) m_grown.back().push_back(grown(part, instance.gap));
    }
    for (const Sheet &s : instance.sheets) {
        m_hulls.push_back(convexHull(s.room));
        m_lacking.push_back(partsOf(pockets(s.room)));
        m_flaws.push_back(partsOf(s.flaws));
    }
}

NoFitTable::~NoFitTable() {
    for (Slot &s : m_pairs) delete s.load();
    for (Slot &s : m_onSheets) delete s.load();
}

template <class Make>
const NoFit &NoFitTable::kept(Slot &slot, Make make) {
    if (const NoFit *there = slot.load(std::memory_order_acquire)) return *there;
    auto made = std::make_unique<const NoFit>(NoFit(make()));
    const NoFit *before = nullptr;
    // Another thread may have made the same one meanwhile; the first stays.
    if (slot.compare_exchange_strong(before, made.get(), std::memory_order_acq_rel)) return *made.release();
    return *before;
}

const NoFit &NoFitTable::between(int a, int b) const {
    return kept(m_pairs[std::size_t(a) * m_outlines + std::size_t(b)], [&] { return make(a, b); });
}

const NoFit &NoFitTable::onSheet(int sheet, int b, bool hidden) const {
    Slot &slot = m_onSheets[(std::size_t(sheet) * m_outlines + std::size_t(b)) * 2 + (hidden ? 1 : 0)];
    return kept(slot, [&] { return makeOnSheet(sheet, b, hidden); });
}

std::vector<ConvexNoFit> NoFitTable::make(int a, int b) const {
    std::vector<ConvexNoFit> out;
    // The gap is added to the outline with the lower number, so that both ways round agree to the tick.
    if (a > b) {
        for (const ConvexNoFit &part : between(b, a).parts) {
            ClothRing ring;
            for (const Corner &c : part.corners)
                ring.push_back({Length::ticks(-std::int64_t(c.x)), Length::ticks(-std::int64_t(c.y))});
            out.emplace_back(ring);
        }
        return out;
    }
    for (const ClothRing &p : m_grown[std::size_t(a)])
        for (const ClothRing &q : m_instance.outlines[std::size_t(b)].parts) out.emplace_back(noFit(p, q));
    return out;
}

std::vector<ConvexNoFit> NoFitTable::makeOnSheet(int sheet, int b, bool hidden) const {
    const auto s = std::size_t(sheet);
    std::vector<ConvexNoFit> out;
    auto add = [&](const std::vector<ClothRing> &obstacles) {
        for (const ClothRing &p : obstacles)
            for (const ClothRing &q : m_instance.outlines[std::size_t(b)].parts) out.emplace_back(noFit(p, q));
    };
    add(m_lacking[s]);
    if (!hidden) add(m_flaws[s]);
    for (const Fixed &f : m_instance.fixed) {
        if (f.sheet != sheet) continue;
        std::vector<ClothRing> there;
        for (const ClothRing &part : m_grown[std::size_t(f.outline)])
            there.push_back(moved(part, f.corner - ClothPoint{}));
        add(there);
    }
    return out;
}

InnerFit NoFitTable::within(int sheet, int b, double top) const {
    const Outline &o = m_instance.outlines[std::size_t(b)];
    const ClothRing &hull = m_hulls[std::size_t(sheet)];
    const ClothBox box = boxOf(hull);
    InnerFit fit;
    fit.upright = isUprightRectangle(hull);
    fit.lowX = double(box.low.x.ticks());
    fit.lowY = double(box.low.y.ticks());
    fit.highX = double((box.high.x - o.width).ticks());
    fit.highY = std::min(double(box.high.y.ticks()), top) - double(o.height.ticks());
    if (fit.highX < fit.lowX || fit.highY < fit.lowY) return fit;
    fit.corners = {{fit.lowX, fit.lowY}, {fit.highX, fit.lowY}, {fit.highX, fit.highY}, {fit.lowX, fit.highY}};
    if (fit.upright) return fit;
    for (std::size_t i = 0; i < hull.size(); ++i) {
        Line line = lineThrough(cornerOf(hull[i]), cornerOf(hull[(i + 1) % hull.size()]), 0);
        double reach = -1e300; // how far the outline stretches in the direction of the normal
        for (ClothPoint p : o.ring)
            reach = std::max(reach, line.nx * double(p.x.ticks()) + line.ny * double(p.y.ticks()));
        line.c -= reach;
        const bool slanted = line.nx != 0 && line.ny != 0;
        if (slanted) line.c += slantGives / 4; // an exact fit survives the rounding of its normals
        fit.corners = cutBy(fit.corners, line);
        if (slanted) line.c += slantGives * 3 / 4;
        fit.lines.push_back(line);
    }
    return fit;
}

} // namespace boltwright::planner
