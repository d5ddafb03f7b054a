#pragma once

#include "ui/canvas/tools/outline_tool.h"

#include <QFrame>

class QCheckBox;
class QComboBox;
class QLabel;
class QLineEdit;
class QPushButton;

namespace boltwright::ui {

class LengthEdit;

/// The strip above the table while remnants and flaws are drawn: which outline is meant, what can be drawn, and its
/// measures to be typed. Opening it takes up the outline tool, closing it gives the table back to the hand.
class OutlineBar : public QFrame {
    Q_OBJECT
public:
    OutlineBar(JobDocument &document, Canvas &canvas, QWidget *parent = nullptr);
    void open();
    void close();
    OutlineTool &tool() { return *m_tool; }

Q_SIGNALS:
    void closed();

protected:
    void keyPressEvent(QKeyEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;
    void changeEvent(QEvent *event) override;

private:
    QWidget *row(const QList<QWidget *> &parts, const QString &label = {});
    LengthEdit *field(const QString &name, const QString &sentence, int minimum = 0);
    void buildFields();
    void fitHeight();
    void fitWords();
    void refresh();
    void refillOutlines();
    void showFields();
    void cornerTyped();
    void spotTyped();
    void motifTyped();
    void change(Job job, const QString &text);

    JobDocument &m_document;
    Canvas &m_canvas;
    OutlineTool *m_tool; ///< the canvas's own
    QComboBox *m_which;
    QPushButton *m_remnant, *m_flaw, *m_spot, *m_remove, *m_done;
    QCheckBox *m_snap;
    QLabel *m_hint;
    QLayout *m_head = nullptr;
    QList<QWidget *> m_rows;
    QWidget *m_cornerRow, *m_cutRow, *m_traceRow, *m_rectangleRow, *m_spotRow, *m_remnantRow, *m_flawRow;
    LengthEdit *m_x, *m_y, *m_cutBefore, *m_cutAfter, *m_nextX, *m_nextY, *m_across, *m_along, *m_middleX, *m_middleY,
        *m_radius, *m_motifX, *m_motifY;
    QLineEdit *m_lot = nullptr, *m_note = nullptr;
    QPushButton *m_markSpot;
};

} // namespace boltwright::ui
