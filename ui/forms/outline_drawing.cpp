#include "ui/forms/outline_drawing.h"

#include <algorithm>
#include <cmath>

namespace boltwright::ui {

namespace {

QPointF after(const QPolygonF &corners, int edge) { return corners[(edge + 1) % corners.size()]; }

} // namespace

QPointF outwardsOf(const QPolygonF &corners, int edge) {
    const QPointF along = after(corners, edge) - corners[edge];
    const double length = std::hypot(along.x(), along.y());
    return length > 0 ? QPointF(-along.y(), along.x()) / length : QPointF();
}

QPointF middleOf(const QPolygonF &corners, int edge) { return (corners[edge] + after(corners, edge)) / 2; }

void drawOutline(QPainter &painter, const ShownOutline &outline, const Colours &colours, const QFontMetricsF &metrics) {
    const QPolygonF &corners = outline.corners;
    painter.setPen(QPen(colours.quiet, 1.2));
    painter.setBrush(colours.paper);
    painter.drawPolygon(corners);
    for (int i = 0; outline.numbered && i < corners.size(); ++i) {
        const QPointF inside = middleOf(corners, i) - outwardsOf(corners, i) * metrics.height() * 0.8;
        const QString number = QString::number(i + 1);
        painter.setPen(outline.edge == i ? colours.accent : colours.quiet);
        painter.drawText(inside + QPointF(-metrics.horizontalAdvance(number) / 2, metrics.capHeight() / 2), number);
    }
    if (!outline.edge || *outline.edge >= corners.size()) return;
    painter.setPen(QPen(colours.accent, 4, Qt::SolidLine, Qt::RoundCap));
    painter.drawLine(corners[*outline.edge], after(corners, *outline.edge));
}

std::optional<EdgeNear> edgeNear(const QPolygonF &corners, QPointF at, double reach) {
    std::optional<EdgeNear> nearest;
    for (int i = 0; i < corners.size(); ++i) {
        const QPointF from = corners[i], along = after(corners, i) - from;
        const double square = QPointF::dotProduct(along, along);
        const double share = square > 0 ? std::clamp(QPointF::dotProduct(at - from, along) / square, 0.0, 1.0) : 0.0;
        const QPointF away = at - (from + share * along);
        const double off = std::hypot(away.x(), away.y());
        if (off < (nearest ? nearest->off : reach)) nearest = EdgeNear{i, off};
    }
    return nearest;
}

} // namespace boltwright::ui
