#pragma once

#include "core/job/job.h"
#include "core/rules/rules.h"

#include <optional>
#include <string>
#include <vector>

namespace boltwright {

/// Why a dragged cut comes to rest where it does, for the guide drawn there.
struct Guide {
    enum class Kind { Motif, Neighbour, Level, Selvage, CutEnd, Partner };
    Kind kind;
    bool across = false;  ///< the guide runs across the width (holds a y); otherwise along the roll (holds an x)
    Length at;            ///< that x or y, cloth frame
    std::string text;     ///< "centred on a stripe", "level with Seat", "1/4 in from Arm"
    bool operator==(const Guide &) const = default;
};

struct Settled {
    ClothPoint corner;          ///< where the cut comes to rest
    bool right = false;         ///< it may lie there
    std::vector<Guide> guides;  ///< what holds there, at most one an axis and the motif's
    std::vector<Breach> broken; ///< what does not
};

/// Where the cut numbered `cut` of the layout comes to rest when the hand holds its box's lower left corner at `hand`:
/// the nearest allowed place within `reach` of it, else where the hand is. An edge, neighbour or level within `reach`
/// attracts; the pattern's places attract from half a step. `reach` zero: snaps to nothing.
Settled settle(const Job &job, const Layout &layout, int cut, ClothPoint hand, Length reach);

} // namespace boltwright
