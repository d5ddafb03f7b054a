#include "ui/canvas/table.h"

#include "core/figures/figures.h"
#include "ui/drawing/table_frame.h"
#include "ui/text/words.h"

#include <QObject>

#include <algorithm>

namespace boltwright::ui {

namespace {

QString labelOf(const Cloth &cloth, const Remnant *remnant) {
    QString label = fromCore(cloth.name.empty() ? cloth.id : cloth.name);
    if (!remnant) return label;
    label += QObject::tr(" · remnant %1").arg(fromCore(remnant->id));
    if (!remnant->lot.empty()) label += QObject::tr(", lot %1").arg(fromCore(remnant->lot));
    return label;
}

/// As far along the roll as there are cuts, and a little more: what "see all" shows of a long bolt.
double wantedOf(const SheetOnTable &sheet, const std::vector<ClothFigures> &figures) {
    if (!sheet.bolt) return sheet.box.width();
    double used = 0;
    for (const ClothFigures &f : figures)
        if (f.cloth == sheet.sheet.cloth) used = f.length.toMillimetres();
    return std::min(sheet.box.width(), std::max(used + sheet.width * 0.25, sheet.width * 1.5));
}

/// A bolt without an end shows its cuts and half its width more, and never less than it is wide.
Length unrolledOf(const Cloth &cloth, const std::vector<ClothFigures> &figures) {
    Length used;
    for (const ClothFigures &f : figures)
        if (f.cloth == cloth.id) used = f.length;
    const Length half = Length::ticks(cloth.bolt->width.ticks() / 2);
    return std::max(used + half, cloth.bolt->width + half);
}

} // namespace

void Table::take(const Job &job, const Layout &layout) {
    m_sheets.clear();
    m_rows.clear();
    const auto figures = figuresOf(job, layout);
    for (int i = 0; i < int(job.cloths.size()); ++i) {
        const Cloth &cloth = job.cloths[std::size_t(i)];
        Row row{int(m_sheets.size()), 0};
        if (cloth.bolt) {
            SheetOnTable sheet{{cloth.id, {}},
                               labelOf(cloth, nullptr),
                               true,
                               cloth.bolt->width.toMillimetres(),
                               pictureOfBolt(cloth, i, unrolledOf(cloth, figures)),
                               {},
                               0,
                               {}};
            m_sheets.append(sheet);
        }
        for (const Remnant &remnant : cloth.remnants) {
            SheetOnTable sheet{{cloth.id, remnant.id},
                               labelOf(cloth, &remnant),
                               false,
                               0,
                               pictureOfRemnant(cloth, i, remnant),
                               {},
                               0,
                               {}};
            m_sheets.append(sheet);
        }
        row.count = int(m_sheets.size()) - row.first;
        if (row.count) m_rows.append(row);
    }
    for (SheetOnTable &sheet : m_sheets) {
        sheet.box = sheet.picture.outline.boundingRect();
        sheet.wanted = wantedOf(sheet, figures);
    }
    m_panels.clear();
    for (const Cut &cut : layout.cuts)
        m_panels.append({pictureOf(job, layout, cut), sheetOf(boltwright::sheetOf(job, cut))});
}

void Table::takeCut(const Job &job, const Layout &layout, int cut) {
    if (m_panels.size() != qsizetype(layout.cuts.size())) {
        take(job, layout);
        return;
    }
    const Cut &moved = layout.cuts[std::size_t(cut)];
    m_panels[cut] = {pictureOf(job, layout, moved), sheetOf(boltwright::sheetOf(job, moved))};
}

int Table::sheetOf(const SheetOf &sheet) const {
    for (int i = 0; i < m_sheets.size(); ++i)
        if (m_sheets[i].sheet == sheet) return i;
    return -1;
}

void Table::arrange(double pixelsPerMillimetre, const Spacing &spacing) {
    m_scale = pixelsPerMillimetre;
    double y = 0, right = 0;
    for (const Row &row : m_rows) {
        double x = spacing.left, height = 0;
        y += spacing.above;
        for (int i = row.first; i < row.first + row.count; ++i) {
            SheetOnTable &sheet = m_sheets[i];
            sheet.zero = QPointF(x, y) - sheet.box.topLeft() * m_scale;
            x += sheet.box.width() * m_scale + spacing.between;
            height = std::max(height, sheet.box.height() * m_scale);
        }
        right = std::max(right, x - spacing.between + spacing.right);
        y += height + spacing.below;
    }
    m_extent = QRectF(0, 0, right, y);
}

QSizeF Table::sizeAt(double scale, const Spacing &spacing) const {
    double width = 0, height = 0;
    for (const Row &row : m_rows) {
        double x = spacing.left + spacing.right - spacing.between, tallest = 0;
        for (int i = row.first; i < row.first + row.count; ++i) {
            x += m_sheets[i].wanted * scale + spacing.between;
            tallest = std::max(tallest, m_sheets[i].box.height() * scale);
        }
        width = std::max(width, x);
        height += spacing.above + tallest + spacing.below;
    }
    return {width, height};
}

double Table::fittingScale(QSizeF room, const Spacing &spacing) const {
    if (m_sheets.isEmpty()) return 0.3;
    double low = 0.01, high = 1.2;
    for (int i = 0; i < 40; ++i) { // size grows with scale but is no multiple of it
        const double middle = (low + high) / 2;
        const QSizeF size = sizeAt(middle, spacing);
        (size.width() <= room.width() && size.height() <= room.height() ? low : high) = middle;
    }
    return low;
}

QTransform Table::toContent(int sheet) const {
    const QPointF zero = m_sheets[sheet].zero;
    return QTransform(m_scale, 0, 0, m_scale, zero.x(), zero.y());
}

QRectF Table::sheetRect(int sheet) const { return toContent(sheet).mapRect(m_sheets[sheet].box); }

QRectF Table::panelRect(int panel) const {
    const PanelOnTable &p = m_panels[panel];
    return p.sheet < 0 ? QRectF() : toContent(p.sheet).mapRect(p.picture.cut.boundingRect());
}

int Table::sheetAt(QPointF content) const {
    for (int i = 0; i < m_sheets.size(); ++i)
        if (sheetRect(i).adjusted(-8, -8, 8, 8).contains(content)) return i;
    return -1;
}

int Table::panelAt(QPointF content) const {
    for (int i = int(m_panels.size()) - 1; i >= 0; --i) {
        const PanelOnTable &p = m_panels[i];
        if (p.sheet < 0) continue;
        const QPointF onSheet = toContent(p.sheet).inverted().map(content);
        if (p.picture.cut.containsPoint(onSheet, Qt::OddEvenFill)) return i;
    }
    return -1;
}

} // namespace boltwright::ui
