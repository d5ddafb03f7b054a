#include "ui/drawing/panel_drawing.h"

#include "core/geometry/shape_ops.h"
#include "core/rules/rules.h"
#include "ui/drawing/table_frame.h"
#include "ui/text/words.h"

#include <QCache>
#include <QFontInfo>
#include <QFontMetricsF>
#include <QObject>
#include <QPainterPath>
#include <QPixmap>
#include <QPixmapCache>

#include <algorithm>
#include <array>
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

SlipFonts::SlipFonts(const QFont &base) {
    // Asked for many times a picture, and nearly always for the same letters.
    static QFont before;
    static QFont marks, smalls, smallStrongs;
    static QString keys;
    if (keys.isEmpty() || !(base == before)) {
        before = marks = smalls = base;
        const int px = QFontInfo(base).pixelSize();
        marks.setPixelSize(std::max(12, qRound(px * 1.12)));
        marks.setBold(true);
        smalls.setPixelSize(std::max(11, qRound(px * 0.85)));
        smalls.setBold(false);
        smallStrongs = smalls;
        smallStrongs.setBold(true);
        keys = base.key() + u' ' + QString::number(px);
    }
    mark = marks;
    small = smalls;
    smallStrong = smallStrongs;
    key = keys;
}

namespace {

/// The polygon as a rectangle along the axes, which most panels are: those are filled and framed many times as fast as
/// outlines of any shape, and look the same.
std::optional<QRectF> uprightBox(const QPolygonF &polygon) {
    if (polygon.size() != 4) return std::nullopt;
    for (int i = 0; i < 4; ++i) {
        const QPointF side = polygon[(i + 1) % 4] - polygon[i];
        if (side.x() != 0 && side.y() != 0) return std::nullopt;
    }
    return polygon.boundingRect();
}

void fillShape(QPainter &painter, const QPolygonF &outline, const QBrush &brush) {
    if (const auto box = uprightBox(outline)) return painter.fillRect(*box, brush);
    painter.setPen(Qt::NoPen);
    painter.setBrush(brush);
    painter.drawPolygon(outline);
}

/// A line of one colour, none of it transparent, along the outline, with its corners square.
void lineAround(QPainter &painter, const QPolygonF &outline, const QColor &colour, double width) {
    const auto box = uprightBox(outline);
    if (!box) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(colour, width, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
        painter.drawPolygon(outline);
        return;
    }
    const double half = width / 2;
    const QRectF outer = box->adjusted(-half, -half, half, half);
    if (box->width() <= width || box->height() <= width) return painter.fillRect(outer, colour);
    painter.fillRect(QRectF(outer.left(), outer.top(), outer.width(), width), colour);
    painter.fillRect(QRectF(outer.left(), outer.bottom() - width, outer.width(), width), colour);
    painter.fillRect(QRectF(outer.left(), outer.top(), width, outer.height()), colour);
    painter.fillRect(QRectF(outer.right() - width, outer.top(), width, outer.height()), colour);
}

void dashesAround(QPainter &painter, const QPolygonF &outline, const QColor &colour) {
    QPen pen(colour, 1, Qt::CustomDashLine);
    pen.setDashPattern({5, 4});
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    if (!uprightBox(outline)) {
        painter.drawPolygon(outline);
        return;
    }
    std::array<QLineF, 4> sides;
    for (int i = 0; i < 4; ++i) sides[std::size_t(i)] = QLineF(outline[i], outline[(i + 1) % 4]);
    painter.drawLines(sides.data(), 4);
}

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
    if (const auto box = uprightBox(polygon)) return box->contains(room);
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

/// What a slip may say, from everything down to the mark alone, and how large each of that is.
struct SlipChoices {
    std::array<QList<SlipLine>, 6> lines;
    std::array<QSizeF, 6> sizes;
};

/// Measured once: the widths of words cost more than all else that is drawn of a panel.
const SlipChoices &choicesFor(const PanelPicture &panel, const SlipFonts &fonts) {
    static QCache<QString, SlipChoices> cache(4000);
    const QString key = fonts.key + u'\n' + panel.mark + u'\n' + panel.name + u'\n' + panel.size;
    if (const SlipChoices *there = cache.object(key)) return *there;
    const QString dot = u" · "_s;
    const QString name = panel.name.isEmpty() ? panel.mark : panel.name;
    auto *made = new SlipChoices;
    made->lines = {{{{panel.mark, true}, {name}, {panel.size}},
                    {{panel.mark + dot + name + dot + panel.size}},
                    {{panel.mark, true}, {panel.size}},
                    {{panel.mark + dot + panel.size}},
                    {{panel.mark, true}},
                    {{panel.mark}}}};
    for (std::size_t i = 0; i < made->lines.size(); ++i) made->sizes[i] = sizeOf(made->lines[i], fonts);
    cache.insert(key, made);
    return *made;
}

/// The first of what it may say that stays inside the panel, with the wedge beside it; none, where nothing does.
std::optional<Slip> slipFor(const PanelPicture &panel, const QPolygonF &polygon, QPointF middle, const QLineF &top,
                            const SlipFonts &fonts) {
    const SlipChoices &choices = choicesFor(panel, fonts);
    for (std::size_t i = 0; i < choices.lines.size(); ++i) {
        const QList<SlipLine> &lines = choices.lines[i];
        const QSizeF size = choices.sizes[i];
        const auto stands = [&](const QSizeF &s) {
            return fits(s, middle, polygon) && wedgePlace(top, panel.outward, slipRectOf(s, middle)).has_value();
        };
        if (stands(size)) return Slip{lines, false, size};
        if (lines.size() == 1 && stands(size.transposed())) return Slip{lines, true, size.transposed()};
    }
    return std::nullopt;
}

/// The slip of paper itself, its upper left corner at the origin.
void paintSlip(QPainter &painter, const Slip &slip, const Colours &colours, const SlipFonts &fonts) {
    const QSizeF size = slip.upright ? slip.size.transposed() : slip.size;
    const QRectF rect(-size.width() / 2, -size.height() / 2, size.width(), size.height());
    painter.translate(slip.size.width() / 2, slip.size.height() / 2);
    if (slip.upright) painter.rotate(-90);
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
}

/// Slips keep their size whatever the zoom, so each is painted once and then laid on whole pixels of the screen.
QPixmap slipPicture(const Slip &slip, const Colours &colours, const SlipFonts &fonts, double ratio) {
    QString key = u"slip "_s + fonts.key + u' ' + QString::number(int(ratio * 64)) + (slip.upright ? u'u' : u'l') +
                  (colours.dark ? u'd' : u'b');
    for (const SlipLine &line : slip.lines) key += (line.strong ? u'\n' : u'\t') + line.text;
    QPixmap made;
    if (QPixmapCache::find(key, &made)) return made;
    made = QPixmap((slip.size * ratio).toSize() + QSize(2, 2)); // halves are rounded away from nothing
    made.setDevicePixelRatio(ratio);
    made.fill(Qt::transparent);
    QPainter painter(&made);
    painter.setRenderHint(QPainter::Antialiasing);
    paintSlip(painter, slip, colours, fonts);
    painter.end();
    QPixmapCache::insert(key, made);
    return made;
}

void drawSlip(QPainter &painter, const Slip &slip, QPointF middle, const Colours &colours, const SlipFonts &fonts) {
    const double ratio = painter.device()->devicePixelRatioF();
    const QPointF corner = slipRectOf(slip.size, middle).topLeft() * ratio;
    painter.drawPixmap(QPointF(std::round(corner.x()), std::round(corner.y())) / ratio,
                       slipPicture(slip, colours, fonts, ratio));
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
    fillShape(painter, outline, veil);
    if (panel.state == CutState::Cut) {
        QColor hatch = colours.chalkCasing;
        hatch.setAlpha(70);
        fillShape(painter, outline, QBrush(hatch, Qt::BDiagPattern));
    }
    if (look.selected) {
        QColor tint = colours.accent;
        tint.setAlpha(38);
        fillShape(painter, outline, tint);
    }
}

void drawOutline(QPainter &painter, const QPolygonF &outline, const PanelLook &look, const Colours &colours) {
    if (look.selected) lineAround(painter, outline, colours.accent, 8);
    const QColor casing =
        look.broken ? (colours.dark ? QColor(0x9A, 0x3B, 0x2F) : colours.broken) : colours.chalkCasing;
    if (look.broken) {
        const QPainterPath path = torn(outline);
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(casing, 4.2, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
        painter.drawPath(path);
        painter.setPen(QPen(colours.chalk, 1.4));
        painter.drawPath(path);
        return;
    }
    lineAround(painter, outline, casing, 4);
    lineAround(painter, outline, colours.chalk, 1.8);
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
        dashesAround(painter, toScreen.map(panel.measured), dash);
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
