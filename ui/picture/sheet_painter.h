#pragma once

#include "core/paper/chalk_list.h"
#include "core/paper/sheet_plan.h"
#include "core/trimmings/reckoned.h"
#include "ui/picture/surface.h"

#include <QHash>
#include <QRectF>

namespace boltwright::ui {

/// A layout made ready once for all its pictures and pages.
struct DrawnLayout {
    DrawnLayout(const Job &job, const Layout &layout);
    const Job &job;
    const Layout &layout;
    std::vector<ClothSheet> sheets;
    std::vector<ChalkSheet> chalk; ///< one a sheet, in the same order
    QHash<int, QString> news;      ///< by cut: a word to stand beside its name, such as "moved"
    /// One a trimming of the job, where its strips from what is left over are to be shown; empty: they are not.
    std::vector<Reckoned> trimmings;

    bool hasStrips() const; ///< strips from what is left over are shown somewhere
    const ChalkRow &rowOf(const SheetCut &cut) const;
    QString nameOf(const ClothSheet &sheet) const; ///< "Slate ticking · 54 in wide"
};

/// Where two stretches of one sheet are laid over each other.
struct SheetMatch {
    Length at;      ///< along the roll
    int number = 0; ///< the same on both
};

/// How a stretch of a sheet comes onto a surface: the table frame, scaled and moved.
struct SheetView {
    double scale = 1; ///< drawing units a millimetre of cloth takes
    QPointF zero;     ///< where the cloth's (0, 0) lies, drawing units
    Length from, to;  ///< what of it is shown, along the roll
    QList<SheetMatch> matches = {};
    double right = 0;   ///< how far the cloth's name may reach, drawing units; less than the cloth's end: that
    bool plain = false; ///< for somebody who does not cut: marks and names, no measures to chalk by

    QPointF at(ClothPoint p) const { return zero + scale * QPointF(p.y.toMillimetres(), p.x.toMillimetres()); }
    QPolygonF at(const ClothRing &ring) const;
    QRectF at(const ClothBox &box) const;
};

/// Paints one stretch of a sheet: cloth, repeat, flaws, panels with their slips, straight cuts, last cut, and the tapes
/// around it. Every panel is a group of its own. Nothing is painted beyond the stretch
/// and the room of StripEdges around it.
void paintSheet(Surface &surface, const DrawnLayout &drawn, std::size_t sheet, const SheetView &view);

} // namespace boltwright::ui
