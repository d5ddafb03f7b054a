#include "ui/canvas/tools/tool.h"

#include "ui/canvas/canvas.h"

namespace boltwright::ui {

Heading headingOf(int key) {
    switch (key) {
    case Qt::Key_Left:
        return Heading::DownTheRoll;
    case Qt::Key_Right:
        return Heading::UpTheRoll;
    case Qt::Key_Up:
        return Heading::TowardsLeft;
    default:
        return Heading::TowardsRight;
    }
}

Tool::Tool(Canvas &canvas) : QObject(&canvas), m_canvas(canvas) {}

} // namespace boltwright::ui
