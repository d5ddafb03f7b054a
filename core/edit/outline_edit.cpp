#include "core/edit/outline_edit.h"

#include "core/geometry/distance.h"
#include "core/measure/length_text.h"

#include <algorithm>
#include <array>

namespace boltwright {
namespace {

using namespace literals;

/// The corners of a sixteen-sided polygon around the unit circle, first quarter, in ten-thousandths rounded up: cosine
/// and sine of 0, 22.5, 45 and 67.5 degrees over the cosine of 11.25, by which a corner stands out beyond its sides.
constexpr std::int64_t whole = 10000;
constexpr std::array<std::array<std::int64_t, 2>, 4> quarter{{{10196, 0}, {9420, 3902}, {7210, 7210}, {3902, 9420}}};

Length scaled(Length radius, std::int64_t by) {
    return Length::ticks(radius.ticks() * by / whole + (radius.ticks() * by % whole ? 1 : 0));
}

/// A point on the way from `from` to `to`, `length` along; to the nearest tick.
ClothPoint along(ClothPoint from, ClothPoint to, Length length, Length edge) {
    const auto share = [&](Length d) {
        return Length::ticks(roundedQuotient(d.ticks() * length.ticks(), edge.ticks()));
    };
    return from + Vector{share(to.x - from.x), share(to.y - from.y)};
}

Length lengthOf(Vector v) {
    // Upright edges, which most are, are exact.
    if (v.x == Length{}) return std::max(v.y, -v.y);
    if (v.y == Length{}) return std::max(v.x, -v.x);
    std::int64_t low = 0, high = std::abs(v.x.ticks()) + std::abs(v.y.ticks());
    const std::int64_t square = dot(v, v);
    while (low < high) {
        const std::int64_t mid = (low + high + 1) / 2;
        if (mid <= square / mid)
            low = mid;
        else
            high = mid - 1;
    }
    return Length::ticks(low);
}

} // namespace

Length wholeStep(Unit unit) { return unit == Unit::Inch ? 1_in : 1_cm; }

ClothPoint snapped(ClothPoint p, Length step) {
    if (step == Length{}) return p;
    const auto nearest = [&](Length l) {
        return Length::ticks(roundedQuotient(l.ticks(), step.ticks()) * step.ticks());
    };
    return {nearest(p.x), nearest(p.y)};
}

Length steppedTo(Length from, Length step, int by) {
    const std::int64_t s = step.ticks(), rest = ((from.ticks() % s) + s) % s;
    if (by > 0) return Length::ticks(from.ticks() - rest + s);
    return Length::ticks(rest ? from.ticks() - rest : from.ticks() - s);
}

std::optional<std::string> faultOfOutline(const ClothRing &ring) {
    if (ring.size() < 3) return "an outline needs at least three corners";
    for (std::size_t i = 0; i < ring.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (ring[i] == ring[j]) return "two corners would lie on one another";
    if (twiceArea(ring) == 0) return "the corners would lie in one line";
    if (!isSimple(ring)) return "the outline would cross itself";
    return {};
}

ClothRing withCornerMoved(ClothRing ring, int corner, ClothPoint to) {
    ring.at(std::size_t(corner)) = to;
    return ring;
}

ClothRing withCornerAdded(ClothRing ring, int edge, ClothPoint at) {
    ring.insert(ring.begin() + edge + 1, at);
    return ring;
}

ClothRing withoutCorner(ClothRing ring, int corner) {
    ring.erase(ring.begin() + corner);
    return ring;
}

Result<ClothRing> withCornerCutOut(const ClothRing &ring, int corner, Length before, Length after) {
    const std::size_t n = ring.size(), at = std::size_t(corner);
    const ClothPoint here = ring.at(at), last = ring[(at + n - 1) % n], next = ring[(at + 1) % n];
    const Length in = lengthOf(here - last), out = lengthOf(next - here);
    if (before <= Length{} || after <= Length{}) return fault("give both sides of the corner that is cut out");
    if (before >= in || after >= out) return fault("the corner cut out must be smaller than the sides it is cut from");
    const ClothPoint first = along(here, last, before, in), third = along(here, next, after, out);
    ClothRing cut(ring.begin(), ring.begin() + corner);
    cut.push_back(first);
    cut.push_back(first + (third - here));
    cut.push_back(third);
    cut.insert(cut.end(), ring.begin() + corner + 1, ring.end());
    if (const auto wrong = faultOfOutline(cut)) return fault(*wrong);
    return cut;
}

ClothRing ringOf(const Spot &spot) {
    ClothRing ring;
    // A quarter turn takes (x, y) to (-y, x); what is rounded up outwards in one quarter is so in all.
    for (int turns = 0; turns < 4; ++turns)
        for (const auto &[cosine, sine] : quarter) {
            Vector v{scaled(spot.radius, cosine), scaled(spot.radius, sine)};
            for (int t = 0; t < turns; ++t) v = {-v.y, v.x};
            ring.push_back(spot.middle + v);
        }
    return ring;
}

std::optional<Spot> spotIn(const ClothRing &ring) {
    if (ring.size() != 16) return {};
    const ClothBox box = boxOf(ring);
    const std::int64_t reach = box.width().ticks() / 2;
    Spot spot{{Length::ticks(box.low.x.ticks() + reach), Length::ticks(box.low.y.ticks() + reach)}, {}};
    // The radius that was rounded up to this reach; a tick or two either way may be as good.
    const std::int64_t about = roundedQuotient(reach * whole, quarter[0][0]);
    for (std::int64_t radius = about + 1; radius >= std::max<std::int64_t>(1, about - 1); --radius) {
        spot.radius = Length::ticks(radius);
        if (ringOf(spot) == ring) return spot;
    }
    return {};
}

} // namespace boltwright
