#pragma once

#include "core/job/job.h"
#include "ui/drawing/colours.h"

#include <QFont>
#include <QLineF>
#include <QPainter>
#include <QPolygonF>
#include <QString>
#include <QTransform>

namespace boltwright::ui {

/// A cut ready to be drawn: outlines in the table frame (millimetres) of its own sheet, and the words on its slip.
/// Knows nothing of jobs.
struct PanelPicture {
    QPolygonF cut;      ///< the line the scissors follow
    QPolygonF measured; ///< the measured shape within; empty where it cannot be told
    QLineF top;         ///< the cut's edge that is the panel's top
    QPointF outward;    ///< unit step from the middle of the panel through its top
    QString mark, name, size;
    CutState state = CutState::Planned;
    bool mirrored = false;
};

/// The picture of one cut of a layout.
PanelPicture pictureOf(const Job &job, const Layout &layout, const Cut &cut);

/// How it looks at the moment.
struct PanelLook {
    bool selected = false;
    bool broken = false; ///< some rule does not hold: a torn outline
    bool held = false;   ///< in the hand: the cloth shows through
    bool slip = true;    ///< with its slip of paper
};

/// Fonts of slips, tags and tape, from one base font; nothing under 11 px at 100 %.
struct SlipFonts {
    QFont mark, small, smallStrong;
    QString key; ///< tells one set from another
    explicit SlipFonts(const QFont &base);
};

/// Draws in device pixels; `toScreen` takes the table frame of the panel's sheet there.
void drawPanel(QPainter &painter, const PanelPicture &panel, const QTransform &toScreen, const PanelLook &look,
               const Colours &colours, const SlipFonts &fonts);

/// A rounded tag with words, its tip at `at`; kept inside `within`. Returns the space it took.
QRectF drawTag(QPainter &painter, const QString &text, QPointF at, const QRectF &within, const QColor &ground,
               const QColor &ink, const QFont &font);

} // namespace boltwright::ui
