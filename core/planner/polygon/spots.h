#pragma once

#include "core/planner/polygon/no_fit_table.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace boltwright::planner {

/// What lies in the way of one outline on one sheet, with what overlapping each costs, and the search for the places
/// where that costs least.
///
/// The cost of a place is the sum, over all obstacles, of the depth of the overlap times the obstacle's weight. Depth
/// is concave inside each convex no-fit polygon and zero outside; so within every cell that the outlines of the no-fit
/// polygons cut the room into, the cost is concave, and a least one lies at a corner of a cell: a corner of a no-fit
/// polygon, a crossing of two outlines, or a corner of the room. These, and on a lattice the same along its columns and
/// rows, are all the places that need to be tried.
class Spots {
public:
    struct Spot {
        double x = 0, y = 0;
        double cost = 0;
    };

    /// Begins anew: the outline may lie within `fit`, at `places`.
    void start(InnerFit fit, const PlaceSet &places);
    /// An obstacle at (x, y).
    void add(const NoFit &noFit, double x, double y, double weight);

    /// The cost at a place within the room, or anything from `enough` on as soon as it is seen to be as much.
    double cost(double x, double y, double enough) const;

    /// The place of least cost, at most `enough`; among equals the one whose y, then x is least, or the greatest of
    /// either where `corner` (0 to 3) says so: a search that always takes the same of many equal places goes in
    /// circles. Nothing when no place is within the room, or none costs less than `enough`.
    std::optional<Spot> best(double enough, int corner = 0);

    /// The place with the least y, then x, where nothing is in the way.
    std::optional<Spot> lowestFree();

    int tried() const { return m_tried; } ///< how many places the last call looked at

private:
    struct Part {
        double lowX, lowY, highX, highY; // where it lies now
        const ConvexNoFit *shape;
        double x, y, weight;
        int obstacle;
    };
    struct Obstacle {
        const NoFit *noFit;
        double x, y;
    };
    struct Edge { ///< of an obstacle, from (x, y), with its box
        double x, y, dx, dy;
        double lowX, highX, lowY, highY;
        int obstacle;
    };
    struct Place {
        double x, y;
    };

    void gather();
    void sortIntoCells();
    std::size_t cellOf(double x, double y) const;
    void gatherAnywhere();
    void gatherInColumns();
    void gatherInRows();
    void gatherOnLattice();
    void addCrossings();
    void addCrossingsWithRoom(const Part &part);
    void addPlace(double x, double y);

    InnerFit m_fit;
    PlaceSet m_places;
    std::vector<Part> m_parts;
    std::vector<Edge> m_edges;
    // The room in cells, and for each the parts that reach into it: from m_firstInCell[c] up to that of the next.
    std::vector<Part> m_inCells;
    std::vector<std::uint32_t> m_firstInCell;
    int m_cellsAcross = 1, m_cellsAlong = 1;
    double m_perX = 0, m_perY = 0; ///< cells a tick
    std::vector<Place> m_found;
    std::vector<Obstacle> m_obstacles;
    int m_tried = 0;
};

} // namespace boltwright::planner
