#pragma once

#include <QWidget>

class QLabel;

namespace boltwright::ui {

class Actions;
class Canvas;

/// The near edge of the table, where the tools lie: hand, tape, chalk and pins, what the one in use does, and how near
/// the cloth is seen.
class Ledge : public QWidget {
    Q_OBJECT
public:
    Ledge(Canvas &canvas, Actions &actions, QWidget *parent = nullptr);
    QString sentence() const;

protected:
    void resizeEvent(QResizeEvent *event) override;
    void changeEvent(QEvent *event) override;

private:
    void say(const QString &text);
    void fitWords();

    QLabel *m_words;
    QString m_sentence;
};

} // namespace boltwright::ui
