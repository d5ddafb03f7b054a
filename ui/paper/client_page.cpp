#include "ui/paper/client_page.h"

#include "core/base/language.h"
#include "core/check/check.h"
#include "core/figures/figures.h"
#include "core/measure/length_text.h"
#include "core/paper/words.h"
#include "ui/drawing/colours.h"
#include "ui/paper/beside_pages.h"
#include "ui/paper/page_ink.h"
#include "ui/paper/pages.h"
#include "ui/picture/sheet_painter.h"
#include "ui/picture/staircase_picture.h"
#include "ui/picture/type.h"
#include "ui/text/on_paper.h"
#include "ui/text/words.h"

#include <QDate>
#include <QLocale>

#include <algorithm>
#include <optional>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

constexpr double mm = unitsPerMillimetre;
constexpr double body = 3.3;
constexpr QChar unbroken(0x00A0); // a space at which no line ends

QString shown(const std::string &text) { return withFractions(fromCore(text)); }

/// What a layout uses of a bolt; none where it cuts nothing from it.
std::optional<Length> usedOf(const Job &job, const Layout &layout, const Cloth &cloth) {
    if (!cloth.bolt) return std::nullopt;
    for (const ClothSheet &sheet : clothSheets(job, layout))
        if (sheet.cloth == cloth.id) return sheet.lastCut;
    return std::nullopt;
}

/// What a bought length costs; none without a price.
std::optional<double> costOf(const Job &job, const Cloth &cloth, Length used) {
    if (!cloth.price) return std::nullopt;
    const std::int64_t per = cloth.price->per == "m" ? 320'000 : 8128 * 36;
    return double(purchaseLength(used, job.unit).ticks()) / double(per) * cloth.price->amount;
}

QString money(double amount, const std::string &currency) {
    return fromCore(currency) + u' ' + QLocale().toString(amount, 'f', 2);
}

/// What all bolts of a layout cost together; none where one has no price or currencies differ.
QString costWords(const Job &job, const Layout &layout) {
    double sum = 0;
    std::string currency;
    bool any = false;
    for (const Cloth &cloth : job.cloths) {
        const auto used = usedOf(job, layout, cloth);
        if (!used) continue;
        const auto cost = costOf(job, cloth, *used);
        if (!cost || (any && currency != cloth.price->currency)) return {};
        sum += *cost;
        currency = cloth.price->currency;
        any = true;
    }
    return any ? money(sum, currency) : QString();
}

/// What a layout takes of each bolt, in the job's order: "buy 3 1/4 yd + 1 yd"; of cloth that is there already
/// "takes 2 yd 8 in".
QString takenWords(const Job &job, const Layout &layout) {
    QStringList bought, there;
    for (const Cloth &cloth : job.cloths) {
        const auto used = usedOf(job, layout, cloth);
        if (!used) continue;
        if (cloth.bolt->length)
            there << shownAlongRoll(*used, job.unit);
        else
            bought << shownPurchase(*used, job.unit);
    }
    QStringList taken;
    if (!bought.isEmpty()) taken << onPaper("buy %1").arg(bought.join(u" + "_s));
    if (!there.isEmpty()) taken << onPaper("takes %1").arg(there.join(u" + "_s));
    return taken.join(u"; "_s);
}

QString panelWords(const Job &job, const std::string &id, int copy) {
    const Panel *panel = job.panel(id);
    const QString name = fromCore(panel && !panel->name.empty() ? panel->name : id);
    return panel && panel->count > 1 ? onPaper("%1 (%2 of %3)").arg(name).arg(copy).arg(panel->count) : name;
}

/// Everything given up, one sentence an entry; the same for several copies is said once.
QStringList givenUp(const Job &job, const Layout &layout) {
    QStringList out;
    QList<std::pair<QString, QStringList>> groups;
    for (const Concession &c : layout.conceded) {
        const QString words = shown(concessionWords(job, layout, c)), who = panelWords(job, c.panel, c.copy);
        const auto known = std::find_if(groups.begin(), groups.end(), [&](const auto &g) { return g.first == words; });
        if (known != groups.end())
            known->second << who;
        else
            groups << std::pair{words, QStringList{who}};
    }
    for (const auto &[words, who] : groups) out << onPaper("%1: %2").arg(who.join(u", "_s), words);
    for (const LeftOut &left : layout.leftOut)
        out << onPaper("%1: cut from other cloth, not counted here").arg(panelWords(job, left.panel, left.copy));
    return out;
}

/// What does not hold, in words. A figure that the file tells wrongly is no matter here: what the page says is reckoned
/// from the cuts.
QStringList faultsOf(const Job &job, const Layout &layout) {
    QStringList faults;
    for (const Finding &found : check(job, layout))
        if (found.kind != Finding::Kind::Figures) faults << shown(found.text);
    return faults;
}

class ClientPage : public Pages {
public:
    ClientPage(const Job &job, const Layout &layout, Paper paper, const std::vector<Staircase> &why)
        : m_job(job), m_layout(layout), m_why(why), m_drawn(m_job, m_layout), m_paper(sizeOf(paper)),
          m_colours(lightColours()) {
        m_faults = faultsOf(m_job, m_layout);
        for (const Layout *one : choicesShown())
            if (*one == m_layout ? !m_faults.isEmpty() : !faultsOf(m_job, *one).isEmpty()) m_doNotHold << one;
        const double margin = paperMargin().toMillimetres() * mm;
        m_frame = QRectF(margin, margin, m_paper.width.toMillimetres() * mm - 2 * margin,
                         m_paper.height.toMillimetres() * mm - 2 * margin);
        // From both ends: what must stand at the foot is placed first, so that the rest knows its room.
        m_bottom = m_frame.bottom();
        foot();
        m_y = m_frame.top();
        head();
        doesNotHold();
        needs();
        picture();
        // The choice must stand, however much there is to tell before it.
        const double choice = choicesHeight();
        m_bottom -= choice;
        marks();
        gaveUp();
        stairs();
        m_bottom += choice;
        choices();
        beside();
    }
    ClientPage(const ClientPage &) = delete;

    QString title() const override {
        return QStringList{fromCore(m_job.card.title), onPaper("for the client")}.join(u" · "_s);
    }
    PaperSize paper() const override { return m_paper; }
    int count() const override { return 1 + int(m_beside.size()); }
    bool hasCuts() const { return !m_drawn.sheets.empty(); }

    void paint(Surface &surface, int page) const override {
        if (page > 0) return m_beside[page - 1].paint(surface);
        for (std::size_t i = 0; i < m_views.size(); ++i) paintSheet(surface, m_drawn, i, m_views[i]);
        m_ink.paint(surface);
    }

private:
    double left() const { return m_frame.left(); }
    double width() const { return m_frame.width(); }
    bool hasRoom(double height) const { return m_y + height <= m_bottom - 2 * mm; }

    /// A paragraph that is left out where there is no room for it; says whether it stands.
    bool paragraph(const QString &text, double size = body, bool bold = false, QColor colour = {}) {
        const double height = PageInk::paragraphHeight(text, width(), size, bold);
        if (!hasRoom(height)) return false;
        m_y += m_ink.paragraph(text, {left(), m_y}, width(), size, bold, colour.isValid() ? colour : m_colours.ink) +
               0.6 * mm;
        return true;
    }

    bool heading(const QString &text, double rest) {
        if (!hasRoom(8 * mm + rest)) return false;
        m_y += 2.5 * mm;
        return paragraph(text, 4, true, m_colours.accent);
    }

    /// What goes with the panels, on pages of its own under the same head.
    void beside() {
        const double below = 15 * mm;
        m_beside = besidePages(m_job, m_layout, m_frame.adjusted(0, below, 0, 0));
        for (PageInk &page : m_beside) {
            const JobCard &card = m_job.card;
            page.words(fromCore(!card.piece.empty() ? card.piece : card.title), {left(), m_frame.top() + 6 * mm},
                       width(), 5, true, m_colours.ink);
            if (!card.client.empty())
                page.words(onPaper("For %1").arg(fromCore(card.client)), {left(), m_frame.top() + 11 * mm}, width(),
                           body, false, m_colours.quiet);
            page.line({left(), m_frame.top() + 12.5 * mm}, {m_frame.right(), m_frame.top() + 12.5 * mm},
                      {m_colours.ink, 0.25});
        }
    }

    /// Above everything else, since no figure below is more than a draft then.
    void doesNotHold() {
        if (m_faults.isEmpty()) return;
        paragraph(onPaper("A draft: this layout does not hold yet."), 4.4, true, m_colours.broken);
        constexpr qsizetype most = 3;
        for (const QString &fault : m_faults.mid(0, most)) paragraph(u"• "_s + fault, body, false, m_colours.broken);
        if (m_faults.size() > most)
            paragraph(u"• "_s + onPaper("and %1 more").arg(m_faults.size() - most), body, false, m_colours.broken);
    }

    void head() {
        const JobCard &card = m_job.card;
        const QDate date = QDate::fromString(fromCore(card.date), Qt::ISODate);
        m_ink.fittedWords(fromCore(!card.piece.empty() ? card.piece : card.title), {left(), m_y + 6 * mm},
                          width() - 45 * mm, 6, 3, true, m_colours.ink);
        m_ink.wordsEndingAt(date.isValid() ? QLocale().toString(date, QLocale::ShortFormat) : QString(),
                            {m_frame.right(), m_y + 6 * mm}, 40 * mm, body, false, m_colours.quiet);
        m_ink.fittedWords(card.client.empty() ? fromCore(card.title) : onPaper("For %1").arg(fromCore(card.client)),
                          {left(), m_y + 11.5 * mm}, width(), 3.8, 2.4, false, m_colours.quiet);
        m_ink.line({left(), m_y + 13.5 * mm}, {m_frame.right(), m_y + 13.5 * mm}, {m_colours.ink, 0.25});
        m_y += 15 * mm;
    }

    void needs() {
        heading(onPaper("What the piece needs"), 0);
        for (const Cloth &cloth : m_job.cloths) {
            const QString name = fromCore(sheetName(m_job, cloth.id, {}));
            if (!cloth.bolt) {
                const auto used = std::count_if(m_drawn.sheets.begin(), m_drawn.sheets.end(),
                                                [&](const ClothSheet &s) { return s.cloth == cloth.id; });
                if (used > 0)
                    paragraph(onPaper("%1: cut from the remnants there are (%2 of %3 used).")
                                  .arg(name)
                                  .arg(used)
                                  .arg(cloth.remnants.size()));
                continue;
            }
            const auto used = usedOf(m_job, m_layout, cloth);
            if (!used) continue;
            const QString laid = shownAlongRoll(*used, m_job.unit);
            if (const auto rest = leftOver(cloth, *used)) {
                const QString there = shownAlongRoll(*cloth.bolt->length, m_job.unit);
                paragraph(*rest < Length{}    ? onPaper("%1: %2 as laid out, and only %3 there.").arg(name, laid, there)
                          : *rest == Length{} ? onPaper("%1: %2 as laid out, all that is there.").arg(name, laid)
                                              : onPaper("%1: %2 as laid out, of the %3 there; %4 left over.")
                                                    .arg(name, laid, there, shownAlongRoll(*rest, m_job.unit)),
                          3.8, true);
            } else {
                paragraph(
                    onPaper("%1: %2 as laid out, so %3 to buy.").arg(name, laid, shownPurchase(*used, m_job.unit)), 3.8,
                    true);
            }
            if (const auto cost = costOf(m_job, cloth, *used))
                paragraph(
                    (cloth.price->per == "m" ? onPaper("It costs %1, at %2 a metre.")
                                             : onPaper("It costs %1, at %2 a yard."))
                        .arg(money(*cost, cloth.price->currency), money(cloth.price->amount, cloth.price->currency)));
        }
        const auto pieces = m_layout.cuts.size();
        paragraph(onPaper("%1 pieces to cut; the picture shows where each lies, the cut end at the left.").arg(pieces),
                  body, false, m_colours.quiet);
    }

    /// All sheets one below the other, at the largest scale that the room takes.
    void picture() {
        if (m_drawn.sheets.empty()) return;
        const double beside = StripEdges::left.toMillimetres() + 2,
                     edges = (StripEdges::above + StripEdges::below).toMillimetres() + 2;
        double longest = 0, wide = 0;
        for (const ClothSheet &sheet : m_drawn.sheets) {
            longest = std::max(longest, sheet.box().height().toMillimetres());
            wide += sheet.box().width().toMillimetres();
        }
        const double n = double(m_drawn.sheets.size()),
                     most =
                         std::min(110.0, (m_bottom - m_y) / mm - 34 - choicesHeight() / mm - (m_why.empty() ? 0 : 40));
        const double scale = std::min({(width() / mm - beside) / longest, (most - n * edges) / wide, 0.125});
        if (scale <= 0.004) return;
        m_y += 1.5 * mm;
        for (const ClothSheet &sheet : m_drawn.sheets) {
            const ClothBox box = sheet.box();
            SheetView view;
            view.scale = scale * mm;
            view.from = box.low.y;
            view.to = box.high.y;
            view.plain = true;
            view.right = m_frame.right();
            const QPointF corner(left() + StripEdges::left.toMillimetres() * mm,
                                 m_y + StripEdges::above.toMillimetres() * mm);
            view.zero = corner - view.scale * QPointF(box.low.y.toMillimetres(), box.low.x.toMillimetres());
            m_views.push_back(view);
            m_y += (edges + box.width().toMillimetres() * scale) * mm;
        }
    }

    /// What the marks in the picture stand for.
    void marks() {
        QStringList all;
        for (const Panel &panel : m_job.panels) {
            const bool laid = std::any_of(m_layout.cuts.begin(), m_layout.cuts.end(),
                                          [&](const Cut &cut) { return cut.panel == panel.id; });
            if (!laid || panel.mark.empty() || panel.name.empty()) continue;
            QString text = fromCore(panel.mark) + unbroken + fromCore(panel.name).replace(u' ', unbroken);
            if (panel.count > 1) text += unbroken + u"(%1)"_s.arg(panel.count);
            all << text;
        }
        if (!all.isEmpty()) paragraph(all.join(u" · "_s), 2.9, false, m_colours.quiet);
    }

    void gaveUp() {
        const QStringList all = givenUp(m_job, m_layout);
        if (all.isEmpty() && !m_faults.isEmpty()) return; // it gives up more than it was allowed
        if (all.isEmpty()) {
            paragraph(
                onPaper(
                    "Nothing is given up for it: every panel has its full allowances, its run and its pattern match."),
                body);
            return;
        }
        if (!heading(onPaper("What we give up for it"), 12 * mm)) return;
        for (qsizetype i = 0; i < all.size(); ++i) {
            // The last line that fits says how many more there are.
            const bool more = i + 1 < all.size() &&
                              !hasRoom(PageInk::paragraphHeight(all[i], width(), body, false) + 6 * mm + 34 * mm);
            if (more) {
                paragraph(onPaper("… and %1 more, all on the cutting sheet").arg(all.size() - i));
                return;
            }
            paragraph(u"• "_s + all[i]);
        }
    }

    struct Step {
        QString name;
        Length step, length;
        bool upTo = false; ///< no more than that: a longer search may still find better
    };

    /// To half an inch or half a centimetre: finer says nothing to somebody who buys.
    Length rounded(Length length) const {
        const std::int64_t step = m_job.unit == Unit::Inch ? 8128 / 2 : 1600;
        return Length::ticks(roundedQuotient(length.ticks(), step) * step);
    }

    /// The staircase up to what this layout needs to buy; nothing where the layout needs less than the staircase found.
    QList<Step> stepsTo(const Staircase &why, Length buy) const {
        QList<Step> steps;
        if (buy < why.buy) return steps;
        for (const Stair &stair : why.stairs)
            if (stair.step > Length{}) steps << Step{shownName(stair.kind), stair.step, stair.length, stair.upTo};
        if (buy > why.buy) steps << Step{onPaper("this layout, above the shortest found"), buy - why.buy, buy};
        return steps;
    }

    /// Why it takes what it takes: one bar a step, each beginning where the one before ends.
    void stairs() {
        for (const Staircase &why : m_why) {
            const Cloth *cloth = m_job.cloth(why.cloth);
            const auto used = cloth ? usedOf(m_job, m_layout, *cloth) : std::nullopt;
            if (!used) continue;
            const Length buy = purchaseLength(*used, m_job.unit);
            const double row = 4.6 * mm;
            const QList<Step> steps = stepsTo(why, buy);
            QString title = onPaper("Why it takes %1").arg(shownPurchase(*used, m_job.unit));
            if (m_job.cloths.size() > 1)
                title = onPaper("Why it takes %1 of %2")
                            .arg(shownPurchase(*used, m_job.unit), fromCore(sheetName(m_job, why.cloth, {})));
            if (steps.isEmpty() || !heading(title, row * double(steps.size()))) continue;
            const double names = 66 * mm, numbers = 30 * mm,
                         perMillimetre = (width() - names - numbers) / buy.toMillimetres();
            for (const Step &step : steps) {
                m_ink.words(step.name, {left(), m_y + 3.4 * mm}, names - 2 * mm, body, false, m_colours.ink);
                const double begin = (step.length - step.step).toMillimetres() * perMillimetre,
                             wide = step.step.toMillimetres() * perMillimetre;
                m_ink.box(QRectF(left() + names + begin, m_y + 0.8 * mm, std::max(wide, 0.3 * mm), 3 * mm),
                          m_colours.accent, {});
                // Rounded where each step ends, so that what is written adds up to what is bought.
                const Length shownStep = rounded(step.length) - rounded(step.length - step.step);
                const QString longer = shownAlongRoll(shownStep, m_job.unit);
                m_ink.wordsEndingAt((&step == &steps.first() ? QString() : u"+ "_s) +
                                        (step.upTo ? onPaper("up to %1").arg(longer) : longer),
                                    {m_frame.right(), m_y + 3.4 * mm}, numbers, body, false, m_colours.ink);
                m_y += row;
            }
        }
    }

    std::vector<const Layout *> choicesShown() const {
        constexpr std::ptrdiff_t most = 5;
        std::vector<const Layout *> all;
        for (const Layout &layout : m_job.layouts)
            if (!layout.cuts.empty()) all.push_back(&layout);
        if (all.empty()) all.push_back(&m_layout);
        if (std::ptrdiff_t(all.size()) > most) all.erase(all.begin(), all.end() - most); // the latest ones
        return all;
    }

    static constexpr double choiceRow = 5.8 * mm, choiceWords = 2.8;

    /// What is given up for a choice, short.
    QString choiceDetail(const Layout &layout) const {
        if (m_doNotHold.contains(&layout)) return onPaper("a draft: does not hold yet");
        const QStringList all = givenUp(m_job, layout);
        if (all.isEmpty()) return onPaper("nothing given up");
        const QString first = QStringList(all.mid(0, 2)).join(u"; "_s);
        return all.size() > 2 ? onPaper("%1; and %2 more").arg(first).arg(all.size() - 2) : first;
    }

    double detailWidth() const { return width() - 6 * mm; }
    double detailHeight(const Layout &layout) const {
        return PageInk::paragraphHeight(choiceDetail(layout), detailWidth(), choiceWords, false, 2);
    }

    /// Heading, one row a layout, and one for what else they may want.
    double choicesHeight() const {
        double height = 12 * mm + choiceRow + 2 * mm;
        for (const Layout *layout : choicesShown()) height += choiceRow + detailHeight(*layout) + 1.2 * mm;
        return height;
    }

    void tickBox() { m_ink.box(QRectF(left(), m_y + 0.4 * mm, 4 * mm, 4 * mm), {}, {m_colours.ink, 0.3}); }

    /// The job's layouts one below the other, each with a box to tick.
    void choices() {
        const auto all = choicesShown();
        if (!heading(onPaper("The choice"), choicesHeight() - 12 * mm)) return;
        m_y += 0.6 * mm;
        int number = 0;
        for (const Layout *layout : all) {
            ++number;
            tickBox();
            const QString name = layout->name.empty() ? onPaper("Layout %1").arg(number) : fromCore(layout->name);
            const double x = left() + 6 * mm, columns = detailWidth() / 10;
            m_ink.fittedWords(name, {x, m_y + 3.7 * mm}, 4.6 * columns, body, 2, true, m_colours.ink);
            const QString taken = takenWords(m_job, *layout);
            m_ink.fittedWords(taken.isEmpty() ? onPaper("from the remnants there are") : taken,
                              {x + 4.8 * columns, m_y + 3.7 * mm}, 3 * columns, body, 2, false, m_colours.ink);
            m_ink.wordsEndingAt(costWords(m_job, *layout), {m_frame.right(), m_y + 3.7 * mm}, 2.1 * columns, body, true,
                                m_colours.ink);
            m_y += choiceRow;
            m_y += m_ink.paragraph(choiceDetail(*layout), {x, m_y - 0.6 * mm}, detailWidth(), choiceWords, false,
                                   m_colours.quiet, 2) +
                   1.2 * mm;
        }
        tickBox();
        const QString other = onPaper("something else:");
        m_ink.words(other, {left() + 6 * mm, m_y + 3.7 * mm}, 40 * mm, body, false, m_colours.ink);
        m_ink.line({left() + 8 * mm + wordsWidth(other, false) * body * mm, m_y + 4.4 * mm},
                   {m_frame.right(), m_y + 4.4 * mm}, {m_colours.hairline, 0.2});
        m_y += choiceRow;
    }

    /// Cautions, then above them the lines to sign.
    void foot() {
        const QStringList cautions = {
            onPaper("Cut cloth cannot be returned."),
            onPaper("Buy all of it at once, from one dye lot: two lots seldom match."),
            onPaper("The upholsterer measures and looks over the cloth itself before the first "
                    "cut; it may need more than planned."),
            onPaper("Fire-safety rules differ by place and use. The cloth's own label and local "
                    "law decide, not this page.")};
        double height = 0;
        for (const QString &text : cautions) height += PageInk::paragraphHeight(u"• "_s + text, width(), 3.0, false);
        double y = m_bottom - height;
        const double top = y;
        for (const QString &text : cautions)
            y += m_ink.paragraph(u"• "_s + text, {left(), y}, width(), 3.0, false, m_colours.ink);
        const double lines = top - 8 * mm, part = width() / 3;
        const QStringList labels = {onPaper("We decide for"), onPaper("Signed"), onPaper("Date")};
        for (int i = 0; i < 3; ++i) {
            m_ink.line({left() + part * i, lines}, {left() + part * (i + 1) - 6 * mm, lines}, {m_colours.ink, 0.25});
            m_ink.words(labels[i], {left() + part * i, lines + 3.6 * mm}, part - 6 * mm, 2.9, false, m_colours.quiet);
        }
        m_bottom = lines - 10 * mm;
    }

    Job m_job;
    Layout m_layout;
    std::vector<Staircase> m_why;
    QStringList m_faults;              ///< what does not hold in the layout
    QList<const Layout *> m_doNotHold; ///< of those to choose from
    DrawnLayout m_drawn;
    PaperSize m_paper;
    Colours m_colours;
    QRectF m_frame;
    double m_y = 0, m_bottom = 0;
    PageInk m_ink;
    QList<PageInk> m_beside;
    std::vector<SheetView> m_views;
};

} // namespace

Result<std::shared_ptr<const Pages>> clientPage(const Job &job, const Layout &layout, Paper paper,
                                                const std::vector<Staircase> &why) {
    const std::string hindrance = whyNotToBeCut(job, layout);
    if (!hindrance.empty())
        return fault(phrase("nothing is printed for a client while the layout cannot be cut: %1", {hindrance}));
    auto page = std::make_shared<ClientPage>(job, layout, paper, why);
    if (!page->hasCuts()) return fault("the layout has no cuts to show a client");
    return page;
}

Result<void> writeClientPage(const Job &job, const Layout &layout, const std::filesystem::path &file, Paper paper,
                             const std::vector<Staircase> &why) {
    const auto page = clientPage(job, layout, paper, why);
    if (!page) return fault(page.error().at(file.string()));
    return writePdf(**page, file);
}

} // namespace boltwright::ui
