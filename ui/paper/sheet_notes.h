#pragma once

#include "core/paper/sheet_plan.h"
#include "ui/paper/page_ink.h"
#include "ui/picture/sheet_painter.h"

namespace boltwright::ui {

/// What stands beside the drawn cloth: the square and the bar to check the print with, what the lines mean, and, where
/// the cloth runs over several stretches, a small map of all of them with those of this page marked.
PageInk sheetNotes(const DrawnLayout &drawn, const SheetPlan &plan, const SheetPage &page);

} // namespace boltwright::ui
