#pragma once

#include "core/trimmings/ratio.h"

#include <optional>
#include <vector>

namespace boltwright {

/// Cloth of another width, estimated by area: old length × old width ÷ new width, rounded up to a tick (T3.13). Too
/// little where large parts stop pairing across; lay the job out to know.
Length convertedByArea(Length length, Length oldWidth, Length newWidth);

/// A printed chart that says the same for garments (T3.14: greenspun.com copy of an extension sheet; its first row is
/// garbled and left out). Each row is one need, in eighths of a yard by width.
struct ConversionChart {
    std::vector<Length> widths;                ///< the widest cloth of each column
    std::vector<std::vector<int>> eighthYards; ///< rows
};
const ConversionChart &conversionChart();

/// What the chart gives for cloth `newWidth` wide in the first row that holds `length` of cloth `oldWidth` wide. A
/// width between two columns counts as the narrower. None beyond the chart.
std::optional<Length> convertedByChart(Length length, Length oldWidth, Length newWidth);

} // namespace boltwright
