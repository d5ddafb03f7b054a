#include "core/trimmings/strip_rows.h"

#include "core/geometry/exact.h"
#include "core/geometry/laying.h"

#include <algorithm>
#include <cstdlib>
#include <numeric>
#include <set>

namespace boltwright {
namespace {

/// The cloth turned so that strips lie along u and rows are counted in v. On the bias one step is a tick's diagonal
/// (u = x + y), so lengths are √2 times as many and only points with both numbers even are sure to be whole ticks.
struct RowPoint {
    std::int64_t u, v;
};

struct RowFrame {
    StripDirection direction;

    bool bias() const { return direction == StripDirection::Rising || direction == StripDirection::Falling; }
    std::int64_t grid() const { return bias() ? 2 : 1; }

    RowPoint of(ClothPoint p) const {
        const std::int64_t x = p.x.ticks(), y = p.y.ticks();
        switch (direction) {
        case StripDirection::Across:
            return {x, y};
        case StripDirection::UpRoll:
            return {y, x};
        case StripDirection::Rising:
            return {x + y, y - x};
        case StripDirection::Falling:
            return {x - y, x + y};
        }
        return {};
    }
    ClothPoint cloth(std::int64_t u, std::int64_t v) const {
        auto at = [](std::int64_t x, std::int64_t y) { return ClothPoint{Length::ticks(x), Length::ticks(y)}; };
        switch (direction) {
        case StripDirection::Across:
            return at(u, v);
        case StripDirection::UpRoll:
            return at(v, u);
        case StripDirection::Rising:
            return at((u - v) / 2, (u + v) / 2);
        case StripDirection::Falling:
            return at((u + v) / 2, (v - u) / 2);
        }
        return {};
    }
    /// A length of the cloth in this frame, never less.
    std::int64_t measure(Length length) const {
        if (!bias()) return length.ticks();
        const Wide square = Wide(2) * length.ticks() * length.ticks();
        std::int64_t root = rootDown(square);
        if (Wide(root) * root < square) ++root;
        return root + root % 2;
    }
    /// The way back, never more.
    Length length(std::int64_t along) const {
        return bias() ? Length::ticks(rootDown(Wide(along) * along / 2)) : Length::ticks(along);
    }
};

std::int64_t floorTo(std::int64_t a, std::int64_t grid) {
    const std::int64_t r = a % grid;
    return r < 0 ? a - r - grid : a - r;
}
std::int64_t ceilTo(std::int64_t a, std::int64_t grid) { return -floorTo(-a, grid); }
std::int64_t floorQuotient(std::int64_t a, std::int64_t b) {
    const std::int64_t q = a / b;
    return (a % b != 0 && (a < 0) != (b < 0)) ? q - 1 : q;
}

struct Span {
    std::int64_t from, to;
};

/// A convex ring in the row frame.
struct RowRing {
    std::vector<RowPoint> corners;
    std::int64_t low = 0, high = 0; ///< least and greatest v

    RowRing(const ClothRing &ring, const RowFrame &frame) {
        for (ClothPoint p : ring) corners.push_back(frame.of(p));
        const auto [least, most] =
            std::minmax_element(corners.begin(), corners.end(), [](RowPoint a, RowPoint b) { return a.v < b.v; });
        low = least->v;
        high = most->v;
    }

    /// What the ring takes of u somewhere between the two heights, rounded outwards; none where it only touches them.
    std::optional<Span> shadow(std::int64_t v0, std::int64_t v1) const {
        if (high <= v0 || low >= v1) return std::nullopt;
        std::optional<Span> span;
        for (std::size_t i = 0; i < corners.size(); ++i) {
            const RowPoint a = corners[i], b = corners[(i + 1) % corners.size()];
            if (std::max(a.v, b.v) < v0 || std::min(a.v, b.v) > v1) continue;
            for (const RowPoint end : {a, b})
                for (const Span at : {crossing(a, b, std::clamp(end.v, v0, v1))}) {
                    if (!span) span = at;
                    span = Span{std::min(span->from, at.from), std::max(span->to, at.to)};
                }
        }
        return span;
    }

    /// What lies inside the ring at both heights, and so between them, rounded inwards; none where nothing does.
    std::optional<Span> inside(std::int64_t v0, std::int64_t v1) const {
        if (v0 < low || v1 > high) return std::nullopt;
        const Span a = crossSection(v0), b = crossSection(v1);
        const Span both{std::max(a.from, b.from), std::min(a.to, b.to)};
        return both.from < both.to ? std::optional(both) : std::nullopt;
    }

private:
    /// u of an edge at a height within it, rounded down and up; a level edge: both its ends.
    static Span crossing(RowPoint a, RowPoint b, std::int64_t v) {
        if (a.v == b.v) return {std::min(a.u, b.u), std::max(a.u, b.u)};
        const std::int64_t top = (b.u - a.u) * (v - a.v), bottom = b.v - a.v;
        return {a.u + floorQuotient(top, bottom), a.u - floorQuotient(-top, bottom)};
    }

    Span crossSection(std::int64_t v) const {
        std::optional<Span> span;
        for (std::size_t i = 0; i < corners.size(); ++i) {
            const RowPoint a = corners[i], b = corners[(i + 1) % corners.size()];
            if (std::max(a.v, b.v) < v || std::min(a.v, b.v) > v) continue;
            const Span at = crossing(a, b, v);
            // Rounded inwards: the left end up, the right end down. A level edge has both ends whole.
            const Span inwards = a.v == b.v ? at : Span{at.to, at.from};
            if (!span) span = inwards;
            span = Span{std::min(span->from, inwards.from), std::max(span->to, inwards.to)};
        }
        return *span;
    }
};

/// A stretch of one row long enough for a strip.
struct Stretch {
    std::size_t row;
    Span span;
    std::size_t patch = 0;
};

class RowStack {
public:
    RowStack(const ClothRing &room, const std::vector<ClothRing> &taken, StripDirection direction, Length width,
             Length shortest)
        : m_frame{direction}, m_width(m_frame.measure(width)), m_shortest(m_frame.measure(shortest)),
          m_room(room, m_frame) {
        for (const ClothRing &ring : taken) m_taken.emplace_back(ring, m_frame);
    }

    std::vector<Strip> best() {
        findHeights();
        addThresholds();
        for (std::size_t row = 0; row < m_heights.size(); ++row) findStretches(row);
        findPatches();
        return chooseRows();
    }

private:
    static constexpr std::int64_t most = 60'000; ///< heights looked at

    /// A best stack of rows can be pushed until some row meets a corner, so every row begins at a corner's height, or a
    /// whole number of rows from it; or else until some stretch is just long enough (`addThresholds`), which is looked
    /// for between heights a sixteenth of a row, and no more than 1/16 in, apart.
    void findHeights() {
        const std::int64_t grid = m_frame.grid();
        std::set<std::int64_t> offsets;
        auto corners = [&](const RowRing &ring) {
            for (const RowPoint p : ring.corners)
                for (std::int64_t v : {ceilTo(p.v, grid), floorTo(p.v, grid)}) offsets.insert(v - floorTo(v, m_width));
        };
        corners(m_room);
        for (const RowRing &ring : m_taken) corners(ring);
        // Very many corners: those that begin within a sixty-fourth of a row count as one, the higher.
        const std::int64_t rows = std::max<std::int64_t>((m_room.high - m_room.low) / m_width, 1);
        if (std::int64_t(offsets.size()) * rows > most) {
            std::set<std::int64_t> fewer;
            const std::int64_t step = std::max(floorTo(m_width / 64, grid), grid);
            for (std::int64_t v : offsets) fewer.insert(std::min(ceilTo(v, step), floorTo(m_width - 1, grid)));
            offsets = std::move(fewer);
        }
        const std::int64_t parts = std::max<std::int64_t>(16, (m_width + sixteenth() - 1) / sixteenth());
        for (std::int64_t i = 0; i < parts; ++i) offsets.insert(floorTo(m_width * i / parts, grid));
        for (std::int64_t base = floorTo(m_room.low, m_width); base <= m_room.high; base += m_width)
            for (std::int64_t v : offsets)
                if (base + v >= m_room.low && base + v + m_width <= m_room.high) m_heights.push_back(base + v);
    }

    std::int64_t sixteenth() const { return m_frame.measure(Length::ticks(508)); }

    bool hasStretchBeside(std::int64_t height, Span span) const {
        const auto stretches = stretchesAt(height);
        return std::any_of(stretches.begin(), stretches.end(),
                           [&](Span s) { return s.from < span.to && span.from < s.to; });
    }

    static std::int64_t totalOf(const std::vector<Span> &stretches) {
        std::int64_t total = 0;
        for (const Span span : stretches) total += span.to - span.from;
        return total;
    }

    /// The height that yields most, where it rises to it and falls from it.
    std::int64_t bestBetween(std::int64_t low, std::int64_t high) const {
        const std::int64_t grid = m_frame.grid();
        while (high - low > 2 * grid) {
            const std::int64_t third = std::max(floorTo((high - low) / 3, grid), grid);
            if (totalOf(stretchesAt(low + third)) < totalOf(stretchesAt(high - third)))
                low += third;
            else
                high -= third;
        }
        return low + grid < high ? low + grid : low;
    }

    /// Between two heights a stretch may grow to just the shortest length, or fall below it: there a row gains or loses
    /// a whole strip.
    void addThresholds() {
        const std::int64_t grid = m_frame.grid();
        std::vector<std::vector<Span>> stretches;
        for (std::int64_t height : m_heights) stretches.push_back(stretchesAt(height));
        std::set<std::int64_t> found;
        const auto search = [&](std::size_t with, std::size_t without, Span span) {
            std::int64_t has = m_heights[with], lacks = m_heights[without];
            while (std::abs(has - lacks) > grid) {
                const std::int64_t middle = floorTo((has + lacks) / 2, grid);
                (hasStretchBeside(middle, span) ? has : lacks) = middle;
            }
            found.insert(has);
        };
        for (std::size_t i = 0; i + 1 < m_heights.size(); ++i)
            for (const auto &[with, without] : {std::pair(i, i + 1), std::pair(i + 1, i)})
                for (const Span span : stretches[with])
                    if (std::none_of(stretches[without].begin(), stretches[without].end(),
                                     [&](Span s) { return s.from < span.to && span.from < s.to; }))
                        search(with, without, span);
        // A row may also yield most in between, where one slanted edge takes over from another: looked for around every
        // height that yields more than its neighbours, while there are not too many.
        for (std::size_t i = 1; i + 1 < m_heights.size() && m_heights.size() <= most / 8; ++i) {
            const std::int64_t here = totalOf(stretches[i]);
            if (here == 0 || here < totalOf(stretches[i - 1]) || here < totalOf(stretches[i + 1])) continue;
            for (const auto &[low, high] :
                 {std::pair(m_heights[i - 1], m_heights[i]), std::pair(m_heights[i], m_heights[i + 1])})
                if (const std::int64_t v = bestBetween(low, high); totalOf(stretchesAt(v)) > here) found.insert(v);
        }
        // Rows stand on each other: what holds for one is looked at a whole number of rows from it too, while they are
        // not too many.
        std::set<std::int64_t> all(m_heights.begin(), m_heights.end());
        const std::int64_t rows = std::max<std::int64_t>((m_room.high - m_room.low) / m_width, 1);
        const bool chained = std::int64_t(all.size()) + std::int64_t(found.size()) * rows <= most;
        for (std::int64_t v : found) {
            all.insert(v);
            if (!chained) continue;
            for (std::int64_t up = v + m_width; up + m_width <= m_room.high; up += m_width) all.insert(up);
            for (std::int64_t down = v - m_width; down >= m_room.low; down -= m_width) all.insert(down);
        }
        m_heights.assign(all.begin(), all.end());
    }

    void findStretches(std::size_t row) {
        for (const Span span : stretchesAt(m_heights[row])) m_stretches.push_back({row, span});
    }

    /// Where a strip may lie in a row at that height, from left to right.
    std::vector<Span> stretchesAt(std::int64_t v0) const {
        const std::int64_t v1 = v0 + m_width;
        std::vector<Span> found;
        const auto open = m_room.inside(v0, v1);
        if (!open) return found;
        std::vector<Span> shadows;
        for (const RowRing &ring : m_taken)
            if (const auto shadow = ring.shadow(v0, v1)) shadows.push_back(*shadow);
        std::sort(shadows.begin(), shadows.end(), [](Span a, Span b) { return a.from < b.from; });
        std::int64_t from = open->from;
        auto close = [&](std::int64_t to) {
            const Span span{ceilTo(from, m_frame.grid()), floorTo(to, m_frame.grid())};
            if (span.to - span.from >= m_shortest) found.push_back(span);
        };
        for (const Span shadow : shadows) {
            if (shadow.from > from) close(std::min(shadow.from, open->to));
            from = std::max(from, shadow.to);
        }
        close(open->to);
        return found;
    }

    /// Stretches whose strips would overlap, one by way of another, belong to one patch.
    void findPatches() {
        std::vector<std::size_t> parent(m_stretches.size());
        std::iota(parent.begin(), parent.end(), std::size_t(0));
        auto root = [&](std::size_t i) {
            while (parent[i] != i) i = parent[i] = parent[parent[i]];
            return i;
        };
        for (std::size_t i = 0; i < m_stretches.size(); ++i)
            for (std::size_t k = i + 1; k < m_stretches.size(); ++k) {
                const Stretch &a = m_stretches[i], &b = m_stretches[k];
                if (m_heights[b.row] - m_heights[a.row] >= m_width) break;
                if (a.span.from < b.span.to && b.span.from < a.span.to) parent[root(k)] = root(i);
            }
        for (std::size_t i = 0; i < m_stretches.size(); ++i) m_stretches[i].patch = root(i);
        std::stable_sort(m_stretches.begin(), m_stretches.end(),
                         [](const Stretch &a, const Stretch &b) { return a.patch < b.patch; });
    }

    std::vector<Strip> chooseRows() const {
        std::vector<Strip> strips;
        for (std::size_t i = 0; i < m_stretches.size();) {
            std::size_t end = i;
            while (end < m_stretches.size() && m_stretches[end].patch == m_stretches[i].patch) ++end;
            chooseOnPatch(i, end, strips);
            i = end;
        }
        return strips;
    }

    /// best(k) = the greatest total of rows up to the kth: without it, or with it on top of the last row it clears.
    void chooseOnPatch(std::size_t begin, std::size_t end, std::vector<Strip> &strips) const {
        struct Row {
            std::int64_t height, worth = 0, best = 0;
            std::size_t first = 0, last = 0, below = 0; ///< stretches; rows that end at or below this one's beginning
            bool used = false;
        };
        std::vector<Row> rows;
        for (std::size_t i = begin; i < end; ++i) {
            const std::int64_t height = m_heights[m_stretches[i].row];
            if (rows.empty() || rows.back().height != height) rows.push_back({height, 0, 0, i, i});
            rows.back().worth += m_stretches[i].span.to - m_stretches[i].span.from;
            rows.back().last = i + 1;
        }
        std::size_t below = 0;
        for (std::size_t k = 0; k < rows.size(); ++k) {
            while (rows[below].height + m_width <= rows[k].height) ++below;
            rows[k].below = below;
            const std::int64_t with = rows[k].worth + (below > 0 ? rows[below - 1].best : 0);
            const std::int64_t without = k > 0 ? rows[k - 1].best : 0;
            rows[k].used = with > without;
            rows[k].best = std::max(with, without);
        }
        for (std::size_t k = rows.size(); k > 0;) {
            const Row &row = rows[k - 1];
            if (!row.used) {
                --k;
                continue;
            }
            for (std::size_t i = row.first; i < row.last; ++i) strips.push_back(stripOf(m_stretches[i]));
            k = row.below;
        }
    }

    Strip stripOf(const Stretch &stretch) const {
        const std::int64_t v0 = m_heights[stretch.row], v1 = v0 + m_width;
        const auto [from, to] = stretch.span;
        ClothRing ring = {m_frame.cloth(from, v0), m_frame.cloth(to, v0), m_frame.cloth(to, v1),
                          m_frame.cloth(from, v1)};
        return {std::nullopt, counterClockwise(std::move(ring)), m_frame.length(to - from)};
    }

    RowFrame m_frame;
    std::int64_t m_width, m_shortest;
    RowRing m_room;
    std::vector<RowRing> m_taken;
    std::vector<std::int64_t> m_heights; ///< where a row may begin, rising
    std::vector<Stretch> m_stretches;    ///< by row, later by patch
};

} // namespace

std::vector<Strip> bestRows(const ClothRing &room, const std::vector<ClothRing> &taken, StripDirection direction,
                            Length width, Length shortest) {
    return RowStack(room, taken, direction, width, shortest).best();
}

} // namespace boltwright
