#pragma once

#include "core/cloth/place_set.h"
#include "core/rules/cut_shape.h"

#include <optional>
#include <vector>

/// Which cuts must show the same part of the repeat: copies that are alike, pattern that flows over a join, pieces
/// whose joins match.
namespace boltwright {

/// Two points, one on each of two cuts, that must come to lie in the same phase of the pattern; both cuts then lie
/// with the same turn, on the same cloth.
struct PhaseLink {
    enum class Kind { Alike, Flow, Join };
    Kind kind = Kind::Alike;
    int a = 0, b = 0;    ///< indices into the layout's cuts
    PanelPoint atA, atB; ///< each in the frame of its own panel; what is lost in the join is already added
};

/// Every link between cuts that the layout has. Cuts freed by a concession (off centre) have none.
std::vector<PhaseLink> phaseLinks(const Job &job, const Layout &layout);

/// Which copies a join brings together: copy k joins copy k, a single panel joins every copy, unless the join names
/// one.
bool joinsCopies(const Flow &flow, const Panel &from, const Panel &to, int copyFrom, int copyTo);
/// The point of the panel at which that end of a join lies.
PanelPoint pointOf(const Panel &panel, const FlowEnd &end);

/// The cut left the motif by leave and by the layout's own list.
bool isOffCentre(const Job &job, const Layout &layout, const Cut &cut);

} // namespace boltwright
