#pragma once

#include "core/planner/random.h"
#include "core/planner/steps.h"
#include "core/planner/walk.h"

#include <vector>

namespace boltwright::planner {

/// Whether every place is open: one sheet with nothing in the way, no lattice, no groups.
bool isPlain(const RectangleTask &task);

/// The walk for plain tasks: the same construction and search as OrderWalk, many times as fast. Into the lowest, then
/// leftmost step of the skyline goes what fills it across; else what ends level with a neighbour; else the first in the
/// order that wastes nothing. The first two are looked up by their size. A construction remembers what each of its
/// steps saw, so that after a change of the order only what follows the first step that would now choose otherwise is
/// laid again.
class PlainWalk : public Walk {
public:
    PlainWalk(const RectangleTask &task, std::uint64_t seed, int number);

    void aim(Tick top) override;
    Tick top() const override { return m_top; }
    void startFrom(const std::vector<Laid> &laid) override;
    bool step() override;
    const std::vector<Laid> &laid() const override { return m_laid; }
    Tick reached() const override { return m_reached; }
    /// What the order that stands leaves over.
    Area left() const { return m_current; }

private:
    struct Box {
        int item;
        Tick width, height;
    };
    /// The lowest step as a choice sees it; walls and ceiling are measured from its level.
    struct Gap {
        Tick room, left, right, height;
    };
    struct Choice {
        int box = -1;
        int score = 0;
    };
    /// One step of a construction: what it saw, what it chose, and how things stood before.
    struct Entry {
        Gap gap;
        Choice choice;
        Tick x, y;
        std::size_t firstStep, steps; ///< of the skyline, in Trace::skylines
        Area left, wasted;
    };
    struct Trace {
        std::vector<Entry> entries;
        Steps skylines;
        void clear();
    };
    /// Boxes by a size: a hash with open addressing, since sizes are ticks and lie far apart.
    class SizeIndex {
    public:
        void build(const std::vector<Box> &boxes, Tick Box::*size);
        struct Range {
            const int *first, *last;
            const int *begin() const { return first; }
            const int *end() const { return last; }
        };
        Range find(Tick size) const;

    private:
        struct Slot {
            Tick size = -1;
            int first = 0, last = 0;
        };
        std::size_t slotOf(Tick size) const;
        std::vector<Slot> m_slots;
        std::vector<int> m_boxes;
        int m_shift = 0;
    };
    struct Move {
        std::size_t from = 0, to = 0;
        bool swapped = false;
    };

    Area lay(std::size_t from, Area limit);
    void restore(std::size_t from);
    Gap gapOf(std::size_t low) const;
    Choice choose(const Gap &gap);
    Choice fullWidth(const Gap &gap) const;
    Choice level(const Gap &gap, Tick narrowest) const;
    Choice firstFitting(const Gap &gap, Tick narrowest);
    Tick narrowestLeft();
    int scoreOf(const Box &box, const Gap &gap, Tick narrowest) const;
    int sideScore(const Box &box, Tick wall, Tick opposite, Tick room, Tick narrowest) const;
    Tick placeOf(const Box &box, const Gap &gap, const Step &step, Tick narrowest) const;
    void put(std::size_t low, const Box &box, Tick x);
    Area raise(std::size_t low, const Gap &gap);

    Move randomMove();
    void apply(const Move &move);
    void undo(const Move &move);
    void moveItem(std::size_t from, std::size_t to);
    std::size_t firstAffected(const Move &move) const;
    bool comesBefore(int item, const Entry &entry) const;
    void keep(std::size_t from);
    void readLayout(std::size_t from);
    bool begin();

    const RectangleTask &m_task;
    Random m_random;
    Tick m_x0, m_y0, m_x1, m_top = 0;
    std::vector<Box> m_boxes; ///< by option
    SizeIndex m_byWidth, m_byHeight;
    std::vector<int> m_fromNarrow; ///< items, the narrowest first
    std::vector<Tick> m_least;     ///< by item: its least width
    int m_wasteBits = 0;

    std::vector<int> m_order;
    std::vector<int> m_rank; ///< by item: its place in the order
    // The construction at work.
    std::vector<char> m_used;
    std::vector<std::size_t> m_next; ///< by place in the order, and one in front: the next item not laid
    Steps m_steps;
    std::size_t m_narrowest = 0;
    Area m_left = 0, m_wasted = 0;
    Trace m_kept, m_tried; ///< of the order that stands; of the one tried, from where they part

    std::vector<Laid> m_laid;
    Tick m_reached = 0;
    std::vector<Area> m_late;
    std::size_t m_now = 0;
    Area m_current = 0;
    bool m_fresh = true;
};

} // namespace boltwright::planner
