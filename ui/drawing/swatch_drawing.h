#pragma once

#include "ui/drawing/pattern_drawing.h"

namespace boltwright::ui {

/// Fills what is seen with the swatch, one repeat beside the other as the lattice has them; with its mean colour where
/// the cloth has no repeat or is seen from so far that a repeat is a few pixels. What it looks like at one scale is
/// kept and laid again and again, so that panning costs little.
void drawSwatch(QPainter &painter, const SheetPicture &sheet, const QTransform &toScreen, const QRectF &seen,
                const PatternLook &look);

/// The same for a remnant's photograph.
void drawPhoto(QPainter &painter, const PhotoPicture &photo, const QTransform &toScreen, const QRectF &seen,
               const PatternLook &look);

/// How much room one repeat takes on the table, millimetres along the roll and across it: where the lattice repeats one
/// way only, the picture's own shape says the other.
QSizeF repeatOnTable(const SwatchPicture &swatch, const Lattice &lattice, bool looksUpTheRoll);

} // namespace boltwright::ui
