#pragma once

#include "ui/models/panel_table_model.h"

#include <QLabel>
#include <QPlainTextEdit>
#include <QWidget>

#include <functional>

class QCheckBox;
class QSpinBox;

namespace boltwright::ui {

class LengthEdit;
class SheetTable;

/// The table of panels and, below it, what is rarer about the selected one: corners, joins, what may be given up.
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

private:
    QWidget *buildMore();
    void add();
    void duplicate();
    void remove();
    int row() const;
    void showMore();
    void change(const QString &text, const std::function<void(Panel &)> &how);
    void takeCorners();
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
    QWidget *m_more = nullptr;
    QPlainTextEdit *m_corners = nullptr;
    QLabel *m_cornersLabel = nullptr;
    QSpinBox *m_pieces = nullptr;
    LengthEdit *m_seam = nullptr, *m_shortest = nullptr, *m_least = nullptr;
    QCheckBox *m_match = nullptr, *m_mayTurn = nullptr, *m_mayUncentre = nullptr, *m_mayOther = nullptr;
    bool m_showing = false; ///< fields are being filled, not changed by hand
};

/// Corners as they are typed, one a line: "24, 17 1/2".
QString cornersText(const std::vector<std::pair<Length, Length>> &corners, Unit unit);
Result<std::vector<std::pair<Length, Length>>> readCorners(const QString &text, Unit unit);

} // namespace boltwright::ui
