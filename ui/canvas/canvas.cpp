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
    : QAbstractScrollArea(parent), m_document(document), m_standing(standing), m_tool(new HandTool(*this)) {
    setFrameShape(QFrame::NoFrame);
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
        if (!m_held) layerStale();
        viewport()->update();
    });
    installCanvasAccessibility();
    rebuild();
}

Canvas::~Canvas() = default;

// What is shown.

void Canvas::follow(Changes changes) {
    if (changes & Change::NewJob) m_fitted = true;
    const bool fitting = m_fitted && (changes & (Change::NewJob | Change::Cloths));
    const auto &preview = m_document.preview();
    if (changes == Changes(Change::Preview) && m_held && preview && preview->cut >= 0) {
        m_table.takeCut(m_document.job(), preview->layout, preview->cut);
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

void Canvas::hold(std::optional<int> cut) {
    m_held = cut;
    layerStale();
}

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
void Canvas::scrollContentsBy(int, int) { layerStale(); }

void Canvas::changeEvent(QEvent *event) {
    QAbstractScrollArea::changeEvent(event);
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) arrange(m_fitted);
}

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
    case Qt::Key_Left:
    case Qt::Key_Right:
    case Qt::Key_Up:
    case Qt::Key_Down:
        nudge(event->key(), event->modifiers() & Qt::ShiftModifier);
        return;
    case Qt::Key_Escape:
        m_document.select(std::nullopt);
        return;
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

void Canvas::nudge(int key, bool toNextPlace) {
    Q_EMIT takingHold();
    const int cut = m_document.selectedCut();
    if (cut < 0) {
        // Nothing in hand: the arrows move the view.
        QScrollBar *bar = key == Qt::Key_Left || key == Qt::Key_Right ? horizontalScrollBar() : verticalScrollBar();
        bar->triggerAction(key == Qt::Key_Left || key == Qt::Key_Up ? QScrollBar::SliderSingleStepSub
                                                                    : QScrollBar::SliderSingleStepAdd);
        return;
    }
    const Job &job = m_document.job();
    Layout layout = m_document.laidLayout();
    const Cut own = layout.cuts[std::size_t(cut)];
    if (own.state != CutState::Planned) {
        showNote(own.state == CutState::Locked ? tr("locked in place: unlock it to move it")
                                               : tr("already cut: it stays where it was"));
        return;
    }
    const Heading heading = key == Qt::Key_Left    ? Heading::DownTheRoll
                            : key == Qt::Key_Right ? Heading::UpTheRoll
                            : key == Qt::Key_Up    ? Heading::TowardsLeft
                                                   : Heading::TowardsRight;
    const auto corner = toNextPlace ? nextPlace(job, layout, cut, heading) : std::optional(oneNudge(job, own, heading));
    if (!corner) {
        showNote(tr("no further place that way"));
        return;
    }
    const QString mark = fromCore(job.panel(own.panel)->mark);
    const QString key1 = u"nudge %1 %2 %3"_s.arg(mark).arg(own.copy).arg(own.piece);
    m_document.changeLayout(withCutMoved(job, std::move(layout), cut, boltwright::sheetOf(job, own), *corner),
                            tr("Move %1").arg(mark), key1);
    showSelection();
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
    // From panel to panel, and beyond the last on to the next widget, so that nobody is caught here.
    const auto &cuts = m_document.layout().cuts;
    const int now = m_document.selectedCut();
    const int to = now < 0 ? (next ? 0 : int(cuts.size()) - 1) : now + (next ? 1 : -1);
    if (!hasFocus() || to < 0 || to >= int(cuts.size())) {
        if (hasFocus()) m_document.select(std::nullopt);
        return QAbstractScrollArea::focusNextPrevChild(next);
    }
    m_document.select(nameOf(cuts[std::size_t(to)]));
    showSelection();
    return true;
}

bool Canvas::viewportEvent(QEvent *event) {
    if (event->type() != QEvent::ToolTip) return QAbstractScrollArea::viewportEvent(event);
    auto *help = static_cast<QHelpEvent *>(event);
    const int cut = cutAt(help->pos());
    if (cut >= 0 && !m_held)
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

// Painting.

void Canvas::paintEvent(QPaintEvent *) {
    if (!m_layerValid) paintLayer();
    QPainter painter(viewport());
    painter.drawPixmap(0, 0, m_layer);
    painter.setRenderHint(QPainter::Antialiasing);
    paintHand(painter);
    paintTapes(painter);
    paintFlags(painter);
    paintReasons(painter);
    m_tray.paint(painter, m_trayWelcoming, m_document.selectedPanel(), coloursOf(palette()), SlipFonts(font()));
    m_tool->paintOver(painter);
    paintNote(painter);
    if (hasFocus() && m_document.selectedCut() < 0) {
        QPen pen(coloursOf(palette()).accent, 2);
        painter.setPen(pen);
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(viewport()->rect().adjusted(1, 1, -1, -1));
    }
}

void Canvas::paintLayer() {
    const double ratio = devicePixelRatioF();
    const QSize size = viewport()->size() * ratio;
    if (m_layer.size() != size) m_layer = QPixmap(size);
    m_layer.setDevicePixelRatio(ratio);
    const Colours colours = coloursOf(palette());
    const SlipFonts fonts(font());
    m_layer.fill(colours.table);
    QPainter painter(&m_layer);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF seen(viewport()->rect());
    const bool calm = !m_table.panels().isEmpty();
    for (int i = 0; i < m_table.sheets().size(); ++i)
        drawSheet(painter, m_table.sheets()[i].picture, toViewport(i), seen, calm, colours);
    paintOffcuts(painter);
    const int selected = m_document.selectedCut();
    const auto paintPanel = [&](int i) {
        const PanelOnTable &panel = m_table.panels()[i];
        if (panel.sheet < 0 || (m_held && *m_held == i) || !cutRect(i).adjusted(-9, -9, 9, 9).intersects(seen)) return;
        PanelLook look;
        look.selected = i == selected;
        look.broken = m_standing.isBroken(i);
        drawPanel(painter, panel.picture, toViewport(panel.sheet), look, colours, fonts);
    };
    for (int i = 0; i < m_table.panels().size(); ++i)
        if (i != selected) paintPanel(i);
    if (selected >= 0 && selected < m_table.panels().size()) paintPanel(selected);
    m_layerValid = true;
}

void Canvas::paintOffcuts(QPainter &painter) {
    const Colours colours = coloursOf(palette());
    const SlipFonts fonts(font());
    for (const auto &[sheet, box] : m_offcuts) {
        if (sheet >= m_table.sheets().size()) continue;
        const QRectF rect = toViewport(sheet).mapRect(box);
        QColor tint = colours.good;
        tint.setAlpha(colours.dark ? 70 : 42);
        painter.setPen(Qt::NoPen);
        painter.setBrush(tint);
        painter.drawRect(rect);
        QPen edge(colours.good, 1.2, Qt::DashLine);
        painter.setPen(edge);
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(rect);
        const Unit unit = m_document.job().unit;
        const auto length = [](double mm) { return Length::ticks(qRound64(mm * 320)); };
        const QString text = tr("offcut %1").arg(shownSize(length(box.height()), length(box.width()), unit));
        const QFontMetricsF metrics(fonts.smallStrong);
        const double wide = metrics.horizontalAdvance(text) + 16;
        if (wide > rect.width() - 6 || metrics.height() + 8 > rect.height()) continue;
        QRectF slip(0, 0, wide, metrics.height() + 6);
        slip.moveCenter(rect.center());
        QColor paper = colours.paper;
        paper.setAlpha(200);
        painter.setPen(Qt::NoPen);
        painter.setBrush(paper);
        painter.drawRoundedRect(slip, 6, 6);
        painter.setFont(fonts.smallStrong);
        painter.setPen(colours.good);
        painter.drawText(slip, Qt::AlignCenter, text);
    }
}

double Canvas::tapeTop(int sheet) const {
    const SlipFonts fonts(font());
    const double height = QFontMetricsF(fonts.small).height() + 14;
    const QRectF cloth = m_table.sheetRect(sheet).translated(-scrolled());
    // Scrolled so that the tape would leave the window, it stays at the upper edge as long as its cloth is in sight.
    return std::min(std::max(cloth.top() - height - 12, flagHeight(fonts) + 14),
                    std::max(cloth.top() - height - 12, cloth.bottom() - height));
}

void Canvas::paintTapes(QPainter &painter) {
    const Colours colours = coloursOf(palette());
    const SlipFonts fonts(font());
    const double height = QFontMetricsF(fonts.small).height() + 14;
    const QRectF seen = clothRoom();
    for (int i = 0; i < m_table.sheets().size(); ++i) {
        const QRectF cloth = m_table.sheetRect(i).translated(-scrolled());
        if (!cloth.adjusted(-60, -120, 60, 40).intersects(seen)) continue;
        TapePicture tape;
        tape.zero = toViewport(i).map(QPointF(0, 0)).x();
        const double left = std::max(cloth.left(), seen.left() - 6), right = std::min(cloth.right(), seen.right() + 6);
        tape.rect = QRectF(left, tapeTop(i), std::max(0.0, right - left), height);
        tape.pixelsPerMillimetre = m_table.scale();
        tape.unit = m_document.job().unit;
        drawTape(painter, tape, colours, fonts);
        painter.setFont(fonts.small);
        painter.setPen(colours.quiet);
        const SheetOnTable &sheet = m_table.sheets()[i];
        const double line = QFontMetricsF(fonts.small).height();
        if (m_table.sheets().size() > 1) {
            painter.setFont(fonts.smallStrong);
            painter.setPen(colours.ink);
            const double wide = QFontMetricsF(fonts.smallStrong).horizontalAdvance(sheet.label);
            const double nameTop = sheet.bolt ? cloth.bottom() + 6 : tape.rect.top() - line - 5;
            painter.drawText(QRectF(std::max(left, seen.left() + 8), nameTop, wide + 4, line), Qt::AlignLeft,
                             sheet.label);
        }
        if (sheet.bolt && cloth.left() > line) {
            painter.setFont(fonts.small);
            painter.setPen(colours.quiet);
            painter.save();
            painter.translate(cloth.left() - 8, cloth.top());
            painter.rotate(-90);
            painter.drawText(QRectF(-140, -line, 140, line), Qt::AlignRight, tr("left selvage"));
            painter.restore();
            const QString wide = tr("%1 wide").arg(
                shownLengthWithUnit(Length::ticks(qRound64(sheet.width * 320)), m_document.job().unit));
            if (cloth.height() > 2 * QFontMetricsF(fonts.small).horizontalAdvance(wide)) {
                painter.save();
                painter.translate(cloth.left() - 8, cloth.bottom());
                painter.rotate(-90);
                painter.drawText(QRectF(0, -line, 140, line), Qt::AlignLeft, wide);
                painter.restore();
            }
        }
    }
}

void Canvas::paintFlags(QPainter &painter) {
    const Colours colours = coloursOf(palette());
    const SlipFonts fonts(font());
    const Unit unit = m_document.job().unit;
    const QRectF seen = clothRoom();
    for (int i = 0; i < m_table.sheets().size(); ++i) {
        const SheetOnTable &sheet = m_table.sheets()[i];
        const ClothFigures *figures = m_standing.figuresOfCloth(sheet.sheet.cloth);
        if (!sheet.bolt || !figures || figures->length <= Length{}) continue;
        const QRectF cloth = m_table.sheetRect(i).translated(-scrolled());
        FlagPicture flag;
        flag.x = toViewport(i).map(onTable(ClothPoint{Length{}, figures->length})).x();
        flag.top = tapeTop(i) - flagHeight(fonts) - 10;
        flag.bottom = cloth.bottom() + 10;
        if (flag.bottom < seen.top() || flag.top > seen.bottom()) continue;
        flag.first = tr("%1 · buy %2").arg(shownAlongRoll(figures->length, unit), shownPurchase(figures->length, unit));
        flag.second = tr("waste %1").arg(shownPercent(figures->waste()));
        if (figures->bound)
            flag.second = *figures->bound == figures->length
                              ? tr("%1 · no layout takes less").arg(flag.second)
                              : tr("%1 · least it can take %2").arg(flag.second, shownAlongRoll(*figures->bound, unit));
        drawFlag(painter, flag, seen, colours, fonts);
    }
}

void Canvas::paintHand(QPainter &painter) {
    const auto &preview = m_document.preview();
    if (!preview || preview->cut < 0 || preview->cut >= m_table.panels().size()) return;
    const PanelOnTable &panel = m_table.panels()[preview->cut];
    if (panel.sheet < 0) return;
    const Colours colours = coloursOf(palette());
    const SlipFonts fonts(font());
    const QTransform toScreen = toViewport(panel.sheet);
    const QRectF cloth = m_table.sheetRect(panel.sheet).translated(-scrolled());
    PanelLook look;
    look.selected = true;
    look.held = true;
    look.broken = !preview->settled.right;
    drawPanel(painter, panel.picture, toScreen, look, colours, fonts);
    for (const Guide &guide : preview->settled.guides) {
        painter.setPen(QPen(colours.dark ? lightColours().accent : colours.accent, 1.8, Qt::DotLine));
        if (guide.across) {
            const double x = toScreen.map(onTable(ClothPoint{Length{}, guide.at})).x();
            painter.drawLine(QPointF(x, cloth.top()), QPointF(x, cloth.bottom()));
        } else {
            const double y = toScreen.map(onTable(ClothPoint{guide.at, Length{}})).y();
            painter.drawLine(QPointF(cloth.left(), y), QPointF(std::min(cloth.right(), clothRoom().right()), y));
        }
    }
}

void Canvas::paintReasons(QPainter &painter) {
    const Colours colours = coloursOf(palette());
    const SlipFonts fonts(font());
    const QRectF room = clothRoom();
    const auto &preview = m_document.preview();
    const int cut = preview ? preview->cut : m_document.selectedCut();
    if (cut < 0 || cut >= m_table.panels().size()) return;
    const QRectF rect = cutRect(cut);
    QPointF at(rect.left(), rect.bottom() + 8);
    const QString reason = m_standing.firstReason(cut);
    if (!reason.isEmpty()) {
        const QRectF took = drawTag(painter, reason, at, room, colours.broken, colours.onBroken, fonts.small);
        at.setY(took.bottom() + 4);
    }
    if (!preview) return;
    QStringList held;
    for (const Guide &guide : preview->settled.guides) held << withFractions(fromCore(guide.text));
    held.removeDuplicates();
    for (const QString &text : held) {
        const QRectF took = drawTag(painter, text, at, room, colours.accent, colours.onAccent, fonts.small);
        at.setX(took.right() + 6);
        at.setY(took.top());
    }
}

void Canvas::paintNote(QPainter &painter) {
    if (m_note.isEmpty()) return;
    const SlipFonts fonts(font());
    const Colours colours = coloursOf(palette());
    const QRectF room = clothRoom();
    const double wide = QFontMetricsF(fonts.small).horizontalAdvance(m_note) + 22;
    drawTag(painter, m_note, QPointF(room.center().x() - wide / 2, room.bottom() - 48), room, colours.ink,
            colours.paper, fonts.small);
}

} // namespace boltwright::ui
