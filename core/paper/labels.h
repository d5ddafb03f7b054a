#pragma once

#include "core/base/result.h"
#include "core/job/job.h"
#include "core/paper/paper_size.h"

#include <optional>
#include <string>
#include <vector>

namespace boltwright {

/// A sheet of labels, told by its measures alone.
struct LabelGrid {
    Paper paper = Paper::Letter; ///< held upright
    int columns = 1, rows = 1;
    Length width, height;          ///< of one label
    Length fromLeft, fromTop;      ///< of the first label, from the sheet's edges
    Length everyAcross, everyDown; ///< from one label's edge to the next one's
    bool toCut = false;            ///< plain paper: lines to cut along are printed
    bool operator==(const LabelGrid &) const = default;
};

/// Why a grid cannot be printed, a sentence; nothing when it can.
std::optional<Fault> faultOf(const LabelGrid &grid);

/// Usual grids of label sheets on Letter and A4 (common practice, measures from memory: lay a print on the sheet and
/// hold both against the light before it is used).
std::vector<LabelGrid> usualLabelGrids();

/// Slips on a plain page, as many as can be read, with lines to cut along.
LabelGrid slipsOn(Paper paper);

/// "3 × 10 on Letter, 2 5/8 × 1 in".
std::string spokenGrid(const LabelGrid &grid, Unit unit);

/// Where the labels of one sheet lie, row by row.
std::vector<PaperBox> labelBoxes(const LabelGrid &grid);

/// What stands on the label of one piece.
struct PieceLabel {
    int number = 0; ///< in cutting order, as on the sheet and the chalk list
    std::string mark, name;
    std::string copy; ///< "2 of 3, piece 1 of 2"; empty for the only one
    bool mirrored = false;
    Length cutAcross, cutUp;
    std::string cloth; ///< name; empty where the job has only one
};

/// One label a cut, in cutting order.
std::vector<PieceLabel> pieceLabels(const Job &job, const Layout &layout);

} // namespace boltwright
