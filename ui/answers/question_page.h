#pragma once

#include "ui/answers/answer_book.h"
#include "ui/answers/answering.h"

#include <QGridLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QList>
#include <QProgressBar>
#include <QPushButton>
#include <QVBoxLayout>
#include <QWidget>

#include <memory>

class QScrollArea;

namespace boltwright::ui {

/// The content of a sheet over the table that answers one question: what can be set at the left, the answers at the
/// right, a button that asks, one that ends the search with what it has, and a bar that shows how far it is. What it
/// found is in the book when the page closes, and stands there again when it is opened; an answer to a job that has
/// changed since is taken away, and that is said.
class QuestionPage : public QWidget {
    Q_OBJECT
public:
    QuestionPage(JobDocument &document, std::shared_ptr<AnswerBook> book, const QString &sentence, const QString &ask,
                 QWidget *parent = nullptr);
    QPushButton *askButton() { return m_ask; }
    QPushButton *stopButton() { return m_stop; }
    Answering &answering() { return m_answering; }
    /// Asks at once, as the button does, unless an answer that still holds stands there already.
    void askUnlessKnown();

protected:
    JobDocument &document() const { return m_document; }
    const std::shared_ptr<AnswerBook> &book() const { return m_book; }
    /// What was found last, where it still answers the job; null otherwise, and where the job has changed since, that
    /// is said.
    template <class Found>
    std::shared_ptr<const AnswerBook::Entry<Found>> stillTrue() {
        auto entry = m_book->kept<Found>();
        if (!entry) return nullptr;
        const bool same = AnswerBook::sameQuestion(entry->job, m_document.job());
        sayKept(same);
        m_known = same;
        return same ? entry : nullptr;
    }
    /// Puts what can be set at the left of the answers.
    void addSetting(QWidget *setting);
    /// While an answer needs all of the room, what can be set and what is said about it are out of the way.
    void showSettings(bool shown);
    /// Puts a field above the answers, where these want the whole width.
    void addAbove(const QString &name, QWidget *field);
    /// The answers stand side by side, no more of them in a row than can be read; one that stretches takes what room
    /// there is.
    void addAnswer(QWidget *answer, int stretch = 0);
    void setMostInARow(int most) { m_mostInARow = most; }
    void clearAnswers();
    /// From the thread that works the question out: hands `act` to the window's. Nothing happens where the question was
    /// dropped meanwhile.
    void later(std::function<void()> act);
    void say(const QString &sentence);
    virtual void ask() = 0;
    /// The job is no longer the one that was asked about. True: there was an answer, and it is taken away.
    virtual bool forget();
    void resizeEvent(QResizeEvent *event) override;

private:
    void sayKept(bool same);
    void standInRows();
    JobDocument &m_document;
    std::shared_ptr<AnswerBook> m_book;
    Answering m_answering;
    QLabel *m_explained;
    QVBoxLayout *m_settings;
    QHBoxLayout *m_above;
    QGridLayout *m_answers;
    QScrollArea *m_scroll = nullptr;
    QList<QWidget *> m_shown; ///< the answers
    int m_mostInARow = 3;
    bool m_known = false; ///< what was found before stands here
    QLabel *m_state;
    QProgressBar *m_progress;
    QPushButton *m_ask, *m_stop;
};

} // namespace boltwright::ui
