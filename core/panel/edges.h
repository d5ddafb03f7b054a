#pragma once

#include "core/panel/panel.h"

#include <optional>
#include <string>

namespace boltwright {

/// "bottom edge", or "edge 3": a polygon's counted from 1, as a person counts its corners.
std::string edgeInWords(const Shape &shape, int edge);
/// The same within a sentence: "the bottom edge", or "edge 3".
std::string theEdgeInWords(const Shape &shape, int edge);

/// Which edge of `is` the edge of `was` has become: the same one while there are as many; otherwise the one that lies
/// along it, of several the one that shares most with it. None: there is no such edge any more.
std::optional<int> edgeThatBecame(const Shape &was, int edge, const Shape &is);

} // namespace boltwright
