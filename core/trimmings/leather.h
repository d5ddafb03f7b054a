#pragma once

#include "core/trimmings/ratio.h"

namespace boltwright {

/// One square foot.
inline constexpr Area squareFoot = Area(12 * 8128) * (12 * 8128);

/// Hide to order in place of `length` of cloth 54 in wide: four thirds of its area, so 18 square feet a yard (T1.7: 13
/// 1/2 and 4 1/2 for waste). Rounded up to the whole square foot. An estimate; hides have no width.
constexpr std::int64_t hideSquareFeet(Length length) {
    const Length foot = Length::ticks(12 * 8128);
    return timesNeeded(length * 6, foot); // 54 in × 4/3 = 6 ft
}

} // namespace boltwright
