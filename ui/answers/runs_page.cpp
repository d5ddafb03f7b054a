#include "ui/answers/runs_page.h"

#include "core/figures/figures.h"
#include "ui/picture/layout_card.h"
#include "ui/text/words.h"

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

RunsPage::RunsPage(JobDocument &document, QWidget *parent)
    : QuestionPage(document,
                   tr("The same job with the parts' tops up the roll, railroaded with their tops to the left selvage, "
                      "and each as it falls best. "
                      "Parts on the bias stay on the bias."),
                   tr("Compare"), parent) {}

void RunsPage::ask() {
    PlanOptions options;
    options.seconds = m_seconds;
    answering().start([this, options](const Job &job, const Layout &, const Answering::Stop &stop,
                                      const Answering::Report &report) mutable {
        options.stop = stop;
        const auto all = compareRuns(job, options, report);
        return [this, all] { show(all); };
    });
}

void RunsPage::show(const std::vector<RunAnswer> &all) {
    clearAnswers();
    const Unit unit = document().job().unit;
    for (const RunAnswer &a : all) {
        QStringList words;
        if (a.plan.kind == planner::Outcome::Kind::Fits) {
            for (const ClothFigures &f : figuresOf(a.job, a.plan.layout)) {
                if (f.laid == 0) continue;
                const bool bolt = a.job.cloth(f.cloth)->bolt.has_value();
                words << (bolt ? tr("%1, buy %2, waste %3")
                                     .arg(shownAlongRoll(f.length, unit), shownPurchase(f.length, unit),
                                          shownPercent(f.waste()))
                               : tr("on the remnants, waste %1").arg(shownPercent(f.waste())));
            }
            words << (a.joins == 0 ? tr("no joins") : tr("%n join(s)", nullptr, a.joins));
            for (std::size_t i = 0; i < a.turned.size() && i < 3; ++i) words << fromCore(a.turned[i]);
            if (a.turned.size() > 3) words << tr("and %n more part(s)", nullptr, int(a.turned.size()) - 3);
        } else {
            words << tr("Does not go: %1").arg(withFractions(fromCore(a.plan.reason)));
        }
        auto *card = new LayoutCard(headlineOf(a.way), words, a.job, a.plan.layout, tr("Run it this way"));
        connect(card, &LayoutCard::taken, this, [this, a] {
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
        });
        answers()->addWidget(card);
    }
}

} // namespace boltwright::ui
