#pragma once

#include "core/measure/unit.h"
#include "ui/drawing/colours.h"
#include "ui/drawing/panel_drawing.h"

#include <QPainter>

namespace boltwright::ui {

/// A tape measure along the roll: inches with the yards marked, or centimetres with the metres. Marks thin out so that
/// it reads at every zoom.
struct TapePicture {
    QRectF rect;     ///< on screen
    double zero = 0; ///< screen x of the cut end
    double pixelsPerMillimetre = 1;
    Unit unit = Unit::Inch;
};

void drawTape(QPainter &painter, const TapePicture &tape, const Colours &colours, const SlipFonts &fonts);

} // namespace boltwright::ui
