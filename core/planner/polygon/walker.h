#pragma once

#include "core/planner/polygon/arrangement.h"

#include <functional>

namespace boltwright::planner {

/// One line of search over one instance: lays everything quickly, then squeezes. With an open sheet, the end is drawn
/// in a little below the best layout so far, overlaps are allowed, and items are moved one by one to where they overlap
/// least, pairs that stay in each other's way weighing more and more (guided local search: Egeblad, Nielsen & Odgaard
/// 2007; Umetani et al. 2009); when nothing overlaps, a better layout is found. On remnants the same without the
/// drawing in.
class Walker {
public:
    /// `stop` is asked between moves; when it says so, what is under way is left as it is.
    Walker(const Model &model, std::uint64_t seed, std::function<bool()> stop);

    /// Lays everything from nothing; whether right or not shows in `found`.
    void lay(int order);

    /// Searches for about so many moves, or until told to stop or nothing is left to gain.
    void run(std::int64_t moves);

    /// Takes up somebody's layout, which may be longer than the best, to be squeezed.
    void take(const std::vector<Where> &layout);
    /// Goes on with that until there have been so many moves in all; false when it is not worth going on.
    bool squeeze(std::int64_t untilMoves);

    bool found() const { return m_found; }
    double length() const { return m_length; }
    const std::vector<Where> &best() const { return m_best; }
    std::int64_t moves() const { return m_arrangement.moves(); }
    /// Goes on from somebody else's right layout when it is better.
    void adopt(const std::vector<Where> &layout, double length);
    /// The least length there can be: the walker rests when it has it.
    void rememberBound(double bound) { m_bound = bound; }
    bool done() const { return m_found && (!m_model.open || m_length <= m_bound); }

private:
    void layItem(int item);
    bool pass();
    void separateOnce();
    void keepIfRight();
    void settleDown();
    void tighten();
    void disturb();
    void swapTwo();
    void relayNear();
    void relayGroup(int group);
    void placeOut();

    const Model &m_model;
    Random m_random;
    std::function<bool()> m_stop;
    Arrangement m_arrangement;
    std::vector<Where> m_best, m_closest;
    double m_length = 0, m_bound = 0;
    bool m_found = false;
    bool m_handedOver = false; ///< the best is somebody else's, and not gone on from yet
    double m_share = 0.02;     ///< by how much of the length the end is drawn in
    double m_taken = 0;        ///< length so far of somebody's layout that is being squeezed; 0: none is
    double m_least = 0;        ///< total overlap of `m_closest`
    int m_idle = 0;            ///< passes since that fell
    int m_failed = 0;          ///< times in a row that a try was given up
};

} // namespace boltwright::planner
