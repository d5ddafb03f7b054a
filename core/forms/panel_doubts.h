#pragma once

#include "core/job/job.h"

#include <string>
#include <vector>

namespace boltwright {

/// Something about a panel of a job that is worth a second look; never an error.
struct PanelDoubt {
    std::string panel; ///< its id
    std::string text;
    bool operator==(const PanelDoubt &) const = default;
};

/// The doubts that the job's panels raise, in their order: two of one mark that differ by more than 2 in, an arm that
/// is taller than the back is wide, no motif though its twin has one, wider than the cloth, nothing added at any edge.
/// Limits are common practice, no source.
std::vector<PanelDoubt> doubtsOfPanels(const Job &job);

} // namespace boltwright
