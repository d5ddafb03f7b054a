#include "ui/answers/question_page.h"

#include "ui/picture/layout_card.h"
#include "ui/widgets/scaled.h"

#include <QScrollArea>

#include <algorithm>
#include <utility>

namespace boltwright::ui {

QuestionPage::QuestionPage(JobDocument &document, std::shared_ptr<AnswerBook> book, const QString &sentence,
                           const QString &askText, QWidget *parent)
    : QWidget(parent), m_document(document), m_book(std::move(book)), m_answering(document),
      m_explained(new QLabel(sentence)), m_settings(new QVBoxLayout), m_above(new QHBoxLayout),
      m_answers(new QGridLayout), m_state(new QLabel), m_progress(new QProgressBar), m_ask(new QPushButton(askText)),
      m_stop(new QPushButton(tr("Stop"))) {
    auto *whole = new QVBoxLayout(this);
    whole->setContentsMargins(0, 0, 0, 0);
    whole->setSpacing(12);
    m_explained->setWordWrap(true);
    whole->addWidget(m_explained);

    auto *buttons = new QHBoxLayout;
    m_state->setWordWrap(true);
    m_progress->setRange(0, 1000);
    m_progress->setTextVisible(false);
    m_progress->setFixedWidth(scaled(160));
    m_progress->setAccessibleName(tr("How far the search is"));
    buttons->addWidget(m_ask);
    buttons->addWidget(m_stop);
    buttons->addWidget(m_progress);
    buttons->addStretch();
    whole->addLayout(buttons);
    m_state->hide();
    whole->addWidget(m_state);
    m_above->setSpacing(8);
    m_above->addStretch();
    whole->addLayout(m_above);
    auto *body = new QHBoxLayout;
    body->setSpacing(20);
    m_settings->setSpacing(8);
    m_settings->addStretch();
    body->addLayout(m_settings);
    auto *scroll = m_scroll = new QScrollArea;
    scroll->setWidgetResizable(true);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setFocusPolicy(Qt::NoFocus);
    auto *inside = new QWidget;
    m_answers->setContentsMargins(0, 0, 0, 0);
    m_answers->setSpacing(16);
    inside->setLayout(m_answers);
    scroll->setWidget(inside);
    body->addWidget(scroll, 1);
    whole->addLayout(body, 1);

    m_ask->setToolTip(tr("Begins the search. It takes a little while; the window can be used meanwhile."));
    m_stop->setToolTip(tr("Ends the search; what was found by then stays."));
    m_ask->setDefault(true);
    setFocusProxy(m_ask);
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
    connect(&document, &JobDocument::changed, this, [this](Changes changes) {
        constexpr Changes ofTheQuestion = Change::Card | Change::Cloths | Change::Panels | Change::NewJob;
        if ((changes & ofTheQuestion) && forget()) sayKept(false);
    });
}

void QuestionPage::askUnlessKnown() {
    if (!m_known && m_ask->isEnabled()) ask();
}

void QuestionPage::sayKept(bool same) {
    say(same ? tr("As found before; the job is still the same.")
             : tr("The job has changed since this was last worked out. Ask again for the job as it is now."));
}

void QuestionPage::addSetting(QWidget *setting) {
    setting->setFixedWidth(std::max(280, 40 * fontMetrics().averageCharWidth())); // a line of it is read whole
    // What is left over of the height goes below all settings, not in between.
    setting->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Maximum);
    m_settings->insertWidget(m_settings->count() - 1, setting);
}

void QuestionPage::showSettings(bool shown) {
    m_explained->setVisible(shown);
    for (int i = 0; i < m_settings->count(); ++i)
        if (QWidget *setting = m_settings->itemAt(i)->widget()) setting->setVisible(shown);
}

void QuestionPage::addAbove(const QString &name, QWidget *field) {
    if (m_above->count() > 1) m_above->insertSpacing(m_above->count() - 1, 20);
    auto *label = new QLabel(name);
    label->setBuddy(field);
    m_above->insertWidget(m_above->count() - 1, label);
    m_above->insertWidget(m_above->count() - 1, field);
}

void QuestionPage::addAnswer(QWidget *answer, int stretch) {
    m_shown << answer;
    if (stretch > 0) {
        m_answers->addWidget(answer, 0, 0);
        m_answers->setRowStretch(0, stretch);
        return;
    }
    standInRows();
}

void QuestionPage::standInRows() {
    const int readable = fontMetrics().averageCharWidth() * 30;
    const int inARow = std::clamp(m_scroll->viewport()->width() / std::max(1, readable), 1, std::max(1, m_mostInARow));
    for (QWidget *answer : m_shown) m_answers->removeWidget(answer);
    for (int column = 0; column < m_answers->columnCount(); ++column) m_answers->setColumnStretch(column, 0);
    for (int row = 0; row < m_answers->rowCount(); ++row) m_answers->setRowStretch(row, 0);
    for (int i = 0; i < int(m_shown.size()); ++i) m_answers->addWidget(m_shown[i], i / inARow, i % inARow);
    for (int column = 0; column < inARow; ++column) m_answers->setColumnStretch(column, 1);
    // What is left over of the height goes below them.
    m_answers->setRowStretch(int(m_shown.size() + inARow - 1) / inARow, 1);
}

void QuestionPage::resizeEvent(QResizeEvent *event) {
    QWidget::resizeEvent(event);
    if (qobject_cast<LayoutCard *>(m_shown.value(0))) standInRows();
}

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
    for (QWidget *answer : m_shown) {
        m_answers->removeWidget(answer);
        answer->hide();
        answer->deleteLater();
    }
    m_shown.clear();
}

bool QuestionPage::forget() {
    if (m_shown.isEmpty()) return false;
    clearAnswers();
    return true;
}

void QuestionPage::say(const QString &sentence) {
    m_state->setText(sentence);
    m_state->setVisible(!sentence.isEmpty());
}

} // namespace boltwright::ui
