#include "ui/forms/edge_picture.h"

#include "core/geometry/polygon.h"
#include "ui/forms/outline_drawing.h"

#include <QMouseEvent>
#include <QPainter>

#include <algorithm>
#include <variant>

namespace boltwright::ui {

EdgePicture::EdgePicture(QWidget *parent) : QWidget(parent) {
    setAccessibleName(tr("The panel's outline"));
    setToolTip(
        tr("The panel as you face it, with the edge that is chosen in the table of edges. A click chooses one."));
}

void EdgePicture::show(const Shape &shape) {
    m_ring = measuredOutline(shape);
    m_numbered = std::holds_alternative<PolygonShape>(shape);
    update();
}

void EdgePicture::showEdge(std::optional<int> edge) {
    m_edge = edge;
    update();
}

QPolygonF EdgePicture::corners() const {
    QPolygonF corners;
    if (m_ring.empty()) return corners;
    const PanelBox box = boxOf(m_ring);
    const QRectF room = QRectF(rect()).adjusted(6, 6, -6, -6);
    const double wide = box.width().toMillimetres(), tall = box.height().toMillimetres();
    const double scale = std::min(room.width() / wide, room.height() / tall);
    const QPointF low = room.center() + scale * QPointF(-wide / 2, tall / 2);
    for (PanelPoint p : m_ring) {
        const Vector off = p - box.low;
        corners << low + scale * QPointF(off.x.toMillimetres(), -off.y.toMillimetres());
    }
    return corners;
}

void EdgePicture::paintEvent(QPaintEvent *) {
    if (m_ring.empty()) return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    drawOutline(painter, {corners(), m_numbered, m_edge}, coloursOf(palette()), QFontMetricsF(font()));
}

void EdgePicture::mousePressEvent(QMouseEvent *event) {
    if (const auto near = edgeNear(corners(), event->position(), 12)) Q_EMIT edgeChosen(near->edge);
}

} // namespace boltwright::ui
