#include "ui/photo/photo_remnant.h"

#include "core/geometry/shape_ops.h"
#include "ui/drawing/table_frame.h"
#include "ui/photo/corner_fit.h"
#include "ui/photo/photo_words.h"
#include "ui/text/words.h"

#include <QPainter>

#include <algorithm>
#include <cmath>

namespace boltwright::ui {

namespace {

constexpr int straightSide = 2000;   // pixels
constexpr double farthest = 6000;    // millimetres of cloth to each side of the known rectangle: more is no remnant
constexpr double missOfAClick = 1.5; // pixels

/// Before or behind the camera: the sign of the third coordinate, the same for all that can be seen.
double depth(const QTransform &t, QPointF p) { return t.m13() * p.x() + t.m23() * p.y() + t.m33(); }

bool isBefore(const PhotoFind &find, QPointF p) {
    const QTransform t = find.toPlane();
    const double known = depth(t, find.corners.first()), here = depth(t, p);
    return here / known > 0.02; // at the horizon itself a pixel is miles of cloth
}

} // namespace

StraightPhoto straightened(const PhotoFind &find) {
    const QTransform toPlane = find.toPlane();
    const QRectF known = toPlane.map(find.corners).boundingRect();
    const double reach = std::max(farthest / 3, 6 * std::max(known.width(), known.height()));
    const QRectF most = known.adjusted(-reach, -reach, reach, reach);
    QRectF shown = known;
    // Points all round the photograph's edge, as far as they can be seen on the plane.
    const QRectF edge(QPointF(0, 0), QSizeF(find.photo.size()));
    constexpr int steps = 24;
    for (int i = 0; i <= steps; ++i)
        for (const QPointF p :
             {QPointF(edge.width() * i / steps, 0), QPointF(edge.width() * i / steps, edge.height()),
              QPointF(0, edge.height() * i / steps), QPointF(edge.width(), edge.height() * i / steps)})
            if (isBefore(find, p)) {
                const QPointF there = toPlane.map(p);
                shown |= QRectF(there, QSizeF(0.001, 0.001));
            }
    shown &= most;
    const double scale = straightSide / std::max(shown.width(), shown.height());
    StraightPhoto out;
    out.image = QImage(std::max(2, qRound(shown.width() * scale)), std::max(2, qRound(shown.height() * scale)),
                       QImage::Format_RGB32);
    out.image.fill(QColor(0xE7, 0xE1, 0xD6));
    out.fromPhoto =
        toPlane * QTransform::fromTranslate(-shown.left(), -shown.top()) * QTransform::fromScale(scale, scale);
    QPainter painter(&out.image);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.setTransform(out.fromPhoto);
    painter.drawImage(0, 0, find.photo);
    return out;
}

double errorOf(const PhotoFind &find) {
    return mostError(find.corners, find.known, find.longFirst, find.outline, find.fitted ? fittedMiss : missOfAClick,
                     missOfAClick);
}

Result<Remnant> remnantOf(const PhotoFind &find, const PictureSource &picture) {
    if (find.outline.size() < 3)
        return fault(toCore(aboutPictures("click at least three corners of the remnant's outline")));
    for (const QPolygonF &ring : QList<QPolygonF>{find.outline} + find.flaws)
        for (const QPointF &p : ring)
            if (!isBefore(find, p))
                return fault(
                    toCore(aboutPictures("part of the outline lies too far off in the photograph to be measured")));
    const QTransform toPlane = find.toPlane();
    const QTransform toTable = toPlane * planeToTable(find.top, toPlane.map(find.outline));
    const auto ringOf = [&](const QPolygonF &points) {
        ClothRing ring;
        for (const QPointF &p : points) ring.push_back(onCloth(toTable.map(p)));
        return ring;
    };
    Remnant remnant;
    remnant.outline = ringOf(find.outline);
    if (!isSimple(remnant.outline))
        return fault(toCore(aboutPictures("the outline crosses itself; click its corners in order, one way round")));
    for (const QPolygonF &flaw : find.flaws) {
        remnant.flaws.push_back({ringOf(flaw), {}, {}});
        if (!isSimple(remnant.flaws.back().outline))
            return fault(
                toCore(aboutPictures("a flaw's outline crosses itself; click its corners in order, one way round")));
    }
    remnant.photo = RemnantPhoto{};
    remnant.photo->picture = picture;
    for (const QPointF &p : find.corners) {
        remnant.photo->points.push_back({p.x() / find.photo.width(), p.y() / find.photo.height()});
        remnant.photo->at.push_back(onCloth(toTable.map(p)));
    }
    return remnant;
}

Length marginFor(double millimetres, Unit unit) {
    const std::int64_t step = unit == Unit::Inch ? 8128 / 8 : 320;
    return Length::ticks(std::max<std::int64_t>(1, std::int64_t(std::ceil(millimetres * 320 / double(step)))) * step);
}

} // namespace boltwright::ui
