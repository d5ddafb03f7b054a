#include "ui/picture/picture.h"

#include "ui/picture/sheet_painter.h"
#include "ui/text/on_paper.h"
#include "ui/text/words.h"

#include <QImage>
#include <QPainter>
#include <QSaveFile>
#include <QXmlStreamWriter>

#include <cmath>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

constexpr int reduced = 10;  // type and lines of the picture are made for a tenth of true size
constexpr double margin = 6; // millimetres of paper

/// Where the sheets of a layout lie on one picture, one below the other, in millimetres of cloth.
struct PicturePlan {
    QList<SheetView> views;
    QRectF whole;
};

PicturePlan planOf(const DrawnLayout &drawn) {
    PicturePlan plan;
    const double above = (margin + StripEdges::above.toMillimetres()) * reduced,
                 left = (margin + StripEdges::left.toMillimetres()) * reduced;
    double top = 0, right = 0;
    for (const ClothSheet &sheet : drawn.sheets) {
        const ClothBox box = sheet.box();
        // A bolt's own corner is the frame's; a remnant's outline may begin anywhere.
        const QPointF corner(box.low.y.toMillimetres(), box.low.x.toMillimetres());
        SheetView view{1, plan.views.isEmpty() ? QPointF() : QPointF(0, top) - QPointF(0, corner.y()), box.low.y,
                       box.high.y};
        if (plan.views.isEmpty()) plan.whole = QRectF(corner - QPointF(left, above), QSizeF(1, 1));
        const QRectF cloth = view.at(box);
        right = std::max(right, cloth.right());
        plan.whole.setLeft(std::min(plan.whole.left(), cloth.left() - left));
        top = cloth.bottom() + (StripEdges::below.toMillimetres() + StripEdges::above.toMillimetres() + 3) * reduced;
        plan.whole.setBottom(cloth.bottom() + (StripEdges::below.toMillimetres() + margin) * reduced);
        plan.views << view;
    }
    plan.whole.setRight(right + margin * reduced);
    return plan;
}

Result<void> noCuts() { return fault("the layout has no cuts to draw"); }

QString fileName(const std::filesystem::path &file) { return QString::fromStdU16String(file.u16string()); }

Result<void> writeFile(const std::filesystem::path &path, const QByteArray &bytes) {
    QSaveFile file(fileName(path));
    if (!file.open(QIODevice::WriteOnly) || file.write(bytes) != bytes.size() || !file.commit())
        return fault(Fault{toCore(file.errorString())}.at(path.string()));
    return {};
}

QString millimetres(double v) { return QString::number(v, 'f', 3); }

} // namespace

Result<void> writeSvg(const Job &job, const Layout &layout, const std::filesystem::path &file) {
    const DrawnLayout drawn(job, layout);
    if (drawn.sheets.empty()) return noCuts();
    const PicturePlan plan = planOf(drawn);

    QByteArray bytes;
    QXmlStreamWriter xml(&bytes);
    xml.setAutoFormatting(true);
    xml.setAutoFormattingIndent(1);
    xml.writeStartDocument();
    xml.writeStartElement(u"svg"_s);
    xml.writeDefaultNamespace(u"http://www.w3.org/2000/svg"_s);
    xml.writeAttribute(u"version"_s, u"1.1"_s);
    xml.writeAttribute(u"width"_s, millimetres(plan.whole.width()) + u"mm"_s);
    xml.writeAttribute(u"height"_s, millimetres(plan.whole.height()) + u"mm"_s);
    xml.writeAttribute(u"viewBox"_s, QStringList{millimetres(plan.whole.x()), millimetres(plan.whole.y()),
                                                 millimetres(plan.whole.width()), millimetres(plan.whole.height())}
                                         .join(u' '));
    xml.writeAttribute(u"font-family"_s, u"sans-serif"_s);
    xml.writeTextElement(u"title"_s, fromCore(job.card.title.empty() ? std::string("Boltwright") : job.card.title));
    xml.writeTextElement(
        u"desc"_s, onPaper("True size: one unit is one millimetre. From left to right: the distance from the cut end; "
                           "from top to bottom: the distance from the left selvage."));
    SvgSurface surface(xml, reduced);
    surface.rectangle(plan.whole, QColor(0xFF, 0xFF, 0xFF));
    for (qsizetype i = 0; i < plan.views.size(); ++i) paintSheet(surface, drawn, std::size_t(i), plan.views[i]);
    xml.writeEndElement();
    xml.writeEndDocument();
    return writeFile(file, bytes);
}

Result<void> writePng(const Job &job, const Layout &layout, const std::filesystem::path &file, int dotsPerInch) {
    const DrawnLayout drawn(job, layout);
    if (drawn.sheets.empty()) return noCuts();
    const PicturePlan plan = planOf(drawn);
    const double pixels = dotsPerInch / 25.4 / reduced; // a millimetre of cloth
    const QSize size(int(std::ceil(plan.whole.width() * pixels)), int(std::ceil(plan.whole.height() * pixels)));
    constexpr qint64 most = 200'000'000; // pixels: what a reader of pictures can be expected to open
    if (size.width() > 32'000 || size.height() > 32'000 || qint64(size.width()) * size.height() > most)
        return fault("the picture would be " + std::to_string(size.width()) + " by " + std::to_string(size.height()) +
                     " dots; fewer dots per inch would do");

    QImage image(size, QImage::Format_RGB32);
    if (image.isNull()) return fault("not enough memory for a picture of that size; fewer dots per inch would do");
    image.fill(Qt::white);
    image.setDotsPerMeterX(qRound(dotsPerInch / 0.0254));
    image.setDotsPerMeterY(qRound(dotsPerInch / 0.0254));
    QPainter painter(&image);
    painter.setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
    painter.scale(pixels, pixels);
    painter.translate(-plan.whole.topLeft());
    PainterSurface surface(painter, reduced);
    for (qsizetype i = 0; i < plan.views.size(); ++i) paintSheet(surface, drawn, std::size_t(i), plan.views[i]);
    painter.end();
    QSaveFile out(fileName(file));
    if (!out.open(QIODevice::WriteOnly) || !image.save(&out, "PNG") || !out.commit())
        return fault(Fault{toCore(out.errorString())}.at(file.string()));
    return {};
}

} // namespace boltwright::ui
