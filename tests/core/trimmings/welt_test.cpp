#include "core/trimmings/welt.h"

#include <catch2/catch.hpp>

// Rows "T..." are those of the trade notes in the shared folder (shared/TRADE.md), which name each publication.
// Lengths in inches unless said.

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("bias strip by area", "[trimmings]") {
    CHECK(biasYield(12_in, 12_in, 2_in) == 72_in);       // T5.1
    CHECK(biasYield(20_in, 20_in, 2_in) == 200_in);      // T5.2
    CHECK(biasYield(36_in, 36_in, 2_in) == 18_yd);       // T5.3
    CHECK(biasYield(18_in, 22_in, 2.25_in) == 176_in);   // T5.15
    CHECK(biasYield(21.75_in, 21.75_in, 3_in) > 157_in); // T5.7: 157 in whole inches
    CHECK(biasYield(21.75_in, 21.75_in, 3_in) < 158_in);
}

TEST_CASE("the square that a bias strip needs", "[trimmings]") {
    struct Square {
        const char *row;
        Length need, strip, side;
    };
    const Square s = GENERATE(values<Square>({{"T5.2", 250_in, 2_in, 23_in},
                                              {"T5.4", 55_in, 2.5_in, 12_in},
                                              {"T5.5", 100_in, 3.5_in, 19_in},
                                              {"T5.8", 450_in, 2.25_in, 32_in},
                                              {"T5.3 turned round", 648_in, 2_in, 36_in},
                                              {"T5.1 turned round", 72_in, 2_in, 12_in}}));
    CAPTURE(s.row);
    CHECK(biasSquare(s.need, s.strip, 1_in) == s.side);
    CHECK(biasSquare(496_in, 2_in, 1_in) <= 36_in); // T5.10: a square of 36 in is enough
}

TEST_CASE("a tube loses two seams, so a square of 12 yields 60 1/2 in place of 72", "[trimmings]") {
    CHECK(tubeYield(12_in, 0.5_in, 2_in) == 60.5_in); // T5.6, where the tutorial's chart prints 60
    CHECK(tubeYield(13_in, 0.5_in, 2_in) == 72_in);   // T5.6
    CHECK(tubeYield(15_in, 0.5_in, 2_in) == 98_in);   // T5.6, where the chart prints 100
    CHECK(tubeYield(1_in, 1_in, 2_in) == 0_in);
}

TEST_CASE("the same strip from another shape of cloth", "[trimmings]") {
    CHECK(roundedUp(biasCloth(162_in, 2_in, 42_in), 1_in) == 8_in);                // T5.9: 324 square inches
    CHECK(abs(biasCloth(360_in, 4.5_in, 42_in) - 38.5714_in) <= Length::ticks(2)); // T5.14
    CHECK(abs(biasCloth(220_in, 3_in, 42_in) - 15.7143_in) <= Length::ticks(2));   // T5.14
    CHECK(roundedUp(biasCloth(950_in, 1.5_in, 54_in), 1.5_in) == 27_in);           // T5.11
}

TEST_CASE("strips cut from selvage to selvage", "[trimmings]") {
    CHECK(stripsFor(950_in, 1.5_in, 54_in) == WidthStrips{18, 27_in});  // T5.11
    CHECK(stripsFor(180_in, 3.5_in, 42_in) == WidthStrips{5, 17.5_in}); // T5.17
    CHECK(stripsFor(54_in, 1.5_in, 54_in, 1_in) == WidthStrips{1, 1.5_in});
    CHECK(stripsFor(107_in, 1.5_in, 54_in, 1_in) == WidthStrips{2, 3_in}); // one join takes 1 in
    CHECK(stripsFor(107.125_in, 1.5_in, 54_in, 1_in) == WidthStrips{3, 4.5_in});
    CHECK_FALSE(stripsFor(100_in, 1.5_in, 1_in, 1_in));
}

TEST_CASE("what a yard yields straight across", "[trimmings]") {
    struct Yield {
        Length cloth, strip;
        std::int64_t strips;
        Length total;
    };
    const Yield y = GENERATE(values<Yield>({{18_in, 2.5_in, 7, 378_in}, // T5.16, 54 in wide
                                            {1_yd, 1.5_in, 24, 36_yd},  // T5.18
                                            {1_yd, 1.75_in, 20, 30_yd},
                                            {1_yd, 2_in, 18, 27_yd},
                                            {1_yd, 2.5_in, 14, 21_yd}}));
    CHECK(straightYield(y.cloth, y.strip, 54_in) == StripYield{y.strips, y.total});
}

TEST_CASE("the longest strip on the bias from cloth 54 in wide", "[trimmings]") {
    CHECK(abs(longestBias(54_in) - 76.3675_in) <= Length::ticks(1)); // T5.12
    CHECK(longestSquareEndedBias(54_in, 1.5_in) == longestBias(54_in) - 1.5_in);
    CHECK(longestSquareEndedBias(1_in, 2_in) == 0_in);
}

TEST_CASE("strip width by cord", "[trimmings]") {
    const TradeRules rules;
    CHECK(weltStripWidth(Length::ticks(5 * 254), rules) == 1.5_in); // T5.20, T5.21: 5/32
    CHECK(weltStripOfGirth(0.5_in, rules) == 1.5_in);               // T5.24
    // T5.27: 1.589, 1.785, 2.178, 2.571 go up to the next eighth
    CHECK(weltStripWidth(Length::ticks(3 * 508), rules) == 1.625_in); // 3/16
    CHECK(weltStripWidth(0.25_in, rules) == 1.875_in);
    CHECK(weltStripWidth(0.375_in, rules) == 2.25_in);
    CHECK(weltStripWidth(0.5_in, rules) == 2.625_in);
}

TEST_CASE("welt for a box cushion goes twice round, and its joins", "[trimmings]") {
    CHECK(weltNeeded((22_in + 24_in) * 4, 4, 1_in) == 188_in);     // T5.31, T8.4
    CHECK(weltNeeded((18_in + 12_in) * 2 * 8, 8, 2_in) == 496_in); // T5.10
}
