#include "core/rules/settle.h"

#include "core/base/language.h"
#include "core/measure/length_text.h"

#include <algorithm>
#include <optional>

namespace boltwright {
namespace {

/// A place on one axis that attracts the low side of the moving cut.
struct Spot {
    Length at;
    std::optional<Guide> guide;
};

std::string nameOf(const Panel &panel) { return panel.name.empty() ? panel.id : panel.name; }

/// The hand, the cut and everything it may come to rest against.
class Table {
public:
    Table(const Job &job, const Layout &layout, int cut, ClothPoint hand, std::vector<int> alongWith = {})
        : m_job(job), m_layout(layout), m_cut(cut), m_hand(hand), m_alongWith(std::move(alongWith)) {
        moveTo(hand);
        m_laid = layAll(job, m_layout);
        m_places = allowedPlaces(job, m_layout, cut);
        // Measured from the hand's place, the set is the same wherever the cut lies.
        m_room = boxOf(roomOf(job.clothOf(mine()), mine().on));
        if (!job.clothOf(mine()).bolt) inset(m_room, job.clothOf(mine()).edge);
    }

    bool exists() const { return m_laid[std::size_t(m_cut)].panel != nullptr; }
    const std::optional<PlaceSet> &places() const { return m_places; }

    /// Low sides along one axis that put the cut against an edge, a neighbour or level with one.
    std::vector<Spot> spots(bool x) const {
        std::vector<Spot> all;
        const Length size = side(me().box, x, true) - side(me().box, x, false);
        edges(all, x, size);
        chalkLines(all, x, size);
        for (std::size_t i = 0; i < m_laid.size(); ++i) {
            if (int(i) == m_cut || !m_laid[i].panel || !sameSheet(int(i)) || movesAlong(int(i))) continue;
            neighbour(all, x, size, m_laid[i]);
        }
        return all;
    }

    Settled tryAt(ClothPoint corner) {
        moveTo(corner);
        m_laid[std::size_t(m_cut)] = lay(*m_job.panel(mine().panel), mine(), m_layout);
        Settled s;
        s.corner = corner;
        s.broken = breachesOf(m_job, m_layout, m_laid, m_cut);
        s.right = s.broken.empty();
        return s;
    }

    bool roomAt(ClothPoint corner) {
        const Vector by = corner - ClothPoint{mine().x, mine().y};
        moveTo(corner);
        LaidCut &laidCut = m_laid[std::size_t(m_cut)];
        laidCut.cut = &mine();
        laidCut.ring = moved(std::move(laidCut.ring), by);
        laidCut.box.low = laidCut.box.low + by;
        laidCut.box.high = laidCut.box.high + by;
        return hasRoom(m_job, m_layout, m_laid, m_cut);
    }

    /// The guide that says which motif holds the cut, where one does.
    void motifGuides(Settled &s) const {
        if (!m_places || (m_places->freeX() && m_places->freeY())) return;
        const Cloth &cloth = m_job.clothOf(mine());
        const Panel &panel = *me().panel;
        const ClothPoint anchor = Laying(me().outline, mine().turn, mine().mirrored, s.corner).at(anchorOf(panel));
        const bool stripes = cloth.pattern && !(cloth.pattern->across && cloth.pattern->along);
        const bool own = panel.motif.has_value();
        const std::string what = stripes ? phrase("a stripe") : phrase("a motif");
        const auto text = [&](bool level) {
            if (!own) return phrase("the pattern runs on");
            return level ? phrase("level with %1", {what}) : phrase("centred on %1", {what});
        };
        const bool both = !m_places->freeX() && !m_places->freeY();
        if (!m_places->freeX())
            s.guides.push_back({own ? Guide::Kind::Motif : Guide::Kind::Partner, false, anchor.x, text(false)});
        if (!m_places->freeY())
            s.guides.push_back(
                {own ? Guide::Kind::Motif : Guide::Kind::Partner, true, anchor.y, text(!both && !stripes)});
    }

private:
    Cut &mine() { return m_layout.cuts[std::size_t(m_cut)]; }
    const Cut &mine() const { return m_layout.cuts[std::size_t(m_cut)]; }
    const LaidCut &me() const { return m_laid[std::size_t(m_cut)]; }
    void moveTo(ClothPoint p) {
        mine().x = p.x;
        mine().y = p.y;
    }
    static Length side(const ClothBox &box, bool x, bool high) {
        const ClothPoint &p = high ? box.high : box.low;
        return x ? p.x : p.y;
    }
    static void inset(ClothBox &box, Length by) {
        box.low = box.low + Vector{by, by};
        box.high = box.high - Vector{by, by};
    }
    bool sameSheet(int other) const {
        const Cut &c = m_layout.cuts[std::size_t(other)];
        return c.on == mine().on && &m_job.clothOf(c) == &m_job.clothOf(mine());
    }

    void edges(std::vector<Spot> &all, bool x, Length size) const {
        const bool bolt = m_job.clothOf(mine()).bolt.has_value();
        const Length low = side(m_room, x, false), high = side(m_room, x, true);
        const auto guide = [&](Length at, const char *onBolt, Guide::Kind kind) {
            return Guide{kind, !x, at, bolt ? onBolt : "at the remnant's edge"};
        };
        if (x) {
            all.push_back({low, guide(low, "at the left selvage", Guide::Kind::Selvage)});
            all.push_back({high - size, guide(high, "at the right selvage", Guide::Kind::Selvage)});
        } else {
            all.push_back({low, guide(low, "at the cut end", Guide::Kind::CutEnd)});
            if (high < Length::limit())
                all.push_back({high - size, guide(high, "at the end of the bolt", Guide::Kind::CutEnd)});
        }
    }

    bool movesAlong(int other) const {
        return std::find(m_alongWith.begin(), m_alongWith.end(), other) != m_alongWith.end();
    }

    void chalkLines(std::vector<Spot> &all, bool x, Length size) const {
        for (const ChalkLine &line : markingsOn(m_job.clothOf(mine()), mine().on).lines) {
            if ((line.runs == ChalkLine::Runs::Along) != x) continue;
            const auto guide = [&](const char *text) { return Guide{Guide::Kind::Chalk, !x, line.at, text}; };
            all.push_back({line.at, guide("at the chalk line")});
            all.push_back({line.at - size, guide("at the chalk line")});
            all.push_back({line.at - Length::ticks(size.ticks() / 2), guide("centred on the chalk line")});
        }
    }

    void neighbour(std::vector<Spot> &all, bool x, Length size, const LaidCut &other) const {
        const Length low = side(other.box, x, false), high = side(other.box, x, true);
        const std::string name = nameOf(*other.panel);
        const std::string beside = m_job.gap == Length{}
                                       ? phrase("against %1", {name})
                                       : phrase("%1 from %2", {localised(spokenWithUnit(m_job.gap, m_job.unit)), name});
        // Only one that it could touch: they share some of the other axis, give or take their own size.
        all.push_back({high + m_job.gap, Guide{Guide::Kind::Neighbour, !x, high + m_job.gap, beside}});
        all.push_back({low - m_job.gap - size, Guide{Guide::Kind::Neighbour, !x, low - m_job.gap, beside}});
        all.push_back({low, Guide{Guide::Kind::Level, !x, low, phrase("level with %1", {name})}});
        if (high - low != size)
            all.push_back({high - size, Guide{Guide::Kind::Level, !x, high, phrase("level with %1", {name})}});
    }

    const Job &m_job;
    Layout m_layout;
    int m_cut;
    ClothPoint m_hand;
    std::vector<int> m_alongWith;
    std::vector<LaidCut> m_laid;
    std::optional<PlaceSet> m_places;
    ClothBox m_room;
};

struct Candidate {
    Area distance = 0;
    ClothPoint corner;
    std::optional<Guide> x, y;
};

/// The nearest spot on one axis within reach, preferring edges and neighbours over levels at the same place.
std::vector<Spot> nearest(std::vector<Spot> spots, Length hand, Length reach) {
    std::erase_if(spots, [&](const Spot &s) { return abs(s.at - hand) > reach; });
    std::stable_sort(spots.begin(), spots.end(),
                     [&](const Spot &a, const Spot &b) { return abs(a.at - hand) < abs(b.at - hand); });
    spots.erase(std::unique(spots.begin(), spots.end(), [](const Spot &a, const Spot &b) { return a.at == b.at; }),
                spots.end());
    return spots;
}

/// Low sides to try on one axis when the pattern leaves it free: what attracts, then the hand itself.
std::vector<Spot> spotsNear(const Table &table, bool x, Length hand, Length reach, std::size_t most) {
    std::vector<Spot> spots = nearest(table.spots(x), hand, reach);
    if (spots.size() > most) spots.resize(most);
    spots.push_back({hand, std::nullopt});
    return spots;
}

/// Every corner worth trying: the pattern's places on its axes, the attracting spots on the free ones, nearest first.
std::vector<Candidate> candidates(const Table &table, ClothPoint hand, Length reach, std::size_t most) {
    const PlaceSet places = table.places().value_or(PlaceSet{});
    std::vector<Spot> xs, ys;
    if (places.freeX())
        xs = spotsNear(table, true, hand.x, reach, most);
    else
        for (Length x : {places.previousX(hand.x), places.nextX(hand.x)}) xs.push_back({x, std::nullopt});
    if (places.freeY()) ys = spotsNear(table, false, hand.y, reach, most);
    std::vector<Candidate> all;
    const auto weigh = [&](const Spot &s, Length at) { return s.guide || s.at != at ? abs(s.at - at) : reach; };
    for (const Spot &x : xs) {
        std::vector<Spot> column = ys;
        if (!places.freeY())
            for (Length y : {places.previousY(x.at, hand.y), places.nextY(x.at, hand.y)})
                column.push_back({y, std::nullopt});
        for (const Spot &y : column) {
            const Length dx = weigh(x, hand.x), dy = weigh(y, hand.y);
            all.push_back({dx * dx + dy * dy, {x.at, y.at}, x.guide, y.guide});
        }
    }
    std::stable_sort(all.begin(), all.end(),
                     [](const Candidate &a, const Candidate &b) { return a.distance < b.distance; });
    return all;
}

Settled finish(Table &table, const Candidate &c) {
    Settled s = table.tryAt(c.corner);
    if (c.x) s.guides.push_back(*c.x);
    if (c.y) s.guides.push_back(*c.y);
    table.motifGuides(s);
    return s;
}

} // namespace

Settled settle(const Job &job, const Layout &layout, int cut, ClothPoint hand, Length reach) {
    Table table(job, layout, cut, hand);
    if (!table.exists()) return {hand, false, {}, {}};
    if (reach == Length{}) return finish(table, {0, hand, {}, {}});
    const std::vector<Candidate> all = candidates(table, hand, reach, 6);
    for (const Candidate &c : all)
        if (table.roomAt(c.corner)) return finish(table, c);
    return finish(table, all.front());
}

Settled rest(const Job &job, const Layout &layout, int cut, ClothPoint hand, Length reach) {
    Settled here = settle(job, layout, cut, hand, reach);
    if (here.right || reach == Length{}) return here;
    Table table(job, layout, cut, hand);
    if (!table.exists()) return here;
    const PlaceSet places = table.places().value_or(PlaceSet{});
    // The pattern's places near each edge and neighbour, and those near the hand, all round.
    std::vector<Spot> xs = nearest(table.spots(true), hand.x, Length::limit()),
                      ys = nearest(table.spots(false), hand.y, Length::limit());
    xs.push_back({hand.x, std::nullopt});
    ys.push_back({hand.y, std::nullopt});
    std::vector<Candidate> all;
    for (const Spot &x : xs)
        for (const Length atX : {places.previousX(x.at), places.nextX(x.at)})
            for (const Spot &y : ys)
                for (const Length atY : {places.previousY(atX, y.at), places.nextY(atX, y.at)}) {
                    const ClothPoint p{atX, atY};
                    all.push_back({dot(p - hand, p - hand), p, atX == x.at ? x.guide : std::nullopt,
                                   atY == y.at ? y.guide : std::nullopt});
                }
    std::stable_sort(all.begin(), all.end(),
                     [](const Candidate &a, const Candidate &b) { return a.distance < b.distance; });
    for (const Candidate &c : all)
        if (table.roomAt(c.corner))
            if (Settled s = finish(table, c); s.right) return s;
    return here;
}

namespace {

/// Several cuts in the hand. Each has a table of its own, on which only the ones that stay attract it.
class Handful {
public:
    Handful(const Job &job, const Layout &layout, std::vector<int> cuts, int lead, ClothPoint hand)
        : m_job(job), m_layout(layout), m_cuts(std::move(cuts)), m_lead(lead), m_laid(layAll(job, layout)) {
        std::erase_if(m_cuts, [&](int cut) { return !m_laid[std::size_t(cut)].panel; });
        m_by = hand - cornerOf(lead);
        for (int cut : m_cuts) m_tables.emplace_back(job, layout, cut, cornerOf(cut) + m_by, m_cuts);
    }

    /// How far they might move, and what would hold them there; nearest to the hand first.
    struct Shift {
        Area distance = 0;
        Vector by;
        int held = -1; ///< the cut that the guides are about
        std::optional<Guide> x, y;
    };

    std::vector<Shift> near(Length reach) const {
        std::vector<Shift> all;
        for (std::size_t i = 0; i < m_cuts.size(); ++i) {
            const ClothPoint from = cornerOf(m_cuts[i]);
            for (const Candidate &c : candidates(m_tables[i], from + m_by, reach, 3))
                all.push_back({c.distance, c.corner - from, m_cuts[i], c.x, c.y});
        }
        return inOrder(std::move(all));
    }

    /// Wherever any of them would lie against something.
    std::vector<Shift> everywhere() const {
        constexpr std::size_t most = 24; // on each axis; beyond the nearest so many nobody would look for it
        std::vector<Shift> all;
        for (std::size_t i = 0; i < m_cuts.size(); ++i) {
            const ClothPoint from = cornerOf(m_cuts[i]), hand = from + m_by;
            const PlaceSet places = m_tables[i].places().value_or(PlaceSet{});
            for (const Spot &x : someNearest(m_tables[i].spots(true), hand.x, most))
                for (const Length atX : {places.previousX(x.at), places.nextX(x.at)})
                    for (const Spot &y : someNearest(m_tables[i].spots(false), hand.y, most))
                        for (const Length atY : {places.previousY(atX, y.at), places.nextY(atX, y.at)}) {
                            const ClothPoint p{atX, atY};
                            all.push_back({dot(p - hand, p - hand), p - from, m_cuts[i],
                                           atX == x.at ? x.guide : std::nullopt, atY == y.at ? y.guide : std::nullopt});
                        }
        }
        return inOrder(std::move(all));
    }

    /// As far as the pattern goes; cloth, flaws and neighbours are asked by `roomFor`.
    bool inPhase(Vector by) const {
        for (std::size_t i = 0; i < m_cuts.size(); ++i) {
            const auto &places = m_tables[i].places();
            if (places && !places->holds(cornerOf(m_cuts[i]) + by, Length::ticks(2))) return false;
        }
        return true;
    }

    bool roomFor(Vector by) {
        moveAll(by);
        return std::all_of(m_cuts.begin(), m_cuts.end(),
                           [&](int cut) { return hasRoom(m_job, m_moved, m_movedLaid, cut); });
    }

    Settled at(const Shift &shift) {
        moveAll(shift.by);
        Settled s;
        s.corner = cornerOf(m_lead) + shift.by;
        for (int cut : m_cuts) {
            const auto found = breachesOf(m_job, m_moved, m_movedLaid, cut);
            s.broken.insert(s.broken.end(), found.begin(), found.end());
        }
        s.right = s.broken.empty();
        if (shift.x) s.guides.push_back(*shift.x);
        if (shift.y) s.guides.push_back(*shift.y);
        const auto held = std::find(m_cuts.begin(), m_cuts.end(), shift.held);
        if (held == m_cuts.end()) return s;
        const Table &table = m_tables[std::size_t(held - m_cuts.begin())];
        Settled own{cornerOf(*held) + shift.by, s.right, {}, {}};
        table.motifGuides(own);
        s.guides.insert(s.guides.end(), own.guides.begin(), own.guides.end());
        return s;
    }

    Shift inTheHand() const { return {0, m_by, -1, {}, {}}; }
    bool isEmpty() const { return m_cuts.empty(); }

private:
    ClothPoint cornerOf(int cut) const {
        const Cut &c = m_layout.cuts[std::size_t(cut)];
        return {c.x, c.y};
    }

    static std::vector<Spot> someNearest(std::vector<Spot> spots, Length hand, std::size_t most) {
        spots = nearest(std::move(spots), hand, Length::limit());
        if (spots.size() > most) spots.resize(most);
        spots.push_back({hand, std::nullopt});
        return spots;
    }

    static std::vector<Shift> inOrder(std::vector<Shift> all) {
        std::stable_sort(all.begin(), all.end(),
                         [](const Shift &a, const Shift &b) { return a.distance < b.distance; });
        return all;
    }

    void moveAll(Vector by) {
        if (m_moved.cuts.empty()) m_moved = m_layout;
        if (m_movedLaid.empty()) m_movedLaid = m_laid;
        for (int cut : m_cuts) {
            Cut &c = m_moved.cuts[std::size_t(cut)];
            const Vector step = cornerOf(cut) + by - ClothPoint{c.x, c.y};
            c.x += step.x;
            c.y += step.y;
            LaidCut &laidCut = m_movedLaid[std::size_t(cut)];
            laidCut.cut = &c;
            laidCut.ring = moved(std::move(laidCut.ring), step);
            laidCut.box.low = laidCut.box.low + step;
            laidCut.box.high = laidCut.box.high + step;
        }
    }

    const Job &m_job;
    const Layout &m_layout;
    std::vector<int> m_cuts;
    int m_lead;
    Vector m_by; ///< from where they were taken up to where the hand is
    std::vector<LaidCut> m_laid;
    std::vector<Table> m_tables;
    Layout m_moved;
    std::vector<LaidCut> m_movedLaid;
};

/// The first of the shifts where all of them may lie.
std::optional<Settled> firstRight(Handful &hand, const std::vector<Handful::Shift> &shifts) {
    for (const Handful::Shift &shift : shifts)
        if (hand.inPhase(shift.by) && hand.roomFor(shift.by))
            if (Settled s = hand.at(shift); s.right) return s;
    return std::nullopt;
}

} // namespace

Settled settleTogether(const Job &job, const Layout &layout, const std::vector<int> &cuts, int lead, ClothPoint hand,
                       Length reach) {
    Handful handful(job, layout, cuts, lead, hand);
    if (handful.isEmpty()) return {hand, false, {}, {}};
    if (reach == Length{}) return handful.at(handful.inTheHand());
    const auto shifts = handful.near(reach);
    if (auto right = firstRight(handful, shifts)) return *right;
    return handful.at(shifts.front());
}

Settled restTogether(const Job &job, const Layout &layout, const std::vector<int> &cuts, int lead, ClothPoint hand,
                     Length reach) {
    Settled here = settleTogether(job, layout, cuts, lead, hand, reach);
    if (here.right || reach == Length{}) return here;
    Handful handful(job, layout, cuts, lead, hand);
    return handful.isEmpty() ? here : firstRight(handful, handful.everywhere()).value_or(here);
}

} // namespace boltwright
