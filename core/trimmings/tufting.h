#pragma once

#include "core/measure/length.h"

namespace boltwright {

/// What tufts and channels take beyond the flat measure. Plain geometry from depth and spacing (common practice, no
/// source): cloth is taken to run straight down to each button and up again, or round each channel's arc. Fillings
/// differ; a sample tuft settles it. All rounded up to a tick.

/// One row of buttons `spacing` (> 0) apart and `depth` deep: the cloth from button to button, 2·√((spacing/2)² +
/// depth²).
Length overOneTuft(Length spacing, Length depth);

/// A flat measure that is tufted: so many whole spaces of it, each with its extra; what is left over stays flat.
Length tuftedLength(Length flat, Length spacing, Length depth);

/// One channel `width` (> 0) wide that stands `height` proud: the arc of the circle through its ends and crown, or
/// where it is higher than half its width, a half circle on straight sides.
Length overOneChannel(Length width, Length height);

/// A flat measure across whole channels; what is left over stays flat.
Length channelledLength(Length flat, Length width, Length height);

} // namespace boltwright
