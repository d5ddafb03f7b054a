#include "core/rules/rules.h"

#include "core/base/language.h"
#include "core/geometry/box_index.h"
#include "core/measure/length_text.h"
#include "core/panel/edges.h"
#include "core/rules/cut_already.h"

#include <algorithm>
#include <iterator>
#include <numeric>
#include <set>

namespace boltwright {
namespace {

constexpr Length placeTolerance = Length::ticks(4);
constexpr Length gapTolerance = Length::ticks(8);

struct Axes {
    bool x = false, y = false;
};

/// The cloth's axes that a motif wish speaks of when the panel lies with `turn`.
Axes axesOf(Centre centre, Turn turn) {
    if (centre == Centre::Both || isBias(turn)) return {true, true};
    return (centre == Centre::Across) != swapsAxes(turn) ? Axes{true, false} : Axes{false, true};
}

bool repeatsEnough(const MotifWish &wish, Turn turn, const Pattern &pattern) {
    if (isBias(turn)) return true; // holds on the axes that repeat
    const Axes axes = axesOf(wish.centre, turn);
    return (!axes.x || pattern.across) && (!axes.y || pattern.along);
}

std::vector<Turn> turnsOfRun(Run run, Way way) {
    const bool two = way == Way::Two;
    switch (run) {
    case Run::UpRoll:
        return two ? std::vector{Turn::Deg0, Turn::Deg180} : std::vector{Turn::Deg0};
    case Run::DownRoll:
        return two ? std::vector{Turn::Deg180, Turn::Deg0} : std::vector{Turn::Deg180};
    case Run::Railroad:
        return two ? std::vector{Turn::Deg90, Turn::Deg270} : std::vector{Turn::Deg90};
    case Run::Either:
        return two ? std::vector{Turn::Deg0, Turn::Deg90, Turn::Deg180, Turn::Deg270}
                   : std::vector{Turn::Deg0, Turn::Deg90};
    case Run::Bias:
        return two ? std::vector{Turn::Deg45, Turn::Deg315, Turn::Deg135, Turn::Deg225}
                   : std::vector{Turn::Deg45, Turn::Deg315};
    }
    return {};
}

std::string wordsFor(Turn turn) {
    switch (turn) {
    case Turn::Deg0:
        return phrase("up the roll");
    case Turn::Deg90:
        return phrase("railroaded");
    case Turn::Deg180:
        return phrase("down the roll");
    case Turn::Deg270:
        return phrase("railroaded, top to the right");
    default:
        return phrase("on the bias");
    }
}

bool conceded(const Layout &layout, const Cut &cut, Concession::Kind kind) {
    return std::any_of(layout.conceded.begin(), layout.conceded.end(), [&](const Concession &c) {
        return c.kind == kind && c.panel == cut.panel && c.copy == cut.copy;
    });
}

bool mayTurnSo(const Job &job, const Layout &layout, const Panel &panel, const Cut &cut) {
    const Cloth &cloth = job.clothOf(cut);
    const auto turns = turnsOf(panel, job.clothOf(panel), cloth);
    if (std::find(turns.begin(), turns.end(), cut.turn) != turns.end()) return true;
    const auto wider = widerTurns(cloth.way);
    return panel.may.turn && conceded(layout, cut, Concession::Kind::Turn) &&
           std::find(wider.begin(), wider.end(), cut.turn) != wider.end();
}

/// What the roll's own frame of reference is for two cuts of one cloth: each phase is taken from its sheet's motif.
ClothPoint inPhaseOn(const Cloth &cloth, const std::optional<std::string> &from, const std::optional<std::string> &to,
                     ClothPoint p) {
    const auto a = cloth.latticeOn(from), b = cloth.latticeOn(to);
    return a && b ? p + (b->motif() - a->motif()) : p;
}

std::string name(const Panel &panel) { return panel.name.empty() ? panel.id : panel.name; }

Length gapBetween(const LaidCut &a, const LaidCut &b) {
    if (a.rectangle && b.rectangle) {
        const Length dx = std::max({Length{}, a.box.low.x - b.box.high.x, b.box.low.x - a.box.high.x});
        const Length dy = std::max({Length{}, a.box.low.y - b.box.high.y, b.box.low.y - a.box.high.y});
        if (dx == Length{} || dy == Length{}) return dx + dy;
    }
    return distanceBetween(a.ring, b.ring);
}

bool farApart(const ClothBox &a, const ClothBox &b, Length gap) {
    return a.low.x - gap >= b.high.x || b.low.x - gap >= a.high.x || a.low.y - gap >= b.high.y ||
           b.low.y - gap >= a.high.y;
}

bool overlapping(const LaidCut &a, const LaidCut &b) {
    if (a.rectangle && b.rectangle)
        return std::min(a.box.high.x, b.box.high.x) - std::max(a.box.low.x, b.box.low.x) > placeTolerance &&
               std::min(a.box.high.y, b.box.high.y) - std::max(a.box.low.y, b.box.low.y) > placeTolerance;
    return overlaps(a.ring, b.ring, placeTolerance);
}

bool tooNear(const LaidCut &a, const LaidCut &b, Length gap) {
    if (farApart(a.box, b.box, gap)) return false;
    return overlapping(a, b) || (gap > Length{} && gapBetween(a, b) < gap - gapTolerance);
}

/// One layout with one cut in question; answers rule by rule.
class Inspector {
public:
    Inspector(const Job &job, const Layout &layout, const std::vector<LaidCut> &laid, int cut)
        : m_job(job), m_layout(layout), m_laid(laid), m_index(cut), m_me(laid[std::size_t(cut)]),
          m_cut(layout.cuts[std::size_t(cut)]), m_cloth(job.clothOf(m_cut)) {}

    /// `near`: the cuts that may be too near, in their order.
    std::vector<Breach> all(const std::vector<int> &near, const std::vector<PhaseLink> &links,
                            const std::vector<LaidCut> &gone) {
        if (!m_me.panel) return {};
        cloth();
        flaws();
        neighbours(near);
        turn();
        motif();
        partners(links);
        allowances();
        alreadyCut(gone);
        return std::move(m_found);
    }

    bool hasRoom() const {
        if (!m_me.panel || !insideCloth()) return false;
        if (!m_me.panel->hidden)
            for (const Flaw &flaw : flawsOn(m_cloth, m_cut.on))
                if (crosses(flaw)) return false;
        for (std::size_t i = 0; i < m_laid.size(); ++i)
            if (isNeighbour(i) && tooNear(m_me, m_laid[i], m_job.gap)) return false;
        return true;
    }

private:
    void add(Breach::Kind kind, std::string text, int other = -1) {
        m_found.push_back({kind, m_index, other, std::move(text)});
    }
    std::string said(Length l) const { return localised(spokenWithUnit(l, m_job.unit)); }

    bool isNeighbour(std::size_t i) const {
        return int(i) != m_index && m_laid[i].panel && m_layout.cuts[i].on == m_cut.on &&
               &m_job.clothOf(m_layout.cuts[i]) == &m_cloth;
    }

    bool insideCloth() const {
        const ClothRing room = roomOf(m_cloth, m_cut.on);
        if (room.empty()) return false;
        if (m_cloth.bolt) {
            const ClothBox box = boxOf(room);
            return m_me.box.low.x >= box.low.x - placeTolerance && m_me.box.low.y >= box.low.y - placeTolerance &&
                   m_me.box.high.x <= box.high.x + placeTolerance && m_me.box.high.y <= box.high.y + placeTolerance;
        }
        return contains(room, m_me.ring, placeTolerance) && (m_cloth.edge == Length{} || keepsFromEdge(room));
    }

    bool keepsFromEdge(const ClothRing &room) const {
        // The cut is inside, so its distance from the outline is the least distance between two edges.
        for (std::size_t i = 0; i < room.size(); ++i) {
            const ClothRing edge{room[i], room[(i + 1) % room.size()]};
            if (distanceBetween(edge, m_me.ring) < m_cloth.edge - gapTolerance) return false;
        }
        return true;
    }

    void cloth() {
        if (insideCloth()) return;
        const ClothRing room = roomOf(m_cloth, m_cut.on);
        if (room.empty()) return add(Breach::Kind::Cloth, phrase("lies on cloth that is not there"));
        if (!m_cloth.bolt) {
            if (contains(room, m_me.ring, placeTolerance))
                return add(Breach::Kind::Edge, phrase("less than %1 from the remnant's edge", {said(m_cloth.edge)}));
            return add(Breach::Kind::Cloth, phrase("reaches off the remnant"));
        }
        const ClothBox box = boxOf(room), whole{{Length{}, Length{}}, {m_cloth.bolt->width, box.high.y}};
        const auto side = [&](Length past, Length offCloth, const std::string &edge) {
            if (past <= placeTolerance) return;
            if (offCloth > placeTolerance)
                add(Breach::Kind::Cloth, phrase("%1 off the cloth at the %2", {said(offCloth), edge}));
            else
                add(Breach::Kind::Edge, phrase("%1 too near the %2", {said(past), edge}));
        };
        side(box.low.x - m_me.box.low.x, whole.low.x - m_me.box.low.x, phrase("left selvage"));
        side(m_me.box.high.x - box.high.x, m_me.box.high.x - whole.high.x, phrase("right selvage"));
        side(box.low.y - m_me.box.low.y, whole.low.y - m_me.box.low.y, phrase("cut end"));
        side(m_me.box.high.y - box.high.y, m_me.box.high.y - whole.high.y, phrase("end of the bolt"));
    }

    bool crosses(const Flaw &flaw) const {
        if (farApart(boxOf(flaw.outline), m_me.box, Length{})) return false;
        return overlaps(m_me.ring, counterClockwise(flaw.outline), placeTolerance);
    }

    void flaws() {
        if (m_me.panel->hidden) return;
        for (const Flaw &flaw : flawsOn(m_cloth, m_cut.on))
            if (crosses(flaw))
                add(Breach::Kind::Flaw,
                    flaw.note.empty() ? phrase("lies over a flaw") : phrase("lies over a flaw (%1)", {flaw.note}));
    }

    void neighbours(const std::vector<int> &near) {
        for (const int i : near) {
            const LaidCut &it = m_laid[std::size_t(i)];
            if (!isNeighbour(std::size_t(i)) || !tooNear(m_me, it, m_job.gap)) continue;
            const std::string other = name(*it.panel);
            if (overlapping(m_me, it))
                add(Breach::Kind::Neighbour, phrase("lies over %1", {other}), i);
            else
                add(Breach::Kind::Neighbour,
                    phrase("%1 from %2, and %3 is kept between cuts",
                           {said(gapBetween(m_me, it)), other, said(m_job.gap)}),
                    i);
        }
    }

    void turn() {
        if (mayTurnSo(m_job, m_layout, *m_me.panel, m_cut)) return;
        const auto turns = turnsOf(*m_me.panel, m_job.clothOf(*m_me.panel), m_cloth);
        add(Breach::Kind::Turn,
            turns.empty() ? phrase("its motif asks for a repeat that this cloth has not")
                          : phrase("lies %1, and is to be %2", {wordsFor(m_cut.turn), wordsFor(turns.front())}));
    }

    void motif() {
        if (!m_me.panel->motif || isOffCentre(m_job, m_layout, m_cut)) return;
        const PlaceSet places = wishedPlaces(m_job, m_layout, m_me);
        const ClothPoint here{m_cut.x, m_cut.y};
        if (places.holds(here, placeTolerance)) return;
        const Vector off = places.nearest(here) - here;
        const Length by = std::max(abs(off.x), abs(off.y));
        add(Breach::Kind::Motif, phrase("%1 off the motif", {said(by)}));
    }

    void partners(const std::vector<PhaseLink> &links) {
        for (const PhaseLink &link : links) {
            if (link.a != m_index && link.b != m_index) continue;
            const bool first = link.a == m_index;
            const int other = first ? link.b : link.a;
            const LaidCut &it = m_laid[std::size_t(other)];
            if (!it.panel) continue;
            const auto kind = link.kind == PhaseLink::Kind::Alike ? Breach::Kind::Alike : Breach::Kind::Flow;
            const std::string who = name(*it.panel);
            if (&m_job.clothOf(*it.cut) != &m_cloth) {
                add(kind, phrase("on other cloth than %1, so the pattern cannot run on", {who}), other);
                continue;
            }
            if (it.cut->turn != m_cut.turn) {
                add(kind, phrase("turned differently from %1", {who}), other);
                continue;
            }
            const auto lattice = m_cloth.latticeOn(m_cut.on);
            if (!lattice) continue;
            const ClothPoint mine = m_me.at(first ? link.atA : link.atB);
            const ClothPoint theirs = inPhaseOn(m_cloth, it.cut->on, m_cut.on, it.at(first ? link.atB : link.atA));
            const PlaceSet places = PlaceSet::inPhaseWith(*lattice, theirs);
            if (places.holds(mine, placeTolerance)) continue;
            const Vector off = places.nearest(mine) - mine;
            const Length by = std::max(abs(off.x), abs(off.y));
            add(kind,
                link.kind == PhaseLink::Kind::Alike
                    ? phrase("shows another part of the repeat than its twin, by %1", {said(by)})
                    : phrase("the pattern misses %1 by %2", {who, said(by)}),
                other);
        }
    }

    void allowances() {
        const std::vector<Length> have = allowancesOf(*m_me.panel, m_cut);
        for (int edge = 0; edge < int(have.size()); ++edge) {
            Length least = m_me.panel->leastAllowance(edge);
            if (const auto it = m_me.panel->may.stretcher.find(edge);
                it != m_me.panel->may.stretcher.end() && conceded(m_layout, m_cut, Concession::Kind::Stretcher))
                least = std::min(least, it->second);
            if (have[std::size_t(edge)] < least - placeTolerance)
                add(Breach::Kind::Allowance,
                    phrase("%1 left at %2, and it needs %3",
                           {said(have[std::size_t(edge)]), theEdgeInWords(m_me.panel->shape, edge), said(least)}));
        }
    }

    /// The scissors have been there, as another layout of the job knows.
    void alreadyCut(const std::vector<LaidCut> &gone) {
        for (const LaidCut &piece : gone) {
            if (piece.cut->panel == m_cut.panel && piece.cut->copy == m_cut.copy && piece.cut->piece == m_cut.piece)
                add(Breach::Kind::AlreadyCut, phrase("is already cut, and lay elsewhere"));
            else if (piece.cut->on == m_cut.on && &m_job.clothOf(*piece.cut) == &m_cloth && overlapping(m_me, piece))
                add(Breach::Kind::AlreadyCut, phrase("lies where %1 is already cut", {name(*piece.panel)}));
        }
    }

    const Job &m_job;
    const Layout &m_layout;
    const std::vector<LaidCut> &m_laid;
    int m_index;
    const LaidCut &m_me;
    const Cut &m_cut;
    const Cloth &m_cloth;
    std::vector<Breach> m_found;
};

} // namespace

Run runOf(const Panel &panel, const Cloth &cloth) {
    return panel.run.value_or(cloth.up == PatternUp::Across ? Run::Railroad : Run::UpRoll);
}

std::vector<Turn> widerTurns(Way way) { return turnsOfRun(Run::Either, way); }

bool motifRepeats(const Panel &panel, const Cloth &cloth, Turn turn) {
    return !panel.motif || (cloth.pattern && repeatsEnough(*panel.motif, turn, *cloth.pattern));
}

std::vector<Turn> turnsOf(const Panel &panel, const Cloth &home, const Cloth &cloth) {
    std::vector<Turn> turns = turnsOfRun(runOf(panel, cloth), cloth.way);
    if (!panel.motif || &home != &cloth) return turns;
    std::erase_if(turns, [&](Turn t) { return !motifRepeats(panel, cloth, t); });
    return turns;
}

PlaceSet wishedPlaces(const Job &job, const Layout &layout, const LaidCut &cut) {
    const auto lattice = job.clothOf(*cut.cut).latticeOn(cut.cut->on);
    if (!lattice || !cut.panel->motif || isOffCentre(job, layout, *cut.cut)) return {};
    const PanelPoint anchor = anchorOf(*cut.panel);
    if (cut.cut->of > 1 && !cut.span.holds(anchor)) return {};
    const Axes axes = axesOf(cut.panel->motif->centre, cut.cut->turn);
    const Vector toCorner = ClothPoint{cut.cut->x, cut.cut->y} - cut.at(anchor);
    return PlaceSet::ofMotifs(*lattice, axes.x, axes.y).movedBy(toCorner);
}

std::optional<PlaceSet> allowedPlaces(const Job &job, const Layout &layout, int index) {
    const Cut &cut = layout.cuts[std::size_t(index)];
    const Panel *panel = job.panel(cut.panel);
    if (!panel) return std::nullopt;
    const LaidCut me = lay(*panel, cut, layout);
    std::optional<PlaceSet> places = wishedPlaces(job, layout, me);
    const Cloth &cloth = job.clothOf(cut);
    const auto lattice = cloth.latticeOn(cut.on);
    if (!lattice) return places;
    for (const PhaseLink &link : phaseLinks(job, layout)) {
        if (link.a != index && link.b != index) continue;
        const bool first = link.a == index;
        const Cut &other = layout.cuts[std::size_t(first ? link.b : link.a)];
        const Panel *otherPanel = job.panel(other.panel);
        if (!otherPanel || &job.clothOf(other) != &cloth || other.turn != cut.turn) continue;
        const ClothPoint theirs =
            inPhaseOn(cloth, other.on, cut.on, lay(*otherPanel, other, layout).at(first ? link.atB : link.atA));
        const Vector toCorner = ClothPoint{cut.x, cut.y} - me.at(first ? link.atA : link.atB);
        places = PlaceSet::common(*places, PlaceSet::inPhaseWith(*lattice, theirs).movedBy(toCorner), placeTolerance);
        if (!places) return std::nullopt;
    }
    return places;
}

std::vector<Turn> allowedTurns(const Job &job, const Layout &layout, int index) {
    const Cut &cut = layout.cuts[std::size_t(index)];
    const Panel *panel = job.panel(cut.panel);
    if (!panel) return {};
    std::vector<Turn> turns = turnsOf(*panel, job.clothOf(*panel), job.clothOf(cut));
    if (panel->may.turn)
        for (Turn t : widerTurns(job.clothOf(cut).way))
            if (std::find(turns.begin(), turns.end(), t) == turns.end()) turns.push_back(t);
    return turns;
}

std::vector<Concession> trimsOf(const Panel &panel, const Cut &cut) {
    std::vector<Concession> trims;
    if (cut.piece > 1) return trims;
    for (int edge = 0; edge < int(cut.allow.size()); ++edge) {
        const Length full = panel.allowance(edge), left = cut.allow[std::size_t(edge)].value_or(full);
        if (left == full) continue;
        const auto kind = left >= panel.leastAllowance(edge) ? Concession::Kind::Trim : Concession::Kind::Stretcher;
        trims.push_back({kind, panel.id, cut.copy, edge, full, left, {}});
    }
    return trims;
}

std::vector<Breach> breaches(const Job &job, const Layout &layout) {
    const std::vector<LaidCut> laid = layAll(job, layout);
    const std::vector<PhaseLink> links = phaseLinks(job, layout);
    const std::vector<LaidCut> gone = cutElsewhere(job, layout);
    std::vector<ClothBox> boxes;
    for (const LaidCut &cut : laid) boxes.push_back(cut.box);
    const BoxIndex index(boxes);
    std::vector<Breach> all;
    for (int i = 0; i < int(laid.size()); ++i) {
        auto some = Inspector(job, layout, laid, i).all(index.near(laid[std::size_t(i)].box, job.gap), links, gone);
        all.insert(all.end(), std::make_move_iterator(some.begin()), std::make_move_iterator(some.end()));
    }
    return all;
}

std::vector<Breach> breachesOf(const Job &job, const Layout &layout, const std::vector<LaidCut> &laid, int cut) {
    std::vector<int> near(laid.size());
    std::iota(near.begin(), near.end(), 0);
    return Inspector(job, layout, laid, cut).all(near, phaseLinks(job, layout), cutElsewhere(job, layout));
}

bool hasRoom(const Job &job, const Layout &layout, const std::vector<LaidCut> &laid, int cut) {
    return Inspector(job, layout, laid, cut).hasRoom();
}

std::vector<LeftOut> putAside(const Job &job, const Layout &layout) {
    std::vector<LeftOut> aside;
    for (const Panel &panel : job.panels)
        for (int copy = 1; copy <= panel.count; ++copy) {
            std::set<int> pieces;
            int of = 1;
            for (const Cut &cut : layout.cuts)
                if (cut.panel == panel.id && cut.copy == copy) {
                    pieces.insert(cut.piece);
                    of = cut.of;
                }
            if (int(pieces.size()) < of) aside.push_back({panel.id, copy, {}});
        }
    return aside;
}

bool everythingLies(const Job &job, const Layout &layout) {
    const auto aside = putAside(job, layout);
    return std::all_of(aside.begin(), aside.end(), [&](const LeftOut &copy) {
        return std::any_of(layout.leftOut.begin(), layout.leftOut.end(),
                           [&](const LeftOut &left) { return left.panel == copy.panel && left.copy == copy.copy; });
    });
}

} // namespace boltwright
