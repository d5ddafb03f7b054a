#pragma once

#include "core/trimmings/ratio.h"

#include <optional>

namespace boltwright {

/// Equal pieces cut in plain rows across the cloth, as a workroom reckons on paper: floor(width / across) side by side,
/// so many rows one above the other (T8.12). An upper estimate; planning is better.
struct Rows {
    std::int64_t beside = 0, rows = 0;
    Length length; ///< of cloth
    bool operator==(const Rows &) const = default;
};

/// None where one piece is wider than the cloth. Lengths greater than zero, `count` zero or more.
std::optional<Rows> inRows(Length across, Length up, std::int64_t count, Length clothWidth);

/// A strip longer than the cloth is wide, cut as whole widths that are joined (T4.6, T9.3 to T9.5): how many widths and
/// the cloth they take. A part of a width cannot be bought.
Rows inWidths(Length strip, Length cut, Length clothWidth);

} // namespace boltwright
