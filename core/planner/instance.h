#pragma once

#include "core/cloth/pattern.h"
#include "core/cloth/place_set.h"
#include "core/geometry/polygon.h"
#include "core/measure/turn.h"

#include <optional>
#include <vector>

/// What the search works on: one cloth's share of a job, with every rule already turned into shapes and allowed places.
/// The search knows nothing of panels, allowances or trade words; the rules know nothing of search.
namespace boltwright::planner {

/// A polygon that items are cut as, in cloth axes, lower left corner of its box at the origin, counter-clockwise,
/// simple, whole ticks.
struct Outline {
    ClothRing ring;
    std::vector<ClothRing> parts; ///< convex, counter-clockwise, together the ring; one part when it is convex
    Length width, height;         ///< of the box
    bool rectangle = false;       ///< it is its box
    Area area = 0;                ///< of the ring, square ticks (rounded down)
};

/// Where items may lie: a bolt (open) or one remnant.
struct Sheet {
    /// The room left once selvage, squared end and edge distance are taken off; simple, counter-clockwise. Items lie
    /// wholly inside (touching is right). For a bolt an upright rectangle that reaches up to the bolt's length.
    ClothRing room;
    bool open = false; ///< a bolt: use as little length as possible
    std::vector<ClothRing>
        flaws; ///< counter-clockwise, simple; items keep off them (touching is right; no gap) unless hidden
    std::optional<Lattice> lattice;
    int lot = 0; ///< equal numbers: one dye lot
};

/// One way to lay an item on one sheet.
struct Option {
    int sheet = 0;
    Turn turn = Turn::Deg0;
    int outline = 0; ///< index into Instance::outlines
    PlaceSet places; ///< for the lower left corner of the outline's box, by the item's own wishes alone
    Vector anchor;   ///< from that corner to the point whose phase the item's group shares
};

/// Something to lay once. Items with equal `kind` are interchangeable (same options and no group, or swapped whole).
struct Item {
    std::vector<Option> options; ///< at least one, best-liked first; several sheets or turns
    int group = -1;              ///< index into Instance::groups; -1: none
    bool hidden = false;         ///< may cross flaws
    int kind = 0;
};

/// Items whose anchors all have one phase: any two anchors, each taken from its own sheet's motif, differ by a whole
/// step of the lattice (on the axes that repeat), and all are laid with the same turn, on one dye lot.
/// On cloth without a lattice only the turn (and lot) is shared.
struct Group {
    std::vector<int> items;
};

/// Something already lying there, which stays: a locked or cut panel.
struct Fixed {
    int sheet = 0;
    int outline = 0;
    ClothPoint corner;
};

/// Where an item lies: the lower left corner of its box, and which of its options.
struct Placement {
    int item = 0;
    int option = 0;
    ClothPoint corner;
    bool operator==(const Placement &) const = default;
};

struct Instance {
    Length gap;                ///< between items, and between items and fixed ones; not to flaws or to the room's edge
    std::vector<Sheet> sheets; ///< one open sheet, or remnants
    std::vector<Outline> outlines;
    std::vector<Item> items;
    std::vector<Group> groups;
    std::vector<Fixed> fixed;

    /// Every outline is a rectangle and every room and flaw is made of upright edges.
    bool rectilinear() const;
};

/// Makes an outline from a simple ring (any place): moves it to the origin, splits it, measures it.
Outline makeOutline(ClothRing ring);

/// The places left to an option once its group's phase is known: `phase` is any anchor of the group already laid,
/// relative to the motif of the sheet it lies on. None: that option cannot join the group there.
std::optional<PlaceSet> placesInGroup(const Instance &instance, const Option &option, std::optional<Vector> phase);

/// The greatest y that placements and fixed outlines on `sheet` reach; the room's lower edge if none does.
Length lengthUsed(const Instance &instance, const std::vector<Placement> &placements, int sheet);

/// Whether a complete set of placements keeps every rule of the instance exactly (tolerance as for checks: 8 ticks on a
/// gap of slanted edges, 4 on places). Slow and plain: for tests and as the planner's last look.
bool holds(const Instance &instance, const std::vector<Placement> &placements);

} // namespace boltwright::planner
