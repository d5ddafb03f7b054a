#include "core/trimmings/surcharge.h"

#include <catch2/catch.hpp>

// Rows "T..." are those of the trade notes in the shared folder (shared/TRADE.md), which name each publication.
// Lengths in inches unless said.

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("published tables, each by its own meaning of repeat", "[trimmings]") {
    using Table = SurchargeTable;
    struct Row {
        const char *row;
        Table table;
        ClothAsked cloth;
        int percent;
    };
    const Row r = GENERATE(values<Row>({
        {"T3.1", Table::SlipcoverShop, {54_in, 10_in, 17_in}, 20},
        {"T3.1 plain", Table::SlipcoverShop, {54_in, 0_in, 0_in}, 0},
        {"T3.1 sum 45", Table::SlipcoverShop, {54_in, 27_in, 18_in}, 30},
        {"T3.1 narrow", Table::SlipcoverShop, {50_in, 27_in, 27_in}, 45},
        {"T3.2", Table::Upholsterer, {54_in, 18_in, 13.5_in}, 25},
        {"T3.2 sum 45", Table::Upholsterer, {54_in, 27_in, 18_in}, 35},
        {"T3.2b", Table::Upholsterer, {54_in, 11.75_in, 18.5_in}, 25},
        {"T3.3a", Table::FurnitureHouse, {54_in, 0_in, 0_in, false}, 20},
        {"T3.3b", Table::FurnitureHouse, {54_in, 27_in, 13.5_in, true}, 25},
        {"T3.3c", Table::FurnitureHouse, {54_in, 27_in, 13.5_in, false}, 45},
        {"T3.3d", Table::FurnitureHouse, {36_in, 0_in, 0_in, true}, 60},
        {"T3.3e", Table::FurnitureHouse, {48_in, 14_in, 0_in, true}, 30},
        {"T3.3 as printed", Table::FurnitureHouse, {45_in, 19_in, 0_in, false}, 75},
        {"T3.3 flow", Table::FurnitureHouse, {54_in, 27_in, 0_in, true, true}, 40},
        {"T3.4", Table::MatchedOnly, {54_in, 27_in, 13.5_in}, 45},
        {"T3.4", Table::MatchedOnly, {54_in, 14_in, 3_in}, 35},
        {"T3.5", Table::YieldChart, {54_in, 13_in, 0_in}, 20},
        {"T3.5", Table::YieldChart, {54_in, 13.01_in, 0_in}, 33},
        {"T3.5", Table::YieldChart, {50_in, 27_in, 0_in}, 45},
        {"T3.5", Table::YieldChart, {36_in, 5_in, 0_in}, 105},
        {"T3.6", Table::CushionMaker, {54_in, 5_in, 9_in}, 10},
        {"T3.6", Table::CushionMaker, {54_in, 5_in, 9.01_in}, 15},
        {"T3.6", Table::CushionMaker, {54_in, 27_in, 27_in}, 35},
    }));
    CAPTURE(r.row);
    CHECK(surchargePercent(r.table, r.cloth) == r.percent);
    CHECK_FALSE(sourceOf(r.table).empty());
}

TEST_CASE("the worked examples beside the tables", "[trimmings]") {
    // A figure that falls between ticks goes up, its decimal in this test to the nearest: one tick apart at most.
    const auto is = [](Length a, Length b) { return a >= b && a - b <= Length::ticks(1); };
    CHECK(surcharged(8_yd, 20) == 345.6_in);   // T3.1: 9.6 yd
    CHECK(surcharged(7_yd, 25) == 315_in);     // T3.2: 8.75 yd
    CHECK(surcharged(10_yd, 20) == 12_yd);     // T3.3a
    CHECK(surcharged(10_yd, 25) == 450_in);    // T3.3b: 12.5 yd
    CHECK(surcharged(10_yd, 45) == 522_in);    // T3.3c: 14.5 yd
    CHECK(surcharged(10_yd, 60) == 16_yd);     // T3.3d
    CHECK(surcharged(10_yd, 30) == 13_yd);     // T3.3e
    CHECK(surcharged(8_yd, 45) == 417.6_in);   // T3.4: 11.6 yd
    CHECK(is(surcharged(8_yd, 35), 388.8_in)); // T3.4: 10.8 yd
    CHECK(is(surcharged(64_in, 10), 70.4_in)); // T3.6
}

TEST_CASE("beyond its columns a table says nothing", "[trimmings]") {
    CHECK_FALSE(surchargePercent(SurchargeTable::SlipcoverShop, {54_in, 30_in, 30_in}));
    CHECK_FALSE(surchargePercent(SurchargeTable::SlipcoverShop, {45_in, 10_in, 10_in}));
    CHECK_FALSE(surchargePercent(SurchargeTable::FurnitureHouse, {30_in, 10_in, 10_in}));
    CHECK_FALSE(surchargePercent(SurchargeTable::YieldChart, {54_in, 28_in, 0_in})); // "quote"
}
