#include "core/figures/figures.h"
#include "core/rules/cut_shape.h"

#include <algorithm>
#include <vector>

namespace boltwright {
namespace {

constexpr Length least = Length::ticks(6 * 8128);

/// Lines on one axis between which nothing begins or ends.
std::vector<Length> sortedLines(std::vector<Length> lines, Length low, Length high) {
    for (Length &l : lines) l = std::clamp(l, low, high);
    lines.push_back(low);
    lines.push_back(high);
    std::sort(lines.begin(), lines.end());
    lines.erase(std::unique(lines.begin(), lines.end()), lines.end());
    return lines;
}

std::size_t lineAt(const std::vector<Length> &lines, Length at) {
    return std::size_t(std::lower_bound(lines.begin(), lines.end(), at) - lines.begin());
}

/// The largest rectangle of free cells, by area, then the one further from the cut end. Row by row, each cell knows
/// how far up the cloth below it is free; a stack of rising columns gives every widest rectangle once.
std::optional<ClothBox> largestFree(const std::vector<Length> &xs, const std::vector<Length> &ys,
                                    const std::vector<char> &taken) {
    const std::size_t columns = xs.size() - 1, rows = ys.size() - 1;
    std::vector<std::size_t> since(columns, 0); // the first free row of the run that reaches this row
    std::optional<ClothBox> best;
    Area bestArea = 0;
    for (std::size_t row = 0; row < rows; ++row) {
        for (std::size_t c = 0; c < columns; ++c)
            if (taken[row * columns + c]) since[c] = row + 1;
        std::vector<std::pair<std::size_t, std::size_t>> stack; // first column, since
        for (std::size_t c = 0; c <= columns; ++c) {
            const std::size_t s = c < columns ? since[c] : rows + 1;
            std::size_t from = c;
            while (!stack.empty() && stack.back().second <= s) {
                from = stack.back().first;
                const std::size_t first = stack.back().second;
                stack.pop_back();
                if (first == s) continue;
                if (first > row) continue;
                const ClothBox box{{xs[from], ys[first]}, {xs[c], ys[row + 1]}};
                if (box.width() < least || box.height() < least) continue;
                const Area area = box.width() * box.height();
                if (area > bestArea || (area == bestArea && best && box.low.y > best->low.y)) {
                    bestArea = area;
                    best = box;
                }
            }
            if (c < columns && s <= row) stack.push_back({from, s});
        }
    }
    return best;
}

} // namespace

std::optional<ClothBox> largestOffcut(const Job &job, const Layout &layout, const std::string &clothId,
                                      const std::optional<std::string> &on) {
    const Cloth *cloth = job.cloth(clothId);
    if (!cloth) return std::nullopt;
    const ClothRing room = roomOf(*cloth, on);
    if (room.empty()) return std::nullopt;
    ClothBox bounds = boxOf(room);
    std::vector<ClothBox> obstacles;
    Length last = bounds.low.y;
    for (const LaidCut &l : layAll(job, layout)) {
        if (!l.panel || l.cut->on != on || &job.clothOf(*l.cut) != cloth) continue;
        obstacles.push_back({l.box.low - Vector{job.gap, job.gap}, l.box.high + Vector{job.gap, job.gap}});
        last = std::max(last, l.box.high.y);
    }
    if (cloth->bolt)
        bounds.high.y = std::min(bounds.high.y, last);
    else
        bounds = {bounds.low + Vector{cloth->edge, cloth->edge}, bounds.high - Vector{cloth->edge, cloth->edge}};
    if (bounds.width() < least || bounds.height() < least) return std::nullopt;
    for (const Flaw &flaw : flawsOn(*cloth, on)) obstacles.push_back(boxOf(flaw.outline));

    std::vector<Length> xs, ys;
    for (const ClothBox &b : obstacles) {
        xs.insert(xs.end(), {b.low.x, b.high.x});
        ys.insert(ys.end(), {b.low.y, b.high.y});
    }
    const bool plainRoom = isUprightRectangle(room);
    if (!plainRoom)
        for (const ClothPoint &p : room)
            for (Length d : {-cloth->edge, cloth->edge}) {
                xs.push_back(p.x + d);
                ys.push_back(p.y + d);
            }
    xs = sortedLines(std::move(xs), bounds.low.x, bounds.high.x);
    ys = sortedLines(std::move(ys), bounds.low.y, bounds.high.y);
    const std::size_t columns = xs.size() - 1, rows = ys.size() - 1;
    std::vector<char> taken(columns * rows, 0);
    for (const ClothBox &b : obstacles)
        for (std::size_t r = lineAt(ys, std::max(b.low.y, bounds.low.y)); r < rows && ys[r] < b.high.y; ++r)
            for (std::size_t c = lineAt(xs, std::max(b.low.x, bounds.low.x)); c < columns && xs[c] < b.high.x; ++c)
                taken[r * columns + c] = 1;
    if (!plainRoom)
        for (std::size_t r = 0; r < rows; ++r)
            for (std::size_t c = 0; c < columns; ++c) {
                const ClothBox cell{{xs[c] - cloth->edge, ys[r] - cloth->edge},
                                    {xs[c + 1] + cloth->edge, ys[r + 1] + cloth->edge}};
                if (!taken[r * columns + c] && !contains(room, ringOf(cell), Length::ticks(4)))
                    taken[r * columns + c] = 1;
            }
    return largestFree(xs, ys, taken);
}

} // namespace boltwright
