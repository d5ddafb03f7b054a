#include "core/trimmings/repeat.h"

#include <algorithm>

namespace boltwright {
namespace {

/// Halves counted, so that nothing is rounded before the end: `halves`·repeat/2.
Length halfRepeats(std::int64_t halves, Length repeat) { return timesUp(repeat, {halves, 2}); }

/// The least odd number of half repeats that holds `needed`.
std::int64_t oddHalves(Length needed, Length repeat) {
    const std::int64_t halves = timesNeeded(needed * 2, repeat);
    return halves % 2 == 1 ? halves : halves + 1;
}

} // namespace

Length halfDropCut(Length needed, Length repeat) { return halfRepeats(oddHalves(needed, repeat), repeat); }

Length halfDropRun(int count, Length needed, Length repeat) {
    if (count <= 1) return count == 1 ? needed : Length{};
    const Length alternating = halfRepeats(count * oddHalves(needed, repeat), repeat);
    const Length parted = halfRepeats(count * 2 * timesNeeded(needed, repeat) + 1, repeat);
    return std::min(alternating, parted);
}

Length carefulOrder(int cuts, Length needed, Length repeat, bool halfDrop) {
    return needed * cuts + halfRepeats(cuts * (halfDrop ? 3 : 2), repeat);
}

std::optional<std::int64_t> repeatsAcross(Length usableWidth, Length repeat) {
    if (usableWidth.ticks() % repeat.ticks() != 0) return std::nullopt;
    return usableWidth.ticks() / repeat.ticks();
}

} // namespace boltwright
