#include "ui/drawing/cloth_drawing.h"

#include "ui/drawing/pattern_drawing.h"
#include "ui/drawing/table_frame.h"
#include "ui/text/words.h"

#include <QPainterPath>
#include <QPixmap>
#include <QPixmapCache>

#include <algorithm>
#include <cmath>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

QList<FlawPicture> picturesOf(const std::vector<Flaw> &flaws) {
    QList<FlawPicture> pictures;
    for (const Flaw &flaw : flaws) pictures.append({onTable(flaw.outline), fromCore(flaw.note)});
    return pictures;
}

void takeLook(SheetPicture &sheet, const Cloth &cloth) {
    sheet.look = cloth.look;
    if (cloth.look && cloth.look->swatch) sheet.swatch = swatchPicture(*cloth.look->swatch);
}

} // namespace

SheetPicture pictureOfBolt(const Cloth &cloth, int clothIndex, Length unrolled) {
    SheetPicture sheet;
    sheet.bolt = true;
    sheet.endless = !cloth.bolt->length;
    const ClothBox box{{}, {cloth.bolt->width, cloth.bolt->length.value_or(unrolled)}};
    sheet.outline = onTable(ringOf(box));
    sheet.selvage = cloth.selvage.toMillimetres();
    sheet.square = cloth.bolt->square.toMillimetres();
    sheet.flaws = picturesOf(cloth.bolt->flaws);
    sheet.lattice = cloth.latticeOn(std::nullopt);
    sheet.figureLooksUpTheRoll = cloth.up == PatternUp::Roll;
    sheet.clothIndex = clothIndex;
    takeLook(sheet, cloth);
    return sheet;
}

SheetPicture pictureOfRemnant(const Cloth &cloth, int clothIndex, const Remnant &remnant) {
    SheetPicture sheet;
    sheet.outline = onTable(remnant.outline);
    sheet.flaws = picturesOf(remnant.flaws);
    sheet.lattice = cloth.latticeOn(remnant.id);
    sheet.figureLooksUpTheRoll = cloth.up == PatternUp::Roll;
    sheet.clothIndex = clothIndex;
    takeLook(sheet, cloth);
    sheet.photo = photoPicture(remnant);
    return sheet;
}

namespace {

void drawBoltEdges(QPainter &painter, const SheetPicture &sheet, const QTransform &toScreen, const QRectF &seen,
                   const ClothColours &cloth, const Colours &colours) {
    const QRectF box = toScreen.mapRect(sheet.outline.boundingRect());
    const double selvage = std::max(1.5, sheet.selvage * toScreen.m22());
    if (sheet.selvage > 0) {
        const QRectF top(box.left(), box.top(), box.width(), selvage),
            bottom(box.left(), box.bottom() - selvage, box.width(), selvage);
        for (const QRectF &strip : {top & seen, bottom & seen}) painter.fillRect(strip, cloth.selvage);
        const double from = std::max(box.left(), seen.left()), to = std::min(box.right(), seen.right());
        QPen dots(cloth.edge, 1, Qt::DotLine);
        dots.setDashOffset(from - box.left()); // the dots lie still, however much of the line is seen
        painter.setPen(dots);
        painter.drawLine(QPointF(from, top.bottom()), QPointF(to, top.bottom()));
        painter.drawLine(QPointF(from, bottom.top()), QPointF(to, bottom.top()));
    }
    if (sheet.square > 0) {
        const QRectF strip(box.left(), box.top(), sheet.square * toScreen.m11(), box.height());
        QColor shade = colours.ink;
        shade.setAlpha(28);
        painter.fillRect(strip, QBrush(cloth.selvage));
        painter.fillRect(strip, QBrush(shade, Qt::BDiagPattern));
        painter.setPen(QPen(cloth.edge, 1, Qt::DashLine));
        painter.drawLine(strip.topRight(), strip.bottomRight());
    }
}

/// Where an endless bolt goes on: the roll itself, a round of shade.
void drawRoll(QPainter &painter, const QRectF &box, const ClothColours &cloth) {
    const double width = std::clamp(box.height() * 0.11, 16.0, 54.0);
    const QRectF roll(box.right() - width, box.top() - 2, width, box.height() + 4);
    QLinearGradient round(roll.topLeft(), roll.topRight());
    QColor deep = cloth.ground.darker(165), light = cloth.ground.lighter(106);
    deep.setAlpha(210);
    light.setAlpha(235);
    round.setColorAt(0, deep);
    round.setColorAt(0.18, cloth.ground.darker(112));
    round.setColorAt(0.45, light);
    round.setColorAt(1, deep);
    painter.setPen(Qt::NoPen);
    painter.setBrush(round);
    painter.drawRoundedRect(roll, 4, 4);
}

void drawFlaws(QPainter &painter, const SheetPicture &sheet, const QTransform &toScreen, const Colours &colours,
               const ClothColours &cloth) {
    for (const FlawPicture &flaw : sheet.flaws) {
        const QPolygonF outline = toScreen.map(flaw.outline);
        QColor ground = cloth.flaw;
        ground.setAlpha(52);
        painter.setPen(Qt::NoPen);
        painter.setBrush(ground);
        painter.drawPolygon(outline);
        QColor hatch = cloth.flaw;
        painter.setBrush(QBrush(hatch, Qt::DiagCrossPattern));
        painter.setPen(QPen(colours.dark ? colours.broken : cloth.flaw, 1.4));
        painter.drawPolygon(outline);
    }
}

} // namespace

void drawSheet(QPainter &painter, const SheetPicture &sheet, const QTransform &toScreen, const QRectF &seen, bool calm,
               const Colours &colours) {
    const QPolygonF outline = toScreen.map(sheet.outline);
    const QRectF box = outline.boundingRect(), visible = box & seen;
    if (visible.isEmpty()) return;
    const ClothColours cloth = clothColours(sheet.look, sheet.clothIndex, colours.dark);
    painter.save();
    QColor shadow(0, 0, 0, colours.dark ? 90 : 34);
    painter.setPen(Qt::NoPen);
    painter.setBrush(shadow);
    painter.drawPolygon(outline.translated(0, 3));
    QPainterPath path;
    path.addPolygon(outline);
    path.closeSubpath();
    painter.fillPath(path, cloth.ground);
    if (sheet.bolt)
        painter.setClipRect(box, Qt::IntersectClip); // quicker than a path
    else
        painter.setClipPath(path, Qt::IntersectClip);
    painter.setRenderHint(QPainter::Antialiasing, true);
    drawPattern(painter, sheet, toScreen, visible, {cloth, calm, colours.dark});
    if (sheet.bolt) drawBoltEdges(painter, sheet, toScreen, seen, cloth, colours);
    painter.restore();
    drawFlaws(painter, sheet, toScreen, colours, cloth);
    if (sheet.endless) {
        drawRoll(painter, box, cloth);
        return;
    }
    painter.setPen(QPen(cloth.edge, 1));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolygon(outline);
}

} // namespace boltwright::ui
