#pragma once

#include "core/rules/phase.h"

#include <optional>

namespace boltwright {

/// Why the pattern does not run on over a join that was asked for.
struct PatternMiss {
    enum class Why { OffPattern, Turned, OtherCloth };
    Why why = Why::OffPattern;
    Length by; ///< how far it misses, on the worse of the axes that repeat; zero where it lies turned or on other cloth
    bool operator==(const PatternMiss &) const = default;
};

/// How the two cuts of a link lie with regard to each other; none: the pattern runs on, or there is none. Says the same
/// as `breaches` for cuts that the layout does not free.
std::optional<PatternMiss> missOf(const Job &job, const std::vector<LaidCut> &laid, const PhaseLink &link);

/// Every link that was asked for, those of cuts freed by a concession too: what was given up is seen all the same.
std::vector<PhaseLink> linksAskedFor(const Job &job, Layout layout);

} // namespace boltwright
