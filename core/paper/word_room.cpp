#include "core/paper/word_room.h"

#include <algorithm>
#include <optional>
#include <vector>

namespace boltwright {
namespace {

struct Span {
    Length low, high;
};

/// x on the edge a-b at level y (between theirs).
Length xAt(ClothPoint a, ClothPoint b, Length y) {
    if (a.y == b.y) return a.x;
    return a.x + Length::ticks(roundedQuotient((b.x - a.x).ticks() * (y - a.y).ticks() * (b.y > a.y ? 1 : -1),
                                               std::abs((b.y - a.y).ticks())));
}

/// Where the strip between two levels is wholly inside the ring, widest first part only.
std::optional<Span> widestInside(const ClothRing &ring, Length low, Length high) {
    std::vector<Span> touched; // x ranges in which an edge runs through the strip
    const Length middle = Length::ticks((low.ticks() + high.ticks()) / 2);
    std::vector<Length> crossings; // of the middle line, to tell inside from outside
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const ClothPoint a = ring[i], b = ring[(i + 1) % ring.size()];
        const Length from = std::max(low, std::min(a.y, b.y)), to = std::min(high, std::max(a.y, b.y));
        if (from >= to) continue;
        const Length x1 = xAt(a, b, from), x2 = xAt(a, b, to);
        touched.push_back({std::min(x1, x2), std::max(x1, x2)});
        if ((a.y <= middle) != (b.y <= middle)) crossings.push_back(xAt(a, b, middle));
    }
    std::sort(touched.begin(), touched.end(), [](Span s, Span t) { return s.low < t.low; });
    std::optional<Span> best;
    Length reached;
    for (std::size_t i = 0; i < touched.size(); ++i) {
        if (i > 0 && touched[i].low > reached) {
            const auto left = std::count_if(crossings.begin(), crossings.end(), [&](Length x) { return x <= reached; });
            if (left % 2 == 1 && (!best || touched[i].low - reached > best->high - best->low))
                best = Span{reached, touched[i].low};
        }
        reached = i == 0 ? touched[i].high : std::max(reached, touched[i].high);
    }
    return best;
}

} // namespace

ClothBox wordRoom(const ClothRing &ring) {
    const ClothBox box = boxOf(ring);
    std::vector<Length> levels;
    for (ClothPoint p : ring) levels.push_back(p.y);
    // Between far corners of a slanted shape, steps of a twelfth are fine enough for words.
    for (int k = 1; k < 12; ++k) levels.push_back(box.low.y + Length::ticks(box.height().ticks() * k / 12));
    std::sort(levels.begin(), levels.end());
    levels.erase(std::unique(levels.begin(), levels.end()), levels.end());

    ClothBox best{box.low, box.low};
    double most = -1;
    for (std::size_t i = 0; i < levels.size(); ++i) {
        for (std::size_t j = i + 1; j < levels.size(); ++j) {
            const auto span = widestInside(ring, levels[i], levels[j]);
            if (!span) continue;
            const double width = (span->high - span->low).toMillimetres(),
                         height = (levels[j] - levels[i]).toMillimetres();
            // Neither a sliver as long as the panel nor the biggest square: both ways must hold a line of words.
            const double worth = width * height * std::min({width, height, 60.0});
            if (worth > most) {
                most = worth;
                best = {{span->low, levels[i]}, {span->high, levels[j]}};
            }
        }
    }
    return best;
}

} // namespace boltwright
