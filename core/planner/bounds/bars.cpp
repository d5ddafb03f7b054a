#include "core/planner/bounds/bounds.h"
#include "core/planner/bounds/reach.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <optional>

// A row of cloth as narrow as a thread crosses some items: a bar of stretches that lie side by side within the room,
// each on one of its own places. Every item is crossed by as many rows as it is long. How few rows can do that, any bar
// taken as often as wished, is a linear program, solved by bars made when they are wanted; and its prices are what
// counts: they are rounded to whole numbers, the dearest bar is found exactly, and all items at those prices over the
// dearest bar are rows that no layout can do without. So a search that went wrong would give a weak bound, never a
// false one. Sources: the bar relaxation, Scheithauer 1999, "LP-based bounds for the container and multi-container
// loading problem"; bars made when wanted, Gilmore & Gomory 1961; prices that hold at any time, Farley 1990 (all from
// memory).
namespace boltwright::planner {
namespace {

using Ticks = std::int64_t;

/// Prices times lengths.
__extension__ using Sum = __int128;

enum class Axis { Rows, Columns };

/// Stretches of bars that may take one another's place.
struct Kind {
    Ticks size = 0;            ///< widened
    bool free = true;          ///< else only at `places`, from the room's low end, rising
    std::vector<Ticks> places; ///
    int count = 0;             ///< no bar has more of them
    bool operator==(const Kind &other) const {
        return size == other.size && free == other.free && places == other.places;
    }
};

/// One way to lay an item: by how many bars it is crossed, and as what.
struct Way {
    std::size_t kind = 0;
    Ticks length = 0; ///< widened
};

struct Bars {
    Ticks room = 0; ///< widened
    std::vector<Kind> kinds;
    std::vector<std::vector<Way>> items;
    bool impossible = false; ///< some item has no place at all
};

constexpr std::size_t mostPlaces = 2000; ///< of one stretch; with more it counts as free
constexpr std::size_t mostRows = 160;    ///< of the linear program
constexpr Ticks mostCells = 2048;
constexpr int mostRounds = 200;

/// Where an option's stretch can begin, from the room's low end; nothing where it is free. The corner of its box goes
/// no further than `last`.
std::optional<std::vector<Ticks>> placesOf(const PlaceSet &places, const Reach &reach, const ClothBox &room, Axis axis,
                                           Length last) {
    std::vector<Ticks> out;
    if (axis == Axis::Rows) {
        if (places.freeX()) return std::nullopt;
        for (Length x = reach.lowX; x <= reach.highX; x += places.xStep) {
            out.push_back((x - room.low.x).ticks());
            if (out.size() > mostPlaces) return std::nullopt;
        }
        return out;
    }
    if (places.freeY()) return std::nullopt;
    for (Length x = reach.lowX; x <= reach.highX; x += places.xStep) {
        for (Length y = places.nextY(x, room.low.y); y <= last; y = places.nextY(x, y + Length::ticks(1))) {
            out.push_back((y - room.low.y).ticks());
            if (out.size() > mostPlaces) return std::nullopt;
        }
        if (!places.dropped()) break;
    }
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end()), out.end());
    return out;
}

/// The items as bars of the only sheet, its room ending at `top`, widened by `across` and `along` (see bounds.h).
Bars barsOf(const Instance &instance, Axis axis, Length top, Ticks across, Ticks along) {
    const bool rows = axis == Axis::Rows;
    const ClothBox room = boxOf(instance.sheets[0].room);
    Bars bars;
    bars.room = rows ? room.width().ticks() + across : (top - room.low.y).ticks() + along;
    for (const Item &item : instance.items) {
        std::vector<Way> ways;
        bool understood = true, any = false;
        for (const Option &option : item.options) {
            const Outline &outline = instance.outlines[std::size_t(option.outline)];
            const auto reach = reachOf(instance, option);
            if (!reach || (!rows && outline.height > top - room.low.y)) continue;
            const auto core = coreOf(outline);
            if (!core || (!rows && !outline.rectangle)) {
                understood = false;
                continue;
            }
            Kind kind;
            kind.size = (rows ? core->right - core->left : outline.height).ticks() + (rows ? across : along);
            if (const auto places = placesOf(option.places, *reach, room, axis, top - outline.height)) {
                kind.free = false;
                kind.places = *places;
                if (rows)
                    for (Ticks &p : kind.places) p += core->left.ticks();
                if (kind.places.empty()) continue;
            }
            any = true;
            auto at = std::find(bars.kinds.begin(), bars.kinds.end(), kind);
            if (at == bars.kinds.end()) at = bars.kinds.insert(at, kind);
            const auto number = std::size_t(at - bars.kinds.begin());
            const Ticks length = (rows ? outline.height : outline.width).ticks() + (rows ? along : across);
            const auto same = std::find_if(ways.begin(), ways.end(), [&](const Way &w) { return w.kind == number; });
            if (same == ways.end()) {
                ways.push_back({number, length});
                ++at->count;
            } else {
                same->length = std::min(same->length, length);
            }
        }
        if (!understood) continue;
        if (!any) bars.impossible = true;
        bars.items.push_back(std::move(ways));
    }
    return bars;
}

/// Finds the dearest bar. Sizes and places are rounded to cells so that whatever fits in truth still does.
class Dearest {
public:
    explicit Dearest(const Bars &bars) : m_bars(bars) {
        bool fixed = false;
        Ticks step = 0;
        for (const Kind &kind : bars.kinds) {
            step = std::gcd(step, kind.size);
            fixed = fixed || !kind.free;
            for (Ticks p : kind.places) step = std::gcd(step, p);
        }
        step = std::max<Ticks>(step, 1);
        const bool whole = bars.room / step <= mostCells;
        m_cell = whole ? step : (bars.room + mostCells - 1) / mostCells;
        m_cells = fixed && !whole ? (bars.room + m_cell - 1) / m_cell : bars.room / m_cell;
        m_counted = !fixed;
        for (std::size_t k = 0; k < bars.kinds.size(); ++k) {
            const Kind &kind = bars.kinds[k];
            if (kind.free && kind.size >= m_cell)
                m_freeArcs.push_back({k, 0, kind.size / m_cell});
            else if (kind.free)
                m_counted = false;
            for (Ticks p : kind.places) {
                const Arc arc{k, (p + m_cell - 1) / m_cell, std::min((p + kind.size) / m_cell, m_cells)};
                if (arc.from < arc.to) m_arcs.push_back(arc);
            }
        }
        std::sort(m_arcs.begin(), m_arcs.end(), [](const Arc &a, const Arc &b) { return a.from < b.from; });
    }

    /// Whether anything can be said of a kind: it is no shorter than a cell.
    bool measured(std::size_t kind) const {
        const Kind &k = m_bars.kinds[kind];
        return k.free ? k.size >= m_cell : k.size >= 2 * m_cell || (k.size >= m_cell && m_cell == 1);
    }

    /// The value of the dearest bar, and how many of each kind it has.
    Ticks find(const std::vector<Ticks> &prices, std::vector<int> &counts) {
        counts.assign(m_bars.kinds.size(), 0);
        return m_counted ? findCounted(prices, counts) : findAnyhow(prices, counts);
    }

private:
    struct Arc {
        std::size_t kind;
        Ticks from, to;
    };

    /// All stretches free: each is taken once at most.
    Ticks findCounted(const std::vector<Ticks> &prices, std::vector<int> &counts) {
        const auto width = std::size_t(m_cells) + 1;
        std::vector<Ticks> best(width, 0);
        std::vector<std::size_t> order; // a kind as often as it may be taken
        for (const Arc &arc : m_freeArcs) {
            const int most = int(std::min<Ticks>(m_bars.kinds[arc.kind].count, m_cells / arc.to));
            for (int i = 0; i < most && prices[arc.kind] > 0; ++i) order.push_back(std::size_t(&arc - &m_freeArcs[0]));
        }
        std::vector<char> taken(order.size() * width, 0);
        for (std::size_t n = 0; n < order.size(); ++n) {
            const Arc &arc = m_freeArcs[order[n]];
            const auto size = std::size_t(arc.to);
            for (std::size_t at = width; at-- > size;)
                if (best[at - size] + prices[arc.kind] > best[at]) {
                    best[at] = best[at - size] + prices[arc.kind];
                    taken[n * width + at] = 1;
                }
        }
        std::size_t at = width - 1;
        for (std::size_t n = order.size(); n-- > 0;)
            if (taken[n * width + at]) {
                ++counts[m_freeArcs[order[n]].kind];
                at -= std::size_t(m_freeArcs[order[n]].to);
            }
        return best.back();
    }

    /// Some stretches have their places: a way through the room from its low to its high end. One may come twice.
    Ticks findAnyhow(const std::vector<Ticks> &prices, std::vector<int> &counts) {
        const auto width = std::size_t(m_cells) + 1;
        std::vector<Ticks> best(width, 0);
        struct Step {
            std::size_t from = 0;
            int kind = -1;
        };
        std::vector<Step> steps(width);
        std::size_t next = 0;
        for (std::size_t at = 0; at < width; ++at) {
            if (at > 0 && best[at - 1] >= best[at]) {
                best[at] = best[at - 1];
                steps[at] = {at - 1, -1};
            }
            auto go = [&](std::size_t kind, std::size_t to) {
                if (to >= width || prices[kind] <= 0 || best[at] + prices[kind] <= best[to]) return;
                best[to] = best[at] + prices[kind];
                steps[to] = {at, int(kind)};
            };
            for (const Arc &arc : m_freeArcs) go(arc.kind, at + std::size_t(arc.to));
            for (; next < m_arcs.size() && m_arcs[next].from == Ticks(at); ++next)
                go(m_arcs[next].kind, std::size_t(m_arcs[next].to));
        }
        for (std::size_t at = width - 1; at > 0; at = steps[at].from)
            if (steps[at].kind >= 0) ++counts[std::size_t(steps[at].kind)];
        return best.back();
    }

    const Bars &m_bars;
    Ticks m_cell = 1, m_cells = 0;
    bool m_counted = true;
    std::vector<Arc> m_freeArcs; ///< `to` is the size
    std::vector<Arc> m_arcs;     ///< rising by `from`
};

/// The linear program: as few bars as may be, each kind crossed often enough, each item laid one way.
class Program {
public:
    explicit Program(const Bars &bars) : m_bars(bars), m_dearest(bars), m_kinds(bars.kinds.size()) {
        Ticks longest = 1;
        for (const auto &ways : bars.items) {
            if (ways.size() > 1) ++m_choices;
            for (const Way &way : ways) longest = std::max(longest, way.length);
        }
        m_unit = double(longest);
        m_rows = m_kinds + m_choices;
    }

    bool tooLarge() const { return m_rows > mostRows || m_bars.items.empty(); }

    /// As many bars as any layout needs at least, or fewer; ends once there are more than `enough`.
    Ticks least(Ticks enough) {
        begin();
        std::vector<double> prices(m_rows);
        std::vector<int> counts;
        for (int round = 0; round < mostRounds && m_best <= enough; ++round) {
            for (std::size_t r = 0; r < m_rows; ++r) {
                prices[r] = 0;
                for (std::size_t b = 0; b < m_rows; ++b) prices[r] += m_basis[b].cost * inverse(b, r);
            }
            const double dearest = judge(prices, counts);
            const double all = std::inner_product(m_level.begin(), m_level.end(), m_basis.begin(), 0., std::plus<>(),
                                                  [](double x, const Column &c) { return x * c.cost; });
            if (double(m_best) >= all * m_unit - 1) break;
            Column entering = cheapestWay(prices);
            if (entering.entries.empty() && dearest > 1 + 1e-9) {
                entering.cost = 1;
                for (std::size_t k = 0; k < m_kinds; ++k)
                    if (counts[k]) entering.entries.emplace_back(k, counts[k]);
            }
            if (entering.entries.empty() || !exchange(entering)) break;
        }
        return m_best;
    }

private:
    struct Column {
        std::vector<std::pair<std::size_t, double>> entries;
        double cost = 0;
    };

    double &inverse(std::size_t row, std::size_t column) { return m_inverse[row * m_rows + column]; }

    /// Each kind in bars of its own, each item its first way.
    void begin() {
        m_inverse.assign(m_rows * m_rows, 0);
        m_basis.assign(m_rows, {});
        m_level.assign(m_rows, 0);
        for (std::size_t r = 0; r < m_rows; ++r) inverse(r, r) = 1;
        for (std::size_t k = 0; k < m_kinds; ++k) m_basis[k] = {{{k, 1.}}, 1};
        std::size_t row = m_kinds;
        for (const auto &ways : m_bars.items) {
            const Way &way = ways[0];
            m_level[way.kind] += double(way.length) / m_unit;
            if (ways.size() == 1) continue;
            m_basis[row] = columnOf(way, row);
            inverse(way.kind, row) = double(way.length) / m_unit;
            m_level[row] = 1;
            ++row;
        }
    }

    Column columnOf(const Way &way, std::size_t row) const {
        return {{{way.kind, -double(way.length) / m_unit}, {row, 1.}}, 0};
    }

    /// What these prices prove, in whole numbers. Returns what the dearest bar costs.
    double judge(const std::vector<double> &prices, std::vector<int> &counts) {
        constexpr double scale = 1 << 24;
        std::vector<Ticks> whole(m_kinds, 0);
        for (std::size_t k = 0; k < m_kinds; ++k)
            if (m_dearest.measured(k)) whole[k] = Ticks(std::clamp(prices[k], 0., 1e4) * scale);
        const Ticks dearest = m_dearest.find(whole, counts);
        if (dearest <= 0) return 0;
        Sum sum = 0;
        for (const auto &ways : m_bars.items) {
            Sum least = -1;
            for (const Way &way : ways) {
                const Sum value = Sum(whole[way.kind]) * way.length;
                if (least < 0 || value < least) least = value;
            }
            sum += least;
        }
        m_best = std::max(m_best, Ticks((sum + dearest - 1) / dearest));
        return double(dearest) / scale;
    }

    /// A way to lay an item that costs less than what it is laid as, or more bars of a kind than are needed.
    Column cheapestWay(const std::vector<double> &prices) const {
        Column found;
        double least = -1e-9;
        for (std::size_t k = 0; k < m_kinds; ++k)
            if (prices[k] < least) {
                least = prices[k];
                found = {{{k, -1.}}, 0};
            }
        std::size_t row = m_kinds;
        for (const auto &ways : m_bars.items) {
            if (ways.size() == 1) continue;
            for (const Way &way : ways) {
                const double cost = prices[way.kind] * double(way.length) / m_unit - prices[row];
                if (cost < least) {
                    least = cost;
                    found = columnOf(way, row);
                }
            }
            ++row;
        }
        return found;
    }

    bool exchange(const Column &entering) {
        std::vector<double> change(m_rows, 0);
        for (std::size_t r = 0; r < m_rows; ++r)
            for (const auto &[row, value] : entering.entries) change[r] += inverse(r, row) * value;
        std::optional<std::size_t> leaving;
        double most = std::numeric_limits<double>::max();
        for (std::size_t r = 0; r < m_rows; ++r) {
            if (change[r] <= 1e-9) continue;
            const double share = std::max(0., m_level[r]) / change[r];
            if (share < most - 1e-12 || (leaving && share < most + 1e-12 && change[r] > change[*leaving])) {
                most = std::min(most, share);
                leaving = r;
            }
        }
        if (!leaving) return false;
        const double pivot = change[*leaving];
        for (std::size_t c = 0; c < m_rows; ++c) inverse(*leaving, c) /= pivot;
        m_level[*leaving] = most;
        for (std::size_t r = 0; r < m_rows; ++r) {
            if (r == *leaving || change[r] == 0) continue;
            for (std::size_t c = 0; c < m_rows; ++c) inverse(r, c) -= change[r] * inverse(*leaving, c);
            m_level[r] -= change[r] * most;
        }
        m_basis[*leaving] = entering;
        return true;
    }

    const Bars &m_bars;
    Dearest m_dearest;
    std::size_t m_kinds, m_choices = 0, m_rows = 0;
    double m_unit = 1;
    std::vector<double> m_inverse, m_level;
    std::vector<Column> m_basis;
    Ticks m_best = 0;
};

/// As many bars as there must be, widened like all else; 0 where nothing is known.
Ticks barsNeeded(const Bars &bars, Ticks enough) {
    if (bars.impossible) return std::numeric_limits<Ticks>::max();
    Program program(bars);
    return program.tooLarge() ? 0 : program.least(enough);
}

struct Widening {
    Ticks across, along;
};
std::vector<Widening> widenings(Length gap) {
    if (gap == Length{}) return {{0, 0}};
    const Ticks g = gap.ticks(), half = rootBelow(g * g / 2);
    return {{g, 0}, {half, half}, {0, g}};
}

bool refutedByColumns(const Instance &instance, Length top, const Widening &w) {
    const Ticks width = boxOf(instance.sheets[0].room).width().ticks() + w.across;
    return barsNeeded(barsOf(instance, Axis::Columns, top, w.across, w.along), width) > width;
}

/// Columns say something of their own where places along are few.
bool motifsAlong(const Instance &instance) {
    return std::any_of(instance.items.begin(), instance.items.end(), [](const Item &item) {
        return std::all_of(item.options.begin(), item.options.end(),
                           [](const Option &option) { return !option.places.freeY(); });
    });
}

} // namespace

Length leastByBars(const Instance &instance) {
    const ClothBox room = boxOf(openSheet(instance)->room);
    if (instance.sheets.size() != 1) return room.low.y;
    constexpr Ticks never = std::numeric_limits<Ticks>::max();
    Length best = room.low.y;
    for (const Widening &w : widenings(instance.gap)) {
        const Bars bars = barsOf(instance, Axis::Rows, room.high.y, w.across, w.along);
        if (bars.impossible) return room.low.y; // somebody else says so
        best = std::max(best, room.low.y + Length::ticks(barsNeeded(bars, never) - w.along));
    }
    if (!motifsAlong(instance)) return best;
    for (const Widening &w : widenings(instance.gap)) {
        // What cannot fit in some length cannot in less.
        Length refused = best - Length::ticks(1), open = best;
        const Length stride = std::max(Length::ticks(1), Length::ticks((best - room.low.y).ticks() / 16));
        for (int k = 0; k < 16 && open < room.high.y && refutedByColumns(instance, open, w); ++k) {
            refused = open;
            open = std::min(room.high.y, open + stride);
        }
        const Length near = Length::ticks(std::max<Ticks>(1, stride.ticks() / 16));
        while (open - refused > near) {
            const Length middle = refused + Length::ticks((open - refused).ticks() / 2);
            (refutedByColumns(instance, middle, w) ? refused : open) = middle;
        }
        best = std::max(best, refused + Length::ticks(1));
    }
    return best;
}

bool barsExceeded(const Instance &instance) {
    if (instance.sheets.size() != 1) return false;
    const ClothBox room = boxOf(instance.sheets[0].room);
    for (const Widening &w : widenings(instance.gap)) {
        const Ticks height = room.height().ticks() + w.along;
        if (barsNeeded(barsOf(instance, Axis::Rows, room.high.y, w.across, w.along), height) > height) return true;
        if (refutedByColumns(instance, room.high.y, w)) return true;
    }
    return false;
}

} // namespace boltwright::planner
