#pragma once

#include "core/job/layout.h"
#include "core/panel/panel.h"

#include <vector>

namespace boltwright {

/// Cut lengths of a copy's pieces in order of piece, `seam` at each joined end included; empty for a whole cut.
std::vector<Length> pieceLengths(const Layout &layout, const std::string &panel, int copy);

/// Whether a panel is a strip that goes round a piece, as a border or a boxing does: a rectangle at least four times as
/// long as it is deep, whose joins need not be balanced (common practice, no source).
bool goesRound(const Panel &panel);

/// How long the first piece of a strip that goes round must be for no join to be seen from the front: three fifths of
/// the whole. Round a square box that is its front and, on both sides, most of the way to the back.
Length leastFront(Length whole);

/// Whether a strip that goes round has its joins at the back, out of sight: one long piece at the front, and the rest.
/// The lengths of the pieces say so themselves. `lengths`: cut lengths in order of piece.
bool joinedAtBack(const Panel &panel, const std::vector<Length> &lengths);

} // namespace boltwright
