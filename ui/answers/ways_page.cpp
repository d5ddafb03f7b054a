#include "ui/answers/ways_page.h"

#include "ui/picture/layout_card.h"
#include "ui/text/words.h"

#include <QShortcut>

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

QString headlineOf(const ConcedeWay &way, bool nothing) {
    if (nothing) return WaysPage::tr("As asked: nothing is given up");
    QStringList kinds;
    for (Kind kind : way.kinds) kinds << shownKind(kind);
    return kinds.join(u", "_s);
}

} // namespace

WaysPage::WaysPage(JobDocument &document, QWidget *parent)
    : QuestionPage(document,
                   tr("When the cloth does not do as asked, something has to give. Drag what may be given up into the "
                      "order in which you would "
                      "give it up, and take the tick from what must not be. What a part itself allows is set in its "
                      "row of the part table."),
                   tr("Look for ways"), parent),
      m_list(new QListView), m_kinds(new QStandardItemModel(this)), m_within(new QComboBox) {
    for (Kind kind : usualOrder()) {
        auto *item = new QStandardItem(shownKind(kind));
        item->setCheckable(true);
        item->setCheckState(Qt::Checked);
        item->setData(int(kind));
        item->setDropEnabled(false);
        item->setEditable(false);
        m_kinds->appendRow(item);
    }
    m_list->setModel(m_kinds);
    // The house's lists let their ground show through; a box to tick needs one of its own.
    m_list->setStyleSheet(u"QListView { background: palette(base); border: 1px solid palette(mid); }"_s);
    m_list->setDragDropMode(QAbstractItemView::InternalMove);
    m_list->setDefaultDropAction(Qt::MoveAction);
    m_list->setFixedHeight(6 * (fontMetrics().height() + 8) + 12);
    m_list->setAccessibleName(tr("What may be given up, the first to go on top"));
    m_list->setToolTip(
        tr("The first to be given up stands on top. Drag, or move the chosen row with Alt+Up and Alt+Down."));
    addSetting(new QLabel(tr("Give up first")));
    addSetting(m_list);
    m_within->addItems({tr("the least cloth"), tr("the fewest parts")});
    m_within->setToolTip(tr("Within one kind: rather a little from many parts, or more from few."));
    addSetting(new QLabel(tr("Of each kind, rather")));
    addSetting(m_within);
    for (const auto &[key, by] : {std::pair{Qt::ALT | Qt::Key_Up, -1}, std::pair{Qt::ALT | Qt::Key_Down, 1}}) {
        auto *shortcut = new QShortcut(QKeySequence(key), m_list, nullptr, nullptr, Qt::WidgetShortcut);
        connect(shortcut, &QShortcut::activated, this, [this, by = by] { move(by); });
    }
}

std::vector<Kind> WaysPage::order() const {
    std::vector<Kind> kinds;
    for (int row = 0; row < m_kinds->rowCount(); ++row)
        if (m_kinds->item(row)->checkState() == Qt::Checked) kinds.push_back(Kind(m_kinds->item(row)->data().toInt()));
    return kinds;
}

void WaysPage::move(int by) {
    const int row = m_list->currentIndex().row(), to = row + by;
    if (row < 0 || to < 0 || to >= m_kinds->rowCount()) return;
    m_kinds->insertRow(to, m_kinds->takeRow(row));
    m_list->setCurrentIndex(m_kinds->index(to, 0));
}

void WaysPage::ask() {
    ConcedeOptions options;
    options.order = order();
    options.fewestPanelsFirst = m_within->currentIndex() == 1;
    options.plan.seconds = m_seconds;
    answering().start([this, options](const Job &job, const Layout &, const Answering::Stop &stop,
                                      const Answering::Report &report) mutable {
        options.plan.stop = stop;
        options.progress = report;
        const Conceding answer = concede(job, options);
        return [this, answer] { show(answer); };
    });
}

void WaysPage::show(const Conceding &answer) {
    clearAnswers();
    for (const ConcedeWay &way : answer.ways) {
        QStringList words;
        for (const std::string &sentence : way.words) words << withFractions(fromCore(sentence));
        if (!words.isEmpty()) words << tr("The layout has been checked.");
        auto *card = new LayoutCard(headlineOf(way, answer.nothingNeeded), words, document().job(), way.layout,
                                    tr("Take this way"));
        connect(card, &LayoutCard::taken, this, [this, layout = way.layout] {
            Layout kept = layout;
            kept.name = document().laidLayout().name;
            document().changeLayout(std::move(kept), tr("Take a way to fit"));
            Q_EMIT taken();
        });
        answers()->addWidget(card);
    }
    if (answer.ways.empty()) {
        const QString why = withFractions(fromCore(answer.reason));
        say(answer.kind == planner::Outcome::Kind::CannotFit
                ? tr("It does not fit, and this is proved: %1. See Ask for, for how much more would do.").arg(why)
                : tr("No way was found: %1. More time, or leave to give up more, may find one.").arg(why));
    } else if (answer.nothingNeeded) {
        say(tr("The cloth does as asked."));
    }
}

} // namespace boltwright::ui
