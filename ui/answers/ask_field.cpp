#include "ui/answers/ask_field.h"

#include "ui/models/ask_table_model.h"

#include <QApplication>
#include <QFontInfo>
#include <QHeaderView>
#include <QPainter>
#include <QTableView>

#include <algorithm>

namespace boltwright::ui {
namespace {

constexpr int margin = 6;

QFont small(const QStyleOptionViewItem &option) {
    QFont font = option.font;
    font.setBold(false);
    font.setPixelSize(std::max(10, QFontInfo(option.font).pixelSize() * 85 / 100));
    return font;
}

QString lengthOf(const QModelIndex &index) { return index.data().toString().section(u'\n', 0, 0); }

} // namespace

void AskField::paint(QPainter *painter, const QStyleOptionViewItem &given, const QModelIndex &index) const {
    const QString note = index.data(AskTableModel::NoteRole).toString();
    if (note.isEmpty()) return QStyledItemDelegate::paint(painter, given, index);
    QStyleOptionViewItem option = given;
    initStyleOption(&option, index);
    option.text.clear();
    const QStyle *style = option.widget ? option.widget->style() : QApplication::style();
    style->drawControl(QStyle::CE_ItemViewItem, &option, painter, option.widget);
    painter->save();
    painter->setPen(
        option.palette.color(option.state & QStyle::State_Selected ? QPalette::HighlightedText : QPalette::Text));
    QRect room = option.rect.adjusted(margin, margin, -margin, -margin);
    painter->setFont(option.font);
    painter->drawText(room, Qt::AlignHCenter | Qt::AlignTop, lengthOf(index));
    room.setTop(room.top() + option.fontMetrics.height());
    painter->setFont(small(option));
    painter->drawText(room, Qt::AlignHCenter | Qt::AlignTop | Qt::TextWordWrap, note);
    painter->restore();
}

QSize AskField::sizeHint(const QStyleOptionViewItem &given, const QModelIndex &index) const {
    const QString note = index.data(AskTableModel::NoteRole).toString();
    if (note.isEmpty()) return QStyledItemDelegate::sizeHint(given, index);
    QStyleOptionViewItem option = given;
    initStyleOption(&option, index);
    int width = option.rect.width();
    if (const auto *table = qobject_cast<const QTableView *>(option.widget)) width = table->columnWidth(index.column());
    const QRect words = QFontMetrics(small(option))
                            .boundingRect(QRect(0, 0, std::max(40, width - 2 * margin), 10'000),
                                          Qt::AlignHCenter | Qt::TextWordWrap, note);
    return {words.width() + 2 * margin, words.height() + option.fontMetrics.height() + 2 * margin};
}

} // namespace boltwright::ui
