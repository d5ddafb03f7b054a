#include "core/planner/bounds/dual_feasible.h"

#include "core/planner/bounds/bounds.h"
#include "core/planner/bounds/reach.h"

#include <algorithm>
#include <optional>

namespace boltwright::planner {

std::int64_t DualFeasible::operator()(std::int64_t x) const {
    switch (m_kind) {
    case Kind::Same:
        return x;
    case Kind::Drop:
        if (x > m_capacity - m_k) return m_capacity;
        return x < m_k ? 0 : x;
    case Kind::Count:
        if (2 * x > m_capacity) return 2 * (m_capacity / m_k - (m_capacity - x) / m_k);
        if (2 * x == m_capacity) return m_capacity / m_k;
        return 2 * (x / m_k);
    case Kind::Round:
        if ((m_k + 1) * x % m_capacity == 0) return m_k * x;
        return (m_k + 1) * x / m_capacity * m_capacity;
    }
    return x;
}

std::vector<DualFeasible> dualFeasibleFor(const std::vector<std::int64_t> &sizes, std::int64_t capacity,
                                          std::size_t most) {
    using Kind = DualFeasible::Kind;
    std::vector<std::int64_t> thresholds;
    for (std::int64_t size : sizes) {
        if (size <= 0 || size > capacity) continue;
        thresholds.push_back(2 * size <= capacity ? size : capacity - size + 1);
    }
    std::sort(thresholds.begin(), thresholds.end());
    thresholds.erase(std::unique(thresholds.begin(), thresholds.end()), thresholds.end());
    std::vector<DualFeasible> functions = {{Kind::Same, 0, capacity}};
    const std::size_t each = std::max<std::size_t>(1, most / 2);
    const std::size_t stride = thresholds.size() / each + 1;
    for (std::size_t i = 0; i < thresholds.size(); i += stride) {
        const std::int64_t k = thresholds[i];
        if (2 * k > capacity) continue;
        functions.push_back({Kind::Drop, k, capacity});
        functions.push_back({Kind::Count, k, capacity});
    }
    for (std::int64_t k = 1; k <= 6; ++k) functions.push_back({Kind::Round, k, capacity});
    return functions;
}

namespace {

using Ticks = std::int64_t;
__extension__ using Sum = __int128;

struct Size {
    Ticks across, along;
};

/// The instance as boxes to be laid in boxes, each widened (see bounds.h).
struct Boxes {
    std::vector<std::vector<Size>> items; ///< by item: one for each option
    std::vector<Size> rooms;              ///< by sheet; an open one has no `along`
};

Boxes boxesOf(const Instance &instance, Ticks widenAcross, Ticks widenAlong) {
    Boxes boxes;
    for (const Sheet &sheet : instance.sheets) {
        const ClothBox box = boxOf(sheet.room);
        boxes.rooms.push_back({box.width().ticks() + widenAcross, sheet.open ? 0 : box.height().ticks() + widenAlong});
    }
    for (const Item &item : instance.items) {
        std::vector<Size> sizes;
        for (const Option &option : item.options) {
            if (!reachOf(instance, option)) continue;
            const Outline &outline = instance.outlines[std::size_t(option.outline)];
            const auto core = coreOf(outline);
            sizes.push_back(
                core ? Size{(core->right - core->left).ticks() + widenAcross, outline.height.ticks() + widenAlong}
                     : Size{0, 0});
        }
        if (!sizes.empty()) boxes.items.push_back(std::move(sizes));
    }
    return boxes;
}

/// Values of one function on one axis, option after option.
using Values = std::vector<Ticks>;

constexpr Ticks tooLarge = -1; ///< in place of a value: this option is longer than any room

template <class SizeOf>
std::vector<Values> valuesOf(const Boxes &boxes, const std::vector<DualFeasible> &functions, Ticks capacity,
                             SizeOf sizeOf) {
    std::vector<Values> all;
    for (const DualFeasible &f : functions) {
        Values values;
        for (const auto &item : boxes.items)
            for (const Size &size : item) values.push_back(sizeOf(size) > capacity ? tooLarge : f(sizeOf(size)));
        if (std::find(all.begin(), all.end(), values) == all.end())
            all.push_back(std::move(values));
        else
            all.emplace_back(); // tells nothing new
    }
    return all;
}

/// What all items need by one function an axis; nothing where an item has no option that could lie in a room.
std::optional<Sum> needOf(const Boxes &boxes, const Values &across, const Values &along) {
    Sum need = 0;
    std::size_t at = 0;
    for (const auto &item : boxes.items) {
        Sum least = -1;
        for (std::size_t k = 0; k < item.size(); ++k, ++at) {
            if (across[at] == tooLarge || along[at] == tooLarge) continue;
            const Sum value = Sum(across[at]) * along[at];
            if (least < 0 || value < least) least = value;
        }
        if (least < 0) return std::nullopt;
        need += least;
    }
    return need;
}

template <class SizeOf>
std::vector<Ticks> sizesOf(const Boxes &boxes, SizeOf sizeOf) {
    std::vector<Ticks> sizes;
    for (const auto &item : boxes.items)
        for (const Size &size : item) sizes.push_back(sizeOf(size));
    return sizes;
}

constexpr auto acrossOf = [](const Size &size) { return size.across; };
constexpr auto alongOf = [](const Size &size) { return size.along; };
constexpr std::size_t mostFunctions = 32;

/// Asks whether boxes fit, again and again for different lengths of the open room.
class Question {
public:
    explicit Question(Boxes boxes) : m_boxes(std::move(boxes)) {
        Ticks widest = 1;
        for (const Size &room : m_boxes.rooms) widest = std::max(widest, room.across);
        m_across = dualFeasibleFor(sizesOf(m_boxes, acrossOf), widest, mostFunctions);
        m_acrossValues = valuesOf(m_boxes, m_across, widest, acrossOf);
    }

    bool refutedAt(Ticks openLength) const {
        Boxes rooms{{}, m_boxes.rooms};
        Ticks longest = 1;
        for (Size &room : rooms.rooms) {
            if (room.along == 0) room.along = openLength;
            longest = std::max(longest, room.along);
        }
        const auto sizes = sizesOf(m_boxes, alongOf);
        const auto along = dualFeasibleFor(sizes, longest, mostFunctions);
        const auto alongValues = valuesOf(m_boxes, along, longest, alongOf);
        for (std::size_t f = 0; f < m_across.size(); ++f) {
            if (m_acrossValues[f].empty()) continue;
            for (std::size_t g = 0; g < along.size(); ++g) {
                if (alongValues[g].empty()) continue;
                Sum room = 0;
                for (const Size &r : rooms.rooms) room += Sum(m_across[f](r.across)) * along[g](r.along);
                const auto need = needOf(m_boxes, m_acrossValues[f], alongValues[g]);
                if (!need || *need > room) return true;
            }
        }
        return false;
    }

    Ticks tallest() const {
        Ticks most = 0;
        for (const auto &item : m_boxes.items) {
            Ticks least = item[0].along;
            for (const Size &size : item) least = std::min(least, size.along);
            most = std::max(most, least);
        }
        return most;
    }

private:
    Boxes m_boxes;
    std::vector<DualFeasible> m_across;
    std::vector<Values> m_acrossValues;
};

/// What the gap may be widened by, across and along.
std::vector<Size> widenings(Length gap) {
    if (gap == Length{}) return {{0, 0}};
    const Ticks g = gap.ticks(), half = rootBelow(g * g / 2);
    return {{0, g}, {half, half}, {g, 0}};
}

/// The least length (as widened) that is not refuted, no less than `from`.
Ticks leastLength(const Question &question, Ticks from) {
    // What cannot fit in some length cannot in less, so each refusal counts by itself, though a longer room may be
    // refused where a shorter one was not.
    Ticks refused = from - 1, open = from;
    for (Ticks step = std::max<Ticks>(1, from / 16); question.refutedAt(open); step *= 2) {
        refused = open;
        open += step;
    }
    while (open - refused > 1) {
        const Ticks middle = refused + (open - refused) / 2;
        (question.refutedAt(middle) ? refused : open) = middle;
    }
    return open;
}

} // namespace

Length leastByDualFeasible(const Instance &instance) {
    const Length low = boxOf(openSheet(instance)->room).low.y;
    Length best = low;
    for (const Size &widen : widenings(instance.gap)) {
        const Question question(boxesOf(instance, widen.across, widen.along));
        const Ticks from = std::max<Ticks>({question.tallest(), (best - low).ticks() + widen.along, 1});
        best = std::max(best, low + Length::ticks(leastLength(question, from) - widen.along));
    }
    return best;
}

bool dualFeasibleExceeded(const Instance &instance) {
    for (const Size &widen : widenings(instance.gap))
        if (Question(boxesOf(instance, widen.across, widen.along)).refutedAt(0)) return true;
    return false;
}

} // namespace boltwright::planner
