#pragma once

#include "core/job/job.h"
#include "ui/drawing/cloth_pictures.h"
#include "ui/drawing/colours.h"

#include <QPainter>
#include <QPolygonF>
#include <QTransform>

namespace boltwright::ui {

struct FlawPicture {
    QPolygonF outline;
    QString note;
};

/// One bolt or remnant ready to be drawn, in its own table frame (millimetres).
struct SheetPicture {
    QPolygonF outline; ///< edge to edge; of a bolt as far as it is unrolled
    bool bolt = false;
    bool endless = false; ///< a bolt as long as it takes: its roll lies at the right
    double selvage = 0;   ///< strip along top and bottom
    double square = 0;    ///< strip at the cut end
    QList<FlawPicture> flaws;
    std::optional<Lattice> lattice;
    bool figureLooksUpTheRoll = true;
    int clothIndex = 0;
    std::optional<ClothLook> look;
    std::shared_ptr<const SwatchPicture> swatch; ///< drawn in place of the description
    std::shared_ptr<const PhotoPicture> photo;   ///< drawn in place of both
};

/// `unrolled`: how much of a bolt without an end is shown.
SheetPicture pictureOfBolt(const Cloth &cloth, int clothIndex, Length unrolled);
SheetPicture pictureOfRemnant(const Cloth &cloth, int clothIndex, const Remnant &remnant);

/// Draws the cloth in device pixels, only what `seen` shows. `calm`: panels lie on it, so its pattern steps back.
void drawSheet(QPainter &painter, const SheetPicture &sheet, const QTransform &toScreen, const QRectF &seen, bool calm,
               const Colours &colours);

} // namespace boltwright::ui
