#pragma once

#include <QImage>
#include <QPolygonF>

#include <array>
#include <optional>

namespace boltwright::ui {

/// The corners of a sheet in a photograph, to a fraction of a pixel, where four clicks have pointed at them roughly:
/// beside each corner the edges of the sheet are followed along both its sides, a straight line is laid through each,
/// and the corner is where they cross. All in pixels of the picture, whose upper left corner is 0, 0.
///
/// `reach`: how far a click may be from its corner, in pixels. `shade`: white paper is lighter than what it lies on,
/// which tells its edge from that of its shadow, and from stripes of the cloth beside it. A corner is left out (and
/// best stays as it was clicked) where the sheet does not stand out clearly, where what stands out is no straight line,
/// or where the lines cross farther off than `reach`. Needs four places, in order round the sheet.
///
/// Measured on made-up photographs of 12 million pixels with noise and a slight blur (tests/ui/photo/corner_fit_test):
/// what is found is within `fittedMiss` of where the corner is.
enum class SheetShade { Lighter, Any };
std::array<std::optional<QPointF>, 4> cornersOnEdges(const QImage &picture, const QPolygonF &clicked, double reach,
                                                     SheetShade shade);

/// How far a corner that was found may be off, in pixels.
constexpr double fittedMiss = 0.5;

} // namespace boltwright::ui
