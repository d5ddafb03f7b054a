#pragma once

#include "core/base/result.h"
#include "core/cloth/picture.h"

#include <QByteArray>
#include <QImage>
#include <QString>

namespace boltwright::ui {

/// A picture as far as it is worked with: never larger than asked for, whatever the file holds.
struct ReadPicture {
    QImage image; ///< opaque, upright as the camera was held
    QSize full;   ///< pixels of the file
};

/// How many pixels along its long side a photograph is measured in: a pixel of 80 in of cloth is then 1/50 in.
constexpr int photoSide = 4000;
/// And how many are kept and shown.
constexpr int keptSide = 2400;
/// The same of a swatch, which shows a few inches.
constexpr int swatchSide = 1600;

/// Reads PNG, JPEG or SVG, told by its content and not by its name, scaled down while it is read. Errors, as one line
/// that begins with `name`: it is not there, no picture, damaged, empty, or of more pixels than can be held (100
/// million; 40 million where the format cannot be scaled while it is read).
Result<ReadPicture> readPicture(const QString &file, int longestSide);
Result<ReadPicture> readPicture(const QByteArray &bytes, const QString &name, int longestSide);
Result<ReadPicture> readPicture(const PictureSource &picture, int longestSide);

/// The picture as it is kept within a job: small enough to travel with it.
PictureBytes bytesToKeep(const QImage &image);

} // namespace boltwright::ui
