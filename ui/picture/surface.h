#pragma once

#include <QColor>
#include <QImage>
#include <QLineF>
#include <QList>
#include <QPolygonF>
#include <QString>

class QPainter;
class QXmlStreamWriter;

namespace boltwright::ui {

/// A line's looks; width and dashes in millimetres of paper. No width: not drawn.
struct Stroke {
    QColor colour;
    double width = 0;
    QList<qreal> dashes = {};
};

/// One line of words, set; its place is known before it is drawn, so that nothing is drawn over anything.
struct SetWords {
    QString text;
    QPointF start;   ///< where its baseline begins, drawing units
    double size = 0; ///< of the type, drawing units
    bool bold = false;
    QColor colour;
    bool upward = false; ///< reads from bottom to top
};

/// What a sheet is painted on: paper, pixels or SVG. In drawing units of its own; `paperMillimetre` says how many of
/// them a millimetre of the paper takes, for widths of lines and sizes of type.
class Surface {
public:
    explicit Surface(double paperMillimetre) : m_paperMillimetre(paperMillimetre) {}
    virtual ~Surface() = default;
    double paperMillimetre() const { return m_paperMillimetre; }

    virtual void area(const QPolygonF &outline, const QColor &fill, const Stroke &stroke = {}) = 0;
    virtual void lines(const QList<QLineF> &lines, const Stroke &stroke) = 0;
    virtual void words(const SetWords &words) = 0;
    virtual void picture(const QImage &picture, const QRectF &place) = 0;
    /// What follows, until the group ends, belongs together.
    virtual void beginGroup(const QString & /*id*/, const QString & /*title*/, const QString & /*description*/) {}
    virtual void endGroup() {}

    void rectangle(const QRectF &rect, const QColor &fill, const Stroke &stroke = {}) {
        area(QPolygonF({rect.topLeft(), rect.topRight(), rect.bottomRight(), rect.bottomLeft()}), fill, stroke);
    }

private:
    double m_paperMillimetre;
};

/// Paints on anything Qt paints on. The painter's own units are the drawing units.
class PainterSurface : public Surface {
public:
    PainterSurface(QPainter &painter, double paperMillimetre) : Surface(paperMillimetre), m_painter(painter) {}
    void area(const QPolygonF &outline, const QColor &fill, const Stroke &stroke) override;
    void lines(const QList<QLineF> &lines, const Stroke &stroke) override;
    void words(const SetWords &words) override;
    void picture(const QImage &picture, const QRectF &place) override;

private:
    QPainter &m_painter;
};

/// Writes SVG elements; the document around them is the caller's.
class SvgSurface : public Surface {
public:
    SvgSurface(QXmlStreamWriter &xml, double paperMillimetre) : Surface(paperMillimetre), m_xml(xml) {}
    void area(const QPolygonF &outline, const QColor &fill, const Stroke &stroke) override;
    void lines(const QList<QLineF> &lines, const Stroke &stroke) override;
    void words(const SetWords &words) override;
    void picture(const QImage &picture, const QRectF &place) override;
    void beginGroup(const QString &id, const QString &title, const QString &description) override;
    void endGroup() override;

private:
    void writeStroke(const Stroke &stroke);
    QXmlStreamWriter &m_xml;
};

} // namespace boltwright::ui
