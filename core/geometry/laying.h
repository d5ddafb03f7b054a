#pragma once

#include "core/geometry/polygon.h"
#include "core/measure/turn.h"

namespace boltwright {

/// The panel's ring as it lies on the cloth, lower left corner of its box at the origin: mirrored (x becomes -x) if
/// asked, then turned. Exact for quarter turns; on the bias rounded to ticks. The corner order stays; a mirrored
/// ring therefore runs clockwise (see `counterClockwise`).
ClothRing laid(const PanelRing &ring, Turn turn, bool mirrored);

/// Where points of the panel come to lie when `ring` is laid with its box's lower left corner at `corner`.
class Laying {
public:
    Laying(const PanelRing &ring, Turn turn, bool mirrored, ClothPoint corner);
    ClothPoint at(PanelPoint p) const; ///< rounded to ticks on the bias
    Vector direction(Vector v) const;  ///< a displacement of the panel, as it lies
private:
    Turn m_turn;
    bool m_mirrored;
    Vector m_move;
};

/// The same corners, counter-clockwise.
ClothRing counterClockwise(ClothRing ring);

} // namespace boltwright
