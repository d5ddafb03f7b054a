#pragma once

#include "core/planner/instance.h"

#include <cstdint>
#include <optional>

/// Instances of a few rectangles on a few ticks of cloth, and a judge that tries every place of every item. It shares
/// no code with planner or bounds: rooms and flaws are cells of one square tick, a gap is a true distance.
namespace tiny {

using namespace boltwright;
using namespace boltwright::planner;

/// The same numbers on every machine.
class Dice {
public:
    explicit Dice(std::uint64_t seed) : m_state(seed * 2654435761u + 88172645463325252ull) {}
    int operator()(int low, int high) {
        m_state ^= m_state << 13;
        m_state ^= m_state >> 7;
        m_state ^= m_state << 17;
        return low + int(m_state % std::uint64_t(high - low + 1));
    }
    bool oneIn(int n) { return (*this)(1, n) == 1; }

private:
    std::uint64_t m_state;
};

inline ClothRing box(int x, int y, int w, int h) {
    return ringOf(ClothBox{{Length::ticks(x), Length::ticks(y)}, {Length::ticks(x + w), Length::ticks(y + h)}});
}

/// Adds an outline of this size and returns its number.
int addRectangle(Instance &instance, int w, int h);

/// An instance with an open sheet `width` across and no rule but that, and its items of these sizes.
Instance bolt(int width, const std::vector<std::pair<int, int>> &sizes, int gap = 0, int length = 1000);
/// The same on one remnant.
Instance remnant(int width, int height, const std::vector<std::pair<int, int>> &sizes, int gap = 0);

/// Anything that may occur: gaps, motif places with and without a drop, turns, groups, flaws, fixed outlines,
/// hidden items; one bolt, or one or two remnants of upright edges.
Instance anything(Dice &dice, bool open);

/// Whether all items can lie as the rules of instance.h say, on an open sheet with no end above `length`.
bool fits(const Instance &instance, int length);

/// The least length of the open sheet; nothing above `most`.
std::optional<int> leastLength(const Instance &instance, int most);

/// Whether these placements keep every rule, by the same plain means.
bool keepsRules(const Instance &instance, const std::vector<Placement> &placements);

} // namespace tiny
