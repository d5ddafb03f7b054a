#pragma once

#include "core/job/job.h"

/// The same job with some of its rules let go: every layout that was right stays right, so a relaxed job never needs
/// more cloth.
namespace boltwright {

Job onlyCloth(Job job, const std::string &cloth); ///< the one cloth, the panels cut from it and their flows; no layouts
Job withoutSelvageAndGaps(Job job);               ///< no selvage, squared end, gap, edge distance or flaws
Job withoutFlow(Job job);                         ///< no pattern match between panels, copies or pieces
Job withoutMotif(Job job);                        ///< no panel asks for a motif; cloth plain
Job withoutDirection(Job job);                    ///< two-way cloth, and each panel as it falls best

} // namespace boltwright
