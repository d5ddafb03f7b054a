#pragma once

#include "ui/document/job_document.h"

#include <QLabel>
#include <QWidget>

#include <functional>

class QComboBox;
class QScrollArea;

namespace boltwright::ui {

/// What to go through with the client before their cloth is accepted: one question a row, with what the job knows, an
/// answer, and a note. Every answer is one step of the history and is printed on the client's page.
class ClothQuestionsPage : public QWidget {
    Q_OBJECT
public:
    explicit ClothQuestionsPage(JobDocument &document, QWidget *parent = nullptr);

private:
    void fill();
    void answer(const std::string &about, const std::function<void(ClothAnswer &)> &how, const QString &text);
    const Cloth &cloth() const;
    void sum();

    JobDocument &m_document;
    QComboBox *m_which;
    QScrollArea *m_scroll;
    QLabel *m_sum;
};

} // namespace boltwright::ui
