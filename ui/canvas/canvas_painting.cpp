#include "core/edit/markings.h"
#include "core/figures/figures.h"
#include "core/measure/length_text.h"
#include "core/paper/words.h"
#include "core/rules/rules.h"
#include "ui/canvas/canvas.h"
#include "ui/canvas/flag_drawing.h"
#include "ui/canvas/markings_drawing.h"
#include "ui/drawing/table_frame.h"
#include "ui/drawing/tape_drawing.h"
#include "ui/text/words.h"

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

void Canvas::paintEvent(QPaintEvent *) {
    if (!m_layerValid) paintWholeLayer();
    QPainter painter(viewport());
    painter.drawPixmap(0, 0, m_layer);
    painter.setRenderHint(QPainter::Antialiasing);
    paintMarkings(painter, false); // notes keep within the window, so they do not move with the layer
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

void Canvas::paintWholeLayer() {
    const double ratio = devicePixelRatioF();
    const QSize size = viewport()->size() * ratio;
    if (m_layer.size() != size) m_layer = QPixmap(size);
    m_layer.setDevicePixelRatio(ratio);
    paintLayer(viewport()->rect());
    m_layerValid = true;
}

void Canvas::paintLayer(const QRect &part) {
    const Colours colours = coloursOf(palette());
    const SlipFonts fonts(font());
    QPainter painter(&m_layer);
    painter.setClipRect(part);
    painter.fillRect(part, colours.table);
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF seen(part);
    const bool calm = !m_table.panels().isEmpty();
    for (int i = 0; i < m_table.sheets().size(); ++i)
        drawSheet(painter, m_table.sheets()[i].picture, toViewport(i), seen, calm, colours);
    paintOffcuts(painter);
    paintStrips(painter);
    paintMarkings(painter, true);
    const std::vector<int> selected = m_document.selectedCuts();
    const auto isSelected = [&](int i) { return std::find(selected.begin(), selected.end(), i) != selected.end(); };
    const auto isHeld = [&](int i) { return std::find(m_held.begin(), m_held.end(), i) != m_held.end(); };
    const auto paintPanel = [&](int i) {
        const PanelOnTable &panel = m_table.panels()[i];
        if (panel.sheet < 0 || isHeld(i) || !cutRect(i).adjusted(-9, -9, 9, 9).intersects(seen)) return;
        PanelLook look;
        look.selected = isSelected(i);
        look.broken = m_standing.isBrokenAtRest(i);
        drawPanel(painter, panel.picture, toViewport(panel.sheet), look, colours, fonts);
    };
    for (int i = 0; i < m_table.panels().size(); ++i)
        if (!isSelected(i)) paintPanel(i);
    for (auto i = selected.rbegin(); i != selected.rend(); ++i)
        if (*i < m_table.panels().size()) paintPanel(*i);
}

void Canvas::showStrips(const QList<StripShown> &strips) {
    m_strips = strips;
    layerStale();
}

void Canvas::paintStrips(QPainter &painter) {
    // While something moves they belong to a layout that is no more.
    if (!m_held.empty() || m_document.preview()) return;
    const Colours colours = coloursOf(palette());
    QColor tint = colours.accent;
    tint.setAlpha(colours.dark ? 90 : 60);
    painter.setPen(QPen(colours.accent, 1));
    painter.setBrush(tint);
    for (const StripShown &strip : m_strips) {
        const int sheet = m_table.sheetOf(SheetOf{strip.cloth, strip.on});
        if (sheet >= 0) painter.drawPolygon(toViewport(sheet).map(strip.ring));
    }
}

void Canvas::paintOffcuts(QPainter &painter) {
    // Strips say more about what is left than the largest piece of it.
    if (!m_strips.isEmpty() && m_held.empty() && !m_document.preview()) return;

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
    const bool whole = everythingLies(m_document.job(), m_document.layout());
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
        const Cloth &stuff = *m_document.job().cloth(sheet.sheet.cloth);
        flag.first = shownAlongRoll(figures->length, unit) + u" · "_s +
                     withFractions(fromCore(onHandWords(stuff, figures->length, unit, whole)));
        flag.second = tr("waste %1").arg(shownPercent(figures->waste()));
        if (figures->bound)
            flag.second = *figures->bound == figures->length
                              ? tr("%1 · no layout takes less").arg(flag.second)
                              : tr("%1 · least it can take %2").arg(flag.second, shownAlongRoll(*figures->bound, unit));
        drawFlag(painter, flag, seen, colours, fonts);
    }
}

void Canvas::paintMarkings(QPainter &painter, bool lines) {
    const Colours colours = coloursOf(palette());
    const SlipFonts fonts(font());
    for (int i = 0; i < m_table.sheets().size(); ++i) {
        const Markings &markings = markingsOf(m_document.job(), m_table.sheets()[i].sheet);
        const QTransform toScreen = toViewport(i);
        const QRectF cloth = m_table.sheetRect(i).translated(-scrolled());
        if (lines)
            for (const ChalkLine &line : markings.lines)
                drawChalkLine(painter, chalkOnScreen(line, toScreen, cloth), colours);
        else
            for (const PinnedNote &note : markings.notes)
                drawPin(painter, toScreen.map(onTable(note.at)), fromCore(note.text), clothRoom(), false, colours,
                        fonts);
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
    const auto paintHeld = [&](int cut) {
        if (cut < 0 || cut >= m_table.panels().size() || m_table.panels()[cut].sheet < 0) return;
        PanelLook look;
        look.selected = true;
        look.held = true;
        look.broken = std::any_of(preview->settled.broken.begin(), preview->settled.broken.end(),
                                  [cut](const Breach &b) { return b.cut == cut; });
        drawPanel(painter, m_table.panels()[cut].picture, toViewport(m_table.panels()[cut].sheet), look, colours,
                  fonts);
    };
    for (int cut : preview->with) paintHeld(cut);
    paintHeld(preview->cut);
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
    QString reason = m_standing.firstReason(cut);
    if (preview && reason.isEmpty())
        for (int other : preview->with)
            if (reason.isEmpty()) reason = m_standing.firstReason(other);
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
