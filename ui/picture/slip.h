#pragma once

#include "ui/picture/surface.h"

#include <QRectF>

namespace boltwright::ui {

/// What can be said on a panel, the most needed first.
struct SlipText {
    QString number, mark, name, size, place; ///< place: "selvage 4 ½ · end 12"; any of them may be empty
};

/// A slip of paper with words, set into the room that a panel leaves. As much is said as can be read there: from all of
/// it in large type down to the number alone. Nothing reaches outside the room.
struct Slip {
    QRectF rect; ///< the paper under the words; empty where not even the number fits
    QList<SetWords> words;
    QList<QRectF> rings; ///< round frames around the cutting numbers
    bool isEmpty() const { return words.isEmpty(); }
};

/// Words keep upright where they can, and else read upward along a narrow panel.
Slip setSlip(const SlipText &text, const QRectF &room, double paperMillimetre, const QColor &ink, const QColor &quiet);

} // namespace boltwright::ui
