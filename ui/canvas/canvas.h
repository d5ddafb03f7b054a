#pragma once

#ifndef Q_MOC_RUN // which cannot read the standard headers behind these in C++20, and need not
#include "ui/canvas/table.h"
#include "ui/canvas/tools/tool.h"
#include "ui/canvas/tray.h"
#include "ui/document/standing.h"
#endif

#include <QAbstractScrollArea>
#include <QPixmap>
#include <QTimer>

namespace boltwright::ui {

/// The cutting table seen from above. Shows the document's layout, or its preview; what the mouse does is a tool's
/// business. Everything that lies still is painted once and kept, so that a drag repaints what moves.
class Canvas : public QAbstractScrollArea {
    Q_OBJECT
public:
    Canvas(JobDocument &document, Standing &standing, QWidget *parent = nullptr);
    ~Canvas() override;

    JobDocument &document() { return m_document; }
    const JobDocument &document() const { return m_document; }
    Standing &standing() { return m_standing; }
    const Table &table() const { return m_table; }

    // The view.
    void zoomBy(double factor, std::optional<QPointF> around = {});
    void zoomToFit();
    bool isFitted() const { return m_fitted; }      ///< nobody has zoomed since all was to be seen
    double zoom() const { return m_table.scale(); } ///< pixels a millimetre
    void beginPan(QPoint from);
    /// Brings the selected cut into sight.
    void showSelection();
    QString describe(int cut) const; ///< a sentence for those who listen
    void say(const QString &text);   ///< for the line below the table: what the tool has to tell

    // The tool in the hand. Tools belong to the canvas as a QObject's children do.
    Tool &tool() { return *m_tool; }
    void useTool(Tool &tool); ///< the one in use gives up what it holds
    void useHand();

    // For tools; viewport pixels.
    int cutAt(QPointF viewport) const;
    std::optional<CopyOf> trayCopyAt(QPointF viewport) const { return m_tray.copyAt(viewport); }
    int sheetUnder(QPointF viewport) const;             ///< -1: bare table
    int sheetNear(QPointF viewport) const;              ///< the nearest; -1: there are none
    QPointF toSheet(int sheet, QPointF viewport) const; ///< in the sheet's table frame, millimetres
    QTransform toViewport(int sheet) const;             ///< from that frame
    QRectF clothRoom() const;                           ///< the viewport above the tray
    QRectF cutRect(int cut) const;
    QRectF sheetRect(int sheet) const;
    Length lengthOf(double pixels) const; ///< on the cloth, at this zoom
    bool overTray(QPointF viewport) const;
    void setTrayWelcoming(bool welcoming);
    void hold(std::vector<int> cuts); ///< what is in the hand is painted apart from what lies still
    void scrollTowards(QPoint viewport);
    void scrollBy(int arrowKey);        ///< one step of the view that way
    void showNote(const QString &text); ///< a tag that goes away by itself
    /// Strips for welt that what is left over yields, shown where they would be cut.
    struct StripShown {
        std::string cloth;
        std::optional<std::string> on;
        QPolygonF ring; ///< in its sheet's table frame
    };
    void showStrips(const QList<StripShown> &strips);
    const QList<StripShown> &stripsShown() const { return m_strips; }

    QSize sizeHint() const override { return {900, 600}; }

Q_SIGNALS:
    /// The hand takes hold of a panel: whatever else changes the layout stops.
    void takingHold();
    void zoomChanged();
    void toolChanged();
    void said(const QString &text);

protected:
    void paintEvent(QPaintEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;
    void scrollContentsBy(int dx, int dy) override;
    void mousePressEvent(QMouseEvent *event) override;
    void mouseMoveEvent(QMouseEvent *event) override;
    void mouseReleaseEvent(QMouseEvent *event) override;
    void mouseDoubleClickEvent(QMouseEvent *event) override;
    void wheelEvent(QWheelEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void keyReleaseEvent(QKeyEvent *event) override;
    void focusInEvent(QFocusEvent *event) override;
    void focusOutEvent(QFocusEvent *event) override;
    bool focusNextPrevChild(bool next) override;
    void changeEvent(QEvent *event) override;
    bool viewportEvent(QEvent *event) override;
    bool event(QEvent *event) override;

private:
    void follow(Changes changes);
    void rebuild();
    void arrange(bool fitting = false);
    void layerStale();
    Table::Spacing spacing() const;
    QPointF scrolled() const;

    void paintWholeLayer();
    void paintLayer(const QRect &part); ///< viewport pixels
    void paintOffcuts(QPainter &painter);
    void paintStrips(QPainter &painter);
    void paintTapes(QPainter &painter);
    void paintFlags(QPainter &painter);
    void paintMarkings(QPainter &painter, bool lines);
    void paintHand(QPainter &painter);
    void paintReasons(QPainter &painter);
    void paintNote(QPainter &painter);
    double tapeTop(int sheet) const;

    JobDocument &m_document;
    Standing &m_standing;
    Table m_table;
    Tray m_tray;
    Tool *m_hand; ///< takes hold of panels; what is in use when nothing else is
    Tool *m_tool;
    QPixmap m_layer; ///< what lies still
    bool m_layerValid = false;
    std::vector<int> m_held;
    QList<QPair<int, QRectF>> m_offcuts; ///< sheet, and the offcut in its table frame
    QList<StripShown> m_strips;
    bool m_trayWelcoming = false;
    bool m_fitted = true; ///< fits again when the window changes its size, and with another job
    std::optional<QPoint> m_panFrom;
    QPoint m_panScroll;
    bool m_spaceHeld = false;
    QString m_note;
    QTimer m_noteTimer;
};

} // namespace boltwright::ui
