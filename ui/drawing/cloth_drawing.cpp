#include "ui/drawing/cloth_drawing.h"

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
    return sheet;
}

SheetPicture pictureOfRemnant(const Cloth &cloth, int clothIndex, const Remnant &remnant) {
    SheetPicture sheet;
    sheet.outline = onTable(remnant.outline);
    sheet.flaws = picturesOf(remnant.flaws);
    sheet.lattice = cloth.latticeOn(remnant.id);
    sheet.figureLooksUpTheRoll = cloth.up == PatternUp::Roll;
    sheet.clothIndex = clothIndex;
    return sheet;
}

namespace {

/// A sprig of our own drawing with a clear top, in a square of side 2 around the origin, its top at negative y.
QPainterPath sprig() {
    QPainterPath path;
    path.moveTo(0, 0.95);
    path.cubicTo(-0.05, 0.5, 0.05, 0.1, 0, -0.25);
    path.cubicTo(0.1, 0.1, 0.1, 0.5, 0.09, 0.95);
    path.closeSubpath();
    for (double side : {-1.0, 1.0})
        for (double y : {0.62, 0.25}) {
            QPainterPath leaf;
            leaf.moveTo(0, y);
            leaf.cubicTo(side * 0.25, y - 0.35, side * 0.55, y - 0.36, side * 0.72, y - 0.42);
            leaf.cubicTo(side * 0.62, y - 0.12, side * 0.35, y + 0.06, 0, y + 0.02);
            path.addPath(leaf);
        }
    QPainterPath bloom;
    bloom.moveTo(0, -0.15);
    bloom.cubicTo(-0.5, -0.2, -0.5, -0.7, -0.28, -0.85);
    bloom.cubicTo(-0.2, -0.65, -0.1, -0.7, 0, -0.98);
    bloom.cubicTo(0.1, -0.7, 0.2, -0.65, 0.28, -0.85);
    bloom.cubicTo(0.5, -0.7, 0.5, -0.2, 0, -0.15);
    path.addPath(bloom);
    path.setFillRule(Qt::WindingFill);
    return path;
}

/// Drawn once for each size and colour; a bolt shows hundreds of them.
QPixmap motifPixmap(double side, bool lookingRight, const QColor &colour, double ratio) {
    const QString key =
        u"sprig %1 %2 %3 %4"_s.arg(qRound(side)).arg(lookingRight).arg(colour.name(QColor::HexArgb)).arg(ratio);
    QPixmap pixmap;
    if (QPixmapCache::find(key, &pixmap)) return pixmap;
    pixmap = QPixmap(QSize(qCeil(side) + 2, qCeil(side) + 2) * ratio);
    pixmap.setDevicePixelRatio(ratio);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate((qCeil(side) + 2) / 2.0, (qCeil(side) + 2) / 2.0);
    painter.scale(side / 2, side / 2);
    if (lookingRight) painter.rotate(90);
    painter.fillPath(sprig(), colour);
    painter.end();
    QPixmapCache::insert(key, pixmap);
    return pixmap;
}

/// Whole steps of a repeat that reach into an interval, with one to spare on each side.
std::pair<qint64, qint64> stepsWithin(double from, double to, double first, double step) {
    return {qint64(std::floor((from - first) / step)) - 1, qint64(std::ceil((to - first) / step)) + 1};
}

/// Below this many pixels from one to the next a repeat is only a shade; drawing each would be noise and slow.
constexpr double leastVisibleRepeat = 4;

struct Stripe {
    double offset, width; ///< as shares of the repeat, from its middle
};
constexpr Stripe stripeFigure[] = {{0, 0.16}, {-0.135, 0.03}, {0.135, 0.03}};

void drawStripesUpTheRoll(QPainter &painter, const Lattice &lattice, const QTransform &toScreen, const QRectF &seen,
                          const QColor &colour) {
    const double scale = toScreen.m22(), step = lattice.across().toMillimetres() * scale;
    if (step < leastVisibleRepeat) return;
    const double first = toScreen.map(onTable(lattice.motif())).y();
    const auto [from, to] = stepsWithin(seen.top(), seen.bottom(), first, step);
    for (qint64 i = from; i <= to; ++i)
        for (const Stripe &s : stripeFigure)
            painter.fillRect(QRectF(seen.left(), first + (double(i) + s.offset - s.width / 2) * step, seen.width(),
                                    std::max(1.0, s.width * step)),
                             colour);
}

void drawStripesAcross(QPainter &painter, const Lattice &lattice, const QTransform &toScreen, const QRectF &seen,
                       const QColor &colour) {
    const double scale = toScreen.m11(), step = lattice.along().toMillimetres() * scale;
    if (step < leastVisibleRepeat) return;
    const double first = toScreen.map(onTable(lattice.motif())).x();
    const auto [from, to] = stepsWithin(seen.left(), seen.right(), first, step);
    for (qint64 i = from; i <= to; ++i)
        for (const Stripe &s : stripeFigure)
            painter.fillRect(QRectF(first + (double(i) + s.offset - s.width / 2) * step, seen.top(),
                                    std::max(1.0, s.width * step), seen.height()),
                             colour);
}

void drawMotifs(QPainter &painter, const SheetPicture &sheet, const QTransform &toScreen, const QRectF &seen,
                const QColor &colour) {
    const Lattice &lattice = *sheet.lattice;
    const double scale = toScreen.m11();
    const double acrossStep = lattice.across().toMillimetres() * scale,
                 alongStep = lattice.along().toMillimetres() * scale;
    if (std::min(acrossStep, alongStep) < leastVisibleRepeat) return;
    const double side = std::min(std::min(acrossStep, alongStep) * 0.62, 220.0);
    const QPixmap motif = motifPixmap(side, sheet.figureLooksUpTheRoll, colour, painter.device()->devicePixelRatio());
    const double half = motif.width() / motif.devicePixelRatio() / 2;
    const QPointF first = toScreen.map(onTable(lattice.motif()));
    const auto [columnFrom, columnTo] = stepsWithin(seen.top() - half, seen.bottom() + half, first.y(), acrossStep);
    for (qint64 i = columnFrom; i <= columnTo; ++i) {
        const double x0 = first.x() + lattice.rise(i).toMillimetres() * scale;
        const auto [from, to] = stepsWithin(seen.left() - half, seen.right() + half, x0, alongStep);
        for (qint64 j = from; j <= to; ++j)
            painter.drawPixmap(QPointF(std::round(x0 + double(j) * alongStep - half),
                                       std::round(first.y() + double(i) * acrossStep - half)),
                               motif);
    }
}

void drawPattern(QPainter &painter, const SheetPicture &sheet, const QTransform &toScreen, const QRectF &seen,
                 const QColor &colour) {
    if (!sheet.lattice) return;
    if (sheet.lattice->repeatsAcross() && sheet.lattice->repeatsAlong())
        drawMotifs(painter, sheet, toScreen, seen, colour);
    else if (sheet.lattice->repeatsAcross())
        drawStripesUpTheRoll(painter, *sheet.lattice, toScreen, seen, colour);
    else
        drawStripesAcross(painter, *sheet.lattice, toScreen, seen, colour);
}

void drawBoltEdges(QPainter &painter, const SheetPicture &sheet, const QTransform &toScreen, const QRectF &seen,
                   const ClothColours &cloth, const Colours &colours) {
    const QRectF box = toScreen.mapRect(sheet.outline.boundingRect());
    const double selvage = std::max(1.5, sheet.selvage * toScreen.m22());
    if (sheet.selvage > 0) {
        const QRectF top(box.left(), box.top(), box.width(), selvage),
            bottom(box.left(), box.bottom() - selvage, box.width(), selvage);
        for (const QRectF &strip : {top & seen, bottom & seen}) painter.fillRect(strip, cloth.selvage);
        painter.setPen(QPen(cloth.edge, 1, Qt::DotLine));
        painter.drawLine(QPointF(std::max(box.left(), seen.left()), top.bottom()),
                         QPointF(std::min(box.right(), seen.right()), top.bottom()));
        painter.drawLine(QPointF(std::max(box.left(), seen.left()), bottom.top()),
                         QPointF(std::min(box.right(), seen.right()), bottom.top()));
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
    const ClothColours cloth = clothColours(sheet.clothIndex, colours.dark);
    painter.save();
    QColor shadow(0, 0, 0, colours.dark ? 90 : 34);
    painter.setPen(Qt::NoPen);
    painter.setBrush(shadow);
    painter.drawPolygon(outline.translated(0, 3));
    QPainterPath path;
    path.addPolygon(outline);
    path.closeSubpath();
    painter.fillPath(path, cloth.ground);
    painter.setClipPath(path, Qt::IntersectClip);
    painter.setRenderHint(QPainter::Antialiasing, true);
    QColor figure = cloth.figure;
    figure.setAlpha(calm ? 175 : 255);
    drawPattern(painter, sheet, toScreen, visible, figure);
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
