#pragma once

#include "core/planner/random.h"
#include "core/planner/steps.h"
#include "core/planner/walk.h"

#include <array>
#include <cstdint>
#include <unordered_set>
#include <vector>

namespace boltwright::planner {

/// The frontier (see frontier.h) for plain bolts, where nothing lies in the way and every place is open: many part
/// layouts grown side by side, those that waste least for what they hold kept. What makes it strong on layouts with
/// next to no waste is that it looks ahead: what the widths left cannot fill across a gap, and the heights left cannot
/// fill up to the ceiling, is waste already, and more waste than there is to spare ends a part layout.
class PlainFrontier {
public:
    /// `number` tells walks with one seed apart.
    PlainFrontier(const RectangleTask &task, std::uint64_t seed, int number);
    PlainFrontier(const PlainFrontier &) = delete;
    PlainFrontier &operator=(const PlainFrontier &) = delete;

    static bool applies(const RectangleTask &task);

    /// Sets the ceiling (grown y) that everything has to fit under, and begins anew.
    void aim(Tick top);
    /// Goes on by a few part layouts. True when one holds everything: then `laid` and `reached` tell.
    bool step();

    const std::vector<Laid> &laid() const { return m_laid; }
    Tick reached() const { return m_reached; }
    Tick top() const { return m_top; }
    bool begun() const { return m_begun; }

private:
    static constexpr std::size_t mostItems = 256;

    struct Mask {
        std::array<std::uint64_t, mostItems / 64> words = {};
        bool has(int i) const { return words[std::size_t(i) / 64] >> (std::size_t(i) % 64) & 1; }
        void add(int i) { words[std::size_t(i) / 64] |= std::uint64_t(1) << (std::size_t(i) % 64); }
    };
    /// Which sums of sizes left there are, counted in units; too fine ones are not counted.
    class Sums {
    public:
        void setUp(Tick unit, Tick most);
        void begin();
        void add(Tick size);
        /// The greatest sum up to `room`; `room` itself where sums are not counted.
        Tick best(Tick room) const;

    private:
        Tick m_unit = 1;
        std::vector<std::uint64_t> m_words; ///< empty: not counted
    };
    struct Node {
        std::int32_t parent = -1; ///< in the level before
        Laid last;
        std::int32_t firstStep = 0, steps = 0;
        Area waste = 0, placed = 0;
        Mask mask; ///< items laid
    };
    struct Child {
        double guide = 0;
        std::int32_t parent = 0;
        Laid last;
        Area given = 0; ///< waste before the item was laid
    };
    struct Link {
        std::int32_t parent;
        Laid last;
    };

    void restart();
    void expand(std::size_t at);
    void countLeft(const Node &node);
    bool offer(const Node &node, std::size_t at, std::size_t low, Area waste);
    bool nextLevel();
    bool grow(const Child &child, Node &node);
    bool raiseLowest();
    std::uint64_t hashOf(const Node &node) const;
    void keepBest(std::size_t count);
    void read(const Node &node);

    const RectangleTask &m_task;
    Random m_random;
    int m_number;
    Tick m_x0, m_y0, m_x1, m_top = 0;
    bool m_begun = false;
    std::size_t m_width = 0;
    int m_runs = 0;
    Area m_spare = 0;
    std::vector<int> m_byArea; ///< options, those of the greatest items first, equal sizes together
    std::vector<int> m_twin;   ///< by item: the one of its sizes that goes first; -1 for none
    std::vector<Tick> m_leastWidth, m_leastHeight;
    Sums m_widths, m_heights;
    Tick m_narrowest = 0, m_lowestItem = 0;
    std::vector<Node> m_level, m_nextLevel;
    Steps m_pool, m_nextPool, m_steps;
    Area m_waste = 0;
    std::vector<std::vector<Link>> m_links; ///< by level
    std::vector<Child> m_children;
    std::unordered_set<std::uint64_t> m_known;
    std::size_t m_at = 0;
    std::vector<Laid> m_laid;
    Tick m_reached = 0;
};

} // namespace boltwright::planner
