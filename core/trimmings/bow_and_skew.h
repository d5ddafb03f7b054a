#pragma once

#include "core/trimmings/ratio.h"

namespace boltwright {

/// How far the weft is off square. `bow`: the greatest distance of a curved yarn from the straight line between its
/// ends; `skew`: how far one end lies beyond the other. Both are told in the hundred of the width (ASTM D3882,
/// ISO 13015: 100·distance ÷ width; T12.8). Neither standard sets a limit.

/// Hundredths of one in the hundred, to the nearest: 185 is 1.85 %. `width` greater than zero.
constexpr std::int64_t offSquare(Length distance, Length width) {
    return roundedQuotient(distance.ticks() * 10'000, width.ticks());
}

/// The shift across the width that so many hundredths of one in the hundred make, to the nearest tick (T12.9).
constexpr Length shiftAcross(std::int64_t hundredths, Length width) {
    return Length::ticks(roundedQuotient(width.ticks() * hundredths, 10'000));
}

/// How far the pattern of a panel so wide leans from side to side when the cloth is skewed: its part of the shift.
constexpr Length leanOf(Length panelWidth, Length skew, Length clothWidth) {
    return Length::ticks(roundedQuotient(panelWidth.ticks() * skew.ticks(), clothWidth.ticks()));
}

} // namespace boltwright
