#pragma once

#include "core/job/job.h"
#include "core/rules/rules.h"

#include <string>
#include <vector>

namespace boltwright {

/// Why a dragged cut comes to rest where it does, for the guide drawn there.
struct Guide {
    enum class Kind { Motif, Neighbour, Level, Selvage, CutEnd, Partner, Chalk };
    Kind kind;
    bool across = false; ///< the guide runs across the width (it holds a y); otherwise along the roll (it holds an x)
    Length at;           ///< that x or y, cloth frame
    std::string text;    ///< "centred on a stripe", "level with Seat", "1/4 in from Arm"
    bool operator==(const Guide &) const = default;
};

struct Settled {
    ClothPoint corner;          ///< where the cut comes to rest
    bool right = false;         ///< it may lie there
    std::vector<Guide> guides;  ///< what holds there: at most one an axis, and the motif's
    std::vector<Breach> broken; ///< what does not
};

/// Where the cut numbered `cut` of the layout comes to rest when the hand holds its box's lower left corner at `hand`:
/// on each axis the pattern's nearest place, or an edge, neighbour or level within `reach`, or the hand itself. When
/// it may not lie there, the answer says what is in the way. `reach` zero: snaps to nothing, not even the pattern.
/// The layout is taken as it is but for that one cut, whose own x and y do not matter.
Settled settle(const Job &job, const Layout &layout, int cut, ClothPoint hand, Length reach);

/// Where it comes to rest when the hand lets go: as `settle`, and where it may not lie there, the nearest place where
/// it may. `right` false: there is none on that cloth (the corner is then where the hand was).
Settled rest(const Job &job, const Layout &layout, int cut, ClothPoint hand, Length reach);

/// The same for several cuts in the hand at once, which keep their places to each other. `cuts` are indices, `lead`
/// one of them; the hand holds the box of that one, and `corner` is where it comes to rest. Each stays on its sheet.
/// What attracts any of them attracts all; `broken` is what they break together. In the layout they lie where they were
/// taken up, so that the pattern's places are known.
Settled settleTogether(const Job &job, const Layout &layout, const std::vector<int> &cuts, int lead, ClothPoint hand,
                       Length reach);
Settled restTogether(const Job &job, const Layout &layout, const std::vector<int> &cuts, int lead, ClothPoint hand,
                     Length reach);

} // namespace boltwright
