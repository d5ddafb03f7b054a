#pragma once

#include "core/geometry/polygon.h"

#include <QPointF>
#include <QPolygonF>
#include <QRectF>

/// The one place where cloth becomes picture. The table frame is in millimetres: the cut end at the left, the roll
/// unrolling to the right, the left selvage at the top, so that the cloth's y runs to the right and its x downwards.
/// That is a turn and no mirror image: the cloth lies face up on screen as on the table.
namespace boltwright::ui {

inline QPointF onTable(ClothPoint p) { return {p.y.toMillimetres(), p.x.toMillimetres()}; }
inline QPointF onTable(Vector v) { return {v.y.toMillimetres(), v.x.toMillimetres()}; }

inline QPolygonF onTable(const ClothRing &ring) {
    QPolygonF out;
    for (const ClothPoint &p : ring) out << onTable(p);
    return out;
}

inline QRectF onTable(const ClothBox &box) { return QRectF(onTable(box.low), onTable(box.high)).normalized(); }

/// Back again, to the nearest tick: for where the mouse points.
inline ClothPoint onCloth(QPointF table) {
    return {Length::ticks(qRound64(table.y() * 320)), Length::ticks(qRound64(table.x() * 320))};
}

} // namespace boltwright::ui
