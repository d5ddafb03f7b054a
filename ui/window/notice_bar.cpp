#include "ui/window/notice_bar.h"

#include <QHBoxLayout>
#include <QKeyEvent>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

NoticeBar::NoticeBar(QWidget *parent)
    : QFrame(parent), m_label(new QLabel(this)), m_close(new QPushButton(tr("Close"), this)) {
    setObjectName(u"notice"_s);
    m_label->setWordWrap(true);
    m_label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(20, 8, 12, 8);
    row->addWidget(m_label, 1);
    constexpr int most = 4;
    for (int number = 0; number < most; ++number) {
        auto *button = new QPushButton(this);
        row->addWidget(button);
        m_buttons << button;
        connect(button, &QPushButton::clicked, this, [this, number] {
            const auto act = number < m_answers.size() ? m_answers[number].act : std::function<void()>();
            if (!act) return dismiss();
            hide();
            act();
        });
    }
    m_close->setToolTip(closing().hint);
    row->addWidget(m_close);
    connect(m_close, &QPushButton::clicked, this, &NoticeBar::dismiss);
    hide();
}

void NoticeBar::dismiss() {
    hide();
    Q_EMIT closed();
}

void NoticeBar::keyPressEvent(QKeyEvent *event) {
    // A question about what may be lost is answered, not waved away.
    const bool closes = m_answers.isEmpty() || std::any_of(m_answers.begin(), m_answers.end(),
                                                           [](const Answer &answer) { return !answer.act; });
    if (event->key() == Qt::Key_Escape && closes) return dismiss();
    QFrame::keyPressEvent(event);
}

void NoticeBar::say(const QString &sentence, const QList<Answer> &answers) {
    m_answers = answers;
    m_label->setText(sentence);
    for (int i = 0; i < m_buttons.size(); ++i) {
        m_buttons[i]->setVisible(i < answers.size());
        if (i >= answers.size()) continue;
        m_buttons[i]->setText(answers[i].text);
        m_buttons[i]->setToolTip(answers[i].hint);
    }
    m_close->setVisible(answers.isEmpty());
    setVisible(!sentence.isEmpty());
    setAccessibleName(sentence);
}

} // namespace boltwright::ui
