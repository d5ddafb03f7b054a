#pragma once

#include "core/job/job.h"
#include "ui/paper/page_ink.h"

#include <QList>
#include <QRectF>

namespace boltwright::ui {

/// What the client reads beside the layout, as pages between the frame's top and bottom: the trimmings, each with what
/// it takes and whether that is there, and what was asked of the cloth and answered. No pages where there is nothing of
/// it.
QList<PageInk> besidePages(const Job &job, const Layout &layout, const QRectF &frame);

} // namespace boltwright::ui
