#include "ui/photo/read_picture.h"

#include "core/job/pictures.h"
#include "ui/photo/photo_words.h"
#include "ui/text/words.h"

#include <QBuffer>
#include <QFile>
#include <QFileInfo>
#include <QImageReader>
#include <QPainter>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

constexpr qint64 mostPixels = 100'000'000;
constexpr qint64 mostPixelsUnscaled = 40'000'000; // 160 MB while it is read
constexpr qint64 mostBytes = 400'000'000;
constexpr int mostSide = 60'000;

tl::unexpected<Fault> refuse(const QString &name, const QString &why) {
    return fault(Fault{toCore(why)}.at(toCore(name)));
}

/// On paper of its own, so that a drawing without a ground is no black hole.
QImage opaque(const QImage &image) {
    if (!image.hasAlphaChannel()) return image.convertToFormat(QImage::Format_RGB32);
    QImage out(image.size(), QImage::Format_RGB32);
    out.fill(Qt::white);
    QPainter(&out).drawImage(0, 0, image);
    return out;
}

Result<ReadPicture> readFrom(QIODevice &device, const QString &name, int longestSide) {
    QImageReader reader(&device);
    reader.setDecideFormatFromContent(true);
    reader.setAutoTransform(true);
    const QByteArray format = reader.format();
    if (format != "png" && format != "jpeg" && format != "svg" && format != "svgz")
        return refuse(name, aboutPictures("this is no picture that can be read; PNG, JPEG and SVG can"));
    const bool drawing = format.startsWith("svg"), scalesWhileReading = drawing || format == "jpeg";
    const QSize full = reader.size();
    if (!full.isValid()) return refuse(name, aboutPictures("the picture is damaged and cannot be read"));
    if (full.width() < 2 || full.height() < 2) return refuse(name, aboutPictures("there is nothing in this picture"));
    const qint64 pixels = qint64(full.width()) * full.height(),
                 most = scalesWhileReading ? mostPixels : mostPixelsUnscaled;
    if (!drawing && (pixels > most || std::max(full.width(), full.height()) > mostSide))
        return refuse(name, aboutPictures("%1 million pixels are too many to open; save it with at most %2 million")
                                .arg(pixels / 1'000'000)
                                .arg(most / 1'000'000));
    const QSize wanted = full.scaled(longestSide, longestSide, Qt::KeepAspectRatio).expandedTo(QSize(2, 2));
    if (drawing || wanted.width() < full.width()) reader.setScaledSize(wanted);
    QImage image = reader.read();
    if (image.isNull()) return refuse(name, aboutPictures("the picture is damaged and cannot be read"));
    const bool onItsSide = reader.transformation() & QImageIOHandler::TransformationRotate90;
    return ReadPicture{opaque(image), onItsSide ? full.transposed() : full};
}

} // namespace

Result<ReadPicture> readPicture(const QString &fileName, int longestSide) {
    const QFileInfo info(fileName);
    const QString name = info.fileName();
    if (!info.exists()) return refuse(name, aboutPictures("there is no such picture"));
    if (!info.isFile())
        return refuse(name, aboutPictures("this is no picture that can be read; PNG, JPEG and SVG can"));
    if (info.size() == 0) return refuse(name, aboutPictures("the file is empty"));
    if (info.size() > mostBytes) return refuse(name, aboutPictures("the file is too large to open"));
    QFile file(fileName);
    if (!file.open(QIODevice::ReadOnly)) return refuse(name, file.errorString());
    return readFrom(file, name, longestSide);
}

Result<ReadPicture> readPicture(const QByteArray &bytes, const QString &name, int longestSide) {
    if (bytes.isEmpty()) return refuse(name, aboutPictures("the picture is empty"));
    QBuffer buffer;
    buffer.setData(bytes);
    buffer.open(QIODevice::ReadOnly);
    return readFrom(buffer, name, longestSide);
}

Result<ReadPicture> readPicture(const PictureSource &picture, int longestSide) {
    if (picture.data.isEmpty()) return readPicture(QString::fromStdString(fileOf(picture).string()), longestSide);
    const auto decoded = QByteArray::fromBase64Encoding(QByteArray::fromStdString(picture.data.base64()),
                                                        QByteArray::AbortOnBase64DecodingErrors);
    const QString name = aboutPictures("the picture kept in the job");
    if (!decoded) return refuse(name, aboutPictures("it is damaged and cannot be read"));
    return readPicture(*decoded, name, longestSide);
}

PictureBytes bytesToKeep(const QImage &image) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    const bool large = std::max(image.width(), image.height()) > keptSide;
    (large ? image.scaled(keptSide, keptSide, Qt::KeepAspectRatio, Qt::SmoothTransformation) : image)
        .save(&buffer, "JPEG", 88);
    return PictureBytes(bytes.toBase64().toStdString());
}

} // namespace boltwright::ui
