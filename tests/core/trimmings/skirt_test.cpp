#include "core/trimmings/skirt.h"

#include <catch2/catch.hpp>

// Rows "T..." are those of the trade notes in the shared folder (shared/TRADE.md), which name each publication.
// Lengths in inches unless said.

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("panels with inverted pleats", "[trimmings]") {
    const TradeRules rules;
    CHECK(pleatedPanel(87_in, 3, rules.pleatTake, 2, 12_in, rules) == CutSize{62.5_in, 13_in, 2}); // T9.1
    CHECK(pleatedPanel(37_in, 1, rules.pleatTake, 1, 12_in, rules) == CutSize{50_in, 13_in, 1});   // T9.2
}

TEST_CASE("the strip of a gathered or flat skirt", "[trimmings]") {
    CHECK(skirtStrip(60_in + 80_in + 80_in, {5, 2}, 4_in) == 554_in);                 // T9.3
    CHECK(skirtStrip(220_in, {3, 1}, 0_in) == 660_in);                                // T9.4
    CHECK(skirtStrip(76_in + 76_in + 60_in + 18_in + 18_in, {1, 1}, 2_in) == 250_in); // T9.5
    CHECK(skirtStrip(220_in, TradeRules{}.gathered, 4_in) == 554_in);                 // T9.3, T9.7
}

TEST_CASE("how full pleats are follows from their depth and spacing", "[trimmings]") {
    // T9.6
    CHECK(pleatFullness(1_in, 1_in) == Ratio{3, 1});
    CHECK(pleatFullness(0.5_in, 1_in) == Ratio{2, 1});
    CHECK(pleatFullness(1.5_in, 1_in) == Ratio{4, 1});
    CHECK(pleatFullness(2_in, 1_in) == Ratio{5, 1});
}

TEST_CASE("a kick-pleat skirt 7 high on a chair of 30 by 32", "[trimmings]") {
    const TradeRules rules;
    // T9.10
    CHECK(kickPleat(30_in, 7_in, rules) == KickPleat{{38.75_in, 15_in, 1}, {8.625_in, 15_in, 1}});
    CHECK(kickPleat(32_in, 7_in, rules).panel == CutSize{40.75_in, 15_in, 1});
    // T9.9: 11 cm at each end, twice the height and two seams of 12 mm
    CHECK(kickPleat(70_cm, 18_cm, tradeRules(Unit::Centimetre)).panel == CutSize{92_cm, 38.4_cm, 1});
}
