#include "core/trimmings/rows.h"

namespace boltwright {

std::optional<Rows> inRows(Length across, Length up, std::int64_t count, Length clothWidth) {
    const std::int64_t beside = wholeTimes(clothWidth, across);
    if (beside == 0) return std::nullopt;
    const std::int64_t rows = (count + beside - 1) / beside;
    return Rows{beside, rows, up * rows};
}

Rows inWidths(Length strip, Length cut, Length clothWidth) {
    const std::int64_t widths = timesNeeded(strip, clothWidth);
    return {1, widths, cut * widths};
}

} // namespace boltwright
