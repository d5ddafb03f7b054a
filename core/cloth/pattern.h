#pragma once

#include "core/base/kept.h"
#include "core/geometry/point.h"

#include <optional>

namespace boltwright {

/// A cloth's repeat as the job tells it. Motifs sit at (motif.x + i·across, motif.y + j·along + i·drop) for all whole
/// i and j. Without `along`: stripes up the roll; without `across`: stripes from selvage to selvage. At least one of
/// the two is there, and both are greater than zero.
struct Pattern {
    std::optional<Length> across, along;
    Length drop;      ///< how far the next column is moved up; asks nothing without both repeats
    ClothPoint motif; ///< where one motif sits
    Kept kept;
    bool operator==(const Pattern &) const = default;
};

/// Where motifs sit on one bolt or remnant: a pattern with its drop made exact and the motif of that sheet.
class Lattice {
public:
    /// A drop within 4 ticks of p/q of `along` (q at most 8) is exactly that fraction.
    Lattice(const Pattern &pattern, ClothPoint motif);

    bool repeatsAcross() const { return m_across > Length{}; }
    bool repeatsAlong() const { return m_along > Length{}; }
    Length across() const { return m_across; } ///< zero: no repeat across
    Length along() const { return m_along; }   ///< zero: no repeat along
    ClothPoint motif() const { return m_motif; }
    /// The drop as a fraction of `along`, in lowest terms and from 0 up to 1: {0, 1} for none.
    int dropNumerator() const { return m_dropNumerator; }
    int dropDenominator() const { return m_dropDenominator; }
    /// How far column `i` is moved up, rounded to the nearest tick; between 0 and `along`.
    Length rise(std::int64_t column) const;

    bool operator==(const Lattice &) const = default;

private:
    Length m_across, m_along;
    // A drop that is no small fraction of the repeat is kept in ticks: numerator and denominator are then
    // drop and along themselves, divided by their greatest common divisor.
    int m_dropNumerator = 0, m_dropDenominator = 1;
    ClothPoint m_motif;
};

} // namespace boltwright
