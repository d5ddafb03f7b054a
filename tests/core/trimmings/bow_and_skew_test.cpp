#include "core/trimmings/bow_and_skew.h"

#include <catch2/catch.hpp>

// Rows "T..." are those of the trade notes in the shared folder (shared/TRADE.md), which name each publication.
// Lengths in inches unless said.

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("bow and skew in the hundred of the width", "[trimmings]") {
    // T12.9, by the formula of ASTM D3882 (T12.8)
    CHECK(offSquare(0.5_in, 54_in) == 93);
    CHECK(offSquare(1_in, 54_in) == 185);
    CHECK(shiftAcross(100, 54_in) == 0.54_in);
    CHECK(shiftAcross(200, 54_in) == 1.08_in);
    CHECK(shiftAcross(300, 54_in) == 1.62_in);
}

TEST_CASE("a panel leans by its part of the width", "[trimmings]") {
    CHECK(leanOf(27_in, 1_in, 54_in) == 0.5_in);
    CHECK(leanOf(54_in, 1_in, 54_in) == 1_in);
}
