#include "ui/photo/marked_picture.h"

#include "ui/drawing/colours.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>
#include <utility>

namespace boltwright::ui {

namespace {

constexpr double reach = 9; // pixels within which a mark is meant
constexpr double glassSide = 132;
constexpr double enlarged = 6; // the glass, compared to the picture as it is shown, at most
constexpr double mostScale = 12;

/// Chalk with a dark casing reads on any picture.
void drawChalk(QPainter &painter, const QPolygonF &line, bool closed, const QColor &chalk, Qt::PenStyle style) {
    painter.setBrush(Qt::NoBrush);
    for (const auto &[colour, width] : {std::pair(QColor(0x2B, 0x2A, 0x33, 200), 4.0), std::pair(chalk, 1.8)}) {
        QPen pen(colour, width, width > 3 ? Qt::SolidLine : style, Qt::RoundCap, Qt::RoundJoin);
        painter.setPen(pen);
        if (closed)
            painter.drawPolygon(line);
        else
            painter.drawPolyline(line);
    }
}

} // namespace

MarkedPicture::MarkedPicture(QWidget *parent) : QWidget(parent) {
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setCursor(Qt::CrossCursor);
    setMinimumSize(280, 220);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    setAccessibleName(tr("Picture to mark places on"));
}

void MarkedPicture::setPicture(const QImage &picture) {
    m_picture = picture;
    m_cross.reset();
    m_held = -1;
    m_fitted = true;
    fit();
}

void MarkedPicture::setMarks(const QPolygonF &points, int most, Drawn drawn) {
    m_marks = points;
    m_most = most;
    m_drawn = drawn;
    m_held = -1;
    m_drag = false;
    setAccessibleDescription(tr("%1 of %2 places are marked").arg(points.size()).arg(most));
    update();
}

void MarkedPicture::setShapes(const QList<Shape> &shapes) {
    m_shapes = shapes;
    update();
}

void MarkedPicture::setWrong(bool wrong) {
    m_wrong = wrong;
    update();
}

double MarkedPicture::fitting() const {
    if (m_picture.isNull()) return 1;
    return std::min((width() - 24.0) / m_picture.width(), (height() - 24.0) / m_picture.height());
}

void MarkedPicture::fit() {
    m_scale = std::max(0.001, fitting());
    m_zero = QPointF((width() - m_picture.width() * m_scale) / 2, (height() - m_picture.height() * m_scale) / 2);
    update();
}

QPointF MarkedPicture::toWidget(QPointF p) const { return m_zero + p * m_scale; }
QPointF MarkedPicture::toPicture(QPointF p) const { return (p - m_zero) / m_scale; }

QPointF MarkedPicture::within(QPointF p) const {
    return {std::clamp(p.x(), 0.0, double(m_picture.width())), std::clamp(p.y(), 0.0, double(m_picture.height()))};
}

void MarkedPicture::zoomBy(double factor, QPointF around) {
    const QPointF there = toPicture(around);
    m_scale = std::clamp(m_scale * factor, fitting(), std::max(mostScale, fitting()));
    m_fitted = m_scale <= fitting() * 1.0001;
    if (m_fitted) {
        fit();
        return;
    }
    m_zero = around - there * m_scale;
    update();
}

int MarkedPicture::markAt(QPointF at) const {
    int best = -1;
    double least = reach;
    for (int i = 0; i < m_marks.size(); ++i) {
        const double far = QLineF(toWidget(m_marks[i]), at).length();
        if (far > least) continue;
        best = i;
        least = far;
    }
    return best;
}

int MarkedPicture::sideAt(QPointF at) const {
    if (m_drawn != Drawn::Ring) return -1;
    for (int i = 0; i < m_marks.size(); ++i) {
        const QLineF side(toWidget(m_marks[i]), toWidget(m_marks[(i + 1) % m_marks.size()]));
        if (side.length() > 5 * reach && QLineF(side.center(), at).length() <= reach) return i;
    }
    return -1;
}

void MarkedPicture::insertAfter(int mark, QPointF p) {
    m_marks.insert(mark + 1, within(p));
    m_held = mark + 1;
    m_cross = m_marks[m_held];
}

void MarkedPicture::changed() {
    setAccessibleDescription(tr("%1 of %2 places are marked").arg(m_marks.size()).arg(m_most));
    update();
    Q_EMIT marksChanged();
}

void MarkedPicture::add(QPointF p, bool freely) {
    if (m_picture.isNull() || m_marks.size() >= m_most) return;
    m_marks << within(p);
    changed();
    if (!freely && !m_marks.isEmpty()) Q_EMIT markPlaced(int(m_marks.size()) - 1);
}

void MarkedPicture::settle(int mark, QPointF p) {
    if (mark < 0 || mark >= m_marks.size()) return;
    m_marks[mark] = within(p);
    update();
}

void MarkedPicture::moveMark(int mark, QPointF p) {
    m_marks[mark] = within(p);
    m_cross = m_marks[mark];
    changed();
}

void MarkedPicture::removeMark() {
    if (m_marks.isEmpty()) return;
    if (m_drawn == Drawn::Ring) {
        if (m_held < 0) return;
        if (m_marks.size() <= 3) {
            Q_EMIT refused(tr("An outline has three corners at least."));
            return;
        }
    }
    m_marks.remove(m_held >= 0 ? m_held : m_marks.size() - 1);
    m_held = -1;
    m_drag = false;
    changed();
}

// Events.

void MarkedPicture::mousePressEvent(QMouseEvent *event) {
    if (m_picture.isNull()) return;
    if (event->button() == Qt::MiddleButton) {
        m_panFrom = event->position() - m_zero;
        return;
    }
    if (event->button() != Qt::LeftButton) return;
    const int mark = markAt(event->position());
    if (mark == 0 && m_drawn == Drawn::Outline && m_most > 4 && m_marks.size() >= 3) {
        Q_EMIT outlineClosed();
        return;
    }
    m_held = mark;
    m_drag = mark >= 0;
    if (m_drawn == Drawn::Ring) {
        if (const int side = mark < 0 ? sideAt(event->position()) : -1; side >= 0) {
            insertAfter(side, toPicture(event->position()));
            m_pulled = m_drag = true;
        }
        update();
        return;
    }
    // Two lengths may well begin at the same corner: there, a click that moves nothing marks the place once more.
    m_again = mark >= 0 && m_drawn == Drawn::Pairs && m_marks.size() < m_most;
    if (mark < 0) {
        add(toPicture(event->position()), event->modifiers() & Qt::AltModifier);
        if (m_marks.isEmpty()) return;
        m_held = int(m_marks.size()) - 1; // can be put right in the same movement
        m_drag = QLineF(toWidget(m_marks[m_held]), event->position()).length() < 2 * reach;
        if (!m_drag) m_held = -1;
    }
}

void MarkedPicture::mouseMoveEvent(QMouseEvent *event) {
    if (m_panFrom) {
        m_zero = event->position() - *m_panFrom;
        m_fitted = false;
        update();
        return;
    }
    m_cross = within(toPicture(event->position()));
    if (m_drag && m_held >= 0 && (event->buttons() & Qt::LeftButton)) {
        m_again = m_pulled = false;
        m_dragged = true;
        moveMark(m_held, *m_cross);
    }
    update();
}

void MarkedPicture::mouseReleaseEvent(QMouseEvent *event) {
    m_panFrom.reset();
    const int placed = m_dragged && m_held >= 0 && !(event->modifiers() & Qt::AltModifier) ? m_held : -1;
    m_dragged = false;
    const std::optional<QPointF> again =
        m_again && m_held >= 0 ? std::optional(m_marks[m_held]) : std::optional<QPointF>();
    m_again = false;
    m_drag = false;
    if (std::exchange(m_pulled, false)) { // a click on a side is no corner yet
        m_marks.remove(m_held);
        m_held = -1;
    }
    if (m_drawn != Drawn::Ring) m_held = -1; // a corner of a ring stays chosen, for the keys
    if (again) add(*again);
    if (placed >= 0) Q_EMIT markPlaced(placed);
    update();
}

void MarkedPicture::mouseDoubleClickEvent(QMouseEvent *event) {
    // Its first click has marked the last corner already.
    if (m_drawn == Drawn::Outline && m_most > 4 && m_marks.size() >= 3)
        Q_EMIT outlineClosed();
    else
        mousePressEvent(event);
}

void MarkedPicture::wheelEvent(QWheelEvent *event) {
    if (!m_picture.isNull()) zoomBy(std::pow(1.0016, event->angleDelta().y()), event->position());
}

void MarkedPicture::leaveEvent(QEvent *) {
    if (!hasFocus()) m_cross.reset();
    update();
}

void MarkedPicture::resizeEvent(QResizeEvent *) {
    if (m_fitted) fit();
}

bool MarkedPicture::event(QEvent *event) {
    // These mean the picture while it has the focus, and not what they mean elsewhere in the window.
    if (event->type() == QEvent::ShortcutOverride) {
        const int key = static_cast<QKeyEvent *>(event)->key();
        if (key == Qt::Key_Backspace || key == Qt::Key_Delete || key == Qt::Key_Insert || key == Qt::Key_Plus ||
            key == Qt::Key_Minus || key == Qt::Key_Return || key == Qt::Key_Enter) {
            event->accept();
            return true;
        }
    }
    return QWidget::event(event);
}

void MarkedPicture::keyPressEvent(QKeyEvent *event) {
    if (m_picture.isNull()) {
        QWidget::keyPressEvent(event);
        return;
    }
    const QPointF middle(m_picture.width() / 2.0, m_picture.height() / 2.0);
    const double step = event->modifiers() & Qt::AltModifier     ? std::min(0.25, 1 / m_scale)
                        : event->modifiers() & Qt::ShiftModifier ? std::min(1.0, 1 / m_scale)
                                                                 : std::max(1.0, 10 / m_scale);
    const auto go = [&](double right, double down) {
        const QPointF to = (m_held >= 0 ? m_marks[m_held] : m_cross.value_or(middle)) + QPointF(right, down) * step;
        if (m_held >= 0)
            moveMark(m_held, to);
        else
            m_cross = within(to);
        update();
    };
    const auto hold = [&](int by) {
        if (m_marks.isEmpty()) return;
        const int count = int(m_marks.size());
        m_held = m_held < 0 ? (by > 0 ? 0 : count - 1) : (m_held + by + count) % count;
        m_cross = m_marks[m_held];
        update();
    };
    switch (event->key()) {
    case Qt::Key_Left:
        return go(-1, 0);
    case Qt::Key_Right:
        return go(1, 0);
    case Qt::Key_Up:
        return go(0, -1);
    case Qt::Key_Down:
        return go(0, 1);
    case Qt::Key_PageDown:
        return hold(1);
    case Qt::Key_PageUp:
        return hold(-1);
    case Qt::Key_Return:
    case Qt::Key_Enter:
    case Qt::Key_Space:
        if ((event->modifiers() & Qt::ControlModifier) && m_drawn == Drawn::Outline && m_marks.size() >= 3)
            Q_EMIT outlineClosed();
        else if (m_held >= 0)
            m_held = -1; // let go of
        else if (m_drawn == Drawn::Ring)
            break;
        else
            add(m_cross.value_or(middle));
        update();
        return;
    case Qt::Key_Backspace:
    case Qt::Key_Delete:
        return removeMark();
    case Qt::Key_Insert:
        if (m_drawn != Drawn::Ring || m_held < 0) break;
        insertAfter(m_held, (m_marks[m_held] + m_marks[(m_held + 1) % m_marks.size()]) / 2);
        changed();
        return;
    case Qt::Key_Plus:
    case Qt::Key_Equal:
        return zoomBy(1.4, toWidget(m_cross.value_or(middle)));
    case Qt::Key_Minus:
        return zoomBy(1 / 1.4, toWidget(m_cross.value_or(middle)));
    case Qt::Key_0:
        m_fitted = true;
        return fit();
    case Qt::Key_Escape:
        if (m_held >= 0) {
            m_held = -1;
            update();
            return;
        }
        break;
    default:
        break;
    }
    QWidget::keyPressEvent(event);
}

/// Tab goes from corner to corner of a ring before it leaves the picture, as on the table.
bool MarkedPicture::focusNextPrevChild(bool next) {
    if (m_drawn == Drawn::Ring && hasFocus()) {
        const int count = int(m_marks.size()), to = m_held < 0 ? (next ? 0 : count - 1) : m_held + (next ? 1 : -1);
        m_held = to >= 0 && to < count ? to : -1;
        if (m_held >= 0) m_cross = m_marks[m_held];
        update();
        if (m_held >= 0) return true;
    }
    return QWidget::focusNextPrevChild(next);
}

// Painting.

void MarkedPicture::paintEvent(QPaintEvent *) {
    const Colours colours = coloursOf(palette());
    QPainter painter(this);
    painter.fillRect(rect(), colours.table);
    if (m_picture.isNull()) {
        painter.setPen(colours.quiet);
        painter.drawText(rect().adjusted(24, 24, -24, -24), Qt::AlignCenter | Qt::TextWordWrap,
                         tr("The picture stands here once it is open."));
    }
    if (!m_picture.isNull()) {
        painter.setRenderHint(QPainter::SmoothPixmapTransform, m_scale < 3);
        painter.drawImage(QRectF(m_zero, QSizeF(m_picture.size()) * m_scale), m_picture);
        painter.setRenderHint(QPainter::Antialiasing);
        for (const Shape &shape : m_shapes) paintShape(painter, shape);
        paintMarks(painter);
        if (m_cross && (underMouse() || hasFocus())) paintGlass(painter);
    }
    if (hasFocus()) {
        painter.setPen(QPen(colours.accent, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(rect().adjusted(1, 1, -1, -1));
    }
}

void MarkedPicture::paintShape(QPainter &painter, const Shape &shape) {
    QPolygonF line;
    for (const QPointF &p : shape.points) line << toWidget(p);
    if (shape.flaw) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(QBrush(lightColours().broken, Qt::DiagCrossPattern));
        painter.drawPolygon(line);
    }
    drawChalk(painter, line, shape.closed, shape.flaw ? QColor(0xF0, 0xA3, 0x94) : lightColours().chalk, Qt::SolidLine);
    if (shape.label.isEmpty()) return;
    const QRectF box = line.boundingRect();
    const QFontMetricsF metrics(font());
    QRectF slip(0, 0, metrics.horizontalAdvance(shape.label) + 12, metrics.height() + 4);
    slip.moveCenter(box.center());
    painter.setPen(Qt::NoPen);
    painter.setBrush(QColor(0xFB, 0xF8, 0xF2, 225));
    painter.drawRoundedRect(slip, 6, 6);
    painter.setPen(lightColours().ink);
    painter.drawText(slip, Qt::AlignCenter, shape.label);
}

void MarkedPicture::paintMarks(QPainter &painter) {
    QPolygonF line;
    for (const QPointF &p : m_marks) line << toWidget(p);
    const Qt::PenStyle style = m_wrong ? Qt::DashLine : Qt::SolidLine;
    const QColor chalk = m_wrong ? QColor(0xF0, 0xA3, 0x94) : lightColours().chalk;
    if (m_drawn == Drawn::Pairs) {
        for (qsizetype i = 0; i + 1 < line.size(); i += 2)
            drawChalk(painter, QPolygonF({line[i], line[i + 1]}), false, chalk, style);
    } else if (m_drawn == Drawn::OutlineAndMiddle) {
        drawChalk(painter, line.first(std::min<qsizetype>(4, line.size())), line.size() >= 4, chalk, style);
    } else if (line.size() > 1) {
        drawChalk(painter, line, m_drawn == Drawn::Ring || line.size() == m_most, chalk, style);
        if (m_cross && m_drawn != Drawn::Ring && line.size() < m_most && !m_drag)
            drawChalk(painter, QPolygonF({line.last(), toWidget(*m_cross)}), false, chalk, Qt::DotLine);
    }
    for (qsizetype i = 0; m_drawn == Drawn::Ring && i < line.size(); ++i) {
        const QLineF side(line[i], line[(i + 1) % line.size()]);
        if (side.length() <= 5 * reach) continue;
        painter.setPen(QPen(QColor(0x2B, 0x2A, 0x33), 1));
        painter.setBrush(lightColours().chalk);
        painter.drawRect(QRectF(side.center() - QPointF(3, 3), QSizeF(6, 6)));
    }
    QFont small = font();
    small.setBold(true);
    painter.setFont(small);
    for (qsizetype i = 0; i < line.size(); ++i) {
        const bool held = m_held == i;
        painter.setPen(QPen(QColor(0x2B, 0x2A, 0x33), 1.5));
        painter.setBrush(held ? QColor(0xF3, 0xE2, 0xA9) : lightColours().chalk);
        painter.drawEllipse(line[i], held ? 7 : 5, held ? 7 : 5);
        painter.setBrush(QColor(0x2B, 0x2A, 0x33));
        painter.drawEllipse(line[i], 1, 1);
        if (m_drawn == Drawn::Ring || (m_drawn == Drawn::Outline && m_most > 4 && m_names.isEmpty()))
            continue; // many corners need no numbers
        const QString name = i < m_names.size() ? m_names[i] : QString::number(i + 1);
        const QPointF at = line[i] + QPointF(9, -8);
        QPainterPath letters;
        letters.addText(at, small, name);
        painter.strokePath(letters, QPen(QColor(0x2B, 0x2A, 0x33, 220), 3.5));
        painter.fillPath(letters, lightColours().chalk);
    }
    if (m_cross && hasFocus() && !m_drag) {
        const QPointF c = toWidget(*m_cross);
        drawChalk(painter, QPolygonF({c - QPointF(11, 0), c + QPointF(11, 0)}), false, lightColours().chalk,
                  Qt::SolidLine);
        drawChalk(painter, QPolygonF({c - QPointF(0, 11), c + QPointF(0, 11)}), false, lightColours().chalk,
                  Qt::SolidLine);
    }
}

void MarkedPicture::paintGlass(QPainter &painter) {
    const QPointF cross = toWidget(*m_cross);
    QRectF glass(width() - glassSide - 14, 14, glassSide, glassSide);
    if (glass.adjusted(-24, -24, 24, 24).contains(cross)) glass.moveLeft(14);
    const double scale = std::min(m_scale * enlarged, std::max(m_scale * 2, 6.0));
    const QSizeF seen = glass.size() / scale;
    const QRectF source(*m_cross - QPointF(seen.width() / 2, seen.height() / 2), seen);
    QPainterPath round;
    round.addEllipse(glass);
    painter.save();
    painter.setClipPath(round);
    painter.fillPath(round, coloursOf(palette()).table);
    painter.drawImage(glass, m_picture, source);
    drawChalk(painter,
              QPolygonF(QList<QPointF>{{glass.left(), glass.center().y()}, {glass.right(), glass.center().y()}}), false,
              QColor(255, 253, 248, 190), Qt::SolidLine);
    drawChalk(painter,
              QPolygonF(QList<QPointF>{{glass.center().x(), glass.top()}, {glass.center().x(), glass.bottom()}}), false,
              QColor(255, 253, 248, 190), Qt::SolidLine);
    painter.restore();
    painter.setPen(QPen(coloursOf(palette()).ink, 2));
    painter.setBrush(Qt::NoBrush);
    painter.drawEllipse(glass);
}

} // namespace boltwright::ui
