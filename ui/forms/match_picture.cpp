#include "ui/forms/match_picture.h"

#include "core/geometry/polygon.h"
#include "core/rules/phase.h"
#include "ui/drawing/colours.h"
#include "ui/forms/outline_drawing.h"
#include "ui/text/words.h"

#include <QMouseEvent>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace boltwright::ui {

MatchPicture::MatchPicture(QWidget *parent) : QWidget(parent) {
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    setMinimumSize(fontMetrics().height() * 14, fontMetrics().height() * 10);
    setToolTip(tr("The two panels as you face them. A click on an edge chooses it."));
}

QSize MatchPicture::sizeHint() const { return {fontMetrics().height() * 26, fontMetrics().height() * 13}; }

void MatchPicture::show(const Job &job, const std::optional<Flow> &match) {
    m_halves.clear();
    const Panel *from = match ? job.panel(match->from.panel) : nullptr;
    const Panel *to = match ? job.panel(match->to.panel) : nullptr;
    if (from && to) {
        const auto half = [&](const Panel &panel, const FlowEnd &end) {
            return Half{fromCore(panelInWords(job, panel)), measuredOutline(panel.shape), end.edge, pointOf(panel, end),
                        std::holds_alternative<PolygonShape>(panel.shape)};
        };
        m_halves = {half(*from, match->from), half(*to, match->to)};
        m_lost = match->lost;
        setAccessibleName(withFractions(fromCore(matchInWords(job, *match))));
    }
    update();
}

QRectF MatchPicture::roomOf(int half) const {
    const double line = fontMetrics().height(), wide = (width() - 3 * line) / 2.0;
    return {line / 2 + half * (wide + 2 * line), line, wide, std::max(1.0, height() - 3 * line)};
}

double MatchPicture::scale() const {
    double scale = 1e9;
    for (int half = 0; half < int(m_halves.size()); ++half) {
        PanelBox box = boxOf(m_halves[std::size_t(half)].ring);
        const Length margin = half == 0 ? m_lost : Length{}; // what is lost lies outside the first panel
        scale = std::min({scale, roomOf(half).width() / (box.width() + margin * 2).toMillimetres(),
                          roomOf(half).height() / (box.height() + margin * 2).toMillimetres()});
    }
    return scale;
}

QPointF MatchPicture::at(int half, PanelPoint p) const {
    const PanelBox box = boxOf(m_halves[std::size_t(half)].ring);
    const PanelPoint middle{Length::ticks((box.low.x.ticks() + box.high.x.ticks()) / 2),
                            Length::ticks((box.low.y.ticks() + box.high.y.ticks()) / 2)};
    const Vector off = p - middle;
    return roomOf(half).center() + scale() * QPointF(off.x.toMillimetres(), -off.y.toMillimetres());
}

QPolygonF MatchPicture::outlineOf(int half) const {
    QPolygonF outline;
    for (PanelPoint p : m_halves[std::size_t(half)].ring) outline << at(half, p);
    return outline;
}

QPointF MatchPicture::middleOfEdge(MatchSide side, int edge) const { return middleOf(outlineOf(int(side)), edge); }

void MatchPicture::paintEvent(QPaintEvent *) {
    if (m_halves.empty()) return;
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const Colours colours = coloursOf(palette());
    const QFontMetricsF metrics(font());
    // Both names on one line, below all that is drawn.
    const double lowest = std::max(outlineOf(0).boundingRect().bottom() + m_lost.toMillimetres() * scale(),
                                   outlineOf(1).boundingRect().bottom());
    for (int half = 0; half < 2; ++half) {
        const Half &h = m_halves[std::size_t(half)];
        const QPolygonF outline = outlineOf(half);
        drawOutline(painter, {outline, h.numbered, h.edge}, colours, metrics);
        if (half == 0 && h.edge && m_lost > Length{}) {
            const QPointF a = outline[*h.edge], b = outline[(*h.edge + 1) % outline.size()];
            const QPointF off = outwardsOf(outline, *h.edge) * (m_lost.toMillimetres() * scale());
            QColor fill = colours.accent;
            fill.setAlphaF(0.18F);
            painter.setPen(QPen(colours.accent, 1, Qt::DashLine));
            painter.setBrush(fill);
            painter.drawPolygon(QPolygonF{a, b, b + off, a + off});
        }
        painter.setPen(colours.ink);
        const QRectF room = roomOf(half);
        painter.drawText(QRectF(room.left(), lowest + 0.5 * metrics.height(), room.width(), metrics.height()),
                         Qt::AlignHCenter | Qt::AlignTop, metrics.elidedText(h.name, Qt::ElideRight, room.width()));
    }
    QPointF start = at(0, m_halves[0].point);
    const QPointF end = at(1, m_halves[1].point);
    if (const auto edge = m_halves[0].edge; edge && m_lost > Length{})
        start += outwardsOf(outlineOf(0), *edge) * (m_lost.toMillimetres() * scale());
    QPainterPath path(start);
    const double bow = std::abs(end.x() - start.x()) / 2;
    path.cubicTo(start + QPointF(bow, 0), end - QPointF(bow, 0), end);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(colours.accent, 1.5, Qt::DashLine));
    painter.drawPath(path);
    painter.setPen(Qt::NoPen);
    painter.setBrush(colours.accent);
    for (QPointF point : {start, end}) painter.drawEllipse(point, 4, 4);
}

void MatchPicture::mousePressEvent(QMouseEvent *event) {
    double reach = 12;
    std::optional<std::pair<MatchSide, int>> chosen;
    for (int half = 0; half < int(m_halves.size()); ++half)
        if (const auto near = edgeNear(outlineOf(half), event->position(), reach)) {
            reach = near->off;
            chosen = {MatchSide(half), near->edge};
        }
    if (chosen) Q_EMIT edgeChosen(chosen->first, chosen->second);
}

} // namespace boltwright::ui
