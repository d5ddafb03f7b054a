#include "core/trimmings/repeat.h"

#include <catch2/catch.hpp>

// Rows "T..." are those of the trade notes in the shared folder (shared/TRADE.md), which name each publication.
// Lengths in inches unless said.

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("a repeat is measured over several at once", "[trimmings]") {
    CHECK(repeatOf(4, 54_in) == 13.5_in); // T3.8
    CHECK(repeatOf(4, 140_cm) == 35_cm);  // T3.9
    CHECK(repeatOf(2, 54_in) == 27_in);   // T3.9
    CHECK(repeatOf(3, Length::ticks(100)) == Length::ticks(33));
}

TEST_CASE("a straight match is cut in whole repeats", "[trimmings]") {
    struct Cut {
        const char *row;
        Length needed, repeat, cut;
    };
    const Cut c = GENERATE(values<Cut>({{"T4.1", 116_in, 25_in, 125_in},
                                        {"T4.2", 118_in, 13_in, 130_in},
                                        {"T4.3", 96_in, 27_in, 108_in},
                                        {"T4.4", 240_cm, 37_cm, 259_cm},
                                        {"T4.5", 114_in, 11_in, 121_in},
                                        {"T4.8", 135_cm, 27_cm, 135_cm},
                                        {"T4.10", 87_in, 12_in, 96_in},
                                        {"T9.12", 18_in, 23_in, 23_in},
                                        {"T9.12", 25_in, 23_in, 46_in}}));
    CAPTURE(c.row);
    CHECK(wholeRepeats(c.needed, c.repeat) == c.cut);
}

TEST_CASE("one repeat more is another rule than the next whole repeat", "[trimmings]") {
    CHECK(withOneRepeat(135_cm, 27_cm) == 162_cm);     // T4.7
    CHECK(withOneRepeat(135_cm, 27_cm) * 4 == 648_cm); // T4.7
}

TEST_CASE("a half-drop goes on with the next half repeat", "[trimmings]") {
    CHECK(halfDropCut(87_in, 12_in) == 90_in); // T4.11
    CHECK(halfDropCut(90_in, 12_in) == 90_in);
    CHECK(halfDropCut(91_in, 12_in) == 102_in);
}

TEST_CASE("several half-drop widths are cut the shorter of two ways", "[trimmings]") {
    // T4.12
    CHECK(halfDropRun(4, 87_in, 12_in) == 360_in);
    CHECK(halfDropRun(4, 96_in, 27_in) == 445.5_in);
    CHECK(halfDropRun(4, 116_in, 25_in) == 512.5_in);
    CHECK(halfDropRun(1, 87_in, 12_in) == 87_in);
}

TEST_CASE("a careful order adds a repeat a cut, in half-drop cloth one and a half", "[trimmings]") {
    CHECK(carefulOrder(4, 87_in, 12_in, false) == 396_in); // T4.13
    CHECK(carefulOrder(4, 87_in, 12_in, true) == 420_in);  // T4.13
}

TEST_CASE("the pattern runs on over plate, border and nosing", "[trimmings]") {
    CHECK(lostInSeam(0.5_in) == 1_in);                    // T6.17
    CHECK(nosingOffset(4_in, 0.5_in) == 4.5_in);          // T6.17
    CHECK(withStretcher(46_in, 8_in, 0.5_in) == 38.5_in); // T6.23
}

TEST_CASE("repeats that divide the width evenly", "[trimmings]") {
    CHECK(repeatsAcross(140_cm, 35_cm) == 4);  // T3.9
    CHECK(repeatsAcross(54_in, 27_in) == 2);   // T3.9
    CHECK(repeatsAcross(54_in, 13.5_in) == 4); // T3.8
    CHECK_FALSE(repeatsAcross(53_in, 13.5_in));
}
