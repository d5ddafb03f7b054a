#include "ui/drawing/pattern_drawing.h"

#include "ui/drawing/swatch_drawing.h"
#include "ui/drawing/table_frame.h"

#include <QPaintEngine>
#include <QPainterPath>
#include <QPixmap>
#include <QPixmapCache>

#include <algorithm>
#include <cmath>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

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

QPainterPath spot() {
    QPainterPath path;
    path.addEllipse(QPointF(0, 0), 1, 1);
    return path;
}

/// A motif as large as `side` pixels, around the origin.
QPainterPath motifOf(Figure figure, double side, bool lookingRight) {
    QTransform place = QTransform::fromScale(side / 2, side / 2);
    if (lookingRight) place.rotate(90);
    return place.map(figure == Figure::Spots ? spot() : sprig());
}

/// Beyond this a motif is drawn as a shape: then few are seen, and a picture of it would be large.
constexpr double largestKept = 240;

/// Drawn once for each size and colour; a bolt shows hundreds of them.
QPixmap motifPixmap(Figure figure, double side, bool lookingRight, const QColor &colour, double ratio) {
    const QString key = u"motif %1 %2 %3 %4 %5"_s.arg(int(figure))
                            .arg(side, 0, 'f', 2)
                            .arg(lookingRight)
                            .arg(colour.name(QColor::HexArgb))
                            .arg(ratio);
    QPixmap pixmap;
    if (QPixmapCache::find(key, &pixmap)) return pixmap;
    pixmap = QPixmap(QSize(qCeil(side) + 2, qCeil(side) + 2) * ratio);
    pixmap.setDevicePixelRatio(ratio);
    pixmap.fill(Qt::transparent);
    QPainter painter(&pixmap);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.translate((qCeil(side) + 2) / 2.0, (qCeil(side) + 2) / 2.0);
    painter.fillPath(motifOf(figure, side, lookingRight), colour);
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

/// A stripe as shares of the repeat, from the motif's middle to the stripe's nearer edge.
struct Stripe {
    double from, width;
    QColor colour;
};

QColor calmed(QColor colour, bool calm) {
    colour.setAlpha(calm ? 175 : 255);
    return colour;
}

QList<Stripe> stripesOf(const SheetPicture &sheet, double repeat, const PatternLook &look) {
    const QColor figure = calmed(look.cloth.figure, look.calm);
    if (!sheet.look || sheet.look->bands.empty())
        return {{-0.08, 0.16, figure}, {-0.15, 0.03, figure}, {0.12, 0.03, figure}};
    QList<Stripe> stripes;
    for (const Band &band : sheet.look->bands) {
        const QColor own =
            band.colour.empty() ? look.cloth.figure : byNight(QColor(QString::fromStdString(band.colour)), look.dark);
        stripes.append({band.from.toMillimetres() / repeat, std::min(1.0, band.width.toMillimetres() / repeat),
                        calmed(own, look.calm)});
    }
    return stripes;
}

/// One direction of the screen: where stripes follow each other, and which way they run.
void drawStripes(QPainter &painter, const SheetPicture &sheet, const QTransform &toScreen, const QRectF &seen,
                 const PatternLook &look) {
    const Lattice &lattice = *sheet.lattice;
    const bool upTheRoll = lattice.repeatsAcross(); // and so one below the other
    const double repeat = (upTheRoll ? lattice.across() : lattice.along()).toMillimetres(),
                 step = repeat * (upTheRoll ? toScreen.m22() : toScreen.m11());
    if (step < leastVisibleRepeat) return;
    const QPointF motif = toScreen.map(onTable(lattice.motif()));
    const double first = upTheRoll ? motif.y() : motif.x();
    const auto [from, to] =
        stepsWithin(upTheRoll ? seen.top() : seen.left(), upTheRoll ? seen.bottom() : seen.right(), first, step);
    const QList<Stripe> stripes = stripesOf(sheet, repeat, look);
    for (qint64 i = from; i <= to; ++i)
        for (const Stripe &s : stripes) {
            const double at = first + (double(i) + s.from) * step, wide = std::max(1.0, s.width * step);
            painter.fillRect(upTheRoll ? QRectF(seen.left(), at, seen.width(), wide)
                                       : QRectF(at, seen.top(), wide, seen.height()),
                             s.colour);
        }
}

/// How large the figure is drawn: as told, or as the repeat has room.
double motifSide(const SheetPicture &sheet, Figure figure) {
    const Lattice &lattice = *sheet.lattice;
    if (sheet.look && sheet.look->size) return sheet.look->size->toMillimetres();
    const double room = std::min(lattice.across().toMillimetres(), lattice.along().toMillimetres());
    return room * (figure == Figure::Spots ? 0.34 : 0.62);
}

void drawMotifs(QPainter &painter, const SheetPicture &sheet, const QTransform &toScreen, const QRectF &seen,
                Figure figure, const PatternLook &look) {
    const Lattice &lattice = *sheet.lattice;
    const double scale = toScreen.m11();
    const double acrossStep = lattice.across().toMillimetres() * scale,
                 alongStep = lattice.along().toMillimetres() * scale;
    if (std::min(acrossStep, alongStep) < leastVisibleRepeat) return;
    const double side = motifSide(sheet, figure) * scale, half = side / 2 + 1;
    const QColor colour = calmed(look.cloth.figure, look.calm);
    // On paper a shape is sharper than a picture of it.
    const bool kept = side <= largestKept && painter.paintEngine()->type() == QPaintEngine::Raster;
    const QPixmap pixmap =
        kept ? motifPixmap(figure, side, sheet.figureLooksUpTheRoll, colour, painter.device()->devicePixelRatio())
             : QPixmap();
    const QPainterPath shape = kept ? QPainterPath() : motifOf(figure, side, sheet.figureLooksUpTheRoll);
    const double corner = kept ? pixmap.width() / pixmap.devicePixelRatio() / 2 : 0;
    const QPointF first = toScreen.map(onTable(lattice.motif()));
    const auto [columnFrom, columnTo] = stepsWithin(seen.top() - half, seen.bottom() + half, first.y(), acrossStep);
    for (qint64 i = columnFrom; i <= columnTo; ++i) {
        const double x0 = first.x() + lattice.rise(i).toMillimetres() * scale;
        const auto [from, to] = stepsWithin(seen.left() - half, seen.right() + half, x0, alongStep);
        for (qint64 j = from; j <= to; ++j) {
            const QPointF middle(x0 + double(j) * alongStep, first.y() + double(i) * acrossStep);
            if (kept)
                painter.drawPixmap(QPointF(std::round(middle.x() - corner), std::round(middle.y() - corner)), pixmap);
            else
                painter.fillPath(shape.translated(middle), colour);
        }
    }
}

} // namespace

void drawPattern(QPainter &painter, const SheetPicture &sheet, const QTransform &toScreen, const QRectF &seen,
                 const PatternLook &look) {
    if (sheet.photo) {
        drawPhoto(painter, *sheet.photo, toScreen, seen, look);
        return;
    }
    if (sheet.swatch) {
        drawSwatch(painter, sheet, toScreen, seen, look);
        return;
    }
    if (!sheet.lattice) return;
    const bool both = sheet.lattice->repeatsAcross() && sheet.lattice->repeatsAlong();
    const auto wanted = sheet.look ? sheet.look->figure : std::nullopt;
    const bool stripes = wanted ? *wanted == Figure::Stripes : !both;
    if (stripes || !both) // one repeat is all that a stripe needs, and a figure needs two
        drawStripes(painter, sheet, toScreen, seen, look);
    else
        drawMotifs(painter, sheet, toScreen, seen, wanted.value_or(Figure::Sprig), look);
}

} // namespace boltwright::ui
