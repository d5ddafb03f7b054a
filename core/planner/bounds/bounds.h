#pragma once

#include "core/planner/instance.h"

#include <string_view>
#include <vector>

/// What no layout can beat. Each bound is one file and one line in the list of bounds.cpp; each holds alone, so any can
/// be left out and what the others say stays true.
///
/// Two things hold for all of them:
///   - Gaps are true distances. Two rectangles may lie corner to corner, nearer than the gap on both axes, so a bound
///     may not simply widen every rectangle by the gap both ways. It may widen by `a` across and `b` along wherever
///     a² + b² is at most gap²: what keeps the gap is then still apart on one axis or the other.
///   - What is not understood (slanted room edges, odd flaws, group phases) is left out, never guessed.
namespace boltwright::planner {

struct Bound {
    std::string_view name;
    /// A length that no layout of the open sheet can beat; the room's lower edge where it has nothing to say. Null:
    /// says nothing about open sheets.
    Length (*least)(const Instance &instance) = nullptr;
    /// True: the items cannot lie on the remnants. False says nothing. Null: says nothing about remnants.
    bool (*refutes)(const Instance &instance) = nullptr;
};

/// All of them, cheapest first.
const std::vector<Bound> &allBounds();

/// The best of some bounds for an instance with an open sheet, raised to the next length at which a layout can end.
Length leastOf(const std::vector<Bound> &bounds, const Instance &instance);

/// Whether one of some bounds proves that the items cannot lie on the remnants.
bool refutedBy(const std::vector<Bound> &bounds, const Instance &instance);

// --- the bounds ---

/// Each item alone: its lowest place, and what is fixed. On remnants: an item that has no place at all.
Length leastOfEachItem(const Instance &instance);
bool someItemHasNoPlace(const Instance &instance);

/// The cloth the items cover, each with half the gap around it, against the room with the same rim.
Length leastByArea(const Instance &instance);
bool areaExceeded(const Instance &instance);

/// The heaviest set of items that exclude one another side by side, laid one above the other on their motif places. On
/// remnants the other axis too.
Length leastByExclusion(const Instance &instance);
bool exclusionExceeded(const Instance &instance);

/// Dual-feasible functions across and along: stretched or rounded sizes that fit wherever the true ones do.
/// Source: Clautiaux, Alves & Valério de Carvalho 2010, "A survey of dual-feasible and superadditive functions"
/// (formulas from memory; that each is superadditive is tested).
Length leastByDualFeasible(const Instance &instance);
bool dualFeasibleExceeded(const Instance &instance);

/// Rows as narrow as a thread, each a bar of items side by side on their motif places: how few can cross every item as
/// often as it is long. The same of columns where places along are few, and on a remnant.
Length leastByBars(const Instance &instance);
bool barsExceeded(const Instance &instance);

/// The least length at or above `bound` at which the topmost item, on one of its places, can end.
Length nextEnd(const Instance &instance, Length bound);

} // namespace boltwright::planner
