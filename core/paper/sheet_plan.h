#pragma once

#include "core/base/result.h"
#include "core/paper/cutting_order.h"
#include "core/paper/paper_size.h"

#include <string>
#include <vector>

namespace boltwright {

/// Room beside the drawn cloth of a strip, on paper.
struct StripEdges {
    static constexpr Length above = Length::ticks(3680); ///< 11.5 mm: a line of words, then the tape
    static constexpr Length below = Length::ticks(1600); ///< 5 mm: where to cut across
    static constexpr Length left = Length::ticks(2880);  ///< 9 mm: the tape across the width
};

/// A stretch of a bolt, or a remnant, on one page.
struct SheetStrip {
    std::size_t sheet = 0;                         ///< index into the cloth sheets
    Length from, to;                               ///< along the roll
    PaperPoint corner;                             ///< where the cloth's lowest x at `from` lies
    std::optional<Length> matchBefore, matchAfter; ///< where along the roll it is laid over its neighbours
    int before = 0, after = 0;                     ///< the numbers of those matches, from 1; 0: none
};

struct SheetPage {
    std::vector<SheetStrip> strips;
};

/// Where everything of a cutting sheet lies on paper.
struct SheetPlan {
    PaperSize paper; ///< as it is held
    bool sideways = false;
    int scale = 10;
    PaperBox heading; ///< title, client, scale, page
    PaperBox notes;   ///< test square, scale bar, key; beside the cloth when sideways, else below it
    std::vector<SheetPage> pages;
};

/// Divides the sheets over pages. A bolt that is longer than a page runs on with an overlap, in stretches about as long
/// as each other, at straight cuts where those are near enough. A scale that nobody chose: the largest of the usual
/// ones (1:8, 1:10, 1:16, 1:20; metric 1:10, 1:20) with which all is on one page, down to 1:10; else on two; else on
/// three; else the one that takes the fewest. Asked to be on one page, it is the largest whole scale for that. Errors:
/// too wide for the paper at that scale, or a scale that makes no sense; the sentence says what would do.
Result<SheetPlan> planSheet(const Job &job, const std::vector<ClothSheet> &sheets,
                            const std::vector<std::vector<Length>> &across, const SheetOptions &options);

/// The longest usual length of cloth whose scale bar is no wider than `room` on paper: 12 in, 1 yd, 50 cm, 1 m ...
Length scaleBar(Unit unit, int scale, Length room);
/// The side of the printed test square: 1 in or 25 mm.
Length testSquare(Unit unit);

} // namespace boltwright
