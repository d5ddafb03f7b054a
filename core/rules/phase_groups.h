#pragma once

#include "core/job/job.h"
#include "core/rules/phase.h"

#include <map>
#include <vector>

namespace boltwright {

/// Cuts that must all show one phase of the pattern, since links lead from each to the others: for each cut the point
/// (in its panel's frame, whichever way it lies) that comes to the group's phase, told as a displacement from the
/// cut's box corner once it is laid with a turn.
struct PhaseGroup {
    std::vector<int> cuts;                       ///< indices into the layout's cuts
    std::map<Turn, std::vector<Vector>> anchors; ///< by turn, one a cut; a turn in which links contradict is missing
};

/// The groups that the links make of the layout's cuts, in the links' order; a cut without links is in none.
std::vector<PhaseGroup> phaseGroups(const Job &job, const Layout &layout, const std::vector<PhaseLink> &links);
/// The same with every link that the layout has.
std::vector<PhaseGroup> phaseGroups(const Job &job, const Layout &layout);

} // namespace boltwright
