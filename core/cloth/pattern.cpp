#include "core/cloth/pattern.h"

#include <cstdlib>
#include <numeric>

namespace boltwright {
namespace {

struct Fraction {
    std::int64_t numerator, denominator;
};

/// The drop as a part of the repeat: a simple fraction where one is within 4 ticks (what a tape can tell), otherwise
/// the exact quotient.
Fraction asFraction(Length drop, Length along) {
    constexpr std::int64_t nearEnough = 4;
    for (std::int64_t q = 1; q <= 8; ++q) {
        const std::int64_t p = roundedQuotient(drop.ticks() * q, along.ticks());
        if (std::abs(p * along.ticks() - drop.ticks() * q) <= nearEnough * q) {
            const std::int64_t g = std::gcd(p, q);
            return {p / g, q / g};
        }
    }
    const std::int64_t g = std::gcd(drop.ticks(), along.ticks());
    return {drop.ticks() / g, along.ticks() / g};
}

} // namespace

Lattice::Lattice(const Pattern &pattern, ClothPoint motif)
    : m_across(pattern.across.value_or(Length{})), m_along(pattern.along.value_or(Length{})), m_motif(motif) {
    if (!repeatsAcross() || !repeatsAlong()) return;
    const Fraction drop = asFraction(pattern.drop, m_along);
    m_dropDenominator = int(drop.denominator);
    m_dropNumerator = int(((drop.numerator % drop.denominator) + drop.denominator) % drop.denominator);
}

Length Lattice::rise(std::int64_t column) const {
    if (m_dropNumerator == 0) return {};
    std::int64_t part = (column % m_dropDenominator) * m_dropNumerator % m_dropDenominator;
    if (part < 0) part += m_dropDenominator;
    return Length::ticks(roundedQuotient(part * m_along.ticks(), m_dropDenominator));
}

} // namespace boltwright
