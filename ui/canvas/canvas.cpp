#include "ui/canvas/canvas.h"

#include "core/figures/figures.h"
#include "core/measure/length_text.h"
#include "ui/canvas/canvas_accessible.h"
#include "ui/canvas/flag_drawing.h"
#include "ui/canvas/tools/hand_tool.h"
#include "ui/drawing/table_frame.h"
#include "ui/drawing/tape_drawing.h"
#include "ui/text/words.h"

#include <QAccessible>
#include <QPaintEvent>
#include <QScrollBar>
#include <QToolTip>
#include <QWheelEvent>

#include <algorithm>
#include <cmath>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

Canvas::Canvas(JobDocument &document, Standing &standing, QWidget *parent)
    : QAbstractScrollArea(parent), m_document(document), m_standing(standing), m_hand(new HandTool(*this)),
      m_tool(m_hand) {
    setFrameShape(QFrame::NoFrame);
    setObjectName(u"table"_s);
    setFocusPolicy(Qt::StrongFocus);
    viewport()->setMouseTracking(true);
    viewport()->setAttribute(Qt::WA_OpaquePaintEvent);
    setMinimumSize(320, 240);
    setAccessibleName(tr("Cutting table"));
    setAccessibleDescription(
        tr("The cloth as it lies on the table, with the panels on it. Tab goes from panel to panel."));
    m_noteTimer.setSingleShot(true);
    connect(&m_noteTimer, &QTimer::timeout, this, [this] {
        m_note.clear();
        viewport()->update();
    });
    connect(&document, &JobDocument::changed, this, &Canvas::follow);
    connect(&standing, &Standing::changed, this, [this] {
        if (m_held.empty()) layerStale();
        viewport()->update();
    });
    installCanvasAccessibility();
    rebuild();
}

Canvas::~Canvas() = default;

// What is shown.

void Canvas::follow(Changes changes) {
    if (changes & Change::NewJob) m_fitted = true;
    const auto &preview = m_document.preview();
    const bool planned = (changes & Change::Preview) && preview && preview->cut < 0 && m_held.empty();
    const bool fitting = m_fitted && (planned || (changes & (Change::NewJob | Change::Cloths)));
    if (changes == Changes(Change::Preview) && !m_held.empty() && preview && preview->cut >= 0) {
        for (int cut : m_held) m_table.takeCut(m_document.job(), preview->layout, cut);
        viewport()->update();
        return;
    }
    if (changes & (Change::Card | Change::Cloths | Change::Panels | Change::Layout | Change::Preview | Change::NewJob))
        rebuild();
    if (fitting) arrange(true);
    if (changes & Change::Selection) {
        layerStale();
        announceSelection(*this);
    }
}

void Canvas::rebuild() {
    const Job &job = m_document.job();
    const Layout &layout = m_document.layout();
    m_table.take(job, layout);
    m_tray.take(job, layout);
    m_offcuts.clear();
    if (!m_document.preview())
        for (int i = 0; i < m_table.sheets().size(); ++i) {
            const SheetOnTable &sheet = m_table.sheets()[i];
            if (const auto box = largestOffcut(job, layout, sheet.sheet.cloth, sheet.sheet.on))
                m_offcuts.append({i, onTable(*box)});
        }
    arrange();
}

Table::Spacing Canvas::spacing() const {
    const SlipFonts fonts(font());
    const double line = QFontMetricsF(fonts.small).height();
    Table::Spacing s;
    s.above = flagHeight(fonts) + line * 2 + 44;
    s.below = line + 22;
    s.left = line + 32;
    s.right = 28;
    return s;
}

void Canvas::arrange(bool fitting) {
    m_layerValid = false; // before anything scrolls by it
    const SlipFonts fonts(font());
    const double trayHeight = m_trayWelcoming && m_tray.isEmpty() ? 56 : m_tray.height(fonts);
    const QRectF whole(viewport()->rect());
    m_tray.arrange(trayHeight > 0 ? QRectF(0, whole.height() - trayHeight, whole.width(), trayHeight) : QRectF(),
                   fonts);
    if (fitting)
        m_table.arrange(m_table.fittingScale(clothRoom().size(), spacing()), spacing());
    else
        m_table.arrange(m_table.scale(), spacing());
    const QRectF extent = m_table.extent(), room = clothRoom();
    horizontalScrollBar()->setPageStep(int(room.width()));
    horizontalScrollBar()->setSingleStep(40);
    horizontalScrollBar()->setRange(0, std::max(0, int(std::ceil(extent.width() - room.width()))));
    verticalScrollBar()->setPageStep(int(room.height()));
    verticalScrollBar()->setSingleStep(40);
    verticalScrollBar()->setRange(0, std::max(0, int(std::ceil(extent.height() - room.height()))));
    layerStale();
}

void Canvas::layerStale() {
    m_layerValid = false;
    viewport()->update();
}

QRectF Canvas::clothRoom() const {
    const SlipFonts fonts(font());
    return QRectF(0, 0, viewport()->width(), viewport()->height() - m_tray.height(fonts));
}

QPointF Canvas::scrolled() const {
    // Less than a windowful lies in the middle of the table's height, a little high, where the eye expects it.
    const double spare = std::max(0.0, clothRoom().height() - m_table.extent().height());
    return QPointF(horizontalScrollBar()->value(), verticalScrollBar()->value() - std::floor(spare * 0.38));
}

QTransform Canvas::toViewport(int sheet) const {
    return m_table.toContent(sheet) * QTransform::fromTranslate(-scrolled().x(), -scrolled().y());
}

QPointF Canvas::toSheet(int sheet, QPointF viewport) const { return toViewport(sheet).inverted().map(viewport); }

int Canvas::cutAt(QPointF viewport) const {
    if (!clothRoom().contains(viewport)) return -1;
    return m_table.panelAt(viewport + scrolled());
}

int Canvas::sheetUnder(QPointF viewport) const { return m_table.sheetAt(viewport + scrolled()); }

int Canvas::sheetNear(QPointF viewport) const {
    int best = -1;
    double least = 0;
    const QPointF at = viewport + scrolled();
    for (int i = 0; i < m_table.sheets().size(); ++i) {
        const QRectF r = m_table.sheetRect(i);
        const double dx = std::max({r.left() - at.x(), 0.0, at.x() - r.right()});
        const double dy = std::max({r.top() - at.y(), 0.0, at.y() - r.bottom()});
        if (best < 0 || dx + dy < least) {
            best = i;
            least = dx + dy;
        }
    }
    return best;
}

QRectF Canvas::cutRect(int cut) const { return m_table.panelRect(cut).translated(-scrolled()); }

QRectF Canvas::sheetRect(int sheet) const { return m_table.sheetRect(sheet).translated(-scrolled()); }

Length Canvas::lengthOf(double pixels) const { return onCloth(QPointF(0, pixels / m_table.scale())).x; }

bool Canvas::overTray(QPointF at) const {
    const double height = std::max(40.0, m_tray.height(SlipFonts(font())));
    return at.y() > viewport()->height() - height;
}

void Canvas::setTrayWelcoming(bool welcoming) {
    if (m_trayWelcoming == welcoming) return;
    m_trayWelcoming = welcoming;
    const SlipFonts fonts(font());
    const QRectF whole(viewport()->rect());
    const double height = m_tray.isEmpty() ? (welcoming ? 56 : 0) : m_tray.height(fonts);
    m_tray.arrange(height > 0 ? QRectF(0, whole.height() - height, whole.width(), height) : QRectF(), fonts);
    viewport()->update();
}

void Canvas::hold(std::vector<int> cuts) {
    m_held = std::move(cuts);
    layerStale();
}

void Canvas::say(const QString &text) { Q_EMIT said(text); }

void Canvas::showNote(const QString &text) {
    m_note = text;
    m_noteTimer.start(2600);
    viewport()->update();
}

// The view.

void Canvas::zoomBy(double factor, std::optional<QPointF> around) {
    const QPointF at = around.value_or(clothRoom().center());
    const int sheet = sheetNear(at);
    const QPointF before = sheet >= 0 ? toSheet(sheet, at) : QPointF();
    m_fitted = false;
    m_table.arrange(std::clamp(m_table.scale() * factor, 0.02, 6.0), spacing());
    arrange();
    if (sheet >= 0) {
        const QPointF after = toViewport(sheet).map(before);
        horizontalScrollBar()->setValue(horizontalScrollBar()->value() + qRound(after.x() - at.x()));
        verticalScrollBar()->setValue(verticalScrollBar()->value() + qRound(after.y() - at.y()));
    }
    layerStale();
    Q_EMIT zoomChanged();
}

void Canvas::zoomToFit() {
    m_fitted = true;
    horizontalScrollBar()->setValue(0);
    verticalScrollBar()->setValue(0);
    arrange(true);
    Q_EMIT zoomChanged();
}

void Canvas::beginPan(QPoint from) {
    m_panFrom = from;
    m_panScroll = {horizontalScrollBar()->value(), verticalScrollBar()->value()};
    viewport()->setCursor(Qt::ClosedHandCursor);
}

void Canvas::scrollTowards(QPoint at) {
    constexpr int rim = 28;
    const QRect room = clothRoom().toRect();
    const int dx = at.x() < rim ? -16 : at.x() > room.right() - rim ? 16 : 0;
    if (dx) horizontalScrollBar()->setValue(horizontalScrollBar()->value() + dx);
}

void Canvas::scrollBy(int key) {
    QScrollBar *bar = key == Qt::Key_Left || key == Qt::Key_Right ? horizontalScrollBar() : verticalScrollBar();
    bar->triggerAction(key == Qt::Key_Left || key == Qt::Key_Up ? QScrollBar::SliderSingleStepSub
                                                                : QScrollBar::SliderSingleStepAdd);
}

void Canvas::showSelection() {
    const int cut = m_document.selectedCut();
    if (cut < 0 || cut >= m_table.panels().size()) return;
    const QRectF rect = cutRect(cut).adjusted(-24, -24, 24, 24), room = clothRoom();
    if (room.contains(rect)) return;
    if (rect.left() < room.left() || rect.right() > room.right())
        horizontalScrollBar()->setValue(horizontalScrollBar()->value() + int(rect.center().x() - room.center().x()));
    if (rect.top() < room.top() || rect.bottom() > room.bottom())
        verticalScrollBar()->setValue(verticalScrollBar()->value() + int(rect.center().y() - room.center().y()));
}

void Canvas::resizeEvent(QResizeEvent *) { arrange(m_fitted); }

void Canvas::scrollContentsBy(int dx, int dy) {
    const double ratio = devicePixelRatioF();
    const QRect all = viewport()->rect();
    if (!m_layerValid || ratio != std::floor(ratio) || std::abs(dx) > all.width() || std::abs(dy) > all.height()) {
        layerStale();
        return;
    }
    // What stays in sight is moved; only what comes into sight is painted.
    m_layer.scroll(int(dx * ratio), int(dy * ratio), m_layer.rect());
    for (const QRect &bare : QRegion(all) - QRegion(all.translated(dx, dy))) paintLayer(bare);
    viewport()->update();
}

void Canvas::changeEvent(QEvent *event) {
    QAbstractScrollArea::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) arrange(m_fitted);
}

void Canvas::useTool(Tool &tool) {
    if (m_tool == &tool) return;
    m_tool->left();
    m_tool = &tool;
    m_tool->entered();
    viewport()->update();
    Q_EMIT toolChanged();
}

void Canvas::useHand() { useTool(*m_hand); }

// Events.

void Canvas::mousePressEvent(QMouseEvent *event) {
    if (event->button() == Qt::MiddleButton || (event->button() == Qt::LeftButton && m_spaceHeld)) {
        beginPan(event->pos());
        return;
    }
    m_tool->pressed(event);
}

void Canvas::mouseMoveEvent(QMouseEvent *event) {
    if (m_panFrom) {
        const QPoint by = event->pos() - *m_panFrom;
        horizontalScrollBar()->setValue(m_panScroll.x() - by.x());
        verticalScrollBar()->setValue(m_panScroll.y() - by.y());
        return;
    }
    m_tool->moved(event);
}

void Canvas::mouseReleaseEvent(QMouseEvent *event) {
    if (m_panFrom) {
        m_panFrom.reset();
        viewport()->setCursor(Qt::ArrowCursor);
        return;
    }
    m_tool->released(event);
}

void Canvas::mouseDoubleClickEvent(QMouseEvent *event) { mousePressEvent(event); }

void Canvas::wheelEvent(QWheelEvent *event) {
    const QPoint pixels = event->pixelDelta(), angle = event->angleDelta();
    if (event->modifiers() & Qt::ControlModifier) {
        zoomBy(std::pow(1.0016, angle.y()), event->position());
        return;
    }
    // Turning the wheel unrolls the cloth, which goes to the right; with Shift, or where there is no more to unroll,
    // it goes up and down.
    const int turned = pixels.isNull() ? angle.y() : pixels.y(), sideways = pixels.isNull() ? angle.x() : pixels.x();
    const bool vertical = (event->modifiers() & Qt::ShiftModifier) || horizontalScrollBar()->maximum() == 0;
    QScrollBar *bar = vertical ? verticalScrollBar() : horizontalScrollBar();
    bar->setValue(bar->value() - turned);
    horizontalScrollBar()->setValue(horizontalScrollBar()->value() - sideways);
}

void Canvas::keyPressEvent(QKeyEvent *event) {
    if (m_tool->keyPressed(event)) return;
    switch (event->key()) {
    case Qt::Key_Space:
        if (!event->isAutoRepeat()) {
            m_spaceHeld = true;
            viewport()->setCursor(Qt::OpenHandCursor);
        }
        return;
    case Qt::Key_Home:
        horizontalScrollBar()->setValue(0);
        return;
    case Qt::Key_End:
        horizontalScrollBar()->setValue(horizontalScrollBar()->maximum());
        return;
    case Qt::Key_PageUp:
        horizontalScrollBar()->triggerAction(QScrollBar::SliderPageStepSub);
        return;
    case Qt::Key_PageDown:
        horizontalScrollBar()->triggerAction(QScrollBar::SliderPageStepAdd);
        return;
    default:
        QAbstractScrollArea::keyPressEvent(event);
    }
}

void Canvas::keyReleaseEvent(QKeyEvent *event) {
    if (event->key() == Qt::Key_Space && !event->isAutoRepeat()) {
        m_spaceHeld = false;
        viewport()->setCursor(Qt::ArrowCursor);
        return;
    }
    if (!m_tool->keyReleased(event)) QAbstractScrollArea::keyReleaseEvent(event);
}

void Canvas::focusInEvent(QFocusEvent *event) {
    QAbstractScrollArea::focusInEvent(event);
    viewport()->update();
}

void Canvas::focusOutEvent(QFocusEvent *event) {
    m_spaceHeld = false;
    if (event->reason() != Qt::PopupFocusReason) m_tool->left();
    QAbstractScrollArea::focusOutEvent(event);
    viewport()->update();
}

bool Canvas::focusNextPrevChild(bool next) {
    if (hasFocus() && m_tool->tabbed(next)) return true;
    if (hasFocus()) m_document.select(std::nullopt);
    return QAbstractScrollArea::focusNextPrevChild(next);
}

bool Canvas::event(QEvent *event) {
    // A tool that writes on the cloth has its own use for the key that puts panels aside, and for others that it names.
    if (event->type() == QEvent::ShortcutOverride && m_tool != m_hand) {
        auto *key = static_cast<QKeyEvent *>(event);
        if (key->key() == Qt::Key_Delete || m_tool->wants(key)) {
            event->accept();
            return true;
        }
    }
    return QAbstractScrollArea::event(event);
}

bool Canvas::viewportEvent(QEvent *event) {
    if (event->type() != QEvent::ToolTip) return QAbstractScrollArea::viewportEvent(event);
    auto *help = static_cast<QHelpEvent *>(event);
    const int cut = cutAt(help->pos());
    if (cut >= 0 && m_held.empty())
        QToolTip::showText(help->globalPos(), describe(cut), viewport(), cutRect(cut).toRect());
    else
        QToolTip::hideText();
    return true;
}

QString Canvas::describe(int cut) const {
    const Job &job = m_document.job();
    const Layout &layout = m_document.layout();
    const Cut &own = layout.cuts[std::size_t(cut)];
    const PanelPicture picture = pictureOf(job, layout, own);
    QStringList parts;
    parts << (picture.name.isEmpty() ? picture.mark : tr("%1, %2").arg(picture.mark, picture.name));
    parts << tr("cut size %1").arg(picture.size);
    parts << tr("%1 from the left selvage, %2 up the roll")
                 .arg(shownLengthWithUnit(own.x, job.unit), shownLengthWithUnit(own.y, job.unit));
    if (own.mirrored) parts << tr("mirror image");
    if (own.state == CutState::Locked) parts << tr("locked in place");
    if (own.state == CutState::Cut) parts << tr("already cut");
    const QString reason = m_standing.firstReason(cut);
    if (!reason.isEmpty()) parts << reason;
    return parts.join(u"\n"_s);
}

} // namespace boltwright::ui
