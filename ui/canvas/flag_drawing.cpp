#include "ui/canvas/flag_drawing.h"

#include <QFontMetricsF>

#include <algorithm>

namespace boltwright::ui {

double flagHeight(const SlipFonts &fonts) {
    return QFontMetricsF(fonts.mark).height() + QFontMetricsF(fonts.small).height() + 12;
}

void drawFlag(QPainter &painter, const FlagPicture &flag, const QRectF &seen, const Colours &colours,
              const SlipFonts &fonts) {
    const double width = std::max(QFontMetricsF(fonts.mark).horizontalAdvance(flag.first),
                                  QFontMetricsF(fonts.small).horizontalAdvance(flag.second)) +
                         24;
    const double height = flagHeight(fonts);
    const bool inSight = flag.x >= seen.left() && flag.x <= seen.right();
    // It flies towards the cut end, over the cloth that is used; near the cut end it turns round.
    const bool towardsEnd = flag.x - width >= seen.left() + 4;
    double left = towardsEnd ? flag.x - width : flag.x;
    left = std::clamp(left, seen.left() + 4, std::max(seen.left() + 4, seen.right() - width - 4));
    const QRectF cloth(left, flag.top, width, height);
    if (inSight) {
        painter.setPen(QPen(colours.broken, 2));
        painter.drawLine(QPointF(flag.x, flag.top + 2), QPointF(flag.x, flag.bottom));
    }
    painter.setPen(Qt::NoPen);
    painter.setBrush(colours.broken);
    painter.drawRoundedRect(cloth, 3, 3);
    if (inSight) {
        const double tip = towardsEnd ? -11 : 11;
        painter.drawPolygon(QPolygonF{QPointF(flag.x, cloth.bottom() - 4), QPointF(flag.x + tip, cloth.bottom() - 4),
                                      QPointF(flag.x, cloth.bottom() + 11)});
    }
    const QRectF text = cloth.adjusted(12, 5, -12, -5);
    painter.setPen(colours.onBroken);
    painter.setFont(fonts.mark);
    painter.drawText(text, Qt::AlignLeft | Qt::AlignTop, flag.first);
    painter.setFont(fonts.small);
    painter.drawText(text, Qt::AlignLeft | Qt::AlignBottom, flag.second);
}

} // namespace boltwright::ui
