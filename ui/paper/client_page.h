#pragma once

#include "core/base/result.h"
#include "core/job/job.h"
#include "core/paper/paper_size.h"

#include <filesystem>

namespace boltwright::ui {

/// Writes the client's page as PDF: one page, in plain words, with what is needed, what is given up for it, what it
/// costs, a place for the decision, and the cautions. Needs a QGuiApplication (offscreen will do), for the fonts.
/// Errors: the file cannot be written, or the layout has no cuts.
Result<void> writeClientPage(const Job &job, const Layout &layout, const std::filesystem::path &file,
                             Paper paper = Paper::Letter);

} // namespace boltwright::ui
