#pragma once

#include "core/forms/piece_form.h"
#include "core/job/job.h"
#include "core/trimmings/trade_rules.h"

namespace boltwright {

/// The panels of a measured piece and where the pattern runs on between them, ready for a job.
struct FormPanels {
    std::vector<Panel> panels;
    std::vector<Flow> flows;
    bool operator==(const FormPanels &) const = default;
};

/// Makes panels of what was measured. Every size is to be greater than zero (see `doubtsOf`); a part that is not there,
/// or has no measures, makes none.
///
/// Allowances come from the kind of each edge, and what they may shrink to as well; where an edge is tucked in, a strip
/// of other cloth may be sewn on. Hidden parts may be turned and cut from another cloth. A box cushion makes plates
/// (`id`, and `id`-under for the underside), the front of its boxing (`id`-front), its sides (`id`-side) and zipper
/// bands (`id`-zip); a knife-edge cushion two plates a piece; a skirt its panels (`id`-front, `id`-side) and the
/// underlays of its pleats (`id`-underlay). A mirrored pair whose right one has measures of its own makes two panels
/// (`id`-left, `id`-right).
///
/// `cloth` is the one they are to be cut from: without a pattern nothing is asked of motifs, flows and joins, and of
/// stripes a motif is asked only on the axis that repeats.
FormPanels panelsFrom(const PieceForm &form, const FormMeasures &measures, const TradeRules &rules, const Cloth &cloth);

} // namespace boltwright
