#pragma once

#include "core/planner/random.h"
#include "core/planner/skyline.h"
#include "core/planner/walk.h"

namespace boltwright::planner {

/// A local search over the order in which the skyline takes the items: below a ceiling that comes down each time
/// everything fits under it, the area left over is what has to fall (Wei, Oon, Zhu & Lim 2011). Late acceptance (Burke
/// & Bykov 2017): a change is kept when it is no worse than what stood some steps ago.
class OrderWalk : public Walk {
public:
    OrderWalk(const RectangleTask &task, std::uint64_t seed, int number);

    void aim(Tick top) override;
    Tick top() const override { return m_top; }
    void startFrom(const std::vector<Laid> &laid) override;
    bool step() override;
    const std::vector<Laid> &laid() const override { return m_skyline.laid(); }
    Tick reached() const override { return m_skyline.reached(); }

private:
    void change();
    void undo();

    const RectangleTask &m_task;
    Random m_random;
    Skyline m_skyline;
    std::vector<int> m_order, m_sheets;
    std::vector<int> m_undoOrder, m_undoSheets;
    std::vector<Area> m_late;
    std::size_t m_now = 0;
    Area m_current = 0;
    Tick m_top = 0;
    bool m_fresh = true;
};

} // namespace boltwright::planner
