#pragma once

#include "ui/models/panel_table_model.h"

#include <QLabel>
#include <QPlainTextEdit>
#include <QTableView>
#include <QWidget>

#include <functional>

class QCheckBox;
class QSpinBox;

namespace boltwright::ui {

class LengthEdit;

/// The table of panels and, below it, what is rarer about the selected one: corners, joins, what may be given up.
class PanelTable : public QWidget {
    Q_OBJECT
public:
    explicit PanelTable(JobDocument &document, QWidget *parent = nullptr);
    QTableView *table() { return m_table; }
    PanelTableModel *model() { return m_model; }
    QString refusal() const { return m_refusal->text(); }

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

    JobDocument &m_document;
    PanelTableModel *m_model;
    QTableView *m_table;
    QLabel *m_refusal;
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
