#pragma once

#include <array>
#include <optional>

namespace boltwright {

/// How a panel lies on the cloth: counter-clockwise from the panel's frame to the cloth's. `Deg0` lays the panel's top
/// up the roll, `Deg90` towards the left selvage. No other turns exist on cloth.
enum class Turn {
    Deg0 = 0,
    Deg45 = 45,
    Deg90 = 90,
    Deg135 = 135,
    Deg180 = 180,
    Deg225 = 225,
    Deg270 = 270,
    Deg315 = 315
};

constexpr std::array<Turn, 8> allTurns = {Turn::Deg0,   Turn::Deg45,  Turn::Deg90,  Turn::Deg135,
                                          Turn::Deg180, Turn::Deg225, Turn::Deg270, Turn::Deg315};

constexpr int degrees(Turn turn) { return int(turn); }
constexpr bool isBias(Turn turn) { return degrees(turn) % 90 != 0; }
/// The panel's side-to-side axis lies along the roll (its up axis across).
constexpr bool swapsAxes(Turn turn) { return degrees(turn) % 180 == 90; }

constexpr std::optional<Turn> turnOf(int deg) {
    for (Turn t : allTurns)
        if (degrees(t) == deg) return t;
    return std::nullopt;
}

} // namespace boltwright
