#include "ui/canvas/tools/tape_tool.h"

#include "ui/canvas/canvas.h"
#include "ui/canvas/markings_drawing.h"
#include "ui/drawing/table_frame.h"
#include "ui/text/words.h"

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {
constexpr double tapeReachPixels = 10;
}

void TapeTool::entered() {
    // For keys it begins at a corner of what is selected, or at the corner of the cloth.
    const JobDocument &document = m_canvas.document();
    const int cut = document.selectedCut();
    m_sheet = m_canvas.table().sheets().isEmpty() ? -1 : 0;
    m_to = {};
    if (cut >= 0) {
        const Cut &own = document.layout().cuts[std::size_t(cut)];
        m_sheet = m_canvas.table().sheetOf(sheetOf(document.job(), own));
        m_to = {Mark::Kind::Corner, {own.x, own.y}, {}};
    }
    m_canvas.viewport()->setCursor(Qt::CrossCursor);
}

void TapeTool::left() {
    m_from.reset();
    m_drawing = false;
    m_canvas.viewport()->setCursor(Qt::ArrowCursor);
}

Mark TapeTool::markAt(QPoint at, Qt::KeyboardModifiers keys) const {
    const JobDocument &document = m_canvas.document();
    const ClothPoint hand = onCloth(m_canvas.toSheet(m_sheet, at));
    const bool free = keys & (Qt::AltModifier | Qt::ControlModifier);
    const Length reach = free ? Length{} : m_canvas.lengthOf(tapeReachPixels);
    const auto from = m_drawing ? m_from : std::nullopt;
    return markNear(document.job(), document.layout(), m_canvas.table().sheets()[m_sheet].sheet, hand, reach, from);
}

void TapeTool::pressed(QMouseEvent *event) {
    if (event->button() != Qt::LeftButton) return;
    m_sheet = m_canvas.sheetNear(event->pos());
    if (m_sheet < 0) return;
    m_drawing = false;
    m_from.reset();
    m_to = markAt(event->pos(), event->modifiers());
    m_from = m_to.at;
    m_drawing = true;
    m_canvas.viewport()->update();
}

void TapeTool::moved(QMouseEvent *event) {
    if (!m_drawing && m_from) return; // the last reading stays to be read
    if (!m_drawing) m_sheet = m_canvas.sheetNear(event->pos());
    if (m_sheet < 0) return;
    m_to = markAt(event->pos(), event->modifiers());
    if (m_drawing) say();
    m_canvas.viewport()->update();
}

void TapeTool::released(QMouseEvent *event) {
    if (event->button() != Qt::LeftButton || !m_drawing) return;
    m_to = markAt(event->pos(), event->modifiers());
    m_drawing = false;
    if (m_from && *m_from == m_to.at) m_from.reset(); // a click alone measures nothing
    say();
    m_canvas.viewport()->update();
}

bool TapeTool::letGo() {
    if (!m_from) return false;
    m_from.reset();
    m_drawing = false;
    return true;
}

void TapeTool::putDown(QKeyEvent *) {
    if (m_sheet < 0) return;
    if (m_drawing) {
        m_drawing = false;
    } else {
        m_from = m_to.at;
        m_drawing = true;
    }
}

void TapeTool::step(QKeyEvent *event) {
    if (m_sheet < 0) return;
    const JobDocument &document = m_canvas.document();
    const SheetOf &sheet = m_canvas.table().sheets()[m_sheet].sheet;
    if (m_from && !m_drawing) m_from.reset(); // the next one begins
    const Heading heading = headingOf(event->key());
    if (event->modifiers() & Qt::ShiftModifier) {
        if (const auto next = nextMark(document.job(), document.layout(), sheet, m_to.at, heading)) m_to = *next;
    } else {
        m_to = {Mark::Kind::Bare, oneStep(document.job(), sheet, m_to.at, heading), {}};
    }
}

QString TapeTool::reading() const {
    if (!m_from) return {};
    return shownLengthWithUnit(readTape(*m_from, m_to.at).straight, m_canvas.document().job().unit);
}

QString TapeTool::parts() const {
    if (!m_from) return {};
    const TapeReading reading = readTape(*m_from, m_to.at);
    if (reading.across == Length{} || reading.along == Length{}) return {};
    const Unit unit = m_canvas.document().job().unit;
    return tr("%1 across · %2 along").arg(shownLength(reading.across, unit), shownLength(reading.along, unit));
}

void TapeTool::say() {
    QStringList words;
    if (m_from) words << reading() << parts();
    if (!m_to.text.empty()) words << fromCore(m_to.text);
    words.removeAll(QString());
    m_canvas.say(words.isEmpty() ? hint() : words.join(u" · "_s));
}

QString TapeTool::hint() const {
    return tr("Draw the tape from one point to another; it holds at corners and edges. Keys: arrows, with Shift to the "
              "next edge; Enter puts an end down.");
}

void TapeTool::paintOver(QPainter &painter) {
    if (m_sheet < 0 || m_sheet >= m_canvas.table().sheets().size()) return;
    const Colours colours = coloursOf(m_canvas.palette());
    const QTransform toScreen = m_canvas.toViewport(m_sheet);
    const QPointF to = toScreen.map(onTable(m_to.at));
    if (!m_from) {
        if (m_to.kind != Mark::Kind::Bare || m_canvas.hasFocus())
            drawMark(painter, to, m_to.kind == Mark::Kind::Corner, colours);
        return;
    }
    drawReading(painter, {toScreen.map(onTable(*m_from)), to}, reading(), parts(), m_canvas.clothRoom(), colours,
                SlipFonts(m_canvas.font()));
}

} // namespace boltwright::ui
