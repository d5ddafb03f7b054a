#include "core/paper/labels.h"

#include "core/base/language.h"
#include "core/measure/length_text.h"
#include "core/paper/chalk_list.h"
#include "core/paper/words.h"

#include <fmt/format.h>

namespace boltwright {
using namespace literals;
namespace {

constexpr Length leastWidth = 25_mm, leastHeight = 12_mm; // below, mark and name cannot be read

Length reach(Length from, int count, Length every, Length one) { return from + every * (count - 1) + one; }

} // namespace

std::optional<Fault> faultOf(const LabelGrid &grid) {
    const PaperSize paper = sizeOf(grid.paper);
    const auto no = [](std::string text) { return std::optional(Fault{std::move(text)}); };
    if (grid.columns < 1 || grid.rows < 1 || grid.columns > 20 || grid.rows > 50)
        return no(phrase("a sheet of labels has 1 to 20 columns and 1 to 50 rows"));
    if (grid.width < leastWidth || grid.height < leastHeight)
        return no(phrase("a label under 25 × 12 mm cannot be read; write the size of one label, width first"));
    if (grid.fromLeft < Length{} || grid.fromTop < Length{}) return no(phrase("the first label begins on the sheet"));
    if ((grid.columns > 1 && grid.everyAcross < grid.width) || (grid.rows > 1 && grid.everyDown < grid.height))
        return no(phrase("labels lie over each other: from one label to the next is at least a label's own size"));
    if (reach(grid.fromLeft, grid.columns, grid.everyAcross, grid.width) > paper.width ||
        reach(grid.fromTop, grid.rows, grid.everyDown, grid.height) > paper.height)
        return no(phrase("%1 × %2 labels of that size reach beyond %3 paper",
                         {std::to_string(grid.columns), std::to_string(grid.rows), nameOf(grid.paper)}));
    return std::nullopt;
}

std::vector<LabelGrid> usualLabelGrids() {
    return {
        {Paper::Letter, 3, 10, 2.625_in, 1_in, 0.1875_in, 0.5_in, 2.75_in, 1_in},
        {Paper::Letter, 2, 7, 4_in, Length::ticks(10837), 0.15625_in, Length::ticks(6773), 4.1875_in,
         Length::ticks(10837)},
        {Paper::Letter, 2, 5, 4_in, 2_in, 0.15625_in, 0.5_in, 4.1875_in, 2_in},
        {Paper::A4, 3, 8, 70_mm, 37_mm, 0_mm, 0.5_mm, 70_mm, 37_mm},
        {Paper::A4, 3, 7, 63.5_mm, 38.1_mm, 7.25_mm, 15.15_mm, 66_mm, 38.1_mm},
        {Paper::A4, 2, 7, 99.1_mm, 38.1_mm, 4.65_mm, 15.15_mm, 101.6_mm, 38.1_mm},
        {Paper::A4, 2, 4, 105_mm, 74_mm, 0_mm, 0.5_mm, 105_mm, 74_mm},
    };
}

LabelGrid slipsOn(Paper paper) {
    const PaperBox room = printable(sizeOf(paper));
    const auto most = [](Length all, Length one) { return int(all.ticks() / one.ticks()); };
    LabelGrid grid;
    grid.paper = paper;
    grid.columns = most(room.width(), 60_mm);
    grid.rows = most(room.height(), 32_mm);
    grid.width = Length::ticks(room.width().ticks() / grid.columns);
    grid.height = Length::ticks(room.height().ticks() / grid.rows);
    grid.fromLeft = room.low.x;
    grid.fromTop = room.low.y;
    grid.everyAcross = grid.width;
    grid.everyDown = grid.height;
    grid.toCut = true;
    return grid;
}

std::string spokenGrid(const LabelGrid &grid, Unit unit) {
    return phrase("%1 × %2 on %3, %4",
                  {std::to_string(grid.columns), std::to_string(grid.rows), nameOf(grid.paper),
                   localised(fmt::format("{} {}", spokenSize(grid.width, grid.height, unit), nameOf(unit)))});
}

std::vector<PaperBox> labelBoxes(const LabelGrid &grid) {
    std::vector<PaperBox> boxes;
    for (int row = 0; row < grid.rows; ++row)
        for (int column = 0; column < grid.columns; ++column) {
            const PaperPoint low{grid.fromLeft + grid.everyAcross * column, grid.fromTop + grid.everyDown * row};
            boxes.push_back({low, low + Vector{grid.width, grid.height}});
        }
    return boxes;
}

std::vector<PieceLabel> pieceLabels(const Job &job, const Layout &layout) {
    std::vector<PieceLabel> labels;
    for (const ChalkSheet &sheet : chalkList(job, layout))
        for (const ChalkRow &row : sheet.rows)
            labels.push_back({row.number, row.mark, row.name, copyWords(row), row.mirrored, row.cutAcross, row.cutUp,
                              job.cloths.size() > 1 ? sheetName(job, sheet.cloth, {}) : std::string()});
    return labels;
}

} // namespace boltwright
