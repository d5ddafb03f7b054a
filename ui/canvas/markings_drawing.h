#pragma once

#include "core/cloth/cloth.h"
#include "ui/drawing/panel_drawing.h"

#include <QLineF>
#include <QPainter>

/// What was drawn on the cloth and pinned to it, and the tape that is laid over it. In viewport pixels.
namespace boltwright::ui {

/// A chalk line from edge to edge; `cloth` is the sheet's rectangle.
QLineF chalkOnScreen(const ChalkLine &line, const QTransform &toScreen, const QRectF &cloth);

enum class ChalkLook { Drawn, Held, Faint }; ///< faint: where a click would draw one
void drawChalkLine(QPainter &painter, const QLineF &line, const Colours &colours, ChalkLook look = ChalkLook::Drawn);

/// A pin with its words on a slip beside it. Returns what it takes, the slip included.
QRectF drawPin(QPainter &painter, QPointF at, const QString &text, const QRectF &within, bool selected,
               const Colours &colours, const SlipFonts &fonts);
QRectF pinRect(QPointF at, const QString &text, const QRectF &within, const SlipFonts &fonts);

/// The measuring tape between two points with its reading; `second` is the smaller line below.
void drawReading(QPainter &painter, const QLineF &line, const QString &first, const QString &second,
                 const QRectF &within, const Colours &colours, const SlipFonts &fonts);
/// The ring at a place that the tape or a line would come to rest at.
void drawMark(QPainter &painter, QPointF at, bool corner, const Colours &colours);

} // namespace boltwright::ui
