#pragma once

#include "core/planner/random.h"

#include <algorithm>
#include <bit>
#include <cstdint>
#include <vector>

// What searches that grow part layouts side by side have in common.
namespace boltwright::planner {

/// The prints of part layouts that were seen.
class Prints {
public:
    /// Forgets all; from now on there are so many at most.
    void clear(std::size_t most) { m_slots.assign(std::bit_ceil(most * 4), 0); }

    /// False when it was seen before.
    bool add(std::uint64_t print) {
        print |= 1; // zero is an empty slot
        std::size_t at = std::size_t(print >> 20) & (m_slots.size() - 1);
        for (; m_slots[at] != 0; at = (at + 1) & (m_slots.size() - 1))
            if (m_slots[at] == print) return false;
        m_slots[at] = print;
        return true;
    }

private:
    std::vector<std::uint64_t> m_slots;
};

/// What things are worth beyond their area, learned from run to run: what the best part layout of a run left over is
/// worth more in those that follow, and so is laid sooner.
class Worths {
public:
    explicit Worths(std::size_t count) : m_learned(count), m_leftOver(count) {}

    /// A part layout of this run; `isLeft` says of a thing whether it left some of it.
    template <class IsLeft>
    void note(std::int64_t placed, const IsLeft &isLeft) {
        if (placed <= m_mostPlaced) return;
        m_mostPlaced = placed;
        for (std::size_t i = 0; i < m_leftOver.size(); ++i) m_leftOver[i] = isLeft(int(i));
    }
    /// The run is over. A little chance in it, so that things left over together part again.
    void learn(Random &random) {
        if (m_mostPlaced == 0) return;
        m_mostPlaced = 0;
        for (std::size_t i = 0; i < m_learned.size(); ++i) {
            m_learned[i] *= kept;
            if (m_leftOver[i]) m_learned[i] += gain * (0.5 + random.share());
        }
    }
    /// The worth of a thing of this area; at first the area itself.
    double of(int thing, std::int64_t area) const { return double(area) * (1 + m_learned[std::size_t(thing)]); }

private:
    static constexpr double gain = 0.2, kept = 0.97; ///< at each run
    std::vector<double> m_learned;                   ///< by thing: more than its area, in areas
    std::vector<char> m_leftOver;
    std::int64_t m_mostPlaced = 0;
};

/// Keeps the best `count` children; returns the guide of the best one that goes, or `worst` where none does.
template <class Child, class Better>
float keepBestOf(std::vector<Child> &children, std::size_t count, const Better &better, float worst) {
    if (children.size() <= count) return worst;
    std::nth_element(children.begin(), children.begin() + std::ptrdiff_t(count), children.end(), better);
    worst = children[count].guide;
    children.resize(count);
    return worst;
}

} // namespace boltwright::planner
