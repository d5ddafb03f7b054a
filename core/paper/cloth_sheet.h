#pragma once

#include "core/job/job.h"

#include <optional>
#include <string>
#include <vector>

/// What goes on paper is decided here, in exact lengths on the cloth; whoever paints only scales it.
namespace boltwright {

/// A cut as it lies, ready to be drawn or chalked.
struct SheetCut {
    int cut = 0;        ///< index into the layout's cuts
    ClothRing outline;  ///< where the scissors go; counter-clockwise
    ClothRing measured; ///< the measured shape (of a piece: its part of it); counter-clockwise
    ClothBox box;       ///< of `outline`
    Vector up;          ///< the panel's up axis as it lies, 1 mm long
    /// Where the point lies that was asked to sit on a motif; none: nothing was asked, it was given up, or another
    /// piece holds it.
    std::optional<ClothPoint> motif;
};

struct ClothLine {
    ClothPoint from, to;
};

/// A note that was pinned to the cloth, with the letter that stands for it on the sheet.
struct SheetNote {
    std::string letter; ///< "a", "b" … "z", "aa", …: through all bolts and remnants, so that each stands for one note
    ClothPoint at;
    Length fromSelvage, fromEnd; ///< as a cut's: on a remnant from its own leftmost point and end
    std::string text;
};

/// One bolt or remnant with what a layout lays on it.
struct ClothSheet {
    std::string cloth;
    std::optional<std::string> on; ///< the remnant; none on a bolt
    ClothRing outline;   ///< a remnant's outline; of a bolt from the cut end to its end, or a hand beyond the last cut
    bool goesOn = false; ///< a bolt that reaches further than `outline` shows
    Length lastCut;      ///< the greatest y of any cut
    std::vector<SheetCut> cuts;        ///< in the order of the layout
    std::vector<SheetNote> notes = {}; ///< also those beyond what `outline` shows: they are said, and not drawn
    std::vector<ClothLine> chalk = {}; ///< lines of chalk, from edge to edge of the outline's box

    ClothBox box() const { return boxOf(outline); }
};

/// Every bolt and remnant that the layout cuts from, in the job's order; those without a cut are left out.
std::vector<ClothSheet> clothSheets(const Job &job, const Layout &layout);

/// Whether the copy was freed from motif, alike and flow.
bool isFreed(const Layout &layout, const Cut &cut);

} // namespace boltwright
