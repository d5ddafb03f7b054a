#pragma once

#include "core/planner/random.h"
#include "core/planner/rectangle_task.h"
#include "core/planner/skyline.h"

#include <cstdint>
#include <vector>

namespace boltwright::planner {

/// A search over layouts in which items overlap: below a fixed ceiling one overlapping item at a time goes to the place
/// where its overlaps weigh least, and overlaps that last get heavier, until none is left (guided local search,
/// Voudouris & Tsang 1999, for packing: Egeblad, Nielsen & Odgaard 2007; weights as Umetani et al. 2009). All places on
/// the lattice are tried; on a free axis, those where it touches something.
class Separation {
public:
    Separation(const RectangleTask &task, std::uint64_t seed);

    /// Starts from a layout (items left over are laid somewhere), pushed down under `top` (open sheets; grown) where it
    /// sticks out.
    void start(const std::vector<Laid> &laid, Tick top);
    /// Moves one item. True when nothing overlaps any more: then `laid` and `reached` tell.
    bool step();

    const std::vector<Laid> &laid() const { return m_laid; }
    Tick reached() const;
    Tick top() const { return m_top; }
    bool begun() const { return m_begun; }

private:
    struct Box {
        int sheet;
        Tick x, y, xEnd, yEnd;
    };
    struct Blocker {
        Tick y, yEnd, across;
        std::int64_t weight;
    };
    struct Choice {
        int option = -1;
        Tick x = 0, y = 0;
        std::int64_t cost = 0;
        int equals = 0;
    };

    std::int64_t overlap(Tick across, Tick along) const { return ((Area(across) * along) >> m_shift) + 1; }
    std::int64_t costOf(int i) const;
    std::int64_t overlapOf(int i, int j) const;
    std::int64_t &weight(int i, int j) { return m_weights[std::size_t(i) * m_laid.size() + std::size_t(j)]; }
    Tick topOf(int sheet) const;
    void tryOption(int i, int option, const Places &places, Choice &best);
    void tryColumn(int i, int option, const Places &places, Tick x, Choice &best);
    void move(int i, const Choice &to);
    void measure(int i);
    void gather();
    void stir();
    void beginGroup(int group, int option, Tick x, Tick y);
    const Places *placesNow(int option) const;
    bool isOut(int i) const;
    void pushDown(int i);
    void changeGroup(int group);

    const RectangleTask &m_task;
    Random m_random;
    Tick m_top = 0;
    bool m_begun = false;
    int m_rounds = 0; ///< since the start or the last stir
    int m_shift = 0;
    std::vector<Laid> m_laid;
    std::vector<Box> m_boxes;
    std::vector<std::int64_t> m_weights;
    std::vector<int> m_queue; ///< overlapping items still to move in this round
    std::vector<Blocker> m_blockers;
    std::vector<Tick> m_xs, m_ys;
    std::vector<std::vector<Places>> m_groupPlaces; ///< by group, by member option
    std::vector<std::vector<char>> m_groupPossible;
    std::vector<int> m_memberOption;
};

} // namespace boltwright::planner
