#include "core/check/laid_cut.h"

#include <algorithm>
#include <cmath>

namespace boltwright::judge {

namespace {

Spot turnedBy(Spot p, Turn turn) {
    switch (turn) {
    case Turn::Deg0:
        return p;
    case Turn::Deg90:
        return {-p.y, p.x};
    case Turn::Deg180:
        return {-p.x, -p.y};
    case Turn::Deg270:
        return {p.y, -p.x};
    default:
        break;
    }
    const double half = std::sqrt(0.5);
    const double c = turn == Turn::Deg45 || turn == Turn::Deg315 ? half : -half;
    const double s = turn == Turn::Deg45 || turn == Turn::Deg135 ? half : -half;
    return {c * p.x - s * p.y, s * p.x + c * p.y};
}

Length lengthAt(const EdgeLengths &lengths, std::size_t edge, Length otherwise) {
    return edge < lengths.size() ? lengths[edge].value_or(otherwise) : otherwise;
}

/// Whether the cuts, sorted by piece, are one whole or the pieces 1 to n of n.
bool makeOneWhole(const std::vector<const Cut *> &cuts) {
    for (std::size_t k = 0; k < cuts.size(); ++k)
        if (cuts[k]->of != int(cuts.size()) || cuts[k]->piece != int(k) + 1) return false;
    return true;
}

/// Where the joins of a pieced copy lie for one of its pieces; none when it cannot be told.
std::optional<Share> shareOf(const Copy &copy, const Cut &cut, const Bounds &whole) {
    const Spot size = whole.high - whole.low;
    Share share{.upwards = size.y > size.x, .first = cut.piece == 1, .last = cut.piece == cut.of};
    share.from = share.upwards ? whole.low.y : whole.low.x;
    for (const Cut *piece : copy.cuts) {
        if (!piece->length) return std::nullopt;
        const int joins = (piece->piece > 1) + (piece->piece < piece->of);
        share.to = share.from + ticksOf(*piece->length) - joins * ticksOf(copy.panel->pieces.seam);
        if (piece == &cut) return share;
        share.from = share.to;
    }
    return std::nullopt;
}

Outline pieceOutline(const Share &share, Length seam, Bounds box) {
    const double low = share.from - (share.first ? 0 : ticksOf(seam));
    const double high = share.to + (share.last ? 0 : ticksOf(seam));
    (share.upwards ? box.low.y : box.low.x) = low;
    (share.upwards ? box.high.y : box.high.x) = high;
    return {box.low, {box.high.x, box.low.y}, box.high, {box.low.x, box.high.y}};
}

/// Turns the outline and moves it so that its bounding box begins where the cut says.
void place(LaidCut &laid, const Outline &onPanel) {
    laid.moved = {};
    Outline turned;
    for (const Spot p : onPanel) turned.push_back(laid.turned(p));
    laid.moved = Spot{ticksOf(laid.cut->x), ticksOf(laid.cut->y)} - boundsOf(turned).low;
    for (const Spot p : turned) laid.outline.push_back(p + laid.moved);
    if (laid.cut->mirrored) std::reverse(laid.outline.begin(), laid.outline.end());
    laid.bounds = boundsOf(laid.outline);
}

const Remnant *remnantOf(const Cloth &cloth, const std::string &id) {
    for (const Remnant &remnant : cloth.remnants)
        if (remnant.id == id) return &remnant;
    return nullptr;
}

std::optional<LaidCut> laidCut(const Scene &scene, const Cut &cut) {
    LaidCut laid;
    laid.cut = &cut;
    laid.panel = scene.panel(cut.panel);
    laid.cloth = scene.clothOf(cut);
    if (!laid.panel || !laid.cloth) return std::nullopt;
    if (cut.on) laid.remnant = remnantOf(*laid.cloth, *cut.on);
    if (laid.cloth->bolt ? cut.on.has_value() : !laid.remnant) return std::nullopt;
    laid.grid = motifGridOn(*laid.cloth, cut.on);
    laid.measured = measuredCorners(laid.panel->shape);
    Outline outline = wholeCutOutline(*laid.panel, cut);
    if (cut.of > 1) {
        const Copy &copy = scene.copies.at({cut.panel, cut.copy});
        if (!copy.whole || !std::holds_alternative<Rectangle>(laid.panel->shape)) return std::nullopt;
        laid.share = shareOf(copy, cut, boundsOf(outline));
        if (!laid.share) return std::nullopt;
        outline = pieceOutline(*laid.share, laid.panel->pieces.seam, boundsOf(outline));
    } else if (crossesItself(outline)) {
        return std::nullopt;
    }
    place(laid, outline);
    return laid;
}

} // namespace

Spot LaidCut::turned(Spot p) const { return turnedBy(cut->mirrored ? Spot{-p.x, p.y} : p, cut->turn); }

bool LaidCut::holds(Spot p) const {
    if (!share) return true;
    const double at = share->upwards ? p.y : p.x;
    return (share->first || share->from - placeTolerance <= at) && (share->last || at < share->to - placeTolerance);
}

Scene::Scene(const Job &theJob, const Layout &theLayout) : job(theJob), layout(theLayout) {
    for (const Panel &each : job.panels) panels.emplace(each.id, &each);
    for (const Cloth &each : job.cloths) cloths.emplace(each.id, &each);
    for (const Cut &cut : layout.cuts)
        if (const Panel *known = panel(cut.panel)) {
            Copy &copy = copies[{cut.panel, cut.copy}];
            copy.panel = known;
            copy.number = cut.copy;
            copy.cuts.push_back(&cut);
        }
    for (auto &[key, copy] : copies) {
        std::stable_sort(copy.cuts.begin(), copy.cuts.end(), [](auto *a, auto *b) { return a->piece < b->piece; });
        copy.whole = makeOneWhole(copy.cuts);
    }
    for (const Cut &cut : layout.cuts)
        if (auto one = laidCut(*this, cut)) laid.push_back(std::move(*one));
}

const Panel *Scene::panel(const std::string &id) const {
    const auto it = panels.find(id);
    return it == panels.end() ? nullptr : it->second;
}

const Cloth *Scene::cloth(const std::string &id) const {
    const auto it = cloths.find(id);
    return it == cloths.end() ? nullptr : it->second;
}

const Cloth *Scene::homeOf(const Panel &panel) const {
    if (panel.cloth) return cloth(*panel.cloth);
    return job.cloths.empty() ? nullptr : &job.cloths.front();
}

const Cloth *Scene::clothOf(const Cut &cut) const {
    if (cut.cloth) return cloth(*cut.cloth);
    const Panel *known = panel(cut.panel);
    return known ? homeOf(*known) : nullptr;
}

bool Scene::concedes(Concession::Kind kind, const std::string &panel, int copy) const {
    return std::any_of(layout.conceded.begin(), layout.conceded.end(),
                       [&](const Concession &c) { return c.kind == kind && c.panel == panel && c.copy == copy; });
}

bool Scene::offCentre(const LaidCut &one) const {
    return one.panel->may.uncentre && concedes(Concession::Kind::Uncentre, one.cut->panel, one.cut->copy);
}

Outline measuredCorners(const Shape &shape) {
    if (const auto *r = std::get_if<Rectangle>(&shape)) {
        const double across = ticksOf(r->across), up = ticksOf(r->up);
        return {{0, 0}, {across, 0}, {across, up}, {0, up}};
    }
    if (const auto *t = std::get_if<Trapezoid>(&shape)) {
        const double bottom = ticksOf(t->bottom), top = ticksOf(t->top), up = ticksOf(t->up);
        // Corners are whole ticks: half a tick goes away from zero, as everywhere.
        const double left = std::round((bottom - top) / 2 + ticksOf(t->shift));
        return {{0, 0}, {bottom, 0}, {left + top, up}, {left, up}};
    }
    Outline corners;
    for (const PanelPoint &p : std::get<PolygonShape>(shape).points) corners.push_back(spotOf(p));
    return corners;
}

Spot middleOf(const Outline &measured, std::size_t edge) {
    return 0.5 * (measured[edge] + measured[(edge + 1) % measured.size()]);
}

Spot motifPointOf(const Panel &panel, const Outline &measured) {
    if (panel.motif && panel.motif->at) return spotOf(*panel.motif->at);
    if (std::holds_alternative<PolygonShape>(panel.shape)) {
        const Bounds box = boundsOf(measured);
        return 0.5 * (box.low + box.high);
    }
    return 0.5 * (middleOf(measured, Bottom) + middleOf(measured, Top));
}

Length preferredAllowance(const Panel &panel, std::size_t edge) { return lengthAt(panel.allow, edge, Length{}); }

Length leastAllowanceOf(const Panel &panel, std::size_t edge) {
    return lengthAt(panel.allowMin, edge, preferredAllowance(panel, edge));
}

Length allowanceLeft(const Panel &panel, const Cut &cut, std::size_t edge) {
    return lengthAt(cut.allow, edge, preferredAllowance(panel, edge));
}

Outline wholeCutOutline(const Panel &panel, const Cut &cut) {
    const Outline measured = measuredCorners(panel.shape);
    std::vector<double> allowances;
    for (std::size_t edge = 0; edge < measured.size(); ++edge)
        allowances.push_back(ticksOf(allowanceLeft(panel, cut, edge)));
    return withEdgesMoved(measured, allowances);
}

bool eitherAllows(const Cloth &cloth, Turn turn) {
    return turn == Turn::Deg0 || turn == Turn::Deg90 ||
           (cloth.way == Way::Two && (turn == Turn::Deg180 || turn == Turn::Deg270));
}

bool runAllows(const Panel &panel, const Cloth &cloth, Turn turn) {
    const bool twoWay = cloth.way == Way::Two;
    switch (panel.run.value_or(cloth.up == PatternUp::Across ? Run::Railroad : Run::UpRoll)) {
    case Run::UpRoll:
        return turn == Turn::Deg0 || (twoWay && turn == Turn::Deg180);
    case Run::DownRoll:
        return turn == Turn::Deg180 || (twoWay && turn == Turn::Deg0);
    case Run::Railroad:
        return turn == Turn::Deg90 || (twoWay && turn == Turn::Deg270);
    case Run::Either:
        return eitherAllows(cloth, turn);
    case Run::Bias:
        return turn == Turn::Deg45 || turn == Turn::Deg315 ||
               (twoWay && (turn == Turn::Deg135 || turn == Turn::Deg225));
    }
    return false;
}

} // namespace boltwright::judge
