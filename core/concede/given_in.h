#pragma once

#include "core/planner/build.h"

#include <optional>
#include <vector>

namespace boltwright {

/// One thing that a layout gives up: a concession, or a copy that is left out for other cloth.
struct GivenOne {
    Concession::Kind kind = Concession::Kind::Trim;
    planner::CopyKey copy;
    std::optional<int> edge; ///< of a trim or strip; none: all edges alike, or no edge is meant
    auto operator<=>(const GivenOne &) const = default;
};

/// Everything that the layout gives up, in order.
std::vector<GivenOne> givenIn(const Layout &layout);

/// The same as the planner is told it, but for one thing: to ask whether the rest would do.
planner::GivenUp allBut(const Job &job, const Layout &layout, const GivenOne &one);

} // namespace boltwright
