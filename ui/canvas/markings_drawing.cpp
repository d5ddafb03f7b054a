#include "ui/canvas/markings_drawing.h"

#include "ui/drawing/table_frame.h"

#include <algorithm>
#include <cmath>

namespace boltwright::ui {

QLineF chalkOnScreen(const ChalkLine &line, const QTransform &toScreen, const QRectF &cloth) {
    if (line.runs == ChalkLine::Runs::Across) {
        const double x = toScreen.map(onTable(ClothPoint{Length{}, line.at})).x();
        return {x, cloth.top() - 5, x, cloth.bottom() + 5};
    }
    const double y = toScreen.map(onTable(ClothPoint{line.at, Length{}})).y();
    return {cloth.left() - 5, y, cloth.right() + 5, y};
}

void drawChalkLine(QPainter &painter, const QLineF &line, const Colours &colours, ChalkLook look) {
    // Light with a dark casing, as all chalk here, so that it reads on any cloth; long dashes, as no edge has them.
    const QList<qreal> dashes{9, 4};
    QPen casing(look == ChalkLook::Held ? colours.accent : colours.chalkCasing, look == ChalkLook::Held ? 4.5 : 3);
    QPen chalk(colours.chalk, look == ChalkLook::Held ? 2 : 1.4);
    casing.setCapStyle(Qt::FlatCap);
    chalk.setCapStyle(Qt::FlatCap);
    if (look == ChalkLook::Faint) painter.setOpacity(0.55);
    for (QPen pen : {casing, chalk}) {
        QList<qreal> scaled;
        for (qreal dash : dashes) scaled << dash * 1.4 / pen.widthF();
        pen.setDashPattern(scaled);
        painter.setPen(pen);
        painter.drawLine(line);
    }
    painter.setOpacity(1);
}

namespace {

constexpr double head = 6; ///< radius of a pin's head

QRectF slipOf(QPointF at, const QString &text, const QRectF &within, const SlipFonts &fonts) {
    const QFontMetricsF metrics(fonts.small);
    const double most = std::max(90.0, std::min(240.0, within.width() / 2));
    QRectF words = metrics.boundingRect(QRectF(0, 0, most - 16, 400), Qt::TextWordWrap, text);
    QRectF slip(0, 0, words.width() + 18, std::min(words.height(), metrics.lineSpacing() * 4) + 10);
    slip.moveTopLeft(at + QPointF(head + 4, head - 2));
    if (slip.right() > within.right() - 4) slip.moveRight(at.x() - head - 4);
    if (slip.bottom() > within.bottom() - 4) slip.moveBottom(at.y() - head + 2);
    return slip;
}

} // namespace

QRectF pinRect(QPointF at, const QString &text, const QRectF &within, const SlipFonts &fonts) {
    const QRectF ball(at.x() - head, at.y() - head, 2 * head, 2 * head);
    return text.isEmpty() ? ball : ball.united(slipOf(at, text, within, fonts));
}

QRectF drawPin(QPainter &painter, QPointF at, const QString &text, const QRectF &within, bool selected,
               const Colours &colours, const SlipFonts &fonts) {
    if (!text.isEmpty()) {
        const QRectF slip = slipOf(at, text, within, fonts);
        painter.setPen(QPen(selected ? colours.accent : colours.hairline, selected ? 2 : 1));
        painter.setBrush(colours.tape);
        painter.drawRoundedRect(slip, 4, 4);
        painter.setPen(colours.tapeInk);
        painter.setFont(fonts.small);
        painter.drawText(slip.adjusted(9, 5, -7, -4), Qt::TextWordWrap | Qt::AlignLeft, text);
    }
    painter.setPen(QPen(colours.chalk, 1.5));
    painter.setBrush(colours.dark ? darkColours().broken : lightColours().broken);
    painter.drawEllipse(at, head, head);
    painter.setPen(Qt::NoPen);
    painter.setBrush(QColor(255, 255, 255, 150));
    painter.drawEllipse(at - QPointF(2, 2), 1.8, 1.8);
    return pinRect(at, text, within, fonts);
}

void drawReading(QPainter &painter, const QLineF &line, const QString &first, const QString &second,
                 const QRectF &within, const Colours &colours, const SlipFonts &fonts) {
    painter.setPen(QPen(colours.tapeInk, 7, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(line);
    painter.setPen(QPen(colours.tape, 5, Qt::SolidLine, Qt::FlatCap));
    painter.drawLine(line);
    for (const QPointF &end : {line.p1(), line.p2()}) drawMark(painter, end, true, colours);
    if (first.isEmpty()) return;
    const QFontMetricsF strong(fonts.smallStrong), small(fonts.small);
    QRectF slip(0, 0, std::max(strong.horizontalAdvance(first), small.horizontalAdvance(second)) + 20,
                strong.height() + (second.isEmpty() ? 0 : small.height()) + 10);
    slip.moveCenter(line.center() + QPointF(0, -slip.height() / 2 - 12));
    slip.moveLeft(
        std::clamp(slip.left(), within.left() + 4, std::max(within.left() + 4, within.right() - slip.width() - 4)));
    slip.moveTop(
        std::clamp(slip.top(), within.top() + 4, std::max(within.top() + 4, within.bottom() - slip.height() - 4)));
    painter.setPen(QPen(colours.tapeEdge, 1));
    painter.setBrush(colours.tape);
    painter.drawRoundedRect(slip, 6, 6);
    painter.setPen(colours.tapeInk);
    painter.setFont(fonts.smallStrong);
    painter.drawText(slip.adjusted(10, 5, -10, 0), Qt::AlignTop | Qt::AlignLeft, first);
    painter.setFont(fonts.small);
    painter.drawText(slip.adjusted(10, 0, -10, -5), Qt::AlignBottom | Qt::AlignLeft, second);
}

void drawMark(QPainter &painter, QPointF at, bool corner, const Colours &colours) {
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(colours.chalkCasing, 4));
    const auto shape = [&] {
        if (corner)
            painter.drawEllipse(at, 5, 5);
        else
            painter.drawRect(QRectF(at.x() - 4, at.y() - 4, 8, 8));
    };
    shape();
    painter.setPen(QPen(colours.chalk, 1.8));
    shape();
}

} // namespace boltwright::ui
