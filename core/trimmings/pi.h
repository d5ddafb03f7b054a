#pragma once

#include "core/trimmings/ratio.h"

namespace boltwright {

/// The circle's ratio from above, so that what goes round is never short: 355/113 (Zu Chongzhi, 5th century) is too
/// much by less than one part in eleven million.
inline constexpr Ratio piFromAbove{355, 113};

} // namespace boltwright
