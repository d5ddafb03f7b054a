#pragma once

#include "core/cloth/cloth.h"
#include "core/measure/unit.h"

#include <string>
#include <string_view>
#include <vector>

namespace boltwright {

/// One thing to go through with the client before their cloth is accepted.
struct ClothQuestion {
    std::string_view about;  ///< the id under which an answer is kept
    std::string_view title;  ///< "Width"
    std::string_view asks;   ///< "Is it 54 in wide between the selvages, or what is it?"
    std::string_view advice; ///< what to watch for; defers to the cloth's own label and local rules
    std::string_view source;
};

/// In the order in which they are asked.
const std::vector<ClothQuestion> &clothQuestions();

/// The answer that stands; an open one where none was given.
ClothAnswer answerTo(const Cloth &cloth, std::string_view about);
/// The cloth with that answer in place of what stood; an open one without a note is taken out.
Cloth withAnswer(Cloth cloth, const ClothAnswer &answer);

/// What the cloth in the job itself says about a question: its width between the selvages, its repeat, its way, its bow
/// and skew. Empty: nothing.
std::string knownOf(const Cloth &cloth, std::string_view about, Unit unit);

/// "good", "in doubt", "not asked yet".
std::string_view nameOf(ClothAnswer::Said said);

} // namespace boltwright
