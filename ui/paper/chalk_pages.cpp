#include "ui/paper/chalk_pages.h"

#include "core/paper/words.h"
#include "core/trimmings/reckoned.h"
#include "ui/drawing/colours.h"
#include "ui/paper/pages.h"
#include "ui/picture/type.h"
#include "ui/text/on_paper.h"
#include "ui/text/words.h"

#include <algorithm>
#include <array>
#include <cmath>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

constexpr double mm = unitsPerMillimetre;
constexpr double tickBox = 4.2, cellPad = 1.1;

QString shown(const std::string &text) { return withFractions(fromCore(text)); }

/// Measures are not broken at the end of a line, unless between the two of a size.
QString unbroken(QString size) { return size.replace(u' ', QChar(0x00A0)).replace(u"\u00A0×\u00A0"_s, u" ×\u00A0"_s); }

/// Words of one cell, one below the other.
struct CellLine {
    QString text;
    double size = 2.9;
    bool bold = false, quiet = false;
};
using Cell = QList<CellLine>;

struct Column {
    QString heading;
    double share; ///< of the width that is left after tick box and number
};

QList<Column> columns() {
    return {{onPaper("Panel"), 18},        {onPaper("Cut size"), 15.5},   {onPaper("Measured, allowances"), 17},
            {onPaper("From selvage"), 10}, {onPaper("From cut end"), 10}, {onPaper("Chalk from"), 16},
            {onPaper("As it lies"), 13.5}};
}

/// Builds the pages from the top; a part that does not fit begins a new one.
class ChalkLayout {
public:
    ChalkLayout(const DrawnLayout &drawn, const QRectF &frame)
        : m_drawn(drawn), m_frame(frame), m_colours(lightColours()) {
        newPage();
    }

    QList<PageInk> all() {
        for (std::size_t i = 0; i < m_drawn.chalk.size(); ++i) {
            sheetHeading(i);
            countedFrom(m_drawn.chalk[i]);
            tableHeading();
            for (const ChalkRow &row : m_drawn.chalk[i].rows) panel(row);
            notes(m_drawn.sheets[i]);
        }
        leftOut();
        trimmings();
        closing();
        return m_pages;
    }

private:
    PageInk &ink() { return m_pages.last(); }
    double left() const { return m_frame.left(); }
    double width() const { return m_frame.width(); }

    void newPage() {
        m_pages << PageInk();
        m_y = m_frame.top();
    }

    bool needs(double height) {
        if (m_y + height <= m_frame.bottom()) return false;
        newPage();
        return true;
    }

    void rule(double y, double width) { ink().line({left(), y}, {m_frame.right(), y}, {m_colours.hairline, width}); }

    /// The cloth, then the straight cuts across it, each with its box.
    void sheetHeading(std::size_t index) {
        const ChalkSheet &sheet = m_drawn.chalk[index];
        needs(40 * mm);
        m_y += (m_y > m_frame.top() ? 4 : 0) * mm;
        m_y += ink().paragraph(m_drawn.nameOf(m_drawn.sheets[index]), {left(), m_y}, width(), 4.2, true, m_colours.ink,
                               2) +
               1 * mm;
        if (sheet.across.empty()) return;
        m_y += ink().paragraph(onPaper("First, straight across the full width, measured from the cut end:"),
                               {left(), m_y}, width(), 3.2, false, m_colours.ink) +
               1 * mm;
        double x = left();
        for (Length y : sheet.across) {
            const QString text = shownLengthWithUnit(y, m_drawn.job.unit);
            const double wide = (tickBox + 1.5 + wordsWidth(text, true) * 3.6 + 5) * mm;
            if (x + wide > m_frame.right()) {
                x = left();
                m_y += 6.5 * mm;
                needs(7 * mm);
            }
            box({x, m_y}, false);
            ink().words(text, {x + (tickBox + 1.5) * mm, m_y + 3.5 * mm}, wide, 3.6, true, m_colours.ink);
            x += wide;
        }
        m_y += 7.5 * mm;
    }

    void box(QPointF corner, bool ticked) {
        const QRectF r(corner, QSizeF(tickBox * mm, tickBox * mm));
        ink().box(r, {}, {m_colours.ink, 0.3});
        if (!ticked) return;
        ink().line(r.topLeft(), r.bottomRight(), {m_colours.ink, 0.3});
        ink().line(r.bottomLeft(), r.topRight(), {m_colours.ink, 0.3});
    }

    static constexpr double numberWidth = 9 * mm;
    double columnsLeft() const { return left() + (tickBox + 2) * mm + numberWidth; }
    QList<QRectF> cells() const {
        QList<QRectF> out;
        double all = 0;
        for (const Column &c : columns()) all += c.share;
        double x = columnsLeft();
        const double room = m_frame.right() - x;
        for (const Column &c : columns()) {
            out << QRectF(x, 0, room * c.share / all - 2 * mm, 0);
            x += room * c.share / all;
        }
        return out;
    }

    /// A number of a stripe says nothing without where it is counted from.
    void countedFrom(const ChalkSheet &sheet) {
        if (std::none_of(sheet.rows.begin(), sheet.rows.end(),
                         [](const ChalkRow &row) { return row.motif.has_value(); }))
            return;
        m_y += ink().paragraph(shown(countedWords(sheet, m_drawn.job.unit)), {left(), m_y}, width(), 3.0, false,
                               m_colours.ink) +
               2 * mm;
    }

    void tableHeading() {
        const auto cell = cells();
        double height = 0;
        for (qsizetype i = 0; i < cell.size(); ++i)
            height = std::max(height, PageInk::paragraphHeight(columns()[i].heading, cell[i].width(), 2.6, false));
        needs(height + 20 * mm);
        for (qsizetype i = 0; i < cell.size(); ++i)
            ink().paragraph(columns()[i].heading, {cell[i].left(), m_y}, cell[i].width(), 2.6, false, m_colours.quiet);
        m_y += height + 0.8 * mm;
        ink().line({left(), m_y}, {m_frame.right(), m_y}, {m_colours.ink, 0.3});
    }

    Cell panelCell(const ChalkRow &row) const {
        const QString name = fromCore(row.name), mark = fromCore(row.mark);
        QString rest = fromCore(copyWords(row));
        if (row.mirrored) rest += (rest.isEmpty() ? QString() : u", "_s) + onPaper("mirror image");
        Cell cell{{mark.isEmpty() ? name : mark + u"  "_s + name, 3.4, true}};
        if (!rest.isEmpty()) cell << CellLine{rest, 2.7, false, true};
        return cell;
    }

    Cell motifCell(const ChalkRow &row) const {
        if (!row.motif) return {{row.alreadyCut ? QString() : onPaper("the edges"), 2.9, false, true}};
        const Unit unit = m_drawn.job.unit;
        Cell cell;
        const Vector corner = row.motif->corner;
        if (row.motif->column)
            cell << CellLine{corner.x <= Length{} ? onPaper("%1 towards selvage").arg(shownLength(-corner.x, unit))
                                                  : onPaper("%1 away from selvage").arg(shownLength(corner.x, unit)),
                             3.2, true};
        if (row.motif->row)
            cell << CellLine{corner.y <= Length{} ? onPaper("%1 towards end").arg(shownLength(-corner.y, unit))
                                                  : onPaper("%1 away from end").arg(shownLength(corner.y, unit)),
                             3.2, true};
        cell << CellLine{onPaper("of %1").arg(shown(seatWords(*row.motif))), 2.7, false, true};
        return cell;
    }

    QList<Cell> cellsOf(const ChalkRow &row) const {
        const Unit unit = m_drawn.job.unit;
        const Panel &panel = *m_drawn.job.panel(m_drawn.layout.cuts[std::size_t(row.cut)].panel);
        // Chalked from a motif, the distance along that axis is a check only.
        const bool checkX = row.motif && row.motif->column, checkY = row.motif && row.motif->row;
        return {panelCell(row),
                {{unbroken(shownSize(row.cutAcross, row.cutUp, unit)), 3.6, true}},
                {{unbroken(shownSize(row.measuredAcross, row.measuredUp, unit)), 3.0},
                 {shown(allowanceWords(panel, row.allowances, unit)), 2.7, false, true}},
                {{shownLength(row.fromSelvage, unit), checkX ? 3.0 : 3.7, !checkX, checkX}},
                {{shownLength(row.fromEnd, unit), checkY ? 3.0 : 3.7, !checkY, checkY}},
                motifCell(row),
                {{fromCore(turnWords(row.turn)), 2.9}}};
    }

    double heightOf(const Cell &cell, double width) const {
        double height = 0;
        for (const CellLine &line : cell) height += PageInk::paragraphHeight(line.text, width, line.size, line.bold, 3);
        return height;
    }

    void panel(const ChalkRow &row) {
        const auto places = cells();
        const auto content = cellsOf(row);
        double height = (tickBox + 0.5) * mm;
        for (qsizetype i = 0; i < content.size(); ++i)
            height = std::max(height, heightOf(content[i], places[i].width()));
        QStringList given;
        for (const std::string &words : row.conceded) given << shown(words);
        const QString gave = given.isEmpty() ? QString() : onPaper("Given up: %1").arg(given.join(u"; "_s));
        const double gaveWidth = m_frame.right() - columnsLeft();
        const double below = PageInk::paragraphHeight(gave, gaveWidth, 2.9, false, 3);
        if (needs(height + below + 2 * cellPad * mm)) tableHeading();

        const double top = m_y + cellPad * mm;
        box({left(), top + 0.2 * mm}, row.alreadyCut);
        ink().words(QString::number(row.number), {left() + (tickBox + 2) * mm, top + 3.6 * mm}, numberWidth, 3.9, true,
                    m_colours.ink);
        for (qsizetype i = 0; i < content.size(); ++i) {
            double y = top;
            for (const CellLine &line : content[i])
                y += ink().paragraph(line.text, {places[i].left(), y}, places[i].width(), line.size, line.bold,
                                     line.quiet ? m_colours.quiet : m_colours.ink, 3);
        }
        ink().paragraph(gave, {columnsLeft(), top + height}, gaveWidth, 2.9, false, m_colours.broken, 3);
        m_y = top + height + below + cellPad * mm;
        rule(m_y, 0.15);
    }

    /// What was pinned to this cloth, in full, by the letters that the drawing has.
    void notes(const ClothSheet &sheet) {
        if (sheet.notes.empty()) return;
        const Unit unit = m_drawn.job.unit;
        needs(12 * mm);
        m_y += 3 * mm;
        m_y +=
            ink().paragraph(onPaper("Notes pinned to this cloth"), {left(), m_y}, width(), 3.4, true, m_colours.ink) +
            0.8 * mm;
        for (const SheetNote &note : sheet.notes) {
            const QString text = onPaper("%1 from selvage, %2 from cut end: %3")
                                     .arg(shownLengthWithUnit(note.fromSelvage, unit),
                                          shownLengthWithUnit(note.fromEnd, unit), fromCore(note.text));
            const double indent = numberWidth;
            needs(PageInk::paragraphHeight(text, width() - indent, 3.0, false) + 1 * mm);
            const double height =
                ink().paragraph(text, {left() + indent, m_y}, width() - indent, 3.0, false, m_colours.ink);
            ink().paragraph(fromCore(note.letter), {left(), m_y}, indent, 3.0, true, m_colours.ink);
            m_y += height + 0.6 * mm;
        }
    }

    void leftOut() {
        if (m_drawn.layout.leftOut.empty()) return;
        QStringList names;
        for (const LeftOut &out : m_drawn.layout.leftOut) {
            const Panel *panel = m_drawn.job.panel(out.panel);
            const QString name = fromCore(panel && !panel->name.empty() ? panel->name : out.panel);
            names << (panel && panel->count > 1 ? onPaper("%1 (%2 of %3)").arg(name).arg(out.copy).arg(panel->count)
                                                : name);
        }
        paragraph(onPaper("Not on this cloth, to be cut from other cloth: %1.").arg(names.join(u", "_s)),
                  m_colours.broken);
    }

    /// What goes with the panels, each with a box to tick once it is cut or there.
    void trimmings() {
        const Job &job = m_drawn.job;
        if (m_drawn.trimmings.empty()) return;
        needs(20 * mm);
        m_y += 4 * mm;
        m_y += ink().paragraph(onPaper("Trimmings"), {left(), m_y}, width(), 4.2, true, m_colours.ink) + 1 * mm;
        for (std::size_t i = 0; i < m_drawn.trimmings.size(); ++i) {
            const Trimming &trimming = job.trimmings[i];
            const Reckoned &figures = m_drawn.trimmings[i];
            QString text = shown(trimmingWords(job, trimming, figures));
            if (job.panel(trimming.panel)) text += u' ' + onPaper("They are among the panels.");
            const double wide = width() - (tickBox + 3) * mm;
            needs(std::max(tickBox * mm, PageInk::paragraphHeight(text, wide, 3.0, !figures.enough)) + 1.5 * mm);
            ink().box(QRectF(left(), m_y, tickBox * mm, tickBox * mm), {}, {m_colours.ink, 0.3});
            m_y += std::max(tickBox * mm, ink().paragraph(text, {left() + (tickBox + 3) * mm, m_y + 0.4 * mm}, wide,
                                                          3.0, !figures.enough, m_colours.ink)) +
                   1.5 * mm;
        }
    }

    void paragraph(const QString &text, const QColor &colour) {
        const double height = PageInk::paragraphHeight(text, width(), 3.0, false);
        needs(height + 2 * mm);
        m_y += 2 * mm;
        m_y += ink().paragraph(text, {left(), m_y}, width(), 3.0, false, colour);
    }

    void closing() {
        const QStringList texts = {
            onPaper(
                "The order: straight cuts across the full width first. Then, between two of them, each panel comes "
                "when one of its sides "
                "lies open to the cloth's edge or to a cut already made, copies of one panel together where that can "
                "be."),
            onPaper(
                "Measure the cloth itself before cutting: its width, its repeat and its flaws. A woven repeat drifts "
                "along the roll, so a panel "
                "that sits on a motif is chalked from that motif; its distance from the cut end is a check."),
            onPaper("A cut cannot be undone. Where a measure here and the cloth disagree, stop and measure again."),
            onPaper("Fire-safety rules differ by place and use: the cloth's own label and local law decide.")};
        double height = 4 * mm;
        for (const QString &text : texts) height += PageInk::paragraphHeight(text, width(), 3.0, false) + 2 * mm;
        needs(height);
        m_y += 2 * mm;
        for (const QString &text : texts) paragraph(text, m_colours.ink);
    }

    const DrawnLayout &m_drawn;
    QRectF m_frame;
    Colours m_colours;
    QList<PageInk> m_pages;
    double m_y = 0;
};

} // namespace

QList<PageInk> chalkPages(const DrawnLayout &drawn, const QRectF &frame) { return ChalkLayout(drawn, frame).all(); }

} // namespace boltwright::ui
