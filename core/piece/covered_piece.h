#pragma once

#include "core/edit/layout_edit.h"
#include "core/geometry/laying.h"
#include "core/piece/pattern_miss.h"

#include <optional>
#include <string>
#include <vector>

/// The piece of furniture as it will look: its panels with their allowances gone, beside each other as they are joined,
/// and where on the cloth each point of them comes from.
namespace boltwright {

/// The picture of the piece: x runs to the right, y upwards, as one stands before it. In true lengths.
struct PieceFrame {};
using PiecePoint = PointIn<PieceFrame>;
using PieceRing = RingIn<PieceFrame>;
using PieceBox = BoxIn<PieceFrame>;

/// Where a panel's frame lies in the picture. A mirrored copy is seen mirrored: its u runs to the left.
struct PanelSeat {
    PiecePoint origin;
    bool mirrored = false;
    PiecePoint at(PanelPoint p) const { return {origin.x + (mirrored ? -p.x : p.x), origin.y + p.y}; }
    PanelPoint back(PiecePoint p) const {
        const Length u = p.x - origin.x;
        return {mirrored ? -u : u, p.y - origin.y};
    }
};

/// What one cut covers of a panel: all of it, or the part between joins that one piece takes.
struct CoveredPart {
    int cut = 0;   ///< index into the layout's cuts
    SheetOf sheet; ///< the bolt or remnant that it is cut from
    Turn turn;     ///< from the picture to the cloth: a turn alone, since the picture of a mirrored copy is mirrored
    PieceRing outline; ///< counter-clockwise; without allowances and seams
    PanelSeat seat;
    Laying laying;
    /// The point of the cloth that is seen at `p`. Exact; on the bias rounded to ticks.
    ClothPoint clothAt(PiecePoint p) const { return laying.at(seat.back(p)); }
};

struct CoveredPanel {
    CopyOf copy;
    PanelSeat seat;
    PieceRing outline;              ///< the measured shape, counter-clockwise
    std::vector<CoveredPart> parts; ///< in the order of the pieces; empty: put aside, so there is no cloth to show
    bool joined = false;            ///< sits beside another panel in the picture
};

/// A join over which the pattern was asked to run on: between two panels, or between the pieces of one.
struct CoveredJoin {
    struct Line {
        PiecePoint from, to; ///< equal: a point, where no edge of the panel is meant
    };
    int a = 0, b = 0;                ///< indices into the panels; equal: a join between pieces
    bool touching = true;            ///< the picture shows both sides of the join together
    Line atA, atB;                   ///< the edges joined; while touching, both are what they have in common
    std::optional<PatternMiss> miss; ///< none: the pattern runs on, or one side is put aside
};

/// Panels joined stand as they sit on the piece, edge to edge at the points that the join names, what is `lost` hidden
/// between them. A join that would lay one panel over another, or pull a ring of joins out of shape, is shown apart.
/// Groups of joined panels stand side by side; the others in rows below, copies side by side. Panels out of sight that
/// join nothing are not shown.
struct CoveredPiece {
    std::vector<CoveredPanel> panels;
    std::vector<CoveredJoin> joins;
    std::vector<std::string> outOfSight; ///< ids of panels that are not shown
    PieceBox box{};                      ///< around all panels; of no size when there are none

    const CoveredPanel *panel(const CopyOf &copy) const; ///< null: not shown
};

CoveredPiece coveredPiece(const Job &job, const Layout &layout);

} // namespace boltwright
