#include "ui/canvas/tools/chalk_tool.h"

#include "ui/canvas/canvas.h"
#include "ui/canvas/markings_drawing.h"
#include "ui/drawing/table_frame.h"
#include "ui/text/words.h"

#include <algorithm>
#include <utility>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

constexpr double reachPixels = 10; ///< how near a corner must come to attract
constexpr double gripPixels = 6;   ///< how near the mouse must come to take hold

Length along(ChalkLine::Runs runs, ClothPoint p) { return runs == ChalkLine::Runs::Across ? p.y : p.x; }

} // namespace

SheetOf ChalkTool::sheetOf(int sheet) const { return m_canvas.table().sheets()[sheet].sheet; }

void ChalkTool::entered() { m_canvas.viewport()->setCursor(Qt::CrossCursor); }

void ChalkTool::left() {
    m_held.reset();
    m_ghost.reset();
    m_chosen.reset();
    m_canvas.viewport()->setCursor(Qt::ArrowCursor);
    m_canvas.viewport()->update();
}

std::optional<ChalkTool::Held> ChalkTool::lineNear(QPoint at) const {
    for (int i = 0; i < m_canvas.table().sheets().size(); ++i) {
        const QRectF cloth = m_canvas.sheetRect(i);
        if (!cloth.adjusted(-8, -8, 8, 8).contains(at)) continue;
        const auto &lines = markingsOf(m_canvas.document().job(), sheetOf(i)).lines;
        for (int j = int(lines.size()) - 1; j >= 0; --j) {
            const ChalkLine &line = lines[std::size_t(j)];
            const QLineF drawn = chalkOnScreen(line, m_canvas.toViewport(i), cloth);
            const double off = line.runs == ChalkLine::Runs::Across ? drawn.x1() - at.x() : drawn.y1() - at.y();
            if (std::abs(off) <= gripPixels) return Held{i, j, line.runs, line.at, false};
        }
    }
    return std::nullopt;
}

std::optional<ChalkTool::Held> ChalkTool::newAt(QPoint at, Qt::KeyboardModifiers keys) const {
    const int sheet = m_canvas.sheetUnder(at);
    if (sheet < 0 || !m_canvas.clothRoom().contains(at)) return std::nullopt;
    Held held{sheet, -1, keys & Qt::ShiftModifier ? ChalkLine::Runs::Along : ChalkLine::Runs::Across, {}, false};
    const JobDocument &document = m_canvas.document();
    const Length hand = along(held.runs, onCloth(m_canvas.toSheet(sheet, at)));
    const bool free = keys & (Qt::AltModifier | Qt::ControlModifier);
    const Length reach = free ? Length{} : m_canvas.lengthOf(reachPixels);
    held.at =
        along(held.runs, chalkPlace(document.job(), document.layout(), sheetOf(sheet), held.runs, hand, reach).at);
    return held;
}

void ChalkTool::pressed(QMouseEvent *event) {
    if (event->button() != Qt::LeftButton) return;
    m_held = lineNear(event->pos());
    if (!m_held) m_held = newAt(event->pos(), event->modifiers());
    m_ghost.reset();
    if (m_held && m_held->line >= 0) m_chosen = {m_held->sheet, m_held->line};
    m_canvas.viewport()->update();
}

void ChalkTool::moveTo(QPoint at, Qt::KeyboardModifiers keys) {
    const JobDocument &document = m_canvas.document();
    const QRectF cloth = m_canvas.sheetRect(m_held->sheet).adjusted(-24, -24, 24, 24);
    m_held->offCloth = !cloth.contains(at);
    const Length hand = along(m_held->runs, onCloth(m_canvas.toSheet(m_held->sheet, at)));
    const bool free = keys & (Qt::AltModifier | Qt::ControlModifier);
    const Length reach = free ? Length{} : m_canvas.lengthOf(reachPixels);
    m_held->at =
        along(m_held->runs,
              chalkPlace(document.job(), document.layout(), sheetOf(m_held->sheet), m_held->runs, hand, reach).at);
    say(*m_held);
}

void ChalkTool::moved(QMouseEvent *event) {
    if (m_held) {
        moveTo(event->pos(), event->modifiers());
    } else {
        const auto near = lineNear(event->pos());
        m_ghost = near ? std::nullopt : newAt(event->pos(), event->modifiers());
        m_canvas.viewport()->setCursor(
            near ? (near->runs == ChalkLine::Runs::Across ? Qt::SplitHCursor : Qt::SplitVCursor) : Qt::CrossCursor);
        if (m_ghost) say(*m_ghost);
    }
    m_canvas.viewport()->update();
}

void ChalkTool::released(QMouseEvent *event) {
    if (event->button() != Qt::LeftButton || !m_held) return;
    const Held held = *std::exchange(m_held, std::nullopt);
    JobDocument &document = m_canvas.document();
    const SheetOf sheet = sheetOf(held.sheet);
    if (held.line < 0) {
        if (held.offCloth) return m_canvas.viewport()->update();
        document.changeJob(withChalkLine(document.job(), sheet, {held.runs, held.at, {}}), tr("Draw a chalk line"));
        m_chosen = {held.sheet, int(markingsOf(document.job(), sheet).lines.size()) - 1};
    } else if (held.offCloth) {
        m_chosen = {held.sheet, held.line};
        rubOut();
    } else {
        document.changeJob(withChalkLineMoved(document.job(), sheet, held.line, held.at), tr("Move a chalk line"));
    }
    m_canvas.viewport()->update();
}

const ChalkLine *ChalkTool::chosenLine() const {
    if (!m_chosen || m_chosen->first >= m_canvas.table().sheets().size()) return nullptr;
    const auto &lines = markingsOf(m_canvas.document().job(), sheetOf(m_chosen->first)).lines;
    return m_chosen->second < int(lines.size()) ? &lines[std::size_t(m_chosen->second)] : nullptr;
}

bool ChalkTool::letGo() {
    if (m_held) {
        m_held.reset();
        return true;
    }
    return std::exchange(m_chosen, std::nullopt).has_value();
}

void ChalkTool::putDown(QKeyEvent *event) {
    // At the selected panel's corner, or in the middle of what is to be seen.
    JobDocument &document = m_canvas.document();
    const bool lengthwise = event->modifiers() & Qt::ShiftModifier;
    const ChalkLine::Runs runs = lengthwise ? ChalkLine::Runs::Along : ChalkLine::Runs::Across;
    int sheet = m_canvas.sheetNear(m_canvas.clothRoom().center());
    if (sheet < 0) return;
    ClothPoint at = onCloth(m_canvas.toSheet(sheet, m_canvas.clothRoom().center()));
    if (const int cut = document.selectedCut(); cut >= 0) {
        const Cut &own = document.layout().cuts[std::size_t(cut)];
        sheet = m_canvas.table().sheetOf(boltwright::sheetOf(document.job(), own));
        if (sheet < 0) return;
        at = {own.x, own.y};
    }
    const SheetOf where = sheetOf(sheet);
    document.changeJob(withChalkLine(document.job(), where, {runs, along(runs, at), {}}), tr("Draw a chalk line"));
    m_chosen = {sheet, int(markingsOf(document.job(), where).lines.size()) - 1};
    say({sheet, m_chosen->second, runs, along(runs, at), false});
}

void ChalkTool::step(QKeyEvent *event) {
    const ChalkLine *line = chosenLine();
    if (!line) return m_canvas.scrollBy(event->key());
    JobDocument &document = m_canvas.document();
    const Length small = smallStep(document.job().unit);
    const Length step = event->modifiers() & Qt::ShiftModifier ? Length::ticks(small.ticks() * 8) : small;
    const ClothPoint here = line->runs == ChalkLine::Runs::Across ? ClothPoint{{}, line->at} : ClothPoint{line->at, {}};
    const Length at = along(line->runs, stepped(here, headingOf(event->key()), step));
    const ChalkLine::Runs runs = line->runs;
    document.changeJob(withChalkLineMoved(document.job(), sheetOf(m_chosen->first), m_chosen->second, at),
                       tr("Move a chalk line"), u"chalk %1 %2"_s.arg(m_chosen->first).arg(m_chosen->second));
    say({m_chosen->first, m_chosen->second, runs, at, false});
}

bool ChalkTool::takeAway() {
    rubOut();
    return true;
}

void ChalkTool::rubOut() {
    if (!chosenLine()) return;
    JobDocument &document = m_canvas.document();
    const auto [sheet, line] = *std::exchange(m_chosen, std::nullopt);
    document.changeJob(withoutChalkLine(document.job(), sheetOf(sheet), line), tr("Rub out a chalk line"));
    m_canvas.say(tr("The chalk line is rubbed out."));
}

bool ChalkTool::tabbed(bool next) {
    std::vector<std::pair<int, int>> all;
    for (int i = 0; i < m_canvas.table().sheets().size(); ++i)
        for (int j = 0; j < int(markingsOf(m_canvas.document().job(), sheetOf(i)).lines.size()); ++j)
            all.push_back({i, j});
    const auto now = m_chosen ? std::find(all.begin(), all.end(), *m_chosen) : all.end();
    const auto to =
        nextInRow(int(all.size()), now == all.end() ? std::nullopt : std::optional(int(now - all.begin())), next);
    if (!to) {
        m_chosen.reset();
        return false;
    }
    m_chosen = all[std::size_t(*to)];
    const ChalkLine *line = chosenLine();
    say({m_chosen->first, m_chosen->second, line->runs, line->at, false});
    m_canvas.viewport()->update();
    return true;
}

void ChalkTool::say(const Held &held) {
    if (held.offCloth) return m_canvas.say(tr("Let go here, and the line is rubbed out."));
    const JobDocument &document = m_canvas.document();
    const Unit unit = document.job().unit;
    const Mark mark =
        chalkPlace(document.job(), document.layout(), sheetOf(held.sheet), held.runs, held.at, Length::ticks(1));
    QString text = held.runs == ChalkLine::Runs::Across
                       ? tr("Chalk line across, %1 up the roll").arg(shownLengthWithUnit(held.at, unit))
                       : tr("Chalk line along, %1 from the left edge").arg(shownLengthWithUnit(held.at, unit));
    if (!mark.text.empty()) text += tr(" · at the %1").arg(fromCore(mark.text));
    m_canvas.say(text);
}

QString ChalkTool::hint() const {
    return tr(
        "A click draws a chalk line across, with Shift along; drag a line to move it, off the cloth to rub it out. "
        "Keys: Enter, Tab, arrows, Delete.");
}

void ChalkTool::paintOver(QPainter &painter) {
    const Colours colours = coloursOf(m_canvas.palette());
    const auto draw = [&](const Held &held, ChalkLook look) {
        if (held.sheet >= m_canvas.table().sheets().size()) return;
        drawChalkLine(
            painter,
            chalkOnScreen({held.runs, held.at, {}}, m_canvas.toViewport(held.sheet), m_canvas.sheetRect(held.sheet)),
            colours, look);
    };
    if (m_held)
        draw(*m_held, m_held->offCloth ? ChalkLook::Faint : ChalkLook::Held);
    else if (const ChalkLine *line = chosenLine())
        draw({m_chosen->first, m_chosen->second, line->runs, line->at, false}, ChalkLook::Held);
    if (m_ghost) draw(*m_ghost, ChalkLook::Faint);
}

} // namespace boltwright::ui
