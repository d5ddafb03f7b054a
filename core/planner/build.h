#pragma once

#include "core/job/job.h"
#include "core/planner/instance.h"

#include <map>
#include <set>
#include <string>
#include <utility>
#include <vector>

/// From a job to what the search works on, and back.
namespace boltwright::planner {

/// One cloth's share of a job. `instance.items[i]` is `drafts[i]`, laid by one of its options; `ways[i]` says, option
/// by option, on which remnant (none: bolt) it then lies.
struct ClothInstance {
    std::string cloth;
    Instance instance;
    std::vector<Cut> drafts; ///< complete but for cloth, on, x, y and turn
    std::vector<std::vector<std::optional<std::string>>> ways;
    std::vector<Cut> staying; ///< locked or cut already; they lie as `instance.fixed`
    bool exactRooms = true;   ///< false: a crumb of a room is left out, so that "cannot fit" is no proof
    std::string impossible;   ///< not empty: why no layout can exist, in the trade's words
};

/// One copy of one panel.
using CopyKey = std::pair<std::string, int>;

/// What is given up before the search begins, copy by copy; empty: nothing, but for the pieces that a panel too large
/// for the cloth needs anyway. That each has its leave is the caller's business.
struct GivenUp {
    std::map<CopyKey, EdgeLengths> allow;          ///< allowances that are left on edges that were trimmed
    std::map<CopyKey, std::vector<Length>> pieces; ///< cut lengths of the pieces it is made of
    std::set<CopyKey> turned;                      ///< may lie in the wider choice of turns as well
    std::set<CopyKey> offCentre;                   ///< free of motif, alike and flow
    std::map<CopyKey, std::string> otherCloth;     ///< cut from that cloth of the job
    std::set<CopyKey> leftOut;                     ///< cut from some cloth outside the job
    bool operator==(const GivenUp &) const = default;
};

/// The cuts a job asks for, copy by copy, in the job's order: whole, or in as few pieces as the cloth's width, and
/// across a bolt the motif in it, need (each a concession). `staying` cuts stand for their copies.
std::vector<Cut> draftCuts(const Job &job, const std::vector<Cut> &staying, const GivenUp &given = {});

/// The cut lengths of a copy's pieces with one join more than its cloth needs, equal about the middle; empty when the
/// panel may not have so many or they would be too short.
std::vector<Length> morePieces(const Job &job, const Panel &panel);

/// As many pieces for a strip that goes round, but the first as long as the cloth gives it, or with the front and both
/// sides of a square box where the cloth would give it all, and the rest in equal pieces: no join is seen from the
/// front. Empty where `morePieces` is, where the panel does not go round, or where the first would be too short for
/// that.
std::vector<Length> piecesJoinedAtBack(const Job &job, const Panel &panel);

/// One instance a cloth that has anything to lay. `from`: its locked and cut cuts stay; may be null.
std::vector<ClothInstance> buildInstances(const Job &job, const Layout *from, const GivenUp &given = {});

/// A draft as it was laid.
Cut cutFrom(const ClothInstance &cloth, const Placement &placement);

/// The placements that `layout` stands for; empty unless every item has one that is among its options.
std::vector<Placement> placementsFrom(const ClothInstance &cloth, const Layout &layout);

} // namespace boltwright::planner
