#include "ui/kept/kept_layouts.h"

#include "ui/text/words.h"

#include <QEvent>
#include <QScrollBar>
#include <QVBoxLayout>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

KeptLayouts::KeptLayouts(JobDocument &document, QWidget *parent)
    : QWidget(parent), m_document(document), m_keep(new QPushButton(tr("Keep a copy"), this)),
      m_nothing(new QLabel(this)), m_scroll(new QScrollArea(this)) {
    auto *title = new QLabel(tr("Layouts"), this);
    title->setObjectName(u"paneTitle"_s);
    m_keep->setToolTip(
        tr("Keeps what lies on the table as it is, under a name. What you go on with is the other one: that changes as "
           "panels are moved."));
    m_nothing->setObjectName(u"quiet"_s);
    m_nothing->setText(tr("Layouts worth comparing stand here: plan, then keep a copy."));
    auto *cards = new QWidget;
    m_row = new QHBoxLayout(cards);
    m_row->setContentsMargins(0, 0, 0, 0);
    m_row->setSpacing(12);
    m_row->addWidget(m_nothing);
    m_row->addStretch();
    m_scroll->setWidget(cards);
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->setAccessibleName(tr("Kept layouts"));
    for (QWidget *through : {static_cast<QWidget *>(m_scroll->viewport()), cards})
        through->setAutoFillBackground(false);
    auto *side = new QVBoxLayout;
    side->setSpacing(8);
    side->addWidget(title);
    side->addWidget(m_keep);
    side->addStretch();
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(18, 10, 12, 8);
    row->setSpacing(18);
    row->addLayout(side);
    row->addWidget(m_scroll, 1);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    connect(m_keep, &QPushButton::clicked, this, &KeptLayouts::keep);
    connect(&document, &JobDocument::changed, this, [this](Changes changes) {
        if (changes & (Change::Card | Change::Cloths | Change::Panels | Change::Layout | Change::NewJob)) refresh();
    });
    refresh();
    fitHeight();
}

KeptCard *KeptLayouts::newCard(int index) {
    auto *card = new KeptCard(this);
    m_row->insertWidget(index, card);
    connect(card, &KeptCard::clicked, this, [this, index] { m_document.setLayoutIndex(index); });
    connect(card, &KeptCard::renamed, this,
            [this, index](const QString &name) { m_document.renameLayout(index, name); });
    connect(card, &KeptCard::comparisonWanted, this, [this, index] { Q_EMIT comparisonWanted(index); });
    connect(card, &KeptCard::neighbourWanted, this, [this, index](int step) {
        const int next = std::clamp(index + step, 0, int(m_cards.size()) - 1);
        m_cards[next]->setFocus(Qt::OtherFocusReason);
        m_scroll->ensureWidgetVisible(m_cards[next], 24, 0);
    });
    // Dropping takes cards away, so not from within their own event.
    connect(
        card, &KeptCard::dropWanted, this,
        [this, index] {
            m_document.dropLayout(index);
            if (!m_cards.isEmpty()) m_cards[std::min(index, int(m_cards.size()) - 1)]->setFocus(Qt::OtherFocusReason);
        },
        Qt::QueuedConnection);
    return card;
}

void KeptLayouts::refresh() {
    const Job &job = m_document.job();
    const int count = int(job.layouts.size());
    while (m_cards.size() > count) delete m_cards.takeLast();
    while (m_cards.size() < count) m_cards.append(newCard(int(m_cards.size())));
    for (int i = 0; i < count; ++i) m_cards[i]->show(job, i, i == m_document.layoutIndex());
    m_nothing->setVisible(count == 0);
    m_keep->setEnabled(count > 0 && !m_document.laidLayout().cuts.empty());
}

void KeptLayouts::fitHeight() {
    const KeptCard measure;
    const QMargins around = layout()->contentsMargins();
    setFixedHeight(measure.sizeHint().height() + m_scroll->horizontalScrollBar()->sizeHint().height() + around.top() +
                   around.bottom());
}

void KeptLayouts::changeEvent(QEvent *event) {
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange) fitHeight();
    QWidget::changeEvent(event);
}

QString KeptLayouts::freeName() const {
    const auto &layouts = m_document.job().layouts;
    for (int n = 1;; ++n) {
        QString name = tr("Kept %1").arg(n);
        if (std::none_of(layouts.begin(), layouts.end(), [&](const Layout &l) { return l.name == toCore(name); }))
            return name;
    }
}

void KeptLayouts::keep() {
    const int copy = m_document.layoutIndex(); // the copy comes to stand here, and what is laid after it
    if (!m_keep->isEnabled()) return;
    m_document.keepLayout(freeName());
    m_scroll->ensureWidgetVisible(m_cards[copy], 24, 0);
    m_cards[copy]->beginRename();
}

} // namespace boltwright::ui
