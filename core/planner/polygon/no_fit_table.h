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
    double lowX, lowY, highX, highY;

    explicit ConvexNoFit(const ClothRing &ring);

    /// How deep (x, y) lies inside: zero outside and on the outline.
    double depth(double x, double y) const;
};

/// The no-fit polygon of two outlines, as convex parts that may overlap.
using NoFit = std::vector<ConvexNoFit>;

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
    NoFit make(int a, int b) const;
    NoFit makeOnSheet(int sheet, int b, bool hidden) const;

    const Instance &m_instance;
    std::size_t m_outlines;
    std::vector<std::vector<ClothRing>> m_grown;   // the parts of every outline, the gap added
    std::vector<ClothRing> m_hulls;                // of every room
    std::vector<std::vector<ClothRing>> m_lacking; // convex parts of what every room lacks of its hull
    std::vector<std::vector<ClothRing>> m_flaws;   // convex parts
    mutable std::vector<Slot> m_pairs, m_onSheets;
};

} // namespace boltwright::planner
