#include "core/rules/joins.h"

#include <algorithm>
#include <cstdint>
#include <variant>

namespace boltwright {

std::vector<Length> pieceLengths(const Layout &layout, const std::string &panel, int copy) {
    std::vector<const Cut *> pieces;
    for (const Cut &cut : layout.cuts)
        if (cut.panel == panel && cut.copy == copy && cut.of > 1 && cut.length) pieces.push_back(&cut);
    std::stable_sort(pieces.begin(), pieces.end(), [](const Cut *a, const Cut *b) { return a->piece < b->piece; });
    std::vector<Length> lengths;
    for (const Cut *cut : pieces) lengths.push_back(*cut->length);
    return lengths;
}

bool goesRound(const Panel &panel) {
    const auto *strip = std::get_if<Rectangle>(&panel.shape);
    if (!strip || panel.pieces.where != Pieces::Where::Any) return false;
    const Length across = strip->across + panel.allowance(Left) + panel.allowance(Right);
    const Length up = strip->up + panel.allowance(Bottom) + panel.allowance(Top);
    return std::max(across, up) >= std::min(across, up) * 4;
}

Length leastFront(Length whole) { return Length::ticks((whole.ticks() * 3 + 4) / 5); }

bool joinedAtBack(const Panel &panel, const std::vector<Length> &lengths) {
    if (lengths.size() < 2 || !goesRound(panel)) return false;
    const int joins = int(lengths.size()) - 1;
    Length whole = panel.pieces.seam * (-2 * joins);
    for (const Length length : lengths) whole += length;
    return lengths.front() - panel.pieces.seam >= leastFront(whole);
}

} // namespace boltwright
