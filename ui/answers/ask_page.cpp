#include "ui/answers/ask_page.h"

#include "core/measure/length_text.h"
#include "ui/text/words.h"

#include <QFormLayout>
#include <QHeaderView>
#include <QTableView>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

QString shownCloth(const AskCloth &cloth, Unit unit) {
    if (!cloth.across && !cloth.along) return AskPage::tr("plain");
    if (!cloth.along) return AskPage::tr("stripes, %1 apart").arg(shownLengthWithUnit(*cloth.across, unit));
    return (cloth.halfDrop ? AskPage::tr("%1 repeat, half-drop") : AskPage::tr("%1 repeat"))
        .arg(shownLengthWithUnit(*cloth.along, unit));
}

} // namespace

AskPage::AskPage(JobDocument &document, QWidget *parent)
    : QuestionPage(document,
                   tr("For cloth that is not bought yet: what the job takes at each width and repeat, planned, with "
                      "one repeat more where the first "
                      "motif of a bolt may lie anywhere, your reserve, and rounded up to what is sold."),
                   tr("Work it out"), parent),
      m_widths(new QLineEdit), m_repeats(new QLineEdit), m_reserve(new QLineEdit),
      m_plain(new QCheckBox(tr("plain cloth"))), m_stripes(new QCheckBox(tr("stripes"))),
      m_halfDrop(new QCheckBox(tr("half-drop as well"))), m_step(new QComboBox) {
    const bool inches = document.job().unit == Unit::Inch;
    m_widths->setText(inches                                    ? u"48; 54; 60"_s
                      : document.job().unit == Unit::Centimetre ? u"120; 137; 150"_s
                                                                : u"1200; 1370; 1500"_s);
    m_repeats->setText(inches                                    ? u"9; 13 1/2; 18; 27"_s
                       : document.job().unit == Unit::Centimetre ? u"24; 35; 46; 69"_s
                                                                 : u"240; 350; 460; 690"_s);
    m_reserve->setText(u"0"_s);
    m_plain->setChecked(true);
    m_step->addItems(inches ? QStringList{tr("1/8 yd"), tr("1/4 yd"), tr("1/2 yd")} : QStringList{tr("0.1 m")});
    m_step->setCurrentIndex(inches ? 1 : 0);
    m_widths->setToolTip(tr("Widths edge to edge, with a semicolon between them."));
    m_repeats->setToolTip(tr("Repeats up the roll, with a semicolon between them; a repeat is taken to be as wide as "
                             "it is long where it divides the width."));
    m_reserve->setToolTip(tr("What you add for flaws and mistakes."));
    auto *fields = new QWidget;
    auto *form = new QFormLayout(fields);
    form->setContentsMargins(0, 0, 0, 0);
    form->addRow(tr("Widths"), m_widths);
    form->addRow(tr("Repeats"), m_repeats);
    form->addRow({}, m_plain);
    form->addRow({}, m_stripes);
    form->addRow({}, m_halfDrop);
    form->addRow(tr("Reserve"), m_reserve);
    form->addRow(tr("Sold by"), m_step);
    addSetting(fields);
}

Unit AskPage::unit() const { return document().job().unit; }

Result<std::vector<Length>> AskPage::lengthsIn(const QLineEdit &field) const {
    std::vector<Length> lengths;
    for (const QString &part : field.text().split(u';', Qt::SkipEmptyParts)) {
        const auto length = readLength(toCore(part.trimmed()), unit(), Spelling::Hand);
        if (!length) return fault(length.error());
        if (*length <= Length{})
            return fault(toCore(tr("%1 is no width or repeat; it must be greater than nothing").arg(part.trimmed())));
        lengths.push_back(*length);
    }
    return lengths;
}

Result<std::vector<AskCloth>> AskPage::cloths() const {
    const auto widths = lengthsIn(*m_widths), repeats = lengthsIn(*m_repeats);
    if (!widths) return fault(widths.error().at(toCore(tr("Widths"))));
    if (!repeats) return fault(repeats.error().at(toCore(tr("Repeats"))));
    std::vector<AskCloth> cloths;
    for (Length width : *widths) {
        if (m_plain->isChecked()) cloths.push_back({width, {}, {}, false});
        for (Length repeat : *repeats) {
            if (m_stripes->isChecked()) cloths.push_back({width, repeat, {}, false});
            // Woven and printed repeats divide the width (TRADE T3.8): the nearest whole number of columns.
            const std::int64_t columns = std::max<std::int64_t>(1, roundedQuotient(width.ticks(), repeat.ticks()));
            const Length across = Length::ticks(width.ticks() / columns);
            cloths.push_back({width, across, repeat, false});
            if (m_halfDrop->isChecked()) cloths.push_back({width, across, repeat, true});
        }
    }
    if (cloths.empty()) return fault(toCore(tr("Nothing is asked for: give a width, and plain cloth or a repeat.")));
    return cloths;
}

void AskPage::ask() {
    const auto wanted = cloths();
    const auto reserve = readLength(toCore(m_reserve->text()), unit(), Spelling::Hand);
    if (!wanted) return say(withFractions(fromCore(wanted.error().text)));
    if (!reserve || *reserve < Length{}) return say(tr("Reserve: write a length such as 9 or 1/4 yd."));
    AskOptions options;
    options.reserve = *reserve;
    options.eighths = unit() == Unit::Inch ? 1 << m_step->currentIndex() : 1;
    options.plan.seconds = m_secondsEach;
    options.plan.threads = 2;
    const double rest = m_secondsEach * 3;
    answering().start([this, options, rest, list = *wanted](const Job &job, const Layout &, const Answering::Stop &stop,
                                                            const Answering::Report &report) mutable {
        options.plan.stop = stop;
        options.progress = [report](int done, int of) { report(double(done) / double(of)); };
        const auto table = askFor(job, list, options);
        PlanOptions longer = options.plan;
        longer.seconds = rest;
        std::vector<ExtraLength> extra;
        if (!job.cloths.front().bolt && !stop()) extra = extraLengths(job, job.cloths.front().id, longer);
        return [this, table, extra] { show(table, extra); };
    });
}

void AskPage::show(const std::vector<AskAnswer> &table, const std::vector<ExtraLength> &extra) {
    clearAnswers();
    const Unit unit = this->unit();
    auto *model = new QStandardItemModel;
    model->setHorizontalHeaderLabels({tr("Width"), tr("Cloth"), tr("Planned"), tr("First motif"), tr("Reserve"),
                                      tr("To buy"), tr("Least it can take")});
    QStringList reasons;
    for (const AskAnswer &a : table) {
        const bool fits = a.plan.kind == planner::Outcome::Kind::Fits;
        QStringList cells{shownLengthWithUnit(a.cloth.width, unit), shownCloth(a.cloth, unit)};
        if (fits) {
            const auto &use = a.plan.layout.cloths.front();
            cells << shownAlongRoll(a.planned, unit)
                  << (a.firstMotif > Length{} ? shownAlongRoll(a.firstMotif, unit) : u"–"_s)
                  << (a.reserve > Length{} ? shownAlongRoll(a.reserve, unit) : u"–"_s)
                  << withFractions(
                         fromCore(spokenPurchase(a.buy, unit, unit == Unit::Inch ? 1 << m_step->currentIndex() : 1)))
                  << (use.bound ? shownAlongRoll(*use.bound, unit) : QString());
        } else {
            cells << tr("does not go") << QString() << QString() << QString() << QString();
            const QString why = withFractions(fromCore(a.plan.reason));
            if (!reasons.contains(why)) reasons << why;
        }
        QList<QStandardItem *> row;
        for (const QString &cell : cells) {
            row << new QStandardItem(cell);
            row.back()->setEditable(false);
        }
        QFont bold;
        bold.setBold(true);
        row[5]->setFont(bold);
        model->appendRow(row);
    }
    auto *column = new QWidget;
    auto *layout = new QVBoxLayout(column);
    layout->setContentsMargins(0, 0, 0, 0);
    for (const ExtraLength &e : extra) {
        auto *label =
            new QLabel(e.extra == Length{} ? tr("Remnant %1 does as it is.").arg(fromCore(e.remnant))
                                           : tr("Remnant %1 would do if it were %2 longer.")
                                                 .arg(fromCore(e.remnant), shownLengthWithUnit(e.extra, unit)));
        label->setWordWrap(true);
        layout->addWidget(label);
    }
    auto *view = new QTableView;
    view->setModel(model);
    model->setParent(view);
    view->setAccessibleName(tr("Yardage by width and repeat"));
    view->verticalHeader()->hide();
    view->setSelectionBehavior(QAbstractItemView::SelectRows);
    for (int optional : {3, 4}) {
        bool said = false;
        for (int row = 0; row < model->rowCount(); ++row) said |= model->item(row, optional)->text().size() > 1;
        view->setColumnHidden(optional, !said);
    }
    view->resizeColumnsToContents();
    view->horizontalHeader()->setStretchLastSection(true);
    layout->addWidget(view, 1);
    for (const QString &why : reasons) {
        auto *label = new QLabel(tr("Does not go: %1.").arg(why));
        label->setWordWrap(true);
        layout->addWidget(label);
    }
    answers()->addWidget(column, 1);
}

} // namespace boltwright::ui
