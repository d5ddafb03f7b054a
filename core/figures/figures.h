#pragma once

#include "core/job/job.h"

#include <optional>
#include <string>
#include <vector>

namespace boltwright {

/// What a layout uses of one cloth, for screen and paper.
struct ClothFigures {
    std::string cloth;
    Length length;                 ///< greatest y of any cut; zero without cuts, and on remnants
    std::optional<Length> bound;   ///< the least it can take, where the layout knows it
    Area cutArea = 0;              ///< of the cut outlines, square ticks
    Area usedArea = 0;             ///< length × width between selvages, or of the remnants used
    double waste() const { return usedArea ? 1.0 - double(cutArea) / double(usedArea) : 0.0; }
    int laid = 0;
};

/// Live figures of a layout, one entry a cloth. Fast: the canvas asks at every move.
std::vector<ClothFigures> figuresOf(const Job &job, const Layout &layout);

/// The largest upright rectangle of cloth that no cut, flaw or gap touches, below the last cut of a bolt or on a
/// remnant; none under 6 in either way (less serves for little).
std::optional<ClothBox> largestOffcut(const Job &job, const Layout &layout, const std::string &cloth,
                                      const std::optional<std::string> &on);

} // namespace boltwright
