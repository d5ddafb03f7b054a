#pragma once

#include "core/geometry/shape_ops.h"
#include "core/job/job.h"

#include <vector>

/// What a cut is in the panel's frame, and how it lies: the questions that every rule starts from.
namespace boltwright {

/// The allowances that the cut really has, one an edge.
std::vector<Length> allowancesOf(const Panel &panel, const Cut &cut);

/// The part of a panel that one piece of a copy takes, along the longer cut side. A whole cut takes all of it.
struct PieceSpan {
    bool sideToSide = true; ///< the joins are crossed going side to side; otherwise going up
    Length from, to;        ///< net: from join to join, or to the outline's end
    Length seamBefore, seamAfter;
    bool first = true, last = true;

    /// A point of the panel belongs to the piece that holds it, one on a join to the piece after it.
    bool holds(PanelPoint p) const;
};
PieceSpan spanOf(const Panel &panel, const Cut &cut, const Layout &layout);

/// The cut outline, whole or the piece's part, in the panel's frame.
PanelRing outlineOf(const Panel &panel, const Cut &cut, const Layout &layout);

/// A cut as it lies on the cloth.
struct LaidCut {
    const Panel *panel = nullptr;
    const Cut *cut = nullptr;
    PieceSpan span;
    PanelRing outline; ///< panel frame
    ClothRing ring;    ///< counter-clockwise, where it lies
    ClothBox box;
    bool rectangle = false;
    ClothPoint at(PanelPoint p) const; ///< where a point of the panel lies
};
LaidCut lay(const Panel &panel, const Cut &cut, const Layout &layout);
/// All cuts of a layout whose panel exists, in the layout's order; `panel` is null for one whose panel does not.
std::vector<LaidCut> layAll(const Job &job, const Layout &layout);

/// The room of a bolt or remnant: for a bolt the box left by selvages and squared end, for a remnant its outline,
/// counter-clockwise (the distance to keep from it is another matter).
ClothRing roomOf(const Cloth &cloth, const std::optional<std::string> &on);
const std::vector<Flaw> &flawsOn(const Cloth &cloth, const std::optional<std::string> &on);
const Markings &markingsOn(const Cloth &cloth, const std::optional<std::string> &on);

} // namespace boltwright
