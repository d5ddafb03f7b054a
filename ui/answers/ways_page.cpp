#include "ui/answers/ways_page.h"

#include "core/check/check.h"
#include "ui/picture/layout_card.h"
#include "ui/text/words.h"

#include <QApplication>
#include <QPushButton>

#include <algorithm>
#include <utility>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

using Kind = Concession::Kind;

QString shownKind(Kind kind) {
    switch (kind) {
    case Kind::Trim:
        return WaysPage::tr("Trim an allowance");
    case Kind::Stretcher:
        return WaysPage::tr("Sew a strip on, out of sight");
    case Kind::OtherCloth:
        return WaysPage::tr("Cut a part from other cloth");
    case Kind::Uncentre:
        return WaysPage::tr("Let a part sit off centre");
    case Kind::Turn:
        return WaysPage::tr("Turn a part the other way");
    case Kind::Seam:
        return WaysPage::tr("One more join");
    }
    return {};
}

QString inOneLine(const std::vector<Kind> &kinds) {
    QStringList names;
    for (Kind kind : kinds) {
        QString name = shownKind(kind);
        if (!names.isEmpty()) name.front() = name.front().toLower(); // one sentence
        names << name;
    }
    return names.join(u", "_s);
}

/// Under which it is remembered between two days.
QString keptName(Kind kind) {
    switch (kind) {
    case Kind::Trim:
        return u"trim"_s;
    case Kind::Stretcher:
        return u"strip"_s;
    case Kind::OtherCloth:
        return u"other-cloth"_s;
    case Kind::Uncentre:
        return u"off-centre"_s;
    case Kind::Turn:
        return u"turn"_s;
    case Kind::Seam:
        return u"join"_s;
    }
    return {};
}

/// All kinds as they were last put in order, each with its tick; what was not remembered follows in the usual order.
std::vector<std::pair<Kind, bool>> rememberedOrder(const Preferences &preferences) {
    std::vector<std::pair<Kind, bool>> order;
    const auto has = [&](Kind kind) {
        return std::any_of(order.begin(), order.end(), [&](const auto &entry) { return entry.first == kind; });
    };
    for (const QString &word : preferences.giveUpOrder())
        for (Kind kind : usualOrder()) {
            const bool ticked = word == keptName(kind);
            if ((ticked || word == u'-' + keptName(kind)) && !has(kind)) order.push_back({kind, ticked});
        }
    for (Kind kind : usualOrder())
        if (!has(kind)) order.push_back({kind, true});
    return order;
}

QString headlineOf(const ConcedeWay &way, bool nothing) {
    // A part wider than the cloth is joined in any case; that it stands in the list below must not look like a slip.
    if (nothing)
        return way.layout.conceded.empty() ? WaysPage::tr("As asked: nothing is given up")
                                           : WaysPage::tr("As asked, with the joins that the width needs");
    return inOneLine(way.kinds);
}

} // namespace

WaysPage::WaysPage(JobDocument &document, std::shared_ptr<AnswerBook> book, Preferences &preferences, const Shop &shop,
                   QWidget *parent)
    : QuestionPage(
          document, std::move(book),
          tr("When the cloth does not do as asked, something has to give. Drag what may be given up into the "
             "order in which you would give it up, and take the tick from what must not be. Nothing is given up "
             "that a part has no leave for."),
          tr("Look for ways"), parent),
      m_preferences(preferences), m_shop(shop), m_leave(new QPushButton(tr("Leave, part by part …"))),
      m_list(new OrderList), m_within(new QComboBox) {
    for (const auto &[kind, ticked] : rememberedOrder(preferences)) m_list->add(shownKind(kind), int(kind), ticked);
    // The house's lists let their ground show through; a box to tick needs one of its own.
    m_list->setStyleSheet(u"QListView { background: palette(base); border: 1px solid palette(mid); }"_s);
    m_list->setFixedHeight(6 * std::max(m_list->sizeHintForRow(0), fontMetrics().height() + 4) + 8);
    m_list->setAccessibleName(tr("What may be given up, the first to go on top"));
    m_list->setToolTip(
        tr("The first to be given up stands on top. Drag, or move the chosen row with Alt+Up and Alt+Down."));
    auto *first = new QPushButton(tr("Sooner")), *later = new QPushButton(tr("Later"));
    first->setToolTip(tr("The chosen row one up (Alt+Up)"));
    later->setToolTip(tr("The chosen row one down (Alt+Down)"));
    auto *buttons = new QWidget;
    auto *row = new QHBoxLayout(buttons);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(first);
    row->addWidget(later);
    row->addStretch();
    addSetting(new QLabel(tr("Give up first")));
    addSetting(m_list);
    addSetting(buttons);
    m_within->addItems({tr("the least cloth"), tr("the fewest parts")});
    m_within->setCurrentIndex(preferences.giveUpFromFewest() ? 1 : 0);
    m_within->setToolTip(tr("Within one kind: rather a little from many parts, or more from few."));
    m_within->setAccessibleName(tr("Of each kind, rather"));
    addSetting(new QLabel(tr("Of each kind, rather")));
    addSetting(m_within);
    m_leave->setToolTip(tr("What each part may give up: shown, and given or taken back."));
    addSetting(m_leave);
    connect(m_leave, &QPushButton::clicked, this, &WaysPage::openLeave);
    connect(first, &QPushButton::clicked, this, [this] { m_list->move(-1); });
    connect(later, &QPushButton::clicked, this, [this] { m_list->move(1); });
    connect(m_list, &OrderList::reordered, this, &WaysPage::remember);
    connect(m_within, &QComboBox::activated, this, &WaysPage::remember);
    if (const auto before = stillTrue<FoundWays>()) show(before->found);
}

std::vector<Kind> WaysPage::order() const {
    std::vector<Kind> kinds;
    for (int kind : m_list->ticked()) kinds.push_back(Kind(kind));
    return kinds;
}

void WaysPage::remember() {
    QStringList words;
    const QList<int> ticked = m_list->ticked();
    for (int kind : m_list->values()) words << (ticked.contains(kind) ? QString() : u"-"_s) + keptName(Kind(kind));
    m_preferences.setGiveUpOrder(words);
    m_preferences.setGiveUpFromFewest(m_within->currentIndex() == 1);
}

void WaysPage::openLeave() {
    const bool typedHere = isAncestorOf(QApplication::focusWidget());
    clearAnswers();
    showSettings(false);
    m_sheet = new LeaveSheet(document().job(), m_shop.rules(document().job().unit));
    connect(m_sheet, &LeaveSheet::given, this, &WaysPage::give);
    connect(m_sheet, &LeaveSheet::left, this, &WaysPage::closeLeave);
    addAnswer(m_sheet, 1);
    if (typedHere) m_sheet->table()->setFocus();
}

/// Ways that were found stand there again.
void WaysPage::closeLeave() {
    clearWays();
    m_leave->setFocus();
    const auto before = book()->kept<FoundWays>();
    if (before && !before->found.answer.ways.empty() && AnswerBook::sameQuestion(before->job, document().job()))
        show(before->found);
}

void WaysPage::clearWays() {
    clearAnswers();
    showSettings(true);
}

void WaysPage::give(const Job &job) {
    const auto done = document().changeJob(Job(job), tr("Leave to give up"));
    if (!done) return say(withFractions(fromCore(done.error().text)));
    askButton()->setFocus();
    ask();
}

bool WaysPage::forget() {
    showSettings(true);
    return QuestionPage::forget();
}

void WaysPage::ask() {
    ConcedeOptions options;
    options.order = order();
    options.fewestPanelsFirst = m_within->currentIndex() == 1;
    options.plan.seconds = m_seconds;
    answering().start([this, options, book = book()](const Job &job, const Layout &, const Answering::Stop &stop,
                                                     const Answering::Report &report) mutable {
        options.plan.stop = stop;
        options.progress = report;
        FoundWays found;
        found.answer = concede(job, options);
        for (const ConcedeWay &way : found.answer.ways) {
            const auto findings = check(job, way.layout);
            found.verdicts.push_back(findings.empty() ? std::string() : findings.front().text);
        }
        // Here and not in the window, so that it is kept even where the page has closed meanwhile.
        if (!found.answer.ways.empty() || !stop()) book->keep(job, found);
        return [this, found] { show(found); };
    });
}

void WaysPage::show(const FoundWays &found) {
    const Conceding &answer = found.answer;
    const std::vector<std::string> &verdicts = found.verdicts;
    clearWays();
    const Unit unit = document().job().unit;
    for (std::size_t i = 0; i < answer.ways.size(); ++i) {
        const ConcedeWay &way = answer.ways[i];
        QStringList words;
        if (way.panels > 0 && !answer.nothingNeeded) {
            const QString parts = way.panels == 1 ? tr("1 part gives something up")
                                                  : tr("%n parts give something up", nullptr, way.panels);
            words << (way.trimmed > Length{}
                          ? tr("%1, %2 trimmed in all").arg(parts, shownLengthWithUnit(way.trimmed, unit))
                          : parts);
        }
        for (const std::string &sentence : way.words) words << u"• "_s + withFractions(fromCore(sentence));
        words << (verdicts[i].empty() ? tr("✓ Checked: every rule holds.")
                                      : tr("Checked, and not right: %1").arg(withFractions(fromCore(verdicts[i]))));
        auto *card = new LayoutCard(headlineOf(way, answer.nothingNeeded), words, document().job(), way.layout,
                                    tr("Take this way"));
        connect(card, &LayoutCard::taken, this, [this, layout = way.layout] {
            Layout kept = layout;
            kept.name = document().laidLayout().name;
            document().changeLayout(std::move(kept), tr("Take a way to fit"));
            Q_EMIT taken();
        });
        addAnswer(card);
    }
    if (answer.ways.empty()) {
        openLeave();
        QString said =
            answer.kind == planner::Outcome::Kind::CannotFit
                ? tr("With what its parts may give up it does not fit, and this is proved: %1.")
                      .arg(withFractions(fromCore(answer.reason)))
                : tr("No way was found in the time given. More time, or leave to give up more, may find one.");
        // A tick here is no leave yet, and a proof without it says nothing of what leave would bring.
        const auto closed = kindsWithoutLeave(document().job(), order());
        if (!closed.empty()) said += u' ' + tr("No part has leave for this yet: %1.").arg(inOneLine(closed));
        say(said);
    } else if (answer.nothingNeeded) {
        say(tr("The cloth does as asked."));
    }
}

} // namespace boltwright::ui
