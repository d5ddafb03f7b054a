#include "ui/answers/question_page.h"

#include <QScrollArea>

namespace boltwright::ui {

QuestionPage::QuestionPage(JobDocument &document, const QString &sentence, const QString &askText, QWidget *parent)
    : QWidget(parent), m_document(document), m_answering(document), m_settings(new QVBoxLayout), m_answers(new QHBoxLayout),
      m_state(new QLabel), m_progress(new QProgressBar), m_ask(new QPushButton(askText)), m_stop(new QPushButton(tr("Stop"))) {
    auto *whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->setSpacing(12);
    auto *explained = new QLabel(sentence);
    explained->setWordWrap(true);
    whole->addWidget(explained);

    auto *body = new QHBoxLayout;
    body->setSpacing(20);
    auto *left = new QWidget;
    left->setFixedWidth(300);
    auto *leftColumn = new QVBoxLayout(left);
    leftColumn->setContentsMargins(0, 0, 0, 0);
    leftColumn->addLayout(m_settings);
    auto *buttons = new QHBoxLayout;
    buttons->addWidget(m_ask);
    buttons->addWidget(m_stop);
    buttons->addStretch();
    leftColumn->addLayout(buttons);
    m_progress->setRange(0, 1000);
    m_progress->setTextVisible(false);
    m_progress->setAccessibleName(tr("How far the search is"));
    leftColumn->addWidget(m_progress);
    m_state->setWordWrap(true);
    leftColumn->addWidget(m_state);
    leftColumn->addStretch();
    body->addWidget(left);
    auto *scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    auto *inside = new QWidget;
    m_answers->setSpacing(16);
    inside->setLayout(m_answers);
    scroll->setWidget(inside);
    body->addWidget(scroll, 1);
    whole->addLayout(body, 1);

    m_ask->setDefault(true);
    m_stop->setEnabled(false);
    m_progress->hide();
    connect(m_ask, &QPushButton::clicked, this, [this] { ask(); });
    connect(m_stop, &QPushButton::clicked, &m_answering, &Answering::finishEarly);
    connect(&m_answering, &Answering::started, this, [this] {
        m_ask->setEnabled(false);
        m_stop->setEnabled(true);
        m_progress->setValue(0);
        m_progress->show();
        say(tr("Looking …"));
    });
    connect(&m_answering, &Answering::progressed, m_progress, [this](double share) { m_progress->setValue(int(share * 1000)); });
    connect(&m_answering, &Answering::ended, this, [this] {
        m_ask->setEnabled(true);
        m_stop->setEnabled(false);
        m_progress->hide();
        if (m_state->text() == tr("Looking …")) say({});
    });
}

void QuestionPage::clearAnswers() {
    while (QLayoutItem *item = m_answers->takeAt(0)) {
        if (item->widget()) item->widget()->deleteLater();
        delete item;
    }
}

void QuestionPage::say(const QString &sentence) { m_state->setText(sentence); }

} // namespace boltwright::ui
