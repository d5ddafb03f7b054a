#include "core/edit/moves.h"

#include "core/base/language.h"
#include "core/figures/figures.h"
#include "core/geometry/distance.h"
#include "core/rules/rules.h"
#include "core/rules/settle.h"

#include <algorithm>
#include <numeric>
#include <set>

namespace boltwright {

bool mayMove(const Layout &layout, int cut) { return layout.cuts[std::size_t(cut)].state == CutState::Planned; }

std::vector<int> thoseThatMayMove(const Layout &layout, std::vector<int> cuts) {
    std::erase_if(cuts, [&](int cut) { return !mayMove(layout, cut); });
    return cuts;
}

Layout withCutsMoved(const Job &job, Layout layout, const std::vector<int> &cuts, Vector by) {
    for (int cut : thoseThatMayMove(layout, cuts)) {
        layout.cuts[std::size_t(cut)].x += by.x;
        layout.cuts[std::size_t(cut)].y += by.y;
    }
    return withFigures(job, std::move(layout));
}

Layout withCutsPutAside(const Job &job, Layout layout, const std::vector<int> &cuts) {
    std::set<CopyOf> copies;
    for (int cut : cuts) copies.insert({layout.cuts[std::size_t(cut)].panel, layout.cuts[std::size_t(cut)].copy});
    for (const Cut &cut : layout.cuts)
        if (cut.state == CutState::Cut) copies.erase({cut.panel, cut.copy});
    for (const CopyOf &copy : copies) layout = withCopyPutAside(job, std::move(layout), copy);
    return layout;
}

namespace {

std::string nameOf(const Job &job, const Cut &cut) {
    const Panel *panel = job.panel(cut.panel);
    return !panel || panel->name.empty() ? cut.panel : panel->name;
}

ClothPoint cornerOf(const Layout &layout, int cut) {
    return {layout.cuts[std::size_t(cut)].x, layout.cuts[std::size_t(cut)].y};
}

void putAt(Layout &layout, int cut, ClothPoint corner) {
    layout.cuts[std::size_t(cut)].x = corner.x;
    layout.cuts[std::size_t(cut)].y = corner.y;
}

std::vector<Breach> brokenBy(const Job &job, const Layout &layout, std::initializer_list<int> cuts) {
    const auto laidCuts = layAll(job, layout);
    std::vector<Breach> all;
    for (int cut : cuts) {
        const auto found = breachesOf(job, layout, laidCuts, cut);
        all.insert(all.end(), found.begin(), found.end());
    }
    return all;
}

std::string stays(const Job &job, const Layout &layout, int cut) {
    const Cut &own = layout.cuts[std::size_t(cut)];
    return own.state == CutState::Locked ? phrase("%1 is locked: unlock it to move it", {nameOf(job, own)})
                                         : phrase("%1 is already cut: it stays where it was", {nameOf(job, own)});
}

} // namespace

// Changing places.

namespace {

bool boxesMeet(const ClothBox &a, const ClothBox &b) {
    return a.low.x < b.high.x && b.low.x < a.high.x && a.low.y < b.high.y && b.low.y < a.high.y;
}

/// The layout with both on each other's sheet, corner to corner.
Layout exchanged(const Job &job, const Layout &layout, int a, int b) {
    const SheetOf sheetA = sheetOf(job, layout.cuts[std::size_t(a)]),
                  sheetB = sheetOf(job, layout.cuts[std::size_t(b)]);
    const ClothPoint cornerA = cornerOf(layout, a), cornerB = cornerOf(layout, b);
    Layout out = withCutMoved(job, layout, a, sheetB, cornerB);
    return withCutMoved(job, std::move(out), b, sheetA, cornerA);
}

/// One of them comes to rest, then the other; each must cover some of the place that it takes.
std::optional<Layout> restedInTurn(const Job &job, Layout layout, int first, int second, const ClothBox &placeOfFirst,
                                   const ClothBox &placeOfSecond) {
    // The one still in the hand is out of the way of the one that comes to rest.
    const ClothPoint away = cornerOf(layout, second);
    putAt(layout, second, away - Vector{{}, Length::limit()});
    const Settled one = rest(job, layout, first, cornerOf(layout, first), job.gap + Length::ticks(1));
    putAt(layout, first, one.corner);
    const Settled two = rest(job, layout, second, away, job.gap + Length::ticks(1));
    putAt(layout, second, two.corner);
    if (!boxesMeet(boxOnCloth(job, layout, layout.cuts[std::size_t(first)]), placeOfFirst) ||
        !boxesMeet(boxOnCloth(job, layout, layout.cuts[std::size_t(second)]), placeOfSecond))
        return std::nullopt;
    if (!brokenBy(job, layout, {first, second}).empty()) return std::nullopt;
    return layout;
}

} // namespace

Moved withCutsSwapped(const Job &job, const Layout &layout, int a, int b) {
    for (int cut : {a, b})
        if (!mayMove(layout, cut)) return {std::nullopt, stays(job, layout, cut)};
    const ClothBox boxA = boxOnCloth(job, layout, layout.cuts[std::size_t(a)]);
    const ClothBox boxB = boxOnCloth(job, layout, layout.cuts[std::size_t(b)]);
    Layout straight = exchanged(job, layout, a, b);
    const std::vector<Breach> broken = brokenBy(job, straight, {a, b});
    if (broken.empty()) return {std::move(straight), {}};
    for (const auto &[first, second] : {std::pair{a, b}, std::pair{b, a}}) {
        const ClothBox &placeOfFirst = first == a ? boxB : boxA, &placeOfSecond = first == a ? boxA : boxB;
        if (auto rested = restedInTurn(job, straight, first, second, placeOfFirst, placeOfSecond))
            return {withFigures(job, std::move(*rested)), {}};
    }
    const Breach &first = broken.front();
    return {std::nullopt, phrase("%1: %2", {nameOf(job, layout.cuts[std::size_t(first.cut)]), first.text})};
}

// Head to foot.

std::optional<int> pairOf(const Job &job, const Layout &layout, int cut) {
    const Cut &own = layout.cuts[std::size_t(cut)];
    const auto twiceMiddle = [&](const Cut &c) {
        const ClothBox box = boxOnCloth(job, layout, c);
        return Vector{box.low.x + box.high.x, box.low.y + box.high.y};
    };
    std::optional<int> best;
    Area least = 0;
    for (int i = 0; i < int(layout.cuts.size()); ++i) {
        const Cut &other = layout.cuts[std::size_t(i)];
        if (i == cut || other.panel != own.panel || sheetOf(job, other) != sheetOf(job, own)) continue;
        const Vector away = twiceMiddle(other) - twiceMiddle(own);
        const Area distance = dot(away, away);
        if (best && distance >= least) continue;
        best = i;
        least = distance;
    }
    return best;
}

namespace {

Turn halfRound(Turn turn) { return turnOf((degrees(turn) + 180) % 360).value_or(turn); }

/// One side of the pair, and the corner at which the cut lies closest there.
struct Side {
    Heading away;       ///< from the pair to the cut
    bool highs = false; ///< level with the pair's high side in place of its low one
};

Length across(Heading heading, Vector v) {
    return heading == Heading::TowardsLeft || heading == Heading::TowardsRight ? v.x : v.y;
}

/// As close to the pair as the gap allows when it comes straight from that side. Outlines that are not rectangles may
/// lie closer than their boxes do; sides that lean into each other are found by halving.
ClothPoint against(const Job &job, const ClothRing &own, const ClothRing &pair, const Side &side) {
    const ClothBox me = boxOf(own), other = boxOf(pair);
    const bool sideways = side.away == Heading::TowardsLeft || side.away == Heading::TowardsRight;
    const bool onwards = side.away == Heading::TowardsRight || side.away == Heading::UpTheRoll;
    ClothPoint start = other.low;
    if (side.highs) start = ClothPoint{other.high.x - me.width(), other.high.y - me.height()};
    const Length clear = sideways ? (onwards ? other.high.x + job.gap : other.low.x - job.gap - me.width())
                                  : (onwards ? other.high.y + job.gap : other.low.y - job.gap - me.height());
    (sideways ? start.x : start.y) = clear;
    const auto nearerBy = [&](Length step) { return stepped(start, side.away, -step); };
    const auto free = [&](Length step) {
        const ClothRing there = moved(own, nearerBy(step) - me.low);
        return distanceBetween(there, pair) >= job.gap && !overlaps(there, pair);
    };
    Length low{}, high = abs(across(side.away, other.high - other.low)) + abs(across(side.away, me.high - me.low));
    while (high - low > Length::ticks(1)) {
        const Length middle = Length::ticks((low.ticks() + high.ticks()) / 2);
        (free(middle) ? low : high) = middle;
    }
    return nearerBy(low);
}

/// The nearest place that the pattern allows, going away from the pair.
ClothPoint onThePattern(const PlaceSet &places, ClothPoint corner, Heading away) {
    ClothPoint p = corner;
    switch (away) {
    case Heading::TowardsLeft:
        p.x = places.previousX(corner.x);
        p.y = places.nearest({p.x, corner.y}).y;
        break;
    case Heading::TowardsRight:
        p.x = places.nextX(corner.x);
        p.y = places.nearest({p.x, corner.y}).y;
        break;
    case Heading::UpTheRoll:
        p.x = places.nearest(corner).x;
        p.y = places.nextY(p.x, corner.y);
        break;
    case Heading::DownTheRoll:
        p.x = places.nearest(corner).x;
        p.y = places.previousY(p.x, corner.y);
        break;
    }
    return p;
}

} // namespace

Moved withHeadToFoot(const Job &job, const Layout &layout, int cut, int pair) {
    const Cut &own = layout.cuts[std::size_t(cut)], &other = layout.cuts[std::size_t(pair)];
    if (!mayMove(layout, cut)) return {std::nullopt, stays(job, layout, cut)};
    const Turn turn = halfRound(other.turn);
    const auto turns = turnsByHand(job, own);
    if (std::find(turns.begin(), turns.end(), turn) == turns.end())
        return {std::nullopt,
                phrase("%1 may not lie head to foot: nap, print or its own wish gives it a top", {nameOf(job, own)})};
    const ClothPoint before = cornerOf(layout, cut);
    Layout turned = withCutMoved(job, layout, cut, sheetOf(job, other), before);
    turned = withCutTurned(job, std::move(turned), cut, turn);
    const ClothRing mine = outlineOnCloth(job, turned, turned.cuts[std::size_t(cut)]);
    const ClothRing theirs = outlineOnCloth(job, turned, other);
    const auto places = allowedPlaces(job, turned, cut);
    struct Found {
        Length used;
        Area way = 0;
        Layout layout;
    };
    std::optional<Found> best;
    std::string why;
    for (Heading away : {Heading::TowardsRight, Heading::TowardsLeft, Heading::UpTheRoll, Heading::DownTheRoll})
        for (bool highs : {false, true}) {
            ClothPoint corner = against(job, mine, theirs, {away, highs});
            if (places) corner = onThePattern(*places, corner, away);
            Layout there = turned;
            putAt(there, cut, corner);
            if (const auto broken = brokenBy(job, there, {cut}); !broken.empty()) {
                if (why.empty()) why = broken.front().text;
                continue;
            }
            there = withFigures(job, std::move(there));
            Length used;
            for (const ClothUse &use : there.cloths)
                if (use.length) used += *use.length;
            const Area way = dot(corner - before, corner - before);
            if (!best || std::pair(used, way) < std::pair(best->used, best->way)) best = Found{used, way, there};
        }
    if (best) return {std::move(best->layout), {}};
    return {std::nullopt, phrase("no room beside %1: %2", {nameOf(job, other), why})};
}

// Pushing towards the cut end.

namespace {

/// One cut goes down its column; whether it moved.
class Push {
public:
    Push(const Job &job, Layout &layout, int cut)
        : m_job(job), m_layout(layout), m_cut(cut), m_laid(layAll(job, layout)) {
        m_start = me().box;
        m_startY = mine().y;
    }

    bool down() {
        if (!me().panel) return false;
        std::vector<Length> lower = lowerPlaces();
        if (m_free) lower.push_back(m_startY); // a slanted side may still let it come closer
        std::sort(lower.begin(), lower.end());
        lower.erase(std::unique(lower.begin(), lower.end()), lower.end());
        for (const Length y : lower)
            if (passesNone(y) && mayLieAt(y)) {
                if (m_free) closer(y);
                return mine().y < m_startY;
            }
        placeAt(m_startY);
        return false;
    }

private:
    Cut &mine() { return m_layout.cuts[std::size_t(m_cut)]; }
    const LaidCut &me() const { return m_laid[std::size_t(m_cut)]; }

    void placeAt(Length y) {
        mine().y = y;
        m_laid[std::size_t(m_cut)] = lay(*m_job.panel(mine().panel), mine(), m_layout);
    }
    bool mayLieAt(Length y) {
        placeAt(y);
        return breachesOf(m_job, m_layout, m_laid, m_cut).empty();
    }

    /// Below where it lies: the pattern's places, or where it would touch something.
    std::vector<Length> lowerPlaces() {
        const Length here = mine().y;
        std::vector<Length> all;
        const auto places = allowedPlaces(m_job, m_layout, m_cut);
        m_free = !places || places->freeY();
        if (!m_free) {
            const Length floor = boxOf(roomOf(m_job.clothOf(mine()), mine().on)).low.y - Length::ticks(4);
            for (Length y = places->nextY(mine().x, floor); y < here; y = places->nextY(mine().x, y + Length::ticks(1)))
                all.push_back(y);
            return all;
        }
        Layout trial = m_layout;
        for (auto next = nextPlace(m_job, trial, m_cut, Heading::DownTheRoll); next;
             next = nextPlace(m_job, trial, m_cut, Heading::DownTheRoll)) {
            all.push_back(next->y);
            trial.cuts[std::size_t(m_cut)].y = next->y;
        }
        return all;
    }

    /// The rules forgive a few ticks; a hand that pushes does not use them up.
    bool isClear() const {
        const ClothRing room =
            roomOf(m_job.clothOf(m_layout.cuts[std::size_t(m_cut)]), m_layout.cuts[std::size_t(m_cut)].on);
        if (!contains(room, me().ring)) return false;
        for (std::size_t i = 0; i < m_laid.size(); ++i) {
            if (int(i) == m_cut || !m_laid[i].panel || !sameSheet(int(i))) continue;
            const ClothBox &other = m_laid[i].box, &own = me().box;
            if (other.high.x + m_job.gap < own.low.x || own.high.x + m_job.gap < other.low.x ||
                other.high.y + m_job.gap < own.low.y || own.high.y + m_job.gap < other.low.y)
                continue;
            if (distanceBetween(me().ring, m_laid[i].ring) < m_job.gap || overlaps(me().ring, m_laid[i].ring))
                return false;
        }
        return true;
    }

    /// Those that lay before it in its column still do.
    bool passesNone(Length y) const {
        const ClothBox &box = m_start;
        const Length by = y - m_startY;
        for (std::size_t i = 0; i < m_laid.size(); ++i) {
            if (int(i) == m_cut || !m_laid[i].panel || !sameSheet(int(i))) continue;
            const ClothBox &other = m_laid[i].box;
            const bool column = other.low.x < box.high.x + m_job.gap && box.low.x < other.high.x + m_job.gap;
            if (column && other.low.y < box.low.y && other.low.y > box.low.y + by) return false;
        }
        return true;
    }

    bool sameSheet(int other) const {
        const Cut &a = m_layout.cuts[std::size_t(m_cut)], &b = m_layout.cuts[std::size_t(other)];
        return sheetOf(m_job, a) == sheetOf(m_job, b);
    }

    /// Where slanted sides meet, the boxes may overlap: what is left is found by halving.
    void closer(Length right) {
        Length low = boxOf(roomOf(m_job.clothOf(mine()), mine().on)).low.y - Length::ticks(1), high = right;
        while (high - low > Length::ticks(1)) {
            const Length middle = Length::ticks((low.ticks() + high.ticks()) / 2);
            (passesNone(middle) && mayLieAt(middle) && isClear() ? high : low) = middle;
        }
        placeAt(high);
    }

    const Job &m_job;
    Layout &m_layout;
    int m_cut;
    std::vector<LaidCut> m_laid;
    ClothBox m_start; ///< where it lay
    Length m_startY;
    bool m_free = true;
};

} // namespace

Layout withCutsPushed(const Job &job, Layout layout, const std::vector<int> &cuts) {
    std::vector<int> order = thoseThatMayMove(layout, cuts);
    // What makes room for another goes first; who waited for one further up gets a second turn.
    constexpr int mostRounds = 12;
    for (int round = 0; round < mostRounds; ++round) {
        std::stable_sort(order.begin(), order.end(), [&](int a, int b) {
            return boxOnCloth(job, layout, layout.cuts[std::size_t(a)]).low.y <
                   boxOnCloth(job, layout, layout.cuts[std::size_t(b)]).low.y;
        });
        bool any = false;
        for (int cut : order) any = Push(job, layout, cut).down() || any;
        if (!any) break;
    }
    return withFigures(job, std::move(layout));
}

} // namespace boltwright
