#pragma once

#include "core/measure/length.h"
#include "core/measure/unit.h"
#include "core/trimmings/ratio.h"

namespace boltwright {

/// What a workroom adds, in one place: every figure is a default that a shop may change. Beside each stands where it is
/// from. "T" rows are those of the trade notes in the shared folder (shared/TRADE.md), which name the publication.
struct TradeRules {
    // By kind of edge, each side.
    /// Drawn over the frame and tacked. 2 in a side: worked chairs add 4 in to each dimension (T6.4, T6.5).
    Length pull = Length::ticks(2 * 8128);
    /// Tacked where it shows no more, on small drop-in seats: 3 in a side, +6 in all (T6.4, T6.5).
    Length seatTack = Length::ticks(3 * 8128);
    /// Sewn to the next part: 1/2 in (T6.6).
    Length seam = Length::ticks(8128 / 2);
    /// Pushed down between seat, back and arms: 6 in (T6.7, slipcovers; fixed covers use the same where they have no
    /// strip sewn on).
    Length tuckIn = Length::ticks(6 * 8128);
    /// Sewn with a welt in the seam: the seam's own 1/2 in; the welt's flange is as wide (T5.21, T6.6).
    Length weltSeam = Length::ticks(8128 / 2);
    /// What an allowance may shrink to when cloth is short: half of it. Common practice, no source.
    Ratio leastShare{1, 2};

    /// Cutting sizes go up to the next half inch, or whole centimetre. Common practice, no source.
    Length cuttingStep = Length::ticks(8128 / 2);

    // Cushions.
    /// A cover cut larger than the place it lies in, all told, so that a plump filling shows no slack: none by default
    /// (plates are finished size and seams, T8.1 to T8.4).
    Length cushionOversize;
    /// Zipper tape: the back and this much more, wrapped round the corners: 8 in, 4 each side (T8.3, T8.13).
    Length zipWrap = Length::ticks(8 * 8128);
    /// Turned under along the zipper, each strip: 3/4 in (T8.3, T8.5).
    Length zipTurning = Length::ticks(3 * 8128 / 4);
    /// Added to both dimensions of a knife-edge cushion: 1 1/2 in (T8.8).
    Length knifeEdge = Length::ticks(3 * 8128 / 2);

    // Skirts.
    /// Gathered: two and a half times the run (T9.3, T9.7; upholstery about 2, T9.8).
    Ratio gathered{5, 2};
    /// Taken by one inverted or box pleat: 12 in (T9.1).
    Length pleatTake = Length::ticks(12 * 8128);
    /// Box pleats whose folds touch: three times the run (T9.6).
    Ratio boxPleated{3, 1};
    /// Turned up below a flat, gathered or box-pleated skirt: 2 1/2 in (T9.4; T9.3 takes 3 with its seam).
    Length skirtHem = Length::ticks(5 * 8128 / 2);
    /// Turned behind at each end of a kick-pleat panel: 4 3/8 in, 11 cm (T9.9).
    Length kickReturn = Length::ticks(4 * 8128 + 3 * 8128 / 8);
    /// Width of the underlay behind a kick pleat: 8 5/8 in, 22 cm (T9.9, T9.10).
    Length kickUnderlay = Length::ticks(8 * 8128 + 5 * 8128 / 8);

    // Welt, gimp and cord.
    /// The shops' usual cord: 5/32 in (T5.20).
    Length cord = Length::ticks(5 * 254);
    /// Strip widths go up to the next eighth of an inch, or half centimetre (T5.27).
    Length stripStep = Length::ticks(8128 / 8);
    /// Cloth folded about two cords: 2 1/2 in (T5.30).
    Length doubleWeltStrip = Length::ticks(5 * 8128 / 2);
    /// A bias piece shorter than this goes to small parts: 15 in (T5.13).
    Length shortestBias = Length::ticks(15 * 8128);
    /// Gimp, cord and double welt: ten in the hundred more than the edges measure (T7.9, from memory).
    int edgingReservePercent = 10;

    // Nails.
    Length nailHead = Length::ticks(7 * 8128 / 16); ///< 7/16 in (T7.1)
    Length nailPitch = Length::ticks(2 * 8128);     ///< spaced nailing, centre to centre: 2 in (T7.2)

    // Hidden strips.
    /// The seat's face cloth runs on behind its front edge this far before it meets the deck: 4 in (T6.22).
    Length nosing = Length::ticks(4 * 8128);
    /// What a strip of other cloth sewn to a hidden edge (stretcher, pull, fly) spares of face cloth: 8 in (T6.23).
    Length stretcher = Length::ticks(8 * 8128);

    /// Repeats up to this cost nothing extra in an estimate: 3 in (T3.7).
    Length smallRepeat = Length::ticks(3 * 8128);

    bool operator==(const TradeRules &) const = default;
};

/// The defaults for a workroom that measures in `unit`. In metric each is the inch figure to the nearest half
/// centimetre, so that it can be chalked; figures of the trade that sources give in centimetres (T9.9) are those.
TradeRules tradeRules(Unit unit);

} // namespace boltwright
