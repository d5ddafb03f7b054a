#include "ui/drawing/swatch_drawing.h"

#include "ui/drawing/table_frame.h"

#include <QCache>

#include <algorithm>
#include <cmath>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

constexpr double leastRepeat = 3;      // pixels; below, a repeat is a shade
constexpr double stripLength = 256;    // pixels: small repeats are laid by the strip
constexpr double mostKept = 3'000'000; // pixels of one strip or photograph that is kept at a scale
constexpr int cacheKilobytes = 48 * 1024;

QCache<QString, QImage> &keptPictures() {
    static QCache<QString, QImage> cache(cacheKilobytes);
    return cache;
}

template <class Make>
QImage kept(const QString &key, const Make &make) {
    if (const QImage *there = keptPictures().object(key)) return *there;
    QImage made = make();
    keptPictures().insert(key, new QImage(made), int(made.sizeInBytes() / 1024) + 1);
    return made;
}

/// What lies over the cloth so that it steps back, or is dimmed by night.
QColor veil(const QColor &mean, const PatternLook &look) {
    QColor over = look.dark ? QColor(0, 0, 0) : mean;
    over.setAlpha((look.calm ? 70 : 0) + (look.dark ? 60 : 0));
    return over;
}

/// The repeat as it lies on the table, its top up the roll to the right, and halved as often as it stays at least as
/// large as `needed`: while somebody zooms, every step is made from a picture of about the right size.
QImage asOnTable(const SwatchPicture &swatch, bool looksUpTheRoll, QSizeF needed) {
    const auto key = [&](int halved) {
        return u"repeat %1 %2 %3"_s.arg(swatch.repeat.cacheKey()).arg(looksUpTheRoll).arg(halved);
    };
    QImage image = kept(
        key(0), [&] { return looksUpTheRoll ? swatch.repeat.transformed(QTransform().rotate(90)) : swatch.repeat; });
    for (int halved = 1; image.width() >= 2 * needed.width() && image.height() >= 2 * needed.height() &&
                         std::min(image.width(), image.height()) > 3;
         ++halved)
        image = kept(key(halved),
                     [&] { return image.scaled(image.size() / 2, Qt::IgnoreAspectRatio, Qt::SmoothTransformation); });
    return image;
}

QPointF motifOnTable(QPointF share, bool looksUpTheRoll) {
    return looksUpTheRoll ? QPointF(1 - share.y(), share.x()) : share;
}

/// Several repeats along the roll, a pixel longer and higher than they are so that neighbours leave no seam.
QImage strip(const SwatchPicture &swatch, bool looksUpTheRoll, QSizeF step, int count, const PatternLook &look,
             double ratio) {
    const QSizeF one = step * ratio;
    const QImage repeat = asOnTable(swatch, looksUpTheRoll, one)
                              .scaled(std::max(1, qCeil(one.width())), std::max(1, qCeil(one.height())),
                                      Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
    QImage out(qCeil(count * one.width()) + 1, qCeil(one.height()) + 1, QImage::Format_RGB32);
    out.fill(swatch.mean);
    QPainter painter(&out);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    for (int row = 0; row < 2; ++row)
        for (int i = 0; i <= count; ++i)
            painter.drawImage(QRectF(QPointF(i * one.width(), row * one.height()), one), repeat);
    painter.fillRect(out.rect(), veil(swatch.mean, look));
    painter.end();
    out.setDevicePixelRatio(ratio);
    return out;
}

/// Seen from so near that one repeat is larger than what is worth keeping: the part that is seen is drawn straight from
/// the picture.
void drawNear(QPainter &painter, const QImage &repeat, const QRectF &place, const QRectF &seen) {
    const QRectF part = place & seen;
    if (part.isEmpty()) return;
    const double right = repeat.width() / place.width(), down = repeat.height() / place.height();
    painter.drawImage(part, repeat,
                      QRectF((part.left() - place.left()) * right, (part.top() - place.top()) * down,
                             part.width() * right, part.height() * down));
}

} // namespace

QSizeF repeatOnTable(const SwatchPicture &swatch, const Lattice &lattice, bool looksUpTheRoll) {
    const double wide = swatch.repeat.width(), high = swatch.repeat.height(),
                 alongToAcross = looksUpTheRoll ? high / wide : wide / high;
    double along = lattice.along().toMillimetres(), across = lattice.across().toMillimetres();
    if (!lattice.repeatsAlong()) along = across * alongToAcross;
    if (!lattice.repeatsAcross()) across = along / alongToAcross;
    return {along, across};
}

void drawSwatch(QPainter &painter, const SheetPicture &sheet, const QTransform &toScreen, const QRectF &seen,
                const PatternLook &look) {
    const SwatchPicture &swatch = *sheet.swatch;
    const double scale = toScreen.m11();
    const QSizeF step =
        sheet.lattice ? repeatOnTable(swatch, *sheet.lattice, sheet.figureLooksUpTheRoll) * scale : QSizeF();
    if (std::min(step.width(), step.height()) < leastRepeat) {
        painter.fillRect(seen, swatch.mean);
        painter.fillRect(seen, veil(swatch.mean, look));
        return;
    }
    const Lattice &lattice = *sheet.lattice;
    const double ratio = painter.device()->devicePixelRatio();
    const int count = std::max(1, int(std::ceil(stripLength / step.width())));
    const bool near = step.width() * step.height() * ratio * ratio * count > mostKept;
    const QImage laid = near
                            ? asOnTable(swatch, sheet.figureLooksUpTheRoll, step * ratio)
                            : kept(u"strip %1 %2 %3 %4 %5 %6 %7"_s.arg(swatch.repeat.cacheKey())
                                       .arg(step.width(), 0, 'f', 3)
                                       .arg(step.height(), 0, 'f', 3)
                                       .arg(sheet.figureLooksUpTheRoll)
                                       .arg(look.calm)
                                       .arg(look.dark)
                                       .arg(ratio),
                                   [&] { return strip(swatch, sheet.figureLooksUpTheRoll, step, count, look, ratio); });
    const QPointF share = motifOnTable(swatch.motif, sheet.figureLooksUpTheRoll);
    const QPointF corner =
        toScreen.map(onTable(lattice.motif())) - QPointF(share.x() * step.width(), share.y() * step.height());
    const bool turned = painter.transform().type() > QTransform::TxTranslate;
    painter.save();
    painter.setRenderHint(QPainter::SmoothPixmapTransform, near || turned);
    painter.setRenderHint(QPainter::Antialiasing, turned);
    const auto rows = [](double from, double to, double first, double by) {
        return std::pair(qint64(std::floor((from - first) / by)), qint64(std::floor((to - first) / by)));
    };
    const double strips = step.width() * count;
    const auto [columnFrom, columnTo] = rows(seen.top(), seen.bottom(), corner.y(), step.height());
    for (qint64 i = columnFrom; i <= columnTo; ++i) {
        const double x0 = corner.x() + lattice.rise(i).toMillimetres() * scale,
                     y = corner.y() + double(i) * step.height();
        const auto [from, to] = rows(seen.left(), seen.right(), x0, near ? step.width() : strips);
        for (qint64 j = from; j <= to; ++j) {
            if (near)
                drawNear(painter, laid, QRectF(QPointF(x0 + double(j) * step.width(), y), step), seen);
            else if (turned)
                painter.drawImage(QPointF(x0 + double(j) * strips, y), laid);
            else // on whole pixels: half a pixel is not seen, and a copy is much quicker than a resampling
                painter.drawImage(QPointF(std::round(x0 + double(j) * strips), std::round(y)), laid);
        }
    }
    if (near) painter.fillRect(seen, veil(swatch.mean, look));
    painter.restore();
}

void drawPhoto(QPainter &painter, const PhotoPicture &photo, const QTransform &toScreen, const QRectF &seen,
               const PatternLook &look) {
    const QRectF place = toScreen.mapRect(photo.box);
    const double ratio = painter.device()->devicePixelRatio();
    const QColor over = veil(QColor(0xD8, 0xD2, 0xC6), look);
    painter.save();
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    if (place.width() * place.height() * ratio * ratio > mostKept) {
        drawNear(painter, photo.picture, place, seen);
    } else {
        const QSize size((place.size() * ratio).toSize().expandedTo(QSize(1, 1)));
        QImage scaled =
            kept(u"photo %1 %2 %3"_s.arg(photo.picture.cacheKey()).arg(size.width()).arg(size.height()),
                 [&] { return photo.picture.scaled(size, Qt::IgnoreAspectRatio, Qt::SmoothTransformation); });
        scaled.setDevicePixelRatio(ratio);
        painter.drawImage(place.topLeft(), scaled);
    }
    if (over.alpha() > 0) painter.fillRect(seen, over);
    painter.restore();
}

} // namespace boltwright::ui
