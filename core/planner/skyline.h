#pragma once

#include "core/planner/steps.h"
#include "core/planner/walk.h"

#include <vector>

namespace boltwright::planner {

/// Lays rectangles from the low end up, always into the lowest, then leftmost step of the skyline, and there the item
/// that wastes least, fits its neighbours best, and comes first in the order: Burke, Kendall & Whitwell 2004 (best fit)
/// with the touching-sides rules of Leung, Zhang & Sim 2011, carried over to places on a lattice: there the waste
/// counts what is buried under an item that has to go up to its motif. One object serves one thread; it keeps its
/// memory from call to call.
class Skyline {
public:
    explicit Skyline(const RectangleTask &task);

    /// Lays the items of `order` below `top` (open sheets; grown) and returns the area of those left over. Where
    /// everything lies is in `laid`, by item.
    /// Gives up where more than `limit` is bound to be left over: what it returns is then above that, and no more.
    Area lay(const std::vector<int> &order, const std::vector<int> &sheetOrder, Tick top, Area limit);

    const std::vector<Laid> &laid() const { return m_laid; }
    /// The greatest grown y of the last construction on the open sheet.
    Tick reached() const { return m_reached; }

private:
    struct Candidate {
        int option = -1;
        std::size_t at = 0; ///< in m_left
        Tick x = 0, y = 0;
        int score = 0;
    };
    struct GroupState {
        bool begun = false;
        Turn turn = Turn::Deg0;
        int lot = 0;
        std::vector<Places> places; ///< by option of its items, in their order
        std::vector<char> possible;
    };

    void begin(const std::vector<int> &order);
    void fill(int sheet, Tick top);
    Candidate best(int sheet, const Step &step, Tick left, Tick right, Tick top) const;
    void consider(Candidate &best, int option, std::size_t at, const Places &places, const Step &step, Tick left,
                  Tick right, Tick top, Tick narrowest) const;
    const Places *placesNow(int option) const;
    bool free(int sheet, bool hidden, Tick x, Tick y, Tick width, Tick height) const;
    int scoreOf(const Step &step, Tick left, Tick right, Tick narrowest, Tick x, Tick y, Tick width, Tick height) const;
    void put(int sheet, std::size_t step, const Candidate &c);
    void raise(int sheet, std::size_t step, Tick top);
    void join(std::size_t step);
    void beginGroup(int group, const RectangleOption &option, Tick x, Tick y);
    Tick narrowestLeft() const;

    const RectangleTask &m_task;
    std::vector<Laid> m_laid;
    std::vector<int> m_left; ///< items not laid yet, in order
    Steps m_steps;
    std::vector<GroupState> m_groups;
    std::vector<int> m_memberOption; ///< by option: its place in its group's lists
    std::vector<int> m_byWidth;      ///< items from the narrowest
    mutable std::size_t m_narrowest = 0;
    std::vector<Tick> m_width; ///< by item: its least width
    Area m_leftArea = 0;
    Tick m_reached = 0;
    Area m_wasted = 0; ///< given up below the skyline
    Area m_mostWasted = 0;
    int m_wasteBits = 0;
};

} // namespace boltwright::planner
