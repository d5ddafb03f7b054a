#pragma once

#include "core/base/result.h"
#include "core/measure/length.h"
#include "core/measure/unit.h"

#include <string>
#include <string_view>

namespace boltwright {

/// How strict a reader of lengths is.
enum class Spelling {
    File, ///< the decimal mark is a point
    Hand, ///< as typed on screen: a decimal comma is taken too, when it cannot be read any other way
};

/// Reads a length as a person writes it: "36 1/2", "36-1/2", "36½", "92.5", "1 yd 4 1/2 in", "92 cm", "3' 2\"". A bare
/// number is in `unit`. Units come in falling order and a fraction follows at most one whole number. Falls between
/// ticks are rounded to the nearest, ties away from zero. A leading sign is read; whether it is allowed is the
/// caller's business. Errors: not a length, or beyond 1 km; the sentence shows what would be right.
Result<Length> readLength(std::string_view text, Unit unit, Spelling spelling = Spelling::File);

/// A JSON number in `unit`, given as the shortest decimal text that denotes it (such as "54", "0.5", "1e-3"). Exact.
Result<Length> readDecimal(std::string_view decimal, Unit unit);

/// The shortest decimal in `unit` that `readDecimal` reads back as the same length: "0.5", "61.25", "13.5001".
/// For files; never exponential.
std::string writeDecimal(Length length, Unit unit);

/// As a person of the trade reads it, without its unit: inches as whole and fraction to the nearest 1/16 (or the
/// nearest 1/`denominator`), "36 1/2"; centimetres to a tenth, "92.5"; millimetres whole, "925". Rounded to nearest;
/// what must not be short is rounded up by its caller.
std::string spoken(Length length, Unit unit, int denominator = 16);

/// The same with its unit behind: "36 1/2 in", "92.5 cm".
std::string spokenWithUnit(Length length, Unit unit, int denominator = 16);

/// A length of cloth along the roll: "4 yd 7 in" (from one yard up), "3.25 m" (from one metre up).
std::string spokenAlongRoll(Length length, Unit unit);

/// What to buy: rounded up to the shop's step (`eighths` of a yard: 1, 2 or 4; or tenths of a metre), "3 1/4 yd",
/// "3.3 m". An exact multiple is not rounded up further.
std::string spokenPurchase(Length length, Unit unit, int eighths = 2);

/// The length that `spokenPurchase` names.
Length purchaseLength(Length length, Unit unit, int eighths = 2);

} // namespace boltwright
