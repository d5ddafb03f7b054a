#pragma once

#include "core/base/result.h"
#include "core/forms/piece_form.h"

#include <string>
#include <string_view>

namespace boltwright {

/// Reads a piece form from JSON, as the forms in core/forms/pieces are written. Errors name the part and the key.
/// Keys that are not known are errors: a form is small, and a misspelt key would be a part measured wrong.
Result<PieceForm> readForm(std::string_view text);

/// The form as JSON text, lengths in `unit`; `readForm` gives back the same.
std::string writeForm(const PieceForm &form, Unit unit);

} // namespace boltwright
