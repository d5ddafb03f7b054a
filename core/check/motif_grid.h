#pragma once

#include "core/check/plain_outline.h"
#include "core/cloth/cloth.h"

#include <optional>
#include <string>

namespace boltwright::judge {

/// Where the motifs sit on one bolt or remnant, and how far a point or a step is from where it should be, in ticks.
/// Motifs sit at (motif.x + i·across, motif.y + j·along + i·drop) for all whole i and j.
class MotifGrid {
public:
    MotifGrid(const Pattern &pattern, ClothPoint motif);

    bool repeatsAcross() const { return m_across > 0; }
    bool repeatsAlong() const { return m_along > 0; }

    /// How far `x` is from the nearest column of motifs.
    double offAcross(double x) const;
    /// How far `y` is from being level with the nearest motif, of any column.
    double offAlong(double y) const;
    /// How far `p` is from the nearest motif, on the worse of the axes that repeat.
    double offMotif(Spot p) const { return offStep(p - m_motif); }
    /// How far a displacement is from a whole step of the repeat, on the worse of the axes that repeat.
    double offStep(Spot step) const;
    /// The displacement from a motif: two points that show the same part of the repeat differ in it by a whole step.
    Spot phase(Spot p) const { return p - m_motif; }

private:
    std::int64_t m_across = 0, m_along = 0;
    // The drop is m_up / m_of of `along`, in lowest terms.
    std::int64_t m_up = 0, m_of = 1;
    Spot m_motif;
};

/// The motifs of the bolt (`on` empty) or the remnant; none for cloth without a pattern.
std::optional<MotifGrid> motifGridOn(const Cloth &cloth, const std::optional<std::string> &on);

} // namespace boltwright::judge
