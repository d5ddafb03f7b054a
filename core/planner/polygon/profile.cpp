#include "core/planner/polygon/profile.h"

#include "core/geometry/shape_ops.h"

#include <algorithm>
#include <cmath>

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

void Profile::settlings(const Rims &item, double from, double to, std::vector<double> &xs) {
    from = std::max(from, m_pieces.front().x0);
    to = std::min(to, m_pieces.back().x1 - item.width);
    if (from > to) return;
    m_changes.assign({from, to});
    for (const Piece &p : m_pieces) {
        if (p.x0 <= from || p.x0 >= to + item.width) continue;
        for (const Rims::Point &c : item.lower)
            if (p.x0 - c.x > from && p.x0 - c.x < to) m_changes.push_back(p.x0 - c.x);
    }
    std::sort(m_changes.begin(), m_changes.end());
    m_changes.erase(std::unique(m_changes.begin(), m_changes.end()), m_changes.end());
    if (m_changes.size() == 1) return xs.push_back(from);
    m_stretches.clear();
    for (std::size_t i = 1; i < m_changes.size(); ++i)
        m_stretches.push_back(stretchBetween(item, m_changes[i - 1], m_changes[i]));
    constexpr double even = 1e-6;
    for (std::size_t i = 0, next = 0; i < m_stretches.size(); i = next) {
        const Stretch &s = m_stretches[i];
        double end = s.to;
        // A lowest place on the very border of two stretches, or level ground over several of them, is one.
        for (next = i + 1; next < m_stretches.size(); ++next) {
            const Stretch &beyond = m_stretches[next];
            if (end < m_changes[next] - even || std::abs(beyond.first - s.least) > even ||
                beyond.least < s.least - even)
                break;
            end = beyond.to;
        }
        // What slides on over the end, level or down, is not at rest there.
        const bool goesOnBefore = i > 0 && s.from <= m_changes[i] + even && m_stretches[i - 1].last <= s.least + even,
                   goesOnAfter = next < m_stretches.size() && end >= m_changes[next] - even &&
                                 m_stretches[next].first <= s.least + even;
        const bool level = end > s.from + even;
        if (!goesOnBefore && (level || !goesOnAfter)) xs.push_back(s.from);
        if (level && !goesOnAfter) xs.push_back(end);
    }
}

/// Between two places where a corner of the item comes over one of the profile, or the other way round.
Profile::Stretch Profile::stretchBetween(const Rims &item, double from, double to) {
    const double middle = (from + to) / 2, half = (to - from) / 2, end = middle + item.width;
    auto slope = [](double x0, double y0, double x1, double y1) { return x1 > x0 ? (y1 - y0) / (x1 - x0) : 0.; };
    m_lines.clear();
    auto piece =
        std::upper_bound(m_pieces.begin(), m_pieces.end(), middle, [](double v, const Piece &p) { return v < p.x1; });
    std::size_t k = 0;
    for (; piece != m_pieces.end() && piece->x0 < end; ++piece) {
        // Corners of the item over this piece ...
        const double rise = slope(piece->x0, piece->y0, piece->x1, piece->y1);
        for (; k < item.lower.size() && item.lower[k].x + middle <= piece->x1; ++k)
            m_lines.push_back({piece->y0 + rise * (item.lower[k].x + middle - piece->x0) - item.lower[k].y, rise});
        // ... and the corner of the profile where it ends, under an edge of the item.
        if (piece->x1 >= end || k == 0 || k == item.lower.size() || piece + 1 == m_pieces.end()) continue;
        const Rims::Point &c = item.lower[k - 1], &d = item.lower[k];
        const double run = slope(c.x, c.y, d.x, d.y);
        m_lines.push_back({std::max(piece->y1, (piece + 1)->y0) - c.y - run * (piece->x1 - middle - c.x), run});
    }
    auto heightAt = [&](double x) {
        double most = -1e300;
        for (const Line &l : m_lines) most = std::max(most, l.at + l.slope * x);
        return most;
    };
    // From the left end along the highest line, on to each that rises above it, as long as it falls.
    double x = -half;
    const Line *on = nullptr;
    for (const Line &l : m_lines)
        if (!on || l.at + l.slope * x > on->at + on->slope * x) on = &l;
    auto goOn = [&] {
        const Line *next = nullptr;
        double meet = half;
        for (const Line &l : m_lines) {
            if (l.slope <= on->slope) continue;
            const double here = std::max(x, (on->at - l.at) / (l.slope - on->slope));
            if (here > meet || (here == meet && (!next || l.slope <= next->slope))) continue;
            meet = here;
            next = &l;
        }
        x = meet;
        on = next;
    };
    while (on && on->slope < 0) goOn();
    Stretch s;
    s.from = middle + x;
    s.least = heightAt(x);
    if (on && on->slope == 0) goOn();
    s.to = middle + x;
    s.first = heightAt(-half);
    s.last = heightAt(half);
    return s;
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
