#pragma once

#include "core/job/job.h"

#include <QColor>
#include <QImage>
#include <QStringList>
#include <QTransform>

#include <memory>

namespace boltwright::ui {

/// The user's picture of one repeat, straightened between its corners, its top up.
struct SwatchPicture {
    QImage repeat;
    QPointF motif; ///< where in it the motif's middle is, as shares
    QColor mean;   ///< what it looks like from far away
};

/// A remnant's photograph, straightened and laid as the remnant lies on the table.
struct PhotoPicture {
    QImage picture;
    QRectF box; ///< what of the table frame it covers, millimetres
};

/// The swatch that a picture at hand makes; needs corners of a rectangle (see ui/photo/straightening.h).
SwatchPicture straightenedSwatch(const QImage &image, const Swatch &swatch);

/// Made ready once and remembered; null where there is none or its file cannot be read. Of the window's own thread.
std::shared_ptr<const SwatchPicture> swatchPicture(const Swatch &swatch);
std::shared_ptr<const PhotoPicture> photoPicture(const Remnant &remnant);

/// One line for each picture of the job that cannot be shown, saying which and why: a warning, since cloth is drawn
/// from its description then and nothing else is lost.
QStringList picturesNotShown(const Job &job);

} // namespace boltwright::ui
