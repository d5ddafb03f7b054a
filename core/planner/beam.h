#pragma once

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
