#pragma once

#include "core/paper/labels.h"
#include "ui/paper/pages.h"

#include <memory>

namespace boltwright::ui {

/// Labels to pin on each piece: number, mark, name, copy, an arrow to its top, and the job. `firstLabel`: how many
/// labels of the first sheet are used already. Errors: the grid cannot be printed, or the layout has no cuts.
Result<std::shared_ptr<const Pages>> labelPages(const Job &job, const Layout &layout, const LabelGrid &grid,
                                                int firstLabel = 0);

} // namespace boltwright::ui
