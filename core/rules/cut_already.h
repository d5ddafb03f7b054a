#pragma once

#include "core/job/job.h"
#include "core/rules/cut_shape.h"

#include <optional>
#include <string>
#include <vector>

/// What is cut is cut in every layout of a job. A layout that was kept before the scissors went in may have such a
/// piece elsewhere, or other panels on the cloth that is gone: it is no longer possible, and has to say so.
namespace boltwright {

/// Whether both are the same piece of the same copy, cut from the same cloth the same way up (within the four ticks
/// that rounding may take).
bool isSameCut(const Job &job, const Layout &a, const Cut &inA, const Layout &b, const Cut &inB);

/// The cut's cloth is spoiled: a flaw of just its outline is there since it went wrong (`withCutGoneWrong`).
bool isSpoiled(const Job &job, const Layout &layout, const Cut &cut);

/// Pieces that one of the job's layouts has as cut and `layout` has not where they were cut: elsewhere, or not at all.
/// As they lay; each place once. Spoiled pieces are to be cut once more and are none of them. Pointers are into the
/// job. Empty, and quickly so, while nothing is cut.
std::vector<LaidCut> cutElsewhere(const Job &job, const Layout &layout);

/// Why the layout is no longer possible, as a sentence without a full stop; none: nothing that is cut speaks against
/// it.
std::optional<std::string> noLongerPossible(const Job &job, const Layout &layout);

} // namespace boltwright
