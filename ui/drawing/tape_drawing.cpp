#include "ui/drawing/tape_drawing.h"

#include <QFontMetricsF>
#include <QObject>

#include <array>
#include <cmath>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

/// Spacing of the marks in units of the tape (inches or centimetres).
struct Steps {
    double fine, middle, labelled, whole; ///< whole: a yard, a metre
    double unitMillimetres;
};

template <std::size_t N>
double firstAtLeast(const std::array<double, N> &steps, double least) {
    for (double step : steps)
        if (step >= least) return step;
    return steps.back();
}

/// How far apart labels stand at least: behind a mark go its yards, before the next one half of its number.
double labelRoom(const SlipFonts &fonts, Unit unit) {
    const QString wholes = unit == Unit::Inch ? QObject::tr("%1 yd").arg(88) : QObject::tr("%1 m").arg(88);
    return QFontMetricsF(fonts.smallStrong).horizontalAdvance(wholes) +
           QFontMetricsF(fonts.small).horizontalAdvance(QStringLiteral("888")) / 2 + 10;
}

Steps stepsFor(Unit unit, double pixelsPerMillimetre, double room) {
    const bool inches = unit == Unit::Inch;
    const double mm = inches ? 25.4 : 10;
    const double pixels = mm * pixelsPerMillimetre;
    static constexpr std::array inchFine{0.125, 0.25, 0.5, 1.0, 3.0, 6.0, 12.0, 36.0, 180.0};
    static constexpr std::array inchLabelled{1.0, 2.0, 3.0, 6.0, 12.0, 36.0, 72.0, 180.0, 360.0};
    static constexpr std::array metricFine{0.1, 0.5, 1.0, 5.0, 10.0, 50.0, 100.0, 500.0};
    static constexpr std::array metricLabelled{1.0, 5.0, 10.0, 20.0, 50.0, 100.0, 200.0, 500.0, 1000.0};
    if (inches) {
        const double fine = firstAtLeast(inchFine, 5 / pixels), labelled = firstAtLeast(inchLabelled, room / pixels);
        return {fine, std::max(fine, labelled / 2), labelled, 36, mm};
    }
    const double fine = firstAtLeast(metricFine, 5 / pixels), labelled = firstAtLeast(metricLabelled, room / pixels);
    return {fine, std::max(fine, labelled / 2), labelled, 100, mm};
}

bool isMultiple(double value, double step) { return std::abs(value / step - std::round(value / step)) < 1e-6; }

/// A number that would be chopped at an end of the tape is left away: half of it may read as another.
void drawWhole(QPainter &painter, const QRectF &words, const QString &text, const TapePicture &tape) {
    if (words.left() < tape.rect.left() + 3 || words.right() > tape.rect.right() - 3) return;
    painter.drawText(words.adjusted(-1, 0, 1, 0), Qt::AlignCenter, text);
}

void drawLabel(QPainter &painter, double x, double value, const Steps &steps, const TapePicture &tape,
               const Colours &colours, const SlipFonts &fonts) {
    const QFontMetricsF metrics(fonts.small), strong(fonts.smallStrong);
    const double top = tape.rect.top() + 2;
    const QString number = QString::number(value);
    const bool whole = isMultiple(value, steps.whole);
    const QString wholes =
        tape.unit == Unit::Inch ? QObject::tr("%1 yd").arg(value / 36) : QObject::tr("%1 m").arg(value / 100);
    const QColor wholeInk = QColor(0x9A, 0x3B, 0x2F).darker(colours.dark ? 150 : 100);
    const double wide = metrics.horizontalAdvance(number), wholesWide = strong.horizontalAdvance(wholes);
    const auto room = [&](double left, double width) { return QRectF(left, top, width, metrics.height()); };
    if (steps.labelled >= steps.whole) { // from so far only yards or metres are told
        painter.setFont(fonts.smallStrong);
        painter.setPen(wholeInk);
        drawWhole(painter, room(x - wholesWide / 2, wholesWide), wholes, tape);
        return;
    }
    painter.setFont(fonts.small);
    painter.setPen(colours.tapeInk);
    // The number ends before its mark and the yards begin behind it, so that neither stands on the line.
    drawWhole(painter, room(whole ? x - 4 - wide : x - wide / 2, wide), number, tape);
    if (!whole) return;
    painter.setFont(fonts.smallStrong);
    painter.setPen(wholeInk);
    drawWhole(painter, room(x + 4, wholesWide), wholes, tape);
}

} // namespace

void drawTape(QPainter &painter, const TapePicture &tape, const Colours &colours, const SlipFonts &fonts) {
    const Steps steps = stepsFor(tape.unit, tape.pixelsPerMillimetre, labelRoom(fonts, tape.unit));
    painter.save();
    painter.setPen(QPen(colours.tapeEdge, 1));
    painter.setBrush(colours.tape);
    painter.drawRoundedRect(tape.rect.adjusted(0.5, 0.5, -0.5, -0.5), 3, 3);
    painter.setClipRect(tape.rect, Qt::IntersectClip);
    painter.setRenderHint(QPainter::Antialiasing, false);
    const double pixels = steps.unitMillimetres * tape.pixelsPerMillimetre;
    const auto first = qint64(std::max(0.0, std::floor((tape.rect.left() - 60 - tape.zero) / pixels / steps.fine)));
    const auto last = qint64(std::ceil((tape.rect.right() + 60 - tape.zero) / pixels / steps.fine));
    for (qint64 i = first; i <= last; ++i) {
        const double value = double(i) * steps.fine, x = tape.zero + value * pixels;
        const bool labelled = isMultiple(value, steps.labelled) && i > 0;
        const double height = labelled || i == 0 ? 12 : isMultiple(value, steps.middle) ? 8 : 5;
        painter.setPen(QPen(colours.tapeInk, 1));
        painter.drawLine(QPointF(x, tape.rect.bottom() - 1), QPointF(x, tape.rect.bottom() - height));
        if (labelled) drawLabel(painter, x, value, steps, tape, colours, fonts);
    }
    painter.restore();
}

} // namespace boltwright::ui
