#include "core/trimmings/surcharge.h"

#include "core/base/ensure.h"

#include <algorithm>
#include <vector>

namespace boltwright {
namespace {

using namespace literals;

/// The last repeat that a column holds, and what it adds.
struct Column {
    Length upTo;
    int percent;
};

std::optional<int> lookUp(Length repeat, const std::vector<Column> &columns) {
    for (const Column &c : columns)
        if (repeat <= c.upTo) return c.percent;
    return std::nullopt;
}

Length wholeInches(Length repeat) { return roundedUp(repeat, 1_in); }

std::optional<int> slipcoverShop(const ClothAsked &cloth) {
    const Length sum = wholeInches(cloth.along + cloth.across);
    // Below three inches nothing is added (T3.7).
    const auto percent =
        lookUp(sum, {{2_in, 0}, {14_in, 10}, {19_in, 15}, {27_in, 20}, {36_in, 25}, {45_in, 30}, {54_in, 35}});
    if (!percent || cloth.width < 50_in) return std::nullopt;
    return *percent + (cloth.width < 54_in ? 10 : 0);
}

std::optional<int> upholsterer(const ClothAsked &cloth) {
    return lookUp(wholeInches(cloth.along + cloth.across),
                  {{2_in, 0}, {14_in, 10}, {19_in, 15}, {27_in, 20}, {36_in, 25}, {43_in, 30}, {51_in, 35}});
}

std::optional<int> furnitureHouse(const ClothAsked &cloth) {
    struct Row {
        Length width;
        std::array<int, 5> railroaded, upRoll;
    };
    // The 45 in row's third figure up the bolt is ten more, not twenty, in the source itself.
    static const std::array<Row, 5> rows = {{{54_in, {0, 15, 20, 25, 35}, {20, 35, 40, 45, 55}},
                                             {50_in, {15, 20, 30, 35, 40}, {35, 40, 50, 55, 60}},
                                             {48_in, {20, 30, 35, 45, 60}, {40, 50, 55, 65, 80}},
                                             {45_in, {50, 60, 65, 70, 80}, {70, 80, 75, 90, 100}},
                                             {36_in, {60, 65, 70, 80, 100}, {80, 85, 90, 100, 120}}}};
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const Row &r) { return cloth.width >= r.width; });
    const Length largest = std::max(cloth.along, cloth.across);
    if (row == rows.end()) return std::nullopt;
    const auto &figures = cloth.railroaded ? row->railroaded : row->upRoll;
    const std::optional<int> percent = lookUp(
        wholeInches(largest),
        {{1_in, figures[0]}, {14_in, figures[1]}, {19_in, figures[2]}, {27_in, figures[3]}, {36_in, figures[4]}});
    if (!percent) return std::nullopt;
    return *percent + (cloth.flow ? 15 : 0);
}

std::optional<int> matchedOnly(const ClothAsked &cloth) {
    // 25 in stands in two columns of the source; the larger figure is on the safe side.
    const Length largest = wholeInches(std::max(cloth.along, cloth.across));
    return lookUp(largest, {{1_in, 0}, {14_in, 35}, {24_in, 40}, {27_in, 45}, {36_in, 50}});
}

std::optional<int> yieldChart(const ClothAsked &cloth) {
    const Length largest = std::max(cloth.along, cloth.across);
    if (cloth.width >= 54_in) return lookUp(largest, {{13_in, 20}, {27_in, 33}});
    if (cloth.width >= 48_in) return lookUp(largest, {{13_in, 30}, {27_in, 45}});
    if (cloth.width >= 36_in) return lookUp(largest, {{13_in, 105}, {27_in, 115}});
    return std::nullopt;
}

std::optional<int> cushionMaker(const ClothAsked &cloth) {
    return lookUp(cloth.along + cloth.across,
                  {{2_in, 0}, {14_in, 10}, {19_in, 15}, {27_in, 20}, {36_in, 25}, {45_in, 30}, {Length::limit(), 35}});
}

} // namespace

std::string_view sourceOf(SurchargeTable table) {
    switch (table) {
    case SurchargeTable::SlipcoverShop:
        return "carrscorner.com, additional yardage for patterned fabric";
    case SurchargeTable::Upholsterer:
        return "throwmeapillow.com, upholsterer's repeat chart (2015)";
    case SurchargeTable::FurnitureHouse:
        return "Bailey Brook Home, requirements for a customer's own material";
    case SurchargeTable::MatchedOnly:
        return "Gabby, form for a customer's own material";
    case SurchargeTable::YieldChart:
        return "docslib.org document 1593984, fabric yield chart, maker not named";
    case SurchargeTable::CushionMaker:
        return "cushionsource.com, cushion fabric yardage guide";
    }
    ensure(false, "a table that is not in the list");
    return {};
}

std::optional<int> surchargePercent(SurchargeTable table, const ClothAsked &cloth) {
    switch (table) {
    case SurchargeTable::SlipcoverShop:
        return slipcoverShop(cloth);
    case SurchargeTable::Upholsterer:
        return upholsterer(cloth);
    case SurchargeTable::FurnitureHouse:
        return furnitureHouse(cloth);
    case SurchargeTable::MatchedOnly:
        return matchedOnly(cloth);
    case SurchargeTable::YieldChart:
        return yieldChart(cloth);
    case SurchargeTable::CushionMaker:
        return cushionMaker(cloth);
    }
    ensure(false, "a table that is not in the list");
    return std::nullopt;
}

} // namespace boltwright
