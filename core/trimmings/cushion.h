#pragma once

#include "core/trimmings/trade_rules.h"

#include <vector>

namespace boltwright {

/// A cushion as it is to be when finished: width side to side, depth front to back, thickness of the boxing (which is
/// that of its foam, T8.9). All greater than zero; a knife-edge cushion has no thickness.
struct Cushion {
    Length width, depth, thickness;
    bool operator==(const Cushion &) const = default;
};

/// A part of a cover to be cut, with its seams: across by up, and how many.
struct CutSize {
    Length across, up;
    int count = 1;
    bool operator==(const CutSize &) const = default;
};

/// A box cushion: two plates and a band round the edge, the back of it with a zipper.
struct BoxCushionCuts {
    CutSize plates;
    CutSize boxing;  ///< length by height; add one seam each side where it is joined
    CutSize zipBand; ///< two strips, the zipper between them
    Length zipTape;
    Length weltRun; ///< round both plates, without joins (T5.31)
    bool operator==(const BoxCushionCuts &) const = default;
};

/// How the band meets the zipper band.
enum class BoxingEnds {
    Lapped, ///< front and both sides long; what is over laps the zipper's ends (T8.3)
    Butted, ///< exactly what the zipper band leaves of the way round, and seams (T8.1)
};

/// T8.1 to T8.4: plates finished size and a seam all round; boxing thickness and two seams high; zipper band
/// back and `zipWrap` long, each strip half the boxing's cut height and the turning. The tape is at most the way round.
BoxCushionCuts boxCushion(const Cushion &cushion, const TradeRules &rules, BoxingEnds ends = BoxingEnds::Lapped);

/// A waterfall (bull-nose) cushion: one piece runs over the front; boxing at the sides and the back.
struct WaterfallCuts {
    CutSize main;    ///< side to side by the way from back over the front to back
    CutSize sides;   ///< two
    CutSize zipBand; ///< across the back, finished with its zipper
    bool operator==(const WaterfallCuts &) const = default;
};

/// T8.6: main piece 2·depth + thickness and seams, measured round a square front.
WaterfallCuts waterfallCushion(const Cushion &cushion, const TradeRules &rules);

/// The way round a front that is a true half circle, seams included: 2·(depth - thickness/2) + π·thickness/2, rounded
/// up to a tick (T8.7).
Length roundNoseLength(const Cushion &cushion, const TradeRules &rules);

/// Two plates sewn edge to edge (T8.8: both dimensions 1 1/2 in larger).
CutSize knifeEdgeCushion(const Cushion &cushion, const TradeRules &rules);

/// Top and bottom cut in one length, folded over the front: twice the depth and two seams (T8.10).
Length wrappedLength(Length depth, const TradeRules &rules);

} // namespace boltwright
