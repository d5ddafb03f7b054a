#pragma once

#include "core/planner/build.h"

#include <vector>

namespace boltwright::planner {

/// The left and the right of a mirrored pair are cut from one dye lot. On remnants of several lots each pair has to
/// choose: every choice is the cloth once more, with what lies on other lots taken from the pair's options. Choices
/// that differ only in which of two equal pairs takes which lot stand here once, those for which a lot has not cloth
/// enough not at all, and those that spread the pairs most evenly come first.
struct PairLots {
    std::vector<ClothInstance> choices; ///< the cloth itself where there is nothing to choose
    bool all = true;                    ///< false: there are more choices than stand here, so that no is no proof
};
PairLots pairLots(const Job &job, const ClothInstance &cloth);

} // namespace boltwright::planner
