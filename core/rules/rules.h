#pragma once

#include "core/cloth/place_set.h"
#include "core/job/job.h"

#include <string>
#include <vector>

/// The one place that knows what is allowed where. Planner, canvas and pages put their questions here. (`check` does
/// not: it judges this too.)
namespace boltwright {

/// The turns in which a panel may lie on a cloth without a concession, best-liked first; one whose motif asks for a
/// repeat that the cloth has not in that turn is left out.
std::vector<Turn> turnsOf(const Panel &panel, const Cloth &home, const Cloth &cloth);

/// The panel's cut outline as it will be cut: whole, or the piece's part of it, in the panel's frame.
PanelRing outlineOf(const Panel &panel, const Cut &cut, const Layout &layout);

/// Where the lower left corner of a cut's box may lie as far as its own motif wish goes; free where it has none.
PlaceSet wishedPlaces(const Job &job, const Panel &panel, const Cut &cut, const Layout &layout);

/// The same, with every copy that shares a phase with it (alike, flow, matched pieces) where the layout has it. None:
/// two of its partners contradict each other or the motif.
std::optional<PlaceSet> allowedPlaces(const Job &job, const Layout &layout, const Cut &cut);

/// A rule that a cut breaks where it lies, in the words of the trade, for the person who drags it.
struct Breach {
    enum class Kind { Cloth, Edge, Flaw, Neighbour, Turn, Motif, Alike, Flow, Allowance, Missing };
    Kind kind;
    int cut = -1;        ///< index into the layout's cuts; -1: the layout as a whole
    int other = -1;      ///< the neighbour or partner, where there is one
    std::string text;    ///< "2 in too near the selvage"
    bool operator==(const Breach &) const = default;
};

/// Everything that is broken, by cut; incremental use: pass the one cut that moved to ask about it alone.
std::vector<Breach> breaches(const Job &job, const Layout &layout);
std::vector<Breach> breachesOf(const Job &job, const Layout &layout, int cut);

} // namespace boltwright
