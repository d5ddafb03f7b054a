#include "ui/canvas/tools/note_tool.h"

#include "ui/canvas/canvas.h"
#include "ui/canvas/markings_drawing.h"
#include "ui/drawing/table_frame.h"
#include "ui/text/words.h"

#include <QApplication>
#include <QLineEdit>

#include <algorithm>
#include <utility>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

/// Return keeps, Escape does not, and so the table's own keys never see them.
class NoteEdit : public QLineEdit {
public:
    NoteEdit(QWidget *parent, std::function<void(bool)> done) : QLineEdit(parent), m_done(std::move(done)) {}

protected:
    void keyPressEvent(QKeyEvent *event) override {
        if (event->key() == Qt::Key_Escape) return m_done(false);
        if (event->key() == Qt::Key_Return || event->key() == Qt::Key_Enter) return m_done(true);
        QLineEdit::keyPressEvent(event);
    }
    void focusOutEvent(QFocusEvent *event) override {
        QLineEdit::focusOutEvent(event);
        if (event->reason() != Qt::PopupFocusReason && event->reason() != Qt::ActiveWindowFocusReason) m_done(true);
    }

private:
    std::function<void(bool)> m_done;
};

} // namespace

SheetOf NoteTool::sheetOf(int sheet) const { return m_canvas.table().sheets()[sheet].sheet; }

const PinnedNote *NoteTool::noteOf(const Which &which) const {
    if (which.sheet < 0 || which.sheet >= m_canvas.table().sheets().size() || which.note < 0) return nullptr;
    const auto &notes = markingsOf(m_canvas.document().job(), sheetOf(which.sheet)).notes;
    return which.note < int(notes.size()) ? &notes[std::size_t(which.note)] : nullptr;
}

std::optional<NoteTool::Which> NoteTool::noteNear(QPoint at) const {
    const SlipFonts fonts(m_canvas.font());
    for (int i = 0; i < m_canvas.table().sheets().size(); ++i) {
        const auto &notes = markingsOf(m_canvas.document().job(), sheetOf(i)).notes;
        for (int j = int(notes.size()) - 1; j >= 0; --j) {
            const PinnedNote &note = notes[std::size_t(j)];
            const QPointF pin = m_canvas.toViewport(i).map(onTable(note.at));
            if (pinRect(pin, fromCore(note.text), m_canvas.clothRoom(), fonts).contains(at)) return Which{i, j};
        }
    }
    return std::nullopt;
}

void NoteTool::entered() { m_canvas.viewport()->setCursor(Qt::CrossCursor); }

void NoteTool::left() {
    if (m_editor && m_editor->hasFocus()) return; // writing goes on; it ends by itself
    finishWriting(true);
    m_chosen.reset();
    m_dragged.reset();
    m_canvas.viewport()->setCursor(Qt::ArrowCursor);
    m_canvas.viewport()->update();
}

void NoteTool::pressed(QMouseEvent *event) {
    if (event->button() != Qt::LeftButton) return;
    finishWriting(true);
    m_pressedAt = event->pos();
    m_dragged.reset();
    const auto near = noteNear(event->pos());
    m_pressedOnPin = near.has_value();
    m_chosen = near;
    if (near && event->type() == QEvent::MouseButtonDblClick) {
        m_pressedOnPin = false;
        write(*near, noteOf(*near)->at);
    }
    m_canvas.viewport()->update();
}

void NoteTool::moved(QMouseEvent *event) {
    if (!m_pressedOnPin || !(event->buttons() & Qt::LeftButton)) {
        m_canvas.viewport()->setCursor(noteNear(event->pos()) ? Qt::OpenHandCursor : Qt::CrossCursor);
        return;
    }
    if (!m_dragged && (event->pos() - m_pressedAt).manhattanLength() < QApplication::startDragDistance()) return;
    const PinnedNote *note = m_chosen ? noteOf(*m_chosen) : nullptr;
    if (!note) return;
    const QPointF from = m_canvas.toViewport(m_chosen->sheet).map(onTable(note->at));
    m_dragged = onCloth(m_canvas.toSheet(m_chosen->sheet, from + QPointF(event->pos() - m_pressedAt)));
    m_canvas.viewport()->update();
}

void NoteTool::released(QMouseEvent *event) {
    if (event->button() != Qt::LeftButton || m_editor) return;
    JobDocument &document = m_canvas.document();
    if (m_dragged && m_chosen) {
        const ClothPoint to = *std::exchange(m_dragged, std::nullopt);
        const QPointF screen = m_canvas.toViewport(m_chosen->sheet).map(onTable(to));
        m_pressedOnPin = false;
        if (m_canvas.sheetUnder(screen) != m_chosen->sheet) return takeOff();
        document.changeJob(withNoteMoved(document.job(), sheetOf(m_chosen->sheet), m_chosen->note, to),
                           tr("Move a note"));
        return;
    }
    if (std::exchange(m_pressedOnPin, false)) return;
    const int sheet = m_canvas.sheetUnder(event->pos());
    if (sheet < 0 || !m_canvas.clothRoom().contains(event->pos())) return;
    write({sheet, -1}, onCloth(m_canvas.toSheet(sheet, event->pos())));
}

void NoteTool::write(Which which, ClothPoint at) {
    m_writing = which;
    m_writingAt = at;
    // The line lies on the canvas and not on what it shows, so that its own keys reach it first.
    m_editor = new NoteEdit(m_canvas.viewport(), [this](bool keep) { finishWriting(keep); });
    m_editor->setAccessibleName(tr("Words of the note"));
    m_editor->setToolTip(tr("What the cutter should know here. Enter pins it, Escape leaves it."));
    m_editor->setPlaceholderText(tr("What should be known here?"));
    m_editor->setMaxLength(400);
    if (const PinnedNote *note = noteOf(which)) m_editor->setText(fromCore(note->text));
    const QPointF pin = m_canvas.toViewport(which.sheet).map(onTable(at));
    const QSize size(std::max(220, m_editor->sizeHint().width()), m_editor->sizeHint().height());
    QRect place(pin.toPoint() + QPoint(8, 8), size);
    const QRect room = m_canvas.clothRoom().toRect();
    place.moveLeft(std::min(place.left(), std::max(room.left(), room.right() - size.width() - 4)));
    place.moveTop(std::min(place.top(), std::max(room.top(), room.bottom() - size.height() - 4)));
    m_editor->setGeometry(place);
    m_editor->show();
    m_editor->selectAll();
    m_editor->setFocus();
}

void NoteTool::finishWriting(bool keep) {
    if (!m_editor) return;
    QLineEdit *editor = std::exchange(m_editor, nullptr);
    const bool hadFocus = editor->hasFocus();
    const std::string text = toCore(editor->text().simplified());
    editor->hide();
    editor->deleteLater();
    if (hadFocus) m_canvas.setFocus();
    if (!keep) return m_canvas.viewport()->update();
    JobDocument &document = m_canvas.document();
    const SheetOf sheet = sheetOf(m_writing.sheet);
    if (m_writing.note >= 0) {
        document.changeJob(withNoteSaying(document.job(), sheet, m_writing.note, text),
                           text.empty() ? tr("Take off a note") : tr("Change a note"));
        m_chosen = text.empty() ? std::nullopt : std::optional(m_writing);
    } else {
        document.changeJob(withNotePinned(document.job(), sheet, m_writingAt, text), tr("Pin a note"));
        if (!text.empty()) m_chosen = Which{m_writing.sheet, int(markingsOf(document.job(), sheet).notes.size()) - 1};
    }
    m_canvas.viewport()->update();
}

void NoteTool::putDown(QKeyEvent *) {
    JobDocument &document = m_canvas.document();
    if (m_chosen && noteOf(*m_chosen)) return write(*m_chosen, noteOf(*m_chosen)->at);
    const int cut = document.selectedCut();
    int sheet = m_canvas.sheetNear(m_canvas.clothRoom().center());
    if (sheet < 0) return;
    ClothPoint at = onCloth(m_canvas.toSheet(sheet, m_canvas.clothRoom().center()));
    if (cut >= 0) {
        const Cut &own = document.layout().cuts[std::size_t(cut)];
        sheet = m_canvas.table().sheetOf(boltwright::sheetOf(document.job(), own));
        if (sheet < 0) return;
        at = onCloth(onTable(boxOnCloth(document.job(), document.layout(), own)).center());
    }
    write({sheet, -1}, at);
}

void NoteTool::step(QKeyEvent *event) {
    const PinnedNote *note = m_chosen ? noteOf(*m_chosen) : nullptr;
    if (!note) return m_canvas.scrollBy(event->key());
    JobDocument &document = m_canvas.document();
    const Length small = smallStep(document.job().unit);
    const Length far = event->modifiers() & Qt::ShiftModifier ? Length::ticks(small.ticks() * 8) : small;
    document.changeJob(withNoteMoved(document.job(), sheetOf(m_chosen->sheet), m_chosen->note,
                                     stepped(note->at, headingOf(event->key()), far)),
                       tr("Move a note"), u"note %1 %2"_s.arg(m_chosen->sheet).arg(m_chosen->note));
}

void NoteTool::takeOff() {
    if (!m_chosen || !noteOf(*m_chosen)) return;
    JobDocument &document = m_canvas.document();
    const Which which = *std::exchange(m_chosen, std::nullopt);
    document.changeJob(withoutNote(document.job(), sheetOf(which.sheet), which.note), tr("Take off a note"));
    m_canvas.say(tr("The note is taken off."));
}

bool NoteTool::letGo() {
    if (m_dragged) {
        m_dragged.reset();
        m_pressedOnPin = false;
        return true;
    }
    return std::exchange(m_chosen, std::nullopt).has_value();
}

bool NoteTool::takeAway() {
    takeOff();
    return true;
}

bool NoteTool::tabbed(bool next) {
    std::vector<Which> all;
    for (int i = 0; i < m_canvas.table().sheets().size(); ++i)
        for (int j = 0; j < int(markingsOf(m_canvas.document().job(), sheetOf(i)).notes.size()); ++j)
            all.push_back({i, j});
    const auto now = m_chosen ? std::find(all.begin(), all.end(), *m_chosen) : all.end();
    const auto to =
        nextInRow(int(all.size()), now == all.end() ? std::nullopt : std::optional(int(now - all.begin())), next);
    if (!to) {
        m_chosen.reset();
        return false;
    }
    m_chosen = all[std::size_t(*to)];
    m_canvas.say(tr("Note: %1").arg(fromCore(noteOf(*m_chosen)->text)));
    m_canvas.viewport()->update();
    return true;
}

QLineEdit *NoteTool::editor() const { return m_editor; }

QString NoteTool::hint() const {
    return tr("A click pins a note; drag its pin to move it, off the cloth to take it off. Keys: Enter, Tab, arrows, "
              "Delete.");
}

void NoteTool::paintOver(QPainter &painter) {
    const Colours colours = coloursOf(m_canvas.palette());
    const SlipFonts fonts(m_canvas.font());
    const PinnedNote *note = m_chosen ? noteOf(*m_chosen) : nullptr;
    if (note && !m_editor)
        drawPin(painter, m_canvas.toViewport(m_chosen->sheet).map(onTable(m_dragged.value_or(note->at))),
                fromCore(note->text), m_canvas.clothRoom(), true, colours, fonts);
    if (m_editor)
        drawPin(painter, m_canvas.toViewport(m_writing.sheet).map(onTable(m_writingAt)), {}, m_canvas.clothRoom(), true,
                colours, fonts);
}

} // namespace boltwright::ui
