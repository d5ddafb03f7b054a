#include "core/planner/order_walk.h"

#include <algorithm>
#include <numeric>

namespace boltwright::planner {
namespace {

/// How many steps back a change is compared with.
constexpr std::size_t lateSteps = 300;

} // namespace

OrderWalk::OrderWalk(const RectangleTask &task, std::uint64_t seed, int number)
    : m_task(task), m_random(seed * 1000003 + std::uint64_t(number)), m_skyline(task),
      m_order(firstOrder(task, number)), m_sheets(task.sheets.size()), m_late(lateSteps) {
    std::iota(m_sheets.begin(), m_sheets.end(), 0);
}

void OrderWalk::aim(Tick top) {
    m_top = top;
    m_fresh = true;
}

void OrderWalk::startFrom(const std::vector<Laid> &laid) { sortAsLaid(m_order, m_task, laid); }

bool OrderWalk::step() {
    if (!m_fresh) change();
    const Area limit = m_fresh ? m_task.itemArea() : std::max(m_current, m_late[m_now]);
    const Area left = m_skyline.lay(m_order, m_sheets, m_top, limit);
    if (m_fresh) {
        std::fill(m_late.begin(), m_late.end(), left);
        m_current = left;
        m_fresh = false;
        return left == 0;
    }
    Area &late = m_late[m_now];
    m_now = (m_now + 1) % m_late.size();
    if (left <= m_current || left <= late)
        m_current = left;
    else
        undo();
    late = m_current;
    return left == 0;
}

void OrderWalk::change() {
    m_undoOrder = m_order;
    m_undoSheets = m_sheets;
    auto pick = [this](std::size_t n) { return std::size_t(m_random.below(int(n))); };
    if (m_sheets.size() > 1 && m_random.oneIn(20))
        std::swap(m_sheets[pick(m_sheets.size())], m_sheets[pick(m_sheets.size())]);
    if (m_order.size() < 2) return;
    const std::size_t a = pick(m_order.size()), b = pick(m_order.size());
    if (m_random.oneIn(2)) {
        std::swap(m_order[a], m_order[b]);
        return;
    }
    const auto from = m_order.begin() + std::ptrdiff_t(a), to = m_order.begin() + std::ptrdiff_t(b);
    if (a < b)
        std::rotate(from, from + 1, to + 1);
    else
        std::rotate(to, from, from + 1);
}

void OrderWalk::undo() {
    m_order = m_undoOrder;
    m_sheets = m_undoSheets;
}

} // namespace boltwright::planner
