#include "ui/answers/runs_page.h"

#include "core/figures/figures.h"
#include "core/paper/words.h"
#include "ui/picture/layout_card.h"
#include "ui/text/words.h"

#include <utility>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

QString headlineOf(RunWay way) {
    switch (way) {
    case RunWay::AsAsked:
        return RunsPage::tr("As asked");
    case RunWay::UpRoll:
        return RunsPage::tr("Up the roll");
    case RunWay::Railroad:
        return RunsPage::tr("Railroaded");
    case RunWay::AsItFalls:
        return RunsPage::tr("As it falls best");
    }
    return {};
}

} // namespace

RunsPage::RunsPage(JobDocument &document, std::shared_ptr<AnswerBook> book, QWidget *parent)
    : QuestionPage(document, std::move(book),
                   tr("The same job with the parts' tops up the roll, railroaded with their tops to the left selvage, "
                      "and each as it falls best. "
                      "Parts on the bias stay on the bias."),
                   tr("Compare"), parent) {
    setMostInARow(2);
    if (const auto before = stillTrue<FoundRuns>())
        for (const RunAnswer &a : before->found.answers) show(a);
}

void RunsPage::ask() {
    clearAnswers();
    m_asked.reset();
    m_found = {};
    PlanOptions options;
    options.seconds = m_seconds;
    answering().start([this, options](const Job &job, const Layout &, const Answering::Stop &stop,
                                      const Answering::Report &report) mutable {
        options.stop = stop;
        // Each stands there as soon as it is known.
        compareRuns(job, options, report, [this](const RunAnswer &a) {
            later([this, a] {
                m_found.answers.push_back(a);
                book()->keep(document().job(), m_found);
                show(a);
            });
        });
        return [] {};
    });
}

void RunsPage::show(const RunAnswer &a) {
    const Unit unit = document().job().unit;
    QStringList words;
    if (a.plan.kind == planner::Outcome::Kind::Fits) {
        for (const ClothFigures &f : figuresOf(a.job, a.plan.layout)) {
            if (f.laid == 0) continue;
            const Cloth &cloth = *a.job.cloth(f.cloth);
            const QString name =
                a.job.cloths.size() > 1 ? fromCore(cloth.name.empty() ? cloth.id : cloth.name) + u": "_s : QString();
            words << (cloth.bolt ? tr("%1%2 (%3), waste %4")
                                       .arg(name, withFractions(fromCore(onHandWords(cloth, f.length, unit, true))),
                                            shownAlongRoll(f.length, unit), shownPercent(f.waste()))
                                 : tr("%1on the remnants, waste %2").arg(name, shownPercent(f.waste())));
        }
        const Cloth &main = a.job.cloths.front();
        if (main.bolt && !a.plan.layout.cloths.empty()) {
            const Length length = a.plan.layout.cloths.front().length.value_or(Length{});
            if (a.way == RunWay::AsAsked) m_asked = length;
            if (m_asked && a.way != RunWay::AsAsked && length != *m_asked)
                words << (length < *m_asked ? tr("%1 less than as asked").arg(shownAlongRoll(*m_asked - length, unit))
                                            : tr("%1 more than as asked").arg(shownAlongRoll(length - *m_asked, unit)));
        }
        words << (a.joins == 0 ? tr("no joins") : a.joins == 1 ? tr("1 join") : tr("%n joins", nullptr, a.joins));
        if (a.turned.empty() && a.way != RunWay::AsAsked) words << tr("looks as asked");
        for (std::size_t i = 0; i < a.turned.size() && i < 3; ++i) words << u"• "_s + fromCore(a.turned[i]);
        if (a.turned.size() > 3) words << tr("and %n more", nullptr, int(a.turned.size()) - 3);
    } else {
        words << tr("Does not go: %1").arg(withFractions(fromCore(a.plan.reason)));
    }
    auto *card = new LayoutCard(headlineOf(a.way), words, a.job, a.plan.layout, tr("Run it this way"));
    connect(card, &LayoutCard::taken, this, [this, a] { take(a); });
    addAnswer(card);
}

void RunsPage::take(const RunAnswer &a) {
    Job job = document().job();
    for (Panel &panel : job.panels)
        if (const Panel *run = a.job.panel(panel.id)) panel.run = run->run;
    document().history()->beginMacro(tr("Run it another way"));
    document().changeJob(std::move(job), tr("Run it another way"));
    Layout kept = a.plan.layout;
    kept.name = document().laidLayout().name;
    document().changeLayout(std::move(kept), tr("Run it another way"));
    document().history()->endMacro();
    Q_EMIT taken();
}

} // namespace boltwright::ui
