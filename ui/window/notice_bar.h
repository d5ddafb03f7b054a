#pragma once

#include <QFrame>
#include <QLabel>
#include <QPushButton>

#include <functional>

namespace boltwright::ui {

/// One clear line under the header: what went wrong or needs a word, with up to two answers. Goes away by its cross,
/// or when something else is said.
class NoticeBar : public QFrame {
    Q_OBJECT
public:
    struct Answer {
        QString text;
        std::function<void()> act;
    };

    explicit NoticeBar(QWidget *parent = nullptr);
    void say(const QString &sentence, const QList<Answer> &answers = {});
    QString sentence() const { return isHidden() ? QString() : m_label->text(); }
    QList<QPushButton *> answers() const { return {m_first, m_second}; }

private:
    QLabel *m_label;
    QPushButton *m_first, *m_second, *m_close;
    QList<Answer> m_answers;
};

} // namespace boltwright::ui
