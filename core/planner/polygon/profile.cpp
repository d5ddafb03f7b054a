#include "core/planner/polygon/profile.h"

#include "core/geometry/shape_ops.h"

#include <algorithm>

namespace boltwright::planner {
namespace {

double valueAt(double x, double x0, double y0, double x1, double y1) {
    if (x == x0) return y0;
    if (x == x1) return y1;
    return y0 + (y1 - y0) * ((x - x0) / (x1 - x0));
}

/// The lower rim of a convex counter-clockwise ring, by rising x.
std::vector<Rims::Point> lowerRim(const ClothRing &hull, double sign) {
    std::vector<Rims::Point> points;
    const std::size_t n = hull.size();
    for (std::size_t i = 0; i < n; ++i) {
        // An edge that runs to the right is below, one that runs to the left above.
        const ClothPoint a = hull[i], b = hull[(i + 1) % n];
        if (sign > 0 ? b.x > a.x : b.x < a.x)
            for (ClothPoint p : {a, b}) points.push_back({double(p.x.ticks()), double(p.y.ticks())});
    }
    std::sort(points.begin(), points.end(), [](const Rims::Point &a, const Rims::Point &b) { return a.x < b.x; });
    points.erase(std::unique(points.begin(), points.end(),
                             [](const Rims::Point &a, const Rims::Point &b) { return a.x == b.x && a.y == b.y; }),
                 points.end());
    return points;
}

} // namespace

Rims::Rims(const Outline &outline, Length gap) {
    const ClothRing hull = convexHull(outline.ring);
    lower = lowerRim(hull, 1);
    upper = lowerRim(grown(hull, gap), -1);
    for (ClothPoint p : hull) corners.push_back(double(p.x.ticks()));
    std::sort(corners.begin(), corners.end());
    corners.erase(std::unique(corners.begin(), corners.end()), corners.end());
    width = double(outline.width.ticks());
    height = double(outline.height.ticks());
    area = double(outline.area);
    levelBelow = lower.size() == 2 && lower[0].y == lower[1].y;
    for (std::size_t i = 1; i < lower.size(); ++i)
        underLower += (lower[i].y + lower[i - 1].y) / 2 * (lower[i].x - lower[i - 1].x);
}

void Profile::reset(double x0, double x1, double y) { m_pieces = {{x0, x1, y, y}}; }

Profile::Rest Profile::drop(const Rims &item, double x) const {
    const double end = x + item.width;
    auto piece =
        std::upper_bound(m_pieces.begin(), m_pieces.end(), x, [](double v, const Piece &p) { return v < p.x1; });
    std::size_t k = 1;
    double from = x, rest = -1e300, below = 0;
    while (from < end && piece != m_pieces.end()) {
        const double to = std::min({piece->x1, item.lower[k].x + x, end});
        if (to > from) {
            const double p0 = valueAt(from, piece->x0, piece->y0, piece->x1, piece->y1);
            const double p1 = valueAt(to, piece->x0, piece->y0, piece->x1, piece->y1);
            const Rims::Point &a = item.lower[k - 1], &b = item.lower[k];
            rest = std::max(rest, p0 - valueAt(from - x, a.x, a.y, b.x, b.y));
            rest = std::max(rest, p1 - valueAt(to - x, a.x, a.y, b.x, b.y));
            below += (p0 + p1) / 2 * (to - from);
        }
        from = to;
        if (piece->x1 <= from) ++piece;
        while (k + 1 < item.lower.size() && item.lower[k].x + x <= from) ++k;
    }
    return {rest, below};
}

void Profile::cover(const Rims &item, double x, double y) {
    m_next.clear();
    auto add = [&](double x0, double x1, double y0, double y1) {
        if (x1 > x0) m_next.push_back({x0, x1, y0, y1});
    };
    const auto &rim = item.upper;
    for (const Piece &piece : m_pieces) {
        auto at = [&](double u) { return valueAt(u, piece.x0, piece.y0, piece.x1, piece.y1); };
        const double low = std::clamp(rim.front().x + x, piece.x0, piece.x1),
                     high = std::clamp(rim.back().x + x, piece.x0, piece.x1);
        add(piece.x0, low, piece.y0, at(low));
        for (std::size_t k = 1; k < rim.size(); ++k) {
            const double a = std::max(low, rim[k - 1].x + x), b = std::min(high, rim[k].x + x);
            if (b <= a) continue;
            auto top = [&](double u) { return y + valueAt(u - x, rim[k - 1].x, rim[k - 1].y, rim[k].x, rim[k].y); };
            const double before = top(a) - at(a), after = top(b) - at(b);
            if (before >= 0 && after >= 0)
                add(a, b, top(a), top(b));
            else if (before <= 0 && after <= 0)
                add(a, b, at(a), at(b));
            else {
                const double c = std::clamp(a + (b - a) * (before / (before - after)), a, b);
                add(a, c, before > 0 ? top(a) : at(a), at(c));
                add(c, b, at(c), after > 0 ? top(b) : at(b));
            }
        }
        add(std::max(high, low), piece.x1, at(std::max(high, low)), piece.y1);
    }
    m_pieces.swap(m_next);
    tidy();
}

/// Level neighbours become one piece.
void Profile::tidy() {
    std::size_t kept = 0;
    for (std::size_t i = 1; i < m_pieces.size(); ++i) {
        Piece &last = m_pieces[kept];
        const Piece &p = m_pieces[i];
        if (last.y0 == last.y1 && p.y0 == p.y1 && last.y0 == p.y0)
            last.x1 = p.x1;
        else
            m_pieces[++kept] = p;
    }
    m_pieces.resize(kept + 1);
}

std::size_t Profile::lowest() const {
    std::size_t best = 0;
    auto low = [](const Piece &p) { return std::min(p.y0, p.y1); };
    for (std::size_t i = 1; i < m_pieces.size(); ++i)
        if (low(m_pieces[i]) < low(m_pieces[best])) best = i;
    return best;
}

void Profile::fill(std::size_t index) {
    Piece &p = m_pieces[index];
    if (p.y0 != p.y1) { // a slope becomes level at its upper end
        p.y0 = p.y1 = std::max(p.y0, p.y1);
    } else {
        double up = 1e300;
        if (index > 0) up = std::min(up, std::max(m_pieces[index - 1].y1, p.y0));
        if (index + 1 < m_pieces.size()) up = std::min(up, std::max(m_pieces[index + 1].y0, p.y0));
        if (up == p.y0) { // a slope begins level with it: it becomes part of the filling
            if (index > 0 && m_pieces[index - 1].y1 == p.y0) return fill(index - 1);
            if (index + 1 < m_pieces.size()) return fill(index + 1);
        }
        p.y0 = p.y1 = up;
    }
    tidy();
}

} // namespace boltwright::planner
