#include "ui/paper/change_pages.h"

#include "core/paper/words.h"
#include "ui/drawing/colours.h"
#include "ui/paper/pages.h"
#include "ui/text/on_paper.h"
#include "ui/text/words.h"

#include <algorithm>
#include <array>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

constexpr double mm = unitsPerMillimetre;
constexpr double body = 3.2;

class ChangeList {
public:
    ChangeList(const LayoutChanges &changes, Unit unit, const QRectF &frame)
        : m_changes(changes), m_unit(unit), m_frame(frame), m_colours(lightColours()) {
        newPage();
    }

    QList<PageInk> all() {
        if (m_changes.isEmpty()) paragraph(onPaper("Nothing has changed: every piece lies as it lay."), 3.6, true);
        flaws();
        table();
        stays();
        return m_pages;
    }

private:
    PageInk &ink() { return m_pages.last(); }
    void newPage() {
        m_pages << PageInk();
        m_y = m_frame.top();
    }
    bool needs(double height) {
        if (m_y + height <= m_frame.bottom()) return false;
        newPage();
        return true;
    }
    void paragraph(const QString &text, double size = body, bool bold = false) {
        needs(PageInk::paragraphHeight(text, m_frame.width(), size, bold) + mm);
        m_y += ink().paragraph(text, {m_frame.left(), m_y}, m_frame.width(), size, bold, m_colours.ink) + mm;
    }
    void heading(const QString &text) {
        needs(20 * mm);
        m_y += (m_y > m_frame.top() ? 4 : 0) * mm;
        paragraph(text, 4.2, true);
    }

    void flaws() {
        if (m_changes.flaws.empty()) return;
        heading(onPaper("Flaws and spoiled places found since"));
        for (const NewFlaw &flaw : m_changes.flaws) {
            QString text = onPaper("%1: %2, from the selvage %3, from the cut end %4")
                               .arg(fromCore(flaw.sheet), shownSize(flaw.across, flaw.along, m_unit),
                                    shownLength(flaw.fromSelvage, m_unit), shownLength(flaw.fromEnd, m_unit));
            if (!flaw.note.empty()) text += u" – "_s + fromCore(flaw.note);
            paragraph(u"• "_s + text);
        }
    }

    QString nameOf(const ChalkRow &row) const {
        QString name = fromCore(row.mark.empty() ? row.name : row.mark + "  " + row.name);
        const QString copy = fromCore(copyWords(row));
        return copy.isEmpty() ? name : name + u", "_s + QString(copy).replace(u' ', QChar(0x00A0));
    }

    /// Where a piece lies, in short lines; the cloth only where the two differ.
    QString placeOf(const std::optional<ChalkRow> &row, const QString &sheet) const {
        if (!row) return onPaper("not on the cloth");
        QString text =
            onPaper("selvage %1, end %2").arg(shownLength(row->fromSelvage, m_unit), shownLength(row->fromEnd, m_unit));
        if (!sheet.isEmpty()) text = sheet + u": "_s + text;
        return text;
    }

    struct Cells {
        QString number, kind, name, before, now;
    };

    Cells cellsOf(const PieceChange &change) const {
        const ChalkRow &row = change.now ? *change.now : *change.before;
        Cells cells{change.now ? QString::number(row.number) : QString(),
                    fromCore(changeWords(change.kind)),
                    nameOf(row),
                    {},
                    {}};
        const bool otherSheet = change.before && change.now && change.sheetBefore != change.sheetNow;
        cells.before = placeOf(change.before, otherSheet ? fromCore(change.sheetBefore) : QString());
        cells.now = placeOf(change.now, otherSheet || !change.before ? fromCore(change.sheetNow) : QString());
        if (!change.before || !change.now) return cells;
        if (change.before->turn != change.now->turn) {
            cells.before += u"; "_s + fromCore(turnWords(change.before->turn));
            cells.now += u"; "_s + fromCore(turnWords(change.now->turn));
        }
        if (change.before->cutAcross != change.now->cutAcross || change.before->cutUp != change.now->cutUp) {
            cells.before += u"; "_s + shownSize(change.before->cutAcross, change.before->cutUp, m_unit);
            cells.now += u"; "_s + shownSize(change.now->cutAcross, change.now->cutUp, m_unit);
        }
        return cells;
    }

    void row(const Cells &cells, double size, bool head) {
        const double room = m_frame.width();
        const std::array<double, 5> at = {0, 0.06 * room, 0.19 * room, 0.47 * room, 0.735 * room};
        const std::array<QString, 5> texts = {cells.number, cells.kind, cells.name, cells.before, cells.now};
        double height = 0;
        const auto width = [&](std::size_t i) { return (i + 1 < at.size() ? at[i + 1] : room) - at[i] - 2 * mm; };
        const auto bold = [&](std::size_t i) { return !head && i != 3; };
        for (std::size_t i = 0; i < at.size(); ++i)
            height = std::max(height, PageInk::paragraphHeight(texts[i], width(i), size, bold(i)));
        if (needs(height + 3 * mm) && !head) tableHeading();
        for (std::size_t i = 0; i < at.size(); ++i)
            ink().paragraph(texts[i], {m_frame.left() + at[i], m_y + 0.8 * mm}, width(i), size, bold(i),
                            head || i == 3 ? m_colours.quiet : m_colours.ink);
        m_y += height + 1.8 * mm;
        ink().line({m_frame.left(), m_y}, {m_frame.right(), m_y},
                   head ? Stroke{m_colours.ink, 0.3} : Stroke{m_colours.hairline, 0.15});
    }

    void tableHeading() { row({{}, {}, onPaper("Piece"), onPaper("Lay before"), onPaper("Lies now")}, 2.6, true); }

    void table() {
        if (m_changes.changed.empty()) return;
        heading(onPaper("Chalk these anew"));
        tableHeading();
        for (const PieceChange &change : m_changes.changed) row(cellsOf(change), body, false);
    }

    void stays() {
        QStringList cut, still;
        for (const PieceChange &change : m_changes.stays)
            (change.now->alreadyCut ? cut : still)
                << u"%1 %2"_s.arg(change.now->number)
                       .arg(fromCore(change.now->mark.empty() ? change.now->name : change.now->mark));
        if (!still.isEmpty()) {
            heading(onPaper("Stays as it is chalked"));
            paragraph(still.join(u" · "_s));
        }
        if (!cut.isEmpty()) {
            heading(onPaper("Already cut"));
            paragraph(cut.join(u" · "_s));
        }
        m_y += 2 * mm;
        paragraph(onPaper("Numbers are those of this sheet. Rub out the old chalk before the new is drawn."));
    }

    const LayoutChanges &m_changes;
    Unit m_unit;
    QRectF m_frame;
    Colours m_colours;
    QList<PageInk> m_pages;
    double m_y = 0;
};

} // namespace

QList<PageInk> changePages(const LayoutChanges &changes, Unit unit, const QRectF &frame) {
    return ChangeList(changes, unit, frame).all();
}

} // namespace boltwright::ui
