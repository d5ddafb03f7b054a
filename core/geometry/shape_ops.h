#pragma once

// The whole of what can be done with rings; each part may be included alone.
#include "core/geometry/convex_parts.h"
#include "core/geometry/distance.h"
#include "core/geometry/inset.h"
#include "core/geometry/laying.h"
#include "core/geometry/no_fit.h"
