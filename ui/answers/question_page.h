#pragma once

#include "ui/answers/answering.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>
#include <QWidget>

namespace boltwright::ui {

/// The content of a sheet over the table that answers one question: what can be set at the left, the answers at the
/// right, a button that asks, one that ends the search with what it has, and a bar that shows how far it is.
class QuestionPage : public QWidget {
    Q_OBJECT
public:
    QuestionPage(JobDocument &document, const QString &sentence, const QString &ask, QWidget *parent = nullptr);
    QPushButton *askButton() { return m_ask; }
    QPushButton *stopButton() { return m_stop; }
    Answering &answering() { return m_answering; }

protected:
    JobDocument &document() const { return m_document; }
    /// Puts what can be set at the left of the answers.
    void addSetting(QWidget *setting);
    /// The answers stand side by side; one that stretches takes what room there is.
    void addAnswer(QWidget *answer, int stretch = 0);
    void clearAnswers();
    /// From the thread that works the question out: hands `act` to the window's. Nothing happens where the question was
    /// dropped meanwhile.
    void later(std::function<void()> act);
    void say(const QString &sentence);
    virtual void ask() = 0;

private:
    JobDocument &m_document;
    Answering m_answering;
    QVBoxLayout *m_settings;
    QHBoxLayout *m_answers;
    QLabel *m_state;
    QProgressBar *m_progress;
    QPushButton *m_ask, *m_stop;
};

} // namespace boltwright::ui
