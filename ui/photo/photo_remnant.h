#pragma once

#include "core/base/result.h"
#include "core/job/job.h"
#include "ui/photo/straightening.h"

#include <QImage>
#include <QPolygonF>

namespace boltwright::ui {

/// A remnant as it is found in a photograph, step by step. All places are pixels of the photograph itself, so that
/// whatever is put right before moves with it.
struct PhotoFind {
    QImage photo;
    QPolygonF corners;
    KnownRectangle known;
    bool longFirst = true;
    bool fitted = false; ///< all four corners were found on the edges of what is known, see corner_fit.h
    PhotoTop top = PhotoTop::Up;
    QPolygonF outline;
    QList<QPolygonF> flaws;

    bool isStraight() const { return bool(cornersOfRectangle(corners, photo.size())) && known.across > 0; }
    QTransform toPlane() const { return straightening(corners, known, longFirst); }
};

/// The photograph as if seen from straight above.
struct StraightPhoto {
    QImage image;
    QTransform fromPhoto; ///< photograph pixels to pixels of `image`
};
/// What of the plane is worth showing: the whole photograph, unless its edge lies near the horizon. Needs a find that
/// is straight.
StraightPhoto straightened(const PhotoFind &find);

/// How far off its outline may be, in millimetres, when each click misses by a pixel and a half, and the corners of
/// what is known by as much, or by `fittedMiss` where all were found on its edges. As misses come to by chance (the
/// root of the sum of squares): when all miss the same unlucky way, a place may be somewhat farther off.
double errorOf(const PhotoFind &find);

/// The remnant in its own frame, to the tick, with its photograph. Errors: the outline has less than three corners,
/// crosses itself, or reaches beyond the horizon of the photograph.
Result<Remnant> remnantOf(const PhotoFind &find, const PictureSource &picture);

/// What is kept from the outline for that error: rounded up to an eighth of an inch or a millimetre.
Length marginFor(double millimetres, Unit unit);

} // namespace boltwright::ui
