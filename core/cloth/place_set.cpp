#include "core/cloth/place_set.h"

#include "core/base/ensure.h"

#include <algorithm>

namespace boltwright {
namespace {

std::int64_t floorQuotient(std::int64_t a, std::int64_t b) { return a / b - (a % b < 0 ? 1 : 0); }

/// Where column of x lies in y: the residue that its places have, in [0, yStep).
Length columnOffset(const PlaceSet &s, Length x) {
    if (!s.dropped()) return {};
    const std::int64_t column = roundedQuotient((x - s.x0).ticks(), s.xStep.ticks());
    std::int64_t part = (column % s.riseDenominator) * s.riseNumerator % s.riseDenominator;
    if (part < 0) part += s.riseDenominator;
    return Length::ticks(roundedQuotient(part * s.yStep.ticks(), s.riseDenominator));
}

/// The j-th place of y = first + j·yStep/yDivide, rounded.
Length yAt(const PlaceSet &s, Length first, std::int64_t j) {
    const std::int64_t whole = floorQuotient(j, s.yDivide), part = j - whole * s.yDivide;
    return first + s.yStep * whole + Length::ticks(roundedQuotient(part * s.yStep.ticks(), s.yDivide));
}

/// How far two residues of one step lie apart.
Length apart(Length a, Length b, Length step) {
    const Length d = modulo(a - b, step);
    return std::min(d, step - d);
}

} // namespace

PlaceSet PlaceSet::ofMotifs(const Lattice &lattice, bool x, bool y) {
    PlaceSet s;
    x = x && lattice.repeatsAcross();
    y = y && lattice.repeatsAlong();
    if (x) {
        s.xStep = lattice.across();
        s.x0 = lattice.motif().x;
    }
    if (y) {
        s.yStep = lattice.along();
        s.y0 = lattice.motif().y;
    }
    if (x && y) {
        s.riseNumerator = lattice.dropNumerator();
        s.riseDenominator = lattice.dropDenominator();
    } else if (y) {
        s.yDivide = lattice.dropDenominator();
    }
    return s;
}

PlaceSet PlaceSet::inPhaseWith(const Lattice &lattice, ClothPoint at) {
    return ofMotifs(lattice, true, true).movedBy(at - lattice.motif());
}

Length PlaceSet::nextX(Length from) const { return freeX() ? from : from + modulo(x0 - from, xStep); }
Length PlaceSet::previousX(Length from) const { return freeX() ? from : from - modulo(from - x0, xStep); }

Length PlaceSet::nextY(Length x, Length from) const {
    if (freeY()) return from;
    const Length first = y0 + columnOffset(*this, x);
    // An estimate, then a step up where rounding put it below.
    std::int64_t j = floorQuotient((from - first).ticks() * yDivide, yStep.ticks()) - 1;
    while (yAt(*this, first, j) < from) ++j;
    return yAt(*this, first, j);
}

Length PlaceSet::previousY(Length x, Length from) const {
    if (freeY()) return from;
    const Length first = y0 + columnOffset(*this, x);
    std::int64_t j = floorQuotient((from - first).ticks() * yDivide, yStep.ticks()) + 2;
    while (yAt(*this, first, j) > from) --j;
    return yAt(*this, first, j);
}

bool PlaceSet::holds(ClothPoint p, Length tolerance) const {
    Length x = p.x;
    if (!freeX()) {
        const Length low = previousX(p.x), high = nextX(p.x);
        x = p.x - low <= high - p.x ? low : high;
        if (abs(p.x - x) > tolerance) return false;
    }
    if (freeY()) return true;
    return std::min(p.y - previousY(x, p.y), nextY(x, p.y) - p.y) <= tolerance;
}

ClothPoint PlaceSet::nearest(ClothPoint p) const {
    auto inColumn = [&](Length x) {
        const Length low = previousY(x, p.y), high = nextY(x, p.y);
        return ClothPoint{x, p.y - low <= high - p.y ? low : high};
    };
    auto distance = [&](ClothPoint q) { return dot(q - p, q - p); };
    if (freeX()) return inColumn(p.x);
    ClothPoint best = inColumn(previousX(p.x));
    // With a drop, a column further off may hold a nearer motif; none beyond what the best so far is away.
    const std::int64_t reach = dropped() ? riseDenominator : 1;
    for (std::int64_t k = -reach; k <= reach; ++k) {
        const ClothPoint q = inColumn(previousX(p.x) + xStep * k);
        const Area d = distance(q), b = distance(best);
        if (d < b || (d == b && (q.y < best.y || (q.y == best.y && q.x < best.x)))) best = q;
    }
    return best;
}

PlaceSet PlaceSet::movedBy(Vector v) const {
    PlaceSet s = *this;
    if (!freeX()) s.x0 += v.x;
    if (!freeY()) s.y0 += v.y;
    return s;
}

std::optional<PlaceSet> PlaceSet::common(const PlaceSet &a, const PlaceSet &b, Length tolerance) {
    // The one with the drop, or the finer wish of both, decides; the other only has to agree.
    if (b.dropped() && !a.dropped()) return common(b, a, tolerance);
    PlaceSet s = a;
    if (!b.freeX()) {
        if (a.freeX()) {
            s.xStep = b.xStep;
            s.x0 = b.x0;
        } else {
            ensure(a.xStep == b.xStep, "place sets of one lattice share their step across");
            if (apart(a.x0, b.x0, a.xStep) > tolerance) return std::nullopt;
        }
    }
    if (b.freeY()) return s;
    if (a.freeY()) {
        s.yStep = b.yStep;
        s.y0 = b.y0;
        s.yDivide = b.yDivide;
        s.riseNumerator = b.riseNumerator;
        s.riseDenominator = b.riseDenominator;
        return s;
    }
    ensure(a.yStep == b.yStep, "place sets of one lattice share their step along");
    if (a.dropped() && b.dropped()) {
        // Both hold every motif of one lattice: they are the same or have nothing in common.
        if (!b.holds({a.x0, a.y0}, tolerance)) return std::nullopt;
        return s;
    }
    // The level of one motif in b's finer rows, or the other way round.
    const PlaceSet &finer = a.yDivide >= b.yDivide ? a : b;
    const PlaceSet &coarser = a.yDivide >= b.yDivide ? b : a;
    if (finer.yDivide % coarser.yDivide != 0 && finer.yDivide != coarser.yDivide) return std::nullopt;
    if (a.dropped()) {
        // b asks only for a level: all columns of a lie on it, or none.
        PlaceSet rows = b;
        rows.xStep = {};
        return rows.holds({a.x0, a.y0}, tolerance) ? std::optional{s} : std::nullopt;
    }
    PlaceSet rows = finer;
    rows.xStep = {};
    if (!rows.holds({{}, coarser.y0}, tolerance)) return std::nullopt;
    s.y0 = coarser.y0;
    s.yDivide = coarser.yDivide;
    return s;
}

} // namespace boltwright
