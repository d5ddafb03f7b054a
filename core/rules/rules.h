#pragma once

#include "core/cloth/place_set.h"
#include "core/job/job.h"
#include "core/rules/cut_shape.h"
#include "core/rules/phase.h"

#include <optional>
#include <string>
#include <vector>

/// The one place that knows what is allowed where. Planner, canvas and pages put their questions here. (`check` does
/// not: it judges this too.)
namespace boltwright {

/// How a panel is run on a cloth: its own wish, or as the cloth's pattern says.
Run runOf(const Panel &panel, const Cloth &cloth);

/// The turns in which a panel may lie on a cloth without a concession, best-liked first; one in which its motif asks
/// for a repeat that the cloth has not is left out (on another cloth than its own, `home`, a motif asks nothing there).
std::vector<Turn> turnsOf(const Panel &panel, const Cloth &home, const Cloth &cloth);

/// What the concession to turn a panel widens its choice to; and whether a motif finds the repeats it asks for then.
std::vector<Turn> widerTurns(Way way);
bool motifRepeats(const Panel &panel, const Cloth &cloth, Turn turn);

/// Where the lower left corner of a cut's box may lie as far as its own motif wish goes; free where it has none.
PlaceSet wishedPlaces(const Job &job, const Layout &layout, const LaidCut &cut);

/// The same, with every cut that shares a phase with it (alike, flow, matched joins) where the layout has it. None:
/// its partners contradict each other or the motif.
std::optional<PlaceSet> allowedPlaces(const Job &job, const Layout &layout, int cut);

/// The turns that remain to a cut beside partners that share a phase (and so the turn) with it.
std::vector<Turn> allowedTurns(const Job &job, const Layout &layout, int cut);

/// Edges on which the cut has less than its panel's full allowance, as concessions: trimmed where that is enough, else
/// a strip of other cloth is sewn on. Empty for every piece but a copy's first, which speaks for all.
std::vector<Concession> trimsOf(const Panel &panel, const Cut &cut);

/// A rule that a cut breaks where it lies, in the words of the trade, for the person who drags it.
struct Breach {
    enum class Kind { Cloth, Edge, Flaw, Neighbour, Turn, Motif, Alike, Flow, Allowance, Missing, AlreadyCut };
    Kind kind;
    int cut = -1;     ///< index into the layout's cuts; -1: the layout as a whole
    int other = -1;   ///< the neighbour or partner, where there is one
    std::string text; ///< "2 in too near the selvage"
    bool operator==(const Breach &) const = default;
};

/// Everything that is broken, in the layout's order.
std::vector<Breach> breaches(const Job &job, const Layout &layout);
/// What one cut breaks, where all are laid already (`layAll`), so that a drag asks about one cut alone.
std::vector<Breach> breachesOf(const Job &job, const Layout &layout, const std::vector<LaidCut> &laid, int cut);

/// Copies of panels that are not in the layout, whole or in part: what is put aside.
std::vector<LeftOut> putAside(const Job &job, const Layout &layout);

/// Whether no copy is missing: each lies on the cloth whole, or is left out for other cloth.
bool everythingLies(const Job &job, const Layout &layout);

/// Whether a cut could lie at its place as far as cloth, flaws and neighbours go; the quickest of these questions.
bool hasRoom(const Job &job, const Layout &layout, const std::vector<LaidCut> &laid, int cut);

} // namespace boltwright
