#include "core/trimmings/skirt.h"

#include <numeric>

namespace boltwright {

Length skirtStrip(Length run, Ratio fullness, Length hems) { return timesUp(run, fullness) + hems; }

Ratio pleatFullness(Length fold, Length spacing) {
    const std::int64_t top = spacing.ticks() + 2 * fold.ticks(), bottom = spacing.ticks();
    const std::int64_t common = std::gcd(top, bottom);
    return {top / common, bottom / common};
}

CutSize pleatedPanel(Length side, int pleats, Length take, int panels, Length height, const TradeRules &rules) {
    const Length seams = rules.seam * 2;
    return {timesUp(side + take * pleats, {1, panels}) + seams, height + seams, panels};
}

KickPleat kickPleat(Length side, Length height, const TradeRules &rules) {
    const Length depth = height * 2 + rules.seam * 2;
    return {{side + rules.kickReturn * 2, depth, 1}, {rules.kickUnderlay, depth, 1}};
}

} // namespace boltwright
