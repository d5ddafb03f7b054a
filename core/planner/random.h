#pragma once

#include <cstdint>
#include <utility>
#include <vector>

namespace boltwright::planner {

/// The search's own generator: the same numbers on every machine. SplitMix64 (Steele, Lea & Flood 2014).
class Random {
public:
    explicit Random(std::uint64_t seed) : m_state(seed) {}

    std::uint64_t next() {
        std::uint64_t z = (m_state += 0x9e3779b97f4a7c15u);
        z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
        z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
        return z ^ (z >> 31);
    }

    /// A whole number from 0 up to but not including `count` (1 to 2^32).
    int below(int count) { return int(((next() >> 32) * std::uint64_t(count)) >> 32); }

    /// True once in `times`.
    bool oneIn(int times) { return below(times) == 0; }

    /// From 0 up to but not including 1, exactly the same everywhere.
    double share() { return double(next() >> 11) * 0x1p-53; }

    template <class T>
    void shuffle(std::vector<T> &list) {
        for (int i = int(list.size()) - 1; i > 0; --i) std::swap(list[std::size_t(i)], list[std::size_t(below(i + 1))]);
    }

private:
    std::uint64_t m_state;
};

} // namespace boltwright::planner
