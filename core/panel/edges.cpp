#include "core/panel/edges.h"

#include "core/base/language.h"

#include <algorithm>
#include <string_view>

namespace boltwright {

std::string edgeInWords(const Shape &shape, int edge) {
    if (std::holds_alternative<PolygonShape>(shape)) return phrase("edge %1", {std::to_string(edge + 1)});
    return phrase("%1 edge", {phrase(std::string_view(edgeName(shape, edge)))});
}

std::string theEdgeInWords(const Shape &shape, int edge) {
    const std::string words = edgeInWords(shape, edge);
    return std::holds_alternative<PolygonShape>(shape) ? words : phrase("the %1", {words});
}

std::optional<int> edgeThatBecame(const Shape &was, int edge, const Shape &is) {
    const PanelRing before = measuredOutline(was), after = measuredOutline(is);
    if (before.size() == after.size()) return edge;
    const PanelPoint from = before.at(std::size_t(edge)), to = before[(std::size_t(edge) + 1) % before.size()];
    const Vector along = to - from;
    std::optional<int> best;
    Area most = 0;
    for (std::size_t i = 0; i < after.size(); ++i) {
        const Vector start = after[i] - from, end = after[(i + 1) % after.size()] - from;
        if (cross(along, start) != 0 || cross(along, end) != 0 || dot(along, end - start) <= 0) continue;
        const Area shared = std::min(dot(along, end), dot(along, along)) - std::max<Area>(dot(along, start), 0);
        if (shared <= most) continue;
        most = shared;
        best = int(i);
    }
    return best;
}

} // namespace boltwright
