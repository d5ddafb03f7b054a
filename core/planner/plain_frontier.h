#pragma once

#include "core/planner/beam.h"
#include "core/planner/random.h"
#include "core/planner/steps.h"
#include "core/planner/walk.h"

#include <cstdint>
#include <limits>
#include <vector>

namespace boltwright::planner {

/// The frontier (see frontier.h) for plain bolts, where nothing lies in the way and every place is open: many part
/// layouts grown side by side under a ceiling, those that hold most with fewest items kept, since small items are what
/// fills the last gaps. It fills the narrowest gap first, and looks ahead: what the widths left cannot fill across a
/// gap, and the heights left cannot fill up to the ceiling, is waste already, and more waste than there is to spare
/// ends a part layout. Under a fixed ceiling a room lying on its side is as good as one that stands, so that every
/// second run fills it from the left. It learns from run to run: what the best part layout of a run left over is worth
/// more in those that follow, and is laid sooner. So it starts over often, at widths that climb to a peak again and
/// again, and only slowly to higher ones.
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
    int runs() const { return m_runs; } ///< begun under this ceiling
    /// Not even the area is there.
    bool hopeless() const { return m_spare < 0; }

private:
    using Left = std::uint8_t; ///< how many of a kind are left
    static constexpr std::size_t mostOfAKind = std::numeric_limits<Left>::max();
    using Word = std::uint64_t;
    /// The sizes along one axis, and which sums of those left there are; too fine ones are not counted.
    class Sizes {
    public:
        struct Of {
            Tick size;
            int kind;
        };
        void setUp(std::vector<Of> sizes, Tick most);
        /// `left`, by kind.
        void count(const Left *left);
        std::size_t words() const { return m_words.size(); }
        /// What `count` found, to be taken up again.
        void save(Word *to) const;
        void load(const Word *from, Tick least);

        Tick least() const { return m_least; } ///< of those left
        /// What no sum of those left can fill of `room`; nothing where sums are not counted.
        Tick lost(Tick room) const { return room < m_least ? room : room - best(room); }

    private:
        template <std::size_t N>
        void countWords(const Left *left);
        void countMany(const Left *left);
        Tick best(Tick room) const;

        std::vector<Of> m_sizes; ///< from the least
        Tick m_most = 0, m_least = 0;
        std::vector<Word> m_words; ///< a bit for each sum; empty: not counted
    };
    /// A way to lay an item, in units along the room as it is filled: `across`, then `up`.
    struct Box {
        int kind, option;
        Tick across, up;
    };
    /// Items of the same sizes.
    struct Kind {
        std::vector<int> items;
        Area area = 0; ///< square units
        std::uint64_t print = 0;
        double worth = 0; ///< of one, in this run
    };
    struct Node {
        std::int32_t firstStep = 0, steps = 0;
        Area waste = 0, placed = 0;
        double worth = 0;        ///< of the items laid
        std::uint64_t print = 0; ///< of the items laid
        Tick leastWidth = 0, leastHeight = 0;
    };
    struct Place {
        std::int32_t parent = -1, box = -1; ///< parent: in the level before
        Tick x = 0, y = 0;
    };
    struct Child {
        float guide = 0;
        Place place;
    };
    void setUpKinds();
    void restart();
    void climb();
    void standOrLie();
    std::vector<Sizes::Of> sizesOf(Tick Box::*size) const;
    void expand(std::size_t at);
    bool offer(std::size_t at, std::size_t gap, Area waste);
    std::size_t narrowestGap() const;
    bool isGap(std::size_t step) const;
    Area raise(std::size_t gap);
    bool grow(const Child &child);
    bool settle(Area &waste);
    Area lookAhead() const;
    bool everyGapHasABox(const Left *left) const;
    bool isKnown(std::uint64_t print);
    float guideOf(Area waste, double worth);
    void keepBest(std::size_t count);
    void keepSums(Node &node, std::vector<Word> &sums) const;
    std::size_t widthHere() const;
    void beginLevel();
    void endLevel();
    void read();

    const RectangleTask &m_task;
    Random m_random;
    int m_number;
    std::vector<Kind> m_kinds;
    Worths m_worths{0};  ///< by kind
    Area m_itemArea = 0; ///< square units
    Tick m_unitX = 1, m_unitY = 1;

    // The room as it is filled, in units.
    bool m_lies = false;
    Tick m_across = 0, m_up = 0;
    Area m_spare = 0;
    std::vector<Box> m_boxes; ///< the narrowest first
    Sizes m_widths, m_heights;
    double m_weight = 1; ///< of a square unit of waste

    Tick m_top = 0;
    bool m_begun = false;
    std::size_t m_width = 0, m_here = 0; ///< of the run, of the level at hand
    std::size_t m_peak = 0;              ///< the greatest width before it starts over from the least
    int m_climbs = 0;                    ///< to this peak
    int m_runs = 0;

    // A level and the next: nodes, their skylines, how many of each kind they have left, and their sums.
    std::vector<Node> m_level, m_nextLevel;
    Steps m_pool, m_nextPool, m_steps;
    std::vector<Left> m_left, m_nextLeft;
    std::vector<Word> m_sums, m_nextSums;
    std::vector<std::vector<Place>> m_places; ///< by level
    std::vector<Child> m_children;
    float m_worst = 0; ///< guide of what need not be offered any more
    Prints m_known;
    std::size_t m_at = 0, m_growing = 0;
    bool m_grows = false;
    std::vector<Laid> m_laid;
    Tick m_reached = 0;
};

} // namespace boltwright::planner
