#include "ui/window/yielding_row.h"

#include <QAction>
#include <QEvent>
#include <QMenu>
#include <QPushButton>

namespace boltwright::ui {

namespace {
constexpr int gap = 8;
}

YieldingRow::YieldingRow(QWidget *parent)
    : QWidget(parent), m_more(new QPushButton(tr("More"), this)), m_menu(new QMenu(this)) {
    setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Fixed);
    m_menu->setToolTipsVisible(true);
    m_more->setMenu(m_menu);
    m_more->hide();
}

void YieldingRow::setMoreToolTip(const QString &text) { m_more->setToolTip(text); }

void YieldingRow::add(QPushButton *button, QAction *action) {
    button->setParent(this);
    button->show();
    m_buttons.append({button, action});
    // Tab goes on from the last button to the menu that stands for those without room.
    setTabOrder(button, m_more);
    updateGeometry();
    arrange();
}

QSize YieldingRow::sizeHint() const {
    int wide = 0;
    for (const auto &[button, action] : m_buttons) wide += button->sizeHint().width() + gap;
    return {std::max(0, wide - gap), m_more->sizeHint().height()};
}

QSize YieldingRow::minimumSizeHint() const { return m_more->sizeHint(); }

void YieldingRow::arrange() {
    m_menu->clear();
    const int all = sizeHint().width(), high = height();
    int room = width();
    const bool yields = all > room;
    if (yields) room -= m_more->sizeHint().width() + gap;
    int x = 0;
    bool over = false;
    for (const auto &[button, action] : m_buttons) {
        const int wide = button->sizeHint().width();
        over = over || x + wide > room;
        button->setVisible(!over);
        if (over) {
            m_menu->addAction(action);
            continue;
        }
        button->setGeometry(x, (high - button->sizeHint().height()) / 2, wide, button->sizeHint().height());
        x += wide + gap;
    }
    m_more->setVisible(yields);
    const QSize size = m_more->sizeHint();
    if (yields) m_more->setGeometry(width() - size.width(), (high - size.height()) / 2, size.width(), size.height());
}

void YieldingRow::resizeEvent(QResizeEvent *event) {
    QWidget::resizeEvent(event);
    arrange();
}

void YieldingRow::changeEvent(QEvent *event) {
    QWidget::changeEvent(event);
    if (event->type() != QEvent::FontChange && event->type() != QEvent::StyleChange) return;
    updateGeometry();
    arrange();
}

} // namespace boltwright::ui
