#include "ui/widgets/wrapping_row.h"

#include <QWidget>

#include <algorithm>

namespace boltwright::ui {

WrappingRow::WrappingRow(int gap, QWidget *parent) : QLayout(parent), m_gap(gap) { setContentsMargins(0, 0, 0, 0); }

WrappingRow::~WrappingRow() { qDeleteAll(m_items); }

QLayoutItem *WrappingRow::takeAt(int index) {
    return index >= 0 && index < m_items.size() ? m_items.takeAt(index) : nullptr;
}

void WrappingRow::setGeometry(const QRect &rect) {
    QLayout::setGeometry(rect);
    arrange(rect, true);
}

QSize WrappingRow::sizeHint() const {
    int wide = 0, high = 0;
    for (const QLayoutItem *item : m_items) {
        if (item->isEmpty()) continue;
        wide += item->sizeHint().width() + (wide > 0 ? m_gap : 0);
        high = std::max(high, item->sizeHint().height());
    }
    return {wide, high};
}

QSize WrappingRow::minimumSize() const {
    QSize least;
    for (const QLayoutItem *item : m_items)
        if (!item->isEmpty()) least = least.expandedTo(item->minimumSize());
    return least;
}

int WrappingRow::arrange(const QRect &rect, bool really) const {
    int x = rect.x(), y = rect.y(), high = 0;
    QList<std::pair<QLayoutItem *, QRect>> line;
    const auto endLine = [&] {
        for (const auto &[item, place] : line)
            if (really) {
                const int below = item->alignment() & Qt::AlignTop ? 0 : (high - place.height()) / 2;
                item->setGeometry(QRect(QPoint(place.x(), y + below), place.size()));
            }
        line.clear();
    };
    for (QLayoutItem *item : m_items) {
        if (item->isEmpty()) continue;
        const int wide = std::min(item->sizeHint().width(), std::max(rect.width(), item->minimumSize().width()));
        if (x > rect.x() && x + wide > rect.x() + rect.width()) {
            endLine();
            x = rect.x();
            y += high + m_gap;
            high = 0;
        }
        const int tall = item->hasHeightForWidth() ? item->heightForWidth(wide) : item->sizeHint().height();
        line.append({item, QRect(x, y, wide, tall)});
        x += wide + m_gap;
        high = std::max(high, tall);
    }
    endLine();
    return y + high - rect.y();
}

} // namespace boltwright::ui
