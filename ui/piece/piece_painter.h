#pragma once

#include "core/piece/covered_piece.h"
#include "ui/drawing/colours.h"

#include <QFont>
#include <QPainter>
#include <QPolygonF>

#include <optional>

namespace boltwright::ui {

/// How the picture of the piece comes onto whatever is painted on. The one place where its lengths become pixels.
struct PieceView {
    double scale = 1; ///< pixels a millimetre takes
    QPointF zero;     ///< where the picture's (0, 0) lies

    QPointF at(PiecePoint p) const { return zero + scale * QPointF(p.x.toMillimetres(), -p.y.toMillimetres()); }
    QPolygonF at(const PieceRing &ring) const;
    QRectF at(const PieceBox &box) const { return QRectF(at(box.low), at(box.high)).normalized(); }
};

/// The view in which the whole piece fills as much of the room as it can, in its middle and at its top.
PieceView viewInto(const QRectF &room, const PieceBox &piece);

/// How it looks at the moment.
struct PieceLook {
    Colours colours;
    QFont font;
    std::optional<CopyOf> selected;
    bool marks = true;
};

/// Paints every panel filled with exactly the cloth that its cuts take, in the cloth's own colours by day or night; a
/// panel that is put aside is an empty frame. Over a join where the pattern does not run on goes a torn line.
void paintCoveredPiece(QPainter &painter, const Job &job, const CoveredPiece &piece, const PieceView &view,
                       const PieceLook &look);

} // namespace boltwright::ui
