#include "ui/piece/covered_piece_view.h"

#include "ui/piece/piece_page.h"
#include "ui/piece/piece_words.h"
#include "ui/text/words.h"
#include "ui/widgets/wrapping_row.h"

#include <QAccessible>
#include <QFileDialog>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QHelpEvent>
#include <QMouseEvent>
#include <QPageLayout>
#include <QPainter>
#include <QPrintPreviewDialog>
#include <QPrinter>
#include <QStyle>
#include <QToolButton>
#include <QToolTip>
#include <QVBoxLayout>

#include <algorithm>
#include <cmath>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

constexpr double margin = 5; // room for the ring of the focus and the selected panel's outline

} // namespace

CoveredPiecePicture::CoveredPiecePicture(JobDocument &document, QWidget *parent)
    : QWidget(parent), m_document(document) {
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setMinimumSize(160, 120);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    setAccessibleName(tr("As it will look"));
    m_soon.setSingleShot(true);
    m_soon.setInterval(0);
    connect(&m_soon, &QTimer::timeout, this, &CoveredPiecePicture::freshen);
    connect(&document, &JobDocument::changed, this, &CoveredPiecePicture::follow);
    freshen();
}

void CoveredPiecePicture::follow(Changes changes) {
    constexpr Changes ofThePiece =
        Change::Card | Change::Cloths | Change::Panels | Change::Layout | Change::Preview | Change::NewJob;
    if (changes & ofThePiece) {
        m_outOfDate = true;
        if (isVisible()) m_soon.start();
    }
    if (changes & Change::Selection) update();
}

void CoveredPiecePicture::showEvent(QShowEvent *event) {
    if (m_outOfDate) freshen();
    QWidget::showEvent(event);
}

void CoveredPiecePicture::freshen() {
    m_outOfDate = false;
    const PieceBox before = m_piece.box;
    m_piece = coveredPiece(m_document.job(), m_document.layout());
    if (!(before == m_piece.box)) updateGeometry();
    const QStringList misses = missWords(m_document.job(), m_piece);
    const QString said = m_piece.panels.empty() ? tr("No panels yet.")
                         : misses.isEmpty()
                             ? tr("%n panels joined as they will sit.", nullptr, int(m_piece.panels.size()))
                             : misses.join(u". "_s);
    if (said != accessibleDescription()) setAccessibleDescription(said);
    update();
    Q_EMIT pieceChanged();
}

PieceView CoveredPiecePicture::view() const {
    return viewInto(QRectF(rect()).adjusted(margin, margin, -margin, -margin), m_piece.box);
}

int CoveredPiecePicture::heightForWidth(int width) const {
    const double across = m_piece.box.width().toMillimetres(), up = m_piece.box.height().toMillimetres();
    if (across <= 0) return 120;
    return std::clamp(int(std::ceil((width - 2 * margin) * up / across + 2 * margin)), 120, 560);
}

std::optional<CopyOf> CoveredPiecePicture::selected() const {
    if (const auto &name = m_document.selection()) return CopyOf{name->panel, name->copy};
    if (!m_document.selectedPanel().empty()) return CopyOf{m_document.selectedPanel(), 1};
    return std::nullopt;
}

void CoveredPiecePicture::paintEvent(QPaintEvent *) {
    QPainter painter(this);
    const Colours colours = coloursOf(palette());
    if (m_piece.panels.empty()) {
        painter.setPen(colours.quiet);
        painter.drawText(rect().adjusted(12, 12, -12, -12), Qt::AlignCenter | Qt::TextWordWrap,
                         tr("The covered piece stands here as soon as there are panels."));
        return;
    }
    QFont small = font();
    small.setPixelSize(std::max(11, qRound(fontInfo().pixelSize() * 0.85)));
    small.setBold(true);
    paintCoveredPiece(painter, m_document.job(), m_piece, view(), {colours, small, selected()});
    if (!hasFocus()) return;
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(colours.accent, 1.5));
    painter.setBrush(Qt::NoBrush);
    painter.drawRoundedRect(QRectF(rect()).adjusted(1, 1, -1, -1), 6, 6);
}

const CoveredPanel *CoveredPiecePicture::panelAt(QPointF at) const {
    const PieceView v = view();
    for (const CoveredPanel &panel : m_piece.panels)
        if (v.at(panel.outline).containsPoint(at, Qt::OddEvenFill)) return &panel;
    return nullptr;
}

void CoveredPiecePicture::select(const CoveredPanel &panel) {
    if (panel.parts.empty())
        m_document.selectPanel(panel.copy.panel);
    else
        m_document.select(nameOf(m_document.layout().cuts[std::size_t(panel.parts.front().cut)]));
}

void CoveredPiecePicture::mousePressEvent(QMouseEvent *event) {
    if (event->button() != Qt::LeftButton) return;
    if (m_outOfDate) freshen();
    const CoveredPanel *panel = panelAt(event->position());
    if (!panel) {
        m_document.select(std::nullopt);
        return;
    }
    // Of a panel in pieces, the piece that was clicked.
    for (const CoveredPart &part : panel->parts)
        if (view().at(part.outline).containsPoint(event->position(), Qt::OddEvenFill)) {
            m_document.select(nameOf(m_document.layout().cuts[std::size_t(part.cut)]));
            return;
        }
    select(*panel);
}

void CoveredPiecePicture::mouseMoveEvent(QMouseEvent *event) {
    setCursor(panelAt(event->position()) ? Qt::PointingHandCursor : Qt::ArrowCursor);
}

/// The panel that lies most nearly that way: near ahead counts, far to the side counts double.
const CoveredPanel *CoveredPiecePicture::nextTo(const CoveredPanel &from, QPointF heading) const {
    const PieceView v = view();
    const QPointF here = v.at(boxOf(from.outline)).center();
    const CoveredPanel *best = nullptr;
    double least = 0;
    for (const CoveredPanel &panel : m_piece.panels) {
        const QPointF step = v.at(boxOf(panel.outline)).center() - here;
        const double ahead = QPointF::dotProduct(step, heading);
        if (&panel == &from || ahead < 1) continue;
        const double side = std::abs(step.x() * heading.y() - step.y() * heading.x()), far = ahead + 2 * side;
        if (best && far >= least) continue;
        best = &panel;
        least = far;
    }
    return best;
}

void CoveredPiecePicture::keyPressEvent(QKeyEvent *event) {
    const int key = event->key();
    const QPointF heading = key == Qt::Key_Left    ? QPointF(-1, 0)
                            : key == Qt::Key_Right ? QPointF(1, 0)
                            : key == Qt::Key_Up    ? QPointF(0, -1)
                            : key == Qt::Key_Down  ? QPointF(0, 1)
                                                   : QPointF();
    if (heading.isNull() || m_piece.panels.empty()) {
        QWidget::keyPressEvent(event);
        return;
    }
    if (m_outOfDate) freshen();
    const std::optional<CopyOf> here = selected();
    const CoveredPanel *from = here ? m_piece.panel(*here) : nullptr;
    if (!from)
        select(m_piece.panels.front());
    else if (const CoveredPanel *next = nextTo(*from, heading))
        select(*next);
}

bool CoveredPiecePicture::event(QEvent *event) {
    if (event->type() != QEvent::ToolTip) return QWidget::event(event);
    const auto *help = static_cast<QHelpEvent *>(event);
    if (const CoveredPanel *panel = panelAt(help->pos()))
        QToolTip::showText(help->globalPos(), panelWords(m_document.job(), m_piece, *panel).join(u'\n'), this);
    else
        QToolTip::hideText();
    return true;
}

CoveredPieceView::CoveredPieceView(JobDocument &document, QWidget *parent)
    : QWidget(parent), m_document(document), m_picture(new CoveredPiecePicture(document, this)),
      m_misses(new QLabel(this)), m_quiet(new QLabel(this)) {
    auto *title = new QLabel(tr("As it will look"), this);
    title->setObjectName(u"paneTitle"_s);
    auto *save = new QToolButton(this);
    save->setText(tr("Save picture…"));
    save->setToolTip(
        tr("Writes this picture of the covered piece, to show the client or to print. The job itself is saved by the "
           "menu Job."));
    connect(save, &QToolButton::clicked, this, &CoveredPieceView::savePicture);
    auto *print = new QToolButton(this);
    print->setText(tr("Print picture…"));
    print->setToolTip(
        tr("Prints this picture of the covered piece, after a look at the page. The cutting sheet is printed by the "
           "menu Job."));
    connect(print, &QToolButton::clicked, this, &CoveredPieceView::print);
    auto *deeds = new QWidget(this); // both go below the title where they have no room beside it
    auto *row = new QHBoxLayout(deeds);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(save);
    row->addWidget(print);
    auto *top = new WrappingRow(6);
    top->addWidget(title);
    top->addWidget(deeds);
    m_misses->setWordWrap(true);
    m_misses->setAccessibleName(tr("Where the pattern does not run on"));
    m_quiet->setWordWrap(true);
    m_quiet->setObjectName(u"quiet"_s);
    for (QLabel *label : {m_misses, m_quiet}) label->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Minimum);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(18, 10, 10, 8);
    column->setSpacing(6);
    column->addLayout(top);
    column->addWidget(m_picture, 1);
    column->addWidget(m_misses);
    column->addWidget(m_quiet);
    connect(m_picture, &CoveredPiecePicture::pieceChanged, this, &CoveredPieceView::refreshWords);
    refreshWords();
}

QStringList CoveredPieceView::sentences() const { return missWords(m_document.job(), m_picture->piece()); }

void CoveredPieceView::refreshWords() {
    QStringList said = sentences();
    constexpr qsizetype most = 3; // the picture needs the room; each is told at its panel too
    const qsizetype more = said.size() - most;
    if (more > 0) said = said.first(most) << tr("and %n more", nullptr, int(more));
    const auto &cloths = m_document.job().cloths;
    const bool right = said.isEmpty();
    const bool patterned =
        std::any_of(cloths.begin(), cloths.end(), [](const Cloth &c) { return c.pattern.has_value(); });
    // A join says nothing while one side of it is put aside.
    const CoveredPiece &piece = m_picture->piece();
    const bool laid = std::any_of(piece.joins.begin(), piece.joins.end(), [&](const CoveredJoin &join) {
        return !piece.panels[std::size_t(join.a)].parts.empty() && !piece.panels[std::size_t(join.b)].parts.empty();
    });
    const bool any = laid && (patterned || !right);
    const Colours colours = coloursOf(palette());
    QPalette ink = m_misses->palette();
    ink.setColor(QPalette::WindowText, right ? colours.good : colours.broken);
    m_misses->setPalette(ink);
    m_misses->setText(right ? tr("✓ The pattern runs on over every join laid.") : said.join(u'\n'));
    m_misses->setVisible(any);
    m_misses->setMinimumHeight(2 * m_misses->fontMetrics().lineSpacing()); // the picture keeps its size in the hand
    const QString quiet = outOfSightWords(m_document.job(), m_picture->piece());
    m_quiet->setText(quiet);
    m_quiet->setVisible(!quiet.isEmpty());
}

void CoveredPieceView::changeEvent(QEvent *event) {
    if (event->type() == QEvent::ApplicationPaletteChange) refreshWords();
    QWidget::changeEvent(event);
}

void CoveredPieceView::savePicture() {
    QString file = QFileDialog::getSaveFileName(this, tr("Save the picture of the covered piece"),
                                                tr("%1, covered piece").arg(m_document.displayName()) + u".png"_s,
                                                tr("Pictures (*.png *.svg);;Page (*.pdf)"));
    if (file.isEmpty()) return;
    if (QFileInfo(file).suffix().isEmpty()) file += u".png"_s;
    writePicture(file);
}

void CoveredPieceView::writePicture(const QString &file) {
    const auto written =
        writeCoveredPiece(m_document.jobForPaper(), m_document.laidLayout(), QFileInfo(file).filesystemFilePath());
    if (written)
        Q_EMIT saved(file);
    else
        Q_EMIT failed(fromCore(written.error().text));
}

void CoveredPieceView::print() {
    if (m_picture->piece().panels.empty()) {
        Q_EMIT failed(tr("There are no panels to print yet."));
        return;
    }
    QPrinter printer(QPrinter::HighResolution);
    printer.setDocName(m_document.displayName());
    const auto &box = m_picture->piece().box;
    printer.setPageOrientation(box.width() > box.height() ? QPageLayout::Landscape : QPageLayout::Portrait);
    QPrintPreviewDialog preview(&printer, this);
    preview.setWindowTitle(tr("Print the covered piece"));
    preview.resize(900, 700);
    connect(&preview, &QPrintPreviewDialog::paintRequested, this, [this](QPrinter *on) {
        QPainter painter(on);
        const QRectF page(QPointF(0, 0), on->pageLayout().paintRectPixels(on->resolution()).size());
        paintPiecePage(painter, page, m_document.jobForPaper(), m_document.laidLayout(), on->resolution() * 10 / 72);
    });
    preview.exec();
}

} // namespace boltwright::ui
