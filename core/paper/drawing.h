#pragma once

#include "core/paper/cloth_sheet.h"

#include <optional>
#include <vector>

/// The geometry of a drawn sheet beyond the cuts themselves. For drawing only: nothing here decides anything.
namespace boltwright {

/// The repeat, lightly: a line along every column (or stripe), across every row where no drop moves the columns, and
/// the motifs themselves. Empty where neighbours would lie nearer than `least`: then there is nothing to see.
struct PatternMarks {
    std::vector<ClothLine> lines;
    std::vector<ClothPoint> motifs; ///< only with both repeats
};
PatternMarks patternMarks(const Lattice &lattice, const ClothBox &shown, Length least);

/// The part of a ring between two levels along the roll. Of a concave ring it may hang together by edges without width.
ClothRing clippedAlong(const ClothRing &ring, Length from, Length to);
/// The edges of a ring between two levels, without the cuts that clipping would add.
std::vector<ClothLine> edgesAlong(const ClothRing &ring, Length from, Length to);
/// The part of a line between two levels; none where it lies outside.
std::optional<ClothLine> clippedAlong(const ClothLine &line, Length from, Length to);

/// Where a straight way from a point inside a ring first meets it; rounded to ticks.
std::optional<ClothPoint> edgeMet(const ClothRing &ring, ClothPoint from, Vector direction);

/// The lines of a cut on which its motif sits, from edge to edge: level with it side to side, up, or both, as asked.
std::vector<ClothLine> centrelines(const Job &job, const Layout &layout, const SheetCut &cut);

/// The cut's top arrow: from `middle` straight towards the panel's top, its tip on the outline and its feet `size`
/// behind.
struct TopWedge {
    ClothPoint tip, left, right;
};
TopWedge topWedge(const SheetCut &cut, ClothPoint middle, Length size);

} // namespace boltwright
