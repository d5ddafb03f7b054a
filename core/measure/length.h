#pragma once

#include <compare>
#include <cstdint>

namespace boltwright {

/// An area, exact: a whole number of square ticks.
using Area = std::int64_t;

/// A length or a coordinate, exact: a whole number of ticks, 320 to the millimetre (so 1/64 in = 127 and
/// 1 in = 8128). Lengths of a job are at most 1 km either way (see `limit`), so that the product of two differences
/// fits 64 bits; arithmetic itself does not check.
class Length {
public:
    constexpr Length() = default;
    static constexpr Length ticks(std::int64_t count) { return Length{count}; }
    static constexpr Length limit() { return Length{320'000'000}; }

    constexpr std::int64_t ticks() const { return m_ticks; }
    constexpr double toMillimetres() const { return double(m_ticks) / 320; } ///< for drawing and figures only

    friend constexpr auto operator<=>(Length, Length) = default;
    friend constexpr Length operator+(Length a, Length b) { return Length{a.m_ticks + b.m_ticks}; }
    friend constexpr Length operator-(Length a, Length b) { return Length{a.m_ticks - b.m_ticks}; }
    friend constexpr Length operator-(Length a) { return Length{-a.m_ticks}; }
    friend constexpr Length operator*(Length a, std::int64_t times) { return Length{a.m_ticks * times}; }
    friend constexpr Length operator*(std::int64_t times, Length a) { return a * times; }
    friend constexpr Area operator*(Length a, Length b) { return a.m_ticks * b.m_ticks; }
    constexpr Length &operator+=(Length b) { return *this = *this + b; }
    constexpr Length &operator-=(Length b) { return *this = *this - b; }
    // No product or quotient with a double: whoever needs one says how to round.

private:
    constexpr explicit Length(std::int64_t count) : m_ticks(count) {}
    std::int64_t m_ticks = 0;
};

constexpr Length abs(Length a) { return a < Length{} ? -a : a; }

/// The remainder of `a` by `step` (> 0), from 0 up to but not including `step`, for negative `a` too.
constexpr Length modulo(Length a, Length step) {
    const std::int64_t r = a.ticks() % step.ticks();
    return Length::ticks(r < 0 ? r + step.ticks() : r);
}

/// `numerator / denominator` rounded to the nearest whole number, ties away from zero (denominator > 0).
constexpr std::int64_t roundedQuotient(std::int64_t numerator, std::int64_t denominator) {
    const std::int64_t half = denominator / 2;
    return numerator >= 0 ? (numerator + half) / denominator : -((-numerator + half) / denominator);
}

namespace literals {
// Lengths in code and tests. The multiplications below are exact for every literal with few digits.
constexpr Length operator""_in(long double v) { return Length::ticks(std::int64_t(v * 8128 + 0.5L)); }
constexpr Length operator""_in(unsigned long long v) { return Length::ticks(std::int64_t(v) * 8128); }
constexpr Length operator""_cm(long double v) { return Length::ticks(std::int64_t(v * 3200 + 0.5L)); }
constexpr Length operator""_cm(unsigned long long v) { return Length::ticks(std::int64_t(v) * 3200); }
constexpr Length operator""_mm(long double v) { return Length::ticks(std::int64_t(v * 320 + 0.5L)); }
constexpr Length operator""_mm(unsigned long long v) { return Length::ticks(std::int64_t(v) * 320); }
constexpr Length operator""_yd(unsigned long long v) { return Length::ticks(std::int64_t(v) * 8128 * 36); }
} // namespace literals

} // namespace boltwright
