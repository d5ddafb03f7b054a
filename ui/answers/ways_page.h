#pragma once

#include "core/concede/concede.h"
#include "ui/answers/leave_sheet.h"
#include "ui/answers/order_list.h"
#include "ui/answers/question_page.h"
#include "ui/settings/preferences.h"
#include "ui/shop/shop.h"

#include <QComboBox>
#include <QPointer>

namespace boltwright::ui {

/// Ways to fit: what may be given up, in the order the user drags it into, and what came of it, side by side. The
/// order is remembered for the next time. What no part has leave for can be given leave here.
class WaysPage : public QuestionPage {
    Q_OBJECT
public:
    WaysPage(JobDocument &document, std::shared_ptr<AnswerBook> book, Preferences &preferences, const Shop &shop,
             QWidget *parent = nullptr);
    /// The kinds that may be given up now, in order.
    std::vector<Concession::Kind> order() const;
    void setSeconds(double seconds) { m_seconds = seconds; }
    OrderList *list() { return m_list; }
    QComboBox *within() { return m_within; }
    QPushButton *leaveButton() { return m_leave; }
    LeaveSheet *leaveSheet() { return m_sheet; } ///< null: not shown

Q_SIGNALS:
    void taken(); ///< a way has become the layout

protected:
    void ask() override;
    bool forget() override;

private:
    void show(const FoundWays &found);
    void openLeave();
    void closeLeave();
    void clearWays();
    void give(const Job &job);
    void remember();

    Preferences &m_preferences;
    const Shop &m_shop;
    QPushButton *m_leave;
    QPointer<LeaveSheet> m_sheet;
    OrderList *m_list;
    QComboBox *m_within;
    double m_seconds = 20;
};

} // namespace boltwright::ui
