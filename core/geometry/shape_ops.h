#pragma once

#include "core/geometry/polygon.h"
#include "core/measure/turn.h"

#include <optional>
#include <vector>

namespace boltwright {

/// The ring's corners are distinct and its edges meet only at shared corners.
bool isSimple(const ClothRing &ring);
bool isSimple(const PanelRing &ring);

/// The panel's ring as it lies on the cloth, lower left corner of its box at the origin: mirrored (x becomes -x) if
/// asked, then turned. Exact for quarter turns; on the bias rounded to ticks. The corner order stays; a mirrored
/// ring therefore runs clockwise (see `counterClockwise`).
ClothRing laid(const PanelRing &ring, Turn turn, bool mirrored);

/// Where points of the panel come to lie when `ring` is laid with its box's lower left corner at `corner`.
class Laying {
public:
    Laying(const PanelRing &ring, Turn turn, bool mirrored, ClothPoint corner);
    ClothPoint at(PanelPoint p) const;  ///< rounded to ticks on the bias
    Vector direction(Vector v) const;   ///< a displacement of the panel, as it lies
private:
    Turn m_turn;
    bool m_mirrored;
    Vector m_move;
};

/// The same corners, counter-clockwise.
ClothRing counterClockwise(ClothRing ring);

/// Convex counter-clockwise parts that together are the simple counter-clockwise ring; the ring itself when convex.
std::vector<ClothRing> convexParts(const ClothRing &ring);

/// The room inside `ring` (simple, counter-clockwise) at least `distance` from its outline; none when nothing is left.
/// Several pieces when it falls apart. Corners that point inwards are kept mitred, so that nothing allowed is lost by
/// more than the rounding to ticks.
std::vector<ClothRing> inset(const ClothRing &ring, Length distance);

/// The no-fit polygon of two convex counter-clockwise rings: where the origin of `b` may not be while `a` lies at its
/// own place and the two would overlap. Convex, counter-clockwise; its edge is where they touch. Exact.
ClothRing noFit(const ClothRing &a, const ClothRing &b);

/// The convex ring with every edge moved outwards by `distance`, rounded outwards to ticks, corners mitred (and cut
/// off square where a mitre would reach beyond 2·distance).
ClothRing grown(const ClothRing &convex, Length distance);

/// Least distance between two simple rings, zero when they meet; in ticks, rounded down.
Length distanceBetween(const ClothRing &a, const ClothRing &b);

/// Whether the insides of two simple rings meet by more than `tolerance` (a depth).
bool overlaps(const ClothRing &a, const ClothRing &b, Length tolerance = {});

/// Whether `inner` lies inside `outer` (touching its edge is inside), give or take `tolerance`.
bool contains(const ClothRing &outer, const ClothRing &inner, Length tolerance = {});

} // namespace boltwright
