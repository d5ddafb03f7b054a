#pragma once

#include "core/check/motif_grid.h"
#include "core/check/plain_outline.h"
#include "core/job/job.h"

#include <map>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace boltwright::judge {

/// Rounding that a checker allows, in ticks: on a place or motif, and on a gap or a remnant's edge.
constexpr double placeTolerance = 4, gapTolerance = 8;

inline double ticksOf(Length length) { return double(length.ticks()); }

/// One copy of a panel as the layout makes it: its cuts by piece.
struct Copy {
    const Panel *panel = nullptr;
    int number = 1;
    std::vector<const Cut *> cuts;
    bool whole = false; ///< one cut, or the pieces 1 to n of n
    bool pieced() const { return cuts.front()->of > 1; }
};

/// The part of a pieced copy that one piece shows, along the longer cut side: where its joins are, seams left out.
struct Share {
    bool upwards = false; ///< the pieces lie above one another; otherwise side by side
    double from = 0, to = 0;
    bool first = true, last = true;
};

/// One cut as it lies on the cloth, and the way from the panel's frame to it.
struct LaidCut {
    const Cut *cut = nullptr;
    const Panel *panel = nullptr;
    const Cloth *cloth = nullptr;
    const Remnant *remnant = nullptr; ///< null on a bolt
    std::optional<MotifGrid> grid;
    Outline measured;           ///< the measured shape in the panel's frame, bottom edge first
    Outline outline;            ///< the cut outline on the cloth, counter-clockwise
    Bounds bounds;              ///< of the outline
    std::optional<Share> share; ///< none for a whole cut
    Spot moved;

    Spot turned(Spot p) const; ///< a displacement of the panel, as it lies
    Spot at(Spot p) const { return turned(p) + moved; }
    /// Whether a point of the panel belongs to this piece; a point on a join belongs to the piece after it.
    bool holds(Spot p) const;
};

/// Everything the judge looks at, prepared once. Refers to the job and the layout, which outlive it.
struct Scene {
    const Job &job;
    const Layout &layout;
    std::map<std::string, const Panel *> panels;
    std::map<std::string, const Cloth *> cloths;
    std::map<std::pair<std::string, int>, Copy> copies; ///< by panel id and number; of panels the job has
    std::vector<LaidCut> laid; ///< the cuts that can be laid; what keeps one from it is another finding

    Scene(const Job &theJob, const Layout &theLayout);
    const Panel *panel(const std::string &id) const;
    const Cloth *cloth(const std::string &id) const;
    const Cloth *homeOf(const Panel &panel) const; ///< the cloth it wants; null: the job has none of that id
    const Cloth *clothOf(const Cut &cut) const;    ///< the cloth it lies on; null likewise
    /// The layout lists this concession for this copy, on whatever edge.
    bool concedes(Concession::Kind kind, const std::string &panel, int copy) const;
    /// Motif, alike and pattern match of that copy are given up, with leave.
    bool offCentre(const LaidCut &one) const;
};

/// The measured shape's corners in the panel's frame, counter-clockwise, bottom edge first.
Outline measuredCorners(const Shape &shape);
Spot middleOf(const Outline &measured, std::size_t edge);
/// The panel's motif point; where it names none, its middle.
Spot motifPointOf(const Panel &panel, const Outline &measured);

Length preferredAllowance(const Panel &panel, std::size_t edge);
Length leastAllowanceOf(const Panel &panel, std::size_t edge);
Length allowanceLeft(const Panel &panel, const Cut &cut, std::size_t edge);
/// The measured shape with what was left on each edge of this cut, whole.
Outline wholeCutOutline(const Panel &panel, const Cut &cut);

/// The turns that the panel's run allows on that cloth without a concession.
bool runAllows(const Panel &panel, const Cloth &cloth, Turn turn);
bool eitherAllows(const Cloth &cloth, Turn turn);

} // namespace boltwright::judge
