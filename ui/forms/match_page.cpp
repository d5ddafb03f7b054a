#include "ui/forms/match_page.h"

#include "core/panel/edges.h"
#include "core/rules/phase.h"
#include "ui/forms/match_picture.h"
#include "ui/models/match_list_model.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"
#include "ui/widgets/wrapping_row.h"

#include <QComboBox>
#include <QFormLayout>
#include <QGroupBox>
#include <QHBoxLayout>
#include <QListView>
#include <QPushButton>
#include <QSpinBox>
#include <QVBoxLayout>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

constexpr int mostLinesSeen = 8; ///< of a job with more matches, the list is scrolled

enum Where { MiddleOfEdge, PointOfPanel };

/// Of a combo box whose words are as long as people's names for things are.
void keepNarrow(QComboBox *box) {
    box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    box->setMinimumContentsLength(22);
}

} // namespace

MatchPage::MatchPage(JobDocument &document, QWidget *parent)
    : QWidget(parent), m_document(document), m_model(new MatchListModel(document, this)), m_refusal(new QLabel(this)),
      m_none(new QLabel(this)), m_doubts(new QLabel(this)), m_list(new QListView(this)) {
    auto *buttons = new QHBoxLayout;
    auto *add = new QPushButton(tr("&Add a match"), this);
    add->setToolTip(tr("From the bottom of one panel to the top of the next, to begin with."));
    connect(add, &QPushButton::clicked, this, &MatchPage::add);
    m_remove = new QPushButton(tr("Remove"), this);
    m_remove->setToolTip(tr("Takes the selected match out of the job: the pattern need not run on there."));
    connect(m_remove, &QPushButton::clicked, this, &MatchPage::remove);
    auto *hint = new QLabel(tr("Where the pattern runs on from one panel to the next."), this);
    hint->setObjectName(u"quiet"_s);
    hint->setWordWrap(true);
    hint->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    buttons->addWidget(add);
    buttons->addWidget(m_remove);
    buttons->addWidget(hint, 1);

    for (QLabel *label : {m_refusal, m_none, m_doubts}) {
        label->setWordWrap(true);
        label->setTextFormat(Qt::PlainText);
        label->hide();
    }
    m_refusal->setObjectName(u"refusal"_s);
    m_none->setObjectName(u"quiet"_s);
    m_none->setText(tr("None yet. A match says that the pattern of one panel runs on in another, as from the back down "
                       "over the seat to the border; planning then lays both so that it does."));
    m_list->setModel(m_model);
    m_list->setAccessibleName(tr("Matches"));
    m_list->setToolTip(tr("One line a match: from where to where, and what is lost in the join."));
    m_list->setWordWrap(true);
    m_list->setSpacing(3);
    connect(m_list->selectionModel(), &QItemSelectionModel::currentRowChanged, this, [this] { showMatch(); });
    connect(m_model, &QAbstractItemModel::modelReset, this, [this] { choose(row()); });

    m_fields = new QWidget(this);
    m_picture = new MatchPicture(m_fields);
    auto *fields = new WrappingRow(28, m_fields);
    fields->setContentsMargins(0, 8, 0, 0);
    QWidget *const parts[] = {buildEnd(MatchSide::From), buildEnd(MatchSide::To), m_picture};
    for (QWidget *part : parts) {
        fields->addWidget(part);
        fields->setAlignment(part, Qt::AlignTop);
    }
    connect(m_picture, &MatchPicture::edgeChosen, this, [this](MatchSide side, int edge) {
        change(tr("Edge of a match"), [=](Flow &f) { (side == MatchSide::From ? f.from : f.to).edge = edge; });
    });

    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addLayout(buttons);
    column->addWidget(m_refusal);
    column->addWidget(m_none);
    column->addWidget(m_list);
    column->addWidget(m_doubts);
    column->addWidget(m_fields);
    column->addStretch(1);
    connect(&document, &JobDocument::changed, this, [this](Changes changes) {
        if (!(changes & (Change::Panels | Change::NewJob | Change::Card | Change::Cloths))) return;
        refuse({});
        showMatch();
    });
    setFocusProxy(document.job().flows.empty() ? static_cast<QWidget *>(add) : m_list);
    choose(0);
}

QWidget *MatchPage::buildEnd(MatchSide side) {
    const bool isFrom = side == MatchSide::From;
    auto *box = new QWidget(m_fields);
    End &e = end(side);
    const Unit unit = m_document.job().unit;
    e.panel = new QComboBox(box);
    e.edge = new QComboBox(box);
    e.where = new QComboBox(box);
    e.where->addItems({tr("in the middle of the edge"), tr("at a point of the panel")});
    e.across = new LengthEdit(unit, LengthRange::Any, box);
    e.up = new LengthEdit(unit, LengthRange::Any, box);
    e.copy = new QSpinBox(box);
    e.copy->setSpecialValueText(tr("each of them"));
    keepNarrow(e.panel);
    keepNarrow(e.edge);

    auto *form = new QFormLayout(box);
    form->setContentsMargins(0, 0, 0, 0);
    form->setVerticalSpacing(4);
    form->setFieldGrowthPolicy(QFormLayout::AllNonFixedFieldsGrow);
    auto *title = new QLabel(isFrom ? tr("From") : tr("To"), box);
    title->setObjectName(u"paneTitle"_s);
    form->addRow(title);
    const auto field = [&](const QString &text, QWidget *widget, const QString &heard, const QString &sentence) {
        widget->setAccessibleName(heard);
        widget->setToolTip(sentence);
        return form->addRow(text, widget);
    };
    field(tr("Panel"), e.panel, isFrom ? tr("From panel") : tr("To panel"),
          isFrom ? tr("The panel that the pattern comes from.") : tr("The panel that the pattern runs on in."));
    field(tr("Which of them"), e.copy, isFrom ? tr("From which of them") : tr("To which of them"),
          tr("Where there are several: one of them by its number, or each. Then the first joins the first, the second "
             "the second, and a panel of which there is one joins all."));
    field(tr("Edge"), e.edge, isFrom ? tr("From edge") : tr("To edge"),
          isFrom ? tr("The edge at which it is joined, and over which the pattern is lost.")
                 : tr("The edge at which it is joined."));
    field(tr("Where"), e.where, isFrom ? tr("From where") : tr("To where"),
          tr("Where the two must meet: the middles of both edges, or points of your own, as for a back that runs on "
             "in two cushions."));
    auto *point = new QHBoxLayout;
    e.across->setAccessibleName(isFrom ? tr("From point, across") : tr("To point, across"));
    e.across->setToolTip(tr("How far across, from the panel's lower left corner as measured."));
    e.up->setAccessibleName(isFrom ? tr("From point, up") : tr("To point, up"));
    e.up->setToolTip(tr("How far up, from the panel's lower left corner as measured."));
    point->addWidget(e.across);
    point->addWidget(e.up);
    form->addRow(tr("Across, up"), point);

    const auto own = [side](Flow &f) -> FlowEnd & { return side == MatchSide::From ? f.from : f.to; };
    connect(e.panel, &QComboBox::activated, this, [this, side, box = e.panel](int index) {
        const std::string panel = toCore(box->itemData(index).toString());
        change(tr("Panel of a match"), [&](Flow &f) { f = withEndOn(m_document.job(), std::move(f), side, panel); });
    });
    connect(e.copy, &QSpinBox::valueChanged, this, [this, own](int copy) {
        change(tr("Which one is matched"),
               [&](Flow &f) { own(f).copy = copy > 0 ? std::optional(copy) : std::nullopt; });
    });
    connect(e.edge, &QComboBox::activated, this, [this, own, box = e.edge](int index) {
        const int edge = box->itemData(index).toInt();
        change(tr("Edge of a match"), [&](Flow &f) { own(f).edge = edge >= 0 ? std::optional(edge) : std::nullopt; });
    });
    connect(e.where, &QComboBox::activated, this, [this, own](int where) {
        change(tr("Where a match is"), [&](Flow &f) {
            FlowEnd &here = own(f);
            const Panel *panel = m_document.job().panel(here.panel);
            if (where == PointOfPanel && !here.at && panel) here.at = pointOf(*panel, here);
            if (where == MiddleOfEdge) {
                here.at.reset();
                if (!here.edge) here.edge = 0;
            }
        });
    });
    const auto place = [&](LengthEdit *edit, Length PanelPoint::*axis) {
        connect(edit, &LengthEdit::lengthChanged, this, [this, own, axis](std::optional<Length> length) {
            change(tr("Point of a match"), [&](Flow &f) {
                if (length && own(f).at) (*own(f).at).*axis = *length;
            });
        });
    };
    place(e.across, &PanelPoint::x);
    place(e.up, &PanelPoint::y);
    if (isFrom) {
        m_lost = new LengthEdit(unit, LengthRange::ZeroOrMore, box);
        field(tr("Lost in the join"), m_lost, tr("Lost in the join"),
              tr("How much of the pattern disappears between the two: in a tuck, or in the thickness of a cushion."));
        connect(m_lost, &LengthEdit::lengthChanged, this, [this](std::optional<Length> length) {
            change(tr("Lost in the join"), [=](Flow &f) { f.lost = length.value_or(Length{}); });
        });
    }
    return box;
}

int MatchPage::row() const {
    const QModelIndex now = m_list->currentIndex();
    return now.isValid() && now.row() < int(m_document.job().flows.size()) ? now.row() : -1;
}

void MatchPage::choose(int row) {
    const int rows = m_model->rowCount();
    if (rows > 0) m_list->setCurrentIndex(m_model->index(std::clamp(row, 0, rows - 1)));
    showMatch();
}

void MatchPage::add() {
    const auto match = newMatch(m_document.job(), m_document.selectedPanel());
    if (!match) return refuse(withFractions(fromCore(match.error().text)));
    auto job = withMatch(m_document.job(), *match);
    if (!job) return refuse(withFractions(fromCore(job.error().text)));
    m_document.changeJob(std::move(*job), tr("Add a match"));
    choose(m_model->rowCount() - 1);
    m_from.panel->setFocus();
}

void MatchPage::remove() {
    const int at = row();
    if (at < 0) return;
    m_document.changeJob(withoutMatch(m_document.job(), std::size_t(at)), tr("Remove a match"));
    choose(at);
    m_list->setFocus();
}

void MatchPage::change(const QString &text, const std::function<void(Flow &)> &how) {
    const int at = row();
    if (m_showing || at < 0) return;
    Flow match = m_document.job().flows[std::size_t(at)];
    how(match);
    if (match == m_document.job().flows[std::size_t(at)]) return;
    auto job = withMatchChanged(m_document.job(), std::size_t(at), std::move(match));
    const auto done = job ? m_document.changeJob(std::move(*job), text, u"match %1 %2"_s.arg(at).arg(text))
                          : Result<void>(fault(job.error()));
    if (done) return;
    showMatch();
    refuse(withFractions(fromCore(done.error().text)));
}

void MatchPage::refuse(const QString &sentence) {
    m_refusal->setText(sentence);
    m_refusal->setVisible(!sentence.isEmpty());
}

void MatchPage::showMatch() {
    const Job &job = m_document.job();
    const int at = row();
    m_none->setVisible(job.flows.empty());
    m_list->setVisible(!job.flows.empty());
    const int lines = std::clamp(int(job.flows.size()), 2, mostLinesSeen);
    m_list->setFixedHeight(lines * (m_list->sizeHintForRow(0) + 2 * m_list->spacing()) + 2 * m_list->frameWidth() + 4);
    m_fields->setVisible(at >= 0);
    m_remove->setEnabled(at >= 0);
    QStringList doubts;
    for (const std::string &doubt : matchDoubts(job)) doubts << withFractions(fromCore(doubt));
    m_doubts->setText(doubts.isEmpty() ? QString() : tr("Worth a second look: %1").arg(doubts.join(u' ')));
    m_doubts->setVisible(!doubts.isEmpty());
    if (at < 0) return m_picture->show(job, std::nullopt);
    m_showing = true;
    showEnd(MatchSide::From);
    showEnd(MatchSide::To);
    m_lost->setUnit(job.unit);
    m_lost->setLength(job.flows[std::size_t(at)].lost);
    m_picture->show(job, job.flows[std::size_t(at)]);
    m_showing = false;
}

void MatchPage::showEnd(MatchSide side) {
    const Job &job = m_document.job();
    const Flow &match = job.flows[std::size_t(row())];
    const FlowEnd &here = side == MatchSide::From ? match.from : match.to;
    End &e = end(side);
    e.panel->clear();
    for (const Panel &panel : job.panels) e.panel->addItem(fromCore(panelInWords(job, panel)), fromCore(panel.id));
    e.panel->setCurrentIndex(e.panel->findData(fromCore(here.panel)));
    const Panel *panel = job.panel(here.panel);
    e.edge->clear();
    for (int edge = 0; panel && edge < int(edgeCount(panel->shape)); ++edge) {
        QString words = fromCore(edgeInWords(panel->shape, edge));
        words[0] = words[0].toUpper();
        e.edge->addItem(words, edge);
    }
    if (here.at) e.edge->addItem(tr("none"), -1); // a point alone will do
    e.edge->setCurrentIndex(e.edge->findData(here.edge.value_or(-1)));
    e.where->setCurrentIndex(here.at ? PointOfPanel : MiddleOfEdge);
    for (LengthEdit *edit : {e.across, e.up}) {
        edit->setUnit(job.unit);
        edit->setEnabled(here.at.has_value());
    }
    const std::optional<PanelPoint> point = here.at              ? here.at
                                            : panel && here.edge ? std::optional(pointOf(*panel, here))
                                                                 : std::nullopt;
    e.across->setLength(point ? std::optional(point->x) : std::nullopt);
    e.up->setLength(point ? std::optional(point->y) : std::nullopt);
    e.copy->setRange(0, panel ? panel->count : 0);
    e.copy->setValue(here.copy.value_or(0));
    e.copy->setEnabled(panel && (panel->count > 1 || here.copy));
}

} // namespace boltwright::ui
