#include "core/paper/cutting_order.h"

#include <algorithm>
#include <array>
#include <optional>

namespace boltwright {
namespace {

constexpr Length rounding = Length::ticks(4); // turning on the bias and mitres round to whole ticks

enum Side { TowardsLeft, TowardsRight, TowardsEnd, UpTheRoll };
constexpr std::array<Side, 4> allSides = {TowardsLeft, TowardsRight, TowardsEnd, UpTheRoll};

/// The ring turned so that `side` looks to the left: every question about a side is asked about the left one.
ClothRing seenFrom(const ClothRing &ring, Side side) {
    ClothRing out;
    for (ClothPoint p : ring) {
        switch (side) {
        case TowardsLeft:
            out.push_back({p.x, p.y});
            break;
        case TowardsRight:
            out.push_back({-p.x, p.y});
            break;
        case TowardsEnd:
            out.push_back({p.y, p.x});
            break;
        case UpTheRoll:
            out.push_back({-p.y, p.x});
            break;
        }
    }
    return out;
}

/// The leftmost x of a ring at a level given in half ticks; none where the ring does not reach it.
std::optional<Length> leftmostAt(const ClothRing &ring, std::int64_t halves) {
    std::optional<Length> least;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        ClothPoint a = ring[i], b = ring[(i + 1) % ring.size()];
        if (a.y > b.y) std::swap(a, b);
        if (halves <= 2 * a.y.ticks() || halves >= 2 * b.y.ticks()) continue;
        const std::int64_t rise = halves - 2 * a.y.ticks(), whole = 2 * (b.y - a.y).ticks();
        const Length x = a.x + Length::ticks(roundedQuotient((b.x - a.x).ticks() * rise, whole));
        if (!least || x < *least) least = x;
    }
    return least;
}

/// Whether `other` stands somewhere to the left of the whole left side of `own`, both as seen from one side. Between
/// two corners' levels neither can pass the other, since they do not overlap: one look halfway is enough.
bool standsBefore(const ClothRing &other, const ClothRing &own) {
    const ClothBox a = boxOf(own), b = boxOf(other);
    const Length low = std::max(a.low.y, b.low.y), high = std::min(a.high.y, b.high.y);
    if (high - low <= rounding || b.low.x >= a.high.x) return false;
    std::vector<Length> levels = {low, high};
    for (const ClothRing *ring : {&own, &other})
        for (ClothPoint p : *ring)
            if (p.y > low && p.y < high) levels.push_back(p.y);
    std::sort(levels.begin(), levels.end());
    for (std::size_t i = 0; i + 1 < levels.size(); ++i) {
        if (levels[i + 1] - levels[i] <= rounding) continue;
        const std::int64_t halfway = levels[i].ticks() + levels[i + 1].ticks();
        const auto mine = leftmostAt(own, halfway), its = leftmostAt(other, halfway);
        if (mine && its && *its < *mine) return true;
    }
    return false;
}

/// One section: which of its cuts stand before which, from each side.
class Section {
public:
    Section(const ClothSheet &sheet, const std::vector<const Cut *> &cuts, std::vector<int> members)
        : m_sheet(sheet), m_cuts(cuts), m_members(std::move(members)), m_off(m_members.size(), false) {
        for (Side side : allSides) {
            std::vector<ClothRing> rings;
            for (int m : m_members) rings.push_back(seenFrom(sheet.cuts[std::size_t(m)].outline, side));
            auto &before = m_before[side];
            before.resize(m_members.size());
            for (std::size_t own = 0; own < rings.size(); ++own)
                for (std::size_t other = 0; other < rings.size(); ++other)
                    if (own != other && standsBefore(rings[other], rings[own])) before[own].push_back(int(other));
        }
    }

    std::vector<int> order() {
        std::vector<int> out;
        while (out.size() < m_members.size())
            for (int next : nextTurn()) out.push_back(m_members[std::size_t(next)]);
        return out;
    }

private:
    bool isOpen(int member) const {
        return std::any_of(allSides.begin(), allSides.end(), [&](Side side) {
            const auto &before = m_before[side][std::size_t(member)];
            return std::all_of(before.begin(), before.end(), [&](int other) { return m_off[std::size_t(other)]; });
        });
    }

    bool areCopies(int a, int b) const {
        return m_cuts[std::size_t(m_members[std::size_t(a)])]->panel ==
               m_cuts[std::size_t(m_members[std::size_t(b)])]->panel;
    }

    /// As many copies of the panel as can be cut one after the other, beginning with `first`.
    std::vector<int> runFrom(int first) {
        std::vector<int> run = {first};
        m_off[std::size_t(first)] = true;
        for (bool found = true; found;) {
            found = false;
            for (int next : m_from)
                if (!m_off[std::size_t(next)] && areCopies(first, next) && isOpen(next)) {
                    run.push_back(next);
                    m_off[std::size_t(next)] = true;
                    found = true;
                    break;
                }
        }
        for (int member : run) m_off[std::size_t(member)] = false;
        return run;
    }

    /// The next cuts: of the first panel whose copies can all be cut now, else the first that lies open.
    std::vector<int> nextTurn() {
        if (m_from.empty()) sortFromEnd();
        std::vector<int> chosen;
        for (int member : m_from) {
            if (m_off[std::size_t(member)] || !isOpen(member)) continue;
            const auto run = runFrom(member);
            const auto left = std::count_if(m_from.begin(), m_from.end(), [&](int other) {
                return !m_off[std::size_t(other)] && areCopies(member, other);
            });
            if (chosen.empty()) chosen = {member};
            if (std::ptrdiff_t(run.size()) < left) continue;
            chosen = run;
            break;
        }
        if (chosen.empty()) chosen = {furthestLeft()};
        for (int member : chosen) m_off[std::size_t(member)] = true;
        return chosen;
    }

    const ClothBox &box(int member) const { return m_sheet.cuts[std::size_t(m_members[std::size_t(member)])].box; }

    void sortFromEnd() {
        for (std::size_t i = 0; i < m_members.size(); ++i) m_from.push_back(int(i));
        std::stable_sort(m_from.begin(), m_from.end(), [&](int a, int b) {
            return std::pair(box(a).low.y, box(a).low.x) < std::pair(box(b).low.y, box(b).low.x);
        });
    }

    int furthestLeft() const {
        int best = -1;
        for (int member : m_from)
            if (!m_off[std::size_t(member)] && (best < 0 || box(member).low.x < box(best).low.x)) best = member;
        return best;
    }

    const ClothSheet &m_sheet;
    const std::vector<const Cut *> &m_cuts;
    std::vector<int> m_members;
    std::vector<bool> m_off;
    std::vector<int> m_from; ///< members from the cut end up
    std::array<std::vector<std::vector<int>>, 4> m_before;
};

} // namespace

CuttingOrder cuttingOrder(const Job &job, const Layout &layout, const ClothSheet &sheet) {
    std::vector<const Cut *> cuts;
    CuttingOrder order;
    std::vector<int> toCut;
    for (std::size_t i = 0; i < sheet.cuts.size(); ++i) {
        cuts.push_back(&layout.cuts[std::size_t(sheet.cuts[i].cut)]);
        (cuts.back()->state == CutState::Cut ? order.done : toCut).push_back(int(i));
    }
    std::stable_sort(toCut.begin(), toCut.end(), [&](int a, int b) {
        return sheet.cuts[std::size_t(a)].box.low.y < sheet.cuts[std::size_t(b)].box.low.y;
    });

    const Cloth *cloth = job.cloth(sheet.cloth);
    const bool bolt = cloth && cloth->bolt;
    if (bolt && cloth->bolt->square > Length{} && !toCut.empty()) order.across.push_back(cloth->bolt->square);

    std::vector<int> section;
    Length reach;
    auto close = [&] {
        if (section.empty()) return;
        const auto ordered = Section(sheet, cuts, section).order();
        order.cuts.insert(order.cuts.end(), ordered.begin(), ordered.end());
        // At the very end of the cloth there is nothing left to cut off.
        if (bolt && (sheet.goesOn || reach < sheet.box().high.y)) order.across.push_back(reach);
        section.clear();
    };
    for (int i : toCut) {
        const ClothBox &box = sheet.cuts[std::size_t(i)].box;
        if (bolt && !section.empty() && box.low.y + rounding >= reach) close();
        reach = section.empty() ? box.high.y : std::max(reach, box.high.y);
        section.push_back(i);
    }
    close();
    return order;
}

} // namespace boltwright
