#pragma once

#include <QList>
#include <QWidget>

class QAction;
class QMenu;
class QPushButton;

namespace boltwright::ui {

/// Buttons in a row, of which the last give way where there is no room: they then stand in a menu at the end of the
/// row, so that nothing is out of reach with large letters or in a small window.
class YieldingRow : public QWidget {
    Q_OBJECT
public:
    explicit YieldingRow(QWidget *parent = nullptr);
    void add(QPushButton *button, QAction *action);
    void setMoreToolTip(const QString &text);
    QSize sizeHint() const override;
    QSize minimumSizeHint() const override;

protected:
    void resizeEvent(QResizeEvent *event) override;
    void changeEvent(QEvent *event) override;

private:
    void arrange();
    QList<QPair<QPushButton *, QAction *>> m_buttons;
    QPushButton *m_more;
    QMenu *m_menu;
};

} // namespace boltwright::ui
