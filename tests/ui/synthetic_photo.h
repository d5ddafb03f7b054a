#pragma once

#include <QImage>
#include <QPolygonF>
#include <QTransform>

namespace boltwright::ui {

/// A photograph that nobody took: a plane seen by a camera of which everything is known, so that every place in it is.
/// The plane is in millimetres, x to the right and y downwards as seen from above.
struct Camera {
    QSize pixels = {2400, 1800};
    double lens = 1.1;    ///< focal length as a share of the picture's width
    double height = 2600; ///< millimetres above the place it looks at
    double tilt = 0;      ///< degrees: how far it stands back from straight above
    double spin = 0;      ///< degrees: how the plane is turned beneath it
    QPointF looksAt = {0, 0};

    /// From the plane to pixels, by the pinhole model (Hartley and Zisserman, "Multiple View Geometry", the plane Z = 0
    /// seen by K [r1 r2 t]; from memory).
    QTransform toPicture() const;
};

/// Something flat on the plane.
struct Flat {
    QPolygonF outline;
    QColor colour;
};

/// What that camera sees of a wooden table with these things on it, one over the other. `cloth`: stripes of it are
/// `stripe` millimetres apart, none for 0.
QImage photograph(const Camera &camera, const QList<Flat> &things, int clothThing = -1, double stripe = 0);

/// The worst place of an outline that came back from a photograph, as a share of its long side, once its box is laid on
/// that of what it was: turned by quarters at most, and not moved otherwise.
double worstShare(const QPolygonF &found, const QPolygonF &known);

/// A rectangle on the plane: its middle, its sides, and how far it is turned, in degrees.
QPolygonF rectangleAt(QPointF middle, double across, double down, double turned = 0);

} // namespace boltwright::ui
