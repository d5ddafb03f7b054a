#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

namespace boltwright {

/// The unit of a job: every bare number in its file, and every figure on its screen and paper, is in it.
enum class Unit { Inch, Centimetre, Millimetre };

/// Ticks in one of the unit: 8128, 3200, 320.
constexpr std::int64_t ticksIn(Unit unit) { return unit == Unit::Inch ? 8128 : unit == Unit::Centimetre ? 3200 : 320; }

/// "in", "cm", "mm": as the file spells it, and as the trade abbreviates it.
constexpr std::string_view nameOf(Unit unit) {
    return unit == Unit::Inch ? "in" : unit == Unit::Centimetre ? "cm" : "mm";
}

constexpr std::optional<Unit> unitNamed(std::string_view name) {
    if (name == "in") return Unit::Inch;
    if (name == "cm") return Unit::Centimetre;
    if (name == "mm") return Unit::Millimetre;
    return std::nullopt;
}

} // namespace boltwright
