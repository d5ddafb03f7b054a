#include "ui/canvas/outline_bar.h"

#include "ui/canvas/canvas.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"
#include "ui/widgets/scaled.h"
#include "ui/widgets/wrapping_row.h"

#include <QCheckBox>
#include <QComboBox>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QResizeEvent>
#include <QSignalBlocker>
#include <QVBoxLayout>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

QString nameOf(const Job &job, const OutlineOf &which) {
    const Cloth *cloth = job.cloth(which.sheet.cloth);
    QString name = cloth ? fromCore(cloth->name.empty() ? cloth->id : cloth->name) : QString();
    if (which.sheet.on) {
        const QString remnant = OutlineBar::tr("Remnant %1").arg(fromCore(*which.sheet.on));
        name = job.cloths.size() > 1 ? OutlineBar::tr("%1, %2").arg(name, remnant) : remnant;
    }
    if (const Flaw *flaw = flawOf(job, which)) {
        name = OutlineBar::tr("%1: flaw %2").arg(name).arg(*which.flaw + 1);
        if (!flaw->note.empty()) name = OutlineBar::tr("%1, %2").arg(name, fromCore(flaw->note));
    }
    return name;
}

} // namespace

OutlineBar::OutlineBar(JobDocument &document, Canvas &canvas, QWidget *parent)
    : QFrame(parent), m_document(document), m_canvas(canvas), m_tool(new OutlineTool(canvas)),
      m_which(new QComboBox(this)), m_remnant(new QPushButton(tr("Draw a remnant"), this)),
      m_flaw(new QPushButton(tr("Mark a flaw"), this)), m_spot(new QPushButton(tr("Mark a spot"), this)),
      m_remove(new QPushButton(tr("Remove"), this)), m_done(new QPushButton(tr("Done"), this)),
      m_snap(new QCheckBox(this)), m_hint(new QLabel(this)) {
    setObjectName(u"outlineBar"_s);
    m_which->setAccessibleName(tr("Which remnant or flaw"));
    m_which->setToolTip(tr("The remnant or flaw whose corners are shown on the table."));
    m_remnant->setToolTip(tr("Another remnant: click its corners on the table, or type them."));
    m_remove->setToolTip(tr("Takes the chosen remnant or flaw out of the job."));
    m_done->setToolTip(tr("Back to moving panels."));
    m_flaw->setToolTip(tr("A flaw of any outline: click its corners on the cloth."));
    m_spot->setToolTip(tr("A round flaw: click its middle and drag for the radius."));
    m_snap->setToolTip(tr("What is dragged comes to rest on whole measures; with Alt held down it stays free."));
    m_hint->setObjectName(u"quiet"_s);
    m_hint->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Fixed);
    auto *tasks = new WrappingRow(8);
    tasks->addWidget(m_which);
    for (QWidget *part : {m_remnant, m_flaw, m_spot, m_remove}) tasks->addWidget(part);
    auto *head = new QHBoxLayout;
    head->setSpacing(8);
    head->addLayout(tasks, 1);
    head->addWidget(m_snap, 0, Qt::AlignTop);
    head->addWidget(m_done, 0, Qt::AlignTop);
    m_head = head;
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(20, 8, 16, 8);
    column->setSpacing(6);
    column->addLayout(head);
    column->addWidget(m_hint);
    buildFields();
    fitWords();
    // What is told of a corner or outline, and below it what can be done with it: two lines, so that they fit beside
    // both panes. With large letters each goes on below itself.
    for (const QList<QWidget *> &parts : {QList<QWidget *>{m_cornerRow, m_traceRow, m_spotRow, m_remnantRow, m_flawRow},
                                          QList<QWidget *>{m_cutRow, m_rectangleRow}}) {
        auto *line = new WrappingRow(20);
        for (QWidget *part : parts) line->addWidget(part);
        column->addLayout(line);
    }
    column->addStretch();

    connect(m_which, &QComboBox::activated, this, [this](int index) {
        const auto all = outlinesOf(m_document.job());
        if (index >= 0 && index < int(all.size())) m_tool->choose(all[std::size_t(index)]);
    });
    for (const auto &[button, task] :
         {std::pair{m_remnant, OutlineTool::Task::Remnant}, std::pair{m_flaw, OutlineTool::Task::Flaw},
          std::pair{m_spot, OutlineTool::Task::Spot}})
        connect(button, &QPushButton::clicked, this, [this, task = task] {
            m_tool->begin(task);
            m_canvas.setFocus();
        });
    connect(m_remove, &QPushButton::clicked, m_tool, &OutlineTool::remove);
    connect(m_done, &QPushButton::clicked, this, &OutlineBar::close);
    connect(m_tool, &OutlineTool::doneWanted, this, &OutlineBar::close);
    connect(m_tool, &OutlineTool::refused, &m_canvas, &Canvas::showNote);
    connect(m_tool, &OutlineTool::stateChanged, this, &OutlineBar::refresh);
    connect(&m_canvas, &Canvas::toolChanged, this, [this] {
        if (&m_canvas.tool() != m_tool && !isHidden()) close();
    });
    connect(m_snap, &QCheckBox::toggled, this,
            [this](bool on) { m_tool->editor().setSnap(on ? wholeStep(m_document.job().unit) : Length{}); });
    connect(&document, &JobDocument::changed, this, [this](Changes changes) {
        if (changes & Change::NewJob) close();
    });
    hide();
}

void OutlineBar::open() {
    const Unit unit = m_document.job().unit;
    m_snap->setText(unit == Unit::Inch ? tr("whole inches") : tr("whole centimetres"));
    for (LengthEdit *edit : findChildren<LengthEdit *>()) edit->setUnit(unit);
    {
        const QSignalBlocker still(m_snap);
        m_snap->setChecked(true);
    }
    m_tool->editor().setSnap(wholeStep(unit));
    m_tool->editor().setSpotRadius(wholeStep(unit));
    m_radius->setLength(wholeStep(unit));
    m_canvas.useTool(*m_tool);
    showFields(); // before they are seen, or the window would make room for all of them
    show();
    fitHeight();
    m_canvas.setFocus();
    refresh();
}

/// Always as high as the highest of what it may show: the table must not slip away under a hand that takes a corner.
void OutlineBar::fitHeight() {
    const QMargins around = layout()->contentsMargins();
    const int wide = width() - around.left() - around.right();
    const auto tallest = [&](const QList<QWidget *> &rows) {
        int high = 0;
        for (QWidget *row : rows)
            high = std::max(high, row->layout()->heightForWidth(std::min(wide, row->layout()->sizeHint().width())));
        return high;
    };
    setFixedHeight(m_head->heightForWidth(wide) + m_hint->fontMetrics().height() +
                   tallest({m_cornerRow, m_traceRow, m_spotRow, m_remnantRow, m_flawRow}) +
                   tallest({m_cutRow, m_rectangleRow}) + 3 * 6 + around.top() + around.bottom() + 8);
}

/// A measure is read whole in its field, at any size of the text.
void OutlineBar::fitWords() {
    for (LengthEdit *edit : findChildren<LengthEdit *>()) edit->setMaximumWidth(scaled(84));
    m_which->setMinimumWidth(scaled(220));
    m_lot->setMaximumWidth(scaled(120));
    m_note->setMinimumWidth(scaled(220));
}

void OutlineBar::changeEvent(QEvent *event) {
    QFrame::changeEvent(event);
    if (event->type() != QEvent::FontChange || !m_note) return;
    fitWords();
    if (isVisible()) fitHeight();
}

void OutlineBar::resizeEvent(QResizeEvent *event) {
    QFrame::resizeEvent(event);
    if (isVisible() && event->size().width() != event->oldSize().width()) fitHeight();
}

void OutlineBar::close() {
    if (isHidden()) return;
    hide();
    if (&m_canvas.tool() == m_tool) m_canvas.useHand();
    m_canvas.setFocus();
    Q_EMIT closed();
}

void OutlineBar::keyPressEvent(QKeyEvent *event) {
    if (event->key() == Qt::Key_Escape)
        m_canvas.setFocus(); // from the fields back to the table
    else
        QFrame::keyPressEvent(event);
}

// Fields.

LengthEdit *OutlineBar::field(const QString &name, const QString &sentence, int range) {
    auto *edit = new LengthEdit(m_document.job().unit, LengthRange(range), this);
    edit->setAccessibleName(name);
    edit->setToolTip(sentence);
    edit->setObjectName(u"outline "_s + name);
    return edit;
}

QWidget *OutlineBar::row(const QList<QWidget *> &parts, const QString &label) {
    auto *whole = new QWidget(this);
    whole->setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Fixed);
    whole->hide();
    auto *line = new WrappingRow(6, whole);
    if (!label.isEmpty()) line->addWidget(new QLabel(label, whole));
    for (QWidget *part : parts) line->addWidget(part);
    m_rows << whole;
    return whole;
}

void OutlineBar::buildFields() {
    const int any = int(LengthRange::Any), above = int(LengthRange::AboveZero);
    const auto word = [this](const QString &text) { return new QLabel(text, this); };
    const QString fromLeft = tr("Measured from the left selvage, or from the left edge of a remnant."),
                  upRoll = tr("Measured up the roll from the cut end, or from the remnant's lower end.");
    const auto button = [this](const QString &text, const QString &sentence, auto act) {
        auto *b = new QPushButton(text, this);
        b->setToolTip(sentence);
        connect(b, &QPushButton::clicked, this, act);
        return b;
    };
    m_x = field(tr("corner from the left"), fromLeft, any);
    m_y = field(tr("corner up the roll"), upRoll, any);
    m_cornerRow = row({word(tr("Corner: from the left")), m_x, word(tr("up the roll")), m_y,
                       button(tr("Remove corner"), tr("The outline runs straight past it."),
                              [this] { m_tool->editor().removeCorner(); })});
    m_cutBefore = field(tr("cut out along the side before"),
                        tr("How far the notch reaches along the side that leads to this corner."), above);
    m_cutAfter = field(tr("cut out along the side after"),
                       tr("How far the notch reaches along the side after this corner."), above);
    m_cutRow = row({word(tr("Cut out")), m_cutBefore, word(tr("by")), m_cutAfter,
                    button(tr("Cut corner out"), tr("A notch of that size takes the place of the corner."), [this] {
                        m_tool->cutCornerOut(m_cutBefore->length().value_or(Length{}),
                                             m_cutAfter->length().value_or(Length{}));
                    })});
    m_cutRow->setToolTip(tr("A notch in place of this corner: first along the side that leads to it, then along the "
                            "one after it."));
    m_nextX = field(tr("next corner from the left"), fromLeft, any);
    m_nextY = field(tr("next corner up the roll"), upRoll, any);
    m_traceRow = row({word(tr("Next corner: from the left")), m_nextX, word(tr("up the roll")), m_nextY,
                      button(tr("Set corner"), tr("Sets the corner where the two measures say."),
                             [this] {
                                 if (m_nextX->length() && m_nextY->length())
                                     m_tool->editor().addCorner({*m_nextX->length(), *m_nextY->length()});
                             }),
                      button(tr("Close outline"), tr("Joins the last corner to the first."),
                             [this] { m_tool->editor().closeRing(); })});
    m_across = field(tr("rectangle across"), tr("How wide it is, from left to right as the cloth hangs."), above);
    m_along = field(tr("rectangle up the roll"), tr("How long it is up the roll."), above);
    m_rectangleRow = row({word(tr("Or a rectangle")), m_across, word(tr("across by")), m_along, word(tr("up the roll")),
                          button(tr("Add it"), tr("Puts a rectangle of that size on the table."), [this] {
                              if (m_across->length() && m_along->length())
                                  m_tool->addRectangle(*m_across->length(), *m_along->length());
                          })});
    m_middleX = field(tr("spot from the left"), fromLeft, any);
    m_middleY = field(tr("spot up the roll"), upRoll, any);
    m_radius = field(tr("spot radius"), tr("From its middle as far as no panel may reach."), above);
    m_markSpot = button(tr("Mark it"), tr("Marks a round flaw of that radius there."), [this] { spotTyped(); });
    m_spotRow = row({word(tr("Middle: from the left")), m_middleX, word(tr("up the roll")), m_middleY,
                     word(tr("radius")), m_radius, m_markSpot});
    m_lot = new QLineEdit(this);
    m_lot->setAccessibleName(tr("Dye lot"));
    m_lot->setToolTip(tr("Parts that must match in shade are cut from one dye lot."));
    m_lot->setObjectName(u"outline lot"_s);
    m_motifX = field(tr("motif from the left"), fromLeft, any);
    m_motifY = field(tr("motif up the roll"), upRoll, any);
    for (LengthEdit *edit : {m_motifX, m_motifY}) edit->setOptional(tr("as the cloth"));
    m_remnantRow =
        row({word(tr("Dye lot")), m_lot, word(tr("A motif sits: from the left")), m_motifX, word(tr("up the roll")),
             m_motifY,
             button(tr("Point at it"), tr("Click the middle of a motif on the table instead of measuring it."), [this] {
                 m_tool->begin(OutlineTool::Task::Motif);
                 m_canvas.setFocus();
             })});
    m_note = new QLineEdit(this);
    m_note->setAccessibleName(tr("What the flaw is"));
    m_note->setToolTip(tr("Hole, stain, slub or seam: it stands beside the flaw on the table and on the sheet."));
    m_note->setObjectName(u"outline note"_s);
    m_flawRow = row({word(tr("What it is")), m_note});

    for (LengthEdit *edit : {m_x, m_y}) connect(edit, &LengthEdit::lengthChanged, this, &OutlineBar::cornerTyped);
    for (LengthEdit *edit : {m_middleX, m_middleY, m_radius})
        connect(edit, &LengthEdit::lengthChanged, this, [this] {
            if (m_tool->task() == OutlineTool::Task::Change)
                spotTyped();
            else if (m_radius->length())
                m_tool->editor().setSpotRadius(*m_radius->length());
        });
    for (LengthEdit *edit : {m_motifX, m_motifY})
        connect(edit, &LengthEdit::lengthChanged, this, &OutlineBar::motifTyped);
    connect(m_lot, &QLineEdit::editingFinished, this, [this] {
        const auto &which = m_tool->chosen();
        const Remnant *remnant = which ? remnantOf(m_document.job(), which->sheet) : nullptr;
        if (remnant && toCore(m_lot->text().trimmed()) != remnant->lot)
            change(withLot(m_document.job(), which->sheet, toCore(m_lot->text().trimmed())), tr("Dye lot"));
    });
    connect(m_note, &QLineEdit::editingFinished, this, [this] {
        const auto &which = m_tool->chosen();
        const Flaw *flaw = which ? flawOf(m_document.job(), *which) : nullptr;
        if (flaw && toCore(m_note->text().trimmed()) != flaw->note)
            change(withFlawNote(m_document.job(), *which, toCore(m_note->text().trimmed())), tr("What the flaw is"));
    });
}

void OutlineBar::change(Job job, const QString &text) { m_document.changeJob(std::move(job), text); }

void OutlineBar::cornerTyped() {
    if (m_x->length() && m_y->length()) m_tool->moveCorner({*m_x->length(), *m_y->length()}, tr("Move a corner"));
}

void OutlineBar::spotTyped() {
    if (m_middleX->length() && m_middleY->length() && m_radius->length())
        m_tool->makeSpot({{*m_middleX->length(), *m_middleY->length()}, *m_radius->length()}, tr("Change a spot"));
}

void OutlineBar::motifTyped() {
    if (!m_tool->chosen() || m_motifX->length().has_value() != m_motifY->length().has_value()) return;
    std::optional<ClothPoint> motif;
    if (m_motifX->length()) motif = ClothPoint{*m_motifX->length(), *m_motifY->length()};
    change(withMotif(m_document.job(), m_tool->chosen()->sheet, motif), tr("Where a motif sits"));
}

// What is shown.

void OutlineBar::refillOutlines() {
    const auto all = outlinesOf(m_document.job());
    m_which->clear();
    for (const OutlineOf &which : all) m_which->addItem(nameOf(m_document.job(), which));
    const auto at = m_tool->chosen() ? std::find(all.begin(), all.end(), *m_tool->chosen()) : all.end();
    m_which->setCurrentIndex(at == all.end() ? -1 : int(at - all.begin()));
    m_which->setPlaceholderText(all.empty() ? tr("nothing drawn yet") : tr("choose one"));
    m_which->setEnabled(!all.empty());
}

void OutlineBar::refresh() {
    if (isHidden()) return;
    refillOutlines();
    m_remove->setEnabled(m_tool->chosen() && m_tool->task() == OutlineTool::Task::Change);
    const bool wasOurs = focusWidget() && isAncestorOf(focusWidget()) && focusWidget()->hasFocus();
    showFields();
    if (wasOurs && !(focusWidget() && focusWidget()->isVisible())) m_canvas.setFocus();
}

void OutlineBar::showFields() {
    using Task = OutlineTool::Task;
    const Task task = m_tool->task();
    RingEditor &editor = m_tool->editor();
    const auto &which = m_tool->chosen();
    const Remnant *remnant = which && !which->flaw ? remnantOf(m_document.job(), which->sheet) : nullptr;
    const Flaw *flaw = which ? flawOf(m_document.job(), *which) : nullptr;
    const bool changing = task == Task::Change, spot = changing && editor.spot();
    const bool corner = changing && which && !spot && editor.corner() >= 0;

    m_cornerRow->setVisible(corner);
    m_cutRow->setVisible(corner);
    m_traceRow->setVisible(task == Task::Remnant || task == Task::Flaw);
    m_rectangleRow->setVisible(task == Task::Remnant && editor.ring().empty());
    m_spotRow->setVisible(task == Task::Spot || spot);
    m_markSpot->setVisible(task == Task::Spot);
    m_remnantRow->setVisible(changing && remnant && !corner);
    m_flawRow->setVisible(changing && flaw && !corner);

    if (corner) {
        const ClothPoint at = editor.ring()[std::size_t(editor.corner())];
        m_x->setLength(at.x);
        m_y->setLength(at.y);
    }
    if (spot) {
        m_middleX->setLength(editor.spot()->middle.x);
        m_middleY->setLength(editor.spot()->middle.y);
        m_radius->setLength(editor.spot()->radius);
    }
    if (remnant) {
        m_lot->setText(fromCore(remnant->lot));
        m_motifX->setLength(remnant->motif ? std::optional(remnant->motif->x) : std::nullopt);
        m_motifY->setLength(remnant->motif ? std::optional(remnant->motif->y) : std::nullopt);
    }
    if (flaw) m_note->setText(fromCore(flaw->note));

    m_hint->setText(m_tool->advice());
}

} // namespace boltwright::ui
