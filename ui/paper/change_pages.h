#pragma once

#include "core/measure/unit.h"
#include "core/paper/changes.h"
#include "ui/paper/page_ink.h"

namespace boltwright::ui {

/// What has changed since the sheet that lies on the table: new flaws, what moved from where to where, what is new,
/// what stays. Always at least one page.
QList<PageInk> changePages(const LayoutChanges &changes, Unit unit, const QRectF &frame);

} // namespace boltwright::ui
