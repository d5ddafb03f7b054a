#pragma once

#include "core/base/result.h"
#include "core/cloth/cloth.h"

#include <QPolygonF>
#include <QTransform>

namespace boltwright::ui {

/// Something flat whose corners are seen in a photograph and whose size is known.
struct KnownRectangle {
    double across = 0, down = 0; ///< millimetres; whichever of the two is longer
};

/// Why four clicks in a picture of that size are no corners of a rectangle seen from anywhere: crossed, three in a
/// line, one twice, one within the triangle of the others, or so near to each other that nothing can be measured by
/// them. Nothing: they are.
Result<void> cornersOfRectangle(const QPolygonF &clicked, QSizeF picture);

/// The plane of the cloth as the photograph saw it: from picture pixels to millimetres, x to the right and y downwards
/// as in the picture, the rectangle's first corner at 0, 0. The corners may begin anywhere and go either way round.
/// `longFirst`: the side from the first corner to the second is the rectangle's long one.
/// Needs corners that `cornersOfRectangle` lets pass.
QTransform straightening(const QPolygonF &corners, KnownRectangle rectangle, bool longFirst);
/// The likelier of the two, by how long the sides look.
bool looksLongFirst(const QPolygonF &corners);

/// How far a place that was clicked may be from where it is, when every click misses by `miss` pixels at worst and each
/// of the rectangle's corners by `cornerMiss`: at the worst of `points`, in millimetres. What a margin is made from.
double mostError(const QPolygonF &corners, KnownRectangle rectangle, bool longFirst, const QPolygonF &points,
                 double cornerMiss, double miss);

/// Where the cloth's own top (up the roll) points in the photograph.
enum class PhotoTop { Up, Right, Down, Left };

/// From the straightened plane to the table frame (its x up the roll, its y from the left selvage), both in
/// millimetres; `outline` comes to lie with its lower left corner on the cloth at 0, 0.
QTransform planeToTable(PhotoTop top, const QPolygonF &outline);

/// From picture shares to the table frame, as the four places that a remnant's photograph keeps have it.
QTransform photoToTable(const RemnantPhoto &photo);

} // namespace boltwright::ui
