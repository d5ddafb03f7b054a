#include "core/trimmings/cushion.h"

#include "core/trimmings/pi.h"

#include <algorithm>

namespace boltwright {
namespace {

Cushion cutFor(Cushion cushion, const TradeRules &rules) {
    cushion.width += rules.cushionOversize;
    cushion.depth += rules.cushionOversize;
    return cushion;
}

} // namespace

BoxCushionCuts boxCushion(const Cushion &finished, const TradeRules &rules, BoxingEnds ends) {
    const Cushion c = cutFor(finished, rules);
    const Length seams = rules.seam * 2, round = (c.width + c.depth) * 2;
    BoxCushionCuts cuts;
    cuts.plates = {c.width + seams, c.depth + seams, 2};
    cuts.zipTape = std::min(c.width + rules.zipWrap, round);
    const Length height = c.thickness + seams;
    const Length lapped = c.width + c.depth * 2;
    // Each of the two bands loses a seam at both of its ends.
    const Length butted = round - cuts.zipTape + seams * 2;
    cuts.boxing = {ends == BoxingEnds::Lapped ? lapped : butted, height, 1};
    cuts.zipBand = {cuts.zipTape, timesUp(height, {1, 2}) + rules.zipTurning, 2};
    cuts.weltRun = round * 2;
    return cuts;
}

WaterfallCuts waterfallCushion(const Cushion &finished, const TradeRules &rules) {
    const Cushion c = cutFor(finished, rules);
    const Length seams = rules.seam * 2;
    return {{c.width + seams, c.depth * 2 + c.thickness + seams, 1},
            {c.depth + seams, c.thickness + seams, 2},
            {c.width + seams, c.thickness + seams, 1}};
}

Length roundNoseLength(const Cushion &finished, const TradeRules &rules) {
    const Cushion c = cutFor(finished, rules);
    const Length round = timesUp(c.thickness, {piFromAbove.numerator, 2 * piFromAbove.denominator});
    return c.depth * 2 - c.thickness + round + rules.seam * 2;
}

CutSize knifeEdgeCushion(const Cushion &finished, const TradeRules &rules) {
    const Cushion c = cutFor(finished, rules);
    return {c.width + rules.knifeEdge, c.depth + rules.knifeEdge, 2};
}

Length wrappedLength(Length depth, const TradeRules &rules) { return depth * 2 + rules.seam * 2; }

} // namespace boltwright
