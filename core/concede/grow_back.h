#pragma once

#include "core/job/job.h"

namespace boltwright {

/// A layout whose cuts are trimmed more than they need be, with the trims given back: cuts keep their order on the
/// cloth, move where nothing ties them to the pattern, and grow to the largest sum of sides that this order allows;
/// whatever is not a rectangle grows where it lies. The result is right by `check` (or the layout as it came), its
/// list of trims brought up to date. Cuts that are locked, cut already or in pieces stay as they are.
Layout growBack(const Job &job, Layout layout);

/// What a layout has trimmed, summed over edges of all copies.
Length trimmedInAll(const Layout &layout);

} // namespace boltwright
