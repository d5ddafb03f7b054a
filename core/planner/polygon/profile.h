#pragma once

#include "core/planner/instance.h"

#include <vector>

namespace boltwright::planner {

/// What an outline looks like from below and from above: the lower and upper rim of its hull, in its own frame, and the
/// upper one with the gap added. Concave outlines count as their hulls.
struct Rims {
    struct Point {
        double x, y;
    };
    std::vector<Point> lower, upper; ///< by rising x; `upper` reaches a gap further on both sides
    std::vector<double> corners;     ///< x of the hull's corners, rising, each once
    double width = 0, height = 0, area = 0;
    double underLower = 0;   ///< area between y = 0 and the lower rim
    bool levelBelow = false; ///< the lower rim is one level edge

    Rims(const Outline &outline, Length gap);
};

/// The upper edge of what has been laid on a bolt so far: a line from selvage to selvage, straight piece by piece, that
/// may jump. Items come down on it from above; what lies below it is no longer reached.
class Profile {
public:
    struct Piece {
        double x0, x1, y0, y1;
    };

    void reset(double x0, double x1, double y);
    void load(const Piece *pieces, std::size_t count) { m_pieces.assign(pieces, pieces + count); }
    const std::vector<Piece> &pieces() const { return m_pieces; }

    /// Where an item with its left end at `x` comes to rest, and the area from y = 0 up to the profile below it.
    struct Rest {
        double y;
        double areaBelow;
    };
    Rest drop(const Rims &item, double x) const;

    /// Adds to `xs` where the left end of an item that slides freely would come to rest, between `from` and `to`: where
    /// it lies lower than a little to either side; where it may slide level, the ends of that stretch. What fits
    /// between two walls without any play is not found.
    void settlings(const Rims &item, double from, double to, std::vector<double> &xs);

    /// Calls `aim` with each place of an item's left end at which one of its corners stands over an end of a notch, or
    /// over the far end of a slant beside it.
    template <class Aim>
    void aimAtNotch(const Rims &item, std::size_t notch, const Aim &aim) const {
        const auto under = [&](double x) {
            for (double corner : item.corners) aim(x - corner);
        };
        const auto slants = [](const Piece &p) { return p.y0 != p.y1; };
        under(m_pieces[notch].x0);
        under(m_pieces[notch].x1);
        if (notch > 0 && slants(m_pieces[notch - 1])) under(m_pieces[notch - 1].x0);
        if (notch + 1 < m_pieces.size() && slants(m_pieces[notch + 1])) under(m_pieces[notch + 1].x1);
    }

    /// Takes in an item that lies at (x, y).
    void cover(const Rims &item, double x, double y);

    /// The piece with the lowest point, the leftmost of several.
    std::size_t lowest() const;
    /// Fills the lowest piece up to the lower of its neighbours: nothing can be laid there.
    void fill(std::size_t piece);

private:
    void tidy();
    std::vector<Piece> m_pieces, m_next;

    // While the same corners lie over the same edges, an item rests at the greatest of a few straight lines.
    struct Line {
        double at, slope;
    };
    struct Stretch {
        double first, last;     ///< heights at its ends
        double least, from, to; ///< the least height, and where it is that
    };
    Stretch stretchBetween(const Rims &item, double from, double to);
    std::vector<Line> m_lines;
    std::vector<double> m_changes;
    std::vector<Stretch> m_stretches;
};

} // namespace boltwright::planner
