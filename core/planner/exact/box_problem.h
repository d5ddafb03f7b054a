#pragma once

#include "core/planner/instance.h"

#include <cstdint>
#include <optional>
#include <vector>

namespace boltwright::planner {

/// An instance of rectangles as whole numbers: every sheet from its own lower left corner, the sheets side by side
/// along x, every rectangle widened so that keeping apart on one axis is all that is asked of two of them, and on each
/// axis only those places at which an item comes to rest when all are pushed together.
///
/// The widening says what an answer is worth. A gap is a true distance. Widened by the gap both ways, a layout found is
/// right, but that there is none proves nothing: corner to corner, items may lie nearer than that on both axes. Widened
/// by `across` and `along` with across² + along² at most gap², that there is none is proved, but a layout found has to
/// be looked at again. Without a gap both hold.
struct BoxProblem {
    using Ticks = std::int64_t;

    struct Widening {
        Ticks across = 0, along = 0;
    };

    /// One option of an item.
    struct Mode {
        int item = 0;
        int option = 0;
        int sheet = 0;
        Ticks width = 0, height = 0; ///< widened
        std::vector<Ticks> xs, ys;   ///< places of the corner, rising; never empty
        bool dropped = false;        ///< which of the ys are open depends on x: see `open`
    };

    struct Item {
        int item = 0;
        int kind = 0;
        int group = -1;
        bool hidden = false;
        std::vector<Mode> modes;
        /// All places of all modes, rising.
        std::vector<Ticks> xs, ys;
    };

    /// An item at (x, y) is in its way when x + width > x1, x < x2, and likewise along.
    struct Block {
        int sheet = 0;
        Ticks x1 = 0, x2 = 0, y1 = 0, y2 = 0;
        bool flaw = false; ///< hidden items may cross it
    };

    const Instance *instance = nullptr;
    Widening widening;
    std::vector<Item> items;
    std::vector<Block> blocks;
    std::vector<ClothPoint> origins;    ///< by sheet: the cloth's point at x = lefts[sheet], y = 0
    std::vector<Ticks> lefts;           ///< by sheet: where it begins along x
    std::vector<Ticks> widths, heights; ///< by sheet, the room's box, widened; what can be of no use taken off
    std::vector<Ticks> steps;           ///< by sheet: all ends along, widened, are multiples of this when pushed down
    Ticks lineX = 0, lineY = 0;  ///< on the only sheet: free items are pushed down below this line, up from it on
    bool impossible = false;     ///< some item has no place at all
    bool groupsLeftOpen = false; ///< some group shares a phase that no option fixes; here its items are free of it
    bool plain = false;          ///< one sheet, free places, nothing in the way, one mode an item

    /// Whether a mode may lie there, beside being one of its xs and ys: on a lattice with a drop.
    bool open(const Mode &mode, Ticks x, Ticks y) const;
    /// Whether two options of one group can go together.
    bool together(const Mode &a, const Mode &b) const;

    /// Whether a layout found also keeps the phases of groups that were left open. Exactly: none that a rounding saves.
    bool phasesAgree(const std::vector<Placement> &placements) const;

    ClothPoint cloth(const Mode &mode, Ticks x, Ticks y) const;
    /// How many clauses or so a search by clauses would need.
    std::size_t size() const;
};

/// Whether an instance can be put as a BoxProblem: rectangles on cloth with upright edges.
bool understood(const Instance &instance);

/// Nothing when there would be too many places to be worth it. `length` is where an open sheet ends.
std::optional<BoxProblem> boxProblem(const Instance &instance, Length length, BoxProblem::Widening widening);

/// Upright boxes that together are the ring (edges along the axes only), or what its box holds beside it.
std::vector<ClothBox> boxesOf(const ClothRing &ring);
std::vector<ClothBox> boxesBeside(const ClothRing &ring);

} // namespace boltwright::planner
