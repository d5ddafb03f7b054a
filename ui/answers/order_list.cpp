#include "ui/answers/order_list.h"

#include <QMouseEvent>

namespace boltwright::ui {

OrderList::OrderList(QWidget *parent) : QListView(parent), m_items(new QStandardItemModel(this)) {
    setModel(m_items);
    setDragDropMode(QAbstractItemView::NoDragDrop);
    setSelectionMode(QAbstractItemView::SingleSelection);
    viewport()->setCursor(Qt::OpenHandCursor);
}

void OrderList::add(const QString &text, int value, bool ticked) {
    auto *item = new QStandardItem(text);
    item->setCheckable(true);
    item->setCheckState(ticked ? Qt::Checked : Qt::Unchecked);
    item->setData(value);
    item->setEditable(false);
    m_items->appendRow(item);
    connect(m_items, &QStandardItemModel::itemChanged, this, &OrderList::reordered, Qt::UniqueConnection);
}

QList<int> OrderList::ticked() const {
    QList<int> all;
    for (int row = 0; row < m_items->rowCount(); ++row)
        if (m_items->item(row)->checkState() == Qt::Checked) all << m_items->item(row)->data().toInt();
    return all;
}

QList<int> OrderList::values() const {
    QList<int> all;
    for (int row = 0; row < m_items->rowCount(); ++row) all << m_items->item(row)->data().toInt();
    return all;
}

void OrderList::moveTo(int to) {
    const int row = currentIndex().row();
    if (row < 0 || to < 0 || to >= m_items->rowCount() || to == row) return;
    m_items->insertRow(to, m_items->takeRow(row));
    setCurrentIndex(m_items->index(to, 0));
    Q_EMIT reordered();
}

void OrderList::move(int by) { moveTo(currentIndex().row() + by); }

void OrderList::mousePressEvent(QMouseEvent *event) {
    QListView::mousePressEvent(event);
    if (event->button() != Qt::LeftButton) return;
    m_dragged = indexAt(event->pos()).row();
    if (m_dragged >= 0) viewport()->setCursor(Qt::ClosedHandCursor);
}

void OrderList::mouseMoveEvent(QMouseEvent *event) {
    if (m_dragged < 0 || !(event->buttons() & Qt::LeftButton)) return;
    const QPoint at(viewport()->width() / 2, event->pos().y());
    int row = indexAt(at).row();
    if (row < 0) row = at.y() < 0 ? 0 : m_items->rowCount() - 1;
    if (row == m_dragged) return;
    moveTo(row);
    m_dragged = row;
}

void OrderList::mouseReleaseEvent(QMouseEvent *event) {
    m_dragged = -1;
    viewport()->setCursor(Qt::OpenHandCursor);
    QListView::mouseReleaseEvent(event);
}

void OrderList::keyPressEvent(QKeyEvent *event) {
    const int by = event->key() == Qt::Key_Up ? -1 : event->key() == Qt::Key_Down ? 1 : 0;
    if (by && event->modifiers() & Qt::AltModifier) return move(by);
    QListView::keyPressEvent(event);
}

} // namespace boltwright::ui
