#pragma once

#include "core/trimmings/ratio.h"

namespace boltwright {

/// Decorative nails set head to head along a run: run ÷ head, rounded up (T7.4). Head greater than zero.
constexpr std::int64_t closeNails(Length run, Length head) { return timesNeeded(run, head); }

/// Nails spaced `pitch` (> 0) from centre to centre on an open run, one at its beginning: floor(run ÷ pitch) + 1
/// (T7.5).
constexpr std::int64_t spacedNails(Length run, Length pitch) { return wholeTimes(run, pitch) + 1; }

/// The same round a closed run, whose spaces are made even: run ÷ pitch to the nearest, at least one (T7.5).
constexpr std::int64_t spacedNailsRound(Length run, Length pitch) {
    const std::int64_t count = roundedQuotient(run.ticks(), pitch.ticks());
    return count > 0 ? count : 1;
}

/// Spacing that makes an open run of `nails` (at least two) come out even, to the nearest tick (T7.2: set by halving).
constexpr Length evenPitch(Length run, std::int64_t nails) {
    return Length::ticks(roundedQuotient(run.ticks(), nails - 1));
}

/// Real nails in nail strip, where only every `every`th head is one: rounded up (T7.6: every fifth or sixth).
constexpr std::int64_t nailsInStrip(Length run, Length head, int every) {
    return (closeNails(run, head) + every - 1) / every;
}

} // namespace boltwright
