#include "ui/kept/layout_comparison.h"

#include "core/edit/layout_edit.h"
#include "core/figures/figures.h"
#include "core/rules/cut_shape.h"
#include "ui/drawing/colours.h"
#include "ui/drawing/table_frame.h"
#include "ui/text/words.h"

#include <QPainter>

#include <algorithm>
#include <map>
#include <set>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

std::vector<SheetOf> sheetsOf(const Job &job, const Layout &a, const Layout &b) {
    std::vector<SheetOf> sheets;
    for (const Layout *layout : {&a, &b})
        for (const Cut &cut : layout->cuts)
            if (job.panel(cut.panel))
                if (const SheetOf sheet = sheetOf(job, cut);
                    job.cloth(sheet.cloth) && std::find(sheets.begin(), sheets.end(), sheet) == sheets.end())
                    sheets.push_back(sheet);
    return sheets;
}

/// The copies that lie otherwise in the one than in the other, and how many copies there are in either.
struct Moved {
    std::set<CopyOf> copies;
    int all = 0;
};

std::map<CopyOf, std::vector<const Cut *>> byCopy(const Layout &layout) {
    std::map<CopyOf, std::vector<const Cut *>> cuts;
    for (const Cut &cut : layout.cuts) cuts[{cut.panel, cut.copy}].push_back(&cut);
    for (auto &[copy, list] : cuts)
        std::sort(list.begin(), list.end(), [](const Cut *a, const Cut *b) { return a->piece < b->piece; });
    return cuts;
}

Moved movedBetween(const Job &job, const Layout &first, const Layout &second) {
    Moved moved;
    const auto before = byCopy(first), after = byCopy(second);
    const auto alike = [&](const Cut *a, const Cut *b) {
        return sheetOf(job, *a) == sheetOf(job, *b) && a->turn == b->turn && a->mirrored == b->mirrored &&
               outlineOnCloth(job, first, *a) == outlineOnCloth(job, second, *b);
    };
    for (const Panel &panel : job.panels)
        for (int k = 1; k <= panel.count; ++k) {
            const auto a = before.find({panel.id, k}), b = after.find({panel.id, k});
            if (a == before.end() && b == after.end()) continue;
            ++moved.all;
            const bool both = a != before.end() && b != after.end();
            if (!both || !std::equal(a->second.begin(), a->second.end(), b->second.begin(), b->second.end(), alike))
                moved.copies.insert({panel.id, k});
        }
    return moved;
}

Length lengthOf(const Job &job, const Layout &layout) {
    for (const ClothFigures &f : figuresOf(job, layout))
        if (f.laid) return f.length;
    return {};
}

} // namespace

LayoutComparison::LayoutComparison(const Job &job, int first, int second, QWidget *parent) : QWidget(parent) {
    const Layout &a = job.layouts[std::size_t(first)], &b = job.layouts[std::size_t(second)];
    m_first = {nameOfLayout(job, first), wordsOf(job, a)};
    m_second = {nameOfLayout(job, second), wordsOf(job, b)};
    const Moved moved = movedBetween(job, a, b);
    for (const SheetOf &sheet : sheetsOf(job, a, b)) {
        const Cloth &cloth = *job.cloth(sheet.cloth);
        Sheet out;
        Length ends[2];
        for (const int which : {0, 1}) {
            const Layout &layout = which == 0 ? a : b;
            for (const Cut &cut : layout.cuts) {
                const Panel *panel = job.panel(cut.panel);
                if (!panel || !(sheetOf(job, cut) == sheet)) continue;
                ends[which] = std::max(ends[which], boxOnCloth(job, layout, cut).high.y);
                if (which == 1 && !moved.copies.contains({cut.panel, cut.copy})) continue; // as in the first
                (which == 0 ? out.first : out.second)
                    .append({onTable(outlineOnCloth(job, layout, cut)), fromCore(panel->mark)});
            }
        }
        const int number = int(&cloth - job.cloths.data());
        if (cloth.bolt) {
            Cloth used = cloth; // as much as the longer of the two takes
            used.bolt->length = std::max(ends[0], ends[1]);
            out.cloth = pictureOfBolt(used, number, *used.bolt->length);
            out.firstEnd = ends[0].toMillimetres();
            out.secondEnd = ends[1].toMillimetres();
        } else if (const Remnant *remnant = sheet.on ? cloth.remnant(*sheet.on) : nullptr) {
            out.cloth = pictureOfRemnant(cloth, number, *remnant);
        }
        m_sheets.append(out);
    }
    const Length longer = lengthOf(job, a) - lengthOf(job, b);
    const QString by = shownLengthWithUnit(abs(longer), job.unit);
    const QString length = longer > Length{}   ? tr("%1 longer than “%2”").arg(by, m_second.name)
                           : longer < Length{} ? tr("%1 shorter than “%2”").arg(by, m_second.name)
                                               : tr("as long as “%1”").arg(m_second.name);
    m_difference = tr("%1; moved: %2 of %3 panels").arg(length).arg(moved.copies.size()).arg(moved.all);
    setAccessibleName(tr("%1 over %2").arg(m_second.name, m_first.name));
    setAccessibleDescription(m_difference);
}

double LayoutComparison::drawTitles(QPainter &painter, double top) const {
    const Colours colours = coloursOf(palette());
    QFont bold = font();
    bold.setBold(true);
    const QFontMetricsF strong(bold), plain(font());
    const double line = strong.height() + 6;
    for (const Title *title : {&m_first, &m_second}) {
        const QRectF sample(4, top + 3, 26, strong.height() - 6);
        const bool solid = title == &m_first;
        painter.setPen(QPen(solid ? colours.ink : colours.accent, solid ? 1 : 2, solid ? Qt::SolidLine : Qt::DashLine));
        painter.setBrush(solid ? QBrush(colours.paper) : QBrush(Qt::NoBrush));
        painter.drawRect(sample);
        double x = sample.right() + 10;
        painter.setPen(colours.ink);
        painter.setFont(bold);
        const QString name = strong.elidedText(title->name, Qt::ElideRight, width() * 0.35);
        painter.drawText(QPointF(x, top + strong.ascent()), name);
        x += strong.horizontalAdvance(name) + 14;
        QStringList said;
        for (const QString &part : {title->words.figure, title->words.beside, title->words.givenUp})
            if (!part.isEmpty()) said << part;
        painter.setFont(font());
        painter.setPen(colours.quiet);
        painter.drawText(QPointF(x, top + strong.ascent()),
                         plain.elidedText(said.join(u" · "_s), Qt::ElideRight, width() - x - 4));
        top += line;
    }
    painter.setPen(colours.ink);
    painter.drawText(QPointF(4, top + plain.ascent()), plain.elidedText(m_difference, Qt::ElideRight, width() - 8));
    return top + plain.height() + 10;
}

void LayoutComparison::paintEvent(QPaintEvent *) {
    const Colours colours = coloursOf(palette());
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    const double top = drawTitles(painter, 4);
    double along = 0, across = 0;
    constexpr double between = 60; // millimetres of table from sheet to sheet
    for (const Sheet &sheet : m_sheets) {
        const QRectF box = sheet.cloth.outline.boundingRect();
        along = std::max(along, box.width());
        across += box.height() + (across > 0 ? between : 0);
    }
    if (along <= 0 || across <= 0) return;
    const QRectF room(4, top, width() - 10, height() - top - 8);
    const double scale = std::min(room.width() / along, room.height() / across);
    QFont small = font();
    small.setPixelSize(std::max(11, qRound(fontInfo().pixelSize() * 0.88)));
    painter.setFont(small);
    double down = 0;
    for (const Sheet &sheet : m_sheets) {
        const QRectF box = sheet.cloth.outline.boundingRect();
        QTransform toScreen;
        toScreen.translate(room.left(), room.top() + down * scale);
        toScreen.scale(scale, scale);
        toScreen.translate(-box.left(), -box.top());
        drawSheet(painter, sheet.cloth, toScreen, rect(), true, colours);
        for (const Part &part : sheet.first) {
            const QPolygonF outline = toScreen.map(part.outline);
            painter.setPen(QPen(colours.ink, 1));
            QColor paper = colours.paper;
            paper.setAlpha(215); // the cloth shows through, as it does on the cards
            painter.setBrush(paper);
            painter.drawPolygon(outline);
            const QRectF inside = outline.boundingRect();
            if (painter.fontMetrics().horizontalAdvance(part.mark) + 4 < inside.width() &&
                painter.fontMetrics().height() < inside.height())
                painter.drawText(inside, Qt::AlignCenter, part.mark);
        }
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(colours.accent, 2, Qt::DashLine));
        for (const Part &part : sheet.second) painter.drawPolygon(toScreen.map(part.outline));
        for (const double end : {sheet.firstEnd, sheet.secondEnd}) {
            if (end <= 0) continue;
            const bool solid = end == sheet.firstEnd;
            painter.setPen(QPen(solid ? colours.broken : colours.accent, 2.5, solid ? Qt::SolidLine : Qt::DashLine));
            painter.drawLine(toScreen.map(QPointF(end, box.top())), toScreen.map(QPointF(end, box.bottom())));
        }
        down += box.height() + between;
    }
}

} // namespace boltwright::ui
