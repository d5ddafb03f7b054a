#pragma once

#include "core/planner/instance.h"

#include <cstdint>
#include <functional>
#include <optional>
#include <vector>

/// Exact answers for small instances: all outlines rectangles, rooms and flaws of upright edges, some thirty items or
/// fewer. Run it beside the heuristics: it settles the tight cases they miss, and it proves.
///
///     ExactOutcome o = decide(instance, {}, {.steps = 100'000});            // remnants: do all items fit?
///     Closing c = closeExcess(instance, lowerBound(instance), incumbent, limits); // a bolt: the least length
///
/// Everything here runs in the calling thread and is a pure function of its arguments when `steps` are given.
namespace boltwright::planner {

/// Which of the ways of deciding are tried: all, or those that look across the cloth, for a second thread.
enum class ExactPart { All, Across };

struct ExactLimits {
    std::optional<double> seconds;     ///< wall clock; or
    std::optional<std::int64_t> steps; ///< a count of search steps: the outcome is the same on every machine
    std::function<bool()> stop;        ///< asked often; true ends the search undecided
    ExactPart part = ExactPart::All;
};

struct ExactOutcome {
    enum class Kind {
        Fits,      ///< `placements` are complete and right
        Cannot,    ///< the search ended: no set of placements exists
        Undecided, ///< neither within the limits, or not an instance this search understands
    };
    Kind kind = Kind::Undecided;
    std::vector<Placement> placements; ///< by item
    Length beyond;          ///< Cannot, open sheet: no layout is shorter than this, which is above what was asked
    std::int64_t steps = 0; ///< spent
};

/// Whether `decide` understands the instance and it is small enough to be worth asking.
bool decidable(const Instance &instance);

/// Whether the items would fill the cloth below `length` (open sheet) or the remnant to the last square. Searches of
/// orders hardly ever find such layouts; `decide` is good at them, to some thirty items.
bool fillsExactly(const Instance &instance, Length length);

/// Whether all items can lie with no end above `length` (open sheet), or on the remnants (`length` says nothing).
ExactOutcome decide(const Instance &instance, Length length, const ExactLimits &limits);

struct Closing {
    std::vector<Placement> placements; ///< the shortest layout known; empty while none is
    Length length;                     ///< its greatest y
    Length bound;                      ///< no layout is shorter
    bool proved = false;               ///< a layout is there and length equals bound
    std::int64_t steps = 0;            ///< spent
};

/// Closes the excess between a bound and the best layout known of an open sheet, as far as the limits allow. `known`
/// is a complete right layout or empty. `report` is told of every better layout and bound as it is found.
Closing closeExcess(const Instance &instance, Length bound, const std::vector<Placement> &known,
                    const ExactLimits &limits, const std::function<void(const Closing &)> &report = {});

} // namespace boltwright::planner
