#pragma once

#include <QLayout>
#include <QList>

namespace boltwright::ui {

/// Widgets beside each other, each as wide as it wants to be, which go on in a further line where there is no more
/// room: so that a row of fields fits a narrow window and large letters. As narrow as its widest widget, at least. In a
/// line they stand at middle height, or at its top where they are aligned so.
class WrappingRow : public QLayout {
public:
    explicit WrappingRow(int gap, QWidget *parent = nullptr);
    ~WrappingRow() override;

    void addItem(QLayoutItem *item) override { m_items.append(item); }
    int count() const override { return int(m_items.size()); }
    QLayoutItem *itemAt(int index) const override { return m_items.value(index); }
    QLayoutItem *takeAt(int index) override;
    Qt::Orientations expandingDirections() const override { return {}; }
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override { return arrange(QRect(0, 0, width, 0), false); }
    void setGeometry(const QRect &rect) override;
    QSize sizeHint() const override;
    QSize minimumSize() const override;

private:
    /// Height that is taken; `really`: the widgets are put there.
    int arrange(const QRect &rect, bool really) const;

    QList<QLayoutItem *> m_items;
    int m_gap;
};

} // namespace boltwright::ui
