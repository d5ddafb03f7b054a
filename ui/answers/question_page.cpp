#include "ui/answers/question_page.h"

#include <QScrollArea>

namespace boltwright::ui {

QuestionPage::QuestionPage(JobDocument &document, const QString &sentence, const QString &askText, QWidget *parent)
    : QWidget(parent), m_document(document), m_answering(document), m_settings(new QVBoxLayout),
      m_answers(new QHBoxLayout), m_state(new QLabel), m_progress(new QProgressBar), m_ask(new QPushButton(askText)),
      m_stop(new QPushButton(tr("Stop"))) {
    auto *whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->setSpacing(12);
    auto *explained = new QLabel(sentence);
    explained->setWordWrap(true);
    whole->addWidget(explained);

    auto *buttons = new QHBoxLayout;
    m_state->setWordWrap(true);
    m_progress->setRange(0, 1000);
    m_progress->setTextVisible(false);
    m_progress->setFixedWidth(160);
    m_progress->setAccessibleName(tr("How far the search is"));
    buttons->addWidget(m_ask);
    buttons->addWidget(m_stop);
    buttons->addWidget(m_progress);
    buttons->addWidget(m_state, 1);
    whole->addLayout(buttons);
    auto *body = new QHBoxLayout;
    body->setSpacing(20);
    m_settings->addStretch();
    body->addLayout(m_settings);
    auto *scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    auto *inside = new QWidget;
    m_answers->setContentsMargins(0, 0, 0, 0);
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
        say(tr("Looking … What is found by then stays when you stop."));
    });
    connect(&m_answering, &Answering::progressed, m_progress,
            [this](double share) { m_progress->setValue(int(share * 1000)); });
    connect(&m_answering, &Answering::ended, this, [this] {
        m_ask->setEnabled(true);
        m_stop->setEnabled(false);
        m_progress->hide();
        if (m_state->text().startsWith(tr("Looking …"))) say({});
    });
}

void QuestionPage::addSetting(QWidget *setting) {
    setting->setFixedWidth(280);
    // What is left over of the height goes below all settings, not in between.
    setting->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Maximum);
    m_settings->insertWidget(m_settings->count() - 1, setting);
}

void QuestionPage::addAnswer(QWidget *answer, int stretch) { m_answers->addWidget(answer, stretch); }

void QuestionPage::later(std::function<void()> act) {
    // To the answering and not to the page, so that what was on its way when the page went is dropped with it.
    QMetaObject::invokeMethod(
        &m_answering,
        [this, act = std::move(act), number = m_answering.number()] {
            if (m_answering.isRunning() && m_answering.number() == number) act();
        },
        Qt::QueuedConnection);
}

void QuestionPage::clearAnswers() {
    while (QLayoutItem *item = m_answers->takeAt(0)) {
        if (item->widget()) item->widget()->deleteLater();
        delete item;
    }
}

void QuestionPage::say(const QString &sentence) { m_state->setText(sentence); }

} // namespace boltwright::ui
