#pragma once

#include "core/base/result.h"
#include "core/paper/cloth_sheet.h"
#include "core/paper/paper_size.h"

#include <optional>
#include <string>
#include <vector>

/// Panels and layouts at 1:1, over as many pages as it takes. Coordinates are those of all pages joined: x to the
/// right, y down, the drawing's upper left corner at (0, 0).
namespace boltwright {

enum class TrueInk { Cut, Measured, Centre, Pattern, ClothEdge };

struct TrueLine {
    PaperPoint from, to;
    TrueInk ink = TrueInk::Cut;
};

/// Where the words of one piece may stand, and which way its top is.
struct TruePiece {
    int number = 0; ///< in cutting order; 0: not on a layout
    std::string mark, name, copy;
    Length cutAcross, cutUp;
    PaperBox room;
    Vector top; ///< 1 mm long
};

struct TrueDrawing {
    std::string what; ///< "IB · Inside back", or the cloth's name
    PaperSize size;
    std::vector<TrueLine> lines;
    std::vector<TruePiece> pieces;
};

/// One panel as it is seen on the furniture, top up: cut outline, measured shape, the lines that its motif sits on. A
/// mirrored copy is drawn mirrored.
TrueDrawing truePanel(const Job &job, const Layout &layout, const Cut &cut);
/// The cut that stands for a panel, or for one copy of it, given as "IB", "inside-back" or "IB/2": the layout's own, or
/// one with all allowances where the layout has none. Errors: no such panel or copy.
Result<Cut> cutNamed(const Job &job, const Layout &layout, const std::string &name);

/// A bolt or remnant as it lies on the table: the cut end at the left, the left selvage on top.
TrueDrawing trueSheet(const Job &job, const Layout &layout, const ClothSheet &sheet);

/// One page of a drawing: shows what lies from `from` on, as far as the room on paper reaches.
struct TrueTile {
    int column = 0, row = 0; ///< from 0
    PaperPoint from;         ///< of the joined pages
};

struct TruePlan {
    PaperSize paper; ///< as it is held
    PaperBox heading, room;
    Length overlap; ///< of neighbours; the match marks stand in its middle
    int columns = 1, rows = 1;
    std::vector<TrueTile> tiles; ///< row by row; pages that would be blank are left out

    PaperBox shown(const TrueTile &tile) const { return {tile.from, tile.from + (room.high - room.low)}; }
    Vector toPaper(const TrueTile &tile) const { return room.low - tile.from; }
};

/// "B3": the second row's third page.
std::string nameOf(const TrueTile &tile);

/// Divides a drawing over pages; without a way round, the one that takes fewer. Errors: more than 200 pages.
Result<TruePlan> planTrueSize(const TrueDrawing &drawing, Paper paper, std::optional<bool> sideways);

/// The part of a line inside a box; none: it lies outside.
std::optional<TrueLine> clippedTo(const PaperBox &box, const TrueLine &line);

} // namespace boltwright
