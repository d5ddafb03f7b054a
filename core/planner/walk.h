#pragma once

#include "core/planner/rectangle_task.h"

#include <vector>

namespace boltwright::planner {

/// Where a construction put an item; `option` is an index into RectangleTask::options, -1 for an item left over.
struct Laid {
    int option = -1;
    Tick x = 0, y = 0;
};

/// A local search that lays all items again and again below a ceiling.
class Walk {
public:
    virtual ~Walk() = default;

    /// Sets the ceiling (grown y) that everything has to fit under.
    virtual void aim(Tick top) = 0;
    virtual Tick top() const = 0;
    /// Starts over from the order of this layout, from the low end up.
    virtual void startFrom(const std::vector<Laid> &laid) = 0;
    /// One construction. True when everything lies under the ceiling: then `laid` and `reached` tell.
    virtual bool step() = 0;

    /// By item: of the last construction that laid all, or of an earlier one while none has.
    virtual const std::vector<Laid> &laid() const = 0;
    virtual Tick reached() const = 0; ///< its greatest grown y on the open sheet
};

/// The order (of all items) that a search numbered so starts from: the first ones by height and by girth, from the
/// greatest down.
std::vector<int> firstOrder(const RectangleTask &task, int number);

/// Sorts `order` as the layout has the items, sheet by sheet, from the low end up.
void sortAsLaid(std::vector<int> &order, const RectangleTask &task, const std::vector<Laid> &laid);

} // namespace boltwright::planner
