#pragma once

#include "core/planner/build.h"
#include "core/planner/plan.h"

#include <string>
#include <vector>

/// When the cloth does not do as asked: the least that must be given up for it to do.
namespace boltwright {

/// The order in which things are given up when the user has not said otherwise, from trade sense: trims first, a strip
/// sewn on where it is pulled out of sight, hidden parts in other cloth, hidden parts off the motif, a part turned; a
/// visible seam last. (Common practice, no source.)
std::vector<Concession::Kind> usualOrder();

/// Those of the kinds that no panel of the job has leave to give up, so that asking for them changes nothing.
std::vector<Concession::Kind> kindsWithoutLeave(const Job &job, std::vector<Concession::Kind> kinds);

struct ConcedeOptions {
    /// Seconds are for the whole question. Steps are too, but the best way found with them is then looked at again with
    /// as many each time (see `concede`). `given` is not used.
    PlanOptions plan;
    std::vector<Concession::Kind> order = usualOrder(); ///< a kind that is not here is not given up
    bool fewestPanelsFirst = false; ///< within a kind: the fewest panels, then the least cloth; otherwise the other way
    int ways = 3;                   ///< how many ways with different kinds to look for
    std::function<void(double share)> progress; ///< now and then, from the calling thread
};

/// One way to make the cloth do.
struct ConcedeWay {
    std::vector<Concession::Kind> kinds; ///< what it gives up, in the order asked
    Layout layout;                       ///< right by `check`
    Length trimmed;                      ///< summed over edges
    int panels = 0;                      ///< copies that give something up
    std::vector<std::string> words;      ///< "Inside back: top edge from 3 in to 2 1/4 in"
};

struct Conceding {
    planner::Outcome::Kind kind =
        planner::Outcome::Kind::NotFound; ///< CannotFit: not even with everything given up, proved
    bool nothingNeeded = false;           ///< it fits as asked; `ways` then holds that layout
    std::vector<ConcedeWay> ways;         ///< the best first: no later kind where earlier ones do
    std::string reason;                   ///< when there is none
};

/// Finds the layout that gives up least in the order asked: never a later kind where earlier ones were found to do;
/// within a kind the least cloth, then the fewest panels (or the other way round). Then other ways that need other
/// kinds. Pure when steps are given; then no concession stands in the best way that a second search of the same steps
/// and seed does without: neither one of the earlier kinds alone, nor one of all its other concessions.
Conceding concede(const Job &job, const ConcedeOptions &options);

/// Plans as asked, and where the cloth does not do and something may be given up, with the least that does, in the
/// usual order. The time or steps of `options` are for both together.
Plan planOrConcede(const Job &job, const PlanOptions &options);

/// What a layout gives up, one sentence a concession, in the trade's words and the job's unit.
std::vector<std::string> concededInWords(const Job &job, const Layout &layout);

} // namespace boltwright
