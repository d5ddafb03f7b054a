#pragma once

#include "ui/drawing/colours.h"
#include "ui/drawing/panel_drawing.h"

#include <QPainter>
#include <QString>

namespace boltwright::ui {

/// The flag on the line of the last cut: the figures stand where the scissors go.
struct FlagPicture {
    double x = 0;          ///< the line of the last cut, on screen
    double top = 0;        ///< of the flag
    double bottom = 0;     ///< of the line
    QString first, second; ///< length and what to buy; waste and the least it can take
};

double flagHeight(const SlipFonts &fonts);
/// Kept inside `seen` where the line is out of sight, so that the figures never leave the screen.
void drawFlag(QPainter &painter, const FlagPicture &flag, const QRectF &seen, const Colours &colours,
              const SlipFonts &fonts);

} // namespace boltwright::ui
