#include "ui/paper/cutting_sheet.h"

#include "core/base/language.h"
#include "core/check/check.h"
#include "core/rules/cut_already.h"
#include "core/rules/photo_scale.h"
#include "ui/drawing/colours.h"
#include "ui/paper/chalk_pages.h"
#include "ui/paper/change_pages.h"
#include "ui/paper/sheet_notes.h"
#include "ui/text/on_paper.h"
#include "ui/text/words.h"

#include <QDate>
#include <QLocale>
#include <QSaveFile>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

constexpr double mm = unitsPerMillimetre;

QString dateWords(const std::string &iso) {
    const QDate date = QDate::fromString(fromCore(iso), Qt::ISODate);
    return date.isValid() ? QLocale().toString(date, QLocale::ShortFormat) : fromCore(iso);
}

QString joined(const QStringList &parts) {
    QStringList said;
    for (const QString &part : parts)
        if (!part.isEmpty()) said << part;
    return said.join(u" · "_s);
}

/// Why no shears may go in by this layout; none: nothing stands in the way.
std::optional<Fault> notForCutting(const Job &job, const Layout &layout) {
    if (auto why = notTapedYet(job, layout)) return why;
    if (const auto why = noLongerPossible(job, layout))
        return Fault{
            phrase("this layout is no longer possible: %1; plan again, or take the layout that was cut by", {*why})};
    const std::string why = whyNotToBeCut(job, layout);
    if (!why.empty()) return Fault{phrase("nothing is printed to cut by while the layout cannot be cut: %1", {why})};
    return std::nullopt;
}

} // namespace

CuttingSheet::CuttingSheet(const Job &job, const Layout &layout, SheetExtras extras)
    : m_job(job), m_layout(layout), m_extras(std::move(extras)), m_drawn(m_job, m_layout) {
    m_drawn.trimmings = reckonedAll(m_job, m_layout);
    if (m_extras.changes)
        for (const PieceChange &change : m_extras.changes->changed)
            if (change.now) m_drawn.news[change.now->cut] = fromCore(changeWords(change.kind));
}

Result<std::shared_ptr<const CuttingSheet>> CuttingSheet::make(const Job &job, const Layout &layout,
                                                               const SheetOptions &options, SheetExtras extras) {
    if (const auto why = notForCutting(job, layout)) return fault(*why);
    std::shared_ptr<CuttingSheet> sheet(new CuttingSheet(job, layout, std::move(extras)));
    if (sheet->m_drawn.sheets.empty()) return fault("the layout has no cuts to make a cutting sheet of");
    std::vector<std::vector<Length>> across;
    for (const ChalkSheet &chalk : sheet->m_drawn.chalk) across.push_back(chalk.across);
    auto plan = planSheet(sheet->m_job, sheet->m_drawn.sheets, across, options);
    if (!plan) return fault(plan.error());
    sheet->m_plan = *plan;
    const QRectF heading = onPage(sheet->m_plan.heading);
    const double bottom = (sheet->m_plan.paper.height - paperMargin()).toMillimetres() * mm;
    const QRectF frame(QPointF(heading.left(), heading.bottom() + 2 * mm), QPointF(heading.right(), bottom));
    sheet->m_chalk = chalkPages(sheet->m_drawn, frame);
    if (sheet->m_extras.changes) sheet->m_changes = changePages(*sheet->m_extras.changes, job.unit, frame);
    return sheet;
}

QString CuttingSheet::title() const { return joined({fromCore(m_job.card.title), onPaper("cutting sheet")}); }

void CuttingSheet::paint(Surface &surface, int page) const {
    heading(page).paint(surface);
    if (page < drawnFrom()) {
        m_changes[page].paint(surface);
        return;
    }
    const int drawn = page - drawnFrom(), cloth = int(m_plan.pages.size());
    if (drawn >= cloth) {
        m_chalk[drawn - cloth].paint(surface);
        return;
    }
    paintCloth(surface, m_plan.pages[std::size_t(drawn)]);
    sheetNotes(m_drawn, m_plan, m_plan.pages[std::size_t(drawn)]).paint(surface);
}

void CuttingSheet::paintCloth(Surface &surface, const SheetPage &page) const {
    for (const SheetStrip &strip : page.strips) {
        const ClothBox box = m_drawn.sheets[strip.sheet].box();
        SheetView view;
        view.scale = unitsPerMillimetre / m_plan.scale;
        view.from = strip.from;
        view.to = strip.to;
        view.zero = onPage(strip.corner) - view.scale * QPointF(strip.from.toMillimetres(), box.low.x.toMillimetres());
        view.right = onPage(m_plan.sideways ? m_plan.notes.low : m_plan.heading.high).x() - 2 * mm;
        if (strip.matchBefore) view.matches << SheetMatch{*strip.matchBefore, strip.before};
        if (strip.matchAfter) view.matches << SheetMatch{*strip.matchAfter, strip.after};
        paintSheet(surface, m_drawn, strip.sheet, view);
    }
}

PageInk CuttingSheet::heading(int page) const {
    PageInk ink;
    const Colours colours = lightColours();
    const QRectF frame = onPage(m_plan.heading);
    const double right = 70 * mm, left = frame.width() - right - 4 * mm;
    const JobCard &card = m_job.card;
    const bool changes = page < drawnFrom(), list = page >= drawnFrom() + int(m_plan.pages.size());
    ink.fittedWords(card.title.empty() ? onPaper("Cutting sheet") : fromCore(card.title),
                    frame.topLeft() + QPointF(0, 5 * mm), left, 5.2, 3, true, colours.ink);
    const std::string piece = card.piece == card.title ? std::string() : card.piece;
    ink.fittedWords(joined({fromCore(card.client), fromCore(piece), fromCore(m_layout.name)}),
                    frame.topLeft() + QPointF(0, 10 * mm), left, 3.3, 2, false, colours.quiet);
    ink.wordsEndingAt(changes ? onPaper("What has changed")
                      : list  ? onPaper("Chalk list, in cutting order")
                              : onPaper("Cutting sheet, 1:%1").arg(m_plan.scale),
                      frame.topRight() + QPointF(0, 5 * mm), right, 3.8, true, colours.ink);
    ink.wordsEndingAt(joined({dateWords(card.date), onPaper("page %1 of %2").arg(page + 1).arg(count())}),
                      frame.topRight() + QPointF(0, 10 * mm), right, 3.3, false, colours.quiet);
    ink.line(frame.topLeft() + QPointF(0, 12 * mm), frame.topRight() + QPointF(0, 12 * mm), {colours.ink, 0.25});
    return ink;
}

Result<void> writeCuttingSheet(const Job &job, const Layout &layout, const std::filesystem::path &file,
                               const SheetOptions &options, SheetExtras extras) {
    const auto sheet = CuttingSheet::make(job, layout, options, std::move(extras));
    if (!sheet) return fault(sheet.error().at(file.string()));
    return writePdf(**sheet, file);
}

Result<void> writeChalkCsv(const Job &job, const Layout &layout, const std::filesystem::path &file) {
    if (const auto why = notForCutting(job, layout)) return fault(why->at(file.string()));
    QSaveFile out(QString::fromStdU16String(file.u16string()));
    const QByteArray bytes = QByteArray::fromStdString(chalkCsv(job, chalkList(job, layout)));
    if (!out.open(QIODevice::WriteOnly) || out.write(bytes) != bytes.size() || !out.commit())
        return fault(Fault{toCore(out.errorString())}.at(file.string()));
    return {};
}

} // namespace boltwright::ui
