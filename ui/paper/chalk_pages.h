#pragma once

#include "ui/paper/page_ink.h"
#include "ui/picture/sheet_painter.h"

namespace boltwright::ui {

/// The list to chalk from as pages, between the given frame's top and bottom. Always at least one page.
QList<PageInk> chalkPages(const DrawnLayout &drawn, const QRectF &frame);

} // namespace boltwright::ui
