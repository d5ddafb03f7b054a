#include "ui/paper/sheet_notes.h"

#include "core/measure/length_text.h"
#include "ui/drawing/colours.h"
#include "ui/paper/pages.h"
#include "ui/text/on_paper.h"
#include "ui/text/words.h"

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

constexpr double mm = unitsPerMillimetre;
constexpr double small = 2.8;

class Notes {
public:
    Notes(const DrawnLayout &drawn, const SheetPlan &plan, const SheetPage &page)
        : m_drawn(drawn), m_plan(plan), m_page(page), m_frame(onPage(plan.notes)), m_colours(lightColours()) {}

    /// In a column beside the cloth, from top to bottom; the map last, where there is room.
    PageInk column() {
        const double x = m_frame.left(), width = m_frame.width();
        double y = m_frame.top() + 2 * mm;
        y += square({x, y}) + 2 * mm;
        y += m_ink.paragraph(squareWords(), {x, y}, width, small, false, m_colours.ink) + 4 * mm;
        y += bar({x, y}, width) + 5 * mm;
        y += key({x, y}, width) + 4 * mm;
        if (y + 12 * mm < m_frame.bottom()) map({{x, y}, QPointF(m_frame.right(), m_frame.bottom())});
        return m_ink;
    }

    /// In a band below the cloth: square and its words, bar and map, key.
    PageInk band() {
        const double x = m_frame.left(), y = m_frame.top() + 2 * mm;
        const double side = square({x, y}), third = x + side + 3 * mm, words = 34 * mm;
        m_ink.paragraph(squareWords(), {third, y}, words, small, false, m_colours.ink);
        const double middle = third + words + 4 * mm, right = m_frame.right() - 58 * mm;
        const double below = y + bar({middle, y}, right - middle - 4 * mm) + 3 * mm;
        if (below + 10 * mm < m_frame.bottom()) map({{middle, below}, QPointF(right - 4 * mm, m_frame.bottom())});
        key({right, y}, m_frame.right() - right);
        return m_ink;
    }

private:
    Unit unit() const { return m_drawn.job.unit; }

    double square(QPointF corner) {
        const double side = testSquare(unit()).toMillimetres() * mm;
        m_ink.box(QRectF(corner, QSizeF(side, side)), {}, {m_colours.ink, 0.2});
        return side;
    }

    QString squareWords() const {
        return onPaper("Lay a rule on this square: %1 each way. If it is not, print again at actual size (100 %), not "
                       "fitted to the page.")
            .arg(shownLengthWithUnit(testSquare(unit()), unit()));
    }

    double bar(QPointF corner, double width) {
        const Length length = scaleBar(unit(), m_plan.scale, Length::ticks(std::int64_t(width / mm * 320)));
        const double all = length.toMillimetres() / m_plan.scale * mm, high = 1.6 * mm;
        const QRectF whole(corner, QSizeF(all, high));
        m_ink.box(QRectF(corner, QSizeF(all / 2, high)), m_colours.ink, {});
        m_ink.box(whole, {}, {m_colours.ink, 0.2});
        const QString text = onPaper("%1 of cloth, 1:%2").arg(shownLengthWithUnit(length, unit())).arg(m_plan.scale);
        return high + 1 * mm +
               m_ink.paragraph(text, corner + QPointF(0, high + 1 * mm), width, small, true, m_colours.ink);
    }

    /// What the lines mean, each with a sample.
    double key(QPointF corner, double width) {
        struct Entry {
            Stroke stroke;
            QString text;
        };
        QList<Entry> entries = {{{m_colours.ink, 0.42}, onPaper("where to cut")},
                                {{m_colours.ink, 0.16, {1.4, 0.9}}, onPaper("the measured shape")},
                                {{m_colours.ink, 0.3, {3, 1.2}}, onPaper("straight across, first")},
                                {{m_colours.accent, 0.25, {3, 0.8, 0.6, 0.8}}, onPaper("centred on a motif")},
                                {{m_colours.broken, 0.7}, onPaper("last cut")}};
        if (std::any_of(m_drawn.sheets.begin(), m_drawn.sheets.end(),
                        [](const ClothSheet &sheet) { return !sheet.chalk.empty(); }))
            entries << Entry{{m_colours.quiet, 0.22, {5, 2.5}}, onPaper("chalk line, not a cut")};
        if (m_drawn.hasStrips()) entries << Entry{{m_colours.ink, 0.13, {0.5, 0.9}}, onPaper("strip for welt")};
        double y = corner.y();
        for (const Entry &e : entries) {
            const double height = lineHeight(small, false) * mm;
            m_ink.line({corner.x(), y + height / 2}, {corner.x() + 11 * mm, y + height / 2}, e.stroke);
            m_ink.words(e.text, {corner.x() + 13 * mm, y + height * 0.78}, width - 13 * mm, small, false,
                        m_colours.ink);
            y += height + 0.8 * mm;
        }
        const QPointF tip(corner.x() + 7 * mm, y + 1.6 * mm);
        m_ink.shape(QPolygonF({tip, tip + QPointF(-2.4 * mm, -1.4 * mm), tip + QPointF(-2.4 * mm, 1.4 * mm)}),
                    m_colours.ink);
        m_ink.words(onPaper("the panel's top"), {corner.x() + 13 * mm, y + lineHeight(small, false) * mm * 0.78},
                    width - 13 * mm, small, false, m_colours.ink);
        return y + lineHeight(small, false) * mm - corner.y();
    }

    /// Each sheet as a narrow strip with its panels; the stretches of this page are filled.
    void map(const QRectF &room) {
        std::size_t all = 0;
        Length longest;
        for (const ClothSheet &sheet : m_drawn.sheets) longest = std::max(longest, sheet.box().height());
        for (const SheetPage &page : m_plan.pages) all += page.strips.size();
        if (all < 2) return;
        double y = room.top();
        const QString words = onPaper("Darker: what this page shows");
        y += m_ink.paragraph(words, {room.left(), y}, room.width(), small, false, m_colours.quiet, 1) + 1 * mm;
        const double scale = room.width() / longest.toMillimetres();
        const double available = (room.bottom() - y) / double(m_drawn.sheets.size()) - 1.5 * mm;
        for (std::size_t i = 0; i < m_drawn.sheets.size(); ++i) {
            const ClothSheet &sheet = m_drawn.sheets[i];
            const double high = std::min(available, std::max(4 * mm, sheet.box().width().toMillimetres() * scale));
            if (high < 2 * mm) return;
            const double down = high / sheet.box().width().toMillimetres();
            auto rect = [&](Length from, Length to, Length left, Length right) {
                return QRectF(QPointF(room.left() + (from - sheet.box().low.y).toMillimetres() * scale,
                                      y + (left - sheet.box().low.x).toMillimetres() * down),
                              QPointF(room.left() + (to - sheet.box().low.y).toMillimetres() * scale,
                                      y + (right - sheet.box().low.x).toMillimetres() * down));
            };
            const ClothBox box = sheet.box();
            m_ink.box(rect(box.low.y, box.high.y, box.low.x, box.high.x), QColor(0xF6, 0xF3, 0xEC),
                      {m_colours.quiet, 0.15});
            for (const SheetStrip &strip : m_page.strips)
                if (strip.sheet == i)
                    m_ink.box(rect(strip.from, strip.to, box.low.x, box.high.x), QColor(0xC9, 0xC3, 0xB8), {});
            for (const SheetCut &cut : sheet.cuts)
                m_ink.box(rect(cut.box.low.y, cut.box.high.y, cut.box.low.x, cut.box.high.x), {}, {m_colours.ink, 0.1});
            y += high + 1.5 * mm;
        }
    }

    const DrawnLayout &m_drawn;
    const SheetPlan &m_plan;
    const SheetPage &m_page;
    QRectF m_frame;
    Colours m_colours;
    PageInk m_ink;
};

} // namespace

PageInk sheetNotes(const DrawnLayout &drawn, const SheetPlan &plan, const SheetPage &page) {
    Notes notes(drawn, plan, page);
    return plan.sideways ? notes.column() : notes.band();
}

} // namespace boltwright::ui
