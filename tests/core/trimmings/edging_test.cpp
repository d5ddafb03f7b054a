#include "core/trimmings/edging.h"

#include <catch2/catch.hpp>

// Rows "T..." are those of the trade notes in the shared folder (shared/TRADE.md), which name each publication.
// Lengths in inches unless said.

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("gimp is ordered with a tenth in reserve", "[trimmings]") {
    TradeRules rules;
    CHECK(edgingNeeded(200_in, 0, 0_in, rules) == 220_in); // T7.9
    CHECK(edgingNeeded(196_in, 4, 1_in, rules) == 220_in);
    rules.edgingReservePercent = 0;
    CHECK(edgingNeeded(200_in, 0, 0_in, rules) == 200_in);
}
