#include "ui/window/look.h"

#include "ui/drawing/colours.h"

#include <QApplication>
#include <QFontInfo>
#include <QPainter>
#include <QPixmapCache>
#include <QPlainTextEdit>
#include <QProxyStyle>
#include <QStyleFactory>
#include <QStyleOption>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

/// The system's own font and palette, from before this program changed them.
struct SystemLook {
    QFont font;
    bool dark;
};

const SystemLook &systemLook() {
    static const SystemLook look{QApplication::font(),
                                 QApplication::palette().color(QPalette::Window).lightness() < 128};
    return look;
}

QString styleSheetFor(const Colours &c, int px) {
    const QString sheet = uR"(
        QLabel#paneTitle { font-weight: bold; font-size: %9px; }
        QLabel#bigTitle { font-weight: bold; font-size: %10px; }
        QLabel#quiet { color: %3; font-size: %11px; }
        QLabel#jobTitle { font-weight: bold; font-size: %9px; }
        QWidget#header, QWidget#leftPane, QWidget#rightPane, QWidget#keptPane, QWidget#ledge { background: %1; }
        QWidget#header { border-bottom: 1px solid %4; }
        QWidget#leftPane { border-right: 1px solid %4; }
        QWidget#ledge { border-top: 1px solid %4; }
        QWidget#keptPane { border-top: 1px solid %4; }
        QWidget#rightPane { border-left: 1px solid %4; }
        QWidget#startPage { background: %7; }
        QFrame#sheet { background: %1; border: 1px solid %4; border-radius: 8px; }
        QFrame#overSheet { background: %1; border: none; }
        QFrame#notice { background: %1; border-bottom: 1px solid %4; border-left: 4px solid %6; }
        QFrame#outlineBar { background: %1; border-bottom: 1px solid %4; border-left: 4px solid %5; }
        QListView { background: transparent; outline: 0; }
        QPushButton { background: %1; color: %5; border: 1px solid %5; border-radius: 6px; padding: 5px 14px; }
        QPushButton:hover { background: %8; }
        QPushButton:pressed { background: %7; }
        QPushButton:focus { border: 2px solid %5; padding: 4px 13px; }
        QPushButton:disabled { color: %4; border-color: %4; }
        QPushButton#mainButton { background: %5; color: %12; font-weight: bold; }
        QPushButton#mainButton:focus { border: 2px solid %2; }
        QPushButton#mainButton:disabled { background: %4; color: %1; border-color: %4; }
        QPushButton#linkButton { border: 1px solid transparent; padding: 3px 6px; text-align: left; }
        QPushButton#linkButton:hover { text-decoration: underline; background: transparent; }
        QPushButton#linkButton:focus { border: 1px solid %5; }
        QToolButton { border: 1px solid transparent; border-radius: 6px; padding: 4px; qproperty-iconSize: %13px %13px; }
        QToolButton:hover { background: %8; }
        QToolButton:checked { background: %8; border: 1px solid %5; }
        QToolButton:focus { border: 2px solid %5; padding: 3px; }
        QProgressBar { border: 1px solid %4; border-radius: 4px; background: %1; height: 8px; }
        QProgressBar::chunk { background: %5; border-radius: 3px; }
        QToolTip { background: %1; color: %2; border: 1px solid %4; padding: 4px; }
        QHeaderView::section { background: %8; color: %2; border: 0; border-right: 1px solid %4; border-bottom: 1px solid %4; padding: 4px 6px; }
        QTableView { gridline-color: %4; border: 1px solid %4; }
        QTextBrowser { border: 2px solid transparent; }
        QTextBrowser:focus { border: 2px solid %5; }
        QLabel#told { background: %1; border-left: 3px solid %5; padding: 4px 8px; }
        QLabel#refusal { color: %6; font-weight: bold; }
        QMenuBar { background: %1; }
        QSplitter::handle { background: %4; }
    )"_s;
    return sheet
        .arg(c.paper.name(), c.ink.name(), c.quiet.name(), c.hairline.name(), c.accent.name(), c.broken.name(),
             c.table.name(), c.dark ? c.paper.lighter(125).name() : u"#F1ECE1"_s)
        .arg(qRound(px * 1.15))
        .arg(qRound(px * 1.6))
        .arg(std::max(11, qRound(px * 0.88)))
        .arg(c.onAccent.name())
        .arg(qRound(px * 1.3));
}

/// The plain style, with edges of check boxes and fields that stand out enough: its own are the ground made darker,
/// which in the dark look is hardly anything. With the keyboard the style's own edge, which is stronger, stays.
class EdgedStyle : public QProxyStyle {
public:
    EdgedStyle() : QProxyStyle(u"Fusion"_s) {}

    void drawPrimitive(PrimitiveElement element, const QStyleOption *option, QPainter *painter,
                       const QWidget *widget) const override {
        QProxyStyle::drawPrimitive(element, option, painter, widget);
        const bool box = element == PE_IndicatorCheckBox || element == PE_IndicatorItemViewItemCheck;
        if (box || element == PE_FrameLineEdit) edge(*option, *painter, box ? 0 : 2);
        if (element == PE_IndicatorRadioButton) edge(*option, *painter, option->rect.height() / 2.0);
    }

    void drawComplexControl(ComplexControl control, const QStyleOptionComplex *option, QPainter *painter,
                            const QWidget *widget) const override {
        QProxyStyle::drawComplexControl(control, option, painter, widget);
        const auto *spin = qstyleoption_cast<const QStyleOptionSpinBox *>(option);
        const auto *combo = qstyleoption_cast<const QStyleOptionComboBox *>(option);
        if ((control == CC_SpinBox && spin && spin->frame) || (control == CC_ComboBox && combo && combo->frame))
            edge(*option, *painter, 2);
    }

    void drawControl(ControlElement element, const QStyleOption *option, QPainter *painter,
                     const QWidget *widget) const override {
        QProxyStyle::drawControl(element, option, painter, widget);
        if (element == CE_ShapedFrame && qobject_cast<const QPlainTextEdit *>(widget)) edge(*option, *painter, 2);
    }

private:
    static void edge(const QStyleOption &option, QPainter &painter, double radius) {
        if (!(option.state & State_Enabled) || (option.state & State_HasFocus)) return;
        painter.save();
        painter.setRenderHint(QPainter::Antialiasing, radius > 0);
        painter.setPen(QPen(option.palette.color(QPalette::Dark), 1));
        painter.setBrush(Qt::NoBrush);
        const QRectF rect = QRectF(option.rect).adjusted(0.5, 0.5, -0.5, -0.5);
        painter.drawRoundedRect(rect, radius, radius);
        painter.restore();
    }
};

/// Kilobytes of pictures kept ready (slips, motifs): the slips of some hundred panels, drawn twice as fine.
constexpr int picturesKept = 32 * 1024;

} // namespace

void applyLook(QApplication &application, Preferences::Look look, int textPercent) {
    const SystemLook &system = systemLook();
    const bool dark = look == Preferences::Look::Dark || (look == Preferences::Look::AsSystem && system.dark);
    const Colours colours = dark ? darkColours() : lightColours();
    QFont font = system.font;
    const int px = std::max(13, QFontInfo(system.font).pixelSize()) * textPercent / 100;
    font.setPixelSize(px);
    QPixmapCache::setCacheLimit(picturesKept);
    application.setStyle(new EdgedStyle);
    application.setPalette(paletteOf(colours));
    application.setFont(font);
    application.setStyleSheet(styleSheetFor(colours, px));
}

} // namespace boltwright::ui
