#include "ui/picture/staircase_picture.h"

#include "ui/picture/type.h"
#include "ui/text/words.h"

#include <QCoreApplication>
#include <QSaveFile>
#include <QXmlStreamWriter>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

QString say(const char *text) { return QCoreApplication::translate("Staircase", text); }

/// From the palest for bare cloth to the darkest for rounding: the order is told by grey alone.
QColor colourOf(StairKind kind) {
    switch (kind) {
    case StairKind::BareArea:
        return QColor(0xD8, 0xCF, 0xBE);
    case StairKind::Allowances:
        return QColor(0xC4, 0xB9, 0xA3);
    case StairKind::Width:
        return QColor(0xA9, 0xB8, 0xB4);
    case StairKind::Direction:
        return QColor(0x7F, 0xA0, 0x9E);
    case StairKind::Motif:
        return QColor(0x4F, 0x7F, 0x82);
    case StairKind::Flow:
        return QColor(0x2F, 0x5D, 0x62);
    case StairKind::SelvageGaps:
        return QColor(0x8C, 0x84, 0x78);
    case StairKind::Rounding:
        return QColor(0x5E, 0x5A, 0x66);
    }
    return {};
}

const QColor ink(0x2B, 0x2A, 0x33), quiet(0x5E, 0x5A, 0x66), hairline(0xB9, 0xB0, 0xA2);

bool isShown(const Stair &stair) { return stair.step > Length{}; }

} // namespace

QString shownName(StairKind kind) {
    switch (kind) {
    case StairKind::BareArea:
        return say("The parts as measured, bare");
    case StairKind::Allowances:
        return say("Seams, pulls and tucks");
    case StairKind::Width:
        return say("What the width cannot hold");
    case StairKind::Direction:
        return say("Nap or direction");
    case StairKind::Motif:
        return say("Motifs in the middle");
    case StairKind::Flow:
        return say("Pattern match");
    case StairKind::SelvageGaps:
        return say("Selvages, squared end, gaps");
    case StairKind::Rounding:
        return say("Rounding up to what is sold");
    }
    return {};
}

QString shownStep(const Stair &stair, Unit unit) {
    const QString length = shownAlongRoll(stair.step, unit);
    return stair.upTo ? say("up to %1").arg(length) : length;
}

StairRows paintStaircase(Surface &surface, const QRectF &area, const Staircase &stairs, Unit unit) {
    const auto shown = std::count_if(stairs.stairs.begin(), stairs.stairs.end(), isShown);
    const double mm = surface.paperMillimetre();
    const double row = area.height() / double(shown + 1), size = std::min(row * 0.42, 4.2 * mm);
    double widestName = 0, widestFigure = wordsWidth(shownPurchase(stairs.buy, unit), true);
    for (const Stair &stair : stairs.stairs) {
        if (!isShown(stair)) continue;
        widestName = std::max(widestName, wordsWidth(shownName(stair.kind), false));
        widestFigure = std::max(widestFigure, wordsWidth(shownStep(stair, unit), false));
    }
    const double names = std::min(area.width() * 0.42, widestName * size + 4 * mm),
                 figures = std::min(area.width() * 0.3, widestFigure * size + 4 * mm);
    const double from = area.left() + names, width = area.width() - names - figures;
    const double perTick = width / double(std::max<std::int64_t>(1, stairs.buy.ticks()));
    const auto write = [&](const QString &text, QPointF at, bool bold, const QColor &colour, double room) {
        surface.words({shortened(text, room / size, bold), at, size, bold, colour, false});
    };
    StairRows rows;
    double y = area.top();
    Length before;
    for (const Stair &stair : stairs.stairs) {
        if (!isShown(stair)) {
            rows << QRectF();
            continue;
        }
        const QRectF line(area.left(), y, area.width(), row);
        const double left = from + double(before.ticks()) * perTick,
                     right = from + double(stair.length.ticks()) * perTick;
        const double baseline = y + row / 2 + size * 0.36;
        write(shownName(stair.kind), {area.left(), baseline}, false, ink, names - 2 * mm);
        surface.rectangle(QRectF(left, y + row * 0.16, std::max(right - left, 0.3 * mm), row * 0.68),
                          colourOf(stair.kind), {ink, 0.12 * mm});
        // The next bar begins where this one ends.
        surface.lines({QLineF(right, y + row * 0.84, right, y + row * 1.16)}, {quiet, 0.12 * mm});
        write(shownStep(stair, unit), {area.right() - figures + 2 * mm, baseline}, false, ink, figures - 2 * mm);
        rows << line;
        before = stair.length;
        y += row;
    }
    surface.lines({QLineF(area.left(), y + row * 0.08, area.right(), y + row * 0.08)}, {hairline, 0.2 * mm});
    const double baseline = y + row / 2 + size * 0.36;
    write(stairs.onHand ? say("Rounded up") : say("To buy"), {area.left(), baseline}, true, ink, names - 2 * mm);
    write(shownPurchase(stairs.buy, unit), {area.right() - figures + 2 * mm, baseline}, true, ink, figures - 2 * mm);
    write(say("needed: %1").arg(shownAlongRoll(stairs.needed, unit)), {from, baseline}, false, quiet, width);
    return rows;
}

Result<void> writeStaircaseSvg(const Staircase &stairs, Unit unit, const std::filesystem::path &file) {
    const auto shown = std::count_if(stairs.stairs.begin(), stairs.stairs.end(), isShown);
    const double width = 180, height = 10.0 * double(shown + 1) + 8;
    QByteArray bytes;
    QXmlStreamWriter xml(&bytes);
    xml.setAutoFormatting(true);
    xml.writeStartDocument();
    xml.writeStartElement(u"svg"_s);
    xml.writeDefaultNamespace(u"http://www.w3.org/2000/svg"_s);
    xml.writeAttribute(u"width"_s, QString::number(width) + u"mm"_s);
    xml.writeAttribute(u"height"_s, QString::number(height) + u"mm"_s);
    xml.writeAttribute(u"viewBox"_s, u"0 0 %1 %2"_s.arg(width).arg(height));
    xml.writeAttribute(u"font-family"_s, u"sans-serif"_s);
    xml.writeTextElement(u"title"_s, say("Where the yardage goes"));
    SvgSurface surface(xml, 1);
    surface.rectangle(QRectF(0, 0, width, height), QColor(Qt::white));
    paintStaircase(surface, QRectF(4, 4, width - 8, height - 8), stairs, unit);
    xml.writeEndElement();
    xml.writeEndDocument();
    QSaveFile out(QString::fromStdU16String(file.u16string()));
    if (!out.open(QIODevice::WriteOnly) || out.write(bytes) != bytes.size() || !out.commit())
        return fault(Fault{toCore(out.errorString())}.at(file.string()));
    return {};
}

} // namespace boltwright::ui
