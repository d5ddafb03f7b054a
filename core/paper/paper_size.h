#pragma once

#include "core/measure/length.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace boltwright {

/// The papers that pages are made for.
enum class Paper { Letter, A4, Legal, A3, Tabloid };

struct PaperSize {
    Length width, height;
    bool operator==(const PaperSize &) const = default;
};

/// Upright. A4 and A3 as ISO 216 says; Letter 8 1/2 x 11 in, Legal 8 1/2 x 14, Tabloid 11 x 17 (ANSI/ASME Y14.1 A and
/// B for the first and last; from memory).
PaperSize sizeOf(Paper paper);

std::vector<Paper> allPapers();
std::string nameOf(Paper paper);                        ///< "Letter", "A4", ...
std::optional<Paper> paperNamed(std::string_view name); ///< in capitals or not

/// What every printer can print: nothing is drawn nearer to the paper's edge.
constexpr Length paperMargin() { return Length::ticks(10 * 320); }

/// How a cutting sheet is made.
struct SheetOptions {
    Paper paper = Paper::Letter;
    std::optional<bool> sideways; ///< true: landscape; none: the way round that takes fewer pages
    std::optional<int> scale;     ///< 10 for 1:10; none: the largest of the usual ones that fits
    bool operator==(const SheetOptions &) const = default;
};

} // namespace boltwright
