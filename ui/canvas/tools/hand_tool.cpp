#include "ui/canvas/tools/hand_tool.h"

#include "core/edit/moves.h"
#include "core/figures/figures.h"
#include "ui/canvas/canvas.h"
#include "ui/drawing/table_frame.h"
#include "ui/text/words.h"

#include <QApplication>

#include <algorithm>
#include <utility>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

constexpr double handReachPixels = 11; ///< how near an edge must come to attract, at every zoom

/// Held down, nothing attracts. Some window managers keep Alt and the mouse to themselves.
bool isFree(Qt::KeyboardModifiers keys) { return keys & (Qt::AltModifier | Qt::ControlModifier); }

} // namespace

void HandTool::left() { giveUp(); }

void HandTool::pressed(QMouseEvent *event) {
    if (event->button() != Qt::LeftButton) return;
    JobDocument &document = m_canvas.document();
    m_pressedAt = m_mouse = event->pos();
    m_free = isFree(event->modifiers());
    m_name.reset();
    m_fromTray = m_canvas.trayCopyAt(event->pos());
    if (m_fromTray) {
        // As below; what has been found so far may have laid this one.
        Q_EMIT m_canvas.takingHold();
        m_fromTray = m_canvas.trayCopyAt(event->pos());
        if (!m_fromTray) return;
        document.selectPanel(m_fromTray->panel);
        m_holding = Holding::Pressed;
        return;
    }
    const bool along = event->modifiers() & Qt::ShiftModifier;
    const int hit = m_canvas.cutAt(event->pos());
    if (hit < 0) {
        m_before.clear();
        if (along)
            for (int cut : document.selectedCuts())
                m_before.push_back(nameOf(document.layout().cuts[std::size_t(cut)]));
        document.selectSeveral(m_before);
        m_holding = Holding::Ring;
        return;
    }
    m_name = nameOf(document.layout().cuts[std::size_t(hit)]);
    // Taking hold of a panel ends planning, with what it has found so far.
    Q_EMIT m_canvas.takingHold();
    const int cut = indexOf(document.layout(), *m_name);
    if (cut < 0) return;
    if (along) {
        document.selectAlso(*m_name);
        if (!document.isSelected(cut)) return;
    } else if (!document.isSelected(cut)) {
        document.select(m_name);
    }
    m_holding = Holding::Pressed;
}

void HandTool::moved(QMouseEvent *event) {
    m_mouse = event->pos();
    m_free = isFree(event->modifiers());
    if (m_holding == Holding::Pressed && (m_mouse - m_pressedAt).manhattanLength() >= QApplication::startDragDistance())
        begin();
    if (m_holding == Holding::Dragging) return follow();
    if (m_holding == Holding::Ring) return followRing();
    if (m_holding == Holding::Nothing) {
        const bool over = m_canvas.cutAt(m_mouse) >= 0 || m_canvas.trayCopyAt(m_mouse);
        m_canvas.viewport()->setCursor(over ? Qt::OpenHandCursor : Qt::ArrowCursor);
    }
}

void HandTool::followRing() {
    const QRectF ring = QRectF(m_pressedAt, m_mouse).normalized();
    JobDocument &document = m_canvas.document();
    std::vector<CutName> names = m_before;
    for (int i = 0; i < m_canvas.table().panels().size(); ++i) {
        const CutName name = nameOf(document.layout().cuts[std::size_t(i)]);
        if (ring.intersects(m_canvas.cutRect(i)) && std::find(names.begin(), names.end(), name) == names.end())
            names.push_back(name);
    }
    document.selectSeveral(names);
    m_canvas.viewport()->update();
}

void HandTool::begin() {
    m_start = m_canvas.document().laidLayout();
    m_with.clear();
    if (!(m_fromTray ? takeFromTray() : takeFromCloth())) {
        m_holding = Holding::Nothing;
        return;
    }
    m_holding = Holding::Dragging;
    m_canvas.viewport()->setCursor(Qt::ClosedHandCursor);
    if (m_fromTray) return m_canvas.hold({});
    std::vector<int> held = m_with;
    held.push_back(m_cut);
    m_canvas.hold(held);
}

bool HandTool::takeFromTray() {
    const Job &job = m_canvas.document().job();
    const int sheet = m_canvas.sheetNear(m_mouse);
    if (sheet < 0) return false;
    const SheetOnTable &on = m_canvas.table().sheets()[sheet];
    m_start = withCopyLaid(job, m_start, *m_fromTray, on.sheet, onCloth(m_canvas.toSheet(sheet, m_mouse)));
    m_cut = int(m_start.cuts.size()) - 1;
    if (m_cut < 0) return false;
    const QRectF box = onTable(boxOnCloth(job, m_start, m_start.cuts.back()));
    m_grip = QPointF(box.width(), box.height()) / 2;
    return true;
}

bool HandTool::takeFromCloth() {
    const JobDocument &document = m_canvas.document();
    m_cut = m_name ? indexOf(m_start, *m_name) : -1;
    if (m_cut < 0) return false;
    const Cut &cut = m_start.cuts[std::size_t(m_cut)];
    if (!mayMove(m_start, m_cut)) {
        sayStays(cut);
        return false;
    }
    const int sheet = m_canvas.table().sheetOf(sheetOf(document.job(), cut));
    if (sheet < 0) return false;
    m_grip = m_canvas.toSheet(sheet, m_pressedAt) - onTable(ClothPoint{cut.x, cut.y});
    m_with = thoseThatMayMove(m_start, document.selectedCuts());
    if (m_with.size() < document.selectedCuts().size()) m_canvas.showNote(tr("what is locked or already cut stays"));
    std::erase(m_with, m_cut);
    return true;
}

void HandTool::sayStays(const Cut &cut) {
    m_canvas.showNote(cut.state == CutState::Locked ? tr("locked in place: unlock it to move it")
                                                    : tr("already cut: it stays where it was"));
}

Settled HandTool::settleAt(Layout &layout, bool lettingGo) const {
    const Job &job = m_canvas.document().job();
    int sheet = m_canvas.sheetUnder(m_mouse);
    if (sheet < 0) sheet = m_canvas.table().sheetOf(sheetOf(job, layout.cuts[std::size_t(m_cut)]));
    if (!m_with.empty()) return settleSeveral(layout, sheet, lettingGo);
    const ClothPoint hand = onCloth(m_canvas.toSheet(sheet, m_mouse) - m_grip);
    layout = withCutMoved(job, std::move(layout), m_cut, m_canvas.table().sheets()[sheet].sheet, hand);
    const Length reach = m_free ? Length{} : m_canvas.lengthOf(handReachPixels);
    Settled settled =
        lettingGo && !m_free ? rest(job, layout, m_cut, hand, reach) : settle(job, layout, m_cut, hand, reach);
    layout.cuts[std::size_t(m_cut)].x = settled.corner.x;
    layout.cuts[std::size_t(m_cut)].y = settled.corner.y;
    return settled;
}

Settled HandTool::settleSeveral(Layout &layout, int sheet, bool lettingGo) const {
    const Job &job = m_canvas.document().job();
    std::vector<int> cuts = m_with;
    cuts.push_back(m_cut);
    const SheetOf home = sheetOf(job, layout.cuts[std::size_t(m_cut)]);
    SheetOf there = m_canvas.table().sheets()[sheet].sheet;
    // Taken from several cloths, each stays on its own.
    if (!std::all_of(cuts.begin(), cuts.end(),
                     [&](int cut) { return sheetOf(job, layout.cuts[std::size_t(cut)]) == home; })) {
        there = home;
        sheet = m_canvas.table().sheetOf(home);
    }
    if (there != home)
        for (int cut : cuts) {
            const Cut own = layout.cuts[std::size_t(cut)];
            layout = withCutMoved(job, std::move(layout), cut, there, {own.x, own.y});
        }
    const ClothPoint hand = onCloth(m_canvas.toSheet(sheet, m_mouse) - m_grip);
    const Length reach = m_free ? Length{} : m_canvas.lengthOf(handReachPixels);
    Settled settled = lettingGo && !m_free ? restTogether(job, layout, cuts, m_cut, hand, reach)
                                           : settleTogether(job, layout, cuts, m_cut, hand, reach);
    const Cut &lead = layout.cuts[std::size_t(m_cut)];
    const Vector by = settled.corner - ClothPoint{lead.x, lead.y};
    layout = withCutsMoved(job, std::move(layout), cuts, by);
    return settled;
}

void HandTool::follow() {
    m_overTray = m_canvas.overTray(m_mouse);
    m_canvas.setTrayWelcoming(m_overTray);
    if (m_overTray) {
        std::vector<int> cuts = m_with;
        cuts.push_back(m_cut);
        m_canvas.document().showPreview({withCutsPutAside(m_canvas.document().job(), m_start, cuts), -1, {}, {}});
        return;
    }
    Preview preview{m_start, m_cut, {}, m_with};
    preview.settled = settleAt(preview.layout, false);
    m_canvas.document().showPreview(std::move(preview));
    m_canvas.scrollTowards(m_mouse);
}

void HandTool::released(QMouseEvent *event) {
    if (event->button() != Qt::LeftButton) return;
    m_mouse = event->pos();
    const Holding was = std::exchange(m_holding, Holding::Nothing);
    if (was == Holding::Dragging) letGo();
    // A plain click on one of several is about that one.
    if (was == Holding::Pressed && m_name && !(event->modifiers() & Qt::ShiftModifier))
        m_canvas.document().select(m_name);
    if (was == Holding::Ring) m_canvas.viewport()->update();
    m_canvas.viewport()->setCursor(m_canvas.cutAt(m_mouse) >= 0 ? Qt::OpenHandCursor : Qt::ArrowCursor);
}

QString HandTool::stepText() const {
    if (!m_with.empty())
        return m_overTray ? tr("Put %n panels aside", nullptr, int(m_with.size()) + 1)
                          : tr("Move %n panels", nullptr, int(m_with.size()) + 1);
    const QString mark = fromCore(m_canvas.document().job().panel(m_start.cuts[std::size_t(m_cut)].panel)->mark);
    if (m_overTray) return tr("Put %1 aside").arg(mark);
    return m_fromTray ? tr("Lay %1").arg(mark) : tr("Move %1").arg(mark);
}

void HandTool::letGo() {
    JobDocument &document = m_canvas.document();
    const Cut cut = m_start.cuts[std::size_t(m_cut)];
    m_canvas.setTrayWelcoming(false);
    m_canvas.hold({});
    std::vector<int> cuts = m_with;
    cuts.push_back(m_cut);
    if (m_overTray) {
        const bool fromTray = m_fromTray.has_value();
        if (fromTray) return document.dropPreview();
        document.changeLayout(withCutsPutAside(document.job(), m_start, cuts), stepText());
        return;
    }
    Layout layout = m_start;
    settleAt(layout, true);
    document.changeLayout(withFigures(document.job(), std::move(layout)), stepText());
    if (m_with.empty()) document.select(nameOf(cut));
}

void HandTool::giveUp() {
    const Holding was = std::exchange(m_holding, Holding::Nothing);
    if (was == Holding::Ring) m_canvas.viewport()->update();
    if (was != Holding::Dragging) return;
    m_canvas.setTrayWelcoming(false);
    m_canvas.hold({});
    m_canvas.document().dropPreview();
    m_canvas.viewport()->setCursor(Qt::ArrowCursor);
}

void HandTool::paintOver(QPainter &painter) {
    if (m_holding != Holding::Ring || m_mouse == m_pressedAt) return;
    const Colours colours = coloursOf(m_canvas.palette());
    const QRectF ring = QRectF(m_pressedAt, m_mouse).normalized();
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(colours.chalkCasing, 3));
    painter.drawRoundedRect(ring, 6, 6);
    painter.setPen(QPen(colours.chalk, 1.4, Qt::DashLine));
    painter.drawRoundedRect(ring, 6, 6);
}

bool HandTool::keyPressed(QKeyEvent *event) {
    if (m_holding == Holding::Ring && event->key() == Qt::Key_Escape) {
        m_canvas.document().selectSeveral(m_before);
        giveUp();
        return true;
    }
    if (m_holding != Holding::Dragging) return keyPressedEmptyHanded(event);
    switch (event->key()) {
    case Qt::Key_Escape:
        giveUp();
        return true;
    case Qt::Key_Alt:
    case Qt::Key_Control:
        m_free = true;
        follow();
        return true;
    case Qt::Key_R:
        turnHeld();
        return true;
    default:
        return false;
    }
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
    JobDocument &document = m_canvas.document();
    if (document.selectedCut() >= 0) Q_EMIT m_canvas.takingHold();
    if (document.selectedCuts().size() > 1) return nudgeSeveral(key, toNextPlace);
    const int cut = document.selectedCut();
    if (cut < 0) {
        m_canvas.scrollBy(key);
        return;
    }
    const Job &job = document.job();
    Layout layout = document.laidLayout();
    const Cut own = layout.cuts[std::size_t(cut)];
    if (own.state != CutState::Planned) {
        sayStays(own);
        return;
    }
    const Heading heading = headingOf(key);
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

void HandTool::nudgeSeveral(int key, bool far) {
    JobDocument &document = m_canvas.document();
    const Layout &layout = document.laidLayout();
    const auto cuts = thoseThatMayMove(layout, document.selectedCuts());
    if (cuts.empty()) return sayStays(layout.cuts[std::size_t(document.selectedCut())]);
    const Length step = smallStep(document.job().unit);
    const ClothPoint to = stepped({}, headingOf(key), far ? Length::ticks(step.ticks() * 8) : step);
    document.changeLayout(withCutsMoved(document.job(), layout, cuts, to - ClothPoint{}),
                          cuts.size() == 1 ? tr("Move 1 panel") : tr("Move %n panels", nullptr, int(cuts.size())),
                          u"nudge several"_s);
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

void HandTool::turnHeld() {
    if (!m_with.empty()) return m_canvas.showNote(tr("several panels are not turned at once"));
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
    if (m_holding != Holding::Dragging || (event->key() != Qt::Key_Alt && event->key() != Qt::Key_Control))
        return false;
    m_free = false;
    follow();
    return true;
}

QString HandTool::hint() const {
    return tr("Drag a panel to where it may lie. Ctrl or Alt: snap to nothing. Shift: several together.");
}

} // namespace boltwright::ui
