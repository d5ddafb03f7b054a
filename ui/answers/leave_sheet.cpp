#include "ui/answers/leave_sheet.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QStyle>
#include <QVBoxLayout>

#include <algorithm>

namespace boltwright::ui {

LeaveSheet::LeaveSheet(const Job &job, const TradeRules &rules, QWidget *parent)
    : QWidget(parent), m_model(new LeaveTableModel(job, rules, this)), m_view(new QTableView), m_meaning(new QLabel),
      m_give(new QPushButton(tr("Give this leave and look again"))), m_back(new QPushButton(tr("Back to the order"))) {
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    auto *explained =
        new QLabel(tr("What each part may give up. A tick gives leave as far as the shop's rules go; finer "
                      "leave is given edge by edge under Panels."));
    explained->setWordWrap(true);
    column->addWidget(explained);
    m_view->setModel(m_model);
    m_view->setAccessibleName(tr("What each part may give up"));
    m_view->setToolTip(tr("Parts down, what may be given up across. Space or a click ticks."));
    m_view->setAlternatingRowColors(true);
    m_view->setTabKeyNavigation(false);
    m_view->setSelectionMode(QAbstractItemView::SingleSelection);
    m_view->horizontalHeader()->setSectionResizeMode(QHeaderView::Stretch);
    m_view->horizontalHeader()->setSectionsClickable(false);
    m_view->verticalHeader()->setSectionsClickable(false);
    m_view->verticalHeader()->setTextElideMode(Qt::ElideRight);
    m_view->verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 12);
    m_view->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_view->setMinimumHeight(5 * (fontMetrics().height() + 12));
    column->addWidget(m_view, 1);
    m_meaning->setWordWrap(true);
    column->addWidget(m_meaning);
    m_give->setToolTip(tr("Takes the ticks into the job as one step, and looks for ways again."));
    m_back->setToolTip(tr("Leaves all leave as it is, and shows in which order things are given up."));
    auto *buttons = new QHBoxLayout;
    buttons->addWidget(m_give);
    buttons->addWidget(m_back);
    buttons->addStretch();
    column->addLayout(buttons);
    m_view->setCurrentIndex(m_model->index(0, 0));
    connect(m_view->selectionModel(), &QItemSelectionModel::currentChanged, this, &LeaveSheet::refresh);
    connect(m_model, &LeaveTableModel::dataChanged, this, &LeaveSheet::refresh);
    connect(m_give, &QPushButton::clicked, this, [this] { Q_EMIT given(m_model->withTicks()); });
    connect(m_back, &QPushButton::clicked, this, &LeaveSheet::left);
    refresh();
}

/// No kind's name is cut off; where that leaves too little for the names of the parts, their marks stand there.
void LeaveSheet::fitColumns() {
    int widest = 0;
    for (int column = 0; column < m_model->columnCount(); ++column)
        for (const QString &word : LeaveTableModel::nameOfKind(LeaveTableModel::kindOf(column)).split(u'\n'))
            widest = std::max(widest, fontMetrics().horizontalAdvance(word));
    m_view->horizontalHeader()->setMinimumSectionSize(widest + 12);
    const int bar = m_view->style()->pixelMetric(QStyle::PM_ScrollBarExtent),
              room = width() - bar - 2 * m_view->frameWidth() - m_model->columnCount() * (widest + 12);
    const int full = m_model->widestName(fontMetrics()) + 20;
    m_model->setNamesShort(full > room);
    QHeaderView *names = m_view->verticalHeader();
    names->setFixedWidth(full <= room ? full : std::clamp(names->sizeHint().width(), 40, std::max(40, room)));
}

void LeaveSheet::resizeEvent(QResizeEvent *event) {
    QWidget::resizeEvent(event);
    fitColumns();
}

void LeaveSheet::changeEvent(QEvent *event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) fitColumns();
}

void LeaveSheet::refresh() {
    m_meaning->setText(m_model->meaningOf(m_view->currentIndex()));
    m_give->setEnabled(m_model->isChanged());
}

} // namespace boltwright::ui
