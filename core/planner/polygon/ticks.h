#pragma once

#include "core/measure/length.h"

namespace boltwright::planner {

// Inside the search over slanted items places are whole ticks held as doubles, which are exact far beyond any cloth.
inline double toTicks(Length l) { return double(l.ticks()); }
inline Length toLength(double ticks) { return Length::ticks(std::int64_t(ticks)); }

} // namespace boltwright::planner
