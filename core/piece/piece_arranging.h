#pragma once

#include "core/piece/covered_piece.h"

/// Where panels stand in the picture of the piece.
namespace boltwright {

/// One copy of a panel, not placed yet: its measured shape as seen, its own frame's origin at the picture's.
struct StandingCopy {
    int panel = 0; ///< index into the job's panels
    int copy = 1;
    bool mirrored = false;
    bool wanted = true; ///< shown even when it joins nothing
    PieceRing outline;  ///< counter-clockwise
};

/// A join between two copies: `atA` and `atB` come together, each as seen with its copy's origin at the picture's.
struct CopyJoin {
    int flow = 0;
    int a = 0, b = 0; ///< indices into the copies
    PiecePoint atA, atB;
};

struct Arrangement {
    std::vector<std::optional<PiecePoint>> origins; ///< one a copy; none: not shown
    std::vector<bool> joined;                       ///< beside another one
};

Arrangement arranged(const std::vector<StandingCopy> &copies, const std::vector<CopyJoin> &joins);

} // namespace boltwright
