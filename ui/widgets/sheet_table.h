#pragma once

#include <QList>
#include <QStringList>
#include <QTableView>

namespace boltwright::ui {

/// A table that is typed into as a spreadsheet is: Tab goes on to the next field that can be filled in, Enter down to
/// where the tabbing began, typing replaces, F2 changes, Ctrl+C and Ctrl+V carry cells to and from a spreadsheet. Past
/// the last field, Tab leaves the table.
class SheetTable : public QTableView {
    Q_OBJECT
public:
    explicit SheetTable(QWidget *parent = nullptr);

    /// What was typed was refused: the cursor stays, so that it can be put right.
    void stay() { m_stay = state() == QAbstractItemView::EditingState; }
    void copyCells() const;

Q_SIGNALS:
    /// Ctrl+V with text on the clipboard.
    void pasteWanted(const QString &text);

protected:
    void keyPressEvent(QKeyEvent *event) override;
    void closeEditor(QWidget *editor, QAbstractItemDelegate::EndEditHint hint) override;

private:
    bool goAcross(int step);
    void goDown();
    bool canFill(const QModelIndex &index) const;

    int m_runColumn = -1; ///< where Tab began; -1: nowhere
    bool m_stay = false;
};

/// Rows and cells of text copied from a spreadsheet; a cell with tabs, commas or line breaks in it may be quoted. Empty
/// where it cannot be read.
QList<QStringList> cellsOfText(const QString &text);

} // namespace boltwright::ui
