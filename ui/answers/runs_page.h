#pragma once

#include "core/yardage/run_ways.h"
#include "ui/answers/question_page.h"

namespace boltwright::ui {

/// How to run it: the job up the roll, railroaded, and as it falls best for each part, side by side.
class RunsPage : public QuestionPage {
    Q_OBJECT
public:
    explicit RunsPage(JobDocument &document, QWidget *parent = nullptr);
    void setSeconds(double seconds) { m_seconds = seconds; }

Q_SIGNALS:
    void taken();

protected:
    void ask() override;

private:
    void show(const std::vector<RunAnswer> &all);
    double m_seconds = 8;
};

} // namespace boltwright::ui
