#include "ui/paper/pages.h"

#include "ui/text/words.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QPageLayout>
#include <QPageSize>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

/// A paper of the list where it is one, so that the file says its name's exact size.
QPageLayout layoutOf(PaperSize paper) {
    const bool sideways = paper.width > paper.height;
    QSizeF size(paper.width.toMillimetres(), paper.height.toMillimetres());
    if (sideways) size.transpose();
    QPageSize page(size, QPageSize::Millimeter);
    for (auto id : {QPageSize::Letter, QPageSize::A4, QPageSize::Legal, QPageSize::A3, QPageSize::Tabloid}) {
        const QSizeF known = QPageSize(id).size(QPageSize::Millimeter);
        if (std::abs(known.width() - size.width()) < 0.5 && std::abs(known.height() - size.height()) < 0.5)
            page = QPageSize(id);
    }
    QPageLayout layout(page, sideways ? QPageLayout::Landscape : QPageLayout::Portrait, QMarginsF(0, 0, 0, 0),
                       QPageLayout::Millimeter);
    layout.setMode(QPageLayout::FullPageMode);
    return layout;
}

} // namespace

void paintPage(QPainter &painter, const Pages &pages, int page, double dotsPerMillimetre) {
    painter.save();
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    painter.scale(dotsPerMillimetre / unitsPerMillimetre, dotsPerMillimetre / unitsPerMillimetre);
    PainterSurface surface(painter, unitsPerMillimetre);
    pages.paint(surface, page);
    painter.restore();
}

Result<void> paintAll(QPagedPaintDevice &device, const Pages &pages) {
    device.setPageLayout(layoutOf(pages.paper()));
    QPainter painter;
    if (!painter.begin(&device)) return fault("the printer takes no pages");
    for (int page = 0; page < pages.count(); ++page) {
        if (page > 0 && !device.newPage()) return fault("the printer stopped at page " + std::to_string(page + 1));
        paintPage(painter, pages, page, device.logicalDpiX() / 25.4);
    }
    return painter.end() ? Result<void>{} : fault("the printer did not finish");
}

Result<void> writePdf(const Pages &pages, const std::filesystem::path &file) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter writer(&buffer);
        writer.setResolution(2540); // the drawing unit is a hundredth of a millimetre
        writer.setTitle(pages.title());
        writer.setCreator(u"Boltwright"_s);
        if (auto painted = paintAll(writer, pages); !painted) return painted;
    }
    QSaveFile out(QString::fromStdU16String(file.u16string()));
    if (!out.open(QIODevice::WriteOnly) || out.write(bytes) != bytes.size() || !out.commit())
        return fault(Fault{toCore(out.errorString())}.at(file.string()));
    return {};
}

} // namespace boltwright::ui
