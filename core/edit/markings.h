#pragma once

#include "core/edit/layout_edit.h"

#include <optional>
#include <string>

/// Chalk lines and notes on the cloth, and the measuring tape. All places are in the frame of the bolt or remnant.
namespace boltwright {

const Markings &markingsOf(const Job &job, const SheetOf &sheet);

Job withChalkLine(Job job, const SheetOf &sheet, ChalkLine line); ///< it is the sheet's last
Job withChalkLineMoved(Job job, const SheetOf &sheet, int line, Length at);
Job withoutChalkLine(Job job, const SheetOf &sheet, int line);

Job withNotePinned(Job job, const SheetOf &sheet, ClothPoint at, const std::string &text); ///< it is the sheet's last
Job withNoteMoved(Job job, const SheetOf &sheet, int note, ClothPoint at);
Job withNoteSaying(Job job, const SheetOf &sheet, int note, const std::string &text); ///< nothing said: taken off
Job withoutNote(Job job, const SheetOf &sheet, int note);

/// A place that a line, pin or tape comes to rest at.
struct Mark {
    enum class Kind { Bare, Corner, Edge };
    Kind kind = Kind::Bare;
    ClothPoint at;
    std::string text; ///< "corner of Seat", "edge of Seat", "left selvage", "chalk line"; empty on bare cloth
};

/// The corner, or else the edge, of a cut, the cloth, a flaw or a chalk line that lies within `reach` of the hand; the
/// hand itself otherwise. With `from`, an edge is met straight across or along from there, where that is within reach.
Mark markNear(const Job &job, const Layout &layout, const SheetOf &sheet, ClothPoint hand, Length reach,
              const std::optional<ClothPoint> &from = {});

/// The nearest corner or edge going straight that way; none before the cloth ends.
std::optional<Mark> nextMark(const Job &job, const Layout &layout, const SheetOf &sheet, ClothPoint from,
                             Heading heading);

/// Where a chalk line comes to rest: at an edge of a cut, a corner or the middle of the cloth within `reach`.
Mark chalkPlace(const Job &job, const Layout &layout, const SheetOf &sheet, ChalkLine::Runs runs, Length hand,
                Length reach);

/// What the tape reads between two points.
struct TapeReading {
    Length straight; ///< to the nearest tick
    Length across, along;
};
TapeReading readTape(ClothPoint from, ClothPoint to);

/// One small step that way, 1/8 in or 2 mm; the cloth's reach is not left.
ClothPoint oneStep(const Job &job, const SheetOf &sheet, ClothPoint from, Heading heading);

/// What of the sheet lies on the table: the bolt as far as it is used and a little further, or the remnant's box.
ClothBox reachOf(const Job &job, const Layout &layout, const SheetOf &sheet);

} // namespace boltwright
