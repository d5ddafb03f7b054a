#pragma once

#include "ui/canvas/tools/tool.h"

#include <optional>

namespace boltwright::ui {

/// What chalk, notes and tape have in common: their keys. Escape lets go, and once more takes up the hand; Enter puts
/// down, Delete takes away, arrows move.
class MarkingTool : public Tool {
    Q_OBJECT
public:
    using Tool::Tool;
    bool keyPressed(QKeyEvent *event) final;

protected:
    virtual bool letGo() = 0; ///< false: there was nothing in the hand, and nothing chosen
    virtual void putDown(QKeyEvent *event) = 0;
    virtual bool takeAway() { return false; } ///< false: it never has anything to take away
    virtual void step(QKeyEvent *event) = 0;
    virtual void afterKey() {}
};

/// The next place, or the one before, in a row of `count`; from no place it is the first or the last. None: the row is
/// at its end.
std::optional<int> nextInRow(int count, std::optional<int> now, bool next);

} // namespace boltwright::ui
