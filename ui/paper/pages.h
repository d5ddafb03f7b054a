#pragma once

#include "core/base/result.h"
#include "core/paper/sheet_plan.h"
#include "ui/picture/surface.h"

#include <QRectF>
#include <QString>

#include <filesystem>

class QPagedPaintDevice;
class QPainter;

namespace boltwright::ui {

/// Something on paper, page by page: made once, then written as PDF, printed or shown. Drawing units are hundredths of
/// a millimetre from the paper's upper left corner.
class Pages {
public:
    virtual ~Pages() = default;
    virtual QString title() const = 0;
    virtual PaperSize paper() const = 0; ///< as it is held
    virtual int count() const = 0;
    virtual void paint(Surface &surface, int page) const = 0;
};

constexpr double unitsPerMillimetre = 100;
inline QPointF onPage(PaperPoint p) { return QPointF(p.x.toMillimetres(), p.y.toMillimetres()) * unitsPerMillimetre; }
inline QRectF onPage(const PaperBox &box) { return QRectF(onPage(box.low), onPage(box.high)); }

/// Writes all pages as PDF, replacing the file in one step.
Result<void> writePdf(const Pages &pages, const std::filesystem::path &file);

/// Paints one page with the painter's origin at the paper's corner; `dotsPerMillimetre` of the painter's units.
void paintPage(QPainter &painter, const Pages &pages, int page, double dotsPerMillimetre);

/// Sets the device to the pages' paper without margins and paints all of them: for a printer and its preview.
Result<void> paintAll(QPagedPaintDevice &device, const Pages &pages);

} // namespace boltwright::ui
