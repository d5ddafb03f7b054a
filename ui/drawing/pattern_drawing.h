#pragma once

#include "ui/drawing/cloth_drawing.h"

namespace boltwright::ui {

struct PatternLook {
    ClothColours cloth;
    bool calm = false; ///< panels lie on it: the pattern steps back
    bool dark = false;
};

/// Fills what is seen of a sheet, which is clipped to its outline already, with what is woven or printed on it: its
/// photograph, the user's swatch, or the figure that the cloth's description tells of, each to scale.
void drawPattern(QPainter &painter, const SheetPicture &sheet, const QTransform &toScreen, const QRectF &seen,
                 const PatternLook &look);

} // namespace boltwright::ui
