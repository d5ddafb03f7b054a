#include "ui/drawing/cloth_pictures.h"

#include "core/job/pictures.h"
#include "ui/drawing/table_frame.h"
#include "ui/photo/read_picture.h"
#include "ui/photo/straightening.h"
#include "ui/text/words.h"

#include <QCache>
#include <QDateTime>
#include <QFileInfo>
#include <QLineF>
#include <QObject>
#include <QPainter>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

constexpr int longestRepeat = 1200; // pixels of a straightened repeat
constexpr int longestPhoto = keptSide;

/// What tells one picture from another: its file as it is now, or the bytes within the job, which do not change.
QString keyOf(const PictureSource &picture) {
    if (!picture.data.isEmpty()) return u"bytes %1"_s.arg(quintptr(picture.data.base64().data()));
    const QFileInfo file(QString::fromStdString(fileOf(picture).string()));
    return u"file %1 %2 %3"_s.arg(file.absoluteFilePath())
        .arg(file.size())
        .arg(file.lastModified().toMSecsSinceEpoch());
}

QString keyOf(const std::vector<PicturePoint> &points) {
    QString key;
    for (const PicturePoint &p : points) key += u" %1,%2"_s.arg(p.right, 0, 'f', 6).arg(p.down, 0, 'f', 6);
    return key;
}

/// Holds the bytes, so that another picture cannot come to lie where they did and be taken for them.
template <class Made>
struct Remembered {
    PictureBytes bytes;
    std::shared_ptr<const Made> made;
};

QPolygonF inPixels(const std::vector<PicturePoint> &points, QSize size) {
    QPolygonF out;
    for (const PicturePoint &p : points) out << QPointF(p.right * size.width(), p.down * size.height());
    return out;
}

QImage warped(const QImage &image, const QTransform &transform, QSize size, const QColor &beyond) {
    QImage out(size, QImage::Format_RGB32);
    out.fill(beyond);
    QPainter painter(&out);
    painter.setRenderHint(QPainter::SmoothPixmapTransform);
    painter.setTransform(transform);
    painter.drawImage(0, 0, image);
    return out;
}

QColor meanOf(const QImage &image) {
    const QImage one = image.scaled(16, 16, Qt::IgnoreAspectRatio, Qt::SmoothTransformation);
    int red = 0, green = 0, blue = 0;
    for (int y = 0; y < 16; ++y)
        for (int x = 0; x < 16; ++x) {
            const QRgb c = one.pixel(x, y);
            red += qRed(c);
            green += qGreen(c);
            blue += qBlue(c);
        }
    return QColor(red / 256, green / 256, blue / 256);
}

std::shared_ptr<const PhotoPicture> makePhoto(const Remnant &remnant) {
    const auto read = readPicture(remnant.photo->picture, keptSide);
    const QTransform shares = photoToTable(*remnant.photo);
    if (!read || !shares.isInvertible()) return nullptr;
    auto made = std::make_shared<PhotoPicture>();
    made->box = onTable(remnant.outline).boundingRect().adjusted(-5, -5, 5, 5);
    const double scale = longestPhoto / std::max(made->box.width(), made->box.height());
    const QSize size(std::max(2, qRound(made->box.width() * scale)), std::max(2, qRound(made->box.height() * scale)));
    const QTransform toPixels =
        QTransform::fromScale(1.0 / read->image.width(), 1.0 / read->image.height()) * shares *
        QTransform::fromTranslate(-made->box.left(), -made->box.top()) *
        QTransform::fromScale(size.width() / made->box.width(), size.height() / made->box.height());
    made->picture = warped(read->image, toPixels, size, QColor(0xD8, 0xD2, 0xC6));
    return made;
}

template <class Made, class Make>
std::shared_ptr<const Made> remembered(const QString &key, const PictureSource &source, const Make &make) {
    static QCache<QString, Remembered<Made>> cache(8);
    if (const auto *there = cache.object(key)) return there->made;
    std::shared_ptr<const Made> made = make();
    cache.insert(key, new Remembered<Made>{source.data, made});
    return made;
}

} // namespace

SwatchPicture straightenedSwatch(const QImage &image, const Swatch &swatch) {
    const QPolygonF corners = inPixels(swatch.corners, image.size());
    const auto side = [&](int i) { return QLineF(corners[i], corners[(i + 1) % 4]).length(); };
    const double width = (side(0) + side(2)) / 2, height = (side(1) + side(3)) / 2;
    const double scale = std::min(1.0, longestRepeat / std::max({width, height, 1.0}));
    const QSize size(std::max(2, qRound(width * scale)), std::max(2, qRound(height * scale)));
    const QPolygonF target(
        {{0, 0}, {double(size.width()), 0}, {double(size.width()), double(size.height())}, {0, double(size.height())}});
    QTransform straight;
    QTransform::quadToQuad(corners, target, straight);
    SwatchPicture made;
    made.repeat = warped(image, straight, size, Qt::white);
    made.motif = {swatch.motif.right, swatch.motif.down};
    made.mean = meanOf(made.repeat);
    return made;
}

std::shared_ptr<const SwatchPicture> swatchPicture(const Swatch &swatch) {
    if (swatch.picture.isEmpty()) return nullptr;
    const QString key = keyOf(swatch.picture) + keyOf(swatch.corners) + keyOf({swatch.motif});
    return remembered<SwatchPicture>(key, swatch.picture, [&]() -> std::shared_ptr<const SwatchPicture> {
        const auto read = readPicture(swatch.picture, swatchSide);
        if (!read || swatch.corners.size() != 4 ||
            !cornersOfRectangle(inPixels(swatch.corners, read->image.size()), read->image.size()))
            return nullptr;
        return std::make_shared<SwatchPicture>(straightenedSwatch(read->image, swatch));
    });
}

std::shared_ptr<const PhotoPicture> photoPicture(const Remnant &remnant) {
    if (!remnant.photo || remnant.photo->picture.isEmpty() || remnant.outline.empty()) return nullptr;
    QString key = keyOf(remnant.photo->picture) + keyOf(remnant.photo->points);
    for (const ClothRing *ring : {&remnant.photo->at, &remnant.outline})
        for (const ClothPoint &p : *ring) key += u" %1,%2"_s.arg(p.x.ticks()).arg(p.y.ticks());
    return remembered<PhotoPicture>(key, remnant.photo->picture, [&] { return makePhoto(remnant); });
}

QStringList picturesNotShown(const Job &job) {
    QStringList lines;
    const auto name = [](const Cloth &cloth) { return fromCore(cloth.name.empty() ? cloth.id : cloth.name); };
    const auto why = [](const PictureSource &picture) {
        const auto read = readPicture(picture, 64);
        return read ? QObject::tr("its corners say nothing that can be drawn") : fromCore(read.error().text);
    };
    for (const Cloth &cloth : job.cloths) {
        if (cloth.look && cloth.look->swatch && !cloth.look->swatch->picture.isEmpty() &&
            !swatchPicture(*cloth.look->swatch))
            lines << QObject::tr("The picture of %1 is not shown: %2.")
                         .arg(name(cloth), why(cloth.look->swatch->picture));
        for (const Remnant &remnant : cloth.remnants)
            if (remnant.photo && !remnant.photo->picture.isEmpty() && !photoPicture(remnant))
                lines << QObject::tr("The photograph of remnant %1 is not shown: %2.")
                             .arg(fromCore(remnant.id), why(remnant.photo->picture));
    }
    return lines;
}

} // namespace boltwright::ui
