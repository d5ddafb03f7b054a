#pragma once

#include "core/job/job.h"

#include <optional>
#include <string>
#include <vector>

namespace boltwright {

/// What a layout uses of one cloth, for screen and paper.
struct ClothFigures {
    std::string cloth;
    Length length;               ///< greatest y of any cut; zero without cuts, and on remnants
    std::optional<Length> bound; ///< the least it can take, where the layout knows it
    Area cutArea = 0;            ///< of the cut outlines, square ticks
    Area usedArea = 0;           ///< length × width between selvages, or of the remnants used
    int laid = 0;                ///< cuts that lie on it
    double waste() const { return usedArea > 0 ? 1.0 - double(cutArea) / double(usedArea) : 0.0; }
};

/// Live figures of a layout, one entry a cloth of the job, in its order. Fast: the canvas asks at every move.
std::vector<ClothFigures> figuresOf(const Job &job, const Layout &layout);

/// Of a bolt of which there is only so much: what lies beyond the last cut; less than zero: that much is short. None
/// for remnants, and for a bolt that is as long as it takes.
std::optional<Length> leftOver(const Cloth &cloth, Length used);

/// The layout with `cloths` (length; bound and proved kept only where they still hold) brought up to date with its
/// cuts, for a layout that was changed by hand.
Layout withFigures(const Job &job, Layout layout);

/// The largest upright rectangle of cloth that no cut, flaw or gap touches: on a bolt below the last cut, or on one
/// remnant. None under 6 in either way (less serves for little).
std::optional<ClothBox> largestOffcut(const Job &job, const Layout &layout, const std::string &cloth,
                                      const std::optional<std::string> &on);

} // namespace boltwright
