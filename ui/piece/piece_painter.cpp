#include "ui/piece/piece_painter.h"

#include "ui/drawing/cloth_drawing.h"
#include "ui/drawing/table_frame.h"
#include "ui/text/words.h"

#include <QImage>
#include <QPaintEngine>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace boltwright::ui {

QPolygonF PieceView::at(const PieceRing &ring) const {
    QPolygonF out;
    for (const PiecePoint &p : ring) out << at(p);
    return out;
}

PieceView viewInto(const QRectF &room, const PieceBox &piece) {
    PieceView view;
    const double width = piece.width().toMillimetres(), height = piece.height().toMillimetres();
    if (width <= 0 || height <= 0) return view;
    view.scale = std::min(room.width() / width, room.height() / height);
    view.zero = QPointF(room.center().x() - view.scale * width / 2, room.top()) -
                view.scale * QPointF(piece.low.x.toMillimetres(), -piece.high.y.toMillimetres());
    return view;
}

namespace {

class PiecePainter {
public:
    PiecePainter(QPainter &painter, const Job &job, const CoveredPiece &piece, const PieceView &view,
                 const PieceLook &look)
        : m_painter(painter), m_job(job), m_piece(piece), m_view(view), m_look(look) {}

    void paint() {
        m_painter.setRenderHints(QPainter::Antialiasing | QPainter::SmoothPixmapTransform);
        for (const CoveredPanel &panel : m_piece.panels) {
            drawFrame(panel);
            for (const CoveredPart &part : panel.parts) drawCloth(part);
        }
        for (const CoveredPanel &panel : m_piece.panels) drawOutline(panel, false);
        for (const CoveredPanel &panel : m_piece.panels) drawOutline(panel, true);
        for (const CoveredJoin &join : m_piece.joins) drawMiss(join);
        if (m_look.marks)
            for (const CoveredPanel &panel : m_piece.panels) drawMark(panel);
    }

private:
    bool isSelected(const CoveredPanel &panel) const { return m_look.selected == panel.copy; }

    /// What is seen where there is no cloth: the panel is put aside, or its cut reaches beyond the cloth.
    void drawFrame(const CoveredPanel &panel) {
        QColor hatch = m_look.colours.quiet;
        hatch.setAlpha(90);
        m_painter.setPen(Qt::NoPen);
        m_painter.setBrush(m_look.colours.paper);
        m_painter.drawPolygon(m_view.at(panel.outline));
        // Few programs that show SVG know its hatches, and under cloth it is not seen.
        if (m_painter.paintEngine()->type() == QPaintEngine::SVG && !panel.parts.empty()) return;
        m_painter.setBrush(QBrush(hatch, Qt::BDiagPattern));
        m_painter.drawPolygon(m_view.at(panel.outline));
    }

    /// From the sheet's table frame, scaled as the view is, to the picture: a turn and a move.
    QTransform fromTable(const CoveredPart &part) const {
        static const double half = std::sqrt(0.5);
        const int eighth = degrees(part.turn) / 45;
        const double sines[] = {0, half, 1, half, 0, -half, -1, -half};
        const double s = sines[eighth], c = sines[(eighth + 2) % 8];
        QTransform turn(s, -c, c, s, 0, 0);
        const PiecePoint anchor = part.outline.front();
        const QPointF move = m_view.at(anchor) - turn.map(m_view.scale * onTable(part.clothAt(anchor)));
        return turn * QTransform::fromTranslate(move.x(), move.y());
    }

    void drawCloth(const CoveredPart &part) {
        const auto index = std::find_if(m_job.cloths.begin(), m_job.cloths.end(),
                                        [&](const Cloth &c) { return c.id == part.sheet.cloth; });
        if (index == m_job.cloths.end()) return;
        const Cloth &cloth = *index;
        const int number = int(index - m_job.cloths.begin());
        SheetPicture sheet;
        if (cloth.bolt) {
            Length last;
            for (const PiecePoint &p : part.outline) last = std::max(last, part.clothAt(p).y);
            sheet = pictureOfBolt(cloth, number, last + Length::ticks(320 * 1000));
            sheet.endless = false; // the roll itself is not part of the piece
        } else if (const Remnant *remnant = part.sheet.on ? cloth.remnant(*part.sheet.on) : nullptr) {
            sheet = pictureOfRemnant(cloth, number, *remnant);
        } else {
            return;
        }
        QPainterPath shape;
        shape.addPolygon(m_view.at(part.outline));
        shape.closeSubpath();
        const auto engine = m_painter.paintEngine()->type();
        // A page would hold a picture once for every repeat, and SVG does not clip: there, one picture a panel.
        if (engine == QPaintEngine::SVG || (engine != QPaintEngine::Raster && (sheet.swatch || sheet.photo)))
            drawClothAsPicture(part, sheet, shape);
        else
            drawClothOn(m_painter, part, sheet, shape);
    }

    void drawClothOn(QPainter &painter, const CoveredPart &part, const SheetPicture &sheet, const QPainterPath &shape) {
        const QTransform toPicture = fromTable(part);
        painter.save();
        painter.setClipPath(shape, Qt::IntersectClip);
        painter.setTransform(toPicture, true);
        const QRectF seen = toPicture.inverted().mapRect(shape.boundingRect()).adjusted(-1, -1, 1, 1);
        // By day, whatever the window's colours are: this is how the client will see it.
        drawSheet(painter, sheet, QTransform::fromScale(m_view.scale, m_view.scale), seen, false, m_day);
        painter.restore();
    }

    void drawClothAsPicture(const CoveredPart &part, const SheetPicture &sheet, const QPainterPath &shape) {
        const QRect box = shape.boundingRect().toAlignedRect();
        QImage image(box.size(), QImage::Format_ARGB32_Premultiplied);
        image.fill(Qt::transparent);
        QPainter painter(&image);
        painter.setRenderHints(QPainter::Antialiasing | QPainter::SmoothPixmapTransform);
        painter.translate(-box.topLeft());
        drawClothOn(painter, part, sheet, shape);
        painter.end();
        m_painter.drawImage(box.topLeft(), image);
    }

    void drawOutline(const CoveredPanel &panel, bool selected) {
        if (isSelected(panel) != selected) return;
        m_painter.setBrush(Qt::NoBrush);
        for (const CoveredPart &part : panel.parts) {
            m_painter.setPen(QPen(m_day.ink, 1));
            m_painter.drawPolygon(m_view.at(part.outline));
        }
        if (panel.parts.empty()) {
            m_painter.setPen(QPen(m_look.colours.quiet, 1, Qt::DashLine));
            m_painter.drawPolygon(m_view.at(panel.outline));
        }
        if (!selected) return;
        const QPolygonF outline = m_view.at(panel.outline);
        m_painter.setPen(QPen(m_look.colours.paper, 5, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
        m_painter.drawPolygon(outline);
        m_painter.setPen(QPen(m_look.colours.accent, 2.5, Qt::SolidLine, Qt::SquareCap, Qt::MiterJoin));
        m_painter.drawPolygon(outline);
    }

    void drawMiss(const CoveredJoin &join) {
        if (!join.miss) return;
        drawTorn(join.atA);
        if (!join.touching) drawTorn(join.atB);
    }

    /// A line torn along a join: up and down in small even steps, with paper around it to be seen on any cloth.
    void drawTorn(const CoveredJoin::Line &line) {
        QLineF along(m_view.at(line.from), m_view.at(line.to));
        if (along.length() < 1) { // a point: the tear is a short one across it
            along = QLineF(along.p1() - QPointF(6, 0), along.p1() + QPointF(6, 0));
        }
        constexpr double step = 4, height = 2.2;
        const int steps = std::max(2, int(along.length() / step));
        const QPointF across = QPointF(-along.dy(), along.dx()) / along.length() * height;
        QPolygonF torn;
        for (int i = 0; i <= steps; ++i) torn << along.pointAt(double(i) / steps) + (i % 2 ? across : -across);
        m_painter.setBrush(Qt::NoBrush);
        m_painter.setPen(QPen(m_day.paper, 4.5, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        m_painter.drawPolyline(torn);
        m_painter.setPen(QPen(m_day.broken, 1.8, Qt::SolidLine, Qt::RoundCap, Qt::RoundJoin));
        m_painter.drawPolyline(torn);
    }

    /// The mark on a slip of paper in the upper left corner; left away where it would cover most of the panel.
    void drawMark(const CoveredPanel &panel) {
        const Panel *measured = m_job.panel(panel.copy.panel);
        if (!measured || measured->mark.empty()) return;
        const QString mark = fromCore(measured->mark);
        const QFontMetricsF metrics(m_look.font);
        const QRectF box = m_view.at(boxOf(panel.outline));
        QRectF slip(0, 0, metrics.horizontalAdvance(mark) + 6, metrics.capHeight() + 6);
        if (slip.width() + 6 > box.width() || slip.height() + 6 > box.height()) return;
        slip.moveTopLeft(cornerFor(panel, box, slip.size()));
        QColor paper = m_day.paper;
        paper.setAlpha(225);
        m_painter.setPen(Qt::NoPen);
        m_painter.setBrush(paper);
        m_painter.drawRoundedRect(slip, 3, 3);
        m_painter.setFont(m_look.font);
        m_painter.setPen(m_day.ink);
        m_painter.drawText(QPointF(slip.left() + 3, slip.bottom() - 3), mark);
    }

    /// The upper left corner of the panel; under a slanted edge as far right as it takes, and else its middle.
    QPointF cornerFor(const CoveredPanel &panel, const QRectF &box, QSizeF size) const {
        const QPolygonF outline = m_view.at(panel.outline);
        constexpr int tries = 12;
        for (int i = 0; i < tries; ++i) {
            const QRectF slip(box.topLeft() + QPointF(4 + (box.width() - size.width() - 8) * i / tries, 4), size);
            const auto holds = [&](QPointF p) { return outline.containsPoint(p, Qt::OddEvenFill); };
            if (holds(slip.topLeft()) && holds(slip.topRight()) && holds(slip.bottomLeft()) &&
                holds(slip.bottomRight()))
                return slip.topLeft();
        }
        return box.center() - QPointF(size.width(), size.height()) / 2;
    }

    QPainter &m_painter;
    const Job &m_job;
    const CoveredPiece &m_piece;
    const PieceView &m_view;
    const PieceLook &m_look;
    const Colours m_day = lightColours(); ///< what lies on cloth must stand out from cloth seen by day
};

} // namespace

void paintCoveredPiece(QPainter &painter, const Job &job, const CoveredPiece &piece, const PieceView &view,
                       const PieceLook &look) {
    painter.save();
    PiecePainter(painter, job, piece, view, look).paint();
    painter.restore();
}

} // namespace boltwright::ui
