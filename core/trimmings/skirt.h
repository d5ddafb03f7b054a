#pragma once

#include "core/trimmings/cushion.h"
#include "core/trimmings/trade_rules.h"

namespace boltwright {

/// Total of a skirt's strip before it is cut from widths: the run times its fullness and what hems take. `run` is the
/// way round, fullness 1 for a flat skirt (T9.3 to T9.5).
Length skirtStrip(Length run, Ratio fullness, Length hems);

/// How much cloth folds take up: pleats of depth `fold` set `spacing` apart (> 0) need 1 + 2·fold/spacing times the
/// run. Folds that touch (fold = spacing), knife or box, need three times the run (T9.6).
Ratio pleatFullness(Length fold, Length spacing);

/// A side made up of `panels` (> 0) equal panels with `pleats` pleats along it, each taking `take`:
/// (side + pleats·take) / panels and two seams, by the finished height and two seams (T9.1, T9.2). Rounded up to a
/// tick.
CutSize pleatedPanel(Length side, int pleats, Length take, int panels, Length height, const TradeRules &rules);

/// A tailored skirt with kick pleats at the corners, lined with itself: for one side a panel that turns behind at both
/// ends, and behind each corner an underlay; both twice the finished height and two seams deep (T9.9, T9.10).
struct KickPleat {
    CutSize panel, underlay;
    bool operator==(const KickPleat &) const = default;
};
KickPleat kickPleat(Length side, Length height, const TradeRules &rules);

} // namespace boltwright
