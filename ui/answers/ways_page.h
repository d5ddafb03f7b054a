#pragma once

#include "core/concede/concede.h"
#include "ui/answers/question_page.h"

#include <QComboBox>
#include <QListView>
#include <QStandardItemModel>

namespace boltwright::ui {

/// Ways to fit: what may be given up, in the order the user drags it into, and what came of it, side by side.
class WaysPage : public QuestionPage {
    Q_OBJECT
public:
    explicit WaysPage(JobDocument &document, QWidget *parent = nullptr);
    /// The kinds that may be given up now, in order.
    std::vector<Concession::Kind> order() const;
    void setSeconds(double seconds) { m_seconds = seconds; }

Q_SIGNALS:
    void taken(); ///< a way has become the layout

protected:
    void ask() override;

private:
    void show(const Conceding &answer);
    void move(int by);

    QListView *m_list;
    QStandardItemModel *m_kinds;
    QComboBox *m_within;
    double m_seconds = 20;
};

} // namespace boltwright::ui
