#pragma once

#include "core/forms/piece_form.h"
#include "core/job/job.h"
#include "core/trimmings/trade_rules.h"

namespace boltwright {

/// The edges that carry trimming, added up; what is ordered for them is the business of core/trimmings.
struct TrimList {
    Length welt;       ///< edges sewn with a welt, each once, as the form marks them; box cushions twice round (T5.31)
    int weltJoins = 0; ///< one a closed run or edge: where the welt begins and ends
    Length doubleWelt, gimp, cord, nails;
    bool operator==(const TrimList &) const = default;
};

TrimList trimsOf(const PieceForm &form, const FormMeasures &measures, const TradeRules &rules);

/// Strips for welt as a panel of the job, cut from selvage to selvage: as many as `need` takes, each join costing a
/// strip's width (joined on the slant). None where nothing is needed or a strip is no longer than a join.
std::optional<Panel> weltPanel(Length need, Length stripWidth, Length usableWidth);

} // namespace boltwright
