#pragma once

#include "core/planner/instance.h"

#include <atomic>
#include <memory>
#include <vector>

namespace boltwright::planner {

/// One convex no-fit polygon, ready to be asked often. Doubles hold whole ticks exactly; only the normals of slanted
/// edges are rounded, and those edges give way by a tick, since two slanted edges seldom meet on whole ticks.
struct ConvexNoFit {
    struct Corner {
        double x, y;
    };
    struct Line { ///< outward normal and where the line lies: outside when nx·x + ny·y >= c
        double nx, ny, c;
    };
    std::vector<Corner> corners;
    std::vector<Line> lines; ///< lines[k] runs from corners[k] to the next
    std::vector<char>
        buried; ///< by line: it lies within another part of the same no-fit polygon, so nothing touches there
    double lowX, lowY, highX, highY;

    explicit ConvexNoFit(const ClothRing &ring);

    /// How deep (x, y) lies inside: zero outside and on the outline.
    double depth(double x, double y) const;

    /// Calls `found` with every point where the outline, moved to `at`, crosses that of `other`, moved to `otherAt`.
    /// Buried edges are left out.
    template <class Found>
    void eachCrossing(Corner at, const ConvexNoFit &other, Corner otherAt, Found found) const;
};

template <class Found>
void ConvexNoFit::eachCrossing(Corner at, const ConvexNoFit &other, Corner otherAt, Found found) const {
    const auto &p = corners, &q = other.corners;
    const double shiftX = otherAt.x - at.x, shiftY = otherAt.y - at.y;
    const std::size_t n = p.size(), m = q.size();
    for (std::size_t i = 0; i < n; ++i) {
        if (buried[i]) continue;
        const Corner p0 = p[i], p1 = p[i + 1 == n ? 0 : i + 1];
        const double ex = p1.x - p0.x, ey = p1.y - p0.y;
        // On which side of this edge's line the other's corners stand decides which of its edges cross it.
        auto side = [&](const Corner &c) { return ex * (c.y + shiftY - p0.y) - ey * (c.x + shiftX - p0.x); };
        double before = side(q[m - 1]);
        for (std::size_t j = 0; j < m; ++j) {
            const double now = side(q[j]);
            const std::size_t edge = j == 0 ? m - 1 : j - 1;
            if (((before < 0 && now > 0) || (before > 0 && now < 0)) && !other.buried[edge]) {
                const Corner q0 = q[edge], q1 = q[j];
                const double t = before / (before - now);
                const double x = q0.x + (q1.x - q0.x) * t + shiftX, y = q0.y + (q1.y - q0.y) * t + shiftY;
                const double along = (x - p0.x) * ex + (y - p0.y) * ey;
                if (along >= 0 && along <= ex * ex + ey * ey) found(x + at.x, y + at.y);
            }
            before = now;
        }
    }
}

/// The no-fit polygon of two outlines, as convex parts that may overlap.
struct NoFit {
    std::vector<ConvexNoFit> parts;
    std::vector<ConvexNoFit::Corner> corners; ///< of all parts together: where the outlines touch twice over

    NoFit() = default;
    explicit NoFit(std::vector<ConvexNoFit> parts);
};

/// Where an outline's corner may lie so that the outline stays within a room's hull: half-planes and the corners of
/// what they leave. Empty corners: it fits nowhere.
struct InnerFit {
    std::vector<ConvexNoFit::Line> lines; ///< inside when nx·x + ny·y <= c
    std::vector<ConvexNoFit::Corner> corners;
    double lowX = 0, lowY = 0, highX = 0, highY = 0;
    bool upright = false; ///< a box: the bounds are all there is

    bool empty() const { return corners.empty(); }
    bool holds(double x, double y) const;
};

/// All no-fit polygons of an instance, made when first asked for and kept. May be asked from several threads.
class NoFitTable {
public:
    explicit NoFitTable(const Instance &instance);
    ~NoFitTable();
    NoFitTable(const NoFitTable &) = delete;
    NoFitTable &operator=(const NoFitTable &) = delete;

    /// Where outline `b` may not lie relative to outline `a`, the gap between them kept.
    const NoFit &between(int a, int b) const;

    /// Where outline `b` may not lie on a sheet: what its room lacks of its hull, what is fixed there and, unless it is
    /// `hidden`, flaws.
    const NoFit &onSheet(int sheet, int b, bool hidden) const;

    /// Where outline `b` may lie within the hull of a sheet's room, with its greatest y at most `top`.
    InnerFit within(int sheet, int b, double top) const;

private:
    using Slot = std::atomic<const NoFit *>;
    template <class Make>
    static const NoFit &kept(Slot &slot, Make make);
    std::vector<ConvexNoFit> make(int a, int b) const;
    std::vector<ConvexNoFit> makeOnSheet(int sheet, int b, bool hidden) const;

    const Instance &m_instance;
    std::size_t m_outlines;
    std::vector<std::vector<ClothRing>> m_grown;   // the parts of every outline, the gap added
    std::vector<ClothRing> m_hulls;                // of every room
    std::vector<std::vector<ClothRing>> m_lacking; // convex parts of what every room lacks of its hull
    std::vector<std::vector<ClothRing>> m_flaws;   // convex parts
    mutable std::vector<Slot> m_pairs, m_onSheets;
};

} // namespace boltwright::planner
