#pragma once

#include "core/trimmings/trade_rules.h"

#include <optional>

/// Strips for welt: how wide, how many, how much cloth. All lengths greater than zero; what is asked for is rounded up,
/// what something yields down.
namespace boltwright {

/// Cloth round a cord of that thickness, and a seam's flange on both sides: π·d + 2·seam, rounded up to the rules' step
/// (T5.21, T5.24, T5.27).
Length weltStripWidth(Length cord, const TradeRules &rules);

/// The same where the cord's girth was measured (T5.24).
Length weltStripOfGirth(Length girth, const TradeRules &rules);

/// Strips cut straight across the width, from selvage to selvage.
struct WidthStrips {
    std::int64_t strips = 0;
    Length cloth; ///< along the roll
    bool operator==(const WidthStrips &) const = default;
};

/// How many strips `need` takes, where each join costs `join` (both turnings of a straight join; a slanting join costs
/// a strip's width), and the cloth they are cut from (T5.11, T5.17). None where a strip is no longer than a join.
std::optional<WidthStrips> stripsFor(Length need, Length strip, Length clothWidth, Length join = {});

/// Strips that a length of cloth yields, and their total, joins not taken off (T5.16, T5.18).
struct StripYield {
    std::int64_t strips = 0;
    Length total;
    bool operator==(const StripYield &) const = default;
};
StripYield straightYield(Length cloth, Length strip, Length clothWidth);

/// Bias strip that an area yields at most: area ÷ strip (T5.1 to T5.3). A theoretical greatest: see `tubeYield`.
Length biasYield(Length side, Length otherSide, Length strip);

/// Bias strip from a square sewn into a tube and cut round and round: both seams of the tube are lost,
/// (side - 2·seam)² ÷ strip (T5.6).
Length tubeYield(Length side, Length seam, Length strip);

/// The square that yields `need` of bias strip by area: √(need·strip), rounded up to `step` (T5.2, T5.4, T5.5, T5.8).
Length biasSquare(Length need, Length strip, Length step);

/// Cloth of a given width that yields `need` by area: need·strip ÷ width (T5.9, T5.14).
Length biasCloth(Length need, Length strip, Length clothWidth);

/// The longest line at 45° from selvage to selvage: width·√2 (T5.12). Needs as much cloth along the roll as it is wide.
Length longestBias(Length clothWidth);

/// The longest strip of that width at 45° whose ends are cut square: width·√2 less the strip's width. Zero where the
/// strip is too wide.
Length longestSquareEndedBias(Length clothWidth, Length strip);

/// Welt to be made up: the marked edges, and for each join and each start and end what they take up.
Length weltNeeded(Length edges, int joins, Length join);

} // namespace boltwright
