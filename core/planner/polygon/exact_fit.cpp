#include "core/planner/polygon/exact_fit.h"

#include "core/geometry/shape_ops.h"

#include <algorithm>
#include <cstdlib>
#include <optional>
#include <utility>

namespace boltwright::planner {
namespace {

using Tick = std::int64_t;

/// Corners that were rounded to ticks meet within so many.
constexpr Tick near = 4;
/// Rounded edges may lie as deep in one another; the exact rules have the last word.
constexpr double rounding = 3;
/// Directions that differ by less are the same (a quarter turn is 1).
constexpr double sameDirection = 1e-4;

/// Counter-clockwise from the right, a quarter turn each whole number; grows with the angle, and is the same on every
/// machine.
double directionOf(Tick x, Tick y) {
    const double across = double(std::llabs(x)), up = double(std::llabs(y)), sum = across + up;
    if (x > 0 && y >= 0) return up / sum;
    if (x <= 0 && y > 0) return 1 + across / sum;
    if (x < 0 && y <= 0) return 2 + up / sum;
    return 3 + across / sum;
}

struct Point {
    Tick x, y;
};

bool before(Point a, Point b) { return a.y != b.y ? a.y < b.y : a.x < b.x; }

/// An outline as the search sees it.
struct Piece {
    std::vector<Point> ring;
    Tick width, height;
    Point lowest;    ///< its lowest corner, the leftmost of these, from the corner of its box
    double from, to; ///< the directions in which its edges leave that corner
};

Piece pieceOf(const Outline &outline) {
    Piece p;
    for (ClothPoint c : outline.ring) p.ring.push_back({c.x.ticks(), c.y.ticks()});
    p.width = outline.width.ticks();
    p.height = outline.height.ticks();
    const std::size_t n = p.ring.size();
    const auto lowest = std::min_element(p.ring.begin(), p.ring.end(), before);
    const auto at = std::size_t(lowest - p.ring.begin());
    const Point next = p.ring[(at + 1) % n], last = p.ring[(at + n - 1) % n];
    p.lowest = *lowest;
    p.from = directionOf(next.x - lowest->x, next.y - lowest->y);
    p.to = directionOf(last.x - lowest->x, last.y - lowest->y);
    return p;
}

/// Stretches of direction that are taken, as seen from one point.
class Taken {
public:
    void add(double from, double to) {
        if (to <= from + sameDirection) to += 4;
        for (double turn : {0., -4.}) {
            const double low = std::max(0., from + turn), high = std::min(2., to + turn);
            if (high > low) m_stretches.push_back({low, high});
        }
    }
    void addAll() { m_stretches.push_back({0, 2}); }

    /// The first stretch upwards that is free.
    std::optional<std::pair<double, double>> firstFree() {
        std::sort(m_stretches.begin(), m_stretches.end());
        double at = 0;
        for (const auto &[low, high] : m_stretches) {
            if (low > at + sameDirection) return std::pair{at, low};
            at = std::max(at, high);
        }
        if (at < 2 - sameDirection) return std::pair{at, 2.};
        return std::nullopt;
    }

private:
    std::vector<std::pair<double, double>> m_stretches;
};

class Search {
public:
    Search(const Instance &instance, const NoFitTable &noFits, Length length, std::int64_t most,
           const std::function<bool()> &stop)
        : m_instance(instance), m_noFits(noFits), m_most(most), m_stop(stop), m_used(instance.items.size()) {
        const ClothBox room = boxOf(instance.sheets[0].room);
        m_left = room.low.x.ticks();
        m_right = room.high.x.ticks();
        m_bottom = room.low.y.ticks();
        m_top = length.ticks();
        for (const Outline &o : instance.outlines) m_pieces.push_back(pieceOf(o));
    }

    ExactFit run() {
        ExactFit fit;
        if (lay({m_left, m_bottom})) fit.placements = m_laid;
        fit.tried = m_tried;
        fit.most = m_mostLaid;
        return fit;
    }

private:
    struct Gap {
        Point at;
        double from, to;
    };

    int outlineIndex(const Placement &p) const {
        return m_instance.items[std::size_t(p.item)].options[std::size_t(p.option)].outline;
    }

    bool lay(Point from) {
        m_mostLaid = std::max(m_mostLaid, m_laid.size());
        if (m_laid.size() == m_instance.items.size()) return holds(m_instance, m_laid);
        const auto gap = lowestGap(from);
        if (!gap) return false;
        std::vector<char> outlinesTried(m_instance.outlines.size(), 0);
        for (std::size_t i = 0; i < m_instance.items.size(); ++i) {
            if (m_used[i]) continue;
            const auto &options = m_instance.items[i].options;
            for (std::size_t o = 0; o < options.size(); ++o) {
                const auto outline = std::size_t(options[o].outline);
                if (std::exchange(outlinesTried[outline], 1)) continue;
                if (over()) return false;
                ++m_tried;
                const Piece &piece = m_pieces[outline];
                if (std::abs(piece.from - gap->from) > sameDirection || piece.to > gap->to + sameDirection) continue;
                const Point corner{gap->at.x - piece.lowest.x, gap->at.y - piece.lowest.y};
                if (!isFree(int(outline), piece, corner)) continue;
                m_used[i] = 1;
                m_laid.push_back({int(i), int(o), {Length::ticks(corner.x), Length::ticks(corner.y)}});
                if (lay(gap->at)) return true;
                m_laid.pop_back();
                m_used[i] = 0;
            }
        }
        return false;
    }

    bool over() { return m_tried >= m_most || (m_tried % 256 == 0 && m_stop && m_stop()); }

    bool isFree(int outline, const Piece &piece, Point corner) const {
        if (corner.x < m_left - near || corner.x + piece.width > m_right + near || corner.y < m_bottom - near ||
            corner.y + piece.height > m_top + near)
            return false;
        return std::all_of(m_laid.begin(), m_laid.end(), [&](const Placement &p) {
            const NoFit &noFit = m_noFits.between(outlineIndex(p), outline);
            const double x = double(corner.x - p.corner.x.ticks()), y = double(corner.y - p.corner.y.ticks());
            return std::all_of(noFit.parts.begin(), noFit.parts.end(),
                               [&](const ConvexNoFit &part) { return part.depth(x, y) <= rounding; });
        });
    }

    /// The lowest point with room above it, never below where one was found before.
    std::optional<Gap> lowestGap(Point from) const {
        std::vector<Point> points{{m_left, m_bottom}, {m_right, m_bottom}};
        for (const Placement &p : m_laid)
            for (Point c : m_pieces[std::size_t(outlineIndex(p))].ring) {
                const Point at{c.x + p.corner.x.ticks(), c.y + p.corner.y.ticks()};
                if (at.y >= from.y - near && at.y < m_top - near) points.push_back(at);
            }
        std::sort(points.begin(), points.end(), before);
        for (Point at : points)
            if (const auto free = freeAbove(at)) return Gap{at, free->first, free->second};
        return std::nullopt;
    }

    std::optional<std::pair<double, double>> freeAbove(Point at) const {
        Taken taken;
        if (at.x >= m_right - near) taken.add(0, 1);
        if (at.x <= m_left + near) taken.add(1, 2);
        for (const Placement &p : m_laid) {
            const Piece &piece = m_pieces[std::size_t(outlineIndex(p))];
            take(taken, piece, {at.x - p.corner.x.ticks(), at.y - p.corner.y.ticks()});
        }
        return taken.firstFree();
    }

    /// What a piece takes of the directions from a point in its frame.
    static void take(Taken &taken, const Piece &piece, Point at) {
        if (at.x < -near || at.y < -near || at.x > piece.width + near || at.y > piece.height + near) return;
        const std::size_t n = piece.ring.size();
        bool inside = false;
        std::optional<std::size_t> edge;
        for (std::size_t i = 0; i < n; ++i) {
            const Point a = piece.ring[i], b = piece.ring[(i + 1) % n];
            const Tick ex = b.x - a.x, ey = b.y - a.y, px = at.x - a.x, py = at.y - a.y;
            if (std::llabs(px) <= near && std::llabs(py) <= near) {
                const Point last = piece.ring[(i + n - 1) % n];
                return taken.add(directionOf(ex, ey), directionOf(last.x - a.x, last.y - a.y));
            }
            // Not yet sure of the edge: the next corner may be the point itself.
            const double length = double(std::max(std::llabs(ex), std::llabs(ey))),
                         off = (double(ex) * double(py) - double(ey) * double(px)) / length,
                         along = (double(ex) * double(px) + double(ey) * double(py)) / length;
            const double reach = (double(ex) * double(ex) + double(ey) * double(ey)) / length;
            if (std::abs(off) <= double(near) && along > 0 && along < reach) edge = i;
            if ((a.y > at.y) != (b.y > at.y)) {
                const double side = double(ex) * double(py) - double(ey) * double(px);
                if ((ey > 0) == (side > 0)) inside = !inside;
            }
        }
        if (edge) {
            const Point a = piece.ring[*edge], b = piece.ring[(*edge + 1) % n];
            return taken.add(directionOf(b.x - a.x, b.y - a.y), directionOf(a.x - b.x, a.y - b.y));
        }
        if (inside) taken.addAll();
    }

    const Instance &m_instance;
    const NoFitTable &m_noFits;
    std::int64_t m_most, m_tried = 0;
    const std::function<bool()> &m_stop;
    Tick m_left, m_right, m_bottom, m_top;
    std::vector<Piece> m_pieces;
    std::vector<char> m_used;
    std::vector<Placement> m_laid;
    std::size_t m_mostLaid = 0;
};

} // namespace

bool couldFillExactly(const Instance &instance, Length length) {
    if (instance.sheets.size() != 1 || !instance.sheets[0].open || instance.gap != Length{} ||
        !instance.sheets[0].flaws.empty() || !instance.fixed.empty() || !isUprightRectangle(instance.sheets[0].room))
        return false;
    Area area = 0;
    Tick corners = 0;
    for (const Item &item : instance.items) {
        if (item.group >= 0) return false;
        for (const Option &o : item.options)
            if (!o.places.freeX() || !o.places.freeY()) return false;
        const Outline &outline = instance.outlines[std::size_t(item.options.front().outline)];
        area += outline.area;
        corners += Tick(outline.ring.size());
    }
    const ClothBox room = boxOf(instance.sheets[0].room);
    const Area cloth = Area(room.width().ticks()) * Area((length - room.low.y).ticks());
    // Every corner may have moved by half a tick.
    const Area rounding = Area(corners + 1) * Area(room.width().ticks() + (length - room.low.y).ticks());
    return cloth >= area - rounding && cloth <= area + rounding;
}

ExactFit fitExactly(const Instance &instance, const NoFitTable &noFits, Length length, std::int64_t most,
                    const std::function<bool()> &stop) {
    return Search(instance, noFits, length, most, stop).run();
}

} // namespace boltwright::planner
