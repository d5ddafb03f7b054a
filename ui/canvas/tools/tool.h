#pragma once

#ifndef Q_MOC_RUN // which cannot read the standard headers behind this in C++20, and need not
#include "core/edit/layout_edit.h"
#endif

#include <QKeyEvent>
#include <QMouseEvent>
#include <QObject>
#include <QPainter>

namespace boltwright::ui {

class Canvas;

/// The way an arrow key points on the table, where the cloth unrolls to the right.
Heading headingOf(int arrowKey);

/// What the mouse does on the table: entered, given the canvas's events, left. The canvas knows none by name.
class Tool : public QObject {
    Q_OBJECT
public:
    explicit Tool(Canvas &canvas);

    virtual void entered() {}
    virtual void left() {} ///< gives up what it holds, without a trace
    virtual void pressed(QMouseEvent *event) = 0;
    virtual void moved(QMouseEvent *event) = 0;
    virtual void released(QMouseEvent *event) = 0;
    virtual bool keyPressed(QKeyEvent *) { return false; } ///< true: the key was for this tool
    virtual bool wants(QKeyEvent *) { return false; }      ///< true: no menu's shortcut while this tool is in hand
    virtual bool keyReleased(QKeyEvent *) { return false; }
    virtual bool tabbed(bool /*next*/) { return false; } ///< goes to its next thing; false: there is none left
    virtual QString hint() const { return {}; }          ///< how it is used, in one short sentence
    virtual void paintOver(QPainter &) {}                ///< in viewport pixels, above everything

protected:
    Canvas &m_canvas;
};

} // namespace boltwright::ui
