#include "core/planner/polygon/spots.h"

#include "core/planner/polygon/ticks.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace boltwright::planner {
namespace {

using Corner = ConvexNoFit::Corner;

/// The stretch of a convex shape, moved to `at`, that the line x = `x` (or, with `turned`, y = `x`) cuts out.
struct Stretch {
    double from = 1e300, to = -1e300;
    bool any() const { return from <= to; }
};

template <class Across, class Along>
Stretch stretchAt(const ConvexNoFit &shape, double line, Across across, Along along) {
    Stretch s;
    for (std::size_t i = 0; i < shape.corners.size(); ++i) {
        const Corner a = shape.corners[i], b = shape.corners[i + 1 == shape.corners.size() ? 0 : i + 1];
        const double da = across(a) - line, db = across(b) - line;
        if ((da < 0 && db < 0) || (da > 0 && db > 0)) continue;
        auto take = [&](double v) {
            s.from = std::min(s.from, v);
            s.to = std::max(s.to, v);
        };
        if (da == 0) take(along(a));
        if (db == 0) take(along(b));
        if (da != db) take(along(a) + (along(b) - along(a)) * (da / (da - db)));
    }
    return s;
}

} // namespace

void Spots::start(InnerFit fit, const PlaceSet &places) {
    m_fit = std::move(fit);
    m_places = places;
    m_parts.clear();
    m_obstacles.clear();
}

void Spots::add(const NoFit &noFit, double x, double y, double weight) {
    for (const ConvexNoFit &shape : noFit.parts) {
        const Part part{shape.lowX + x, shape.lowY + y,         shape.highX + x, shape.highY + y, &shape, x, y,
                        weight,         int(m_obstacles.size())};
        // One that only touches the room is in nothing's way, but gives places of contact.
        if (part.lowX <= m_fit.highX && part.highX >= m_fit.lowX && part.lowY <= m_fit.highY &&
            part.highY >= m_fit.lowY)
            m_parts.push_back(part);
    }
    m_obstacles.push_back({&noFit, x, y});
}

double Spots::cost(double x, double y, double enough) const {
    double sum = 0, deepest = 0, weight = 0;
    int obstacle = -1;
    const std::size_t cell = cellOf(x, y);
    for (std::size_t k = m_firstInCell[cell]; k < m_firstInCell[cell + 1]; ++k) {
        const Part &p = m_inCells[k];
        if (x <= p.lowX || x >= p.highX || y <= p.lowY || y >= p.highY) continue;
        const double depth = p.shape->depth(x - p.x, y - p.y);
        if (depth <= 0) continue;
        // The parts of one obstacle count once, by the deepest.
        if (p.obstacle != obstacle) {
            sum += deepest * weight;
            deepest = 0;
            obstacle = p.obstacle;
            weight = p.weight;
        }
        deepest = std::max(deepest, depth);
        if (sum + deepest * weight >= enough) return sum + deepest * weight;
    }
    return sum + deepest * weight;
}

std::size_t Spots::cellOf(double x, double y) const {
    const int i = std::min(m_cellsAcross - 1, int((x - m_fit.lowX) * m_perX)),
              j = std::min(m_cellsAlong - 1, int((y - m_fit.lowY) * m_perY));
    return std::size_t(j) * std::size_t(m_cellsAcross) + std::size_t(i);
}

void Spots::sortIntoCells() {
    // About as many cells as parts: more would cost more to fill than they save.
    const double width = m_fit.highX - m_fit.lowX, height = m_fit.highY - m_fit.lowY;
    const double wanted = 1.5 * double(m_parts.size()) + 1,
                 square = std::sqrt(std::max(1., width) * std::max(1., height) / wanted);
    m_cellsAcross = std::clamp(int(width / square), 1, 64);
    m_cellsAlong = std::clamp(int(height / square), 1, 64);
    m_perX = width > 0 ? m_cellsAcross / width : 0;
    m_perY = height > 0 ? m_cellsAlong / height : 0;
    const std::size_t cells = std::size_t(m_cellsAcross) * std::size_t(m_cellsAlong);
    m_firstInCell.assign(cells + 2, 0);
    auto eachCell = [&](const Part &p, auto task) {
        auto bounded = [](double v, int count) { return int(std::clamp(v, 0., count - 1.)); };
        const int i0 = bounded((p.lowX - m_fit.lowX) * m_perX, m_cellsAcross),
                  i1 = bounded((p.highX - m_fit.lowX) * m_perX, m_cellsAcross);
        const int j0 = bounded((p.lowY - m_fit.lowY) * m_perY, m_cellsAlong),
                  j1 = bounded((p.highY - m_fit.lowY) * m_perY, m_cellsAlong);
        for (int j = j0; j <= j1; ++j)
            for (int i = i0; i <= i1; ++i) task(std::size_t(j) * std::size_t(m_cellsAcross) + std::size_t(i));
    };
    for (const Part &p : m_parts) eachCell(p, [&](std::size_t c) { ++m_firstInCell[c + 2]; });
    for (std::size_t c = 2; c < m_firstInCell.size(); ++c) m_firstInCell[c] += m_firstInCell[c - 1];
    m_inCells.resize(m_firstInCell.back());
    // Filling moves the beginnings on by one cell, which is why they were counted one cell further up.
    for (const Part &p : m_parts) eachCell(p, [&](std::size_t c) { m_inCells[m_firstInCell[c + 1]++] = p; });
}

void Spots::addPlace(double x, double y) {
    if (m_fit.holds(x, y)) m_found.push_back({x, y});
}

std::optional<Spots::Spot> Spots::best(double enough, int corner) {
    gather();
    const double right = corner & 1 ? -1 : 1, up = corner & 2 ? -1 : 1;
    std::optional<Spot> found;
    for (const Place &p : m_found) {
        const double limit = found ? found->cost : enough;
        // An equal cost is wanted too where the place is lower.
        const bool lower = found && (p.y * up < found->y * up || (p.y == found->y && p.x * right < found->x * right));
        const double c = cost(p.x, p.y, lower ? std::nextafter(limit, 1e300) : limit);
        if (c < limit || (lower && c == limit)) found = Spot{p.x, p.y, c};
    }
    m_tried = int(m_found.size());
    return found;
}

std::optional<Spots::Spot> Spots::lowestFree() {
    gather();
    std::sort(m_found.begin(), m_found.end(),
              [](const Place &a, const Place &b) { return a.y != b.y ? a.y < b.y : a.x < b.x; });
    m_tried = 0;
    for (const Place &p : m_found) {
        ++m_tried;
        if (cost(p.x, p.y, 1e-9) == 0) return Spot{p.x, p.y, 0};
    }
    return std::nullopt;
}

void Spots::gather() {
    m_found.clear();
    if (m_fit.empty()) return;
    sortIntoCells();
    if (m_places.freeX() && m_places.freeY())
        gatherAnywhere();
    else if (m_places.freeY())
        gatherInColumns();
    else if (m_places.freeX())
        gatherInRows();
    else
        gatherOnLattice();
}

void Spots::gatherAnywhere() {
    for (const Corner &c : m_fit.corners) addPlace(std::nearbyint(c.x), std::nearbyint(c.y));
    for (const Obstacle &o : m_obstacles)
        for (const Corner &c : o.noFit->corners) addPlace(c.x + o.x, c.y + o.y);
    for (const Part &part : m_parts) addCrossingsWithRoom(part);
    addCrossings();
}

/// Where edges of two obstacles cross: swept from the bottom up, so that only edges that come near each other are
/// compared.
void Spots::addCrossings() {
    m_edges.clear();
    for (const Part &part : m_parts) {
        const ConvexNoFit &s = *part.shape;
        const std::size_t n = s.corners.size();
        for (std::size_t k = 0; k < n; ++k) {
            if (s.buried[k]) continue;
            const Corner a = s.corners[k], b = s.corners[k + 1 == n ? 0 : k + 1];
            const Edge e{a.x + part.x,
                         a.y + part.y,
                         b.x - a.x,
                         b.y - a.y,
                         std::min(a.x, b.x) + part.x,
                         std::max(a.x, b.x) + part.x,
                         std::min(a.y, b.y) + part.y,
                         std::max(a.y, b.y) + part.y,
                         part.obstacle};
            if (e.lowX <= m_fit.highX && e.highX >= m_fit.lowX && e.lowY <= m_fit.highY && e.highY >= m_fit.lowY)
                m_edges.push_back(e);
        }
    }
    // A total order, so that the places come in the same order on every machine.
    std::sort(m_edges.begin(), m_edges.end(), [](const Edge &a, const Edge &b) {
        return std::tie(a.lowY, a.lowX, a.highY, a.highX, a.obstacle, a.dx) <
               std::tie(b.lowY, b.lowX, b.highY, b.highX, b.obstacle, b.dx);
    });
    for (std::size_t i = 0; i < m_edges.size(); ++i) {
        const Edge &a = m_edges[i];
        for (std::size_t j = i + 1; j < m_edges.size() && m_edges[j].lowY <= a.highY; ++j) {
            const Edge &b = m_edges[j];
            if (a.obstacle == b.obstacle || a.lowX > b.highX || b.lowX > a.highX) continue;
            const double turn = a.dx * b.dy - a.dy * b.dx;
            if (turn == 0) continue;
            const double fromX = b.x - a.x, fromY = b.y - a.y;
            const double alongA = (fromX * b.dy - fromY * b.dx) / turn, alongB = (fromX * a.dy - fromY * a.dx) / turn;
            if (alongA < 0 || alongA > 1 || alongB < 0 || alongB > 1) continue;
            addPlace(std::nearbyint(b.x + b.dx * alongB), std::nearbyint(b.y + b.dy * alongB));
        }
    }
}

void Spots::addCrossingsWithRoom(const Part &part) {
    const ConvexNoFit &s = *part.shape;
    auto x = [](const Corner &c) { return c.x; };
    auto y = [](const Corner &c) { return c.y; };
    if (m_fit.upright) {
        for (double line : {m_fit.lowX, m_fit.highX}) {
            const Stretch cut = stretchAt(s, line - part.x, x, y);
            if (!cut.any()) continue;
            addPlace(line, std::nearbyint(cut.from + part.y));
            addPlace(line, std::nearbyint(cut.to + part.y));
        }
        for (double line : {m_fit.lowY, m_fit.highY}) {
            const Stretch cut = stretchAt(s, line - part.y, y, x);
            if (!cut.any()) continue;
            addPlace(std::nearbyint(cut.from + part.x), line);
            addPlace(std::nearbyint(cut.to + part.x), line);
        }
        return;
    }
    const std::size_t n = s.corners.size(), m = m_fit.corners.size();
    for (std::size_t i = 0; i < m; ++i) {
        const Corner r0 = m_fit.corners[i], r1 = m_fit.corners[i + 1 == m ? 0 : i + 1];
        const double ex = r1.x - r0.x, ey = r1.y - r0.y;
        for (std::size_t j = 0; j < n; ++j) {
            const Corner c0 = s.corners[j], c1 = s.corners[j + 1 == n ? 0 : j + 1];
            const double d0 = ex * (c0.y + part.y - r0.y) - ey * (c0.x + part.x - r0.x);
            const double d1 = ex * (c1.y + part.y - r0.y) - ey * (c1.x + part.x - r0.x);
            if (d0 == d1 || (d0 < 0) == (d1 < 0)) continue;
            const double t = d0 / (d0 - d1);
            addPlace(std::nearbyint(c0.x + part.x + (c1.x - c0.x) * t),
                     std::nearbyint(c0.y + part.y + (c1.y - c0.y) * t));
        }
    }
}

void Spots::gatherInColumns() {
    auto across = [](const Corner &c) { return c.x; };
    auto along = [](const Corner &c) { return c.y; };
    for (Length column = m_places.nextX(toLength(m_fit.lowX)); toTicks(column) <= m_fit.highX;
         column += m_places.xStep) {
        const double x = toTicks(column);
        // The ends of the room in this column.
        double from = 1e300, to = -1e300;
        if (m_fit.upright) {
            from = m_fit.lowY;
            to = m_fit.highY;
        } else {
            for (std::size_t i = 0; i < m_fit.corners.size(); ++i) {
                const Corner a = m_fit.corners[i], b = m_fit.corners[(i + 1) % m_fit.corners.size()];
                if ((a.x < x && b.x < x) || (a.x > x && b.x > x)) continue;
                const double y = a.x == b.x ? a.y : a.y + (b.y - a.y) * ((x - a.x) / (b.x - a.x));
                from = std::min({from, y, a.x == b.x ? b.y : y});
                to = std::max({to, y, a.x == b.x ? b.y : y});
            }
        }
        if (from > to) continue;
        addPlace(x, std::nearbyint(from));
        addPlace(x, std::nearbyint(to));
        for (const Part &p : m_parts) {
            if (x < p.lowX || x > p.highX) continue;
            const Stretch cut = stretchAt(*p.shape, x - p.x, across, along);
            if (!cut.any()) continue;
            addPlace(x, std::nearbyint(cut.from + p.y));
            addPlace(x, std::nearbyint(cut.to + p.y));
        }
    }
}

void Spots::gatherInRows() {
    auto across = [](const Corner &c) { return c.y; };
    auto along = [](const Corner &c) { return c.x; };
    for (Length row = m_places.nextY({}, toLength(m_fit.lowY)); toTicks(row) <= m_fit.highY;
         row = m_places.nextY({}, row + Length::ticks(1))) {
        const double y = toTicks(row);
        double from = 1e300, to = -1e300;
        if (m_fit.upright) {
            from = m_fit.lowX;
            to = m_fit.highX;
        } else {
            for (std::size_t i = 0; i < m_fit.corners.size(); ++i) {
                const Corner a = m_fit.corners[i], b = m_fit.corners[(i + 1) % m_fit.corners.size()];
                if ((a.y < y && b.y < y) || (a.y > y && b.y > y)) continue;
                const double x = a.y == b.y ? a.x : a.x + (b.x - a.x) * ((y - a.y) / (b.y - a.y));
                from = std::min({from, x, a.y == b.y ? b.x : x});
                to = std::max({to, x, a.y == b.y ? b.x : x});
            }
        }
        if (from > to) continue;
        addPlace(std::nearbyint(from), y);
        addPlace(std::nearbyint(to), y);
        for (const Part &p : m_parts) {
            if (y < p.lowY || y > p.highY) continue;
            const Stretch cut = stretchAt(*p.shape, y - p.y, across, along);
            if (!cut.any()) continue;
            addPlace(std::nearbyint(cut.from + p.x), y);
            addPlace(std::nearbyint(cut.to + p.x), y);
        }
    }
}

void Spots::gatherOnLattice() {
    for (Length column = m_places.nextX(toLength(m_fit.lowX)); toTicks(column) <= m_fit.highX; column += m_places.xStep)
        for (Length row = m_places.nextY(column, toLength(m_fit.lowY)); toTicks(row) <= m_fit.highY;
             row = m_places.nextY(column, row + Length::ticks(1)))
            addPlace(toTicks(column), toTicks(row));
}

} // namespace boltwright::planner
