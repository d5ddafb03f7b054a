#pragma once

#include "core/edit/layout_edit.h"
#include "ui/drawing/cloth_drawing.h"
#include "ui/drawing/panel_drawing.h"

#include <QList>
#include <QRectF>
#include <QTransform>

namespace boltwright::ui {

/// One bolt or remnant where it lies on the table.
struct SheetOnTable {
    SheetOf sheet;
    QString label; ///< the cloth's name, a remnant's too
    bool bolt = false;
    double width = 0; ///< across the roll, millimetres
    SheetPicture picture;
    QRectF box;        ///< in its own table frame, millimetres
    double wanted = 0; ///< how far along the roll one wants to see, millimetres
    QPointF zero;      ///< where that frame's origin lies, in content pixels
};

struct PanelOnTable {
    PanelPicture picture;
    int sheet = -1; ///< index; -1: its sheet is gone
};

/// What lies on the cutting table and where: cloths one below the other, the remnants of a cloth side by side, each
/// with room above it for tape and flag. Content pixels are the screen's, before scrolling. The distances between
/// cloths are in pixels, so that tape and flag keep their size at every zoom.
class Table {
public:
    struct Spacing {
        double above = 100, below = 28, left = 48, right = 32, between = 40;
    };

    void take(const Job &job, const Layout &layout);
    void takeCut(const Job &job, const Layout &layout, int cut); ///< only this cut moved
    void arrange(double pixelsPerMillimetre, const Spacing &spacing);

    double scale() const { return m_scale; }
    const QList<SheetOnTable> &sheets() const { return m_sheets; }
    const QList<PanelOnTable> &panels() const { return m_panels; }
    QRectF extent() const { return m_extent; }
    QTransform toContent(int sheet) const; ///< from the sheet's table frame
    QRectF sheetRect(int sheet) const;     ///< content pixels
    QRectF panelRect(int panel) const;     ///< content pixels
    int sheetAt(QPointF content) const;    ///< -1: bare table
    int panelAt(QPointF content) const;    ///< the uppermost; -1: none
    int sheetOf(const SheetOf &sheet) const;
    /// The scale at which everything fits into `room`.
    double fittingScale(QSizeF room, const Spacing &spacing) const;

private:
    struct Row {
        int first = 0, count = 0;
    };
    QSizeF sizeAt(double scale, const Spacing &spacing) const;

    QList<SheetOnTable> m_sheets;
    QList<Row> m_rows;
    QList<PanelOnTable> m_panels;
    double m_scale = 0.3;
    QRectF m_extent;
};

} // namespace boltwright::ui
