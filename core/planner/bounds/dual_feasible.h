#pragma once

#include <cstdint>
#include <vector>

namespace boltwright::planner {

/// A dual-feasible function on whole sizes 0..capacity, in whole numbers: it never falls, and sizes that fit side by
/// side in the capacity (or in less of it) still do when every size is replaced by its value. Superadditive:
/// f(x) + f(y) <= f(x + y) as long as x + y <= capacity.
class DualFeasible {
public:
    enum class Kind {
        Same,  ///< x
        Drop,  ///< what is shorter than k counts for nothing, what leaves less than k counts as all
        Count, ///< how many k fit into x, large sizes by what they leave (k up to half the capacity)
        Round, ///< x rounded down to multiples of 1/(k+1) of the capacity, and stretched
    };
    DualFeasible(Kind kind, std::int64_t k, std::int64_t capacity) : m_kind(kind), m_k(k), m_capacity(capacity) {}
    std::int64_t operator()(std::int64_t size) const;

private:
    Kind m_kind;
    std::int64_t m_k, m_capacity;
};

/// Functions worth trying for these sizes, `most` or a few more.
std::vector<DualFeasible> dualFeasibleFor(const std::vector<std::int64_t> &sizes, std::int64_t capacity,
                                          std::size_t most);

} // namespace boltwright::planner
