#include "ui/panes/cut_list.h"

#include "ui/drawing/colours.h"
#include "ui/drawing/panel_drawing.h"
#include "ui/text/words.h"

#include <QEvent>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QLabel>
#include <QPainter>
#include <QPushButton>
#include <QStyledItemDelegate>
#include <QVBoxLayout>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

/// One entry: the mark strong at the left, name over whereabouts, cut size at the right.
class NotebookLine : public QStyledItemDelegate {
public:
    using QStyledItemDelegate::QStyledItemDelegate;

    QSize sizeHint(const QStyleOptionViewItem &option, const QModelIndex &) const override {
        const SlipFonts fonts(option.font);
        return {200, qRound(QFontMetricsF(option.font).height() + QFontMetricsF(fonts.small).height() + 14)};
    }

    void paint(QPainter *painter, const QStyleOptionViewItem &option, const QModelIndex &index) const override {
        // Not the option's: a style sheet has made its ground transparent, which tells nothing of light or dark.
        const Colours colours = coloursOf(QGuiApplication::palette());
        const SlipFonts fonts(option.font);
        const QFontMetricsF name(option.font), small(fonts.small);
        const QRectF row = QRectF(option.rect).adjusted(8, 1, -8, -1);
        painter->save();
        painter->setRenderHint(QPainter::Antialiasing);
        if (option.state & QStyle::State_Selected)
            paintSelection(*painter, row, colours, option.state & QStyle::State_HasFocus);
        const QRectF inner = row.adjusted(14, 6, -10, -6);
        QFont strong = option.font;
        strong.setBold(true);
        painter->setFont(strong);
        painter->setPen(colours.ink);
        const double markWide =
            std::clamp(QFontMetricsF(strong).horizontalAdvance(u"WWW"_s), 30.0, inner.width() * 0.3);
        const QRectF mark(inner.left(), inner.top(), markWide - 6, name.height());
        painter->drawText(
            mark, Qt::AlignLeft,
            QFontMetricsF(strong).elidedText(index.data(CutListModel::Mark).toString(), Qt::ElideRight, mark.width()));
        painter->setFont(option.font);
        const QString size = index.data(CutListModel::Size).toString(),
                      part = index.data(CutListModel::Name).toString();
        const double left = inner.left() + markWide, sizeWide = name.horizontalAdvance(size);
        // Where part and size have no room beside each other, the size steps down a line.
        const bool beside = name.horizontalAdvance(part) + 12 + sizeWide <= inner.right() - left;
        const double partWide = inner.right() - left - (beside ? sizeWide + 8 : 0);
        painter->drawText(QRectF(left, inner.top(), partWide, name.height()), Qt::AlignLeft,
                          name.elidedText(part, Qt::ElideRight, partWide));
        if (beside)
            painter->drawText(QRectF(inner.right() - sizeWide, inner.top(), sizeWide + 1, name.height()),
                              Qt::AlignRight, size);
        painter->setFont(fonts.small);
        const double smallWide = beside ? 0 : small.horizontalAdvance(size) + 8;
        const QRectF second(left, inner.top() + name.height() + 2, inner.right() - left, small.height());
        if (!beside) painter->drawText(second.adjusted(0, 0, 1, 0), Qt::AlignRight, size);
        painter->setPen(index.data(CutListModel::IsAside).toBool() ? colours.broken : colours.quiet);
        painter->drawText(
            second, Qt::AlignLeft,
            small.elidedText(index.data(CutListModel::Where).toString(), Qt::ElideRight, second.width() - smallWide));
        painter->restore();
    }

private:
    static void paintSelection(QPainter &painter, const QRectF &row, const Colours &colours, bool focus) {
        QColor tint = colours.accent;
        tint.setAlpha(34);
        painter.setPen(focus ? QPen(colours.accent, 1.5) : QPen(Qt::NoPen));
        painter.setBrush(tint);
        painter.drawRoundedRect(row, 6, 6);
        painter.setPen(Qt::NoPen);
        painter.setBrush(colours.accent);
        painter.drawRoundedRect(QRectF(row.left(), row.top(), 3, row.height()), 1.5, 1.5);
    }
};

} // namespace

CutListPane::CutListPane(JobDocument &document, QWidget *parent)
    : QWidget(parent), m_document(document), m_model(new CutListModel(document, this)), m_list(new QListView(this)) {
    auto *title = new QLabel(tr("To cut"), this);
    title->setObjectName(u"paneTitle"_s);
    auto *hint = new QLabel(tr("side × up, cut size"), this);
    hint->setObjectName(u"quiet"_s);
    auto *head = new QHBoxLayout;
    head->setContentsMargins(22, 14, 18, 6);
    head->setSpacing(16);
    head->addWidget(title);
    head->addStretch();
    head->addWidget(hint);

    m_list->setModel(m_model);
    m_list->setItemDelegate(new NotebookLine(m_list));
    m_list->setFrameShape(QFrame::NoFrame);
    m_list->setUniformItemSizes(true);
    m_list->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_list->setAccessibleName(tr("To cut"));
    m_list->setToolTip(tr("What is to cut. Enter lays a panel that is put aside, or shows where it lies."));
    auto *more = new QPushButton(tr("+ panel, or change one"), this);
    more->setObjectName(u"linkButton"_s);
    more->setToolTip(tr("Opens the table of all panels with their measures."));
    connect(more, &QPushButton::clicked, this, &CutListPane::panelTableWanted);

    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 8);
    column->setSpacing(0);
    column->addLayout(head);
    column->addWidget(m_list, 1);
    auto *foot = new QHBoxLayout;
    foot->setContentsMargins(16, 4, 16, 4);
    foot->addWidget(more);
    foot->addStretch();
    column->addLayout(foot);

    fitWords();
    connect(m_list->selectionModel(), &QItemSelectionModel::currentChanged, this, [this](const QModelIndex &now) {
        if (now.isValid()) m_document.selectPanel(toCore(now.data(CutListModel::PanelId).toString()));
    });
    connect(m_list, &QListView::activated, this, &CutListPane::layDownWanted);
    connect(&document, &JobDocument::changed, this, [this](Changes changes) {
        if (!(changes & (Change::Selection | Change::Panels | Change::NewJob))) return;
        const int row = m_model->rowOf(m_document.selectedPanel());
        const QSignalBlocker quiet(m_list->selectionModel());
        if (row < 0)
            m_list->selectionModel()->clear();
        else
            m_list->selectionModel()->setCurrentIndex(m_model->index(row), QItemSelectionModel::ClearAndSelect);
        m_list->viewport()->update();
        if (row >= 0) m_list->scrollTo(m_model->index(row));
    });
}

/// A line of the list is to be read whole, at any size of the text.
void CutListPane::fitWords() { setMinimumWidth(SlipFonts(font()).small.pixelSize() * 23); }

void CutListPane::changeEvent(QEvent *event) {
    QWidget::changeEvent(event);
    if (event->type() != QEvent::FontChange) return;
    m_list->doItemsLayout();
    fitWords();
}

} // namespace boltwright::ui
