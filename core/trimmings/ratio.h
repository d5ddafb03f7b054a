#pragma once

#include "core/measure/length.h"

namespace boltwright {

/// A factor told exactly: 5/2 for a fullness of two and a half, 20/100 for twenty in the hundred. The denominator is
/// greater than zero, and both are at most a million, so that products with lengths fit.
struct Ratio {
    std::int64_t numerator = 1, denominator = 1;
    friend constexpr bool operator==(Ratio a, Ratio b) {
        return a.numerator * b.denominator == b.numerator * a.denominator;
    }
};

/// `length` times `ratio` (both zero or more), rounded up to a whole tick: what is asked for is never short.
constexpr Length timesUp(Length length, Ratio ratio) {
    const std::int64_t product = length.ticks() * ratio.numerator;
    return Length::ticks((product + ratio.denominator - 1) / ratio.denominator);
}

/// The same rounded down: what something yields is never too much.
constexpr Length timesDown(Length length, Ratio ratio) {
    return Length::ticks(length.ticks() * ratio.numerator / ratio.denominator);
}

/// How often `part` (> 0) goes into `whole` (>= 0); and how many of it are needed to make up `whole`. An exact multiple
/// is not rounded up further.
constexpr std::int64_t wholeTimes(Length whole, Length part) { return whole.ticks() / part.ticks(); }
constexpr std::int64_t timesNeeded(Length whole, Length part) {
    return (whole.ticks() + part.ticks() - 1) / part.ticks();
}

/// `length` (>= 0) rounded up to a whole number of `step` (> 0). Cutting sizes go up to the next half inch or whole
/// centimetre so that they can be chalked (`TradeRules::cuttingStep`); a size that is one already stays.
constexpr Length roundedUp(Length length, Length step) { return step * timesNeeded(length, step); }

} // namespace boltwright
