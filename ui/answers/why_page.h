#pragma once

#include "core/yardage/staircase.h"
#include "ui/answers/question_page.h"

#include <QComboBox>
#include <QPointer>

namespace boltwright::ui {

/// A staircase on the screen; a step is chosen by mouse or arrow keys.
class StaircaseView : public QWidget {
    Q_OBJECT
public:
    explicit StaircaseView(QWidget *parent = nullptr);
    void show(const Staircase &stairs, Unit unit);
    int chosen() const { return m_chosen; }
    void choose(int step);
    QSize sizeHint() const override { return {640, 290}; }

Q_SIGNALS:
    void chosenChanged(int step);

protected:
    void paintEvent(QPaintEvent *event) override;
    void mousePressEvent(QMouseEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;

private:
    Staircase m_stairs;
    Unit m_unit = Unit::Inch;
    QList<QRectF> m_rows;
    int m_chosen = -1;
};

/// Where the yardage goes: from the bare parts to what must be bought, and what the client could do about each step.
class WhyPage : public QuestionPage {
    Q_OBJECT
public:
    WhyPage(JobDocument &document, std::shared_ptr<AnswerBook> book, QWidget *parent = nullptr);
    void setSeconds(double seconds) { m_seconds = seconds; }
    StaircaseView *stairs() { return m_view; } ///< null: not worked out yet
    const Staircase &found() const { return m_stairs; }
    QString advice() const { return m_advice ? m_advice->text() : QString(); }
    bool isLayoutShown() const { return m_behind && !m_behind->isHidden(); }

protected:
    void ask() override;

private:
    void show(const Staircase &stairs);
    void explain(int step);
    void save();

    Staircase m_stairs;
    QComboBox *m_cloth; ///< the bolts of the job
    QPointer<StaircaseView> m_view;
    QPointer<QLabel> m_advice;
    QPointer<QWidget> m_behind; ///< the layout behind the chosen step
    double m_seconds = 10;
};

} // namespace boltwright::ui
