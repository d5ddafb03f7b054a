#pragma once

#include "core/trimmings/ratio.h"

#include <optional>

namespace boltwright {

/// A repeat measured as the trade does, over several at once: "`repeats` repeats measure `length`". Rounded to the
/// nearest tick; over n repeats the error is at most n/2 ticks, 1/640 mm each.
constexpr Length repeatOf(int repeats, Length length) {
    return Length::ticks(roundedQuotient(length.ticks(), repeats));
}

/// A cut that begins where the last began in the pattern: whole repeats (T4.1 to T4.5, T4.10). An exact multiple is not
/// rounded up (T4.8). `repeat` greater than zero.
constexpr Length wholeRepeats(Length needed, Length repeat) { return roundedUp(needed, repeat); }

/// What a shop adds that does not round up: one repeat a cut (T4.7).
constexpr Length withOneRepeat(Length needed, Length repeat) { return needed + repeat; }

/// A cut in half-drop cloth after which the next begins half a repeat further on: the next n + 1/2 repeats (T4.11).
/// Halves of odd ticks are rounded up.
Length halfDropCut(Length needed, Length repeat);

/// `count` equal widths hung side by side in half-drop cloth, cut one after the other from one length: the shorter of
/// two ways. Either each is cut n + 1/2 repeats long and they alternate by themselves, or all odd ones whole repeats
/// long, half a repeat skipped, and then all even ones (T4.12).
Length halfDropRun(int count, Length needed, Length repeat);

/// A careful order before anything is laid out: per cut one repeat more, in half-drop cloth one and a half (T4.13).
Length carefulOrder(int cuts, Length needed, Length repeat, bool halfDrop);

/// How far the pattern moves on where two parts are joined, so that it runs on over the seam: both seams are out of
/// sight (T6.17: 1 in from plate to border).
constexpr Length lostInSeam(Length seam) { return seam * 2; }

/// How far above the border's lower cut edge the nosing's top line lies in the pattern: its depth and one seam (T6.17).
constexpr Length nosingOffset(Length nosing, Length seam) { return nosing + seam; }

/// The face cloth of a part whose hidden end is a strip of other cloth (T6.23).
constexpr Length withStretcher(Length whole, Length strip, Length seam) { return whole - strip + seam; }

/// A repeat as a part of the cloth's width: motifs across, where the repeat divides the width between the selvages
/// evenly; none where it does not (T3.8, T3.9).
std::optional<std::int64_t> repeatsAcross(Length usableWidth, Length repeat);

} // namespace boltwright
