#pragma once

#include "core/yardage/ask.h"
#include "ui/answers/question_page.h"
#include "ui/models/ask_table_model.h"

#include <QComboBox>
#include <QTableView>

namespace boltwright::ui {

class LayoutThumbnail;
class LengthEdit;

/// How much to ask for: yardage at the widths and repeats a client may choose from, in a table that is typed over; and
/// for a bolt or remnant that is short, how much more of the same cloth would do.
class AskPage : public QuestionPage {
    Q_OBJECT
public:
    AskPage(JobDocument &document, std::shared_ptr<AnswerBook> book, QWidget *parent = nullptr);
    void setSecondsEach(double seconds) { m_secondsEach = seconds; }
    QTableView *table() { return m_view; }
    AskTableModel *model() { return m_model; }
    LengthEdit *reserve() { return m_reserve; }
    QComboBox *step() { return m_step; }
    QString detail() const { return m_detail->text(); } ///< what is said of the chosen field

protected:
    void ask() override;
    bool forget() override;
    bool eventFilter(QObject *watched, QEvent *event) override;

private:
    void showExtra(std::vector<ExtraLength> extra);
    void recall();
    void keep(); ///< the table as it stands, with its answers
    void explain(const QModelIndex &index);
    int eighths() const;
    Unit unit() const;

    AskTableModel *m_model;
    QTableView *m_view;
    LengthEdit *m_reserve;
    QComboBox *m_step;
    QLabel *m_extra, *m_detail;
    LayoutThumbnail *m_behind;
    std::vector<ExtraLength> m_foundExtra;
    double m_secondsEach = 2;
};

} // namespace boltwright::ui
