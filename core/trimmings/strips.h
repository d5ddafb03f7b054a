#pragma once

#include "core/job/job.h"

#include <optional>
#include <string>
#include <vector>

namespace boltwright {

/// Strips wanted from what a layout leaves over. `width` and `shortest` are greater than zero.
struct StripWish {
    std::string cloth;
    Length width;
    Length shortest; ///< a piece shorter than this serves for nothing here (`TradeRules::shortestBias`)
    StripRun run = StripRun::Bias;
    bool operator==(const StripWish &) const = default;
};

/// One strip, its ends cut square: a rectangle of the wished width. On the bias the corners lie on whole ticks, so that
/// the angle is exactly 45° and the width up to two ticks more than wished.
struct Strip {
    std::optional<std::string> on; ///< the remnant; none on a bolt
    ClothRing ring;                ///< counter-clockwise
    Length length;                 ///< rounded down to a tick on the bias
    bool operator==(const Strip &) const = default;
};

/// Strips that do not overlap (neighbours share a cut), by sheet, then by their lowest corner.
struct StripsLeft {
    std::vector<Strip> strips;
    Length total;
    bool operator==(const StripsLeft &) const = default;
};

/// What the scraps of a layout yield. On a bolt the cloth up to the last cut is looked at, what lies beyond is not cut
/// into; of remnants the whole. Strips keep the job's gap from cuts and off
/// flaws, selvages, the squared end and a remnant's edge. Exact: no strip overlaps anything by a tick.
///
/// The total is not proved to be the greatest there is; it is the best stack of rows of strips on every patch of cloth,
/// beginning at every height at which a corner of a cut, flaw or edge may stop a row, and then what fits beside them.
/// Empty where there is no such cloth or nothing long enough. `taken`: strips of that cloth that serve for something
/// else already; a strip may share a cut with them.
StripsLeft stripsFromScraps(const Job &job, const Layout &layout, const StripWish &wish,
                            const std::vector<Strip> &taken = {});

/// The welt that strips make when they are joined to one: each join takes `join` of it.
Length joinedLength(const StripsLeft &strips, Length join);

/// As few of the strips as make `need` when joined, the longest first; none where all together are not enough.
std::optional<StripsLeft> enoughFor(const StripsLeft &strips, Length need, Length join);

} // namespace boltwright
