#include "core/rules/cut_shape.h"

#include "core/base/ensure.h"

#include <algorithm>

namespace boltwright {
namespace {

Length extentAlong(const PanelBox &box, bool sideToSide) { return sideToSide ? box.width() : box.height(); }

/// The other pieces of the same copy, in order of piece.
std::vector<const Cut *> matesOf(const Cut &cut, const Layout &layout) {
    std::vector<const Cut *> mates;
    for (const Cut &c : layout.cuts)
        if (c.panel == cut.panel && c.copy == cut.copy) mates.push_back(&c);
    std::stable_sort(mates.begin(), mates.end(), [](const Cut *a, const Cut *b) { return a->piece < b->piece; });
    return mates;
}

} // namespace

std::vector<Length> allowancesOf(const Panel &panel, const Cut &cut) {
    std::vector<Length> allowances = preferredAllowances(panel);
    for (std::size_t i = 0; i < allowances.size() && i < cut.allow.size(); ++i)
        if (cut.allow[i]) allowances[i] = *cut.allow[i];
    return allowances;
}

bool PieceSpan::holds(PanelPoint p) const {
    const Length at = sideToSide ? p.x : p.y;
    return (first || from <= at) && (last || at < to);
}

PieceSpan spanOf(const Panel &panel, const Cut &cut, const Layout &layout) {
    const PanelBox whole = boxOf(cutOutline(panel.shape, allowancesOf(panel, cut)));
    PieceSpan span;
    span.sideToSide = whole.width() >= whole.height();
    span.from = span.sideToSide ? whole.low.x : whole.low.y;
    span.to = span.from + extentAlong(whole, span.sideToSide);
    if (cut.of <= 1) return span;
    const Length seam = panel.pieces.seam;
    Length at = span.from;
    for (const Cut *mate : matesOf(cut, layout)) {
        const int joins = (mate->piece > 1) + (mate->piece < mate->of);
        const Length net = mate->length.value_or(Length{}) - seam * joins;
        if (mate->piece == cut.piece) {
            span.from = at;
            span.to = at + net;
        }
        at += net;
    }
    span.first = cut.piece == 1;
    span.last = cut.piece == cut.of;
    if (!span.first) span.seamBefore = seam;
    if (!span.last) span.seamAfter = seam;
    return span;
}

PanelRing outlineOf(const Panel &panel, const Cut &cut, const Layout &layout) {
    PanelRing outline = cutOutline(panel.shape, allowancesOf(panel, cut));
    if (cut.of <= 1) return outline;
    const PieceSpan span = spanOf(panel, cut, layout);
    PanelBox box = boxOf(outline);
    (span.sideToSide ? box.low.x : box.low.y) = span.from - span.seamBefore;
    (span.sideToSide ? box.high.x : box.high.y) = span.to + span.seamAfter;
    return ringOf(box);
}

ClothPoint LaidCut::at(PanelPoint p) const { return Laying(outline, cut->turn, cut->mirrored, {cut->x, cut->y}).at(p); }

LaidCut lay(const Panel &panel, const Cut &cut, const Layout &layout) {
    LaidCut l;
    l.panel = &panel;
    l.cut = &cut;
    l.span = spanOf(panel, cut, layout);
    l.outline = outlineOf(panel, cut, layout);
    l.ring = counterClockwise(moved(laid(l.outline, cut.turn, cut.mirrored), Vector{cut.x, cut.y}));
    l.box = boxOf(l.ring);
    l.rectangle = isUprightRectangle(l.ring);
    return l;
}

std::vector<LaidCut> layAll(const Job &job, const Layout &layout) {
    std::vector<LaidCut> all;
    all.reserve(layout.cuts.size());
    for (const Cut &cut : layout.cuts) {
        const Panel *panel = job.panel(cut.panel);
        all.push_back(panel ? lay(*panel, cut, layout) : LaidCut{});
    }
    return all;
}

ClothRing roomOf(const Cloth &cloth, const std::optional<std::string> &on) {
    if (cloth.bolt) {
        const Bolt &bolt = *cloth.bolt;
        return ringOf(ClothBox{{cloth.selvage, bolt.square},
                               {bolt.width - cloth.selvage, bolt.length.value_or(Length::limit())}});
    }
    const Remnant *remnant = on ? cloth.remnant(*on) : nullptr;
    return remnant ? counterClockwise(remnant->outline) : ClothRing{};
}

const std::vector<Flaw> &flawsOn(const Cloth &cloth, const std::optional<std::string> &on) {
    static const std::vector<Flaw> none;
    if (cloth.bolt) return cloth.bolt->flaws;
    const Remnant *remnant = on ? cloth.remnant(*on) : nullptr;
    return remnant ? remnant->flaws : none;
}

const Markings &markingsOn(const Cloth &cloth, const std::optional<std::string> &on) {
    static const Markings none;
    if (cloth.bolt) return cloth.bolt->markings;
    const Remnant *remnant = on ? cloth.remnant(*on) : nullptr;
    return remnant ? remnant->markings : none;
}

} // namespace boltwright
