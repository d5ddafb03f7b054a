#include "core/yardage/on_cloth.h"

#include "core/geometry/shape_ops.h"
#include "core/planner/bounds/bounds.h"
#include "core/rules/cut_shape.h"
#include "core/rules/rules.h"
#include "core/yardage/relax.h"

#include <algorithm>
#include <optional>
#include <set>
#include <variant>

namespace boltwright {
namespace {

/// Seam allowance of a join where the part has none of its own (TRADE T6.6).
constexpr Length usualSeam = Length::ticks(4064);
/// The sides of a joined part are not made narrower than this, so that no join lies at its very edge (common practice,
/// no source).
constexpr Length narrowestSide = Length::ticks(4 * 8128);
/// More joins than this nobody would make in one part; a long border takes some (TRADE T9.3: ten).
constexpr int mostPieces = 20;

/// The motif wish that the cloth can still meet, in the way the panel runs; none where it can meet nothing.
void fitMotif(Panel &panel, const Cloth &cloth) {
    if (!panel.motif) return;
    if (!cloth.pattern) {
        panel.motif.reset();
        return;
    }
    for (Centre centre : {panel.motif->centre, Centre::Across, Centre::Up}) {
        panel.motif->centre = centre;
        if (runOf(panel, cloth) == Run::Bias && centre != Centre::Both) continue;
        if (!turnsOf(panel, cloth, cloth).empty()) return;
    }
    panel.motif.reset();
}

/// As cloth is printed and woven: whole columns of motifs across the width, the outer ones half a repeat from its edges
/// (TRADE T3.8, T3.9: two motifs across 54 in stand 27 in apart). Along the roll one stands at the cut end.
Length firstMotif(const AskCloth &ask) {
    if (!ask.across) return Length::ticks(roundedQuotient(ask.width.ticks(), 2));
    const std::int64_t columns = std::max<std::int64_t>(1, ask.width.ticks() / ask.across->ticks());
    return Length::ticks(roundedQuotient(ask.width.ticks() - (columns - 1) * ask.across->ticks(), 2));
}

Cloth asked(Cloth cloth, const AskCloth &ask) {
    if (!cloth.bolt) {
        cloth.bolt = Bolt{};
        cloth.remnants.clear();
        cloth.edge = {};
    }
    cloth.bolt->width = ask.width;
    cloth.bolt->length.reset();
    cloth.bolt->flaws.clear();
    cloth.pattern.reset();
    if (!ask.across && !ask.along) return cloth;
    Pattern pattern;
    pattern.across = ask.across;
    pattern.along = ask.along;
    if (ask.halfDrop && ask.along) pattern.drop = Length::ticks(roundedQuotient(ask.along->ticks(), 2));
    pattern.motif = {firstMotif(ask), {}};
    cloth.pattern = pattern;
    return cloth;
}

/// Panels that the pattern joins, each set in the job's order; one without flow stands alone.
std::vector<std::vector<std::string>> joinedByFlow(const Job &job) {
    std::vector<std::vector<std::string>> sets;
    std::set<std::string> seen;
    for (const Panel &first : job.panels) {
        if (!seen.insert(first.id).second) continue;
        std::set<std::string> here{first.id};
        for (std::size_t before = 0; before != here.size();) {
            before = here.size();
            for (const Flow &flow : job.flows)
                if (here.count(flow.from.panel) || here.count(flow.to.panel))
                    here.insert({flow.from.panel, flow.to.panel});
        }
        seen.insert(here.begin(), here.end());
        sets.emplace_back();
        for (const Panel &panel : job.panels)
            if (here.count(panel.id)) sets.back().push_back(panel.id);
    }
    return sets;
}

/// Lays the parts of one set, one wish after the other let go until each has a place on the width.
class SetOnCloth {
public:
    SetOnCloth(JobOnCloth &whole, const std::vector<std::string> &set) : m_whole(whole), m_set(set) {}

    void lay() {
        if (haveAPlace()) return;
        const Job before = m_whole.job;
        for (bool between : {false, true})
            for (bool follow : {false, true}) {
                m_whole.job = before;
                if ((between && !moveBetween()) || (follow && !followLead())) continue;
                if (haveAPlace()) return note(before);
            }
        for (bool follow : {false, true}) {
            m_whole.job = before;
            if (follow && !followLead()) continue;
            const Job wished = m_whole.job;
            // Whichever leaves the widest piece in the centre; on a motif rather than between two.
            Length widest;
            std::optional<JobOnCloth> best;
            for (bool between : {false, true}) {
                m_whole.job = wished;
                if ((between && !moveBetween()) || !joinTheWide() || !haveAPlace()) continue;
                if (const Length w = widestPiece(); !best || w > widest) {
                    widest = w;
                    best = m_whole;
                }
                for (const std::string &id : m_set) dropPieces(id);
            }
            if (!best) continue;
            m_whole = std::move(*best);
            return note(before);
        }
        m_whole.job = before;
    }

private:
    Panel &panel(const std::string &id) {
        return *std::find_if(m_whole.job.panels.begin(), m_whole.job.panels.end(),
                             [&](const Panel &p) { return p.id == id; });
    }
    const Cloth &cloth() const { return m_whole.job.cloths.front(); }

    bool haveAPlace(const std::vector<std::string> &ids, const Job &of) const {
        Job job = of;
        const auto among = [&](const std::string &id) { return std::find(ids.begin(), ids.end(), id) != ids.end(); };
        std::erase_if(job.panels, [&](const Panel &p) { return !among(p.id); });
        std::erase_if(job.flows, [&](const Flow &f) { return !among(f.from.panel) || !among(f.to.panel); });
        const auto cloths = planner::buildInstances(job, nullptr, m_whole.given);
        return std::all_of(cloths.begin(), cloths.end(), [](const planner::ClothInstance &c) {
            return c.impossible.empty() && !planner::someItemHasNoPlace(c.instance);
        });
    }
    bool haveAPlace() const { return haveAPlace(m_set, m_whole.job); }

    /// Half a repeat on, across the cloth; all that the pattern joins together. False: no panel of them asks for that.
    bool moveBetween() {
        const auto across = cloth().pattern ? cloth().pattern->across : std::nullopt;
        if (!across) return false;
        const Length half = Length::ticks(across->ticks() / 2);
        bool any = false;
        for (const std::string &id : m_set) {
            Panel &p = panel(id);
            if (!p.motif) continue;
            const Run run = runOf(p, cloth());
            const bool upright = run == Run::UpRoll || run == Run::DownRoll;
            // The panel's axis that runs across the cloth has to be the one that is centred.
            if (!upright && run != Run::Railroad) return false;
            if (p.motif->centre == (upright ? Centre::Up : Centre::Across)) continue;
            const PanelPoint at = anchorOf(p);
            p.motif->at = upright ? PanelPoint{at.x + half, at.y} : PanelPoint{at.x, at.y + half};
            any = true;
        }
        return any;
    }

    /// Only the first that asks for a motif keeps its wish; where the others lie, the pattern says. False: there are no
    /// others.
    bool followLead() {
        bool lead = false, any = false;
        for (const std::string &id : m_set) {
            Panel &p = panel(id);
            if (!p.motif) continue;
            if (lead) {
                p.motif.reset();
                any = true;
            }
            lead = true;
        }
        return any;
    }

    void dropPieces(const std::string &id) {
        std::erase_if(m_whole.given.pieces, [&](const auto &entry) { return entry.first.first == id; });
    }

    /// Parts that are too wide even by themselves are made of pieces; so are those whose motif leaves them no place.
    /// False: none may.
    bool joinTheWide() {
        bool any = false;
        for (const std::string &id : m_set) {
            if (haveAPlace({id}, m_whole.job)) continue;
            if (!std::holds_alternative<Rectangle>(panel(id).shape) || !join(panel(id))) return false;
            any = true;
        }
        return any;
    }

    /// With the pattern running on over the joins of a part that is seen, where that can be.
    bool join(Panel &p) {
        const Pieces before = p.pieces;
        for (bool match : {cloth().pattern && !p.hidden, before.match}) {
            p.pieces = before;
            p.pieces.match = match;
            if (before.most <= 1) p.pieces.seam = std::max(p.pieces.seam, usualSeam);
            p.pieces.where = p.hidden ? Pieces::Where::Any : Pieces::Where::Balanced;
            for (int most = before.most + 1; most <= mostPieces; ++most) {
                // A join in the middle of a part that is seen is what the trade avoids: two joins, then, not one.
                if (!p.hidden && most == 2) continue;
                p.pieces.most = most;
                if (!p.hidden && !p.motif && most == 3) giveFullCentre(p);
                if (haveAPlace({p.id}, m_whole.job)) return true;
                dropPieces(p.id);
            }
        }
        p.pieces = before;
        return false;
    }

    /// Of the parts that are joined.
    Length widestPiece() const {
        Job job = m_whole.job;
        std::erase_if(job.panels,
                      [&](const Panel &p) { return std::find(m_set.begin(), m_set.end(), p.id) == m_set.end(); });
        job.flows.clear();
        Length widest;
        for (const Cut &cut : planner::draftCuts(job, {}, m_whole.given))
            widest = std::max(widest, cut.length.value_or(Length{}));
        return widest;
    }

    /// A full width in the centre and equal sides.
    void giveFullCentre(const Panel &p) {
        const PanelBox cut = boxOf(cutOutline(p.shape, preferredAllowances(p)));
        const auto turns = turnsOf(p, cloth(), cloth());
        const bool sideToSide = cut.width() >= cut.height();
        const bool acrossWidth =
            std::all_of(turns.begin(), turns.end(), [&](Turn t) { return !isBias(t) && sideToSide != swapsAxes(t); });
        const Length whole = sideToSide ? cut.width() : cut.height(), seam = p.pieces.seam,
                     full = boxOf(roomOf(cloth(), std::nullopt)).width(),
                     least = std::max(p.pieces.shortest, narrowestSide + seam);
        if (!acrossWidth || full >= whole) return;
        const Length centre = std::min(full - seam * 2, whole - (least - seam) * 2), sides = whole - centre;
        const Length left = Length::ticks(sides.ticks() / 2);
        const Length right = sides - left;
        if (centre <= Length{} || right + seam > full) return;
        for (int copy = 1; copy <= p.count; ++copy)
            m_whole.given.pieces[{p.id, copy}] = {left + seam, centre + seam * 2, right + seam};
    }

    /// What has become of the wishes.
    void note(const Job &before) {
        for (const std::string &id : m_set) {
            const Panel &was = *before.panel(id), &is = *m_whole.job.panel(id);
            OtherwiseLaid o;
            o.panel = id;
            o.betweenMotifs = is.motif && was.motif && is.motif->at != was.motif->at;
            o.follows = was.motif && !is.motif;
            if (is.pieces.most != was.pieces.most) {
                Job alone = m_whole.job;
                std::erase_if(alone.panels, [&](const Panel &p) { return p.id != id; });
                alone.flows.clear();
                for (const Cut &cut : planner::draftCuts(alone, {}, m_whole.given))
                    o.joins = std::max(o.joins, cut.of - 1);
            }
            if (o != OtherwiseLaid{id}) m_whole.otherwise.push_back(o);
        }
    }

    JobOnCloth &m_whole;
    const std::vector<std::string> &m_set;
};

} // namespace

bool anyMotif(const Job &job) {
    return std::any_of(job.panels.begin(), job.panels.end(), [](const Panel &p) { return p.motif.has_value(); });
}

JobOnCloth onCloth(const Job &job, const AskCloth &ask) {
    JobOnCloth on;
    on.job = onlyCloth(job, job.cloths.front().id);
    Cloth &cloth = on.job.cloths.front();
    cloth = asked(cloth, ask);
    const auto sets = joinedByFlow(on.job);
    if (cloth.pattern && !anyMotif(on.job))
        for (const auto &set : sets) {
            // The first of those that the pattern joins leads; the others lie where it runs on to.
            const auto lead =
                std::find_if(set.begin(), set.end(), [&](const std::string &id) { return !on.job.panel(id)->hidden; });
            for (Panel &panel : on.job.panels)
                if (lead != set.end() && panel.id == *lead) panel.motif = MotifWish{};
        }
    for (Panel &panel : on.job.panels) fitMotif(panel, cloth);
    for (const auto &set : sets) SetOnCloth(on, set).lay();
    std::stable_sort(on.otherwise.begin(), on.otherwise.end(), [&](const OtherwiseLaid &a, const OtherwiseLaid &b) {
        return on.job.panel(a.panel) < on.job.panel(b.panel);
    });
    return on;
}

} // namespace boltwright
