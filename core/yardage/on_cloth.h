#pragma once

#include "core/job/job.h"
#include "core/planner/build.h"

#include <optional>
#include <string>
#include <vector>

/// A job on cloth that is not bought yet.
namespace boltwright {

/// A cloth that the client might buy.
struct AskCloth {
    Length width;                        ///< edge to edge
    std::optional<Length> across, along; ///< repeats; none of both: plain
    bool halfDrop = false;
    bool operator==(const AskCloth &) const = default;
};

/// What is done with a part that this cloth does not hold as the job wishes it.
struct OtherwiseLaid {
    std::string panel;
    bool betweenMotifs = false; ///< its middle lies halfway between two columns of motifs
    bool follows = false;       ///< lies where the pattern runs on to from its neighbour, not on a motif of its own
    int joins = 0;              ///< made of pieces, where the job asks for one
    bool operator==(const OtherwiseLaid &) const = default;
};

struct JobOnCloth {
    Job job;
    std::vector<OtherwiseLaid> otherwise; ///< in the order of the panels
    planner::GivenUp given;               ///< the pieces to begin with, for `PlanOptions::given`
};

/// Whether any panel is to lie on a motif.
bool anyMotif(const Job &job);

/// The job's main cloth exchanged for another: width and repeat changed, way, selvage, gap kept. Where the new cloth
/// has a repeat and no panel asks for a motif, every panel that is seen is centred on one, or follows a panel that is
/// and to which its pattern runs on; a wish for a repeat that the new cloth has not is dropped.
///
/// A part that then has no place on the width is laid as the trade does: centred between two motifs; or else joined, a
/// full width in the centre with equal sides where it is seen (TRADE T6.19), full widths and the rest where it is
/// hidden. That holds for rectangles; where nothing helps, the job stays as wished and a plan says why not.
JobOnCloth onCloth(const Job &job, const AskCloth &cloth);

} // namespace boltwright
