#pragma once

#include <QListView>
#include <QStandardItemModel>

namespace boltwright::ui {

/// A list whose rows are put in order by dragging them, each following the hand at once; by keyboard the chosen row
/// goes up and down with Alt and the arrow keys, and Space puts its tick on or takes it off.
class OrderList : public QListView {
    Q_OBJECT
public:
    explicit OrderList(QWidget *parent = nullptr);
    void add(const QString &text, int value, bool ticked);
    QList<int> ticked() const; ///< the values of the rows with a tick, from the top
    QList<int> values() const;
    void move(int by); ///< the chosen row

Q_SIGNALS:
    void reordered();

protected:
    void mousePressEvent(QMouseEvent *event) override;
    void mouseMoveEvent(QMouseEvent *event) override;
    void mouseReleaseEvent(QMouseEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;

private:
    void moveTo(int row);
    QStandardItemModel *m_items;
    int m_dragged = -1; ///< the row in the hand
};

} // namespace boltwright::ui
