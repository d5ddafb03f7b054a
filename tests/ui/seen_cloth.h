#pragma once

#include "core/job/layout.h"

#include <QColor>
#include <QPointF>

#include <algorithm>
#include <cmath>
#include <cstdlib>

namespace boltwright::test {

/// The point of the cloth under a point of a rectangle with the same allowance all round, from what the file format
/// says alone: mirrored, turned counter-clockwise, and its box's lower left corner laid at x, y.
inline QPointF clothUnder(const Cut &cut, double across, double up, double allow, double u, double v) {
    const double angle = degrees(cut.turn) * M_PI / 180;
    const auto turned = [&](double a, double b) {
        if (cut.mirrored) a = -a;
        return QPointF(a * std::cos(angle) - b * std::sin(angle), a * std::sin(angle) + b * std::cos(angle));
    };
    QPointF low(1e9, 1e9);
    for (const double a : {-allow, across + allow})
        for (const double b : {-allow, up + allow}) {
            const QPointF corner = turned(a, b);
            low = {std::min(low.x(), corner.x()), std::min(low.y(), corner.y())};
        }
    return turned(u, v) - low + QPointF(cut.x.toMillimetres(), cut.y.toMillimetres());
}

/// Within what rounding may do to a colour.
inline bool isNear(const QColor &a, const QColor &b, int most) {
    return std::abs(a.red() - b.red()) <= most && std::abs(a.green() - b.green()) <= most &&
           std::abs(a.blue() - b.blue()) <= most;
}

} // namespace boltwright::test
