#include "core/trimmings/leather.h"

#include <catch2/catch.hpp>

// Rows "T..." are those of the trade notes in the shared folder (shared/TRADE.md), which name each publication.
// Lengths in inches unless said.

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("hide in place of cloth", "[trimmings]") {
    CHECK(hideSquareFeet(1_yd) == 18);           // T1.7
    CHECK(hideSquareFeet(6_yd) == 108);          // T1.8
    CHECK(hideSquareFeet(234_in) == 117);        // T1.8: 6 1/2 yd
    CHECK(hideSquareFeet(11_yd) == 198);         // T1.8
    CHECK(54_in * 36_in * 2 == squareFoot * 27); // T1.2: 13 1/2 square feet a yard
}
