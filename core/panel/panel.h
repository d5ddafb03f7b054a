#pragma once

#include "core/base/kept.h"
#include "core/geometry/polygon.h"

#include <map>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace boltwright {

// The measured shapes. The origin is the lower left corner of the measured shape in the panel's frame.
struct Rectangle {
    Length across, up;
    bool operator==(const Rectangle &) const = default;
};
/// The top edge starts at (bottom - top) / 2 + shift.
struct Trapezoid {
    Length bottom, top, up, shift;
    bool operator==(const Trapezoid &) const = default;
};
/// Corners counter-clockwise, simple; edge 0 runs from points[0] to points[1].
struct PolygonShape {
    PanelRing points;
    bool operator==(const PolygonShape &) const = default;
};
using Shape = std::variant<Rectangle, Trapezoid, PolygonShape>;

/// The edges of a rectangle or trapezoid in order; a polygon's are numbered.
enum Edge : int { Bottom = 0, Right = 1, Top = 2, Left = 3 };

/// Lengths by edge, in the order of the edges; an edge without one has what its reader says it has.
using EdgeLengths = std::vector<std::optional<Length>>;

enum class Run { UpRoll, DownRoll, Railroad, Either, Bias };
enum class Centre { Across, Up, Both };

struct MotifWish {
    Centre centre = Centre::Both;
    std::optional<PanelPoint> at; ///< none: the middle
    Kept kept;
    bool operator==(const MotifWish &) const = default;
};

/// How a rectangle may be made of pieces joined across its longer cut side.
struct Pieces {
    enum class Where { Any, Balanced };
    int most = 1;
    Length seam, shortest;
    bool match = false; ///< the pattern runs on over every join
    Where where = Where::Any;
    Kept kept;
    bool operator==(const Pieces &) const = default;
};

/// To which other cloth a panel may go when cloth is short.
struct OtherCloth {
    bool any = false; ///< any cloth outside this job: the copy stands in `left_out`
    std::string id;   ///< or this cloth of the job; empty: none
    bool operator==(const OtherCloth &) const = default;
};

/// Further concessions allowed.
struct May {
    bool turn = false, uncentre = false;
    OtherCloth otherCloth;
    std::map<int, Length> stretcher; ///< edge -> what of the face cloth must be left there
    Kept kept;
    bool operator==(const May &) const = default;
};

/// A part of the piece of furniture, as measured, with what is added at each edge and what is asked of the cloth.
struct Panel {
    std::string id, mark, name;
    int count = 1;
    std::optional<std::string> cloth; ///< none: the job's first
    Shape shape;
    EdgeLengths allow;      ///< one an edge; an edge without one: 0
    EdgeLengths allowMin;   ///< one an edge; an edge without one keeps its full allowance
    std::optional<Run> run; ///< none: as the "up" of the cloth it is cut from says
    std::optional<MotifWish> motif;
    bool alike = false, mirror = false, hidden = false;
    Pieces pieces;
    May may;
    Kept kept;
    bool operator==(const Panel &) const = default;

    Length allowance(int edge) const; ///< what is preferred on that edge
    Length leastAllowance(int edge) const;
};

/// Corners of the measured shape, counter-clockwise, bottom edge first.
PanelRing measuredOutline(const Shape &shape);
std::size_t edgeCount(const Shape &shape);
/// "top", "bottom", ... or the number of a polygon's edge, as the file spells it.
std::string edgeName(const Shape &shape, int edge);
std::optional<int> edgeNamed(const Shape &shape, const std::string &name);

/// The cut outline: every edge moved outwards by its allowance (one an edge), corners mitred and rounded to ticks.
/// The same number of corners in the same order. May cross itself where allowances are too large for a concave
/// corner: see `isSimple`.
PanelRing cutOutline(const Shape &shape, const std::vector<Length> &allowances);

/// The preferred allowance of every edge.
std::vector<Length> preferredAllowances(const Panel &panel);

/// The middle of a shape: halfway between the middles of bottom and top edge, for a polygon that of its box; or the
/// panel's own motif point where it names one.
PanelPoint anchorOf(const Panel &panel);
PanelPoint middleOfEdge(const Shape &shape, int edge);

} // namespace boltwright
