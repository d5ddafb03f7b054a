#pragma once

#include "core/yardage/run_ways.h"
#include "ui/answers/question_page.h"

namespace boltwright::ui {

/// How to run it: the job up the roll, railroaded, and as it falls best for each part, side by side.
class RunsPage : public QuestionPage {
    Q_OBJECT
public:
    RunsPage(JobDocument &document, std::shared_ptr<AnswerBook> book, QWidget *parent = nullptr);
    void setSeconds(double seconds) { m_seconds = seconds; }

Q_SIGNALS:
    void taken();

protected:
    void ask() override;

private:
    void show(const RunAnswer &answer);
    void take(const RunAnswer &answer);
    double m_seconds = 8;
    FoundRuns m_found;             ///< what stands there
    std::optional<Length> m_asked; ///< the length as asked, for comparison
};

} // namespace boltwright::ui
