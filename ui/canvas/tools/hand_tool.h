#pragma once

#include "ui/canvas/tools/tool.h"
#include "ui/document/job_document.h"

namespace boltwright::ui {

/// Takes hold of panels. A press selects; a drag shows where they would come to rest, and letting go makes one step of
/// the history. With Shift a press takes a panel along with those selected, or leaves it out again; a drag over bare
/// table draws a ring of chalk around several. Dragged down to the tray they are put aside, dragged out of it a panel
/// is laid. Escape leaves no trace.
class HandTool : public Tool {
    Q_OBJECT
public:
    using Tool::Tool;
    void left() override;
    void pressed(QMouseEvent *event) override;
    void moved(QMouseEvent *event) override;
    void released(QMouseEvent *event) override;
    bool keyPressed(QKeyEvent *event) override;
    bool keyReleased(QKeyEvent *event) override;
    bool tabbed(bool next) override;
    QString hint() const override;
    void paintOver(QPainter &painter) override;

private:
    enum class Holding { Nothing, Pressed, Dragging, Ring };
    void begin();
    bool takeFromTray();
    bool takeFromCloth();
    void follow();
    void followRing();
    void letGo();
    void giveUp();
    void turnHeld();
    bool keyPressedEmptyHanded(QKeyEvent *event);
    void nudge(int key, bool toNextPlace);
    void nudgeSeveral(int key, bool far);
    void sayStays(const Cut &cut);
    Settled settleAt(Layout &layout, bool lettingGo) const;
    Settled settleSeveral(Layout &layout, int sheet, bool lettingGo) const;
    QString stepText() const;

    Holding m_holding = Holding::Nothing;
    QPoint m_pressedAt, m_mouse;      ///< viewport pixels
    QPointF m_grip;                   ///< from the box's corner on screen to the mouse, millimetres of the table frame
    std::optional<CutName> m_name;    ///< a cut on the cloth
    std::optional<CopyOf> m_fromTray; ///< or a copy that was put aside
    Layout m_start;                   ///< as it lay
    int m_cut = -1;                   ///< in m_start
    std::vector<int> m_with;          ///< others in the hand
    std::vector<CutName> m_before;    ///< selected when the ring was begun
    bool m_free = false;              ///< snaps to nothing
    bool m_overTray = false;
};

} // namespace boltwright::ui
