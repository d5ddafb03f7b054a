#pragma once

#include "core/base/result.h"
#include "core/job/job.h"

#include <array>
#include <optional>

/// A remnant measured in a photograph is not to be cut from on the photograph's word alone: half a percent of 80 in is
/// 0.4 in. Two lengths taped on the cloth itself confirm its scale, or put it right.
namespace boltwright {

/// Whether two taped lengths agree with the remnant as it stands, within half a percent. A remnant without a photograph
/// was measured on the cloth.
bool isScaleTaped(const Remnant &remnant);

/// Why nothing may be printed for cutting yet, naming the first remnant that the layout cuts from by its photograph
/// alone; none: nothing stands in the way.
std::optional<Fault> notTapedYet(const Job &job, const Layout &layout);

/// The remnant with outline, flaws, motif and photograph scaled, across and up the roll each on its own, so that both
/// taped lengths are what the tape says. Errors, as a sentence: a length shorter than a quarter of the remnant's long
/// side, two that lie nearly the same way, and a scale that would change by more than a twentieth, which is no matter
/// of scale any more.
Result<Remnant> scaledByTape(const Remnant &remnant, const std::array<TapedLength, 2> &taped);

} // namespace boltwright
