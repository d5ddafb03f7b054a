#include "core/check/motif_grid.h"

#include <cmath>
#include <numeric>

namespace boltwright::judge {

namespace {

/// Distance of `value` from the nearest whole multiple of `step`.
double off(double value, double step) { return std::abs(value - std::round(value / step) * step); }

struct Fraction {
    std::int64_t up, of;
};

/// The drop as a fraction of the repeat: one with a denominator of at most 8 where the drop is within 4 ticks of it
/// (a half-drop of an odd repeat falls between ticks), else as it stands.
Fraction dropOf(std::int64_t drop, std::int64_t along) {
    std::optional<Fraction> near;
    std::int64_t nearOff = 0; // numerator of the distance; its denominator is near->of
    for (std::int64_t q = 1; q <= 8; ++q) {
        const std::int64_t p = std::int64_t(std::llround(double(drop * q) / double(along)));
        const std::int64_t offBy = std::abs(p * along - drop * q);
        if (offBy > 4 * q || (near && offBy * near->of >= nearOff * q)) continue;
        near = Fraction{p, q};
        nearOff = offBy;
    }
    if (near) return *near;
    const std::int64_t common = std::gcd(drop, along);
    return {drop / common, along / common};
}

} // namespace

MotifGrid::MotifGrid(const Pattern &pattern, ClothPoint motif) : m_motif(spotOf(motif)) {
    if (pattern.across) m_across = pattern.across->ticks();
    if (pattern.along) m_along = pattern.along->ticks();
    if (!repeatsAcross() || !repeatsAlong()) return; // a drop asks nothing of stripes
    const Fraction drop = dropOf(pattern.drop.ticks(), m_along);
    m_of = drop.of;
    m_up = drop.up % drop.of;
}

double MotifGrid::offAcross(double x) const { return off(x - m_motif.x, double(m_across)); }

double MotifGrid::offAlong(double y) const {
    // Over all columns the motifs stand at every (1/m_of)-th of the repeat.
    return off(y - m_motif.y, double(m_along) / double(m_of));
}

double MotifGrid::offStep(Spot step) const {
    if (!repeatsAcross()) return off(step.y, double(m_along));
    const double across = off(step.x, double(m_across));
    if (!repeatsAlong()) return across;
    const auto column = std::int64_t(std::llround(step.x / double(m_across)));
    const std::int64_t share = (column % m_of) * m_up % m_of;
    const double rise = double(share) * double(m_along) / double(m_of);
    return std::max(across, off(step.y - rise, double(m_along)));
}

std::optional<MotifGrid> motifGridOn(const Cloth &cloth, const std::optional<std::string> &on) {
    if (!cloth.pattern) return std::nullopt;
    for (const Remnant &remnant : cloth.remnants)
        if (on == remnant.id && remnant.motif) return MotifGrid(*cloth.pattern, *remnant.motif);
    return MotifGrid(*cloth.pattern, cloth.pattern->motif);
}

} // namespace boltwright::judge
