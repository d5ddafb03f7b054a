#include "ui/canvas/tray.h"

#include "ui/text/words.h"

#include <QFontMetricsF>
#include <QObject>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

/// A copy as it would lie for itself at the corner of the cloth.
PanelPicture loosePicture(const Job &job, const Layout &layout, const CopyOf &copy) {
    Cut cut;
    cut.panel = copy.panel;
    cut.copy = copy.copy;
    const Panel *panel = job.panel(copy.panel);
    cut.mirrored = panel && panel->mirror && copy.copy % 2 == 0;
    return pictureOf(job, layout, cut);
}

constexpr double pad = 10;

} // namespace

void Tray::take(const Job &job, const Layout &layout) {
    m_items.clear();
    for (const CopyOf &copy : copiesPutAside(job, layout)) {
        if (!m_items.isEmpty() && m_items.last().next.panel == copy.panel) {
            ++m_items.last().count;
            continue;
        }
        m_items.append({copy, 1, loosePicture(job, layout, copy), {}});
    }
}

double Tray::height(const SlipFonts &fonts) const {
    return m_items.isEmpty() ? 0 : QFontMetricsF(fonts.small).height() * 2 + 52;
}

void Tray::arrange(const QRectF &strip, const SlipFonts &fonts) {
    m_strip = strip;
    m_hidden = 0;
    const QFontMetricsF metrics(fonts.small);
    double x = strip.left() + pad + metrics.horizontalAdvance(QObject::tr("Put aside")) + 22;
    for (Item &item : m_items) {
        const double width = std::max(76.0, metrics.horizontalAdvance(item.picture.mark + u"  × 88"_s) + 24);
        item.rect = QRectF(x, strip.top() + 8, width, strip.height() - 16);
        if (item.rect.right() > strip.right() - 70) {
            item.rect = QRectF();
            ++m_hidden;
        }
        x += width + 8;
    }
}

std::optional<CopyOf> Tray::copyAt(QPointF viewport) const {
    for (const Item &item : m_items)
        if (item.rect.contains(viewport)) return item.next;
    return std::nullopt;
}

void Tray::paint(QPainter &painter, bool welcoming, const std::string &selected, const Colours &colours,
                 const SlipFonts &fonts) const {
    if (m_strip.isEmpty()) return;
    painter.setPen(Qt::NoPen);
    painter.setBrush(colours.paper);
    painter.drawRect(m_strip);
    painter.setPen(QPen(welcoming ? colours.accent : colours.hairline, welcoming ? 3 : 1));
    painter.drawLine(m_strip.topLeft(), m_strip.topRight());
    painter.setFont(fonts.smallStrong);
    painter.setPen(colours.ink);
    const QRectF words = m_strip.adjusted(pad + 4, 0, -pad, 0);
    if (m_items.isEmpty()) {
        painter.drawText(words, Qt::AlignVCenter | Qt::AlignLeft, QObject::tr("Let go here to put it aside"));
        return;
    }
    painter.drawText(words, Qt::AlignVCenter | Qt::AlignLeft, QObject::tr("Put aside"));
    for (const Item &item : m_items) {
        if (item.rect.isEmpty()) continue;
        const bool isSelected = item.next.panel == selected;
        painter.setPen(QPen(isSelected ? colours.accent : colours.hairline, isSelected ? 2 : 1));
        painter.setBrush(colours.table);
        painter.drawRoundedRect(item.rect, 6, 6);
        const double line = QFontMetricsF(fonts.small).height();
        const QRectF room = item.rect.adjusted(8, 7, -8, -line - 8), box = item.picture.cut.boundingRect();
        if (box.isEmpty()) continue;
        const double scale = std::min(room.width() / box.width(), room.height() / box.height());
        const QPointF zero = room.center() - box.center() * scale;
        PanelLook look;
        look.slip = false;
        PanelPicture small = item.picture;
        small.measured.clear();
        painter.setPen(QPen(colours.ink, 1.4));
        painter.setBrush(colours.paper);
        painter.drawPolygon(QTransform(scale, 0, 0, scale, zero.x(), zero.y()).map(small.cut));
        painter.setFont(fonts.smallStrong);
        painter.setPen(colours.ink);
        const QRectF label(item.rect.left() + 6, item.rect.bottom() - line - 5, item.rect.width() - 12, line);
        const QString text =
            item.count > 1 ? QObject::tr("%1 × %2").arg(item.picture.mark).arg(item.count) : item.picture.mark;
        painter.drawText(label, Qt::AlignCenter, text);
    }
    if (m_hidden) {
        painter.setPen(colours.quiet);
        painter.setFont(fonts.small);
        painter.drawText(words, Qt::AlignVCenter | Qt::AlignRight, QObject::tr("and %n more", nullptr, m_hidden));
    }
}

} // namespace boltwright::ui
