#include "ui/canvas/tools/ring_editor.h"

#include "core/edit/layout_edit.h"
#include "core/measure/length_text.h"
#include "ui/drawing/table_frame.h"
#include "ui/text/words.h"

#include <QLineF>

#include <algorithm>
#include <cmath>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

constexpr double reach = 9;     ///< pixels within which a corner is meant
constexpr int radiusHandle = 4; ///< a quarter round from the first of a spot's sixteen corners

double distance(QPointF a, QPointF b) { return std::hypot(a.x() - b.x(), a.y() - b.y()); }

Length lengthBetween(ClothPoint a, ClothPoint b) {
    const QPointF d = onTable(b - a);
    return Length::ticks(qRound64(std::hypot(d.x(), d.y()) * 320));
}

} // namespace

void RingEditor::setView(const QTransform &toScreen, Unit unit) {
    m_toScreen = toScreen;
    m_unit = unit;
}

void RingEditor::rest() {
    m_mode = Mode::Idle;
    show({});
    m_dragging = Dragging::Nothing;
    m_at.reset();
    chooseCorner(-1);
}

void RingEditor::reshape(ClothRing ring, bool movable) {
    if (m_mode == Mode::Reshape && m_dragging != Dragging::Nothing && ring == m_before) return; // the hand is at it
    const int corner = m_mode == Mode::Reshape ? m_corner : -1;
    m_mode = Mode::Reshape;
    m_dragging = Dragging::Nothing;
    m_movable = movable;
    show(std::move(ring));
    m_before = m_ring;
    chooseCorner(corner);
}

void RingEditor::show(ClothRing ring) {
    m_ring = std::move(ring);
    m_spot = m_mode == Mode::Reshape ? spotIn(m_ring) : std::nullopt;
}

/// Of a round flaw only one corner is a handle: the one straight up the roll from its middle.
bool RingEditor::isHandle(int corner) const { return !m_spot || corner == radiusHandle; }

void RingEditor::trace() {
    rest();
    m_mode = Mode::Trace;
    Q_EMIT looksDifferent();
}

void RingEditor::markSpot() {
    rest();
    m_mode = Mode::Spot;
    Q_EMIT looksDifferent();
}

void RingEditor::pickPoint() {
    rest();
    m_mode = Mode::Point;
    Q_EMIT looksDifferent();
}

void RingEditor::chooseCorner(int corner) {
    if (corner >= int(m_ring.size()) || (corner >= 0 && !isHandle(corner))) corner = -1;
    const bool other = corner != m_corner;
    m_corner = corner;
    if (other) Q_EMIT cornerChosen(corner);
    Q_EMIT looksDifferent();
}

void RingEditor::addCorner(ClothPoint at) {
    if (m_mode != Mode::Trace) return;
    if (std::find(m_ring.begin(), m_ring.end(), at) != m_ring.end())
        return Q_EMIT refused(tr("there is a corner already"));
    m_ring.push_back(at);
    chooseCorner(int(m_ring.size()) - 1);
}

void RingEditor::closeRing() {
    if (m_mode != Mode::Trace) return;
    if (const auto wrong = faultOfOutline(m_ring)) return Q_EMIT refused(fromCore(*wrong));
    const ClothRing ring = m_ring;
    rest();
    Q_EMIT finished(ring);
}

void RingEditor::removeCorner() {
    if (m_corner < 0 || m_corner >= int(m_ring.size())) return;
    if (m_mode == Mode::Trace) {
        m_ring = withoutCorner(m_ring, m_corner);
        return chooseCorner(int(m_ring.size()) - 1);
    }
    if (!m_spot) take(withoutCorner(m_ring, m_corner), {});
}

bool RingEditor::giveUp() {
    if (m_dragging != Dragging::Nothing) {
        if (m_mode == Mode::Reshape) show(m_before);
        if (m_mode == Mode::Trace) m_ring = m_before;
        m_dragging = Dragging::Nothing;
        chooseCorner(m_corner);
        return true;
    }
    if (m_mode == Mode::Trace && !m_ring.empty()) {
        m_ring.pop_back();
        chooseCorner(int(m_ring.size()) - 1);
        return true;
    }
    return false;
}

void RingEditor::refuse(const std::string &why) {
    if (m_mode == Mode::Reshape) show(m_before);
    Q_EMIT refused(fromCore(why));
    Q_EMIT looksDifferent();
}

void RingEditor::take(ClothRing ring, const QString &mergeKey) {
    if (const auto wrong = faultOfOutline(ring)) return refuse(*wrong);
    show(std::move(ring));
    m_before = m_ring;
    chooseCorner(std::min(m_corner, int(m_ring.size()) - 1));
    Q_EMIT reshaped(m_ring, mergeKey);
}

// Where things are.

QPointF RingEditor::onScreen(ClothPoint p) const { return m_toScreen.map(onTable(p)); }

ClothPoint RingEditor::underHand(QPointF at, Qt::KeyboardModifiers keys) const {
    const ClothPoint exact = onCloth(m_toScreen.inverted().map(at));
    return snapped(exact, keys & Qt::AltModifier ? Length{} : m_snap);
}

int RingEditor::cornerAt(QPointF at) const {
    int best = -1;
    double least = reach;
    for (int i = 0; i < int(m_ring.size()); ++i)
        if (const double d = distance(onScreen(m_ring[std::size_t(i)]), at); isHandle(i) && d <= least) {
            least = d;
            best = i;
        }
    return best;
}

int RingEditor::sideAt(QPointF at) const {
    for (std::size_t i = 0; i < m_ring.size() && !m_spot; ++i) {
        const QLineF side(onScreen(m_ring[i]), onScreen(m_ring[(i + 1) % m_ring.size()]));
        if (side.length() > 5 * reach && distance(side.center(), at) <= reach) return int(i);
    }
    return -1;
}

// The hand.

bool RingEditor::pressed(QPointF at, Qt::KeyboardModifiers keys) {
    m_pressedAt = at;
    m_at = underHand(at, keys);
    switch (m_mode) {
    case Mode::Idle:
        return false;
    case Mode::Trace:
        if (const int corner = cornerAt(at); corner == 0 && m_ring.size() > 2) {
            closeRing();
        } else if (corner >= 0) { // one that is set can be put right before the outline is closed
            m_before = m_ring;
            m_dragging = Dragging::Corner;
            chooseCorner(corner);
        } else {
            addCorner(*m_at);
        }
        return true;
    case Mode::Spot:
        m_middle = *m_at;
        m_dragging = Dragging::Radius;
        Q_EMIT looksDifferent();
        return true;
    case Mode::Point: {
        const ClothPoint point = *m_at;
        rest();
        Q_EMIT picked(point);
        return true;
    }
    case Mode::Reshape:
        break;
    }
    m_before = m_ring;
    if (const int corner = cornerAt(at); corner >= 0) {
        m_dragging = Dragging::Corner;
        chooseCorner(corner);
        return true;
    }
    if (const int side = sideAt(at); side >= 0) {
        m_dragging = Dragging::Corner;
        m_ring = withCornerAdded(m_ring, side, *m_at);
        chooseCorner(side + 1);
        return true;
    }
    QPolygonF shape;
    for (const ClothPoint &p : m_ring) shape << onScreen(p);
    if (m_movable && shape.containsPoint(at, Qt::OddEvenFill)) {
        m_dragging = Dragging::Whole;
        m_grip = underHand(at, Qt::AltModifier);
        chooseCorner(-1);
        return true;
    }
    return false;
}

void RingEditor::dragTo(ClothPoint at) {
    if (m_dragging == Dragging::Whole) {
        // Whole steps from where it lay, so that a flaw measured to the eighth stays so.
        const Vector by = at - m_grip;
        const ClothPoint home = snapped(ClothPoint{} + by, m_snap);
        return show(boltwright::moved(m_before, home - ClothPoint{}));
    }
    if (m_dragging != Dragging::Corner) return;
    if (!m_spot) {
        m_ring[std::size_t(m_corner)] = at;
        return;
    }
    const Length radius = snapped({lengthBetween(m_spot->middle, at), {}}, smallStep(m_unit)).x;
    show(boltwright::ringOf(Spot{m_spot->middle, std::max(radius, smallStep(m_unit))}));
}

bool RingEditor::moved(QPointF at, Qt::KeyboardModifiers keys) {
    if (m_mode == Mode::Idle) return false;
    m_at = underHand(at, keys);
    if (m_dragging == Dragging::Whole || m_spot)
        dragTo(underHand(at, Qt::AltModifier));
    else
        dragTo(*m_at);
    if (m_mode != Mode::Reshape || m_dragging != Dragging::Nothing) Q_EMIT looksDifferent();
    return m_dragging != Dragging::Nothing || m_mode == Mode::Trace;
}

bool RingEditor::released(QPointF at, Qt::KeyboardModifiers keys) {
    const Dragging was = m_dragging;
    m_dragging = Dragging::Nothing;
    if (was == Dragging::Nothing) return false;
    const bool dragged = distance(at, m_pressedAt) > 3;
    if (was == Dragging::Radius) {
        const Length out = lengthBetween(m_middle, underHand(at, keys | Qt::AltModifier));
        const Length step = keys & Qt::AltModifier ? Length{} : smallStep(m_unit);
        const Length radius = dragged && out > Length{} ? snapped({out, {}}, step).x : m_radius;
        const ClothRing ring = boltwright::ringOf(Spot{m_middle, std::max(radius, Length::ticks(320))});
        rest();
        Q_EMIT finished(ring);
        return true;
    }
    if (m_mode == Mode::Trace) {
        if (!dragged) m_ring = m_before;
        Q_EMIT cornerChosen(m_corner);
        Q_EMIT looksDifferent();
        return true;
    }
    if (!dragged) { // a click chooses
        show(m_before);
        chooseCorner(std::min(m_corner, int(m_ring.size()) - 1));
        return true;
    }
    if (m_ring == m_before) return true;
    ClothRing ring = m_ring;
    take(std::move(ring), {});
    return true;
}

Qt::CursorShape RingEditor::cursorAt(QPointF at) const {
    if (m_mode == Mode::Reshape) return cornerAt(at) >= 0 || sideAt(at) >= 0 ? Qt::SizeAllCursor : Qt::ArrowCursor;
    return m_mode == Mode::Idle ? Qt::ArrowCursor : Qt::CrossCursor;
}

// Keys.

bool RingEditor::wants(const QKeyEvent *event) const {
    switch (event->key()) {
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
        return m_mode == Mode::Trace || (m_mode == Mode::Reshape && m_corner >= 0);
    case Qt::Key_Insert:
        return m_mode == Mode::Reshape && m_corner >= 0;
    default:
        return false;
    }
}

bool RingEditor::keyPressed(QKeyEvent *event) {
    if (m_mode == Mode::Idle) return false;
    switch (event->key()) {
    case Qt::Key_Escape:
        return giveUp();
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
        removeCorner();
        return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (m_mode != Mode::Trace) return false;
        closeRing();
        return true;
    case Qt::Key_Insert:
        if (m_mode != Mode::Reshape || m_corner < 0) return false;
        splitSide();
        return true;
    case Qt::Key_PageDown:
    case Qt::Key_PageUp:
        return stepped(event->key() == Qt::Key_PageDown);
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Up:
    case Qt::Key_Down:
        if (m_mode == Mode::Spot || m_mode == Mode::Point || (m_corner < 0 && !m_movable)) return false;
        nudge(event->key(), event->modifiers());
        return true;
    default:
        return false;
    }
}

/// A corner half way to the next one, to be moved from there.
void RingEditor::splitSide() {
    if (m_spot) return;
    const ClothPoint a = m_ring[std::size_t(m_corner)], b = m_ring[std::size_t(m_corner + 1) % m_ring.size()];
    const ClothPoint middle{Length::ticks((a.x.ticks() + b.x.ticks()) / 2),
                            Length::ticks((a.y.ticks() + b.y.ticks()) / 2)};
    ClothRing ring = withCornerAdded(m_ring, m_corner, middle);
    if (const auto wrong = faultOfOutline(ring)) return refuse(*wrong);
    const int corner = m_corner + 1;
    take(std::move(ring), {});
    chooseCorner(corner);
}

void RingEditor::nudge(int key, Qt::KeyboardModifiers keys) {
    // The roll unrolls to the right, the left selvage is at the top.
    const bool fine = keys & (Qt::AltModifier | Qt::ShiftModifier) || m_snap == Length{} || m_spot;
    const Length step = fine && !(m_spot && m_corner < 0 && !(keys & Qt::ShiftModifier)) ? smallStep(m_unit)
                        : m_snap == Length{}                                             ? smallStep(m_unit)
                                                                                         : m_snap;
    const int by = key == Qt::Key_Right || key == Qt::Key_Down ? 1 : -1;
    const bool alongRoll = key == Qt::Key_Left || key == Qt::Key_Right;
    if (m_corner < 0) {
        const Length far = Length::ticks(step.ticks() * by);
        return take(boltwright::moved(m_ring, alongRoll ? Vector{{}, far} : Vector{far, {}}), u"whole"_s);
    }
    if (m_spot) {
        const Spot other{m_spot->middle, std::max(steppedTo(m_spot->radius, step, by), step)};
        return take(boltwright::ringOf(other), u"radius"_s);
    }
    ClothPoint at = m_ring[std::size_t(m_corner)];
    Length &axis = alongRoll ? at.y : at.x;
    axis = steppedTo(axis, step, by);
    ClothRing ring = withCornerMoved(m_ring, m_corner, at);
    if (m_mode == Mode::Trace) {
        m_ring = std::move(ring);
        Q_EMIT looksDifferent();
    } else {
        take(std::move(ring), u"corner %1"_s.arg(m_corner));
    }
    Q_EMIT cornerChosen(m_corner);
}

bool RingEditor::stepped(bool next) {
    if (m_mode != Mode::Reshape) return false;
    int to = m_corner < 0 ? (next ? 0 : int(m_ring.size()) - 1) : m_corner + (next ? 1 : -1);
    while (to >= 0 && to < int(m_ring.size()) && !isHandle(to)) to += next ? 1 : -1;
    if (to < 0 || to >= int(m_ring.size())) {
        chooseCorner(-1);
        return false;
    }
    chooseCorner(to);
    return true;
}

// Painting.

void RingEditor::paint(QPainter &painter, const Colours &colours, const SlipFonts &fonts, const QRectF &within) const {
    if (m_mode == Mode::Idle) return;
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    paintSides(painter, colours, fonts, within);
    paintHandles(painter, colours);
    painter.restore();
}

void RingEditor::paintSides(QPainter &painter, const Colours &colours, const SlipFonts &fonts,
                            const QRectF &within) const {
    QPolygonF shape;
    for (const ClothPoint &p : m_ring) shape << onScreen(p);
    ClothRing measured = m_ring;
    const bool open = m_mode == Mode::Trace;
    if (open && m_at) {
        shape << onScreen(*m_at);
        measured.push_back(*m_at);
    }
    if (m_dragging == Dragging::Radius && m_at) {
        measured.clear();
        const Length out = lengthBetween(m_middle, *m_at);
        const double r = distance(onScreen(m_middle), onScreen(*m_at));
        painter.setPen(QPen(colours.accent, 2));
        painter.setBrush(Qt::NoBrush);
        painter.drawEllipse(onScreen(m_middle), r, r);
        drawTag(painter, tr("radius %1").arg(shownLengthWithUnit(out, m_unit)), onScreen(*m_at) + QPointF(10, 10),
                within, colours.accent, colours.onAccent, fonts.small);
    }
    const auto draw = [&](const QPen &pen) {
        painter.setPen(pen);
        painter.setBrush(Qt::NoBrush);
        if (open)
            painter.drawPolyline(shape);
        else
            painter.drawPolygon(shape);
    };
    draw(QPen(colours.paper, 5));
    draw(QPen(colours.accent, 2.2, open ? Qt::DashLine : Qt::SolidLine));
    // Each side's length, where there is room for it; all of them would hide a small flaw.
    const std::size_t sides = m_spot ? 0 : open ? std::max<std::size_t>(measured.size(), 1) - 1 : measured.size();
    for (std::size_t i = 0; i < sides; ++i) {
        const ClothPoint a = measured[i], b = measured[(i + 1) % measured.size()];
        const QLineF side(onScreen(a), onScreen(b));
        const QString text = shownLengthWithUnit(lengthBetween(a, b), m_unit);
        const double wide = QFontMetricsF(fonts.small).horizontalAdvance(text) + 22;
        if (side.length() < wide + 24) continue;
        // A third of the way, clear of the handle in the middle.
        drawTag(painter, text, side.pointAt(0.3) + QPointF(-wide / 2, -11), within, colours.paper, colours.ink,
                fonts.small);
    }
    if (m_mode == Mode::Trace && m_at)
        drawTag(painter, tr("%1; %2").arg(shownLength(m_at->x, m_unit), shownLengthWithUnit(m_at->y, m_unit)),
                onScreen(*m_at) + QPointF(12, 12), within, colours.accent, colours.onAccent, fonts.small);
    if (m_spot) {
        const QPointF tip = onScreen(m_ring[radiusHandle]);
        painter.setPen(QPen(colours.accent, 1.4, Qt::DotLine));
        painter.drawLine(onScreen(m_spot->middle), tip);
        drawTag(painter, tr("radius %1").arg(shownLengthWithUnit(m_spot->radius, m_unit)), tip + QPointF(12, -11),
                within, colours.accent, colours.onAccent, fonts.small);
    } else if (m_dragging == Dragging::Corner && m_corner >= 0) {
        const ClothPoint p = m_ring[std::size_t(m_corner)];
        drawTag(painter, tr("%1; %2").arg(shownLength(p.x, m_unit), shownLengthWithUnit(p.y, m_unit)),
                onScreen(p) + QPointF(12, 12), within, colours.accent, colours.onAccent, fonts.small);
    }
}

void RingEditor::paintHandles(QPainter &painter, const Colours &colours) const {
    for (int i = 0; i < int(m_ring.size()); ++i) {
        const QPointF at = onScreen(m_ring[std::size_t(i)]);
        const bool chosen = i == m_corner;
        if (!isHandle(i)) continue;
        // The chosen corner is told by shape and size as well as by colour.
        painter.setPen(QPen(colours.accent, 2));
        painter.setBrush(chosen ? colours.accent : colours.paper);
        if (chosen)
            painter.drawEllipse(at, 7, 7);
        else
            painter.drawRect(QRectF(at.x() - 4, at.y() - 4, 8, 8));
    }
    if (m_mode != Mode::Reshape || m_spot) return;
    for (std::size_t i = 0; i < m_ring.size(); ++i) {
        const QLineF side(onScreen(m_ring[i]), onScreen(m_ring[(i + 1) % m_ring.size()]));
        if (side.length() <= 5 * reach) continue;
        painter.setPen(QPen(colours.accent, 1.4));
        painter.setBrush(colours.paper);
        painter.drawEllipse(side.center(), 3.2, 3.2);
    }
}

} // namespace boltwright::ui
