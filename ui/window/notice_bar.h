#pragma once

#include <QFrame>
#include <QLabel>
#include <QList>
#include <QPushButton>

#include <functional>

namespace boltwright::ui {

/// One clear line under the header: what went wrong or needs a word, with up to four answers. Goes away by its cross,
/// or when something else is said.
class NoticeBar : public QFrame {
    Q_OBJECT
public:
    struct Answer {
        QString text;
        std::function<void()> act;
        QString hint = {}; ///< what comes of it, in a sentence
    };

    explicit NoticeBar(QWidget *parent = nullptr);
    void say(const QString &sentence, const QList<Answer> &answers = {});
    /// An answer that asks nothing: it only closes, and so does Escape where there is one.
    static Answer closing() { return {tr("Close"), {}, tr("Takes this line away (Escape).")}; }
    QString sentence() const { return isHidden() ? QString() : m_label->text(); }
    QList<QPushButton *> answers() const { return m_buttons; }

Q_SIGNALS:
    /// Closed by whoever read it, who has the keyboard still.
    void closed();

protected:
    void keyPressEvent(QKeyEvent *event) override;

private:
    void dismiss();
    QLabel *m_label;
    QList<QPushButton *> m_buttons;
    QPushButton *m_close;
    QList<Answer> m_answers;
};

} // namespace boltwright::ui
