#include "core/trimmings/trade_rules.h"

namespace boltwright {

using namespace literals;

TradeRules tradeRules(Unit unit) {
    TradeRules rules;
    if (unit == Unit::Inch) return rules;
    rules.pull = 5_cm;
    rules.seatTack = 7.5_cm;
    rules.seam = 1.2_cm; // 12 mm, T9.9
    rules.tuckIn = 15_cm;
    rules.weltSeam = rules.seam;
    rules.cuttingStep = 1_cm;
    rules.zipWrap = 20_cm;
    rules.zipTurning = 2_cm;
    rules.knifeEdge = 4_cm;
    rules.pleatTake = 30.5_cm;
    rules.skirtHem = 6.5_cm;
    rules.cord = 4_mm;
    rules.kickReturn = 11_cm;   // T9.9
    rules.kickUnderlay = 22_cm; // T9.9
    rules.stripStep = 0.5_cm;
    rules.doubleWeltStrip = 6.5_cm;
    rules.shortestBias = 38_cm;
    rules.nailHead = 11_mm;
    rules.nailPitch = 5_cm;
    rules.nosing = 10_cm;
    rules.stretcher = 20_cm;
    rules.smallRepeat = 7.5_cm;
    return rules;
}

} // namespace boltwright
