#pragma once

#ifndef Q_MOC_RUN
#include "core/edit/markings.h"
#endif
#include "ui/canvas/tools/marking_tool.h"

#include <optional>

namespace boltwright::ui {

/// Chalk lines on the cloth: a press on bare cloth draws one across, with Shift one along; a press on a line takes hold
/// of it; let go beside the cloth it is rubbed out. By keys: Enter draws one, Tab goes from line to line, arrows move
/// it, Delete rubs it out. Each is one step of the history.
class ChalkTool : public MarkingTool {
    Q_OBJECT
public:
    using MarkingTool::MarkingTool;
    void entered() override;
    void left() override;
    void pressed(QMouseEvent *event) override;
    void moved(QMouseEvent *event) override;
    void released(QMouseEvent *event) override;
    bool tabbed(bool next) override;
    QString hint() const override;
    void paintOver(QPainter &painter) override;

protected:
    bool letGo() override;
    void putDown(QKeyEvent *event) override;
    bool takeAway() override;
    void step(QKeyEvent *event) override;

private:
    struct Held {
        int sheet = 0, line = -1; ///< -1: a new one
        ChalkLine::Runs runs = ChalkLine::Runs::Across;
        Length at;
        bool offCloth = false;
    };
    SheetOf sheetOf(int sheet) const;
    std::optional<Held> lineNear(QPoint viewport) const;
    std::optional<Held> newAt(QPoint viewport, Qt::KeyboardModifiers keys) const;
    void moveTo(QPoint viewport, Qt::KeyboardModifiers keys);
    void rubOut();
    const ChalkLine *chosenLine() const;
    void say(const Held &held);

    std::optional<Held> m_held;                  ///< in the hand
    std::optional<Held> m_ghost;                 ///< where a press would draw one
    std::optional<std::pair<int, int>> m_chosen; ///< sheet and line, for keys
};

} // namespace boltwright::ui
