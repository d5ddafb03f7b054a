#include "core/trimmings/cushion.h"

#include <catch2/catch.hpp>

// Rows "T..." are those of the trade notes in the shared folder (shared/TRADE.md), which name each publication.
// Lengths in inches unless said.

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("a box cushion's plates, band, zipper band and welt", "[trimmings]") {
    const TradeRules rules;
    // T8.4: 22 wide, 24 deep, 4 thick
    const BoxCushionCuts cuts = boxCushion({22_in, 24_in, 4_in}, rules);
    CHECK(cuts.plates == CutSize{23_in, 25_in, 2});
    CHECK(cuts.boxing == CutSize{70_in, 5_in, 1});
    CHECK(cuts.zipBand == CutSize{30_in, 3.25_in, 2});
    CHECK(cuts.zipTape == 30_in);
    CHECK(cuts.weltRun == 184_in);
    // T8.5: three quarters of each strip turned at the zipper, they make up the boxing
    CHECK((cuts.zipBand.up - rules.zipTurning) * 2 == cuts.boxing.up);
}

TEST_CASE("a foam of 11 by 15 by 3 has plates of 12 by 16 and a boxing 4 high", "[trimmings]") {
    const BoxCushionCuts cuts = boxCushion({11_in, 15_in, 3_in}, TradeRules{}); // T8.2
    CHECK(cuts.plates == CutSize{12_in, 16_in, 2});
    CHECK(cuts.boxing.up == 4_in);
}

TEST_CASE("bands that butt close the way round exactly", "[trimmings]") {
    TradeRules rules;
    rules.zipWrap = 4_in;
    const BoxCushionCuts cuts = boxCushion({12_in, 12_in, 3_in}, rules, BoxingEnds::Butted); // T8.1
    CHECK(cuts.plates == CutSize{13_in, 13_in, 2});
    CHECK(cuts.zipTape == 16_in);
    CHECK(cuts.boxing.across == 34_in);
    CHECK(cuts.boxing.across - rules.seam * 2 + cuts.zipBand.across - rules.seam * 2 == 48_in);
}

TEST_CASE("a waterfall cushion runs over its front in one piece", "[trimmings]") {
    const Cushion cushion{20_in, 22_in, 4_in}; // T8.6, T8.7
    const WaterfallCuts cuts = waterfallCushion(cushion, TradeRules{});
    CHECK(cuts.main == CutSize{21_in, 49_in, 1});
    CHECK(cuts.sides == CutSize{23_in, 5_in, 2});
    CHECK(cuts.zipBand == CutSize{21_in, 5_in, 1});
    CHECK(abs(roundNoseLength(cushion, TradeRules{}) - 47.2832_in) <= Length::ticks(8)); // 40 + 2π + 1
}

TEST_CASE("a knife-edge cushion of 24 by 15 is cut 25 1/2 by 16 1/2", "[trimmings]") {
    CHECK(knifeEdgeCushion({24_in, 15_in, 0_in}, TradeRules{}) == CutSize{25.5_in, 16.5_in, 2}); // T8.8
}

TEST_CASE("top and bottom in one length", "[trimmings]") {
    CHECK(wrappedLength(22_in, TradeRules{}) == 45_in); // T8.10: 2 × (back seam to front seam) + 1
}

TEST_CASE("a cover cut larger than its place grows on both dimensions", "[trimmings]") {
    TradeRules rules;
    rules.cushionOversize = 0.5_in;
    CHECK(boxCushion({22_in, 24_in, 4_in}, rules).plates == CutSize{23.5_in, 25.5_in, 2});
}
