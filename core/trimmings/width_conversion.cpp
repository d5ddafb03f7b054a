#include "core/trimmings/width_conversion.h"

#include "core/geometry/exact.h"

namespace boltwright {
namespace {

using namespace literals;

Length eighths(int count) { return Length::ticks(std::int64_t(count) * 36 * 8128 / 8); }

std::optional<std::size_t> columnOf(Length width) {
    // The first column is "35-36", "41-42" and so on: cloth belongs to the widest column that it reaches the low end
    // of.
    static const std::vector<Length> from = {35_in, 39_in, 41_in, 44_in, 50_in, 52_in, 58_in, 66_in};
    std::optional<std::size_t> found;
    for (std::size_t i = 0; i < from.size(); ++i)
        if (width >= from[i]) found = i;
    return found;
}

} // namespace

Length convertedByArea(Length length, Length oldWidth, Length newWidth) {
    const Wide area = Wide(length.ticks()) * oldWidth.ticks();
    return Length::ticks(std::int64_t((area + newWidth.ticks() - 1) / newWidth.ticks()));
}

const ConversionChart &conversionChart() {
    static const ConversionChart chart = {{36_in, 39_in, 42_in, 45_in, 50_in, 54_in, 60_in, 66_in},
                                          {{16, 14, 14, 13, 12, 11, 10, 9},
                                           {18, 16, 16, 14, 13, 12, 11, 10},
                                           {20, 18, 18, 17, 14, 14, 13, 12},
                                           {23, 20, 20, 18, 16, 15, 14, 13},
                                           {25, 22, 22, 20, 18, 16, 15, 14},
                                           {27, 24, 23, 22, 19, 18, 16, 15},
                                           {30, 26, 25, 23, 21, 19, 18, 17},
                                           {34, 28, 27, 25, 22, 21, 19, 18},
                                           {40, 34, 33, 31, 27, 25, 23, 22}}};
    return chart;
}

std::optional<Length> convertedByChart(Length length, Length oldWidth, Length newWidth) {
    const auto from = columnOf(oldWidth), to = columnOf(newWidth);
    if (!from || !to) return std::nullopt;
    for (const auto &row : conversionChart().eighthYards)
        if (length <= eighths(row[*from])) return eighths(row[*to]);
    return std::nullopt;
}

} // namespace boltwright
