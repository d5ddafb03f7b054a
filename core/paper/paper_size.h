#pragma once

#include "core/geometry/polygon.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace boltwright {

/// Paper: x from the left edge, y down from the top edge.
struct PaperFrame {};
using PaperPoint = PointIn<PaperFrame>;
using PaperBox = BoxIn<PaperFrame>; ///< `low` is the upper left corner

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

/// The size as it is held.
PaperSize heldAs(Paper paper, bool sideways);
/// What can be printed of a paper.
PaperBox printable(PaperSize paper);

/// How a cutting sheet is made.
struct SheetOptions {
    Paper paper = Paper::Letter;
    std::optional<bool> sideways; ///< true: landscape; none: the way round that takes fewer pages
    std::optional<int> scale;     ///< 10 for 1:10; none: the largest of the usual ones that fits
    bool onOnePage = false;       ///< instead of a scale: the largest whole one at which all is on one page
    bool operator==(const SheetOptions &) const = default;
};

} // namespace boltwright
