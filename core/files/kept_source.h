#pragma once

#include "core/base/kept.h"
#include "core/files/json.h"

namespace boltwright {

/// The object that a part was read from. Lists of parts in it are empty, since each part keeps its own.
struct Kept::Source {
    Json object;
};

} // namespace boltwright
