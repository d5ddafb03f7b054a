#pragma once

#include "core/job/job.h"

#include <string>
#include <vector>

namespace boltwright {

/// One way in which a layout breaks the contract.
struct Finding {
    enum class Kind {
        Missing,
        Cloth,
        Edge,
        Flaw,
        Overlap,
        Turn,
        Motif,
        Alike,
        Flow,
        Allowance,
        Pieces,
        Mirror,
        Conceded,
        Figures
    };
    Kind kind;
    std::string panel; ///< the panel concerned; empty: the layout as a whole
    int copy = 0;
    int piece = 0;
    std::string text; ///< one sentence in the trade's words, English
    bool operator==(const Finding &) const = default;
};

/// Judges a finished layout by the contract alone. Restates every rule in the plainest way; shares nothing with the
/// rules that planner and canvas ask, so that a mistake there is caught here. Plain data in, plain findings out, any
/// thread. Empty: the layout is right. Tolerance: 4 ticks on a place or motif, 8 on a gap or a remnant's edge.
std::vector<Finding> check(const Job &job, const Layout &layout);

/// Why a layout cannot be cut at all, whatever else may be said against it: a cut reaches off the cloth or over its
/// usable edge, or two overlap. The first such finding's text; empty: none.
std::string whyNotToBeCut(const Job &job, const Layout &layout);

} // namespace boltwright
