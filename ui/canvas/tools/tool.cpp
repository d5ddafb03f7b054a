#include "ui/canvas/tools/tool.h"

#include "ui/canvas/canvas.h"

namespace boltwright::ui {

Tool::Tool(Canvas &canvas) : QObject(&canvas), m_canvas(canvas) {}

} // namespace boltwright::ui
