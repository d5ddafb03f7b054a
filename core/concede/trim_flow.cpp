#include "core/concede/trim_flow.h"

#include "core/base/ensure.h"

#include <limits>

namespace boltwright {
namespace {

constexpr std::int64_t unreached = std::numeric_limits<std::int64_t>::max() / 4;

struct Arc {
    int from, to;
    std::int64_t cost, flow;
};

class LeastFlow {
public:
    LeastFlow(const std::vector<Length> &start, const std::vector<SideLimit> &limits,
              const std::vector<BoxSides> &boxes)
        : m_position(start.size()), m_excess(start.size(), 0), m_arcsAt(start.size()) {
        for (std::size_t v = 0; v < start.size(); ++v) m_position[v] = start[v].ticks();
        for (const SideLimit &l : limits) {
            m_arcsAt[std::size_t(l.from)].push_back(int(m_arcs.size()));
            m_arcsAt[std::size_t(l.to)].push_back(int(m_arcs.size()));
            m_arcs.push_back({l.from, l.to, l.most.ticks(), 0});
            ensure(reduced(m_arcs.back()) >= 0, "the start keeps every limit");
        }
        for (const BoxSides &b : boxes) {
            ++m_excess[std::size_t(b.low)];
            --m_excess[std::size_t(b.high)];
        }
    }

    std::vector<Length> run() {
        while (augment()) {
        }
        std::vector<Length> positions;
        for (std::int64_t p : m_position) positions.push_back(Length::ticks(p - m_position.front()));
        return positions;
    }

private:
    std::int64_t reduced(const Arc &a) const {
        return a.cost + m_position[std::size_t(a.from)] - m_position[std::size_t(a.to)];
    }

    /// One unit from any side with an excess along the shortest way to one with a lack. Dense Dijkstra: there are few
    /// sides and many limits.
    bool augment() {
        const std::size_t n = m_position.size();
        std::vector<std::int64_t> distance(n, unreached);
        std::vector<int> by(n, -1);
        std::vector<char> done(n, 0);
        bool any = false;
        for (std::size_t v = 0; v < n; ++v)
            if (m_excess[v] > 0) distance[v] = 0, any = true;
        if (!any) return false;
        int target = -1;
        while (target < 0) {
            std::size_t u = n;
            for (std::size_t v = 0; v < n; ++v)
                if (!done[v] && distance[v] < unreached && (u == n || distance[v] < distance[u])) u = v;
            ensure(u < n, "every low side reaches a high side: its own");
            done[u] = 1;
            if (m_excess[u] < 0) {
                target = int(u);
                break;
            }
            for (int i : m_arcsAt[u]) {
                const Arc &a = m_arcs[std::size_t(i)];
                const bool forth = a.from == int(u);
                if (!forth && a.flow == 0) continue;
                const std::size_t v = std::size_t(forth ? a.to : a.from);
                const std::int64_t d = distance[u] + (forth ? reduced(a) : -reduced(a));
                if (d < distance[v]) {
                    distance[v] = d;
                    by[v] = i;
                }
            }
        }
        const std::int64_t far = distance[std::size_t(target)];
        for (std::size_t v = 0; v < n; ++v) m_position[v] += std::min(distance[v], far);
        int v = target;
        ++m_excess[std::size_t(target)];
        while (by[std::size_t(v)] >= 0) {
            Arc &a = m_arcs[std::size_t(by[std::size_t(v)])];
            const bool forth = a.to == v;
            a.flow += forth ? 1 : -1;
            v = forth ? a.from : a.to;
        }
        --m_excess[std::size_t(v)];
        return true;
    }

    std::vector<std::int64_t> m_position, m_excess;
    std::vector<Arc> m_arcs;
    std::vector<std::vector<int>> m_arcsAt;
};

} // namespace

std::vector<Length> widest(const std::vector<Length> &start, const std::vector<SideLimit> &limits,
                           const std::vector<BoxSides> &boxes) {
    return LeastFlow(start, limits, boxes).run();
}

} // namespace boltwright
