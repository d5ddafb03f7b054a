#include "core/planner/walk.h"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace boltwright::planner {

std::vector<int> firstOrder(const RectangleTask &task, int number) {
    std::vector<int> order(task.items.size());
    std::iota(order.begin(), order.end(), 0);
    auto width = [&](int i) { return task.options[std::size_t(task.items[std::size_t(i)].firstOption)].width; };
    auto height = [&](int i) { return task.options[std::size_t(task.items[std::size_t(i)].firstOption)].height; };
    auto area = [&](int i) { return task.items[std::size_t(i)].area; };
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
        switch (number % 4) {
        case 0:
            return height(a) > height(b);
        case 1:
            return width(a) + height(a) > width(b) + height(b);
        case 2:
            return width(a) > width(b);
        default:
            return area(a) > area(b);
        }
    });
    return order;
}

void sortAsLaid(std::vector<int> &order, const RectangleTask &task, const std::vector<Laid> &laid) {
    std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
        const Laid &p = laid[std::size_t(a)], &q = laid[std::size_t(b)];
        const int sheetP = task.options[std::size_t(p.option)].sheet,
                  sheetQ = task.options[std::size_t(q.option)].sheet;
        return std::tie(sheetP, p.y, p.x) < std::tie(sheetQ, q.y, q.x);
    });
}

} // namespace boltwright::planner
