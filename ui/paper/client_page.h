#pragma once

#include "core/base/result.h"
#include "core/job/job.h"
#include "core/paper/paper_size.h"
#include "core/yardage/staircase.h"
#include "ui/paper/pages.h"

#include <filesystem>
#include <memory>
#include <vector>

namespace boltwright::ui {

/// The client's page: one page, in plain words, with the picture of the layout, what is needed and what the cloth
/// holds, what is given up, the choices with what each costs (the job's layouts), a place for the decision and a
/// signature, and the cautions. `why`: staircases to show, at most one a cloth; planning them is the caller's.
/// Needs a QGuiApplication (offscreen will do), for the
/// fonts. Errors: the layout has no cuts.
Result<std::shared_ptr<const Pages>> clientPage(const Job &job, const Layout &layout, Paper paper = Paper::Letter,
                                                const std::vector<Staircase> &why = {});

/// Writes it as PDF. Errors: as above, or the file cannot be written.
Result<void> writeClientPage(const Job &job, const Layout &layout, const std::filesystem::path &file,
                             Paper paper = Paper::Letter, const std::vector<Staircase> &why = {});

} // namespace boltwright::ui
