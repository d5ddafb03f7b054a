#include "core/trimmings/rows.h"

#include <catch2/catch.hpp>

#include <vector>

// Rows "T..." are those of the trade notes in the shared folder (shared/TRADE.md), which name each publication.
// Lengths in inches unless said.

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("the worked chair's rows on cloth 54 in wide, and on 53", "[trimmings]") {
    struct Part {
        Length across, up;
        int count;
        Length on54, on53;
    };
    // T6.20
    const std::vector<Part> parts = {{36_in, 32_in, 1, 32_in, 32_in}, {32_in, 27_in, 2, 54_in, 54_in},
                                     {30_in, 30_in, 1, 30_in, 30_in}, {27_in, 18_in, 2, 18_in, 36_in},
                                     {47_in, 18_in, 1, 18_in, 18_in}, {31_in, 29_in, 2, 58_in, 58_in},
                                     {36_in, 24_in, 2, 48_in, 48_in}};
    Length sum54 = inWidths(108_in, 8_in, 54_in).length, sum53 = inWidths(108_in, 8_in, 53_in).length;
    CHECK(sum54 == 16_in);
    CHECK(sum53 == 24_in);
    for (const Part &p : parts) {
        CHECK(inRows(p.across, p.up, p.count, 54_in)->length == p.on54);
        CHECK(inRows(p.across, p.up, p.count, 53_in)->length == p.on53);
        sum54 += p.on54;
        sum53 += p.on53;
    }
    CHECK(sum54 == 274_in);
    CHECK(sum53 == 300_in);
}

TEST_CASE("equal pieces in rows", "[trimmings]") {
    CHECK(inRows(24_in, 24_in, 6, 54_in) == Rows{2, 3, 72_in});       // T1.9
    CHECK(inRows(27_in, 27_in, 2, 54_in) == Rows{2, 1, 27_in});       // T2.1: two dining seats from 3/4 yd
    CHECK(inRows(27_in, 27_in, 8, 54_in)->length == 3_yd);            // T2.1
    CHECK(inRows(27_in, 27_in, 6, 54_in)->length == 81_in);           // T2.1: 2 1/4 yd
    CHECK(inRows(25.5_in, 16.5_in, 2, 54_in) == Rows{2, 1, 16.5_in}); // T8.8
    CHECK_FALSE(inRows(60_in, 10_in, 1, 54_in));
    CHECK(inRows(20_in, 10_in, 0, 54_in)->length == 0_in);
}

TEST_CASE("grids of squares from small cuts", "[trimmings]") {
    struct Grid {
        Length across, along, square;
        int count;
    };
    const Grid g = GENERATE(values<Grid>({// T8.11
                                          {45_in, 36_in, 10_in, 12},
                                          {40_in, 36_in, 5_in, 56},
                                          {43_in, 35_in, 4_in, 80},
                                          {43_in, 35_in, 6_in, 35},
                                          {43_in, 35_in, 3_in, 154}}));
    const auto rows = inRows(g.square, g.square, g.count, g.across);
    REQUIRE(rows);
    CHECK(rows->length <= g.along);
    CHECK(inRows(g.square, g.square, g.count + 1, g.across)->length > g.along);
}

TEST_CASE("skirts and drops are cut from whole widths", "[trimmings]") {
    CHECK(inWidths(554_in, 19_in, 54_in) == Rows{1, 11, 209_in});   // T9.3
    CHECK(inWidths(660_in, 23_in, 54_in) == Rows{1, 13, 299_in});   // T9.4
    CHECK(inWidths(250_in, 20.5_in, 45_in) == Rows{1, 6, 123_in});  // T9.5
    CHECK(inWidths(440_cm, 259_cm, 140_cm) == Rows{1, 4, 1036_cm}); // T4.4, T4.6
    CHECK(inWidths(189_in, 121_in, 54_in) == Rows{1, 4, 484_in});   // T4.5
    CHECK(inWidths(320_in, 1_in, 122_in).rows == 3);                // T4.9
    CHECK(inWidths(167_in, 12_in, 54_in).length == 48_in);          // T4.18: not the 37.1 of a part of a width
    CHECK(inWidths(167_in, 23_in, 54_in).length == 92_in);          // T4.18
}
