#include "ui/canvas/tools/outline_tool.h"

#include "core/job/fault_words.h"
#include "ui/canvas/canvas.h"
#include "ui/drawing/table_frame.h"
#include "ui/text/words.h"

using namespace Qt::StringLiterals;

namespace boltwright::ui {

OutlineTool::OutlineTool(Canvas &canvas) : Tool(canvas) {
    m_editor.setSnap(wholeStep(document().job().unit));
    m_editor.setSpotRadius(wholeStep(document().job().unit));
    connect(&m_editor, &RingEditor::looksDifferent, this, [this] { m_canvas.viewport()->update(); });
    connect(&m_editor, &RingEditor::cornerChosen, this, &OutlineTool::stateChanged);
    connect(&m_editor, &RingEditor::refused, this, &OutlineTool::refused);
    connect(&m_editor, &RingEditor::reshaped, this, [this](const ClothRing &ring, const QString &key) {
        if (m_chosen)
            change(withOutline(document().job(), *m_chosen, ring),
                   m_chosen->flaw ? tr("Change a flaw") : tr("Change a remnant"), mergeKeyOf(key));
    });
    connect(&m_editor, &RingEditor::finished, this, &OutlineTool::take);
    connect(&m_editor, &RingEditor::picked, this, [this](ClothPoint point) {
        const SheetOf sheet = m_sheet;
        begin(Task::Change);
        change(withMotif(document().job(), sheet, point), tr("Show where a motif sits"));
    });
    connect(&canvas, &Canvas::toolChanged, this, [this] {
        if (m_inHand && &m_canvas.tool() != this) putDown();
    });
    connect(&document(), &JobDocument::changed, this, [this](Changes changes) {
        if (m_inHand && (changes & (Change::Cloths | Change::NewJob | Change::Card))) follow();
    });
}

JobDocument &OutlineTool::document() const { return m_canvas.document(); }

void OutlineTool::entered() {
    m_inHand = true;
    document().select(std::nullopt);
    const auto all = outlinesOf(document().job());
    m_task = Task::Change;
    m_chosen.reset();
    choose(all.empty() ? std::nullopt : std::optional(all.front()));
}

void OutlineTool::left() {
    if (m_task == Task::Change) m_editor.giveUp();
}

void OutlineTool::putDown() {
    m_inHand = false;
    m_task = Task::Change;
    m_editor.rest();
}

void OutlineTool::choose(const std::optional<OutlineOf> &which) {
    m_task = Task::Change;
    const bool other = which != m_chosen;
    m_chosen = which;
    if (other) m_editor.rest();
    follow();
}

/// Brings editor and sheet in line with what the job holds now.
void OutlineTool::follow() {
    const Job &job = document().job();
    if (m_chosen && !outlineOf(job, *m_chosen)) m_chosen.reset();
    if (m_chosen) m_sheet = m_chosen->sheet;
    if (m_canvas.table().sheetOf(m_sheet) < 0 && !m_canvas.table().sheets().isEmpty())
        m_sheet = m_canvas.table().sheets().front().sheet;
    if (m_task == Task::Change) {
        if (m_chosen)
            m_editor.reshape(*outlineOf(job, *m_chosen), m_chosen->flaw.has_value());
        else
            m_editor.rest();
    }
    Q_EMIT stateChanged();
    m_canvas.viewport()->update();
}

void OutlineTool::begin(Task task) {
    if (task == Task::Change) return choose(m_chosen);
    m_task = task;
    const int sheet = m_canvas.table().sheetOf(m_sheet);
    // Typed corners begin where they can be seen.
    m_offset = sheet < 0 ? QPointF() : m_canvas.toSheet(sheet, QPointF(90, 150));
    if (task == Task::Remnant || task == Task::Flaw) m_editor.trace();
    if (task == Task::Spot) m_editor.markSpot();
    if (task == Task::Motif) m_editor.pickPoint();
    Q_EMIT stateChanged();
}

QString OutlineTool::mergeKeyOf(const QString &key) const {
    if (key.isEmpty() || !m_chosen) return {};
    return u"outline %1 %2 %3 %4"_s.arg(fromCore(m_chosen->sheet.cloth), fromCore(m_chosen->sheet.on.value_or("")))
        .arg(m_chosen->flaw.value_or(-1))
        .arg(key);
}

void OutlineTool::change(Result<Job> job, const QString &text, const QString &mergeKey) {
    if (!job) {
        Q_EMIT refused(withFractions(fromCore(job.error().text)));
        return follow();
    }
    if (const auto faults = faultsInWords(*job); !faults.empty()) {
        Q_EMIT refused(withFractions(fromCore(faults.front())));
        return follow();
    }
    document().changeJob(std::move(*job), text, mergeKey);
}

void OutlineTool::take(const ClothRing &ring) {
    const Task task = m_task;
    m_task = Task::Change;
    auto with = task == Task::Remnant ? withRemnant(document().job(), m_sheet.cloth, ring)
                                      : withFlaw(document().job(), m_sheet, ring);
    if (!with) {
        Q_EMIT refused(fromCore(with.error().text));
        return follow();
    }
    m_chosen = with->second;
    change(std::move(with->first), task == Task::Remnant ? tr("Draw a remnant") : tr("Mark a flaw"));
}

// What is typed.

void OutlineTool::moveCorner(ClothPoint to, const QString &what) {
    const int corner = m_editor.corner();
    if (!m_chosen || corner < 0) return;
    change(withOutline(document().job(), *m_chosen, withCornerMoved(m_editor.ring(), corner, to)), what);
}

void OutlineTool::cutCornerOut(Length before, Length after) {
    const int corner = m_editor.corner();
    if (!m_chosen || corner < 0) return;
    const auto ring = withCornerCutOut(m_editor.ring(), corner, before, after);
    if (!ring) return Q_EMIT refused(fromCore(ring.error().text));
    change(withOutline(document().job(), *m_chosen, *ring), tr("Cut a corner out"));
}

void OutlineTool::makeSpot(const Spot &spot, const QString &what) {
    if (m_task == Task::Spot) return take(boltwright::ringOf(spot));
    if (m_chosen) change(withOutline(document().job(), *m_chosen, boltwright::ringOf(spot)), what);
}

void OutlineTool::addRectangle(Length across, Length along) {
    m_task = Task::Remnant;
    take(boltwright::ringOf(ClothBox{{}, {across, along}}));
}

void OutlineTool::remove() {
    if (!m_chosen) return;
    const OutlineOf gone = *m_chosen;
    auto job = withoutOutline(document().job(), gone);
    if (job && gone.flaw) m_chosen = OutlineOf{gone.sheet, {}};
    if (job && !gone.flaw) m_chosen.reset();
    change(std::move(job), gone.flaw ? tr("Remove a flaw") : tr("Remove a remnant"));
}

// The hand.

void OutlineTool::goTo(int sheet) {
    if (sheet < 0) return;
    m_sheet = m_canvas.table().sheets()[sheet].sheet;
}

/// Where the outline in hand lies on the screen now; the table may have been scrolled or zoomed.
void OutlineTool::view() {
    const int sheet = m_canvas.table().sheetOf(m_sheet);
    if (sheet < 0) return;
    QTransform toScreen = m_canvas.toViewport(sheet);
    if (m_task == Task::Remnant) toScreen = QTransform::fromTranslate(m_offset.x(), m_offset.y()) * toScreen;
    m_editor.setView(toScreen, document().job().unit);
}

std::optional<OutlineOf> OutlineTool::outlineAt(QPointF at) const {
    const int sheet = m_canvas.sheetUnder(at);
    if (sheet < 0) return {};
    const Job &job = document().job();
    const SheetOf &on = m_canvas.table().sheets()[sheet].sheet;
    const QPointF there = m_canvas.toSheet(sheet, at);
    const double near = 5 / m_canvas.table().scale(); // a small flaw is hit though it is a few pixels wide
    std::optional<OutlineOf> found;
    double smallest = 0;
    for (const OutlineOf &which : outlinesOf(job)) {
        if (!(which.sheet == on) || !which.flaw) continue;
        const QRectF box = onTable(*outlineOf(job, which)).boundingRect().adjusted(-near, -near, near, near);
        const double area = box.width() * box.height();
        if (!box.contains(there) || (found && area >= smallest)) continue;
        found = which;
        smallest = area;
    }
    if (!found && on.on) found = OutlineOf{on, {}};
    return found;
}

void OutlineTool::pressed(QMouseEvent *event) {
    if (event->button() != Qt::LeftButton) return;
    const QPointF at = event->position();
    if (event->type() == QEvent::MouseButtonDblClick && m_editor.mode() == RingEditor::Mode::Trace)
        return m_editor.closeRing(); // its first click has set the last corner
    const bool fresh = m_editor.ring().empty();
    if (m_task == Task::Remnant && fresh) {
        const int sheet = m_canvas.table().sheetOf(m_sheet);
        if (sheet >= 0) m_offset = m_canvas.toSheet(sheet, at);
    } else if (m_task != Task::Change && m_task != Task::Remnant && fresh) {
        const int sheet = m_canvas.sheetUnder(at);
        if (sheet < 0) return Q_EMIT refused(tr("point at the cloth"));
        goTo(sheet);
    }
    view();
    if (m_editor.pressed(at, event->modifiers())) return;
    if (const auto which = outlineAt(at))
        choose(which);
    else
        m_canvas.beginPan(event->pos());
}

void OutlineTool::moved(QMouseEvent *event) {
    const QPointF at = event->position();
    if (m_task != Task::Change && m_editor.ring().empty()) {
        const int sheet = m_task == Task::Remnant ? m_canvas.table().sheetOf(m_sheet) : m_canvas.sheetNear(at);
        if (m_task == Task::Remnant && sheet >= 0)
            m_offset = m_canvas.toSheet(sheet, at);
        else if (!(event->buttons() & Qt::LeftButton))
            goTo(sheet);
    }
    view();
    m_editor.moved(at, event->modifiers());
    m_canvas.viewport()->setCursor(m_editor.cursorAt(at));
}

void OutlineTool::released(QMouseEvent *event) {
    if (event->button() != Qt::LeftButton) return;
    view();
    m_editor.released(event->position(), event->modifiers());
}

bool OutlineTool::wants(QKeyEvent *event) {
    return m_editor.wants(event) || (m_chosen && m_task == Task::Change && event->key() == Qt::Key_Delete);
}

bool OutlineTool::keyPressed(QKeyEvent *event) {
    view();
    if (m_editor.keyPressed(event)) return true;
    if (event->key() == Qt::Key_Delete && m_task == Task::Change && m_chosen) {
        remove();
        return true;
    }
    if (event->key() != Qt::Key_Escape) return false;
    if (m_task != Task::Change)
        choose(m_chosen);
    else if (m_editor.corner() >= 0)
        m_editor.chooseCorner(-1);
    else
        Q_EMIT doneWanted();
    return true;
}

bool OutlineTool::tabbed(bool next) { return m_task == Task::Change && m_editor.stepped(next); }

QString OutlineTool::hint() const { return tr("Remnants and flaws: what can be done stands above the table."); }

QString OutlineTool::advice() const {
    switch (m_task) {
    case Task::Remnant:
    case Task::Flaw:
        return tr("Click corner after corner, and the first once more to close. Escape takes the last back.");
    case Task::Spot:
        return tr("Click the middle of the spot and drag for its radius, or type both.");
    case Task::Motif:
        return tr("Click the middle of a motif or stripe.");
    case Task::Change:
        break;
    }
    if (!m_chosen) return tr("Draw a remnant, or mark on the cloth what must not be cut from.");
    if (m_editor.spot()) return tr("Drag its handle for the radius, its inside to move it; the arrow keys do as well.");
    if (m_editor.corner() >= 0)
        return tr("The arrow keys move this corner, Tab goes to the next, Insert sets one half way, Delete takes it "
                  "away.");
    if (m_chosen->flaw)
        return tr("Drag its corners, its inside to move it, or the middle of a side for one corner more.");
    return tr("Drag a corner, or the middle of a side for one corner more. Tab goes from corner to corner.");
}

void OutlineTool::paintOver(QPainter &painter) {
    view();
    m_editor.paint(painter, coloursOf(m_canvas.palette()), SlipFonts(m_canvas.font()),
                   QRectF(m_canvas.viewport()->rect()));
}

} // namespace boltwright::ui
