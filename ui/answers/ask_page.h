#pragma once

#include "core/yardage/ask.h"
#include "ui/answers/question_page.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLineEdit>
#include <QStandardItemModel>

namespace boltwright::ui {

/// How much to ask for: yardage at the widths and repeats a client may choose from; and for a remnant that is short,
/// how much more of the same cloth would do.
class AskPage : public QuestionPage {
    Q_OBJECT
public:
    explicit AskPage(JobDocument &document, QWidget *parent = nullptr);
    void setSecondsEach(double seconds) { m_secondsEach = seconds; }
    /// What is asked for as the page stands; an error names the field that cannot be read.
    Result<std::vector<AskCloth>> cloths() const;

protected:
    void ask() override;

private:
    void show(const std::vector<AskAnswer> &table, const std::vector<ExtraLength> &extra);
    Result<std::vector<Length>> lengthsIn(const QLineEdit &field) const;
    Unit unit() const;

    QLineEdit *m_widths, *m_repeats, *m_reserve;
    QCheckBox *m_plain, *m_stripes, *m_halfDrop;
    QComboBox *m_step;
    double m_secondsEach = 2;
};

} // namespace boltwright::ui
