#include "core/planner/plain_walk.h"

#include <algorithm>
#include <bit>
#include <limits>
#include <numeric>

namespace boltwright::planner {
namespace {

constexpr Tick wall = std::numeric_limits<Tick>::max() / 2; ///< how far the sheet's sides reach up

/// How many steps back a change is compared with.
constexpr std::size_t lateSteps = 300;

/// How well a box fits that leaves nothing empty: across, then at its sides.
constexpr int filled = 4, filledLevel = 6, filledLevelBoth = 7, level = 3, beside = 1;

int filledScore(Tick height, Tick left, Tick right) {
    if (height == left && height == right) return filledLevelBoth;
    return height == left || height == right ? filledLevel : filled;
}

} // namespace

bool isPlain(const RectangleTask &task) {
    return task.sheets.size() == 1 && task.sheets[0].obstacles.empty() && task.sheets[0].flaws.empty() &&
           std::all_of(task.options.begin(), task.options.end(), [&](const RectangleOption &o) {
               return o.places.freeX() && o.places.freeY() && task.items[std::size_t(o.item)].group < 0;
           });
}

void PlainWalk::Trace::clear() {
    entries.clear();
    skylines.clear();
}

void PlainWalk::SizeIndex::build(const std::vector<Box> &boxes, Tick Box::*size) {
    const std::size_t slots = std::bit_ceil(4 * boxes.size() + 2);
    m_slots.assign(slots, {});
    m_shift = 64 - std::bit_width(slots - 1);
    m_boxes.resize(boxes.size());
    std::iota(m_boxes.begin(), m_boxes.end(), 0);
    auto sizeOf = [&](int b) { return boxes[std::size_t(b)].*size; };
    std::stable_sort(m_boxes.begin(), m_boxes.end(), [&](int a, int b) { return sizeOf(a) < sizeOf(b); });
    for (std::size_t first = 0, last = 0; first < m_boxes.size(); first = last) {
        const Tick here = sizeOf(m_boxes[first]);
        while (last < m_boxes.size() && sizeOf(m_boxes[last]) == here) ++last;
        m_slots[slotOf(here)] = {here, int(first), int(last)};
    }
}

std::size_t PlainWalk::SizeIndex::slotOf(Tick size) const {
    std::size_t at = (std::uint64_t(size) * 0x9e3779b97f4a7c15u) >> m_shift;
    while (m_slots[at].size != size && m_slots[at].size >= 0) at = (at + 1) & (m_slots.size() - 1);
    return at;
}

PlainWalk::SizeIndex::Range PlainWalk::SizeIndex::find(Tick size) const {
    const Slot &slot = m_slots[slotOf(size)];
    return {m_boxes.data() + slot.first, m_boxes.data() + slot.last};
}

PlainWalk::PlainWalk(const RectangleTask &task, std::uint64_t seed, int number)
    : m_task(task), m_random(seed * 1000003 + std::uint64_t(number)), m_x0(task.sheets[0].x0), m_y0(task.sheets[0].y0),
      m_x1(task.sheets[0].x1), m_fromNarrow(task.items.size()), m_order(firstOrder(task, number)),
      m_rank(task.items.size()), m_used(task.items.size()), m_next(task.items.size() + 1), m_laid(task.items.size()),
      m_late(lateSteps) {
    for (const RectangleOption &o : task.options) m_boxes.push_back({o.item, o.width, o.height});
    m_byWidth.build(m_boxes, &Box::width);
    m_byHeight.build(m_boxes, &Box::height);
    for (const RectangleItem &item : task.items) {
        Tick least = wall;
        for (int o = item.firstOption; o < item.endOption; ++o) least = std::min(least, m_boxes[std::size_t(o)].width);
        m_least.push_back(least);
    }
    std::iota(m_fromNarrow.begin(), m_fromNarrow.end(), 0);
    std::stable_sort(m_fromNarrow.begin(), m_fromNarrow.end(),
                     [&](int a, int b) { return m_least[std::size_t(a)] < m_least[std::size_t(b)]; });
    for (std::size_t p = 0; p < m_order.size(); ++p) m_rank[std::size_t(m_order[p])] = int(p);
    const Area mean = task.items.empty() ? 1 : task.itemArea() / Area(task.items.size());
    m_wasteBits = std::max(0, int(std::bit_width(std::uint64_t(mean))) - 5);
}

void PlainWalk::aim(Tick top) {
    m_top = m_task.open() ? top : m_task.sheets[0].y1;
    m_fresh = true;
}

void PlainWalk::startFrom(const std::vector<Laid> &laid) {
    sortAsLaid(m_order, m_task, laid);
    for (std::size_t p = 0; p < m_order.size(); ++p) m_rank[std::size_t(m_order[p])] = int(p);
    m_fresh = true;
}

bool PlainWalk::step() {
    if (m_fresh) return begin();
    if (m_order.size() < 2) return m_current == 0;
    const Move move = randomMove();
    apply(move);
    const std::size_t from = firstAffected(move);
    // Where nothing would be chosen otherwise the layout is the same, and the change costs nothing.
    if (from == m_kept.entries.size()) return false;
    Area &late = m_late[m_now];
    m_now = (m_now + 1) % m_late.size();
    const Area limit = std::max(m_current, late);
    const Area left = lay(from, limit);
    if (left == 0) readLayout(from);
    if (left <= limit) {
        m_current = left;
        keep(from);
    } else
        undo(move);
    late = m_current;
    return left == 0;
}

bool PlainWalk::begin() {
    m_kept.clear();
    const Area left = lay(0, m_task.itemArea());
    std::fill(m_laid.begin(), m_laid.end(), Laid{});
    readLayout(0);
    keep(0);
    std::fill(m_late.begin(), m_late.end(), left);
    m_current = left;
    m_fresh = false;
    return left == 0;
}

/// Lays everything from entry `from` on, and returns the area left over; or more than `limit`, as soon as that is
/// certain.
Area PlainWalk::lay(std::size_t from, Area limit) {
    restore(from);
    const Area mostWasted = limit + Area(m_x1 - m_x0) * (m_top - m_y0) - m_task.itemArea();
    while (m_left > 0) {
        const std::size_t low = lowestOf(m_steps);
        const Step step = m_steps[low];
        if (step.y >= m_top) break;
        const Gap gap = gapOf(low);
        Entry entry{gap, {}, step.x, step.y, m_tried.skylines.size(), m_steps.size(), m_left, m_wasted};
        m_tried.skylines.insert(m_tried.skylines.end(), m_steps.begin(), m_steps.end());
        entry.choice = choose(gap);
        if (entry.choice.box >= 0) {
            const Box &box = m_boxes[std::size_t(entry.choice.box)];
            entry.x = placeOf(box, gap, step, narrowestLeft());
            put(low, box, entry.x);
        } else
            m_wasted += raise(low, gap);
        m_tried.entries.push_back(entry);
        if (m_wasted > mostWasted) return limit + 1;
    }
    return m_left;
}

/// Takes up the construction that stands as it was before entry `from`.
void PlainWalk::restore(std::size_t from) {
    m_tried.clear();
    m_narrowest = 0;
    std::fill(m_used.begin(), m_used.end(), char(0));
    for (std::size_t e = 0; e < from; ++e)
        if (const int box = m_kept.entries[e].choice.box; box >= 0)
            m_used[std::size_t(m_boxes[std::size_t(box)].item)] = 1;
    std::size_t last = m_order.size(); // the one in front
    for (std::size_t p = 0; p < m_order.size(); ++p) {
        if (m_used[std::size_t(m_order[p])]) continue;
        m_next[last] = p;
        last = p;
    }
    m_next[last] = m_order.size();
    if (from == 0) {
        m_steps.assign(1, {m_x0, m_x1, m_y0});
        m_left = m_task.itemArea();
        m_wasted = 0;
        return;
    }
    const Entry &entry = m_kept.entries[from];
    const auto skyline = m_kept.skylines.begin() + std::ptrdiff_t(entry.firstStep);
    m_steps.assign(skyline, skyline + std::ptrdiff_t(entry.steps));
    m_left = entry.left;
    m_wasted = entry.wasted;
}

PlainWalk::Gap PlainWalk::gapOf(std::size_t low) const {
    const Step &step = m_steps[low];
    const Tick left = low > 0 ? m_steps[low - 1].y - step.y : wall;
    const Tick right = low + 1 < m_steps.size() ? m_steps[low + 1].y - step.y : wall;
    return {step.end - step.x, left, right, m_top - step.y};
}

Tick PlainWalk::narrowestLeft() {
    while (m_narrowest < m_fromNarrow.size() && m_used[std::size_t(m_fromNarrow[m_narrowest])]) ++m_narrowest;
    return m_narrowest < m_fromNarrow.size() ? m_least[std::size_t(m_fromNarrow[m_narrowest])] : wall;
}

PlainWalk::Choice PlainWalk::choose(const Gap &gap) {
    const Tick narrowest = narrowestLeft();
    if (narrowest > gap.room) return {};
    if (const Choice c = fullWidth(gap); c.box >= 0) return c;
    if (const Choice c = level(gap, narrowest); c.box >= 0) return c;
    return firstFitting(gap, narrowest);
}

PlainWalk::Choice PlainWalk::fullWidth(const Gap &gap) const {
    Choice best;
    int bestRank = 0;
    for (int b : m_byWidth.find(gap.room)) {
        const Box &box = m_boxes[std::size_t(b)];
        if (m_used[std::size_t(box.item)] || box.height > gap.height) continue;
        const int score = filledScore(box.height, gap.left, gap.right), rank = m_rank[std::size_t(box.item)];
        if (best.box >= 0 && (score < best.score || (score == best.score && rank >= bestRank))) continue;
        best = {b, score};
        bestRank = rank;
    }
    return best;
}

/// What ends level with a wall and leaves room beside it that can be used.
PlainWalk::Choice PlainWalk::level(const Gap &gap, Tick narrowest) const {
    Choice best;
    int bestRank = 0;
    auto lookUp = [&](Tick height) {
        if (height > gap.height) return;
        for (int b : m_byHeight.find(height)) {
            const Box &box = m_boxes[std::size_t(b)];
            const int rank = m_rank[std::size_t(box.item)];
            if (m_used[std::size_t(box.item)] || box.width > gap.room - narrowest) continue;
            if (best.box >= 0 && rank >= bestRank) continue;
            best = {b, planner::level};
            bestRank = rank;
        }
    };
    lookUp(gap.left);
    if (gap.right != gap.left) lookUp(gap.right);
    return best;
}

/// The first that wastes nothing; where all do, what wastes least.
PlainWalk::Choice PlainWalk::firstFitting(const Gap &gap, Tick narrowest) {
    Choice best;
    std::size_t last = m_order.size();
    for (std::size_t p = m_next[last]; p < m_order.size(); p = m_next[p]) {
        const int i = m_order[p];
        if (m_used[std::size_t(i)]) {
            m_next[last] = m_next[p];
            continue;
        }
        last = p;
        const RectangleItem &item = m_task.items[std::size_t(i)];
        for (int b = item.firstOption; b < item.endOption; ++b) {
            const Box &box = m_boxes[std::size_t(b)];
            if (box.width > gap.room || box.height > gap.height) continue;
            if (gap.room - box.width >= narrowest) return {b, beside};
            const int score = scoreOf(box, gap, narrowest);
            if (best.box < 0 || score > best.score) best = {b, score};
        }
    }
    return best;
}

int PlainWalk::scoreOf(const Box &box, const Gap &gap, Tick narrowest) const {
    if (box.width == gap.room) return filledScore(box.height, gap.left, gap.right);
    return std::max(sideScore(box, gap.left, gap.right, gap.room, narrowest),
                    sideScore(box, gap.right, gap.left, gap.room, narrowest));
}

/// Of a box narrower than the gap, beside one of its walls.
int PlainWalk::sideScore(const Box &box, Tick wallBeside, Tick opposite, Tick room, Tick narrowest) const {
    const int fit = box.height == wallBeside ? planner::level : beside;
    if (room - box.width >= narrowest) return fit;
    const Area waste = Area(room - box.width) * std::min(box.height, opposite);
    return fit - 8 * (1 + std::max(0, int(std::bit_width(std::uint64_t(waste))) - m_wasteBits));
}

/// At the wall where it fits better; among equals at the higher one.
Tick PlainWalk::placeOf(const Box &box, const Gap &gap, const Step &step, Tick narrowest) const {
    if (box.width == gap.room) return step.x;
    const int left = sideScore(box, gap.left, gap.right, gap.room, narrowest),
              right = sideScore(box, gap.right, gap.left, gap.room, narrowest);
    const bool atRight = left == right ? gap.right > gap.left : right > left;
    return atRight ? step.end - box.width : step.x;
}

void PlainWalk::put(std::size_t low, const Box &box, Tick x) {
    const auto item = std::size_t(box.item);
    m_used[item] = 1;
    m_left -= m_task.items[item].area;
    const Step step = m_steps[low];
    const Step laid{x, x + box.width, step.y + box.height};
    m_steps[low] = laid;
    if (laid.end < step.end) m_steps.insert(m_steps.begin() + std::ptrdiff_t(low) + 1, {laid.end, step.end, step.y});
    if (step.x < laid.x) {
        m_steps.insert(m_steps.begin() + std::ptrdiff_t(low), {step.x, laid.x, step.y});
        ++low;
    }
    joinAt(m_steps, low);
}

/// Gives a gap up to where its lower wall ends; returns what that wastes.
Area PlainWalk::raise(std::size_t low, const Gap &gap) {
    const Tick by = std::min(gap.height, std::min(gap.left, gap.right));
    m_steps[low].y += by;
    joinAt(m_steps, low);
    return Area(gap.room) * by;
}

PlainWalk::Move PlainWalk::randomMove() {
    const int n = int(m_order.size());
    Move move;
    move.from = std::size_t(m_random.below(n));
    move.to = std::size_t(m_random.below(n - 1));
    if (move.to >= move.from) ++move.to;
    move.swapped = m_random.oneIn(2);
    return move;
}

void PlainWalk::apply(const Move &move) {
    if (!move.swapped) return moveItem(move.from, move.to);
    std::swap(m_order[move.from], m_order[move.to]);
    m_rank[std::size_t(m_order[move.from])] = int(move.from);
    m_rank[std::size_t(m_order[move.to])] = int(move.to);
}

void PlainWalk::undo(const Move &move) {
    if (move.swapped) return apply(move);
    moveItem(move.to, move.from);
}

void PlainWalk::moveItem(std::size_t from, std::size_t to) {
    const int item = m_order[from];
    const int way = from < to ? 1 : -1;
    for (std::size_t p = from; p != to; p += std::size_t(way)) {
        m_order[p] = m_order[p + std::size_t(way)];
        m_rank[std::size_t(m_order[p])] = int(p);
    }
    m_order[to] = item;
    m_rank[std::size_t(item)] = int(to);
}

/// The first entry that the move, just made, could change.
std::size_t PlainWalk::firstAffected(const Move &move) const {
    const int a = m_order[move.to], b = move.swapped ? m_order[move.from] : a;
    for (std::size_t e = 0; e < m_kept.entries.size(); ++e) {
        const Entry &entry = m_kept.entries[e];
        if (entry.choice.box < 0) continue; // nothing fitted
        const int item = m_boxes[std::size_t(entry.choice.box)].item;
        if (item == a || item == b || comesBefore(a, entry) || comesBefore(b, entry)) return e;
    }
    return m_kept.entries.size();
}

/// Whether an item not laid yet may win over what was chosen, now that it comes first. Waste is not looked at, which
/// only means that a little too much is laid again.
bool PlainWalk::comesBefore(int i, const Entry &entry) const {
    const int chosen = m_boxes[std::size_t(entry.choice.box)].item;
    if (m_rank[std::size_t(i)] > m_rank[std::size_t(chosen)]) return false;
    const Gap &gap = entry.gap;
    const RectangleItem &item = m_task.items[std::size_t(i)];
    for (int b = item.firstOption; b < item.endOption; ++b) {
        const Box &box = m_boxes[std::size_t(b)];
        if (box.width > gap.room || box.height > gap.height) continue;
        const int most = box.width == gap.room ? filledScore(box.height, gap.left, gap.right)
                         : box.height == gap.left || box.height == gap.right ? planner::level
                                                                             : beside;
        if (most >= entry.choice.score) return true;
    }
    return false;
}

/// Makes what was tried from entry `from` on part of what stands.
void PlainWalk::keep(std::size_t from) {
    if (from == 0) {
        std::swap(m_kept, m_tried);
        return;
    }
    const std::size_t base = m_kept.entries[from].firstStep;
    m_kept.entries.resize(from);
    m_kept.skylines.resize(base);
    for (Entry &entry : m_tried.entries) {
        entry.firstStep += base;
        m_kept.entries.push_back(entry);
    }
    m_kept.skylines.insert(m_kept.skylines.end(), m_tried.skylines.begin(), m_tried.skylines.end());
}

/// Reads a layout: what stands up to entry `from`, then what was tried.
void PlainWalk::readLayout(std::size_t from) {
    m_reached = m_y0;
    auto read = [&](const Entry &entry) {
        if (entry.choice.box < 0) return;
        const Box &box = m_boxes[std::size_t(entry.choice.box)];
        m_laid[std::size_t(box.item)] = {entry.choice.box, entry.x, entry.y};
        m_reached = std::max(m_reached, entry.y + box.height);
    };
    for (std::size_t e = 0; e < from; ++e) read(m_kept.entries[e]);
    for (const Entry &entry : m_tried.entries) read(entry);
}

} // namespace boltwright::planner
