#include "core/trimmings/trade_rules.h"

#include <catch2/catch.hpp>

// Rows "T..." are those of the trade notes in the shared folder (shared/TRADE.md), which name each publication.
// Lengths in inches unless said.

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("the defaults are those of the published practice", "[trimmings]") {
    const TradeRules rules = tradeRules(Unit::Inch);
    CHECK(rules == TradeRules{});
    CHECK(rules.seam == 0.5_in);                     // T6.6
    CHECK(rules.pull == 2_in);                       // T6.4, T6.5
    CHECK(rules.seatTack == 3_in);                   // T6.4, T6.5
    CHECK(rules.tuckIn == 6_in);                     // T6.7
    CHECK(rules.zipWrap == 8_in);                    // T8.3
    CHECK(rules.doubleWeltStrip == 2.5_in);          // T5.30
    CHECK(rules.shortestBias == 15_in);              // T5.13
    CHECK(rules.nailHead == Length::ticks(7 * 508)); // 7/16, T7.1
    CHECK(rules.nosing == 4_in);                     // T6.22
}

TEST_CASE("a metric workroom's defaults are the same to the nearest half centimetre", "[trimmings]") {
    const TradeRules inch = tradeRules(Unit::Inch), metric = tradeRules(Unit::Centimetre);
    CHECK(tradeRules(Unit::Millimetre) == metric);
    for (auto figure : {&TradeRules::pull, &TradeRules::seatTack, &TradeRules::seam, &TradeRules::tuckIn,
                        &TradeRules::weltSeam, &TradeRules::zipWrap, &TradeRules::zipTurning, &TradeRules::knifeEdge,
                        &TradeRules::pleatTake, &TradeRules::kickReturn, &TradeRules::kickUnderlay,
                        &TradeRules::doubleWeltStrip, &TradeRules::shortestBias, &TradeRules::nailHead,
                        &TradeRules::nailPitch, &TradeRules::nosing, &TradeRules::stretcher, &TradeRules::smallRepeat})
        CHECK(abs(inch.*figure - metric.*figure) <= 4_mm);
    CHECK(metric.kickReturn == 11_cm);   // T9.9 gives centimetres
    CHECK(metric.kickUnderlay == 22_cm); // T9.9
    CHECK(metric.seam == 12_mm);         // T9.9
}
