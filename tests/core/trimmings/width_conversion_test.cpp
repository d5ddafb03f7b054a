#include "core/trimmings/width_conversion.h"

#include <catch2/catch.hpp>

// Rows "T..." are those of the trade notes in the shared folder (shared/TRADE.md), which name each publication.
// Lengths in inches unless said.

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("cloth of another width, by area", "[trimmings]") {
    CHECK(roundedUp(convertedByArea(2_yd, 60_in, 45_in), 9_in) == 99_in); // T3.13: 2 3/4 yd to the quarter
    CHECK(convertedByArea(10_yd, 54_in, 48_in) == 405_in);                // T3.13: 11.25 yd
    CHECK(convertedByArea(10_yd, 54_in, 45_in) == 12_yd);
    CHECK(convertedByArea(10_yd, 54_in, 36_in) == 15_yd);
    CHECK(convertedByArea(10_yd, 54_in, 60_in) == 9_yd);
}

TEST_CASE("the printed chart", "[trimmings]") {
    CHECK(convertedByChart(49.5_in, 54_in, 36_in) == 2_yd); // T3.14: 1 3/8 of 54 is 2 of 36
    CHECK(convertedByChart(2_yd, 36_in, 54_in) == 49.5_in);
    CHECK(convertedByChart(5_yd, 36_in, 66_in) == 99_in); // T3.14, last row: 2 3/4
    CHECK_FALSE(convertedByChart(6_yd, 36_in, 54_in));
    CHECK_FALSE(convertedByChart(1_yd, 30_in, 54_in));
}

TEST_CASE("from 36 in to 54 in cloth, chart and area agree to a quarter of a yard", "[trimmings]") {
    // T3.14. Every row's need in 36 in cloth, turned into 54 in cloth by area, against what the chart prints there. The
    // chart goes in eighths and by the habits of garment makers, so that large needs come out lower than by area.
    for (const auto &row : conversionChart().eighthYards) {
        REQUIRE(row.size() == conversionChart().widths.size());
        const Length byArea = convertedByArea(4.5_in * row[0], 36_in, 54_in);
        CHECK(abs(byArea - 4.5_in * row[5]) <= 9_in);
    }
}

TEST_CASE("in the printed chart wider cloth never takes more, and a larger need never less", "[trimmings]") {
    const auto &rows = conversionChart().eighthYards;
    for (std::size_t i = 0; i < rows.size(); ++i)
        for (std::size_t k = 0; k < rows[i].size(); ++k) {
            if (k > 0) CHECK(rows[i][k] <= rows[i][k - 1]);
            if (i > 0) CHECK(rows[i][k] >= rows[i - 1][k]);
        }
}
