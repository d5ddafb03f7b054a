#pragma once

#include "core/measure/length.h"

#include <vector>

namespace boltwright {

/// One axis of a layout whose boxes keep their order while their sides move: how wide can they all be together?
///
/// Positions p[0..n) with p[0] = 0 for the cloth itself. Each limit says p[to] - p[from] <= most. Each box has a low
/// and a high side.
struct SideLimit {
    int from = 0, to = 0;
    Length most;
};
struct BoxSides {
    int low = 0, high = 0;
};

/// Positions that keep every limit and make the sum of all boxes' widths (high - low) as large as it can be. `start`
/// must keep every limit. Exact: the linear programme's dual is a flow of least cost, one unit from each low side to
/// some high side, found by successive shortest paths from the potentials that `start` is (Ahuja, Magnanti & Orlin,
/// Network Flows, 1993, section 9.7). The widths must be bounded by the limits.
std::vector<Length> widest(const std::vector<Length> &start, const std::vector<SideLimit> &limits,
                           const std::vector<BoxSides> &boxes);

} // namespace boltwright
