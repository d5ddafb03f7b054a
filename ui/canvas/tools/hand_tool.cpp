#include "ui/canvas/tools/hand_tool.h"

#include "core/figures/figures.h"
#include "ui/canvas/canvas.h"
#include "ui/drawing/table_frame.h"
#include "ui/text/words.h"

#include <QApplication>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

constexpr double reachPixels = 11; ///< how near an edge must come to attract, at every zoom

} // namespace

void HandTool::left() { giveUp(); }

void HandTool::pressed(QMouseEvent *event) {
    if (event->button() != Qt::LeftButton) return;
    m_pressedAt = m_mouse = event->pos();
    m_free = event->modifiers() & Qt::AltModifier;
    m_name.reset();
    m_fromTray = m_canvas.trayCopyAt(event->pos());
    if (m_fromTray) {
        m_canvas.document().selectPanel(m_fromTray->panel);
        m_holding = Holding::Pressed;
        return;
    }
    const int hit = m_canvas.cutAt(event->pos());
    if (hit < 0) {
        m_canvas.document().select(std::nullopt);
        m_canvas.beginPan(event->pos());
        return;
    }
    m_name = nameOf(m_canvas.document().layout().cuts[std::size_t(hit)]);
    // Taking hold of a panel ends planning, with what it has found so far.
    Q_EMIT m_canvas.takingHold();
    if (indexOf(m_canvas.document().layout(), *m_name) < 0) return;
    m_canvas.document().select(m_name);
    m_holding = Holding::Pressed;
}

void HandTool::moved(QMouseEvent *event) {
    m_mouse = event->pos();
    m_free = event->modifiers() & Qt::AltModifier;
    if (m_holding == Holding::Pressed && (m_mouse - m_pressedAt).manhattanLength() >= QApplication::startDragDistance())
        begin();
    if (m_holding == Holding::Dragging) {
        follow();
        return;
    }
    if (m_holding == Holding::Nothing) {
        const bool over = m_canvas.cutAt(m_mouse) >= 0 || m_canvas.trayCopyAt(m_mouse);
        m_canvas.viewport()->setCursor(over ? Qt::OpenHandCursor : Qt::ArrowCursor);
    }
}

void HandTool::begin() {
    JobDocument &document = m_canvas.document();
    const Job &job = document.job();
    m_start = document.laidLayout();
    if (m_fromTray) {
        const int sheet = m_canvas.sheetNear(m_mouse);
        if (sheet < 0) return;
        const SheetOnTable &on = m_canvas.table().sheets()[sheet];
        m_start = withCopyLaid(job, m_start, *m_fromTray, on.sheet, onCloth(m_canvas.toSheet(sheet, m_mouse)));
        m_cut = int(m_start.cuts.size()) - 1;
        if (m_cut < 0) return;
        const QRectF box = onTable(boxOnCloth(job, m_start, m_start.cuts.back()));
        m_grip = QPointF(box.width(), box.height()) / 2;
    } else {
        m_cut = m_name ? indexOf(m_start, *m_name) : -1;
        if (m_cut < 0) {
            m_holding = Holding::Nothing;
            return;
        }
        const Cut &cut = m_start.cuts[std::size_t(m_cut)];
        if (cut.state != CutState::Planned) {
            m_canvas.showNote(cut.state == CutState::Locked ? tr("locked in place: unlock it to move it")
                                                            : tr("already cut: it stays where it was"));
            m_holding = Holding::Nothing;
            return;
        }
        const int sheet = m_canvas.table().sheetOf(sheetOf(job, cut));
        m_grip = m_canvas.toSheet(sheet, m_pressedAt) - onTable(ClothPoint{cut.x, cut.y});
    }
    m_holding = Holding::Dragging;
    m_canvas.viewport()->setCursor(Qt::ClosedHandCursor);
    m_canvas.hold(m_fromTray ? std::nullopt : std::optional(m_cut));
}

Settled HandTool::settleAt(Layout &layout, bool lettingGo) const {
    const Job &job = m_canvas.document().job();
    int sheet = m_canvas.sheetUnder(m_mouse);
    if (sheet < 0) sheet = m_canvas.table().sheetOf(sheetOf(job, layout.cuts[std::size_t(m_cut)]));
    const ClothPoint hand = onCloth(m_canvas.toSheet(sheet, m_mouse) - m_grip);
    layout = withCutMoved(job, std::move(layout), m_cut, m_canvas.table().sheets()[sheet].sheet, hand);
    const Length reach = m_free ? Length{} : onCloth(QPointF(0, reachPixels / m_canvas.table().scale())).x;
    const Settled settled =
        lettingGo && !m_free ? rest(job, layout, m_cut, hand, reach) : settle(job, layout, m_cut, hand, reach);
    layout.cuts[std::size_t(m_cut)].x = settled.corner.x;
    layout.cuts[std::size_t(m_cut)].y = settled.corner.y;
    return settled;
}

void HandTool::follow() {
    m_overTray = m_canvas.overTray(m_mouse);
    m_canvas.setTrayWelcoming(m_overTray);
    if (m_overTray) {
        const Cut &cut = m_start.cuts[std::size_t(m_cut)];
        m_canvas.document().showPreview(
            {withCopyPutAside(m_canvas.document().job(), m_start, {cut.panel, cut.copy}), -1, {}});
        return;
    }
    Preview preview{m_start, m_cut, {}};
    preview.settled = settleAt(preview.layout, false);
    m_canvas.document().showPreview(std::move(preview));
    m_canvas.scrollTowards(m_mouse);
}

void HandTool::released(QMouseEvent *event) {
    if (event->button() != Qt::LeftButton) return;
    m_mouse = event->pos();
    if (m_holding == Holding::Dragging) letGo();
    m_holding = Holding::Nothing;
    m_canvas.viewport()->setCursor(m_canvas.cutAt(m_mouse) >= 0 ? Qt::OpenHandCursor : Qt::ArrowCursor);
}

void HandTool::letGo() {
    JobDocument &document = m_canvas.document();
    const Cut cut = m_start.cuts[std::size_t(m_cut)];
    const QString mark = fromCore(document.job().panel(cut.panel)->mark);
    m_canvas.setTrayWelcoming(false);
    m_canvas.hold(std::nullopt);
    if (m_overTray) {
        document.changeLayout(withCopyPutAside(document.job(), m_start, {cut.panel, cut.copy}),
                              tr("Put %1 aside").arg(mark));
        return;
    }
    Layout layout = m_start;
    settleAt(layout, true);
    document.changeLayout(withFigures(document.job(), std::move(layout)),
                          m_fromTray ? tr("Lay %1").arg(mark) : tr("Move %1").arg(mark));
    document.select(nameOf(cut));
}

void HandTool::giveUp() {
    const bool dragging = m_holding == Holding::Dragging;
    m_holding = Holding::Nothing;
    if (!dragging) return;
    m_canvas.setTrayWelcoming(false);
    m_canvas.hold(std::nullopt);
    m_canvas.document().dropPreview();
    m_canvas.viewport()->setCursor(Qt::ArrowCursor);
}

bool HandTool::keyPressed(QKeyEvent *event) {
    if (m_holding != Holding::Dragging) return keyPressedEmptyHanded(event);
    if (event->key() == Qt::Key_Escape) {
        giveUp();
        return true;
    }
    if (event->key() == Qt::Key_Alt) {
        m_free = true;
        follow();
        return true;
    }
    if (event->key() == Qt::Key_R) {
        turnHeld();
        return true;
    }
    return false;
}

bool HandTool::keyPressedEmptyHanded(QKeyEvent *event) {
    switch (event->key()) {
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Up:
    case Qt::Key_Down:
        nudge(event->key(), event->modifiers() & Qt::ShiftModifier);
        return true;
    case Qt::Key_Escape:
        m_canvas.document().select(std::nullopt);
        return true;
    default:
        return false;
    }
}

void HandTool::nudge(int key, bool toNextPlace) {
    Q_EMIT m_canvas.takingHold();
    JobDocument &document = m_canvas.document();
    const int cut = document.selectedCut();
    if (cut < 0) {
        m_canvas.scrollBy(key);
        return;
    }
    const Job &job = document.job();
    Layout layout = document.laidLayout();
    const Cut own = layout.cuts[std::size_t(cut)];
    if (own.state != CutState::Planned) {
        m_canvas.showNote(own.state == CutState::Locked ? tr("locked in place: unlock it to move it")
                                                        : tr("already cut: it stays where it was"));
        return;
    }
    const Heading heading = key == Qt::Key_Left    ? Heading::DownTheRoll
                            : key == Qt::Key_Right ? Heading::UpTheRoll
                            : key == Qt::Key_Up    ? Heading::TowardsLeft
                                                   : Heading::TowardsRight;
    const auto corner = toNextPlace ? nextPlace(job, layout, cut, heading) : std::optional(oneNudge(job, own, heading));
    if (!corner) {
        m_canvas.showNote(tr("no further place that way"));
        return;
    }
    const QString mark = fromCore(job.panel(own.panel)->mark);
    const QString key1 = u"nudge %1 %2 %3"_s.arg(mark).arg(own.copy).arg(own.piece);
    document.changeLayout(withCutMoved(job, std::move(layout), cut, boltwright::sheetOf(job, own), *corner),
                          tr("Move %1").arg(mark), key1);
    m_canvas.showSelection();
}

bool HandTool::tabbed(bool next) {
    // From panel to panel, and beyond the last on to the next widget, so that nobody is caught here.
    JobDocument &document = m_canvas.document();
    const auto &cuts = document.layout().cuts;
    const int now = document.selectedCut();
    const int to = now < 0 ? (next ? 0 : int(cuts.size()) - 1) : now + (next ? 1 : -1);
    if (to < 0 || to >= int(cuts.size())) return false;
    document.select(nameOf(cuts[std::size_t(to)]));
    m_canvas.showSelection();
    return true;
}

QString HandTool::hint() const {
    return tr("Drag a panel and it comes to rest where it may lie; with Alt it snaps to nothing.");
}

void HandTool::turnHeld() {
    const Job &job = m_canvas.document().job();
    Cut &cut = m_start.cuts[std::size_t(m_cut)];
    const auto turns = turnsByHand(job, cut);
    if (turns.empty()) return;
    const auto now = std::find(turns.begin(), turns.end(), cut.turn);
    const Turn next = now == turns.end() || now + 1 == turns.end() ? turns.front() : *(now + 1);
    m_start = withCutTurned(job, m_start, m_cut, next);
    const QRectF box = onTable(boxOnCloth(job, m_start, m_start.cuts[std::size_t(m_cut)]));
    m_grip = QPointF(box.width(), box.height()) / 2;
    follow();
}

bool HandTool::keyReleased(QKeyEvent *event) {
    if (m_holding != Holding::Dragging || event->key() != Qt::Key_Alt) return false;
    m_free = false;
    follow();
    return true;
}

} // namespace boltwright::ui
