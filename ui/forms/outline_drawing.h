#pragma once

#include "ui/drawing/colours.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPolygonF>

#include <optional>

namespace boltwright::ui {

/// A panel's outline as it is shown, upright as one faces it: its corners against the clock, in pixels.
struct ShownOutline {
    QPolygonF corners;
    bool numbered = false;   ///< each edge has its number inside, where edges have no other name
    std::optional<int> edge; ///< drawn strongly
};

/// Square to an edge and away from the panel, one pixel long; nothing for an edge without length.
QPointF outwardsOf(const QPolygonF &corners, int edge);
QPointF middleOf(const QPolygonF &corners, int edge);
void drawOutline(QPainter &painter, const ShownOutline &outline, const Colours &colours, const QFontMetricsF &metrics);

/// The edge nearest to a place, and how far off; none where all are farther than `reach` pixels.
struct EdgeNear {
    int edge = 0;
    double off = 0;
};
std::optional<EdgeNear> edgeNear(const QPolygonF &corners, QPointF at, double reach);

} // namespace boltwright::ui
