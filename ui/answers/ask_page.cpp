#include "ui/answers/ask_page.h"

#include "core/measure/length_text.h"
#include "ui/answers/ask_field.h"
#include "ui/picture/layout_card.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"

#include <QHeaderView>
#include <QKeyEvent>
#include <QPointer>

#include <algorithm>
#include <utility>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

using namespace literals;

/// Widths and repeats to begin with, as cloth is sold (TRADE T1.1, T3.8), and plain cloth.
std::pair<std::vector<Length>, std::vector<AskTableModel::Kind>> usualCloths(Unit unit) {
    std::vector<AskTableModel::Kind> kinds{{}};
    const bool inches = unit == Unit::Inch;
    for (Length repeat : inches ? std::vector{9_in, 13.5_in, 18_in, 27_in} : std::vector{24_cm, 35_cm, 46_cm, 69_cm})
        kinds.push_back({repeat, false, false});
    kinds.push_back({inches ? 27_in : 69_cm, false, true});
    kinds.push_back({inches ? 3_in : 8_cm, true, false});
    return {inches ? std::vector{48_in, 54_in, 60_in} : std::vector{120_cm, 137_cm, 150_cm}, kinds};
}

} // namespace

AskPage::AskPage(JobDocument &document, std::shared_ptr<AnswerBook> book, QWidget *parent)
    : QuestionPage(
          document, std::move(book),
          tr("What to buy at each width and repeat, worked out by laying the parts, and where the cloth there is "
             "does not do, how much more of it would. Type over a width or a repeat; Delete empties it."),
          tr("Work it out"), parent),
      m_model(new AskTableModel(document.job().unit, this)), m_view(new QTableView),
      m_reserve(new LengthEdit(document.job().unit, LengthRange::ZeroOrMore)), m_step(new QComboBox),
      m_extra(new QLabel), m_detail(new QLabel), m_behind(new LayoutThumbnail) {
    const auto [widths, kinds] = usualCloths(unit());
    m_model->setCloths(widths, kinds);
    m_reserve->setLength(Length{});
    m_reserve->setToolTip(tr("What you add for flaws and mistakes."));
    m_reserve->setAccessibleName(tr("Reserve for flaws"));
    m_step->addItems(unit() == Unit::Inch ? QStringList{tr("1/8 yd"), tr("1/4 yd"), tr("1/2 yd")}
                                          : QStringList{tr("0.1 m")});
    m_step->setCurrentIndex(unit() == Unit::Inch ? 1 : 0);
    m_step->setAccessibleName(tr("Sold by"));
    m_step->setToolTip(tr("The smallest length that the shop cuts off the bolt: what to buy is rounded up to it."));
    addAbove(tr("Reserve for flaws"), m_reserve);
    addAbove(tr("Sold by"), m_step);
    m_extra->setWordWrap(true);
    m_extra->setAccessibleName(tr("How much more of the cloth there is would do"));
    m_extra->hide();

    m_view->setModel(m_model);
    m_view->setItemDelegate(new AskField(m_view));
    m_view->setAccessibleName(tr("What to buy, by width and repeat"));
    m_view->setToolTip(tr("Widths of cloth across, repeats down. Type over one to ask about another cloth."));
    m_view->horizontalHeader()->hide();
    m_view->verticalHeader()->hide();
    m_view->setTabKeyNavigation(false);
    m_view->setEditTriggers(QAbstractItemView::DoubleClicked | QAbstractItemView::EditKeyPressed |
                            QAbstractItemView::AnyKeyPressed | QAbstractItemView::SelectedClicked);
    m_view->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    m_view->horizontalHeader()->setSectionResizeMode(0, QHeaderView::ResizeToContents);
    m_view->verticalHeader()->setMinimumSectionSize(fontMetrics().height() + 16);
    m_view->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    // What is said in a field wraps, so that a row grows as its columns shrink.
    connect(m_view->horizontalHeader(), &QHeaderView::sectionResized, m_view,
            [this] { m_view->verticalHeader()->resizeSections(QHeaderView::ResizeToContents); });
    m_view->installEventFilter(this);
    auto *column = new QWidget;
    auto *layout = new QVBoxLayout(column);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->addWidget(m_extra);
    layout->addWidget(m_view, 2);
    m_detail->setWordWrap(true);
    m_detail->setText(tr("Choose a field to see what stands behind it."));
    layout->addWidget(m_detail);
    m_behind->hide();
    layout->addWidget(m_behind, 1);
    addAnswer(column, 1);

    recall();
    connect(m_model, &AskTableModel::refused, this, [this](const QString &sentence) { say(sentence); });
    connect(m_model, &AskTableModel::asksChanged, this, [this] {
        say({});
        answering().drop(); // what is being worked out is for another table
        keep();
    });
    connect(m_reserve, &LengthEdit::lengthChanged, this, &AskPage::keep);
    connect(m_step, &QComboBox::currentIndexChanged, this, [this] {
        m_model->setEighths(eighths());
        showExtra(m_foundExtra);
        explain(m_view->currentIndex());
        keep();
    });
    connect(m_view->selectionModel(), &QItemSelectionModel::currentChanged, this,
            [this](const QModelIndex &index) { explain(index); });
    connect(m_model, &AskTableModel::dataChanged, this, [this] { explain(m_view->currentIndex()); });
}

Unit AskPage::unit() const { return document().job().unit; }
int AskPage::eighths() const { return unit() == Unit::Inch ? 1 << m_step->currentIndex() : 1; }

bool AskPage::eventFilter(QObject *watched, QEvent *event) {
    if (watched == m_view && event->type() == QEvent::KeyPress &&
        static_cast<QKeyEvent *>(event)->key() == Qt::Key_Delete) {
        m_model->setData(m_view->currentIndex(), QString(), Qt::EditRole);
        return true;
    }
    return QuestionPage::eventFilter(watched, event);
}

void AskPage::ask() {
    const std::vector<AskCloth> cloths = m_model->cloths();
    if (cloths.empty()) return say(tr("Nothing is asked for: give a width, and plain cloth or a repeat."));
    if (!m_reserve->refusal().isEmpty()) return say(m_reserve->refusal());
    m_model->clearAnswers();
    m_model->setEighths(eighths());
    showExtra({});
    AskOptions options;
    options.reserve = m_reserve->length().value_or(Length{});
    options.eighths = eighths();
    options.plan.seconds = m_secondsEach;
    options.plan.threads = 2;
    const double rest = m_secondsEach * 3;
    answering().start([this, options, rest, cloths](const Job &job, const Layout &laid, const Answering::Stop &stop,
                                                    const Answering::Report &report) mutable {
        options.plan.stop = stop;
        options.progress = [report](int done, int of) { report(double(done) / double(of)); };
        // Each stands in its field as soon as it is known.
        options.found = [this](std::size_t index, const AskAnswer &answer) {
            later([this, index, answer] {
                m_model->setAnswer(int(index), answer);
                keep();
            });
        };
        // Cloth that is short comes first: that is why somebody asks.
        if (std::any_of(job.cloths.begin(), job.cloths.end(), isLimited) && !stop()) {
            PlanOptions longer = options.plan;
            longer.seconds = rest;
            longer.from = &laid; // what is cut stays
            const std::vector<ExtraLength> extra = extraLengths(job, longer);
            later([this, extra] {
                showExtra(extra);
                keep();
            });
        }
        askFor(job, cloths, options);
        return [this] { explain(m_view->currentIndex()); };
    });
}

/// The table is the user's, whatever has become of the job; its answers are the job's.
void AskPage::recall() {
    const auto before = book()->kept<FoundAsks>();
    if (!before) return;
    const FoundAsks &found = before->found;
    m_model->setCloths(found.widths, found.kinds);
    m_reserve->setLength(found.reserve);
    m_step->setCurrentIndex(found.step);
    m_model->setEighths(eighths());
    const bool any = !found.extra.empty() || std::any_of(found.answers.begin(), found.answers.end(),
                                                         [](const auto &answer) { return answer.has_value(); });
    if (!any || !stillTrue<FoundAsks>()) return;
    for (std::size_t i = 0; i < found.answers.size(); ++i)
        if (found.answers[i]) m_model->setAnswer(int(i), *found.answers[i]);
    showExtra(found.extra);
}

void AskPage::keep() {
    book()->keep(document().job(), FoundAsks{m_model->widths(), m_model->kinds(), m_model->answers(), m_foundExtra,
                                             m_reserve->length().value_or(Length{}), m_step->currentIndex()});
}

bool AskPage::forget() {
    const auto answers = m_model->answers();
    if (m_foundExtra.empty() &&
        std::none_of(answers.begin(), answers.end(), [](const auto &a) { return a.has_value(); }))
        return false;
    m_model->clearAnswers();
    showExtra({});
    return true;
}

void AskPage::showExtra(std::vector<ExtraLength> extra) {
    m_foundExtra = std::move(extra);
    QStringList said;
    for (const ExtraLength &e : m_foundExtra)
        said << withFractions(fromCore(extraInWords(document().job(), e, eighths())));
    m_extra->setText(said.join(u"\n"_s));
    m_extra->setVisible(!said.isEmpty());
}

void AskPage::explain(const QModelIndex &index) {
    const AskAnswer *answer = m_model->answerAt(index);
    m_behind->setVisible(answer && !answer->plan.layout.cuts.empty());
    if (!answer) return m_detail->setText(tr("Choose a field to see what stands behind it."));
    if (answer->plan.kind != planner::Outcome::Kind::Fits) {
        const QString why = withFractions(fromCore(answer->plan.reason));
        return m_detail->setText(answer->plan.kind == planner::Outcome::Kind::CannotFit
                                     ? tr("It cannot be cut from this cloth, and that is proved: %1.").arg(why)
                                     : tr("Nothing was found in the time given: %1.").arg(why));
    }
    QStringList parts{tr("laid out %1").arg(shownAlongRoll(answer->planned, unit()))};
    if (answer->firstMotif > Length{})
        parts << tr("one repeat, as the first motif may lie anywhere: %1")
                     .arg(shownAlongRoll(answer->firstMotif, unit()));
    if (answer->reserve > Length{}) parts << tr("reserve %1").arg(shownAlongRoll(answer->reserve, unit()));
    QString text =
        tr("%1: buy %2")
            .arg(parts.join(u" + "_s), withFractions(fromCore(spokenPurchase(answer->buy, unit(), eighths()))));
    for (const OtherwiseLaid &o : answer->otherwise) {
        const Panel &panel = *answer->job.panel(o.panel);
        QStringList done;
        if (o.betweenMotifs) done << tr("centred between two motifs, as this width has no motif right for it");
        if (o.follows) done << tr("where the pattern runs on from its neighbour");
        if (o.joins > 0)
            done
                << (panel.hidden
                        ? tr("%1, out of sight").arg(AskTableModel::shownJoins(o.joins))
                        : tr("%1, a full width in the centre and equal sides").arg(AskTableModel::shownJoins(o.joins)));
        text += u"\n• "_s + fromCore(panel.name.empty() ? panel.id : panel.name) + u": "_s + done.join(u"; "_s);
    }
    m_detail->setText(text);
    m_behind->show(answer->job, answer->plan.layout);
}

} // namespace boltwright::ui
