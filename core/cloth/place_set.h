#pragma once

#include "core/cloth/pattern.h"
#include "core/geometry/point.h"

#include <cstdint>
#include <optional>

namespace boltwright {

/// The places that the pattern leaves open for one point of a cut (its lower left corner, unless said otherwise): on
/// each axis either every place or every `step`-th, and with a drop a second axis that moves from column to column.
/// Always one of:
///   - free on both axes;
///   - x = x0 + i·xStep, y free;     x free, y = y0 + round(j·yStep / yDivide);
///   - both of these, independently;
///   - x = x0 + i·xStep, y = y0 + j·yStep + round(i·yStep·riseNumerator / riseDenominator): every motif of a lattice
///     with a drop (yDivide is then 1).
/// Infinite in all directions; what the cloth holds is another question.
struct PlaceSet {
    Length xStep, yStep; ///< zero: free on that axis
    Length x0, y0;
    std::int64_t yDivide = 1;
    std::int64_t riseNumerator = 0, riseDenominator = 1;

    bool freeX() const { return xStep == Length{}; }
    bool freeY() const { return yStep == Length{}; }
    bool dropped() const { return riseNumerator != 0; }

    /// The places level with a motif: on the axis across only (`x`), along only (`y`: level with any motif, so in a
    /// drop's finer rows), or on a motif itself (both). An axis without a repeat is left free.
    static PlaceSet ofMotifs(const Lattice &lattice, bool x, bool y);
    /// The places that differ from `at` by a whole step of the lattice, on the axes that repeat.
    static PlaceSet inPhaseWith(const Lattice &lattice, ClothPoint at);

    /// The lowest allowed x at or above `from`.
    Length nextX(Length from) const;
    /// The highest allowed x at or below `from`.
    Length previousX(Length from) const;
    /// The lowest allowed y at or above `from` in the column of `x` (`x` itself allowed).
    Length nextY(Length x, Length from) const;
    Length previousY(Length x, Length from) const;
    /// Whether `p` is in the set, give or take `tolerance` on each axis.
    bool holds(ClothPoint p, Length tolerance = {}) const;
    /// The allowed place nearest to `p`; the lower, then the left one among equals.
    ClothPoint nearest(ClothPoint p) const;
    /// The set moved as a whole.
    PlaceSet movedBy(Vector v) const;

    /// What both sets allow; nothing where they have no place in common. Both come from one lattice (steps agree where
    /// both have one, up to yDivide); residues that differ by at most `tolerance` count as the same (and `a`'s are
    /// kept).
    static std::optional<PlaceSet> common(const PlaceSet &a, const PlaceSet &b, Length tolerance = Length::ticks(2));

    bool operator==(const PlaceSet &) const = default;
};

} // namespace boltwright
