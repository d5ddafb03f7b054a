#pragma once

#include "core/check/check.h"
#include "core/check/laid_cut.h"

#include <string>

namespace boltwright::judge {

/// "Seat", "Seat (2 of 4)", "Seat (2 of 4), piece 1 of 2": as a person calls it.
std::string nameOf(const Panel &panel, int copy);
std::string nameOf(const Scene &scene, const Cut &cut);
std::string nameOf(const Cloth &cloth);
/// "Body", "remnant A of Body".
std::string sheetOf(const LaidCut &laid);
/// "the top edge", "edge 3".
std::string edgeOf(const Panel &panel, std::size_t edge);

/// A length in the job's unit: "1/4 in". What would round to nothing is "less than 1/16 in".
std::string amount(const Scene &scene, double ticks);
std::string amount(const Scene &scene, Length length);
/// "turned by 90 degrees", "not turned".
std::string turnedHow(Turn turn);

/// The finding that `subject` (a name) `does` something wrong; the sentence is both, with a full stop.
Finding about(Finding::Kind kind, const Scene &scene, const Cut &cut, const std::string &does);
Finding about(Finding::Kind kind, const Panel &panel, int copy, const std::string &does);

} // namespace boltwright::judge
