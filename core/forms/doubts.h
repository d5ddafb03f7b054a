#pragma once

#include "core/forms/piece_form.h"

#include <optional>
#include <string>
#include <vector>

namespace boltwright {

/// Something about what was measured that is worth a second look. Never an error: pieces are made as they are made.
struct Doubt {
    std::string part;               ///< the part's id
    std::optional<Measure> measure; ///< the measure to look at; none: the part as a whole
    std::string text;               ///< one sentence: "the two differ by 3 in from front to back"
    bool operator==(const Doubt &) const = default;
};

/// The doubts that measures raise, in the form's order. `clothWidth`: between the selvages, where a cloth is chosen.
/// Figures are in `unit`. The limits (2 in between a pair; half or twice of what is usual; 1 in between cushions and
/// the back) are common practice, no source.
std::vector<Doubt> doubtsOf(const PieceForm &form, const FormMeasures &measures, Unit unit,
                            std::optional<Length> clothWidth = {});

} // namespace boltwright
