#pragma once

#ifndef Q_MOC_RUN
#include "core/edit/markings.h"
#endif
#include "ui/canvas/tools/marking_tool.h"

#include <QPointer>

#include <optional>

class QLineEdit;

namespace boltwright::ui {

/// Notes pinned to the cloth: a click on the cloth pins one where its words are typed; a pin is dragged elsewhere, a
/// double click changes its words, and without words it is taken off. By keys: Enter pins or changes, Tab goes from
/// note to note, arrows move it, Delete takes it off.
class NoteTool : public MarkingTool {
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
    QLineEdit *editor() const; ///< null while nothing is written

protected:
    bool letGo() override;
    void putDown(QKeyEvent *event) override;
    bool takeAway() override;
    void step(QKeyEvent *event) override;

private:
    struct Which {
        int sheet = 0, note = -1; ///< -1: a new one
        bool operator==(const Which &) const = default;
    };
    SheetOf sheetOf(int sheet) const;
    const PinnedNote *noteOf(const Which &which) const;
    std::optional<Which> noteNear(QPoint viewport) const;
    void write(Which which, ClothPoint at);
    void finishWriting(bool keep);
    void takeOff();

    std::optional<Which> m_chosen;
    std::optional<ClothPoint> m_dragged; ///< where the chosen one is carried
    QPoint m_pressedAt;
    bool m_pressedOnPin = false;
    Which m_writing;
    ClothPoint m_writingAt;
    QPointer<QLineEdit> m_editor;
};

} // namespace boltwright::ui
