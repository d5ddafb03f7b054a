#pragma once

#include "core/panel/panel.h"

#include <QPolygonF>
#include <QWidget>

#include <optional>

namespace boltwright::ui {

/// A panel as measured, with the edge that is meant, so that nobody has to count edges. A click on an edge means it.
class EdgePicture : public QWidget {
    Q_OBJECT
public:
    explicit EdgePicture(QWidget *parent = nullptr);
    void show(const Shape &shape);
    void showEdge(std::optional<int> edge);
    std::optional<int> edge() const { return m_edge; }
    QPolygonF corners() const; ///< as drawn

Q_SIGNALS:
    void edgeChosen(int edge);

protected:
    void paintEvent(QPaintEvent *event) override;
    void mousePressEvent(QMouseEvent *event) override;

private:
    PanelRing m_ring;
    bool m_numbered = false;
    std::optional<int> m_edge;
};

} // namespace boltwright::ui
