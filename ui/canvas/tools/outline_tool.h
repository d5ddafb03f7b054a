#pragma once

#include "ui/canvas/tools/ring_editor.h"
#include "ui/canvas/tools/tool.h"
#ifndef Q_MOC_RUN
#include "core/edit/cloth_edit.h"
#include "ui/document/job_document.h"
#endif

namespace boltwright::ui {

/// Draws and changes the outlines of remnants and flaws on the table. One outline at a time is chosen; its corners are
/// dragged, or moved with the arrow keys, Tab goes from corner to corner. Each step is one of the history.
class OutlineTool : public Tool {
    Q_OBJECT
public:
    enum class Task { Change, Remnant, Flaw, Spot, Motif };

    explicit OutlineTool(Canvas &canvas);

    const std::optional<OutlineOf> &chosen() const { return m_chosen; }
    void choose(const std::optional<OutlineOf> &which);
    Task task() const { return m_task; }
    /// Something to be drawn, on the sheet of what is chosen until the hand goes to another.
    void begin(Task task);
    RingEditor &editor() { return m_editor; }
    QString advice() const; ///< what can be done just now, a sentence or two

    // For what is typed: each one step of the history, or a word of why not.
    void moveCorner(ClothPoint to, const QString &what);
    void cutCornerOut(Length before, Length after);
    void makeSpot(const Spot &spot, const QString &what);
    void addRectangle(Length across, Length along); ///< a remnant
    void remove();                                  ///< what is chosen

    void entered() override;
    void left() override;
    void pressed(QMouseEvent *event) override;
    void moved(QMouseEvent *event) override;
    void released(QMouseEvent *event) override;
    bool keyPressed(QKeyEvent *event) override;
    bool wants(QKeyEvent *event) override;
    bool tabbed(bool next) override;
    QString hint() const override;
    void paintOver(QPainter &painter) override;

Q_SIGNALS:
    void stateChanged(); ///< what is chosen, its corner, or what is being done
    void refused(const QString &sentence);
    void doneWanted(); ///< Escape with nothing left to give up

private:
    JobDocument &document() const;
    void follow();
    void putDown();
    void view();
    void goTo(int sheet);
    void change(Result<Job> job, const QString &text, const QString &mergeKey = {});
    void take(const ClothRing &ring);
    std::optional<OutlineOf> outlineAt(QPointF viewport) const;
    QString mergeKeyOf(const QString &key) const;

    RingEditor m_editor;
    bool m_inHand = false;
    Task m_task = Task::Change;
    std::optional<OutlineOf> m_chosen;
    SheetOf m_sheet;  ///< where things are drawn
    QPointF m_offset; ///< of a remnant being drawn, in the table frame of that sheet
};

} // namespace boltwright::ui
