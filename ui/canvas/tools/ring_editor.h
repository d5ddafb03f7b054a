#pragma once

#ifndef Q_MOC_RUN // which cannot read the standard headers behind these in C++20, and need not
#include "core/edit/outline_edit.h"
#include "core/measure/unit.h"
#endif
#include "ui/drawing/panel_drawing.h"

#include <QKeyEvent>
#include <QObject>
#include <QPainter>
#include <QTransform>

namespace boltwright::ui {

/// Draws and changes one ring of corners by mouse and keyboard, wherever it is shown: on the cutting table, over a
/// photograph. Knows nothing of jobs. Its host says where the ring lies on the screen, hands it events and paints it,
/// and takes what comes of it.
///
///     editor.setView(toScreen, Unit::Inch);
///     editor.trace();                              // clicks set corners, until the first is clicked again
///     connect(&editor, &RingEditor::finished, …);  // the ring, once it is closed
///     editor.reshape(ring);                        // corners to drag
///     connect(&editor, &RingEditor::reshaped, …);  // the ring after each step of the hand
class RingEditor : public QObject {
    Q_OBJECT
public:
    enum class Mode {
        Idle,
        Reshape, ///< corners and sides of a ring are dragged
        Trace,   ///< corners are set one after the other
        Spot,    ///< a middle, and a radius by dragging
        Point,   ///< one point of the cloth
    };

    using QObject::QObject;

    /// Takes the table frame (millimetres, see ui/drawing/table_frame.h) to the host's pixels. Any transform that can
    /// be inverted will do.
    void setView(const QTransform &toScreen, Unit unit);
    /// What the hand snaps to; nothing: to the pixel. Alt held down snaps to nothing either way.
    void setSnap(Length step) { m_snap = step; }
    Length snap() const { return m_snap; }
    void setSpotRadius(Length radius) { m_radius = radius; } ///< of a spot that is clicked and not dragged

    void rest();
    /// A round flaw (see `Spot`) shows one handle, for its radius; one that is `movable` is dragged by its inside.
    void reshape(ClothRing ring, bool movable = false);
    void trace();
    void markSpot();
    void pickPoint();
    Mode mode() const { return m_mode; }
    bool isIdle() const { return m_mode == Mode::Idle; }

    /// The ring as it is shown: with what is being dragged, or as far as it is traced.
    const ClothRing &ring() const { return m_ring; }
    const std::optional<Spot> &spot() const { return m_spot; } ///< when the ring is one
    int corner() const { return m_corner; }                    ///< the chosen one; -1: none
    void chooseCorner(int corner);
    /// As if it had been clicked there; for corners that are typed.
    void addCorner(ClothPoint at);
    void closeRing();
    void removeCorner();
    /// Lets go of what is being dragged, or of the last corner traced; false: there was nothing.
    bool giveUp();

    // Events in the host's pixels. True: it was for the editor.
    bool pressed(QPointF at, Qt::KeyboardModifiers keys);
    bool moved(QPointF at, Qt::KeyboardModifiers keys);
    bool released(QPointF at, Qt::KeyboardModifiers keys);
    bool wants(const QKeyEvent *event) const;
    bool keyPressed(QKeyEvent *event);
    bool stepped(bool next); ///< Tab: the next corner; false: there is none further
    Qt::CursorShape cursorAt(QPointF at) const;

    void paint(QPainter &painter, const Colours &colours, const SlipFonts &fonts, const QRectF &within) const;

Q_SIGNALS:
    /// One step by hand on the ring given to `reshape`. Equal keys that are not empty: steps that may become one.
    void reshaped(const boltwright::ClothRing &ring, const QString &mergeKey);
    void finished(const boltwright::ClothRing &ring); ///< a traced ring or a spot
    void picked(boltwright::ClothPoint point);
    void cornerChosen(int corner);
    void refused(const QString &sentence);
    void looksDifferent(); ///< paint again

private:
    enum class Dragging { Nothing, Corner, Radius, Whole };
    void show(ClothRing ring);
    bool isHandle(int corner) const;
    void dragTo(ClothPoint at);
    void refuse(const std::string &why);
    ClothPoint underHand(QPointF at, Qt::KeyboardModifiers keys) const;
    QPointF onScreen(ClothPoint p) const;
    int cornerAt(QPointF at) const;
    int sideAt(QPointF at) const; ///< by the handle in its middle
    void take(ClothRing ring, const QString &mergeKey);
    void splitSide();
    void nudge(int key, Qt::KeyboardModifiers keys);
    void paintSides(QPainter &painter, const Colours &colours, const SlipFonts &fonts, const QRectF &within) const;
    void paintHandles(QPainter &painter, const Colours &colours) const;

    Mode m_mode = Mode::Idle;
    QTransform m_toScreen;
    Unit m_unit = Unit::Inch;
    Length m_snap, m_radius;
    ClothRing m_ring, m_before; ///< as shown; as it was when the drag began
    int m_corner = -1;
    Dragging m_dragging = Dragging::Nothing;
    std::optional<Spot> m_spot; ///< what the ring is, while it is reshaped
    bool m_movable = false;
    ClothPoint m_middle;            ///< of the spot being marked
    ClothPoint m_grip;              ///< where the whole ring was taken hold of
    std::optional<ClothPoint> m_at; ///< where the hand is, snapped
    QPointF m_pressedAt;
};

} // namespace boltwright::ui
