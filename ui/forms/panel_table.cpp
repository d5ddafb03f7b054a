#include "ui/forms/panel_table.h"

#include "core/edit/job_edit.h"
#include "core/files/cut_list_csv.h"
#include "core/files/replace_file.h"
#include "core/forms/panel_doubts.h"
#include "ui/forms/panel_details.h"
#include "ui/text/words.h"
#include "ui/widgets/sheet_table.h"
#include "ui/widgets/wrapping_row.h"

#include <QAction>
#include <QComboBox>
#include <QFile>
#include <QFileDialog>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QPushButton>
#include <QStyledItemDelegate>

#include <utility>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

/// Offers a list where a field has one, and plain typing otherwise.
class FieldDelegate : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    QWidget *createEditor(QWidget *parent, const QStyleOptionViewItem &option,
                          const QModelIndex &index) const override {
        const QStringList choices = index.data(PanelTableModel::ChoicesRole).toStringList();
        if (choices.isEmpty()) return QStyledItemDelegate::createEditor(parent, option, index);
        auto *box = new QComboBox(parent);
        box->addItems(choices);
        return box;
    }
    void setEditorData(QWidget *editor, const QModelIndex &index) const override {
        if (auto *box = qobject_cast<QComboBox *>(editor))
            box->setCurrentIndex(
                int(index.data(PanelTableModel::KeysRole).toStringList().indexOf(index.data(Qt::EditRole).toString())));
        else
            QStyledItemDelegate::setEditorData(editor, index);
    }
    void setModelData(QWidget *editor, QAbstractItemModel *model, const QModelIndex &index) const override {
        if (auto *box = qobject_cast<QComboBox *>(editor))
            model->setData(index, index.data(PanelTableModel::KeysRole).toStringList().value(box->currentIndex()));
        else
            QStyledItemDelegate::setModelData(editor, model, index);
    }
};

} // namespace

PanelTable::PanelTable(JobDocument &document, QWidget *parent)
    : QWidget(parent), m_document(document), m_model(new PanelTableModel(document, this)),
      m_table(new SheetTable(this)), m_refusal(new QLabel(this)), m_doubts(new QLabel(this)),
      m_details(new PanelDetails(document, this)) {
    m_table->setModel(m_model);
    m_table->setItemDelegate(new FieldDelegate(m_table));
    m_table->setAccessibleName(tr("Table of panels"));
    m_table->setToolTip(tr("One line a panel: its measures on the piece, what is added, and how it must lie."));
    m_table->setColumnHidden(PanelTableModel::OfCloth, document.job().cloths.size() < 2);
    m_table->resizeColumnsToContents();
    m_table->setColumnWidth(PanelTableModel::Name, std::max(150, m_table->columnWidth(PanelTableModel::Name)));
    connect(m_model, &QAbstractItemModel::dataChanged, this, &PanelTable::widenColumns);
    connect(m_model, &QAbstractItemModel::modelReset, this, &PanelTable::widenColumns);
    m_refusal->setObjectName(u"refusal"_s);
    m_refusal->setWordWrap(true);
    m_refusal->hide();

    auto *buttons = new WrappingRow(8);
    const auto button = [&](const QString &text, const QString &sentence, auto deed) {
        auto *b = new QPushButton(text, this);
        b->setToolTip(sentence);
        connect(b, &QPushButton::clicked, this, deed);
        buttons->addWidget(b);
        return b;
    };
    button(tr("Add a panel"), tr("A rectangle to begin with."), &PanelTable::add);
    button(tr("Once more"), tr("The selected panel again, under a mark of its own."), &PanelTable::duplicate);
    button(tr("Remove"), tr("Takes the selected panel out of the job."), &PanelTable::remove);
    const auto mover = [&](const QString &arrow, const QString &heard, const QString &sentence, int key, int by) {
        QPushButton *b = button(arrow, sentence, [this, by] { move(by); });
        b->setAccessibleName(heard);
        auto *action = new QAction(heard, this);
        action->setShortcut(QKeySequence(Qt::ALT | Qt::Key(key)));
        action->setShortcutContext(Qt::WidgetWithChildrenShortcut);
        addAction(action);
        connect(action, &QAction::triggered, this, [this, by] { move(by); });
        return b;
    };
    m_up = mover(u"↑"_s, tr("Move up"), tr("The selected panel one line up in the list (Alt and up arrow)."),
                 Qt::Key_Up, -1);
    m_down = mover(u"↓"_s, tr("Move down"), tr("The selected panel one line down in the list (Alt and down arrow)."),
                   Qt::Key_Down, 1);
    button(tr("From a list…"), tr("Adds the panels of a cut list that was saved as CSV."), &PanelTable::openCutList);
    button(tr("As a list…"), tr("Writes all panels as a cut list (CSV) for a spreadsheet."),
           &PanelTable::writeCutListTo);
    button(tr("Pattern match…"), tr("Where the pattern runs on from one panel to the next."),
           &PanelTable::matchesWanted);
    auto *hint = new QLabel(tr("Measures as on the piece, side to side × up. Write 36 1/2, 92,5 or 3' 2\"."), this);
    hint->setObjectName(u"quiet"_s);
    hint->setWordWrap(true);

    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addLayout(buttons);
    column->addWidget(hint);
    column->addWidget(m_refusal);
    column->addWidget(m_table, 1);
    column->addWidget(m_doubts);
    column->addWidget(m_details);
    m_doubts->setWordWrap(true);
    m_doubts->setTextFormat(Qt::PlainText);
    connect(m_model, &PanelTableModel::refused, this, [this](const QString &sentence) {
        m_table->stay();
        refuse(sentence);
    });
    connect(m_details, &PanelDetails::refused, this, &PanelTable::refuse);
    connect(m_table, &SheetTable::pasteWanted, this, &PanelTable::paste);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentRowChanged, this, [this] {
        if (row() >= 0) m_document.selectPanel(m_document.job().panels[std::size_t(row())].id);
        m_details->showPanel(row());
        showMoves();
    });
    connect(&document, &JobDocument::changed, this, [this](Changes changes) {
        if (changes & (Change::Panels | Change::NewJob | Change::Card)) {
            m_refusal->hide();
            m_details->showPanel(row());
            showMoves();
            doubt();
        }
    });
    setFocusProxy(m_table);
    int start = 0;
    for (int i = 0; i < int(document.job().panels.size()); ++i)
        if (document.job().panels[std::size_t(i)].id == document.selectedPanel()) start = i;
    if (m_model->rowCount() > 0) m_table->setCurrentIndex(m_model->index(start, 0));
    m_details->showPanel(row());
    showMoves();
    doubt();
}

/// What is typed may be longer than all that was there; nothing becomes narrower under the hand.
void PanelTable::widenColumns() {
    for (int column = 0; column < m_model->columnCount(); ++column) {
        if (m_table->isColumnHidden(column)) continue;
        const int before = m_table->columnWidth(column);
        m_table->resizeColumnToContents(column);
        if (m_table->columnWidth(column) < before) m_table->setColumnWidth(column, before);
    }
}

void PanelTable::showMoves() {
    const int at = row();
    m_up->setEnabled(at > 0);
    m_down->setEnabled(at >= 0 && at + 1 < int(m_document.job().panels.size()));
}

void PanelTable::move(int by) {
    const int at = row(), to = at + by;
    if (at < 0 || to < 0 || to >= int(m_document.job().panels.size())) return;
    const int column = m_table->currentIndex().column();
    Job job = m_document.job();
    std::swap(job.panels[std::size_t(at)], job.panels[std::size_t(to)]);
    m_document.changeJob(std::move(job), tr("Order of panels"));
    m_table->setCurrentIndex(m_model->index(to, column));
    m_table->setFocus();
}

int PanelTable::row() const {
    const QModelIndex now = m_table->currentIndex();
    return now.isValid() && now.row() < int(m_document.job().panels.size()) ? now.row() : -1;
}

void PanelTable::refuse(const QString &sentence) {
    m_refusal->setText(sentence);
    m_refusal->setVisible(!sentence.isEmpty());
}

void PanelTable::add() {
    Job job = m_document.job();
    job.panels.push_back(newPanel(job));
    m_document.changeJob(std::move(job), tr("Add a panel"));
    m_table->setCurrentIndex(m_model->index(m_model->rowCount() - 1, PanelTableModel::Mark));
    m_table->setFocus();
}

void PanelTable::duplicate() {
    if (row() < 0) return;
    Job job = m_document.job();
    const int at = row();
    job.panels.insert(job.panels.begin() + at + 1, copyOfPanel(job, job.panels[std::size_t(at)]));
    m_document.changeJob(std::move(job), tr("Panel once more"));
    m_table->setCurrentIndex(m_model->index(at + 1, PanelTableModel::Mark));
    m_table->setFocus();
}

void PanelTable::remove() {
    if (row() < 0) return;
    Job job = m_document.job();
    const int at = row();
    const QString mark = fromCore(job.panels[std::size_t(at)].mark);
    job.panels.erase(job.panels.begin() + at);
    m_document.changeJob(std::move(job), tr("Remove %1").arg(mark));
    if (m_model->rowCount() > 0) m_table->setCurrentIndex(m_model->index(std::min(at, m_model->rowCount() - 1), 0));
    m_table->setFocus();
}

void PanelTable::doubt() {
    constexpr qsizetype most = 4;
    QStringList lines;
    for (const PanelDoubt &d : doubtsOfPanels(m_document.job())) {
        const Panel *panel = m_document.job().panel(d.panel);
        lines << tr("%1: %2").arg(fromCore(panel ? panel->mark : d.panel), withFractions(fromCore(d.text)));
    }
    QString text = lines.mid(0, most).join(u"  ·  "_s);
    if (lines.size() > most) text += tr("  ·  and %n more", nullptr, int(lines.size() - most));
    m_doubts->setText(text.isEmpty() ? QString() : tr("Worth a second look: %1").arg(text));
    m_doubts->setVisible(!text.isEmpty());
}

bool PanelTable::takeCutList(const std::string &text) {
    Job job = m_document.job();
    auto list = readCutList(text, job.unit);
    if (!list) {
        refuse(withFractions(fromCore(list.error().text)));
        return false;
    }
    for (Panel &panel : list->panels) {
        std::string id = panel.id;
        for (int n = 2; job.panel(id); ++n) id = panel.id + "-" + std::to_string(n);
        panel.id = id;
        job.panels.push_back(std::move(panel));
    }
    const int count = int(list->panels.size());
    if (const auto done = m_document.changeJob(std::move(job), tr("Panels from a list")); !done) {
        refuse(withFractions(fromCore(done.error().text)));
        return false;
    }
    QStringList unused;
    for (const std::string &heading : list->unused) unused << fromCore(heading);
    const QString taken = count == 1 ? tr("1 panel taken") : tr("%n panels taken", nullptr, count);
    say(unused.isEmpty() ? taken + u'.' : tr("%1; not understood and left out: %2.").arg(taken, unused.join(u", "_s)));
    return true;
}

void PanelTable::paste(const QString &text) {
    const auto cells = cellsOfText(text);
    if (cells.isEmpty()) return refuse(tr("The clipboard holds no table."));
    // With headings it is a cut list, and brings panels of its own.
    if (cells.size() > 1 && cells.first().size() > 1) {
        if (hasCutListHeadings(toCore(text))) {
            takeCutList(toCore(text));
            return;
        }
    }
    const QModelIndex from = m_table->currentIndex();
    if (!from.isValid()) return refuse(tr("Choose the field that the first cell goes to."));
    QStringList wrong;
    m_document.history()->beginMacro(tr("Paste"));
    for (int r = 0; r < cells.size(); ++r)
        for (int c = 0; c < cells[r].size(); ++c) {
            const QModelIndex at = m_model->index(from.row() + r, from.column() + c);
            if (cells[r][c].trimmed().isEmpty()) continue;
            refuse({});
            if (!at.isValid() || !(at.flags() & Qt::ItemIsEditable) || !m_model->setData(at, cells[r][c].trimmed()))
                wrong << tr("row %1, column %2: %3")
                             .arg(r + 1)
                             .arg(c + 1)
                             .arg(m_refusal->text().isEmpty() ? tr("there is no such field here") : m_refusal->text());
        }
    m_document.history()->endMacro();
    if (!wrong.isEmpty()) refuse(tr("Not taken: %1").arg(wrong.join(u"; "_s)));
}

void PanelTable::openCutList() {
    const QString name =
        QFileDialog::getOpenFileName(this, tr("A cut list"), {}, tr("Lists (*.csv *.tsv *.txt);;All files (*)"));
    if (name.isEmpty()) return;
    QFile file(name);
    constexpr qint64 most = 16 << 20;
    if (!file.open(QIODevice::ReadOnly) || file.size() > most)
        return refuse(tr("%1 cannot be read.").arg(QFileInfo(name).fileName()));
    takeCutList(file.readAll().toStdString());
}

void PanelTable::writeCutListTo() {
    const QString name = QFileDialog::getSaveFileName(this, tr("The panels as a list"), u"cut-list.csv"_s,
                                                      tr("Comma-separated values (*.csv)"));
    if (name.isEmpty()) return;
    const auto done = replaceFile(name.toStdString(), writeCutList(m_document.job().panels, m_document.job().unit));
    if (!done) return refuse(tr("%1: %2").arg(QFileInfo(name).fileName(), fromCore(done.error().text)));
    say(tr("The list is in %1.").arg(QFileInfo(name).fileName()));
}

void PanelTable::say(const QString &sentence) {
    m_refusal->setText(sentence);
    m_refusal->setVisible(!sentence.isEmpty());
}

} // namespace boltwright::ui
