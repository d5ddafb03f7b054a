#include "core/paper/drawing.h"

#include <algorithm>
#include <cmath>

namespace boltwright {
namespace {

std::int64_t firstAtOrAbove(Length from, Length origin, Length step) {
    const std::int64_t d = (from - origin).ticks(), s = step.ticks();
    return d / s + (d % s > 0 ? 1 : 0);
}

ClothPoint onLevel(ClothPoint a, ClothPoint b, Length y) {
    if (a.y > b.y) std::swap(a, b); // the same point whichever way round the edge is told
    return {a.x + Length::ticks(roundedQuotient((b.x - a.x).ticks() * (y - a.y).ticks(), (b.y - a.y).ticks())), y};
}

ClothRing keptAbove(const ClothRing &ring, Length level, bool above) {
    auto inside = [&](ClothPoint p) { return above ? p.y >= level : p.y <= level; };
    ClothRing out;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const ClothPoint a = ring[i], b = ring[(i + 1) % ring.size()];
        if (inside(a)) out.push_back(a);
        if (inside(a) != inside(b)) out.push_back(onLevel(a, b, level));
    }
    return out;
}

} // namespace

PatternMarks patternMarks(const Lattice &lattice, const ClothBox &shown, Length least) {
    PatternMarks marks;
    const ClothPoint m = lattice.motif();
    const bool across = lattice.repeatsAcross() && lattice.across() >= least;
    const bool along = lattice.repeatsAlong() && lattice.along() >= least;
    if ((lattice.repeatsAcross() && !across) || (lattice.repeatsAlong() && !along)) return marks;
    if (across)
        for (std::int64_t i = firstAtOrAbove(shown.low.x, m.x, lattice.across());
             m.x + lattice.across() * i <= shown.high.x; ++i) {
            const Length x = m.x + lattice.across() * i;
            marks.lines.push_back({{x, shown.low.y}, {x, shown.high.y}});
            if (!along) continue;
            const Length foot = m.y + lattice.rise(i);
            for (std::int64_t j = firstAtOrAbove(shown.low.y, foot, lattice.along());
                 foot + lattice.along() * j <= shown.high.y; ++j)
                marks.motifs.push_back({x, foot + lattice.along() * j});
        }
    if (along && (!across || lattice.dropNumerator() == 0))
        for (std::int64_t j = firstAtOrAbove(shown.low.y, m.y, lattice.along());
             m.y + lattice.along() * j <= shown.high.y; ++j)
            marks.lines.push_back(
                {{shown.low.x, m.y + lattice.along() * j}, {shown.high.x, m.y + lattice.along() * j}});
    return marks;
}

ClothRing clippedAlong(const ClothRing &ring, Length from, Length to) {
    return keptAbove(keptAbove(ring, from, true), to, false);
}

std::optional<ClothLine> clippedAlong(const ClothLine &line, Length from, Length to) {
    ClothPoint a = line.from, b = line.to;
    if (std::max(a.y, b.y) < from || std::min(a.y, b.y) > to) return std::nullopt;
    for (ClothPoint *p : {&a, &b}) {
        if (p->y < from) *p = onLevel(line.from, line.to, from);
        if (p->y > to) *p = onLevel(line.from, line.to, to);
    }
    return ClothLine{a, b};
}

std::vector<ClothLine> edgesAlong(const ClothRing &ring, Length from, Length to) {
    std::vector<ClothLine> edges;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const auto edge = clippedAlong(ClothLine{ring[i], ring[(i + 1) % ring.size()]}, from, to);
        if (edge && edge->from != edge->to) edges.push_back(*edge);
    }
    return edges;
}

std::optional<ClothPoint> edgeMet(const ClothRing &ring, ClothPoint from, Vector direction) {
    const double length = std::hypot(double(direction.x.ticks()), double(direction.y.ticks()));
    const double ux = double(direction.x.ticks()) / length, uy = double(direction.y.ticks()) / length;
    std::optional<double> nearest;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Vector a = ring[i] - from, edge = ring[(i + 1) % ring.size()] - ring[i];
        const double ax = double(a.x.ticks()), ay = double(a.y.ticks());
        const double ex = double(edge.x.ticks()), ey = double(edge.y.ticks());
        const double across = ux * ey - uy * ex;
        if (across == 0) continue;
        const double way = (ax * ey - ay * ex) / across;   // how far from `from`
        const double share = (ax * uy - ay * ux) / across; // where on the edge
        if (way > 0 && share >= 0 && share <= 1 && (!nearest || way < *nearest)) nearest = way;
    }
    if (!nearest) return std::nullopt;
    return from + Vector{Length::ticks(std::llround(*nearest * ux)), Length::ticks(std::llround(*nearest * uy))};
}

TopWedge topWedge(const SheetCut &cut, ClothPoint middle, Length size) {
    const ClothPoint tip = edgeMet(cut.outline, middle, cut.up).value_or(middle);
    const double length = std::hypot(double(cut.up.x.ticks()), double(cut.up.y.ticks()));
    const double ux = double(cut.up.x.ticks()) / length, uy = double(cut.up.y.ticks()) / length;
    const double back = double(size.ticks()), half = back * 0.6;
    auto foot = [&](double aside) {
        return tip + Vector{Length::ticks(std::llround(-back * ux - aside * uy)),
                            Length::ticks(std::llround(-back * uy + aside * ux))};
    };
    return {tip, foot(half), foot(-half)};
}

std::vector<ClothLine> centrelines(const Job &job, const Layout &layout, const SheetCut &cut) {
    std::vector<ClothLine> lines;
    if (!cut.motif) return lines;
    const Panel &panel = *job.panel(layout.cuts[std::size_t(cut.cut)].panel);
    auto through = [&](Vector direction) {
        const auto one = edgeMet(cut.outline, *cut.motif, direction),
                   two = edgeMet(cut.outline, *cut.motif, -direction);
        if (one && two) lines.push_back({*two, *one});
    };
    if (panel.motif->centre != Centre::Up) through(cut.up);
    if (panel.motif->centre != Centre::Across) through({-cut.up.y, cut.up.x});
    return lines;
}

} // namespace boltwright
