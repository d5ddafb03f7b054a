#pragma once

#include <QImage>
#include <QList>
#include <QPolygonF>
#include <QWidget>

#include <optional>

namespace boltwright::ui {

/// A picture on which places are marked. Mouse: a click marks a place, a mark can be dragged, the wheel goes nearer,
/// the middle button moves the picture. Keys: the arrows move a cross (with Shift by one pixel, with Alt by a quarter
/// of one), Enter or Space marks where it stands; Page Up and Page Down take hold of a mark, which the arrows move
/// then; Backspace takes the last mark away or the one that is held, plus and minus go nearer and further, 0 shows all.
/// A glass in the corner shows what is under the cross many times enlarged.
class MarkedPicture : public QWidget {
    Q_OBJECT
public:
    /// A line or outline that stands, and is not worked on.
    struct Shape {
        QPolygonF points; ///< picture pixels
        bool closed = true;
        bool flaw = false;
        QString label = {};
    };

    explicit MarkedPicture(QWidget *parent = nullptr);

    void setPicture(const QImage &picture);
    const QImage &picture() const { return m_picture; }

    /// What is being marked: at most so many places. `closed`: they are drawn as an outline; `pairs`: as lines of two.
    /// `Ring`: an outline that is closed and put right, as on the table: corners are dragged, the middle of a side
    /// pulls out another, Insert puts one half way to the next, Delete takes away the one held; Tab goes from one to
    /// the next.
    enum class Drawn { Outline, Pairs, OutlineAndMiddle, Ring };
    void setMarks(const QPolygonF &points, int most, Drawn drawn);
    const QPolygonF &marks() const { return m_marks; }
    void setShapes(const QList<Shape> &shapes);
    /// Beside the marks: "1", "2"; empty: numbers.
    void setMarkNames(const QStringList &names) { m_names = names; }
    /// Puts a mark where it is found to belong; nothing is signalled.
    void settle(int mark, QPointF picture);
    double pixelsShown() const { return m_scale; } ///< pixels of the screen to one of the picture
    void setWrong(bool wrong);                     ///< the outline is drawn torn: it cannot be what is meant

    QPointF toWidget(QPointF picture) const;
    QPointF toPicture(QPointF widget) const;
    QSize sizeHint() const override { return {640, 480}; }

Q_SIGNALS:
    void marksChanged();
    /// A mark was set, or put down after it was dragged: where exactly may still be settled for it with `settle`. Not
    /// with Alt held, and not for what was moved by keys: that stays where it was put. Comes after `marksChanged`.
    void markPlaced(int mark);
    /// An outline was closed: its first mark clicked again, a double click, or Ctrl+Enter.
    void outlineClosed();
    void refused(const QString &sentence);

protected:
    void paintEvent(QPaintEvent *event) override;
    void mousePressEvent(QMouseEvent *event) override;
    void mouseMoveEvent(QMouseEvent *event) override;
    void mouseReleaseEvent(QMouseEvent *event) override;
    void mouseDoubleClickEvent(QMouseEvent *event) override;
    void wheelEvent(QWheelEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;
    void leaveEvent(QEvent *event) override;
    bool event(QEvent *event) override;
    bool focusNextPrevChild(bool next) override;

private:
    double fitting() const;
    void fit();
    void zoomBy(double factor, QPointF around);
    int markAt(QPointF widget) const;
    int sideAt(QPointF widget) const; ///< by the handle in its middle; -1: none, or it is no ring
    void insertAfter(int mark, QPointF picture);
    void add(QPointF picture, bool freely = false);
    void moveMark(int mark, QPointF picture);
    void removeMark();
    void changed();
    QPointF within(QPointF picture) const;
    void paintMarks(QPainter &painter);
    void paintShape(QPainter &painter, const Shape &shape);
    void paintGlass(QPainter &painter);

    QImage m_picture;
    QPolygonF m_marks;
    QStringList m_names;
    QList<Shape> m_shapes;
    int m_most = 0;
    Drawn m_drawn = Drawn::Outline;
    bool m_wrong = false;
    double m_scale = 1;
    QPointF m_zero; ///< where the picture's upper left corner is
    bool m_fitted = true;
    int m_held = -1;                ///< a mark in the hand, or taken hold of by keys
    bool m_drag = false;            ///< by the mouse
    bool m_dragged = false;         ///< and it has been moved
    bool m_pulled = false;          ///< out of the middle of a side, and not moved yet
    bool m_again = false;           ///< a click on a mark that may mark the same place once more
    std::optional<QPointF> m_cross; ///< picture pixels
    std::optional<QPointF> m_panFrom;
};

} // namespace boltwright::ui
