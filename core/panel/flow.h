#pragma once

#include "core/base/kept.h"
#include "core/geometry/point.h"

#include <optional>
#include <string>

namespace boltwright {

/// One end of a join over which the pattern runs on: an edge's middle or a point of the panel. With both, the point
/// is meant, and `edge` says which way the lost pattern goes.
struct FlowEnd {
    std::string panel;
    std::optional<int> edge;
    std::optional<PanelPoint> at;
    std::optional<int> copy; ///< none: copy k joins copy k, a single panel joins every copy
    bool operator==(const FlowEnd &) const = default;
};

/// The pattern runs on over a join: the points of both ends differ by a whole lattice step on every axis that repeats,
/// after the first was moved outwards from its edge by `lost`.
struct Flow {
    FlowEnd from, to;
    Length lost;
    Kept kept;
    bool operator==(const Flow &) const = default;
};

} // namespace boltwright
