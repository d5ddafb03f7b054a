#pragma once

#include "core/base/result.h"
#include "core/yardage/staircase.h"
#include "ui/picture/surface.h"

#include <QRectF>

#include <filesystem>

namespace boltwright::ui {

/// Where each step of a staircase was painted, from the first to the last: for a click on it.
using StairRows = QList<QRectF>;

/// Paints a staircase into `area`: one bar a step, each beginning where the one before ended, its name at the left,
/// what it adds at the right; steps that are nothing are left out. In the surface's units. Reads in greyscale too.
StairRows paintStaircase(Surface &surface, const QRectF &area, const Staircase &stairs, Unit unit);

/// The same as an SVG picture, 180 mm wide. Needs a QGuiApplication, for the fonts. Errors name the file.
Result<void> writeStaircaseSvg(const Staircase &stairs, Unit unit, const std::filesystem::path &file);

/// What a step adds, in words: "2 yd 4 in", or "up to 3 in" where search noise may be in it.
QString shownStep(const Stair &stair, Unit unit);
QString shownName(StairKind kind);

} // namespace boltwright::ui
