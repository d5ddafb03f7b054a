#include "core/forms/panels_from.h"

#include "core/base/language.h"
#include "core/trimmings/cushion.h"
#include "core/trimmings/skirt.h"
#include "core/trimmings/tufting.h"

#include <algorithm>
#include <tuple>

namespace boltwright {
namespace {

constexpr std::array<int, 4> edgeOrder = {Bottom, Right, Top, Left};

class Maker {
public:
    Maker(const PieceForm &form, const FormMeasures &measures, const TradeRules &rules, const Cloth &cloth)
        : m_form(form), m_measures(measures), m_rules(rules), m_patterned(cloth.pattern.has_value()) {
        if (!cloth.pattern) return;
        const bool up = cloth.up == PatternUp::Roll;
        m_repeatsAcross = (up ? cloth.pattern->across : cloth.pattern->along).has_value();
        m_repeatsUp = (up ? cloth.pattern->along : cloth.pattern->across).has_value();
    }

    FormPanels make() {
        for (const FormPart &part : m_form.parts) {
            const auto measured = m_measures.find(part.id);
            if (measured != m_measures.end() && measured->second.there) addPart(part, measured->second);
        }
        if (m_patterned)
            for (const FormFlow &flow : m_form.flows) addFlow(flow);
        return std::move(m_out);
    }

private:
    /// The panel with all that does not depend on its shape.
    Panel begun(const FormPart &part, const std::string &ending, const std::string &nameEnding, int count) const {
        Panel panel;
        panel.id = part.id + ending;
        panel.mark = part.mark;
        panel.name = part.name + nameEnding;
        panel.count = count;
        panel.hidden = part.hidden;
        if (part.hidden) {
            panel.may.turn = true;
            panel.may.otherCloth.any = true;
        }
        return panel;
    }

    void giveEdges(Panel &panel, const std::array<EdgeKind, 4> &edges) const {
        panel.allow.resize(4);
        panel.allowMin.resize(4);
        for (int e : edgeOrder) {
            const EdgeKind kind = edges[std::size_t(e)];
            const Length full = allowanceFor(kind, m_rules), least = leastAllowanceFor(kind, m_rules);
            panel.allow[std::size_t(e)] = full;
            if (least < full) panel.allowMin[std::size_t(e)] = least;
            if (mayTakeStretcher(kind)) panel.may.stretcher[e] = m_rules.seam;
        }
    }

    void giveMotif(Panel &panel, const FormPart &part, bool wanted) const {
        if (!m_patterned) return;
        if (part.motif && wanted)
            if (const auto centre = asFarAsItRepeats(*part.motif)) panel.motif = MotifWish{*centre, {}, {}};
        panel.alike = part.alike;
    }

    std::optional<Centre> asFarAsItRepeats(Centre wish) const {
        const bool across = wish != Centre::Up && m_repeatsAcross, up = wish != Centre::Across && m_repeatsUp;
        if (across && up) return Centre::Both;
        if (across) return Centre::Across;
        return up ? std::optional(Centre::Up) : std::nullopt;
    }

    /// `seen`: the pattern runs on over the joins, and they lie the same on both sides of the middle.
    void givePieces(Panel &panel, int most, bool seen) const {
        if (most == 1) return;
        panel.pieces.most = most;
        panel.pieces.seam = m_rules.seam;
        panel.pieces.shortest = m_rules.nosing; // a narrower piece beside a join looks like a mistake
        panel.pieces.where = seen ? Pieces::Where::Balanced : Pieces::Where::Any;
        panel.pieces.match = m_patterned && seen;
    }

    Shape shapeOf(const FormPart &part, const Sizes &sizes) const {
        const Length across = sizes[Measure::Across], up = sizes[Measure::Up];
        if (part.kind == PartKind::Trapezoid) return Trapezoid{across, sizes[Measure::Top], up, {}};
        if (part.kind != PartKind::OnPoint) return Rectangle{across, up};
        const Length middle = Length::ticks(across.ticks() / 2), half = Length::ticks(up.ticks() / 2);
        return PolygonShape{{{middle, {}}, {across, half}, {middle, up}, {{}, half}}};
    }

    void addPart(const FormPart &part, const PartMeasured &measured) {
        for (const PartMeasure &p : part.measures)
            if (measured.sizes[p.measure] <= Length{}) return;
        switch (part.kind) {
        case PartKind::Rectangle:
        case PartKind::Trapezoid:
        case PartKind::OnPoint:
            return addPlain(part, measured);
        case PartKind::BoxCushion:
            return addBoxCushion(part, measured);
        case PartKind::KnifeEdge:
            return addKnifeEdge(part, measured);
        case PartKind::KickSkirt:
            return addKickSkirt(part, measured);
        case PartKind::FlatSkirt:
            return addSkirt(part, measured, {1, 1});
        case PartKind::BoxPleatSkirt:
            return addSkirt(part, measured, m_rules.boxPleated);
        case PartKind::GatheredSkirt:
            return addSkirt(part, measured, m_rules.gathered);
        }
    }

    void addPlain(const FormPart &part, const PartMeasured &measured) {
        const bool pair = part.mirror && measured.twin && measured.count == 2;
        const Sizes sizes = withRelief(measured.sizes, measured.relief);
        if (!pair) return addShaped(part, "", "", sizes, measured.count, part.edges, measured.motif);
        auto right = part.edges;
        std::swap(right[Left], right[Right]);
        addShaped(part, "-left", phrase(", left"), sizes, 1, part.edges, measured.motif);
        addShaped(part, "-right", phrase(", right"), withRelief(*measured.twin, measured.relief), 1, right,
                  measured.twinMotif);
    }

    /// The cloth over tufts or channels that were measured flat. Channels run up and down, so they add to the width
    /// alone.
    static Sizes withRelief(Sizes sizes, const std::optional<Relief> &relief) {
        if (!relief || relief->spacing <= Length{} || relief->depth <= Length{}) return sizes;
        const auto over = [&](Length flat) {
            return relief->channels ? channelledLength(flat, relief->spacing, relief->depth)
                                    : tuftedLength(flat, relief->spacing, relief->depth);
        };
        for (Measure m : {Measure::Across, Measure::Top}) sizes[m] = over(sizes[m]);
        if (!relief->channels) sizes[Measure::Up] = over(sizes[Measure::Up]);
        return sizes;
    }

    void addShaped(const FormPart &part, const std::string &ending, const std::string &nameEnding, const Sizes &sizes,
                   int count, const std::array<EdgeKind, 4> &edges, bool motif) {
        Panel panel = begun(part, ending, nameEnding, count);
        panel.shape = shapeOf(part, sizes);
        panel.mirror = part.mirror && count > 1;
        giveEdges(panel, edges);
        roundUp(panel, edges);
        giveMotif(panel, part, motif);
        givePieces(panel, part.mostPieces, !part.hidden);
        add(std::move(panel));
    }

    /// A cut size goes up to the next step, so that it can be chalked: what is over goes to an edge that is pulled and
    /// trimmed on the piece. A part that is sewn on both sides keeps its size; it has to meet the next.
    void roundUp(Panel &panel, const std::array<EdgeKind, 4> &edges) const {
        const auto *rectangle = std::get_if<Rectangle>(&panel.shape);
        if (!rectangle || m_rules.cuttingStep <= Length{}) return;
        const auto isFree = [&](int e) {
            const EdgeKind kind = edges[std::size_t(e)];
            return kind == EdgeKind::Pull || kind == EdgeKind::SeatTack || kind == EdgeKind::TuckIn;
        };
        for (const auto &[measured, one, other] :
             {std::tuple{rectangle->across, int(Right), int(Left)}, std::tuple{rectangle->up, int(Bottom), int(Top)}}) {
            if (!isFree(one) && !isFree(other)) continue;
            const Length cut = measured + panel.allowance(one) + panel.allowance(other);
            Length &added = *panel.allow[std::size_t(isFree(one) ? one : other)];
            added += roundedUp(cut, m_rules.cuttingStep) - cut;
        }
    }

    /// Pieces that the parts of a cushion may be made of.
    static constexpr int longCushion = 3;
    static constexpr std::array<EdgeKind, 4> seams = {EdgeKind::Seam, EdgeKind::Seam, EdgeKind::Seam, EdgeKind::Seam};

    void addBoxCushion(const FormPart &part, const PartMeasured &measured) {
        const Sizes &s = measured.sizes;
        const Cushion cushion{s[Measure::Across] + m_rules.cushionOversize, s[Measure::Up] + m_rules.cushionOversize,
                              s[Measure::Thickness]};
        TradeRules rules = m_rules;
        rules.cushionOversize = {};
        const BoxCushionCuts cuts = boxCushion(cushion, rules);
        const int n = measured.count;

        Panel top = begun(part, "", "", n);
        top.shape = Rectangle{cushion.width, cushion.depth};
        giveEdges(top, part.edges);
        giveMotif(top, part, measured.motif);
        givePieces(top, longCushion, true); // cloth that is too narrow gets a seam (T6.14)
        add(top);
        Panel under = begun(part, "-under", phrase(", underside"), n);
        under.shape = top.shape;
        giveEdges(under, part.edges);
        under.may.otherCloth.any = true;
        givePieces(under, longCushion, false);
        add(std::move(under));

        Panel front = begun(part, "-front", phrase(", boxing front"), n);
        front.shape = Rectangle{cushion.width, cushion.thickness};
        giveEdges(front, seams);
        givePieces(front, longCushion, true);
        // The plate's motif is level with the front's, whether or not the pattern runs on.
        if (top.motif && top.motif->centre != Centre::Up) front.motif = MotifWish{Centre::Across, {}, {}};
        add(std::move(front));
        // The rest of the lapped boxing: both sides, each as long as the cushion is deep.
        Panel side = begun(part, "-side", phrase(", boxing side"), 2 * n);
        side.shape = Rectangle{cushion.depth, cushion.thickness};
        giveEdges(side, seams);
        givePieces(side, longCushion, false);
        add(std::move(side));

        Panel zip = begun(part, "-zip", phrase(", zipper band"), 2 * n);
        zip.shape = Rectangle{cuts.zipBand.across, timesUp(cushion.thickness, {1, 2})};
        zip.allow = {m_rules.zipTurning, std::nullopt, m_rules.seam, std::nullopt};
        zip.may.turn = true;
        givePieces(zip, longCushion, false);
        add(std::move(zip));
    }

    void addKnifeEdge(const FormPart &part, const PartMeasured &measured) {
        const Length across = measured.sizes[Measure::Across], up = measured.sizes[Measure::Up];
        const CutSize cut = knifeEdgeCushion({across, up, {}}, m_rules);
        Panel plate = begun(part, "", "", cut.count * measured.count);
        plate.shape = Rectangle{across, up};
        // What a knife edge adds is divided between both sides.
        const Length wide = cut.across - across, high = cut.up - up;
        const Length left = timesDown(wide, {1, 2}), bottom = timesDown(high, {1, 2});
        plate.allow = {bottom, wide - left, high - bottom, left};
        giveMotif(plate, part, measured.motif);
        add(std::move(plate));
    }

    void addKickSkirt(const FormPart &part, const PartMeasured &measured) {
        const Length height = measured.sizes[Measure::Up];
        const auto panel = [&](const char *ending, const std::string &name, Length across, Length atEnds, int count) {
            Panel p = begun(part, ending, name, count);
            // Lined with itself: the fold lies along the middle.
            p.shape = Rectangle{across, height * 2};
            p.allow = {m_rules.seam, atEnds, m_rules.seam, atEnds};
            givePieces(p, part.mostPieces, true);
            p.pieces.match = false; // the fold runs along the pieces; what is matched is the face alone
            add(std::move(p));
        };
        panel("-front", phrase(", front and back"), measured.sizes[Measure::Across], m_rules.kickReturn,
              2 * measured.count);
        panel("-side", phrase(", side"), measured.sizes[Measure::Side], m_rules.kickReturn, 2 * measured.count);
        panel("-underlay", phrase(", pleat underlay"), m_rules.kickUnderlay, {}, 4 * measured.count);
    }

    /// Front and back, and both sides, each as wide as its fullness makes it: hemmed below, seams elsewhere.
    void addSkirt(const FormPart &part, const PartMeasured &measured, Ratio fullness) {
        const auto panel = [&](const char *ending, const std::string &name, Length along) {
            Panel p = begun(part, ending, name, 2 * measured.count);
            p.shape = Rectangle{timesUp(along, fullness), measured.sizes[Measure::Up]};
            p.allow = {m_rules.skirtHem, m_rules.seam, m_rules.seam, m_rules.seam};
            const std::int64_t widths = 2 + timesNeeded(timesUp(along, fullness), m_rules.nosing * 9);
            givePieces(p, int(std::max<std::int64_t>(widths, part.mostPieces)), false);
            add(std::move(p));
        };
        panel("-front", phrase(", front and back"), measured.sizes[Measure::Across]);
        panel("-side", phrase(", side"), measured.sizes[Measure::Side]);
    }

    void add(Panel panel) { m_out.panels.push_back(std::move(panel)); }

    /// A part's own panel; of a pair with measures of their own, both.
    std::vector<const Panel *> panelsOf(const std::string &id) const {
        std::vector<const Panel *> found;
        for (const char *ending : {"", "-left", "-right"})
            for (const Panel &panel : m_out.panels)
                if (panel.id == id + ending) found.push_back(&panel);
        return found;
    }

    void addFlow(const FormFlow &flow) {
        for (const Panel *from : panelsOf(flow.from))
            for (const Panel *to : panelsOf(flow.to)) addFlowBetween(flow, *from, *to);
    }

    void addFlowBetween(const FormFlow &flow, const Panel &from, const Panel &to) {
        const Flow plain{{from.id, flow.edge, {}, {}}, {to.id, flow.edgeTo, {}, {}}, {}, {}};
        if (from.count == 1 && to.count > 1) return addShares(plain, from, to, true);
        if (to.count == 1 && from.count > 1) return addShares(plain, to, from, false);
        m_out.flows.push_back(plain);
    }

    static Length edgeAcross(const Panel &panel, int edge) {
        const PanelRing ring = measuredOutline(panel.shape);
        return abs(ring[std::size_t(edge)].x - ring[(std::size_t(edge) + 1) % ring.size()].x);
    }

    /// Several copies lie side by side along the middle of the one's edge, each as wide as it is.
    void addShares(Flow flow, const Panel &one, const Panel &others, bool oneIsFrom) {
        FlowEnd &single = oneIsFrom ? flow.from : flow.to;
        FlowEnd &several = oneIsFrom ? flow.to : flow.from;
        const PanelPoint middle = middleOfEdge(one.shape, *single.edge);
        const int count = others.count;
        const Length width = edgeAcross(others, *several.edge),
                     share = timesDown(edgeAcross(one, *single.edge), {1, count});
        const Length pitch = std::min(width, share);
        for (int k = 1; k <= count; ++k) {
            // From the left: k - (count + 1)/2 widths from the middle, in halves so that it is exact.
            const Length aside = Length::ticks(roundedQuotient(pitch.ticks() * (2 * k - count - 1), 2));
            single.at = middle + Vector{aside, {}};
            single.copy = 1;
            several.copy = k;
            m_out.flows.push_back(flow);
        }
    }

    const PieceForm &m_form;
    const FormMeasures &m_measures;
    const TradeRules &m_rules;
    bool m_patterned;
    bool m_repeatsAcross = false, m_repeatsUp = false; ///< as the panels are seen
    FormPanels m_out;
};

} // namespace

FormPanels panelsFrom(const PieceForm &form, const FormMeasures &measures, const TradeRules &rules,
                      const Cloth &cloth) {
    return Maker(form, measures, rules, cloth).make();
}

} // namespace boltwright
