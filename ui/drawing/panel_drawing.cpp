#include "ui/drawing/panel_drawing.h"

#include "core/geometry/shape_ops.h"
#include "core/rules/rules.h"
#include "ui/drawing/table_frame.h"
#include "ui/text/words.h"

#include <QFontInfo>
#include <QFontMetricsF>
#include <QObject>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

/// The upper edge of the outline in the panel's frame: the edge whose middle lies highest.
std::pair<PanelPoint, PanelPoint> topEdgeOf(const PanelRing &ring) {
    std::size_t best = 0;
    Length height;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Length sum = ring[i].y + ring[(i + 1) % ring.size()].y;
        if (i == 0 || sum > height) {
            best = i;
            height = sum;
        }
    }
    return {ring[best], ring[(best + 1) % ring.size()]};
}

QPolygonF measuredWithin(const Panel &panel, const Cut &cut, const Laying &laying, const QPolygonF &outline) {
    ClothRing ring;
    for (const PanelPoint &p : measuredOutline(panel.shape)) ring.push_back(laying.at(p));
    const QPolygonF whole = onTable(ring);
    return cut.of > 1 ? whole.intersected(outline) : whole;
}

} // namespace

PanelPicture pictureOf(const Job &job, const Layout &layout, const Cut &cut) {
    PanelPicture picture;
    const Panel *panel = job.panel(cut.panel);
    if (!panel) return picture;
    const PanelRing outline = outlineOf(*panel, cut, layout);
    const Laying laying(outline, cut.turn, cut.mirrored, {cut.x, cut.y});
    ClothRing laidRing;
    for (const PanelPoint &p : outline) laidRing.push_back(laying.at(p));
    picture.cut = onTable(laidRing);
    picture.measured = measuredWithin(*panel, cut, laying, picture.cut);
    const auto [from, to] = topEdgeOf(outline);
    picture.top = QLineF(onTable(laying.at(from)), onTable(laying.at(to)));
    const QPointF up = onTable(laying.direction({Length{}, Length::ticks(32000)}));
    picture.outward = up / std::hypot(up.x(), up.y());
    picture.mark = fromCore(panel->mark);
    picture.name = fromCore(panel->name);
    if (cut.of > 1) picture.name += QObject::tr(" %1/%2").arg(cut.piece).arg(cut.of);
    const PanelBox box = boxOf(outline);
    picture.size = shownSize(box.width(), box.height(), job.unit);
    picture.state = cut.state;
    picture.mirrored = cut.mirrored;
    return picture;
}

SlipFonts::SlipFonts(const QFont &base) : mark(base), small(base), smallStrong(base) {
    const int px = QFontInfo(base).pixelSize();
    mark.setPixelSize(std::max(12, qRound(px * 1.12)));
    mark.setBold(true);
    small.setPixelSize(std::max(11, qRound(px * 0.85)));
    small.setBold(false);
    smallStrong = small;
    smallStrong.setBold(true);
}

namespace {

/// A saw-toothed line around the polygon, as torn cloth.
QPainterPath torn(const QPolygonF &polygon) {
    constexpr double step = 7, depth = 2.6;
    QPainterPath path;
    for (int i = 0; i < polygon.size(); ++i) {
        const QLineF side(polygon[i], polygon[(i + 1) % polygon.size()]);
        const int teeth = std::max(1, int(side.length() / step));
        const QPointF along = (side.p2() - side.p1()) / teeth;
        const double length = std::max(1e-6, side.length());
        const QPointF out = QPointF(-side.dy(), side.dx()) / length * depth;
        if (i == 0) path.moveTo(side.p1());
        for (int t = 0; t < teeth; ++t) {
            path.lineTo(side.p1() + along * (t + 0.5) + (t % 2 ? out : -out));
            path.lineTo(side.p1() + along * (t + 1));
        }
    }
    path.closeSubpath();
    return path;
}

struct SlipLine {
    QString text;
    bool strong = false; ///< in the mark's font
};

struct Slip {
    QList<SlipLine> lines;
    bool upright = false; ///< written from bottom to top
    QSizeF size;          ///< as it lies on screen
};

constexpr double slipPadX = 7, slipPadY = 4;
constexpr double linePadY = 1.5; // of a slip with a single line, which has to do with less

double padYOf(const QList<SlipLine> &lines) { return lines.size() == 1 && !lines.first().strong ? linePadY : slipPadY; }

QSizeF sizeOf(const QList<SlipLine> &lines, const SlipFonts &fonts) {
    double width = 0, height = 0;
    for (const SlipLine &line : lines) {
        const QFontMetricsF metrics(line.strong ? fonts.mark : fonts.small);
        width = std::max(width, metrics.horizontalAdvance(line.text));
        height += metrics.height();
    }
    return {width + 2 * slipPadX, height + 2 * padYOf(lines)};
}

bool fits(const QSizeF &size, QPointF middle, const QPolygonF &polygon) {
    const QRectF rect(middle - QPointF(size.width(), size.height()) / 2, size);
    const QRectF room = rect.adjusted(-3, -3, 3, 3);
    for (double x : {0.0, 0.25, 0.5, 0.75, 1.0})
        for (double y : {0.0, 0.5, 1.0}) {
            const QPointF p(room.left() + x * room.width(), room.top() + y * room.height());
            if (!polygon.containsPoint(p, Qt::OddEvenFill)) return false;
        }
    return true;
}

QRectF slipRectOf(const QSizeF &size, QPointF middle) {
    return QRectF(middle - QPointF(size.width(), size.height()) / 2, size);
}

/// Where the wedge lies: at the panel's top edge, inside, beside the slip rather than under it. None: no room.
std::optional<QPolygonF> wedgePlace(const QLineF &top, QPointF outward, const QRectF &slip) {
    constexpr double width = 13, height = 10, inset = 3;
    if (top.length() < width + 6) return QPolygonF();
    const QPointF along = (top.p2() - top.p1()) / top.length();
    for (double t : {0.5, 0.25, 0.75, 0.1, 0.9}) {
        const QPointF tip = top.p1() + (top.p2() - top.p1()) * t - outward * inset;
        const QPolygonF wedge{tip, tip - outward * height + along * width / 2,
                              tip - outward * height - along * width / 2};
        if (slip.isNull() || !wedge.boundingRect().adjusted(-1, -1, 1, 1).intersects(slip)) return wedge;
    }
    return std::nullopt;
}

/// What the slip says, from everything down to the mark alone; nothing when even that would not stay inside.
std::optional<Slip> slipFor(const PanelPicture &panel, const QPolygonF &polygon, QPointF middle, const QLineF &top,
                            const SlipFonts &fonts) {
    const QString dot = u" · "_s;
    const QString name = panel.name.isEmpty() ? panel.mark : panel.name;
    const QList<QList<SlipLine>> choices = {
        {{panel.mark, true}, {name}, {panel.size}},
        {{panel.mark + dot + name + dot + panel.size}},
        {{panel.mark, true}, {panel.size}},
        {{panel.mark + dot + panel.size}},
        {{panel.mark, true}},
        {{panel.mark}},
    };
    for (const auto &lines : choices) {
        const QSizeF size = sizeOf(lines, fonts);
        const auto stands = [&](const QSizeF &s) {
            return fits(s, middle, polygon) && wedgePlace(top, panel.outward, slipRectOf(s, middle)).has_value();
        };
        if (stands(size)) return Slip{lines, false, size};
        if (lines.size() == 1 && stands(size.transposed())) return Slip{lines, true, size.transposed()};
    }
    return std::nullopt;
}

void drawSlip(QPainter &painter, const Slip &slip, QPointF middle, const Colours &colours, const SlipFonts &fonts) {
    painter.save();
    painter.translate(middle);
    if (slip.upright) painter.rotate(-90);
    const QSizeF size = slip.upright ? slip.size.transposed() : slip.size;
    const QRectF rect(-size.width() / 2, -size.height() / 2, size.width(), size.height());
    QColor paper = colours.paper;
    paper.setAlpha(235);
    painter.setPen(Qt::NoPen);
    painter.setBrush(paper);
    painter.drawRoundedRect(rect, 6, 6);
    double y = rect.top() + padYOf(slip.lines);
    for (int i = 0; i < slip.lines.size(); ++i) {
        const SlipLine &line = slip.lines[i];
        const QFont &font = line.strong ? fonts.mark : fonts.small;
        const QFontMetricsF metrics(font);
        painter.setFont(font);
        const bool last = slip.lines.size() == 3 && i == 2;
        painter.setPen(last ? colours.quiet : colours.ink);
        painter.drawText(QRectF(rect.left(), y, rect.width(), metrics.height()), Qt::AlignCenter, line.text);
        y += metrics.height();
    }
    painter.restore();
}

void drawWedge(QPainter &painter, const QLineF &top, QPointF outward, const QRectF &slip, const Colours &colours) {
    const auto wedge = wedgePlace(top, outward, slip);
    if (!wedge || wedge->isEmpty()) return;
    painter.setPen(QPen(colours.chalk, 1));
    painter.setBrush(colours.chalkCasing);
    painter.drawPolygon(*wedge);
}

/// The corner nearest to the upper left of the screen, a little inside.
QPointF upperLeftCorner(const QPolygonF &polygon, QPointF middle) {
    QPointF best = polygon.first();
    for (const QPointF &p : polygon)
        if (p.x() + p.y() < best.x() + best.y()) best = p;
    const QPointF inwards(middle.x() > best.x() ? 1 : -1, middle.y() > best.y() ? 1 : -1);
    return best + inwards * 13;
}

void drawPadlock(QPainter &painter, QPointF at, const Colours &colours) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(colours.paper);
    painter.drawEllipse(at, 9.5, 9.5);
    painter.setPen(QPen(colours.ink, 1.6));
    painter.setBrush(Qt::NoBrush);
    painter.drawArc(QRectF(at.x() - 3, at.y() - 6.5, 6, 8), 0, 180 * 16);
    painter.setBrush(colours.ink);
    painter.setPen(Qt::NoPen);
    painter.drawRoundedRect(QRectF(at.x() - 4.5, at.y() - 2, 9, 6.5), 1.5, 1.5);
}

/// Two wedges back to back across a dashed line: a mirror image.
void drawMirrorSign(QPainter &painter, QPointF at, const Colours &colours) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(colours.paper);
    painter.drawEllipse(at, 9.5, 9.5);
    painter.setBrush(colours.ink);
    painter.drawPolygon(QPolygonF{at + QPointF(-1.5, -4), at + QPointF(-1.5, 4), at + QPointF(-6.5, 4)});
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(colours.ink, 1));
    painter.drawPolygon(QPolygonF{at + QPointF(1.5, -4), at + QPointF(1.5, 4), at + QPointF(6.5, 4)});
}

void drawGround(QPainter &painter, const QPolygonF &outline, const PanelPicture &panel, const PanelLook &look,
                const Colours &colours) {
    QColor veil = colours.chalk;
    veil.setAlpha(panel.state == CutState::Cut ? 205 : look.held ? 40 : 78);
    painter.setPen(Qt::NoPen);
    painter.setBrush(veil);
    painter.drawPolygon(outline);
    if (panel.state == CutState::Cut) {
        QColor hatch = colours.chalkCasing;
        hatch.setAlpha(70);
        painter.setBrush(QBrush(hatch, Qt::BDiagPattern));
        painter.drawPolygon(outline);
    }
    if (look.selected) {
        QColor tint = colours.accent;
        tint.setAlpha(38);
        painter.setBrush(tint);
        painter.drawPolygon(outline);
    }
}

void drawOutline(QPainter &painter, const QPolygonF &outline, const PanelLook &look, const Colours &colours) {
    painter.setBrush(Qt::NoBrush);
    if (look.selected) {
        QColor halo = colours.accent;
        painter.setPen(QPen(halo, 8, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
        painter.drawPolygon(outline);
    }
    const QColor casing =
        look.broken ? (colours.dark ? QColor(0x9A, 0x3B, 0x2F) : colours.broken) : colours.chalkCasing;
    if (look.broken) {
        const QPainterPath path = torn(outline);
        painter.setPen(QPen(casing, 4.2, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
        painter.drawPath(path);
        painter.setPen(QPen(colours.chalk, 1.4));
        painter.drawPath(path);
        return;
    }
    painter.setPen(QPen(casing, 4, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    painter.drawPolygon(outline);
    painter.setPen(QPen(colours.chalk, 1.8, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
    painter.drawPolygon(outline);
}

} // namespace

void drawPanel(QPainter &painter, const PanelPicture &panel, const QTransform &toScreen, const PanelLook &look,
               const Colours &colours, const SlipFonts &fonts) {
    if (panel.cut.size() < 3) return;
    const QPolygonF outline = toScreen.map(panel.cut);
    const QPointF middle = outline.boundingRect().center();
    drawGround(painter, outline, panel, look, colours);
    drawOutline(painter, outline, look, colours);
    if (!panel.measured.isEmpty()) {
        QColor dash = colours.chalkCasing;
        dash.setAlpha(190);
        painter.setPen(QPen(dash, 1, Qt::CustomDashLine));
        QPen pen = painter.pen();
        pen.setDashPattern({5, 4});
        painter.setPen(pen);
        painter.setBrush(Qt::NoBrush);
        painter.drawPolygon(toScreen.map(panel.measured));
    }
    QRectF slipRect;
    if (look.slip) {
        if (const auto slip = slipFor(panel, outline, middle, toScreen.map(panel.top), fonts)) {
            slipRect = slipRectOf(slip->size, middle);
            drawSlip(painter, *slip, middle, colours, fonts);
        }
    }
    const QRectF box = outline.boundingRect();
    if (std::min(box.width(), box.height()) > 14)
        drawWedge(painter, toScreen.map(panel.top), panel.outward, slipRect, colours);
    if (std::min(box.width(), box.height()) > 24) {
        QPointF corner = upperLeftCorner(outline, middle);
        if (panel.state == CutState::Locked) {
            drawPadlock(painter, corner, colours);
            corner += QPointF(21, 0);
        }
        if (panel.mirrored && box.width() > 60) drawMirrorSign(painter, corner, colours);
    }
}

QRectF drawTag(QPainter &painter, const QString &text, QPointF at, const QRectF &within, const QColor &ground,
               const QColor &ink, const QFont &font) {
    const QFontMetricsF metrics(font);
    const double width = std::min(within.width() - 8, metrics.horizontalAdvance(text) + 22);
    QRectF rect(at.x(), at.y(), width, metrics.height() + 10);
    rect.moveLeft(
        std::clamp(rect.left(), within.left() + 4, std::max(within.left() + 4, within.right() - rect.width() - 4)));
    rect.moveTop(
        std::clamp(rect.top(), within.top() + 4, std::max(within.top() + 4, within.bottom() - rect.height() - 4)));
    painter.setPen(Qt::NoPen);
    painter.setBrush(ground);
    painter.drawRoundedRect(rect, 7, 7);
    painter.setPen(ink);
    painter.setFont(font);
    painter.drawText(rect.adjusted(11, 0, -11, 0), Qt::AlignVCenter | Qt::AlignLeft,
                     metrics.elidedText(text, Qt::ElideRight, rect.width() - 20));
    return rect;
}

} // namespace boltwright::ui
