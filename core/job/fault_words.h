#pragma once

#include "core/job/job.h"
#include "core/job/key_path.h"

#include <string>
#include <vector>

/// What is wrong with a job, as somebody at the window reads it: in the trade's words, without the file's keys.
namespace boltwright {

/// The same faults as `faultsOfJob`, in the same order: "Seat, least allowance, top: 2 in is more than ...".
std::vector<std::string> faultsInWords(const Job &job);

/// Where each of them stands in the file, in the same order: "panels[2] 'seat', allow_min.top".
std::vector<std::string> placesOfFaults(const Job &job);

/// "Inside back, count", "Harbour stripe, horizontal repeat": panels and cloths by the names that they go by.
std::string placeInWords(const Job &job, const KeyPath &place);

} // namespace boltwright
