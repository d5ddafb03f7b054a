#pragma once

#include "core/paper/cutting_order.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace boltwright {

/// The motif that a cut is chalked from. Counted from 1: columns from the left selvage (a remnant: its left edge), a
/// column's motifs from the cut end, in both cases from the first whole one past what is not cut from. How large a
/// figure is nobody tells; one that is half as wide as its repeat counts as whole where all of it is there (common
/// practice, no source), and the list says where the first lies. Less than 1: one before that. Woven repeats drift
/// along a roll, so this, not the distance from the end, is what the chalk goes by.
struct MotifSeat {
    std::optional<int> column; ///< none: the pattern does not repeat across
    std::optional<int> row;    ///< none: it does not repeat along
    ClothPoint at;             ///< where the job says that motif sits; on an axis without repeat, level with the cut
    Vector corner;             ///< from there to the corner of the cut nearest to selvage and cut end
    bool held = false;         ///< the panel was asked to sit on it
    bool operator==(const MotifSeat &) const = default;
};

/// One panel to chalk and cut, with all that is written beside its tick box.
struct ChalkRow {
    int number = 0; ///< in cutting order, through all bolts and remnants
    int cut = 0;    ///< index into the layout's cuts
    std::string mark, name;
    int copy = 1, copies = 1, piece = 1, of = 1;
    bool mirrored = false;
    bool alreadyCut = false;
    Length cutAcross, cutUp;           ///< of the box around the cut outline, as the panel is seen on the furniture
    Length measuredAcross, measuredUp; ///< of the measured shape; of a piece: the whole panel's
    std::vector<Length> allowances;    ///< by edge
    /// Of the cut's corner nearest to the left selvage and the cut end; on a remnant from its own leftmost point and
    /// end.
    Length fromSelvage, fromEnd;
    Turn turn = Turn::Deg0;
    std::optional<MotifSeat> motif;
    std::vector<std::string> conceded; ///< in words
    bool operator==(const ChalkRow &) const = default;
};

struct ChalkSheet {
    std::string cloth;
    std::optional<std::string> on;
    std::vector<Length> across; ///< straight cuts across the full width, before any panel
    std::vector<ChalkRow> rows;
    /// Where the first whole motif lies that is counted, from the sheet's own corner; with a drop, in the first column.
    std::optional<Length> firstColumn, firstRow;
    bool operator==(const ChalkSheet &) const = default;
};

/// The list to chalk from, in cutting order (see CuttingOrder for the rule): what is already cut, then the rest.
std::vector<ChalkSheet> chalkList(const Job &job, const Layout &layout);

/// The motif nearest to where a cut was asked to sit (its middle where nothing was asked), level with it on the axes
/// that were asked. None on cloth without a pattern.
std::optional<MotifSeat> motifSeat(const Job &job, const Layout &layout, const ClothSheet &sheet, const SheetCut &cut);

/// The list as comma-separated values (RFC 4180, UTF-8, a header line, decimals in the job's unit).
std::string chalkCsv(const Job &job, const std::vector<ChalkSheet> &list);

} // namespace boltwright
