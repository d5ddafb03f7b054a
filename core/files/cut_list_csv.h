#pragma once

#include "core/base/result.h"
#include "core/job/job.h"

#include <string>
#include <string_view>
#include <vector>

namespace boltwright {

/// The cut list as a spreadsheet shows it: one row a panel, and a heading over every column that a person understands:
/// "Mark", "Name", "Count", "Side to side (in)", "Up and down (in)", "Add at top (in)" and so on; the whole list stands
/// in cut_list_csv.cpp. Columns that no panel needs are left out, and those that are left out say nothing.
struct CutList {
    std::vector<Panel> panels;
    std::vector<std::string> unused; ///< headings that mean nothing here; their cells were not read
};

/// Reads a cut list. Separators and quoting as in `readCsv`; headings in any order, upper or lower case, and by other
/// names the trade uses ("Qty", "Width"). A bare number is in the unit that stands in brackets in its heading, else in
/// `unit`; a length may be written as by hand: 36 1/2, 36-1/2, 92,5, 3' 2". Empty rows are passed over. A panel
/// without an id of its own gets one from its name or mark. What is read keeps the input rules as far as they are about
/// panels alone; whether a cloth or its pattern is there is for the job to say. Errors name row and column, in one
/// line: "row 4, column D (Side to side): "2o" is not a length; write one such as 20 1/2".
Result<CutList> readCutList(std::string_view text, Unit unit);

/// Whether the first row that holds anything looks like the headings of a cut list: at least two of them are known.
bool hasCutListHeadings(std::string_view text);

/// Writes a cut list; `readCutList` gives back the same panels, but for control characters in their texts and for what
/// `Kept` carries. `separator` is a comma, a semicolon or a tab.
std::string writeCutList(const std::vector<Panel> &panels, Unit unit, char separator = ',');

} // namespace boltwright
