#include "ui/canvas/tools/marking_tool.h"

#include "ui/canvas/canvas.h"

namespace boltwright::ui {

bool MarkingTool::keyPressed(QKeyEvent *event) {
    switch (event->key()) {
    case Qt::Key_Escape:
        if (!letGo()) {
            m_canvas.useHand();
            return true;
        }
        break;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        putDown(event);
        break;
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
        if (!takeAway()) return false;
        break;
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Up:
    case Qt::Key_Down:
        step(event);
        break;
    default:
        return false;
    }
    afterKey();
    m_canvas.viewport()->update();
    return true;
}

std::optional<int> nextInRow(int count, std::optional<int> now, bool next) {
    const int to = !now ? (next ? 0 : count - 1) : *now + (next ? 1 : -1);
    return to >= 0 && to < count ? std::optional(to) : std::nullopt;
}

} // namespace boltwright::ui
