#include "core/panel/panel.h"

#include "core/base/ensure.h"
#include "core/geometry/exact.h"

#include <array>
#include <cmath>

namespace boltwright {
namespace {

constexpr std::array<const char *, 4> edgeNames = {"bottom", "right", "top", "left"};

template <class... Visitors>
struct Cases : Visitors... {
    using Visitors::operator()...;
};
template <class... Visitors>
Cases(Visitors...) -> Cases<Visitors...>;

bool isPolygon(const Shape &shape) { return std::holds_alternative<PolygonShape>(shape); }

Length lengthOf(const EdgeLengths &lengths, int edge, Length otherwise) {
    const auto i = std::size_t(edge);
    return i < lengths.size() ? lengths[i].value_or(otherwise) : otherwise;
}

std::int64_t roundedWide(Wide numerator, Wide denominator) {
    if (denominator < 0) return roundedWide(-numerator, -denominator);
    const Wide half = denominator / 2;
    return std::int64_t(numerator >= 0 ? (numerator + half) / denominator : -((-numerator + half) / denominator));
}

/// An edge's length in ticks where that is a whole number, as for every upright edge.
std::optional<std::int64_t> wholeLength(Vector edge) {
    const Area square = dot(edge, edge);
    const std::int64_t root = rootDown(square);
    if (root * root == square) return root;
    return std::nullopt;
}

/// How a corner moves when the edge before it, along `a`, moves outwards by `da` and the edge after it, along `b`, by
/// `db`. With outward normals a' = (a.y, -a.x) and b' = (b.y, -b.x), the move m solves m·a' = da·|a| and m·b' = db·|b|.
Vector cornerMove(Vector a, Length da, Vector b, Length db) {
    const Area det = cross(a, b);
    const double x = double(a.x.ticks()), y = double(a.y.ticks()), u = double(b.x.ticks()), v = double(b.y.ticks());
    const double lengthA = std::sqrt(x * x + y * y), lengthB = std::sqrt(u * u + v * v);
    // On a straight outline there is no mitre: the corner moves square to the edge after it.
    if (std::abs(double(det)) < 1e-12 * lengthA * lengthB) {
        const double by = double(db.ticks()) / lengthB;
        return {Length::ticks(std::llround(v * by)), Length::ticks(std::llround(-u * by))};
    }
    const auto wholeA = wholeLength(a), wholeB = wholeLength(b);
    if (wholeA && wholeB) {
        const Wide p = Wide(*wholeA) * da.ticks(), q = Wide(*wholeB) * db.ticks();
        return {Length::ticks(roundedWide(q * a.x.ticks() - p * b.x.ticks(), det)),
                Length::ticks(roundedWide(q * a.y.ticks() - p * b.y.ticks(), det))};
    }
    const double p = lengthA * double(da.ticks()), q = lengthB * double(db.ticks());
    return {Length::ticks(std::llround((q * x - p * u) / double(det))),
            Length::ticks(std::llround((q * y - p * v) / double(det)))};
}

Length half(Length a) { return Length::ticks(roundedQuotient(a.ticks(), 2)); }

PanelPoint middleOf(const Shape &shape) {
    const PanelRing ring = measuredOutline(shape);
    if (isPolygon(shape)) {
        const PanelBox box = boxOf(ring);
        return {half(box.low.x + box.high.x), half(box.low.y + box.high.y)};
    }
    // Halfway between the middles of bottom and top edge: the mean of all four corners.
    Length x, y;
    for (PanelPoint p : ring) {
        x += p.x;
        y += p.y;
    }
    return {Length::ticks(roundedQuotient(x.ticks(), 4)), Length::ticks(roundedQuotient(y.ticks(), 4))};
}

} // namespace

Length Panel::allowance(int edge) const { return lengthOf(allow, edge, {}); }
Length Panel::leastAllowance(int edge) const { return lengthOf(allowMin, edge, allowance(edge)); }

PanelRing measuredOutline(const Shape &shape) {
    const Length zero;
    return std::visit(Cases{[&](const Rectangle &r) {
                                return PanelRing{{zero, zero}, {r.across, zero}, {r.across, r.up}, {zero, r.up}};
                            },
                            [&](const Trapezoid &t) {
                                const Length left = half(t.bottom - t.top + t.shift * 2);
                                return PanelRing{{zero, zero}, {t.bottom, zero}, {left + t.top, t.up}, {left, t.up}};
                            },
                            [](const PolygonShape &p) { return p.points; }},
                      shape);
}

std::size_t edgeCount(const Shape &shape) {
    const auto *polygon = std::get_if<PolygonShape>(&shape);
    return polygon ? polygon->points.size() : edgeNames.size();
}

std::string edgeName(const Shape &shape, int edge) {
    return isPolygon(shape) ? std::to_string(edge) : edgeNames.at(std::size_t(edge));
}

std::optional<int> edgeNamed(const Shape &shape, const std::string &name) {
    for (int edge = 0; edge < int(edgeCount(shape)); ++edge)
        if (edgeName(shape, edge) == name) return edge;
    return std::nullopt;
}

PanelRing cutOutline(const Shape &shape, const std::vector<Length> &allowances) {
    const PanelRing ring = measuredOutline(shape);
    const std::size_t n = ring.size();
    ensure(allowances.size() == n, "one allowance an edge");
    PanelRing out;
    for (std::size_t i = 0; i < n; ++i) {
        const std::size_t before = (i + n - 1) % n;
        const Vector a = ring[i] - ring[before], b = ring[(i + 1) % n] - ring[i];
        out.push_back(ring[i] + cornerMove(a, allowances[before], b, allowances[i]));
    }
    return out;
}

std::vector<Length> preferredAllowances(const Panel &panel) {
    std::vector<Length> out;
    for (int edge = 0; edge < int(edgeCount(panel.shape)); ++edge) out.push_back(panel.allowance(edge));
    return out;
}

PanelPoint anchorOf(const Panel &panel) {
    if (panel.motif && panel.motif->at) return *panel.motif->at;
    return middleOf(panel.shape);
}

PanelPoint middleOfEdge(const Shape &shape, int edge) {
    const PanelRing ring = measuredOutline(shape);
    const PanelPoint a = ring.at(std::size_t(edge)), b = ring[(std::size_t(edge) + 1) % ring.size()];
    return {half(a.x + b.x), half(a.y + b.y)};
}

} // namespace boltwright
