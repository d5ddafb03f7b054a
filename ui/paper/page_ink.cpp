#include "ui/paper/page_ink.h"

#include "ui/paper/pages.h"
#include "ui/picture/type.h"

#include <algorithm>

namespace boltwright::ui {
namespace {

constexpr double unit = unitsPerMillimetre;

QStringList linesOf(const QString &text, double width, double size, bool bold, int most) {
    QStringList lines = brokenIntoLines(text, width / (size * unit), bold);
    if (lines.size() <= most) return lines;
    const QString rest = lines.mid(most - 1).join(u' ');
    lines = lines.mid(0, most - 1);
    lines << shortened(rest, width / (size * unit), bold);
    return lines;
}

} // namespace

double lineHeight(double size, bool bold) { return (typeAscent(bold) + typeDescent(bold)) * size + 0.15; }

void PageInk::words(const QString &text, QPointF start, double width, double size, bool bold, const QColor &colour) {
    m_marks << SetWords{shortened(text, width / (size * unit), bold), start, size * unit, bold, colour};
}

void PageInk::fittedWords(const QString &text, QPointF start, double width, double size, double least, bool bold,
                          const QColor &colour) {
    const double fits = width / unit / std::max(0.01, wordsWidth(text, bold)) * 0.999;
    words(text, start, width, std::clamp(fits, std::min(least, size), size), bold, colour);
}

void PageInk::wordsEndingAt(const QString &text, QPointF end, double width, double size, bool bold,
                            const QColor &colour) {
    const QString shown = shortened(text, width / (size * unit), bold);
    m_marks << SetWords{shown, end - QPointF(wordsWidth(shown, bold) * size * unit, 0), size * unit, bold, colour};
}

double PageInk::paragraph(const QString &text, QPointF corner, double width, double size, bool bold,
                          const QColor &colour, int most) {
    if (text.isEmpty()) return 0;
    double y = corner.y();
    for (const QString &line : linesOf(text, width, size, bold, most)) {
        m_marks << SetWords{line, {corner.x(), y + typeAscent(bold) * size * unit}, size * unit, bold, colour};
        y += lineHeight(size, bold) * unit;
    }
    return y - corner.y();
}

double PageInk::paragraphHeight(const QString &text, double width, double size, bool bold, int most) {
    return text.isEmpty() ? 0 : double(linesOf(text, width, size, bold, most).size()) * lineHeight(size, bold) * unit;
}

void PageInk::line(QPointF from, QPointF to, const Stroke &stroke) { m_marks << Line{{from, to}, stroke}; }

void PageInk::box(const QRectF &r, const QColor &fill, const Stroke &stroke) {
    m_marks << Shape{QPolygonF({r.topLeft(), r.topRight(), r.bottomRight(), r.bottomLeft()}), fill, stroke};
}

void PageInk::shape(const QPolygonF &outline, const QColor &fill, const Stroke &stroke) {
    m_marks << Shape{outline, fill, stroke};
}

void PageInk::paint(Surface &surface) const {
    for (const auto &mark : m_marks) {
        if (const auto *words = std::get_if<SetWords>(&mark))
            surface.words(*words);
        else if (const auto *line = std::get_if<Line>(&mark))
            surface.lines({line->line}, line->stroke);
        else if (const auto *shape = std::get_if<Shape>(&mark))
            surface.area(shape->outline, shape->fill, shape->stroke);
    }
}

} // namespace boltwright::ui
