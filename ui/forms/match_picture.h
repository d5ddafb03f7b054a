#pragma once

#include "core/edit/match_edit.h"
#include "core/job/job.h"

#include <QPolygonF>
#include <QWidget>

#include <optional>
#include <vector>

namespace boltwright::ui {

/// The two panels of a match as measured, to one scale, with the edges at which the pattern runs on from one to the
/// other. A click on an edge chooses it.
class MatchPicture : public QWidget {
    Q_OBJECT
public:
    explicit MatchPicture(QWidget *parent = nullptr);
    /// None: nothing is shown.
    void show(const Job &job, const std::optional<Flow> &match);
    QPointF middleOfEdge(MatchSide side, int edge) const; ///< where it is drawn
    QSize sizeHint() const override;

Q_SIGNALS:
    void edgeChosen(boltwright::MatchSide side, int edge);

protected:
    void paintEvent(QPaintEvent *event) override;
    void mousePressEvent(QMouseEvent *event) override;

private:
    struct Half {
        QString name;
        PanelRing ring;
        std::optional<int> edge;
        PanelPoint point;
        bool numbered = false;
    };
    /// The half's outline as it is drawn, and where a point of the panel lies.
    QPolygonF outlineOf(int half) const;
    QPointF at(int half, PanelPoint p) const;
    QRectF roomOf(int half) const;
    double scale() const;

    std::vector<Half> m_halves; ///< two, or none
    Length m_lost;
};

} // namespace boltwright::ui
