#include "core/trimmings/welt.h"

#include "core/geometry/exact.h"
#include "core/trimmings/pi.h"

#include <algorithm>

namespace boltwright {

Length weltStripWidth(Length cord, const TradeRules &rules) {
    return weltStripOfGirth(timesUp(cord, piFromAbove), rules);
}

Length weltStripOfGirth(Length girth, const TradeRules &rules) {
    return roundedUp(girth + rules.weltSeam * 2, rules.stripStep);
}

std::optional<WidthStrips> stripsFor(Length need, Length strip, Length clothWidth, Length join) {
    if (clothWidth <= join) return std::nullopt;
    // n strips have n - 1 joins: n·(width - join) + join must reach the need.
    const std::int64_t strips = need <= clothWidth ? 1 : timesNeeded(need - join, clothWidth - join);
    return WidthStrips{strips, strip * strips};
}

StripYield straightYield(Length cloth, Length strip, Length clothWidth) {
    const std::int64_t strips = wholeTimes(cloth, strip);
    return {strips, clothWidth * strips};
}

Length biasYield(Length side, Length otherSide, Length strip) {
    return Length::ticks(side * otherSide / strip.ticks());
}

Length tubeYield(Length side, Length seam, Length strip) {
    const Length left = std::max(side - seam * 2, Length{});
    return biasYield(left, left, strip);
}

Length biasSquare(Length need, Length strip, Length step) {
    const Wide area = Wide(need.ticks()) * strip.ticks();
    std::int64_t side = rootDown(area);
    if (Wide(side) * side < area) ++side;
    return roundedUp(Length::ticks(side), step);
}

Length biasCloth(Length need, Length strip, Length clothWidth) {
    const Wide area = Wide(need.ticks()) * strip.ticks();
    return Length::ticks(std::int64_t((area + clothWidth.ticks() - 1) / clothWidth.ticks()));
}

Length longestBias(Length clothWidth) {
    return Length::ticks(rootDown(Wide(2) * clothWidth.ticks() * clothWidth.ticks()));
}

Length longestSquareEndedBias(Length clothWidth, Length strip) {
    return std::max(longestBias(clothWidth) - strip, Length{});
}

Length weltNeeded(Length edges, int joins, Length join) { return edges + join * joins; }

} // namespace boltwright
