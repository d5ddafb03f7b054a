#pragma once

#include <QFrame>
#include <QLabel>
#include <QList>
#include <QPointer>
#include <QScrollArea>
#include <QVBoxLayout>

namespace boltwright::ui {

/// A sheet of paper over the table for long tables and forms: opens, is worked on, and goes away again. What is
/// changed on it is changed at once and can be undone.
class OverSheet : public QFrame {
    Q_OBJECT
public:
    explicit OverSheet(QWidget *over);
    /// Shows `content`, which the sheet owns from then on, in place of what it showed before.
    void show(const QString &title, QWidget *content);
    void close();
    QWidget *content() const { return m_content; }

Q_SIGNALS:
    void closed();

protected:
    bool eventFilter(QObject *watched, QEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;

private:
    void fit();
    void disableBelow();
    QLabel *m_title;
    QScrollArea *m_scroll; ///< what the content is in
    QVBoxLayout *m_column;
    QWidget *m_content = nullptr;
    QList<QPointer<QWidget>> m_disabled; ///< below, while the sheet is open
};

} // namespace boltwright::ui
