#pragma once

#include "core/planner/beam.h"
#include "core/planner/random.h"
#include "core/planner/rectangle_task.h"
#include "core/planner/skyline.h"
#include "core/planner/steps.h"

#include <cstdint>
#include <optional>
#include <unordered_set>
#include <vector>

namespace boltwright::planner {

/// How a task is looked at: from which of its sides it is filled.
struct Seen {
    bool swapped = false; ///< x and y change places, before all else
    bool fromRight = false, fromTop = false;
    bool operator==(const Seen &) const = default;
};

/// The task as it is seen so; nothing where its places cannot be told that way (rows that a drop moves, or that fall
/// between ticks), or an open sheet would no longer be open upwards.
std::optional<RectangleTask> seen(const RectangleTask &task, Seen as);

/// Grows many part layouts side by side, all with one item more at each level, and goes on with those that waste least
/// for what they hold: a beam search, wider each time it ends without a layout that holds all. The frontier of each is
/// a skyline, and the next item always lies in its lowest step; flaws, notches and fixed items are swallowed by the
/// skyline as it comes to them, and count for nothing. What lies under an item that goes up to its motif is waste, and
/// so is a step that nothing left fits into; more waste than the room has to spare, and a part layout is dropped.
///
/// The measure, waste by the mean size of what is laid, is that of Libralesso & Fontan 2020, "An anytime tree search
/// algorithm for the 2018 ROADEF/EURO challenge glass cutting problem" (from memory): sheets with flaws are its field.
/// Instead of its size an item counts for what it has turned out to be worth (see Worths).
/// Made for up to some hundred items without groups; see `applies`.
class Frontier {
public:
    /// `number` tells walks with one seed apart.
    Frontier(const RectangleTask &task, std::uint64_t seed, int number);
    Frontier(const Frontier &) = delete;
    Frontier &operator=(const Frontier &) = delete;

    static bool applies(const RectangleTask &task);

    /// Sets the ceiling (grown y) that everything has to fit under, and begins anew; on remnants it says nothing.
    void aim(Tick top);
    /// Goes on by a few part layouts. True when one holds everything: then `laid` and `reached` tell.
    bool step();

    const std::vector<Laid> &laid() const { return m_laid; }
    Tick reached() const { return m_reached; }
    Tick top() const { return m_top; }
    bool begun() const { return m_begun; }

private:
    static constexpr std::size_t mostItems = 128;

    struct Mask {
        std::uint64_t words[mostItems / 64] = {};
        bool has(int i) const { return words[i / 64] >> (i % 64) & 1; }
        void add(int i) { words[i / 64] |= std::uint64_t(1) << (i % 64); }
    };
    /// A part layout: its last item, and what the rest depends on.
    struct Node {
        std::int32_t parent = -1; ///< in the level before
        Laid last;
        int sheet = 0; ///< in m_sheets
        std::int32_t firstStep = 0, steps = 0;
        Area waste = 0, placed = 0;
        Area worth = 0; ///< of the items laid
        Mask mask;
    };
    /// What a node could become.
    struct Child {
        std::int64_t guide = 0;
        std::int32_t parent = 0;
        Laid last;
        int sheet = 0;
        Area given = 0; ///< waste before the item was laid
        Area waste = 0; ///< and after
    };
    struct Link {
        std::int32_t parent;
        Laid last;
    };

    void restart();
    void look(Seen as);
    void prepare();
    void expand(const Node &node);
    bool offer(const Node &node, const Step &step, Tick left, Tick right, Area waste);
    void offerAt(int option, Tick x, const Step &step, Tick left, Tick right, Area waste, Tick narrowest);
    bool nextLevel();
    bool grow(const Child &child, Node &node);
    void swallow();
    bool raiseLowest();
    bool somethingFits(const Node &node, const Step &step) const;
    bool allHavePlace(const Node &node) const;
    Tick narrowestLeft(const Node &node) const;
    void enter(int sheet);
    Tick topOf(int sheet) const;
    bool free(int option, Tick x, Tick y) const;
    Area blockedArea(int sheet, Tick x, Tick end, Tick y, Tick yEnd) const;
    std::int64_t guideOf(Area waste, Area worth, int count);
    static bool better(const Child &a, const Child &b);
    void keepBest(std::size_t count);
    void read(const Node &node);
    Laid unseen(Laid laid) const;
    std::uint64_t hashOf(const Node &node) const;

    const RectangleTask &m_whole;
    RectangleTask m_task; ///< as seen from the side that is filled first
    Seen m_seen;
    Random m_random;
    int m_number;
    Tick m_top = 0;
    bool m_begun = false;
    std::size_t m_width = 0; ///< nodes a level keeps
    int m_runs = 0;          ///< since the start
    int m_shift = 0;
    Area m_spare = 0; ///< what the rooms have more than the items need
    std::vector<int> m_sheets;
    std::vector<int> m_twin; ///< by item: the one of its kind that goes first; -1 for none
    Worths m_worths;         ///< by item
    std::vector<Area> m_worthOf;
    std::vector<int> m_byWidth;
    std::vector<Tick> m_leastWidth, m_leastHeight;
    std::vector<std::vector<Obstacle>> m_obstacles; ///< by sheet, flaws among them
    std::vector<Node> m_level, m_nextLevel;
    Steps m_pool, m_nextPool;
    std::vector<std::vector<Link>> m_links; ///< by level, of all nodes in it
    std::vector<Child> m_children;
    std::unordered_set<std::uint64_t> m_known;
    std::size_t m_at = 0;
    // The part layout in hand.
    Steps m_steps;
    int m_sheet = 0;
    Area m_waste = 0;
    std::vector<Laid> m_laid;
    Tick m_reached = 0;
};

} // namespace boltwright::planner
