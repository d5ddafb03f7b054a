#pragma once

#include "core/planner/instance.h"

#include <cstdint>
#include <optional>
#include <vector>

/// A rectilinear instance as the rectangle search sees it. Coordinates are ticks in 32 bits (a job ends at 1 km). The
/// gap is folded in once: every item, fixed ones too, is grown by it to the right and upwards, and so is the room, so
/// that grown items that do not overlap keep their distance. What asks for no gap (flaws, notches of the room) has its
/// low sides moved in by the gap instead.
namespace boltwright::planner {

using Tick = std::int32_t;

/// The places open to one option on its sheet, as columns and rows.
struct Places {
    Tick xStep = 0;  ///< zero: every x
    Tick xFirst = 0; ///< the first column inside the room
    Tick yStep = 0;  ///< zero: every y
    Tick yDivide = 1;
    Tick y0 = 0;                ///< one row, where all columns have the same
    std::vector<Tick> columnY0; ///< one row of each column inside the room, where a drop moves them

    bool freeX() const { return xStep == 0; }
    bool freeY() const { return yStep == 0; }
    /// The lowest row at or above `from`; `x` is one of the columns.
    Tick nextY(Tick x, Tick from) const;
};

/// A grown rectangle that may not be entered. Where a side was moved in past the other, `x0 >= x1` still blocks what
/// reaches across.
struct Obstacle {
    Tick x0, y0, x1, y1;
    bool blocks(Tick x, Tick y, Tick width, Tick height) const {
        return x < x1 && x + width > x0 && y < y1 && y + height > y0;
    }
};

struct RectangleSheet {
    Tick x0, y0, x1, y1;             ///< the room's box, grown
    std::vector<Obstacle> obstacles; ///< for every item: notches and fixed items
    std::vector<Obstacle> flaws;     ///< for items that are not hidden
    Tick used = 0;                   ///< the greatest (grown) y of fixed items; the room's low side without any
    int lot = 0;
};

struct RectangleOption {
    int item = 0;
    int index = 0; ///< in Item::options
    int sheet = 0;
    Turn turn = Turn::Deg0;
    Tick width = 0, height = 0; ///< grown
    Places places;
};

struct RectangleItem {
    int firstOption = 0, endOption = 0; ///< in RectangleTask::options
    int group = -1;
    bool hidden = false;
    Area area = 0; ///< grown
};

class RectangleTask {
public:
    explicit RectangleTask(const Instance &instance);

    const Instance &instance() const { return *m_instance; }
    Tick gap() const { return m_gap; }
    bool open() const { return m_open; }
    /// All lengths of layouts of an open sheet pushed down as far as they go differ by whole multiples of this.
    Tick unit() const { return m_unit; }
    Area itemArea() const { return m_itemArea; }

    std::vector<RectangleSheet> sheets;
    std::vector<RectangleItem> items;
    std::vector<RectangleOption> options; ///< item by item, without doubles

    /// The places of `option` on its sheet under `set`.
    Places placesOf(const PlaceSet &set, int sheet, Tick width) const;
    Placement placement(const RectangleOption &option, Tick x, Tick y) const;

private:
    const Instance *m_instance;
    Tick m_gap = 0;
    bool m_open = false;
    Tick m_unit = 1;
    Area m_itemArea = 0;
};

} // namespace boltwright::planner
