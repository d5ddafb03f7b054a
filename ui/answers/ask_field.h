#pragma once

#include <QStyledItemDelegate>

namespace boltwright::ui {

/// A field of the table of what to ask for: the length, and below it, smaller, what is done otherwise than wished.
class AskField : public QStyledItemDelegate {
    Q_OBJECT
public:
    using QStyledItemDelegate::QStyledItemDelegate;
    void paint(QPainter *painter, const QStyleOptionViewItem &option, const QModelIndex &index) const override;
    QSize sizeHint(const QStyleOptionViewItem &option, const QModelIndex &index) const override;
};

} // namespace boltwright::ui
