#pragma once

#include "core/paper/changes.h"

#include <QString>
#include <QStringList>

#include <optional>
#include <vector>

namespace boltwright::ui {

/// Something further to say on a page, in words that are ready: trimmings and what else goes with the job.
struct PageSection {
    QString heading;
    QStringList lines;
};

/// What a cutting sheet tells beyond the layout itself.
struct SheetExtras {
    std::optional<LayoutChanges> changes; ///< told on a page before all others, and beside each piece that it concerns
    std::vector<PageSection> sections;    ///< after the panels of the chalk list
};

} // namespace boltwright::ui
