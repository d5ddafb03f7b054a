#pragma once

#include "core/paper/changes.h"

#include <optional>

namespace boltwright::ui {

/// What a cutting sheet tells beyond the layout itself.
struct SheetExtras {
    std::optional<LayoutChanges> changes; ///< told on a page before all others, and beside each piece that it concerns
};

} // namespace boltwright::ui
