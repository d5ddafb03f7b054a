#pragma once

#include "ui/picture/surface.h"

#include <QRectF>

#include <variant>

namespace boltwright::ui {

/// The marks of one page of text and rules, put down before anything is painted so that their room is known. Units:
/// hundredths of a millimetre; sizes and widths in millimetres where said.
class PageInk {
public:
    /// Words from `start` (baseline), shortened to `width` where they are wider. Size in millimetres.
    void words(const QString &text, QPointF start, double width, double size, bool bold, const QColor &colour);
    /// The same, but first in smaller type, down to `least` millimetres.
    void fittedWords(const QString &text, QPointF start, double width, double size, double least, bool bold,
                     const QColor &colour);
    /// Words that end at `end`.
    void wordsEndingAt(const QString &text, QPointF end, double width, double size, bool bold, const QColor &colour);
    /// A paragraph from its upper left corner; returns the height it took. At most `most` lines, the last shortened.
    double paragraph(const QString &text, QPointF corner, double width, double size, bool bold, const QColor &colour,
                     int most = 99);
    static double paragraphHeight(const QString &text, double width, double size, bool bold, int most = 99);

    void line(QPointF from, QPointF to, const Stroke &stroke);
    void box(const QRectF &rect, const QColor &fill, const Stroke &stroke);
    void shape(const QPolygonF &outline, const QColor &fill, const Stroke &stroke = {});
    void paint(Surface &surface) const;

private:
    struct Line {
        QLineF line;
        Stroke stroke;
    };
    struct Shape {
        QPolygonF outline;
        QColor fill;
        Stroke stroke;
    };
    QList<std::variant<SetWords, Line, Shape>> m_marks;
};

/// The distance from one line of words to the next, millimetres, for type of a size in millimetres.
double lineHeight(double size, bool bold);

} // namespace boltwright::ui
