#pragma once

#include "core/forms/piece_form.h"
#include "core/trimmings/trade_rules.h"

#include <set>
#include <string>

namespace boltwright {

/// Colours of a picture, as SVG spells them.
struct PictureInks {
    std::string ink, quiet, accent, onAccent, paper, cloth, frame;
};

/// What a picture of a piece shows.
struct PieceView {
    std::set<std::string> there;    ///< parts that the piece has
    std::string lit;                ///< the part that is being measured; empty: none
    std::optional<Measure> measure; ///< whose arrow stands out; none: all alike
};

/// Whether the lit part can only be seen from behind.
bool seenFromBehind(const PieceForm &form, const PieceView &view);
/// Whether the drawing shows that part at all; one that a shop added may not be in it.
bool isDrawn(const PieceForm &form, const std::string &part);

/// The form's blocks as an SVG drawing, seen from the left and above: the lit part in colour, with numbered arrows from
/// where to where each of its measures is taken, in their order. What lies upon the lit part is lifted off. A part that
/// is only seen from behind turns the piece round.
std::string pieceSvg(const PieceForm &form, const PieceView &view, const PictureInks &inks);

/// One part laid flat, to its proportions: the measured shape dashed, the cut outline whole, at each edge what becomes
/// of it, the same numbered arrows.
std::string flatPartSvg(const FormPart &part, const Sizes &sizes, const TradeRules &rules,
                        std::optional<Measure> measure, const PictureInks &inks);

} // namespace boltwright
