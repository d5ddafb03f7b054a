#pragma once

#include "core/base/result.h"
#include "core/job/job.h"

#include <filesystem>

namespace boltwright::ui {

/// Writes a layout as an SVG picture in true millimetres, as it lies on the table: the cut end at the left, the left
/// selvage on top. The first bolt or remnant has its frame's origin at the picture's: a point of the picture is
/// (distance from the cut end, distance from the left selvage). Further ones lie below, each a group that says by how
/// much. One group a panel, with id, title and description. Needs a QGuiApplication (offscreen will do), for the fonts.
/// Errors: the file cannot be written, or the layout has no cuts; the sentence names the file.
Result<void> writeSvg(const Job &job, const Layout &layout, const std::filesystem::path &file);

/// The same picture as PNG, a tenth of true size at `dotsPerInch`. Errors also when it would be too large to make.
Result<void> writePng(const Job &job, const Layout &layout, const std::filesystem::path &file, int dotsPerInch = 150);

} // namespace boltwright::ui
