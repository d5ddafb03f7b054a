#include "core/planner/build.h"

#include "core/base/ensure.h"
#include "core/base/language.h"
#include "core/measure/length_text.h"
#include "core/rules/joins.h"
#include "core/rules/phase_groups.h"
#include "core/rules/rules.h"

#include <algorithm>
#include <map>

namespace boltwright::planner {
namespace {

std::string nameOf(const Panel &panel) { return panel.name.empty() ? panel.id : panel.name; }

/// The largest box that a sheet of the cloth could hold, for deciding whether a panel must be pieced.
std::vector<ClothBox> roomsOf(const Cloth &cloth) {
    std::vector<ClothBox> rooms;
    if (cloth.bolt) rooms.push_back(boxOf(roomOf(cloth, std::nullopt)));
    for (const Remnant &r : cloth.remnants) {
        ClothBox box = boxOf(r.outline);
        box.low = box.low + Vector{cloth.edge, cloth.edge};
        box.high = box.high - Vector{cloth.edge, cloth.edge};
        rooms.push_back(box);
    }
    return rooms;
}

/// How long a piece may be, measured along the panel's longer cut side, in the turn that allows most; zero when the
/// panel's shorter side fits nowhere.
Length longestPiece(const Panel &panel, const Cloth &cloth, bool sideToSide, Length crosswise) {
    Length longest;
    for (Turn turn : turnsOf(panel, cloth, cloth)) {
        if (isBias(turn)) continue; // a long strip on the bias is cut from bias strips, not from one panel's pieces
        const bool alongWidth = sideToSide != swapsAxes(turn);
        for (const ClothBox &room : roomsOf(cloth)) {
            const Length lengthways = alongWidth ? room.width() : room.height();
            const Length across = alongWidth ? room.height() : room.width();
            if (crosswise <= across) longest = std::max(longest, lengthways);
        }
    }
    return longest;
}

/// Cut lengths of `count` pieces that make `whole`, equal to a tick.
std::vector<Length> equalPieces(Length whole, Length seam, int count) {
    std::vector<Length> lengths;
    for (int k = 0; k < count; ++k) {
        const std::int64_t net = whole.ticks() * (k + 1) / count - whole.ticks() * k / count;
        lengths.push_back(Length::ticks(net) + seam * ((k > 0) + (k < count - 1)));
    }
    return lengths;
}

/// A full length in the middle and equal sides: fewer joins show, and the sides come from narrow cloth.
std::vector<Length> fullCentre(Length whole, Length seam, int count, Length longest) {
    if (count != 3) return equalPieces(whole, seam, count);
    const Length centre = longest - seam * 2;
    const Length sides = whole - centre;
    const Length left = Length::ticks(sides.ticks() / 2);
    return {left + seam, longest, left + Length::ticks(sides.ticks() % 2) + seam};
}

/// As many full lengths as it takes and the rest: the trade's way for bands and borders.
std::vector<Length> fullAndRest(Length whole, Length seam, int count, Length longest) {
    std::vector<Length> lengths;
    Length left = whole;
    for (int k = 0; k < count; ++k) {
        const int joins = (k > 0) + (k < count - 1);
        const Length net = k == count - 1 ? left : std::min(left, longest - seam * joins);
        lengths.push_back(net + seam * joins);
        left -= net;
    }
    return lengths;
}

bool allWithin(const std::vector<Length> &lengths, Length shortest, Length longest) {
    return std::all_of(lengths.begin(), lengths.end(), [&](Length l) { return l >= shortest && l <= longest; });
}

/// What the pattern asks of pieces that lie side by side across a bolt: a piece that holds the motif has to find one in
/// the cloth's width, and where the pattern runs on over the joins all of them have to at once.
class PieceRoom {
public:
    PieceRoom(const Panel &panel, const Cloth &cloth, const PanelBox &box, bool sideToSide)
        : m_low(box.low.x), m_match(panel.pieces.match) {
        const auto turns = turnsOf(panel, cloth, cloth);
        const auto upright = [](Turn t) { return t == Turn::Deg0; };
        if (!cloth.bolt || !sideToSide || !std::all_of(turns.begin(), turns.end(), upright)) return;
        const auto lattice = cloth.latticeOn(std::nullopt);
        if (!lattice || !lattice->repeatsAcross()) return;
        m_step = lattice->across();
        const ClothBox room = boxOf(roomOf(cloth, std::nullopt));
        m_from = room.low.x;
        m_to = room.high.x;
        if (panel.motif && panel.motif->centre != Centre::Up) {
            m_motif = anchorOf(panel).x - m_low;
            m_phase = lattice->motif().x - *m_motif;
        }
    }

    /// Whether a join would cut through the motif that the panel is centred on.
    bool partsMotif(const std::vector<Length> &lengths, Length seam) const {
        Length join;
        for (std::size_t k = 0; m_motif && k + 1 < lengths.size(); ++k) {
            join += lengths[k] - seam * ((k > 0) + 1);
            if (abs(join - *m_motif) <= seam + Length::ticks(1)) return true;
        }
        return false;
    }

    bool holds(const std::vector<Length> &lengths, Length seam) const {
        if (m_step == Length{} || (!m_match && !m_motif)) return true;
        std::vector<Piece> pieces;
        Length at; // from the panel's low end to the join before the piece
        for (std::size_t k = 0; k < lengths.size(); ++k) {
            const Length before = k > 0 ? seam : Length{}, after = k + 1 < lengths.size() ? seam : Length{};
            const Length net = lengths[k] - before - after;
            const bool last = k + 1 == lengths.size();
            const bool bound = m_match || (*m_motif >= at && (*m_motif < at + net || last));
            if (bound) pieces.push_back({at - before, lengths[k]});
            at += net;
        }
        if (m_motif) return allAt(pieces, m_phase);
        // The first phase at which one of them begins to fit would do if any does.
        return std::any_of(pieces.begin(), pieces.end(), [&](Piece p) { return allAt(pieces, m_from - p.from); });
    }

    /// Three pieces whose middle one is as long as it can be about a motif; none where no motif asks.
    std::optional<Length> centreLength(Length whole) const {
        if (m_step == Length{} || !m_motif || *m_motif * 2 != whole) return std::nullopt;
        Length half;
        const Length motif = m_phase + *m_motif;
        for (Length x = m_from + modulo(motif - m_from, m_step); x < m_to; x += m_step)
            half = std::max(half, std::min(x - m_from, m_to - x));
        return half * 2;
    }

private:
    struct Piece {
        Length from, length; ///< of the cut, from the panel's low end
    };
    bool allAt(const std::vector<Piece> &pieces, Length phase) const {
        return std::all_of(pieces.begin(), pieces.end(), [&](Piece p) {
            return m_from + modulo(phase + p.from - m_from, m_step) + p.length <= m_to;
        });
    }

    Length m_low;
    bool m_match;
    Length m_step;                 ///< zero: the pattern asks nothing
    Length m_from, m_to;           ///< the room across the width
    std::optional<Length> m_motif; ///< from the panel's low end
    Length m_phase;                ///< where the panel's low end would lie
};

/// The pieces' cut lengths; empty for a whole cut.
std::vector<Length> piecesFor(const Panel &panel, const Cloth &cloth) {
    if (panel.pieces.most <= 1) return {};
    const PanelBox box = boxOf(cutOutline(panel.shape, preferredAllowances(panel)));
    const bool sideToSide = box.width() >= box.height();
    const Length whole = sideToSide ? box.width() : box.height();
    const Length longest = longestPiece(panel, cloth, sideToSide, sideToSide ? box.height() : box.width());
    const Length seam = panel.pieces.seam;
    const PieceRoom room(panel, cloth, box, sideToSide);
    if (longest == Length{} || (longest >= whole && room.holds({whole}, seam))) return {};
    // Where nothing better comes: joined through its motif, or where the pattern leaves no way, as the width alone
    // asks.
    std::vector<Length> parted, plain;
    for (int count = 2; count <= panel.pieces.most; ++count) {
        std::vector<std::vector<Length>> ways;
        if (longest < whole) {
            if (panel.pieces.where == Pieces::Where::Any) ways.push_back(fullAndRest(whole, seam, count, longest));
            ways.push_back(fullCentre(whole, seam, count, longest));
        }
        if (const auto centre = room.centreLength(whole); centre && *centre < std::min(longest, whole))
            ways.push_back(fullCentre(whole, seam, count, *centre));
        ways.push_back(equalPieces(whole, seam, count));
        for (const auto &way : ways) {
            if (!allWithin(way, panel.pieces.shortest, longest)) continue;
            if (room.holds(way, seam)) {
                if (!room.partsMotif(way, seam)) return way;
                if (parted.empty()) parted = way;
            }
            if (plain.empty() && longest < whole) plain = way;
        }
    }
    return parted.empty() ? plain : parted;
}

/// The ring with every edge moved inwards, corners mitred; nothing where that turns an edge round.
std::optional<ClothRing> uprightInset(const ClothRing &ring, Length by) {
    ClothRing in = ring;
    const std::size_t n = ring.size();
    for (std::size_t i = 0; i < n; ++i) {
        const Vector along = ring[(i + 1) % n] - ring[i];
        if (along.x != Length{} && along.y != Length{}) return std::nullopt;
        // Inwards is to the left of the walk.
        const Vector move =
            along.y == Length{} ? Vector{{}, along.x > Length{} ? by : -by} : Vector{along.y > Length{} ? -by : by, {}};
        in[i] = in[i] + move;
        in[(i + 1) % n] = in[(i + 1) % n] + move;
    }
    for (std::size_t i = 0; i < n; ++i)
        if (dot(in[(i + 1) % n] - in[i], ring[(i + 1) % n] - ring[i]) <= 0) return std::nullopt;
    return isSimple(in) ? std::optional{in} : std::nullopt;
}

/// Where cuts may lie on a remnant. An outline of upright edges keeps them, though the distance to an inner corner is
/// then kept square where round would do: upright rooms are searched far better, and what is lost is a crumb.
std::vector<ClothRing> roomsIn(const ClothRing &outline, Length edge) {
    if (edge == Length{}) return {outline};
    if (const auto upright = uprightInset(outline, edge)) return {*upright};
    return inset(outline, edge);
}

/// Outlines by their ring, so that equal ones are one.
class Outlines {
public:
    explicit Outlines(Instance &instance) : m_instance(instance) {}
    int add(const ClothRing &ring) {
        const ClothBox box = boxOf(ring);
        ClothRing atOrigin = moved(ring, ClothPoint{} - box.low);
        const auto [it, added] = m_index.try_emplace(atOrigin, int(m_instance.outlines.size()));
        if (added) m_instance.outlines.push_back(makeOutline(atOrigin));
        return it->second;
    }

private:
    Instance &m_instance;
    std::map<ClothRing, int> m_index;
};

class Builder {
public:
    Builder(const Job &job, const Layout *from, const GivenUp &given) : m_job(job), m_given(given) {
        for (const CopyKey &copy : given.offCentre)
            m_whole.conceded.push_back({Concession::Kind::Uncentre, copy.first, copy.second, {}, {}, {}, {}});
        if (from) {
            for (const Cut &cut : from->cuts) {
                if (cut.state == CutState::Planned || !job.panel(cut.panel)) continue;
                m_staying.push_back(cut);
                // What stays keeps what was given up for it.
                for (const Concession &c : from->conceded)
                    if (c.kind == Concession::Kind::Uncentre && c.panel == cut.panel && c.copy == cut.copy)
                        m_whole.conceded.push_back(c);
            }
        }
        m_drafts = draftCuts(job, m_staying, given);
        m_whole.cuts = m_drafts;
        m_whole.cuts.insert(m_whole.cuts.end(), m_staying.begin(), m_staying.end());
    }

    std::vector<ClothInstance> build() {
        groups();
        std::vector<ClothInstance> all;
        for (const Cloth &cloth : m_job.cloths) {
            ClothInstance c = buildCloth(cloth);
            if (!c.drafts.empty() || !c.staying.empty()) all.push_back(std::move(c));
        }
        return all;
    }

private:
    const Cut &cut(int i) const { return m_whole.cuts[std::size_t(i)]; }
    const Panel &panel(int i) const { return *m_job.panel(cut(i).panel); }
    bool stays(int i) const { return i >= int(m_drafts.size()); }

    void groups() {
        m_phases = phaseGroups(m_job, m_whole);
        m_groupOf.assign(m_whole.cuts.size(), -1);
        for (std::size_t group = 0; group < m_phases.size(); ++group)
            for (int i : m_phases[group].cuts) m_groupOf[std::size_t(i)] = int(group);
    }

    ClothInstance buildCloth(const Cloth &cloth) {
        ClothInstance c;
        c.cloth = cloth.id;
        c.instance.gap = m_job.gap;
        sheets(cloth, c);
        Outlines outlines(c.instance);
        std::map<int, int> groupHere;
        for (int i = 0; i < int(m_drafts.size()); ++i) {
            if (&m_job.clothOf(cut(i)) != &cloth) continue;
            item(cloth, c, outlines, groupHere, i);
        }
        for (int i = int(m_drafts.size()); i < int(m_whole.cuts.size()); ++i)
            if (&m_job.clothOf(cut(i)) == &cloth) staying(cloth, c, outlines, i);
        shareWishes(c);
        kinds(c);
        return c;
    }

    void sheets(const Cloth &cloth, ClothInstance &c) {
        if (cloth.bolt) {
            add(cloth, c, roomOf(cloth, std::nullopt), std::nullopt, true, 0);
            return;
        }
        std::map<std::string, int> lots;
        for (const Remnant &r : cloth.remnants) {
            if (cloth.edge > Length{} && !isConvex(counterClockwise(r.outline))) c.exactRooms = false;
            const int lot = lots.try_emplace(r.lot, int(lots.size())).first->second;
            for (ClothRing &room : roomsIn(counterClockwise(r.outline), cloth.edge))
                add(cloth, c, std::move(room), r.id, false, lot);
        }
    }

    void add(const Cloth &cloth, ClothInstance &c, ClothRing room, const std::optional<std::string> &on, bool open,
             int lot) {
        Sheet sheet;
        sheet.room = std::move(room);
        sheet.open = open;
        for (const Flaw &flaw : flawsOn(cloth, on)) sheet.flaws.push_back(counterClockwise(flaw.outline));
        sheet.lattice = cloth.latticeOn(on);
        sheet.lot = lot;
        c.instance.sheets.push_back(std::move(sheet));
        m_sheetOn[cloth.id].push_back(on);
    }

    void item(const Cloth &cloth, ClothInstance &c, Outlines &outlines, std::map<int, int> &groupHere, int i) {
        Item item;
        item.hidden = panel(i).hidden;
        const int phase = m_groupOf[std::size_t(i)];
        if (phase >= 0) {
            const auto [it, added] = groupHere.try_emplace(phase, int(c.instance.groups.size()));
            if (added) c.instance.groups.emplace_back();
            item.group = it->second;
            c.instance.groups[std::size_t(item.group)].items.push_back(int(c.instance.items.size()));
        }
        std::vector<std::optional<std::string>> ways;
        std::vector<Turn> turns = turnsOf(panel(i), m_job.clothOf(panel(i)), cloth);
        if (m_given.turned.count({cut(i).panel, cut(i).copy}))
            for (Turn t : widerTurns(cloth.way))
                if (std::find(turns.begin(), turns.end(), t) == turns.end() && motifRepeats(panel(i), cloth, t))
                    turns.push_back(t);
        bool contradiction = false;
        for (std::size_t s = 0; s < c.instance.sheets.size(); ++s)
            for (Turn turn : turns) {
                const auto anchor = anchorIn(phase, i, turn);
                if (!anchor) {
                    contradiction = true;
                    continue;
                }
                const auto on = m_sheetOn[cloth.id][s];
                const auto option = optionFor(c, outlines, i, int(s), on, turn, *anchor);
                if (!option) continue;
                item.options.push_back(*option);
                ways.push_back(on);
            }
        if (item.options.empty() && c.impossible.empty()) c.impossible = whyNot(cloth, i, turns, contradiction);
        c.instance.items.push_back(std::move(item));
        c.drafts.push_back(cut(i));
        c.ways.push_back(std::move(ways));
    }

    std::optional<Vector> anchorIn(int phase, int i, Turn turn) const {
        if (phase < 0) return Vector{};
        const PhaseGroup &p = m_phases[std::size_t(phase)];
        const auto it = p.anchors.find(turn);
        if (it == p.anchors.end()) return std::nullopt;
        const auto at = std::find(p.cuts.begin(), p.cuts.end(), i) - p.cuts.begin();
        return it->second[std::size_t(at)];
    }

    std::optional<Option> optionFor(ClothInstance &c, Outlines &outlines, int i, int sheet,
                                    const std::optional<std::string> &on, Turn turn, Vector anchor) {
        Cut placed = cut(i);
        placed.on = on;
        placed.turn = turn;
        placed.x = placed.y = Length{};
        const LaidCut l = lay(panel(i), placed, m_whole);
        const ClothBox room = boxOf(c.instance.sheets[std::size_t(sheet)].room);
        if (l.box.width() > room.width() || l.box.height() > room.height()) return std::nullopt;
        Option option;
        option.sheet = sheet;
        option.turn = turn;
        option.outline = outlines.add(l.ring);
        option.places = wishedPlaces(m_job, m_whole, l);
        option.anchor = anchor;
        return option;
    }

    std::string whyNot(const Cloth &cloth, int i, const std::vector<Turn> &turns, bool contradiction) const {
        const std::string name = nameOf(panel(i));
        if (turns.empty())
            return phrase("%1 asks for a repeat that the cloth does not have in any way it may lie", {name});
        if (contradiction) return phrase("the pattern cannot run on over all the joins of %1 at once", {name});
        const PanelBox box = boxOf(outlineOf(panel(i), cut(i), m_whole));
        const std::string size = phrase(
            "%1 × %2", {numeral(spoken(box.width(), m_job.unit)), localised(spokenWithUnit(box.height(), m_job.unit))});
        if (cloth.bolt) {
            const ClothBox room = boxOf(roomOf(cloth, std::nullopt));
            const std::string width = localised(spokenWithUnit(room.width(), m_job.unit));
            return panel(i).pieces.most > 1
                       ? phrase("%1 is cut %2, and the cloth is %3 wide between the selvages, even in as many pieces "
                                "as it may be made of",
                                {name, size, width})
                       : phrase("%1 is cut %2, and the cloth is %3 wide between the selvages", {name, size, width});
        }
        return phrase("%1 is cut %2, larger than any of the remnants", {name, size});
    }

    /// What lies already is an obstacle, and the phase of its group.
    void staying(const Cloth &cloth, ClothInstance &c, Outlines &outlines, int i) {
        const LaidCut l = lay(panel(i), cut(i), m_whole);
        c.staying.push_back(cut(i));
        for (std::size_t s = 0; s < c.instance.sheets.size(); ++s)
            if (m_sheetOn[cloth.id][s] == cut(i).on) {
                c.instance.fixed.push_back({int(s), outlines.add(l.ring), l.box.low});
                break;
            }
        const int phase = m_groupOf[std::size_t(i)];
        if (phase < 0) return;
        const auto lattice = cloth.latticeOn(cut(i).on);
        const auto anchor = anchorIn(phase, i, cut(i).turn);
        for (std::size_t k = 0; k < c.drafts.size(); ++k) {
            if (m_groupOf[std::size_t(draftIndex(c.drafts[k]))] != phase) continue;
            keepInPhase(c, k, cut(i).turn,
                        lattice && anchor ? std::optional<Vector>(l.box.low + *anchor - lattice->motif())
                                          : std::nullopt);
        }
    }

    int draftIndex(const Cut &draft) const {
        const auto it = std::find_if(m_drafts.begin(), m_drafts.end(), [&](const Cut &d) {
            return d.panel == draft.panel && d.copy == draft.copy && d.piece == draft.piece;
        });
        return int(it - m_drafts.begin());
    }

    void keepInPhase(ClothInstance &c, std::size_t k, Turn turn, std::optional<Vector> phase) {
        Item &item = c.instance.items[k];
        std::vector<Option> options;
        std::vector<std::optional<std::string>> ways;
        for (std::size_t o = 0; o < item.options.size(); ++o) {
            if (item.options[o].turn != turn) continue;
            const auto places = placesInGroup(c.instance, item.options[o], phase);
            if (!places) continue;
            options.push_back(item.options[o]);
            options.back().places = *places;
            ways.push_back(c.ways[k][o]);
        }
        item.options = std::move(options);
        c.ways[k] = std::move(ways);
        if (item.options.empty() && c.impossible.empty())
            c.impossible =
                phrase("%1 cannot run on from what is locked in place", {nameOf(*m_job.panel(c.drafts[k].panel))});
    }

    /// A wish of one member of a group is a wish of all: their places, taken from their own sheet's motif and moved to
    /// the group's point, must be one set.
    void shareWishes(ClothInstance &c) {
        Instance &in = c.instance;
        for (const Group &group : in.groups) {
            std::map<Turn, std::optional<PlaceSet>> shared;
            const auto toPhase = [&](const Option &o) {
                const auto &lattice = in.sheets[std::size_t(o.sheet)].lattice;
                return o.anchor - (lattice ? lattice->motif() - ClothPoint{} : Vector{});
            };
            for (int i : group.items)
                for (const Option &o : in.items[std::size_t(i)].options) {
                    const PlaceSet here = o.places.movedBy(toPhase(o));
                    const auto [it, added] = shared.try_emplace(o.turn, here);
                    if (!added && it->second) it->second = PlaceSet::common(*it->second, here, Length::ticks(4));
                }
            for (int i : group.items) {
                Item &item = in.items[std::size_t(i)];
                std::vector<Option> options;
                std::vector<std::optional<std::string>> ways;
                for (std::size_t o = 0; o < item.options.size(); ++o) {
                    const auto &places = shared[item.options[o].turn];
                    // A turn that another member has not is no turn for the group.
                    const bool all = std::all_of(group.items.begin(), group.items.end(), [&](int other) {
                        const auto &theirs = in.items[std::size_t(other)].options;
                        return std::any_of(theirs.begin(), theirs.end(),
                                           [&](const Option &t) { return t.turn == item.options[o].turn; });
                    });
                    if (!places || !all) continue;
                    options.push_back(item.options[o]);
                    options.back().places = places->movedBy(-toPhase(item.options[o]));
                    ways.push_back(c.ways[std::size_t(i)][o]);
                }
                if (options.empty() && c.impossible.empty())
                    c.impossible = phrase("%1 cannot lie on its motif and run on from its neighbours at once",
                                          {nameOf(*m_job.panel(c.drafts[std::size_t(i)].panel))});
                item.options = std::move(options);
                c.ways[std::size_t(i)] = std::move(ways);
            }
        }
    }

    /// Items that could change places unnoticed get one number.
    static void kinds(ClothInstance &c) {
        const auto same = [](const Option &a, const Option &b) {
            return a.sheet == b.sheet && a.turn == b.turn && a.outline == b.outline && a.places == b.places &&
                   a.anchor == b.anchor;
        };
        auto &items = c.instance.items;
        for (std::size_t i = 0; i < items.size(); ++i) {
            items[i].kind = int(i);
            for (std::size_t j = 0; j < i; ++j)
                if (items[j].group == items[i].group && items[j].hidden == items[i].hidden &&
                    std::equal(items[i].options.begin(), items[i].options.end(), items[j].options.begin(),
                               items[j].options.end(), same)) {
                    items[i].kind = items[j].kind;
                    break;
                }
        }
    }

    const Job &m_job;
    const GivenUp m_given;
    Layout m_whole; ///< drafts, then staying cuts: what the rules are asked about
    std::vector<Cut> m_drafts, m_staying;
    std::vector<int> m_groupOf;
    std::vector<PhaseGroup> m_phases;
    std::map<std::string, std::vector<std::optional<std::string>>> m_sheetOn;
};

} // namespace

std::vector<Cut> draftCuts(const Job &job, const std::vector<Cut> &staying, const GivenUp &given) {
    std::vector<Cut> drafts;
    for (const Panel &panel : job.panels) {
        const std::vector<Length> needed = piecesFor(panel, job.clothOf(panel));
        for (int copy = 1; copy <= panel.count; ++copy) {
            const CopyKey key{panel.id, copy};
            if (given.leftOut.count(key)) continue;
            const auto chosen = given.pieces.find(key);
            const std::vector<Length> &pieces = chosen != given.pieces.end() ? chosen->second : needed;
            const auto stays = std::find_if(staying.begin(), staying.end(),
                                            [&](const Cut &c) { return c.panel == panel.id && c.copy == copy; });
            const int of = stays != staying.end() ? stays->of : std::max<int>(1, int(pieces.size()));
            for (int piece = 1; piece <= of; ++piece) {
                const bool here = std::any_of(staying.begin(), staying.end(), [&](const Cut &c) {
                    return c.panel == panel.id && c.copy == copy && c.piece == piece;
                });
                if (here) continue;
                Cut cut;
                cut.panel = panel.id;
                cut.copy = copy;
                cut.piece = piece;
                cut.of = of;
                cut.mirrored = panel.mirror && copy % 2 == 0;
                if (const auto it = given.allow.find(key); it != given.allow.end()) cut.allow = it->second;
                if (const auto it = given.otherCloth.find(key); it != given.otherCloth.end()) cut.cloth = it->second;
                if (of > 1 && std::size_t(of) == pieces.size()) cut.length = pieces[std::size_t(piece - 1)];
                drafts.push_back(std::move(cut));
            }
        }
    }
    return drafts;
}

std::vector<Length> morePieces(const Job &job, const Panel &panel) {
    const int count = std::max<int>(1, int(piecesFor(panel, job.clothOf(panel)).size())) + 1;
    if (count > panel.pieces.most) return {};
    const PanelBox box = boxOf(cutOutline(panel.shape, preferredAllowances(panel)));
    std::vector<Length> pieces = equalPieces(std::max(box.width(), box.height()), panel.pieces.seam, count);
    return allWithin(pieces, panel.pieces.shortest, Length::limit()) ? pieces : std::vector<Length>{};
}

std::vector<Length> piecesJoinedAtBack(const Job &job, const Panel &panel) {
    const int count = int(morePieces(job, panel).size());
    if (count < 2 || !goesRound(panel)) return {};
    const PanelBox box = boxOf(cutOutline(panel.shape, preferredAllowances(panel)));
    const bool sideToSide = box.width() >= box.height();
    const Length whole = std::max(box.width(), box.height()), seam = panel.pieces.seam;
    const Length longest = longestPiece(panel, job.clothOf(panel), sideToSide, std::min(box.width(), box.height()));
    const Length front = std::min(longest - seam, Length::ticks(whole.ticks() * 3 / 4));
    const Length rest = whole - front;
    std::vector<Length> pieces{front + seam};
    for (int k = 1; k < count; ++k) {
        const std::int64_t net = rest.ticks() * k / (count - 1) - rest.ticks() * (k - 1) / (count - 1);
        pieces.push_back(Length::ticks(net) + seam * (k < count - 1 ? 2 : 1));
    }
    const bool right = joinedAtBack(panel, pieces) && allWithin(pieces, panel.pieces.shortest, longest);
    return right ? pieces : std::vector<Length>{};
}

std::vector<ClothInstance> buildInstances(const Job &job, const Layout *from, const GivenUp &given) {
    return Builder(job, from, given).build();
}

Cut cutFrom(const ClothInstance &cloth, const Placement &placement) {
    Cut cut = cloth.drafts[std::size_t(placement.item)];
    cut.on = cloth.ways[std::size_t(placement.item)][std::size_t(placement.option)];
    cut.turn = cloth.instance.items[std::size_t(placement.item)].options[std::size_t(placement.option)].turn;
    cut.x = placement.corner.x;
    cut.y = placement.corner.y;
    return cut;
}

std::vector<Placement> placementsFrom(const ClothInstance &cloth, const Layout &layout) {
    std::vector<Placement> placements;
    for (std::size_t i = 0; i < cloth.drafts.size(); ++i) {
        const Cut &draft = cloth.drafts[i];
        const auto cut = std::find_if(layout.cuts.begin(), layout.cuts.end(), [&](const Cut &c) {
            return c.panel == draft.panel && c.copy == draft.copy && c.piece == draft.piece && c.of == draft.of &&
                   c.length == draft.length && c.allow == draft.allow && c.cloth == draft.cloth;
        });
        if (cut == layout.cuts.end()) return {};
        const auto &options = cloth.instance.items[i].options;
        std::size_t o = 0;
        while (o < options.size() && !(options[o].turn == cut->turn && cloth.ways[i][o] == cut->on)) ++o;
        if (o == options.size()) return {};
        placements.push_back({int(i), int(o), {cut->x, cut->y}});
    }
    return placements;
}

} // namespace boltwright::planner
