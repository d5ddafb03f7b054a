#pragma once

#include "core/base/result.h"
#include "core/geometry/polygon.h"
#include "core/measure/unit.h"

#include <optional>
#include <string>

/// What a person does by hand to an outline drawn on the cloth: a remnant's, or that of a flaw. Corners are numbered
/// from 0; edge i goes from corner i to the next. None but `faultOfOutline` asks whether the outcome is an outline.
namespace boltwright {

/// What the hand snaps to: whole inches, or whole centimetres.
Length wholeStep(Unit unit);
/// The nearest point whose measures are whole multiples of `step`; `p` itself for a step of nothing.
ClothPoint snapped(ClothPoint p, Length step);
/// The next multiple of `step` above (`by` 1) or below (`by` -1).
Length steppedTo(Length from, Length step, int by);

/// What keeps a ring from being an outline, a sentence; none: at least three corners, no two the same, edges that do
/// not cross, and some cloth within.
std::optional<std::string> faultOfOutline(const ClothRing &ring);

ClothRing withCornerMoved(ClothRing ring, int corner, ClothPoint to);
/// The new corner stands between edge `edge`'s two, with the number `edge` + 1.
ClothRing withCornerAdded(ClothRing ring, int edge, ClothPoint at);
ClothRing withoutCorner(ClothRing ring, int corner);

/// A corner cut out: in place of the corner, a notch that takes `before` of the edge that leads to it and `after` of
/// the edge that leaves it, with sides that run along these two edges. Example: 10 and 4 off the second corner of a
/// 54 by 40 remnant leaves (44, 0), (44, 4), (54, 4) in its place. An error when an edge is not longer than what is
/// taken from it, or when what is left is no outline.
Result<ClothRing> withCornerCutOut(const ClothRing &ring, int corner, Length before, Length after);

/// A round flaw: what lies within `radius` of `middle` is inside the ring, a polygon of sixteen sides around it that
/// is nowhere more than 2 % further out.
struct Spot {
    ClothPoint middle;
    Length radius;
    bool operator==(const Spot &) const = default;
};
ClothRing ringOf(const Spot &spot);
/// The spot that this ring was made from; none for any other ring.
std::optional<Spot> spotIn(const ClothRing &ring);

} // namespace boltwright
