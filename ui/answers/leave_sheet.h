#pragma once

#include "ui/models/leave_table_model.h"

#include <QLabel>
#include <QPushButton>
#include <QTableView>
#include <QWidget>

namespace boltwright::ui {

/// Where leave is given for what is to be given up: parts by kinds, what the chosen tick means, and a button that gives
/// it all at once.
class LeaveSheet : public QWidget {
    Q_OBJECT
public:
    LeaveSheet(const Job &job, const TradeRules &rules, QWidget *parent = nullptr);
    QTableView *table() { return m_view; }
    LeaveTableModel *model() { return m_model; }
    QPushButton *giveButton() { return m_give; }
    QPushButton *backButton() { return m_back; }

Q_SIGNALS:
    void left(); ///< without giving any
    void given(const boltwright::Job &job);

protected:
    void resizeEvent(QResizeEvent *event) override;
    void changeEvent(QEvent *event) override;

private:
    void refresh();
    void fitColumns();
    LeaveTableModel *m_model;
    QTableView *m_view;
    QLabel *m_meaning;
    QPushButton *m_give, *m_back;
};

} // namespace boltwright::ui
