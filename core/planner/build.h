#pragma once

#include "core/job/job.h"
#include "core/planner/instance.h"

#include <string>
#include <vector>

/// From a job to what the search works on, and back.
namespace boltwright::planner {

/// One cloth's share of a job. `instance.items[i]` is `drafts[i]`, laid by one of its options; `ways[i]` says, option
/// by option, on which remnant (none: bolt) it then lies.
struct ClothInstance {
    std::string cloth;
    Instance instance;
    std::vector<Cut> drafts;                               ///< complete but for cloth, on, x, y and turn
    std::vector<std::vector<std::optional<std::string>>> ways;
    std::vector<Cut> staying;                              ///< locked or cut already; they lie as `instance.fixed`
    std::string impossible; ///< not empty: why no layout can exist, in the trade's words
};

/// The cuts a job asks for, copy by copy, in the job's order: whole, or in as few pieces as the cloth needs (each a
/// concession). `staying` cuts stand for their copies.
std::vector<Cut> draftCuts(const Job &job, const std::vector<Cut> &staying);

/// One instance a cloth that has anything to lay. `from`: its locked and cut cuts stay; may be null.
std::vector<ClothInstance> buildInstances(const Job &job, const Layout *from);

/// A draft as it was laid.
Cut cutFrom(const ClothInstance &cloth, const Placement &placement);

/// The placements that `layout` stands for; empty unless every item has one that is among its options.
std::vector<Placement> placementsFrom(const ClothInstance &cloth, const Layout &layout);

} // namespace boltwright::planner
