#pragma once

#ifndef Q_MOC_RUN
#include "core/edit/markings.h"
#endif
#include "ui/canvas/tools/marking_tool.h"

#include <optional>

namespace boltwright::ui {

/// The measuring tape: drawn from one point to another it reads the distance, straight, across and along. Both ends
/// come to rest at corners and edges. By keys: Enter puts down the near end, arrows take the far end on. The reading
/// stays until the next one; Escape takes it away, and once more takes up the hand. Changes nothing.
class TapeTool : public MarkingTool {
    Q_OBJECT
public:
    using MarkingTool::MarkingTool;
    void entered() override;
    void left() override;
    void pressed(QMouseEvent *event) override;
    void moved(QMouseEvent *event) override;
    void released(QMouseEvent *event) override;
    QString hint() const override;
    void paintOver(QPainter &painter) override;
    QString reading() const; ///< "12 ¼ in"; empty while nothing is measured
    QString parts() const;   ///< "8 across · 9 ¼ along"

protected:
    bool letGo() override;
    void putDown(QKeyEvent *event) override;
    void step(QKeyEvent *event) override;
    void afterKey() override { say(); }

private:
    Mark markAt(QPoint viewport, Qt::KeyboardModifiers keys) const;
    void say();

    int m_sheet = -1;
    std::optional<ClothPoint> m_from; ///< where the near end is held
    Mark m_to;                        ///< the far end, or where the tape would be put down
    bool m_drawing = false;           ///< the far end follows
};

} // namespace boltwright::ui
