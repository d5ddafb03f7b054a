#pragma once

#include "core/base/result.h"
#include "core/job/job.h"
#include "core/paper/paper_size.h"

#include <filesystem>

namespace boltwright::ui {

/// Writes the cutting sheet as PDF: the cloth to scale, then the list to chalk from in cutting order. Needs a
/// QGuiApplication (offscreen will do), for the fonts. Errors: the file cannot be written, the layout has no cuts, or
/// the cloth is too wide for the paper at that scale; the sentence says what would do.
Result<void> writeCuttingSheet(const Job &job, const Layout &layout, const std::filesystem::path &file,
                               const SheetOptions &options = {});

} // namespace boltwright::ui
