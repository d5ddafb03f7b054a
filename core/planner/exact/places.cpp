#include "core/planner/exact/places.h"

#include <algorithm>
#include <limits>
#include <numeric>

namespace boltwright::planner {
namespace {

using Ticks = BoxProblem::Ticks;
using Mode = BoxProblem::Mode;

/// Longest axis that is looked at, in steps of what all sizes have in common.
constexpr Ticks mostSteps = 1 << 22;
constexpr std::size_t mostPlaces = 20'000;

enum class Axis { X, Y };

/// A row of yes and no, to be moved as a whole.
class Marks {
public:
    explicit Marks(std::size_t size) : m_size(size), m_words(size / 64 + 1) {}
    void set(std::size_t i) {
        if (i < m_size) m_words[i / 64] |= std::uint64_t(1) << (i % 64);
    }
    bool test(std::size_t i) const { return i < m_size && (m_words[i / 64] >> (i % 64) & 1); }

    /// Marks also what lies `by` after a mark of `from`.
    void addMoved(const Marks &from, std::size_t by) {
        const std::size_t words = by / 64, bits = by % 64;
        for (std::size_t i = m_words.size(); i-- > words;) {
            std::uint64_t word = from.m_words[i - words] << bits;
            if (bits && i > words) word |= from.m_words[i - words - 1] >> (64 - bits);
            m_words[i] |= word;
        }
    }

private:
    std::size_t m_size;
    std::vector<std::uint64_t> m_words;
};

struct AxisView {
    const BoxProblem &problem;
    Axis axis;

    const Option &option(const BoxProblem::Item &item, const Mode &mode) const {
        return problem.instance->items[std::size_t(item.item)].options[std::size_t(mode.option)];
    }
    bool free(const BoxProblem::Item &item, const Mode &mode) const {
        const PlaceSet &places = option(item, mode).places;
        return axis == Axis::X ? places.freeX() : places.freeY();
    }
    Ticks size(const Mode &mode) const { return axis == Axis::X ? mode.width : mode.height; }
    Ticks low(int sheet) const { return axis == Axis::X ? problem.lefts[std::size_t(sheet)] : 0; }
    Ticks high(int sheet) const {
        return low(sheet) + (axis == Axis::X ? problem.widths : problem.heights)[std::size_t(sheet)];
    }
    Ticks blockLow(const BoxProblem::Block &b) const { return axis == Axis::X ? b.x1 : b.y1; }
    Ticks blockHigh(const BoxProblem::Block &b) const { return axis == Axis::X ? b.x2 : b.y2; }
    std::vector<Ticks> &places(Mode &mode) const { return axis == Axis::X ? mode.xs : mode.ys; }
    const std::vector<Ticks> &places(const Mode &mode) const { return axis == Axis::X ? mode.xs : mode.ys; }
};

void sortUnique(std::vector<Ticks> &v) {
    std::sort(v.begin(), v.end());
    v.erase(std::unique(v.begin(), v.end()), v.end());
}

/// All places the lattice leaves on an axis. With a drop, the rows of all columns.
bool latticePlaces(const AxisView &view, const BoxProblem::Item &item, Mode &mode) {
    const PlaceSet &places = view.option(item, mode).places;
    const std::size_t s = std::size_t(mode.sheet);
    const ClothPoint origin = view.problem.origins[s];
    std::vector<Ticks> &out = view.places(mode);
    const Ticks low = view.low(mode.sheet), last = view.high(mode.sheet) - view.size(mode);
    if (last < low) return true;
    if (view.axis == Axis::X) {
        const Length end = origin.x + Length::ticks(last - low);
        for (Length x = places.nextX(origin.x); x <= end; x += places.xStep) {
            out.push_back(low + (x - origin.x).ticks());
            if (out.size() > mostPlaces) return false;
        }
        return true;
    }
    const Length end = origin.y + Length::ticks(last);
    auto takeColumn = [&](Length x) {
        for (Length y = places.nextY(x, origin.y); y <= end; y = places.nextY(x, y + Length::ticks(1))) {
            out.push_back(y.ticks() - origin.y.ticks());
            if (out.size() > mostPlaces) return false;
        }
        return true;
    };
    if (!places.dropped()) return takeColumn(origin.x);
    for (Ticks x : mode.xs)
        if (!takeColumn(view.problem.cloth(mode, x, 0).x)) return false;
    sortUnique(out);
    return true;
}

/// What all sizes and edges on a sheet and axis are multiples of, counted from its lower or left edge; but for the edge
/// opposite.
Ticks commonStep(const AxisView &view, int sheet) {
    const Ticks low = view.low(sheet);
    Ticks step = 0;
    auto take = [&](Ticks value) { step = std::gcd(step, value); };
    for (const BoxProblem::Block &b : view.problem.blocks) {
        if (b.sheet != sheet) continue;
        take(view.blockLow(b) - low);
        take(view.blockHigh(b) - low);
    }
    for (const BoxProblem::Item &item : view.problem.items)
        for (const Mode &mode : item.modes) {
            if (mode.sheet != sheet) continue;
            take(view.size(mode));
            if (!view.free(item, mode))
                for (Ticks p : view.places(mode)) take(p - low);
        }
    return std::max<Ticks>(step, 1);
}

/// The places on one sheet and axis at which free items come to rest, pushed down (or, seen from above, up).
class Rests {
public:
    Rests(const AxisView &view, int sheet, Ticks step, bool fromAbove)
        : m_view(view), m_sheet(sheet), m_step(step), m_fromAbove(fromAbove), m_low(view.low(sheet)),
          m_high(view.high(sheet)) {}

    /// The marks for one item: against the edges, and one against the other along any of the other items.
    Marks marksFor(std::size_t item) const {
        Marks marks(std::size_t((m_high - m_low) / m_step) + 1);
        mark(marks, m_fromAbove ? m_high : m_low);
        for (const BoxProblem::Block &b : m_view.problem.blocks)
            if (b.sheet == m_sheet) mark(marks, m_fromAbove ? m_view.blockLow(b) : m_view.blockHigh(b));
        const auto &items = m_view.problem.items;
        for (std::size_t j = 0; j < items.size(); ++j) {
            if (j == item) continue;
            for (const Mode &mode : items[j].modes)
                if (mode.sheet == m_sheet && !m_view.free(items[j], mode))
                    for (Ticks p : m_view.places(mode)) mark(marks, m_fromAbove ? p : p + m_view.size(mode));
        }
        for (std::size_t j = 0; j < items.size(); ++j) {
            if (j == item) continue;
            const Marks before = marks;
            for (const Mode &mode : items[j].modes)
                if (mode.sheet == m_sheet && m_view.free(items[j], mode))
                    marks.addMoved(before, std::size_t(m_view.size(mode) / m_step));
        }
        return marks;
    }

    /// Places of the corner of a free mode, rising.
    std::vector<Ticks> places(const Marks &marks, const Mode &mode) const {
        std::vector<Ticks> out;
        const Ticks last = m_high - m_view.size(mode) - m_low;
        for (Ticks at = 0; at <= last; at += m_step)
            if (marks.test(std::size_t(at / m_step))) out.push_back(m_fromAbove ? m_low + last - at : m_low + at);
        if (m_fromAbove) std::reverse(out.begin(), out.end());
        return out;
    }

private:
    void mark(Marks &marks, Ticks edge) const {
        const Ticks at = m_fromAbove ? m_high - edge : edge - m_low;
        if (at >= 0 && at <= m_high - m_low) marks.set(std::size_t(at / m_step));
    }

    const AxisView &m_view;
    int m_sheet;
    Ticks m_step;
    bool m_fromAbove;
    Ticks m_low, m_high;
};

struct FreeMode {
    Mode *mode;
    std::vector<Ticks> below, above;
};

/// The line below which items are pushed down and from which on they are pushed up, so that the places are fewest.
Ticks bestLine(const std::vector<FreeMode> &modes) {
    std::vector<Ticks> lines = {std::numeric_limits<Ticks>::max()};
    for (const FreeMode &m : modes) lines.insert(lines.end(), m.above.begin(), m.above.end());
    sortUnique(lines);
    Ticks best = lines.back();
    std::size_t fewest = std::numeric_limits<std::size_t>::max();
    for (Ticks line : lines) {
        std::size_t count = 0;
        for (const FreeMode &m : modes) {
            count += std::size_t(std::lower_bound(m.below.begin(), m.below.end(), line) - m.below.begin());
            count += std::size_t(m.above.end() - std::lower_bound(m.above.begin(), m.above.end(), line));
        }
        if (count < fewest) {
            fewest = count;
            best = line;
        }
    }
    return best;
}

bool findOnSheet(BoxProblem &problem, const AxisView &view, int sheet) {
    const Ticks step = commonStep(view, sheet);
    // Pushed down, all ends are whole steps: what is left over beyond the last is of no use.
    Ticks &extent = (view.axis == Axis::X ? problem.widths : problem.heights)[std::size_t(sheet)];
    extent -= extent % step;
    if (view.axis == Axis::Y) problem.steps.push_back(step);
    if ((view.high(sheet) - view.low(sheet)) / step > mostSteps) return false;
    const Rests below(view, sheet, step, false), above(view, sheet, step, true);
    std::vector<FreeMode> modes;
    for (std::size_t i = 0; i < problem.items.size(); ++i) {
        BoxProblem::Item &item = problem.items[i];
        std::optional<Marks> marksBelow, marksAbove;
        for (Mode &mode : item.modes) {
            if (mode.sheet != sheet || !view.free(item, mode)) continue;
            if (!marksBelow) {
                marksBelow = below.marksFor(i);
                marksAbove = above.marksFor(i);
            }
            modes.push_back({&mode, below.places(*marksBelow, mode), above.places(*marksAbove, mode)});
            if (modes.back().below.size() > mostPlaces) return false;
        }
    }
    const Ticks line = bestLine(modes);
    (view.axis == Axis::X ? problem.lineX : problem.lineY) = line;
    for (FreeMode &m : modes) {
        std::vector<Ticks> &out = view.places(*m.mode);
        out.assign(m.below.begin(), std::lower_bound(m.below.begin(), m.below.end(), line));
        out.insert(out.end(), std::lower_bound(m.above.begin(), m.above.end(), line), m.above.end());
    }
    return true;
}

} // namespace

bool findPlaces(BoxProblem &problem) {
    for (const Axis axis : {Axis::X, Axis::Y}) {
        const AxisView view{problem, axis};
        for (BoxProblem::Item &item : problem.items)
            for (Mode &mode : item.modes)
                if (!view.free(item, mode) && !latticePlaces(view, item, mode)) return false;
        for (std::size_t s = 0; s < problem.lefts.size(); ++s)
            if (!findOnSheet(problem, view, int(s))) return false;
    }
    return true;
}

} // namespace boltwright::planner
