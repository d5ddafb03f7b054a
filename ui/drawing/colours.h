#pragma once

#include "core/cloth/picture.h"

#include <QColor>
#include <QPalette>

namespace boltwright::ui {

/// The house's colours by what they stand for. Ratios are WCAG 2.1 contrast on table / on paper (light, then dark):
/// ink 10.9 / 13.4, 13.9 / 12.1; quiet 5.2 / 6.3, 7.6 / 6.6; accent 5.6 / 6.9, 8.4 / 7.3; broken 5.3 / 6.5, 8.2 / 7.1;
/// good 4.8 / 5.9, 9.5 / 8.3. Colour never carries a meaning alone.
struct Colours {
    QColor table;    ///< what the cloth lies on
    QColor paper;    ///< panes and slips
    QColor ink;      ///< text
    QColor quiet;    ///< text that may step back
    QColor accent;   ///< selection, guides, the main button
    QColor onAccent; ///< text on the accent
    QColor broken;   ///< what is not right, and the line of the last cut
    QColor onBroken;
    QColor good; ///< what is right, and the offcut
    QColor hairline;
    QColor tape, tapeEdge, tapeInk;
    QColor chalk, chalkCasing; ///< the two strokes of a panel's outline
    bool dark = false;
};

Colours lightColours();
Colours darkColours();
/// The set that belongs to a widget's palette: dark when its windows are.
Colours coloursOf(const QPalette &palette);
/// The palette that makes Qt's own widgets follow the set.
QPalette paletteOf(const Colours &colours);

/// The colours of the cloth itself, calm so that panels stand out on them. Where nobody has told its colours, a
/// cloth has a pair of the program's own, by its place in the job.
struct ClothColours {
    QColor ground, figure, selvage, flaw, edge;
};
ClothColours clothColours(int clothIndex, bool dark);
/// A colour of cloth in a dark window: the lamp is dimmed, the cloth stays what it is.
QColor byNight(const QColor &colour, bool dark);
/// The same for a cloth whose own colours may be told.
ClothColours clothColours(const std::optional<ClothLook> &look, int clothIndex, bool dark);

} // namespace boltwright::ui
