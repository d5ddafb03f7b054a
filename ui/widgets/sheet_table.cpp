#include "ui/widgets/sheet_table.h"

#include "core/files/csv.h"
#include "ui/text/words.h"

#include <QApplication>
#include <QClipboard>
#include <QHeaderView>
#include <QKeyEvent>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

SheetTable::SheetTable(QWidget *parent) : QTableView(parent) {
    setSelectionBehavior(QAbstractItemView::SelectItems);
    setSelectionMode(QAbstractItemView::ContiguousSelection);
    setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                    QAbstractItemView::AnyKeyPressed | QAbstractItemView::SelectedClicked);
    setAlternatingRowColors(true);
    verticalHeader()->hide();
}

bool SheetTable::canFill(const QModelIndex &index) const {
    return index.isValid() && (index.flags() & Qt::ItemIsEditable) && !isColumnHidden(index.column());
}

bool SheetTable::goAcross(int step) {
    QModelIndex at = currentIndex();
    if (!at.isValid()) return false;
    const int from = at.column(), columns = model()->columnCount(), rows = model()->rowCount();
    for (int cell = at.row() * columns + at.column() + step; cell >= 0 && cell < rows * columns; cell += step) {
        const QModelIndex next = model()->index(cell / columns, cell % columns);
        if (!canFill(next)) continue;
        // Another row begins another run.
        m_runColumn = next.row() == at.row() ? (m_runColumn < 0 ? from : m_runColumn) : -1;
        setCurrentIndex(next);
        return true;
    }
    return false;
}

void SheetTable::goDown() {
    const QModelIndex at = currentIndex();
    if (!at.isValid()) return;
    const int column = m_runColumn < 0 ? at.column() : m_runColumn;
    m_runColumn = -1;
    for (int row = at.row() + 1; row < model()->rowCount(); ++row)
        if (const QModelIndex next = model()->index(row, column); canFill(next)) {
            setCurrentIndex(next);
            return;
        }
}

void SheetTable::keyPressEvent(QKeyEvent *event) {
    if (event == QKeySequence::Copy) {
        copyCells();
        return;
    }
    if (event == QKeySequence::Paste) {
        if (const QString text = QApplication::clipboard()->text(); !text.isEmpty()) Q_EMIT pasteWanted(text);
        return;
    }
    switch (event->key()) {
    case Qt::Key_Tab:
    case Qt::Key_Backtab:
        if (!goAcross(event->key() == Qt::Key_Tab ? 1 : -1)) event->ignore();
        return;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        if (state() == QAbstractItemView::EditingState) break;
        goDown();
        return;
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Up:
    case Qt::Key_Down:
        m_runColumn = -1;
        break;
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
        if (canFill(currentIndex())) model()->setData(currentIndex(), QString());
        m_stay = false;
        return;
    default:
        break;
    }
    QTableView::keyPressEvent(event);
}

void SheetTable::closeEditor(QWidget *editor, QAbstractItemDelegate::EndEditHint hint) {
    const bool stays = m_stay;
    m_stay = false;
    QTableView::closeEditor(editor, QAbstractItemDelegate::NoHint);
    if (stays) return;
    if (hint == QAbstractItemDelegate::EditNextItem)
        goAcross(1);
    else if (hint == QAbstractItemDelegate::EditPreviousItem)
        goAcross(-1);
    else if (hint == QAbstractItemDelegate::SubmitModelCache)
        goDown();
}

void SheetTable::copyCells() const {
    QModelIndexList cells = selectionModel()->selectedIndexes();
    if (cells.isEmpty()) return;
    std::sort(cells.begin(), cells.end(), [](const QModelIndex &a, const QModelIndex &b) {
        return a.row() != b.row() ? a.row() < b.row() : a.column() < b.column();
    });
    CsvTable table;
    table.separator = '\t';
    int row = -1;
    for (const QModelIndex &cell : cells) {
        if (isColumnHidden(cell.column())) continue;
        if (cell.row() != row) table.rows.emplace_back();
        row = cell.row();
        const QVariant checked = cell.data(Qt::CheckStateRole);
        table.rows.back().push_back(checked.isValid() ? (checked.toInt() == Qt::Checked ? "yes" : "")
                                                      : toCore(cell.data(Qt::EditRole).toString()));
    }
    QApplication::clipboard()->setText(fromCore(writeCsv(table)));
}

namespace {

/// Spreadsheets put tabs between cells. Without any, a comma may be a decimal one: 92,5 is one cell.
bool isOneColumn(const QString &text) {
    if (text.contains(u'\t') || text.contains(u';') || text.contains(u'"')) return false;
    for (const QString &line : text.split(u'\n', Qt::SkipEmptyParts))
        if (line.count(u',') > 1) return false;
    return true;
}

} // namespace

QList<QStringList> cellsOfText(const QString &text) {
    QList<QStringList> rows;
    if (isOneColumn(text)) {
        for (const QString &line : text.split(u'\n')) rows << QStringList{line.trimmed()};
        while (!rows.isEmpty() && rows.last().first().isEmpty()) rows.removeLast();
        return rows;
    }
    const auto table = readCsv(toCore(text));
    if (!table) return rows;
    for (const auto &row : table->rows) {
        QStringList cells;
        for (const std::string &cell : row) cells << fromCore(cell);
        rows << cells;
    }
    return rows;
}

} // namespace boltwright::ui
