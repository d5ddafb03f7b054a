#pragma once

#include "ui/models/panel_table_model.h"

#include <QLabel>
#include <QWidget>

class QPushButton;

namespace boltwright::ui {

class PanelDetails;
class SheetTable;

/// The table of panels and, below it, what is rarer about the selected one.
class PanelTable : public QWidget {
    Q_OBJECT
public:
    explicit PanelTable(JobDocument &document, QWidget *parent = nullptr);
    SheetTable *table() { return m_table; }
    PanelTableModel *model() { return m_model; }
    QString refusal() const { return m_refusal->text(); }
    QString doubts() const { return m_doubts->text(); }
    /// Panels out of a cut list; what is wrong with it is said with its row and column.
    bool takeCutList(const std::string &text);

Q_SIGNALS:
    void matchesWanted();

private:
    void add();
    void duplicate();
    void remove();
    void move(int by); ///< the selected panel, that many lines down the list
    void showMoves();
    void widenColumns();
    int row() const;
    void refuse(const QString &sentence);
    void say(const QString &sentence);
    void paste(const QString &text);
    void openCutList();
    void writeCutListTo();
    void doubt();

    JobDocument &m_document;
    PanelTableModel *m_model;
    SheetTable *m_table;
    QLabel *m_refusal, *m_doubts;
    QPushButton *m_up, *m_down;
    PanelDetails *m_details;
};

} // namespace boltwright::ui
