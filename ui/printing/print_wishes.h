#pragma once

#include "core/paper/labels.h"
#include "core/yardage/staircase.h"
#include "ui/paper/page_extras.h"
#include "ui/paper/pages.h"

#include <memory>
#include <vector>

namespace boltwright::ui {

/// What is wanted on paper, and how.
struct PrintWishes {
    enum class What { CuttingSheet, Labels, TrueSize, ClientPage };
    What what = What::CuttingSheet;
    Paper paper = Paper::Letter;
    std::optional<bool> sideways;
    std::optional<int> scale;       ///< of the cutting sheet; none: what can be read
    bool onOnePage = false;         ///< in place of a scale
    std::optional<int> changedFrom; ///< index of the job's layout that lies on the table; none: no such page
    LabelGrid grid = slipsOn(Paper::Letter);
    int labelsUsed = 0;         ///< of the first sheet
    std::string panel;          ///< at true size, see `cutNamed`; empty: the whole layout
    std::vector<Staircase> why; ///< for the client's page
};

/// The pages as wished. Errors: why there can be none, in a sentence.
Result<std::shared_ptr<const Pages>> pagesFor(const Job &job, const Layout &layout, const PrintWishes &wishes);

} // namespace boltwright::ui
