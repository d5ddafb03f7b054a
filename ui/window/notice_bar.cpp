#include "ui/window/notice_bar.h"

#include <QHBoxLayout>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

NoticeBar::NoticeBar(QWidget *parent)
    : QFrame(parent), m_label(new QLabel(this)), m_first(new QPushButton(this)), m_second(new QPushButton(this)),
      m_close(new QPushButton(tr("Close"), this)) {
    setObjectName(u"notice"_s);
    m_label->setWordWrap(true);
    m_label->setTextInteractionFlags(Qt::TextSelectableByMouse);
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(20, 8, 12, 8);
    row->addWidget(m_label, 1);
    row->addWidget(m_first);
    row->addWidget(m_second);
    row->addWidget(m_close);
    const auto answer = [this](int number) {
        const auto act = number < m_answers.size() ? m_answers[number].act : std::function<void()>();
        hide();
        if (act) act();
    };
    connect(m_first, &QPushButton::clicked, this, [answer] { answer(0); });
    connect(m_second, &QPushButton::clicked, this, [answer] { answer(1); });
    connect(m_close, &QPushButton::clicked, this, &QWidget::hide);
    hide();
}

void NoticeBar::say(const QString &sentence, const QList<Answer> &answers) {
    m_answers = answers;
    m_label->setText(sentence);
    const QList<QPushButton *> buttons{m_first, m_second};
    for (int i = 0; i < buttons.size(); ++i) {
        buttons[i]->setVisible(i < answers.size());
        if (i < answers.size()) buttons[i]->setText(answers[i].text);
    }
    m_close->setVisible(answers.isEmpty());
    setVisible(!sentence.isEmpty());
    setAccessibleName(sentence);
}

} // namespace boltwright::ui
