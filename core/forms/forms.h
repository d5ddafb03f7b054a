#pragma once

#include "core/forms/piece_form.h"

namespace boltwright {

/// The forms that come with the program (core/forms/pieces, one file each), in their order.
const std::vector<PieceForm> &pieceForms();

/// Null: none of that id.
const PieceForm *pieceForm(const std::string &id);

} // namespace boltwright
