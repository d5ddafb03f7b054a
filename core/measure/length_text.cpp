#include "core/measure/length_text.h"

#include <boost/multiprecision/cpp_int.hpp>
#include <fmt/format.h>

#include <array>
#include <cstdlib>
#include <numeric>

namespace boltwright {
namespace {

// Exact, so that "1/3 yd" and "0.1" round to the tick they are nearest to, on every machine.
using Exact = boost::multiprecision::cpp_rational;
using Whole = boost::multiprecision::cpp_int;

// Longer than any length a person writes; keeps the exact arithmetic cheap whatever a file holds.
constexpr std::size_t longestText = 200;

struct NamedUnit {
    std::string_view name;
    std::int64_t ticks;
    bool metric;
};
// Two-letter names before "m", so that the longest name that fits is met first.
constexpr std::array<NamedUnit, 10> namedUnits = {{{"in", 8128, false},
                                                   {"ft", 97536, false},
                                                   {"yd", 292608, false},
                                                   {"cm", 3200, true},
                                                   {"mm", 320, true},
                                                   {"m", 320'000, true},
                                                   {"\"", 8128, false},
                                                   {"\u2033", 8128, false},
                                                   {"'", 97536, false},
                                                   {"\u2032", 97536, false}}};

struct Glyph {
    std::string_view name;
    int numerator, denominator;
};
constexpr std::array<Glyph, 7> glyphs = {{{"\u00bc", 1, 4},
                                          {"\u00bd", 1, 2},
                                          {"\u00be", 3, 4},
                                          {"\u215b", 1, 8},
                                          {"\u215c", 3, 8},
                                          {"\u215d", 5, 8},
                                          {"\u215e", 7, 8}}};

std::string_view exampleIn(Unit unit) {
    switch (unit) {
    case Unit::Inch:
        return "20 1/2 or \"52 cm\"";
    case Unit::Centimetre:
        return "52.5 or \"20 1/2 in\"";
    case Unit::Millimetre:
        return "525 or \"20 1/2 in\"";
    }
    std::abort();
}

bool isDigit(char c) { return c >= '0' && c <= '9'; }
bool isLetter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
char lowered(char c) { return c >= 'A' && c <= 'Z' ? char(c - 'A' + 'a') : c; }

Whole wholeOf(std::string_view digits) {
    // A leading zero would make the library read octal.
    const auto first = digits.find_first_not_of('0');
    return first == std::string_view::npos ? Whole(0) : Whole(std::string(digits.substr(first)));
}

Whole powerOfTen(unsigned exponent) { return boost::multiprecision::pow(Whole(10), exponent); }

/// To whole ticks, ties away from zero; none beyond 1 km.
std::optional<Length> roundedToTicks(const Exact &ticks) {
    const bool negative = ticks < 0;
    const Exact size = negative ? Exact(-ticks) : ticks;
    const Whole n = boost::multiprecision::numerator(size), d = boost::multiprecision::denominator(size);
    const Whole rounded = (2 * n + d) / (2 * d);
    if (rounded > Whole(Length::limit().ticks())) return std::nullopt;
    const auto count = rounded.convert_to<std::int64_t>();
    return Length::ticks(negative ? -count : count);
}

/// Walks through one written length. Each `take...` moves on when it finds what it is named after.
class Walk {
public:
    Walk(std::string_view text, Unit unit, Spelling spelling) : m_text(text), m_unit(unit), m_spelling(spelling) {}

    Result<Length> length() {
        skipSpaces();
        const bool negative = take("-") || take("\u2212");
        skipSpaces();
        if (atEnd()) return fault(fmt::format("no length is given; write one such as {}", exampleIn(m_unit)));
        auto sum = sumOfTerms();
        if (!sum) return fault(sum.error());
        const auto length = roundedToTicks(negative ? Exact(-*sum) : *sum);
        if (!length) return wrong(" is longer than 1 km, the most a length can be");
        return *length;
    }

private:
    Result<Exact> sumOfTerms() {
        Exact sum = 0;
        const NamedUnit *before = nullptr;
        while (!atEnd()) {
            const auto number = takeNumber();
            if (!number) return fault(number.error());
            skipSpaces();
            const auto unit = takeUnit();
            if (!unit) return fault(unit.error());
            if (*unit) {
                if (before && (*unit)->ticks >= before->ticks)
                    return wrong(": the larger unit comes first and each stands once, as in 1 yd 4 in");
                sum += *number * Exact((*unit)->ticks);
                before = *unit;
                skipSpaces();
                continue;
            }
            if (!atEnd()) return wrongAfterNumber();
            if (before) {
                const auto own = ticksIn(m_unit);
                if (own >= before->ticks || before->metric != (m_unit != Unit::Inch))
                    return wrong(": the last number needs its unit, as in 1 yd 4 in");
            }
            sum += *number * Exact(ticksIn(m_unit));
        }
        return sum;
    }

    Result<Exact> takeNumber() {
        if (const auto glyph = takeGlyph()) return *glyph;
        const std::string_view digits = takeDigits();
        if (digits.empty() && !at(".")) return wrongStart();
        if (at("/")) return takeFractionBelow(digits);
        if (at(".") || at(",")) return takeDecimalsOf(digits);
        return takeFractionAfter(digits);
    }

    /// The rest of "1/2", from the stroke on.
    Result<Exact> takeFractionBelow(std::string_view above) {
        take("/");
        const Whole below = wholeOf(takeDigits());
        if (below == 0) return wrong(": a fraction has a number greater than zero below its stroke, as in 1/2");
        return Exact(wholeOf(above), below);
    }

    /// The rest of "92.5", from the mark on.
    Result<Exact> takeDecimalsOf(std::string_view whole) {
        const bool comma = at(",");
        if (comma && m_spelling == Spelling::File) return wrongComma();
        ++m_at;
        const std::string_view decimals = takeDigits();
        if (whole.empty() && decimals.empty()) return wrong("");
        if (at(".") || at(",")) return wrong(" has more than one decimal mark");
        if (comma && decimals.empty()) return wrong("");
        // "1,500" may be meant as one and a half or as fifteen hundred. "0,500" can only be a half.
        if (comma && decimals.size() == 3 && !whole.empty() && whole.size() <= 3 && whole.front() != '0')
            return wrong(fmt::format(" can be read two ways; write {}.{} or {}{}", whole, decimals, whole, decimals));
        return Exact(wholeOf(std::string(whole) + std::string(decimals)), powerOfTen(unsigned(decimals.size())));
    }

    /// A whole number, and the fraction behind it where there is one: "36", "36 1/2", "36-1/2", "36½".
    Result<Exact> takeFractionAfter(std::string_view digits) {
        const Exact whole(wholeOf(digits));
        const std::size_t start = m_at;
        const bool hyphen = take("-");
        if (!hyphen) skipSpaces();
        if (const auto glyph = takeGlyph()) return Exact(whole + *glyph);
        const std::string_view above = takeDigits();
        if (!above.empty() && at("/")) {
            auto fraction = takeFractionBelow(above);
            if (!fraction) return fraction;
            return Exact(whole + *fraction);
        }
        if (hyphen) return wrong(": a hyphen stands between a whole number and its fraction only, as in 36-1/2");
        m_at = start;
        return whole;
    }

    std::optional<Exact> takeGlyph() {
        for (const Glyph &g : glyphs)
            if (take(g.name)) return Exact(g.numerator, g.denominator);
        return std::nullopt;
    }

    /// Null when no unit stands here.
    Result<const NamedUnit *> takeUnit() {
        std::size_t end = m_at;
        while (end < m_text.size() && isLetter(m_text[end])) ++end;
        const std::string_view word = m_text.substr(m_at, end - m_at);
        for (const NamedUnit &u : namedUnits) {
            const bool here = word.empty() ? at(u.name) : sameIgnoringCase(word, u.name);
            if (!here) continue;
            m_at += u.name.size();
            return &u;
        }
        if (word.empty()) return nullptr;
        return wrong(fmt::format(": \"{}\" is no unit; write in, ft, yd, mm, cm or m", word));
    }

    static bool sameIgnoringCase(std::string_view word, std::string_view name) {
        if (word.size() != name.size()) return false;
        for (std::size_t i = 0; i < word.size(); ++i)
            if (lowered(word[i]) != name[i]) return false;
        return true;
    }

    std::string_view takeDigits() {
        const std::size_t start = m_at;
        while (m_at < m_text.size() && isDigit(m_text[m_at])) ++m_at;
        return m_text.substr(start, m_at - start);
    }

    void skipSpaces() {
        while (take(" ") || take("\t") || take("\u00a0")) {
        }
    }

    bool at(std::string_view what) const { return m_text.substr(m_at).starts_with(what); }
    bool take(std::string_view what) {
        if (!at(what)) return false;
        m_at += what.size();
        return true;
    }
    bool atEnd() const { return m_at == m_text.size(); }

    /// The sentence for this text: what is wrong with it, and what would be right.
    tl::unexpected<Fault> wrong(std::string_view why) const {
        if (!why.empty()) return fault(fmt::format("\"{}\"{}", m_text, why));
        return fault(fmt::format("\"{}\" is not a length; write one such as {}", m_text, exampleIn(m_unit)));
    }
    tl::unexpected<Fault> wrongStart() const {
        if (at("+")) return wrong(": leave out the plus sign");
        return wrong("");
    }
    tl::unexpected<Fault> wrongAfterNumber() const {
        if (at("-") || isDigit(m_text[m_at]) || at("."))
            return wrong(": between two numbers stands a unit, or the second is a fraction, as in 3 ft 4 in or 3 1/4");
        if (at(",")) return wrongComma();
        return wrong("");
    }
    tl::unexpected<Fault> wrongComma() const {
        if (m_spelling == Spelling::Hand) return wrong("");
        return wrong(" has a comma; the decimal mark is a point, as in 92.5");
    }

    std::string_view m_text;
    Unit m_unit;
    Spelling m_spelling;
    std::size_t m_at = 0;
};

std::string_view withoutSpacesAround(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// A count of `denominator`-ths as whole and fraction in lowest terms: "36 1/2", "1/2", "-3", "0".
std::string mixed(std::int64_t count, std::int64_t denominator) {
    const std::string sign = count < 0 ? "-" : "";
    const std::int64_t size = std::abs(count), whole = size / denominator, rest = size % denominator;
    if (rest == 0) return sign + std::to_string(whole);
    const std::int64_t common = std::gcd(rest, denominator);
    const std::string fraction = fmt::format("{}/{}", rest / common, denominator / common);
    return whole == 0 ? sign + fraction : fmt::format("{}{} {}", sign, whole, fraction);
}

/// A count of `10^places`-ths as a decimal without needless zeros: "92.5", "3", "-0.05".
std::string decimal(std::int64_t count, int places) {
    std::int64_t scale = 1;
    for (int i = 0; i < places; ++i) scale *= 10;
    const std::int64_t size = std::abs(count);
    std::string text = fmt::format("{}{}", count < 0 ? "-" : "", size / scale);
    if (places == 0 || size % scale == 0) return text;
    text += fmt::format(".{:0{}}", size % scale, places);
    while (text.back() == '0') text.pop_back();
    return text;
}

constexpr std::int64_t ticksInYard = 292'608; // 0.9144 m exactly
constexpr std::int64_t ticksInMetre = 320'000;

/// Ticks of the shop's step: eighths of a yard, or a tenth of a metre.
std::int64_t purchaseStep(Unit unit, int eighths) {
    return unit == Unit::Inch ? ticksInYard / 8 * eighths : ticksInMetre / 10;
}

} // namespace

Result<Length> readLength(std::string_view text, Unit unit, Spelling spelling) {
    text = withoutSpacesAround(text);
    if (text.size() > longestText)
        return fault(fmt::format("this is too long for a length; write one such as {}", exampleIn(unit)));
    return Walk(text, unit, spelling).length();
}

Result<Length> readDecimal(std::string_view text, Unit unit) {
    const auto no = [&] {
        return fault(fmt::format("{} is not a length; write one such as {}", text, exampleIn(unit)));
    };
    const auto tooLong = [&] { return fault(fmt::format("{} is longer than 1 km, the most a length can be", text)); };
    std::size_t at = 0;
    const auto takeDigits = [&] {
        const std::size_t start = at;
        while (at < text.size() && isDigit(text[at])) ++at;
        return std::string(text.substr(start, at - start));
    };
    if (text.size() > 2 * longestText) return fault("a number of this many digits is not a length");
    const bool negative = !text.empty() && text[0] == '-';
    if (negative) ++at;
    std::string digits = takeDigits();
    if (digits.empty()) return no();
    int exponent = 0;
    if (at < text.size() && text[at] == '.') {
        ++at;
        const std::string decimals = takeDigits();
        if (decimals.empty()) return no();
        exponent -= int(decimals.size());
        digits += decimals;
    }
    if (at < text.size() && (text[at] == 'e' || text[at] == 'E')) {
        ++at;
        const bool below = at < text.size() && text[at] == '-';
        if (at < text.size() && (text[at] == '-' || text[at] == '+')) ++at;
        const std::string power = takeDigits();
        if (power.empty()) return no();
        // Nothing a length can hold lies beyond a few hundred places; a longer power only says "huge" or "nothing".
        const int size = power.size() > 6 ? 1'000'000 : std::atoi(power.c_str());
        exponent += below ? -size : size;
    }
    if (at != text.size()) return no();
    const Whole count = wholeOf(digits);
    if (count == 0) return Length{};
    if (exponent > 10) return tooLong();
    if (exponent < -1000) return Length{};
    Exact value =
        exponent >= 0 ? Exact(count * powerOfTen(unsigned(exponent))) : Exact(count, powerOfTen(unsigned(-exponent)));
    if (negative) value = -value;
    const auto length = roundedToTicks(value * Exact(ticksIn(unit)));
    if (!length) return tooLong();
    return *length;
}

std::string writeDecimal(Length length, Unit unit) {
    const std::int64_t ticks = length.ticks(), own = ticksIn(unit);
    std::int64_t scale = 1;
    for (int places = 0;; ++places, scale *= 10) {
        // The nearest count of this many places; were any to read back as the same tick, this one would.
        const std::int64_t count = roundedQuotient(ticks * scale, own);
        if (roundedQuotient(count * own, scale) == ticks) return decimal(count, places);
    }
}

std::string spoken(Length length, Unit unit, int denominator) {
    if (unit == Unit::Inch) return mixed(roundedQuotient(length.ticks() * denominator, 8128), denominator);
    if (unit == Unit::Centimetre) return decimal(roundedQuotient(length.ticks(), 320), 1);
    return decimal(roundedQuotient(length.ticks(), 320), 0);
}

std::string spokenWithUnit(Length length, Unit unit, int denominator) {
    return fmt::format("{} {}", spoken(length, unit, denominator), nameOf(unit));
}

std::string spokenAlongRoll(Length length, Unit unit) {
    if (unit == Unit::Inch) {
        // Rounded before it is split, so that no "3 yd 36 in" appears.
        constexpr std::int64_t sixteenthsInYard = 576;
        const std::int64_t count = roundedQuotient(length.ticks() * 16, 8128), size = std::abs(count);
        const std::int64_t yards = size / sixteenthsInYard, rest = size % sixteenthsInYard;
        if (yards == 0) return mixed(count, 16) + " in";
        const std::string text = fmt::format("{}{} yd", count < 0 ? "-" : "", yards);
        return rest == 0 ? text : fmt::format("{} {} in", text, mixed(rest, 16));
    }
    if (std::abs(roundedQuotient(length.ticks(), 320)) < 1000) return spokenWithUnit(length, unit);
    return decimal(roundedQuotient(length.ticks(), 3200), 2) + " m";
}

Length purchaseLength(Length length, Unit unit, int eighths) {
    const std::int64_t step = purchaseStep(unit, eighths);
    return Length::ticks((std::max<std::int64_t>(length.ticks(), 0) + step - 1) / step * step);
}

std::string spokenPurchase(Length length, Unit unit, int eighths) {
    const Length buy = purchaseLength(length, unit, eighths);
    if (unit == Unit::Inch) return mixed(buy.ticks() / (ticksInYard / 8), 8) + " yd";
    return decimal(buy.ticks() / (ticksInMetre / 10), 1) + " m";
}

} // namespace boltwright
