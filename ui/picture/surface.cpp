#include "ui/picture/surface.h"

#include "ui/picture/type.h"

#include <QBuffer>
#include <QPainter>
#include <QXmlStreamWriter>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

QPen penOf(const Stroke &stroke, double paperMillimetre) {
    if (stroke.width <= 0) return Qt::NoPen;
    QPen pen(stroke.colour, stroke.width * paperMillimetre);
    pen.setJoinStyle(Qt::MiterJoin);
    pen.setCapStyle(Qt::FlatCap);
    if (!stroke.dashes.isEmpty()) {
        QList<qreal> pattern; // Qt counts dashes in widths of the line
        for (qreal d : stroke.dashes) pattern << d / stroke.width;
        pen.setDashPattern(pattern);
    }
    return pen;
}

/// To a thousandth: a millionth of a metre in an SVG's millimetres.
QString number(double v) {
    QString text = QString::number(v, 'f', 3);
    while (text.endsWith(u'0')) text.chop(1);
    if (text.endsWith(u'.')) text.chop(1);
    return text == u"-0" ? u"0"_s : text;
}

QString place(QPointF p) { return number(p.x()) + u',' + number(p.y()); }

} // namespace

void PainterSurface::area(const QPolygonF &outline, const QColor &fill, const Stroke &stroke) {
    m_painter.setPen(penOf(stroke, paperMillimetre()));
    m_painter.setBrush(fill.isValid() ? QBrush(fill) : QBrush(Qt::NoBrush));
    m_painter.drawPolygon(outline);
}

void PainterSurface::lines(const QList<QLineF> &lines, const Stroke &stroke) {
    m_painter.setPen(penOf(stroke, paperMillimetre()));
    m_painter.drawLines(lines);
}

void PainterSurface::words(const SetWords &words) {
    m_painter.setFont(paperFont(words.size, words.bold));
    m_painter.setPen(words.colour);
    if (!words.upward) {
        m_painter.drawText(words.start, words.text);
        return;
    }
    m_painter.save();
    m_painter.translate(words.start);
    m_painter.rotate(-90);
    m_painter.drawText(QPointF(0, 0), words.text);
    m_painter.restore();
}

void PainterSurface::picture(const QImage &picture, const QRectF &place) {
    m_painter.save();
    m_painter.setRenderHint(QPainter::SmoothPixmapTransform);
    m_painter.drawImage(place, picture);
    m_painter.restore();
}

void SvgSurface::picture(const QImage &picture, const QRectF &place) {
    const bool seeThrough = picture.hasAlphaChannel(); // which JPEG cannot keep
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    picture.save(&buffer, seeThrough ? "PNG" : "JPEG", seeThrough ? -1 : 85);
    m_xml.writeEmptyElement(u"image"_s);
    m_xml.writeAttribute(u"x"_s, number(place.x()));
    m_xml.writeAttribute(u"y"_s, number(place.y()));
    m_xml.writeAttribute(u"width"_s, number(place.width()));
    m_xml.writeAttribute(u"height"_s, number(place.height()));
    m_xml.writeAttribute(u"preserveAspectRatio"_s, u"none"_s);
    m_xml.writeNamespace(u"http://www.w3.org/1999/xlink"_s, u"xlink"_s);
    m_xml.writeAttribute(u"http://www.w3.org/1999/xlink"_s, u"href"_s,
                         (seeThrough ? u"data:image/png;base64,"_s : u"data:image/jpeg;base64,"_s) +
                             QString::fromLatin1(bytes.toBase64()));
}

void SvgSurface::writeStroke(const Stroke &stroke) {
    if (stroke.width <= 0) return;
    m_xml.writeAttribute(u"stroke"_s, stroke.colour.name());
    m_xml.writeAttribute(u"stroke-width"_s, number(stroke.width * paperMillimetre()));
    QStringList dashes;
    for (qreal d : stroke.dashes) dashes << number(d * paperMillimetre());
    if (!dashes.isEmpty()) m_xml.writeAttribute(u"stroke-dasharray"_s, dashes.join(u' '));
}

void SvgSurface::area(const QPolygonF &outline, const QColor &fill, const Stroke &stroke) {
    QStringList points;
    for (QPointF p : outline) points << place(p);
    m_xml.writeEmptyElement(u"polygon"_s);
    m_xml.writeAttribute(u"points"_s, points.join(u' '));
    m_xml.writeAttribute(u"fill"_s, fill.isValid() ? fill.name() : u"none"_s);
    writeStroke(stroke);
}

void SvgSurface::lines(const QList<QLineF> &lines, const Stroke &stroke) {
    if (lines.isEmpty()) return;
    QString path;
    for (const QLineF &line : lines) path += u'M' + place(line.p1()) + u'L' + place(line.p2());
    m_xml.writeEmptyElement(u"path"_s);
    m_xml.writeAttribute(u"d"_s, path);
    m_xml.writeAttribute(u"fill"_s, u"none"_s);
    writeStroke(stroke);
}

void SvgSurface::words(const SetWords &words) {
    m_xml.writeStartElement(u"text"_s);
    m_xml.writeAttribute(u"x"_s, number(words.start.x()));
    m_xml.writeAttribute(u"y"_s, number(words.start.y()));
    if (words.upward)
        m_xml.writeAttribute(u"transform"_s,
                             u"rotate(-90 %1 %2)"_s.arg(number(words.start.x()), number(words.start.y())));
    m_xml.writeAttribute(u"font-size"_s, number(words.size));
    if (words.bold) m_xml.writeAttribute(u"font-weight"_s, u"bold"_s);
    m_xml.writeAttribute(u"fill"_s, words.colour.name());
    // Whatever font the reader has, the words keep the room that was found for them.
    m_xml.writeAttribute(u"textLength"_s, number(wordsWidth(words.text, words.bold) * words.size));
    m_xml.writeAttribute(u"lengthAdjust"_s, u"spacingAndGlyphs"_s);
    m_xml.writeCharacters(words.text);
    m_xml.writeEndElement();
}

void SvgSurface::beginGroup(const QString &id, const QString &title, const QString &description) {
    m_xml.writeStartElement(u"g"_s);
    if (!id.isEmpty()) m_xml.writeAttribute(u"id"_s, id);
    if (!title.isEmpty()) m_xml.writeTextElement(u"title"_s, title);
    if (!description.isEmpty()) m_xml.writeTextElement(u"desc"_s, description);
}

void SvgSurface::endGroup() { m_xml.writeEndElement(); }

} // namespace boltwright::ui
