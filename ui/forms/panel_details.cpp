#include "ui/forms/panel_details.h"

#include "core/edit/job_edit.h"
#include "core/measure/length_text.h"
#include "ui/forms/edge_picture.h"
#include "ui/models/edge_table_model.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"
#include "ui/widgets/scaled.h"
#include "ui/widgets/sheet_table.h"
#include "ui/widgets/wrapping_row.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QLabel>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QScrollBar>
#include <QSpinBox>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

QString cornersText(const std::vector<std::pair<Length, Length>> &corners, Unit unit) {
    QStringList lines;
    for (const auto &[x, y] : corners)
        lines << fromCore(writeDecimal(x, unit)) + u";  "_s + fromCore(writeDecimal(y, unit));
    return lines.join(u'\n');
}

Result<std::vector<std::pair<Length, Length>>> readCorners(const QString &text, Unit unit) {
    std::vector<std::pair<Length, Length>> corners;
    int number = 0;
    for (const QString &line : text.split(u'\n')) {
        if (line.trimmed().isEmpty()) continue;
        ++number;
        const QStringList parts = line.split(u';');
        if (parts.size() != 2)
            return fault(toCore(
                QObject::tr("Corner %1: two measures with a semicolon between them, such as 24; 17 1/2.").arg(number)));
        const auto x = typedLength(parts[0], unit, LengthRange::Any), y = typedLength(parts[1], unit, LengthRange::Any);
        for (const auto &read : {x, y})
            if (!read) return fault(toCore(QObject::tr("Corner %1: %2").arg(number).arg(fromCore(read.error().text))));
        corners.push_back({*x, *y});
    }
    if (corners.size() < 3) return fault(toCore(QObject::tr("An outline needs at least three corners.")));
    return corners;
}

namespace {

enum MotifPlace { Middle, OwnPoint };
constexpr int mostEdgesSeen = 5; ///< of a panel with more, the table is scrolled

} // namespace

PanelDetails::PanelDetails(JobDocument &document, QWidget *parent)
    : QWidget(parent), m_document(document), m_edgeModel(new EdgeTableModel(document, this)) {
    auto *row = new WrappingRow(28, this);
    row->setContentsMargins(0, 10, 0, 0);
    buildEdges();
    QFormLayout *second = block(tr("When cloth is short"));
    buildLeave(*second);
    head(*second, tr("Motif"));
    buildMotif(*second);
    buildPieces();
    buildCorners();
    show();
}

QFormLayout *PanelDetails::block(const QString &title) {
    auto *box = new QWidget(this);
    auto *form = new QFormLayout(box);
    form->setContentsMargins(0, 0, 0, 0);
    form->setVerticalSpacing(4);
    head(*form, title);
    layout()->addWidget(box);
    layout()->setAlignment(box, Qt::AlignTop);
    return form;
}

void PanelDetails::head(QFormLayout &form, const QString &title) {
    auto *label = new QLabel(title, this);
    label->setObjectName(u"paneTitle"_s);
    if (form.rowCount() > 0) label->setContentsMargins(0, 10, 0, 0);
    form.addRow(label);
}

void PanelDetails::buildEdges() {
    QFormLayout *form = block(tr("Edge by edge"));
    m_edges = new SheetTable(this);
    m_edges->setModel(m_edgeModel);
    m_edges->verticalHeader()->show();
    m_edges->setAccessibleName(tr("Edges of the panel"));
    m_edges->setToolTip(tr("What is added at each edge, and what may be given up there when the cloth is short."));
    m_edges->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    connect(m_edgeModel, &EdgeTableModel::refused, this, [this](const QString &sentence) {
        m_edges->stay();
        Q_EMIT refused(sentence);
    });
    m_least = new LengthEdit(m_document.job().unit, LengthRange::ZeroOrMore, this);
    m_least->setOptional(tr("in full"));
    m_least->setToolTip(
        tr("How far what is added may be trimmed at every edge when the cloth is short. Left empty: not at all."));
    connect(m_least, &LengthEdit::lengthChanged, this, [this](auto l) {
        change(tr("Least allowances"), [=](Panel &p) { p = withLeastAtEdges(std::move(p), l); });
    });
    form->addRow(m_edges);
    form->addRow(tr("All at least"), m_least);
}

void PanelDetails::buildLeave(QFormLayout &form) {
    m_mayTurn = new QCheckBox(tr("It may be turned"), this);
    m_mayUncentre = new QCheckBox(tr("It may lie off centre"), this);
    m_other = new QComboBox(this);
    m_other->setObjectName(u"other cloth"_s);
    m_other->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
    m_other->setMinimumContentsLength(18);
    m_mayTurn->setToolTip(tr("When the cloth is short this panel may lie the other way, against pile or print."));
    m_mayUncentre->setToolTip(tr("When the cloth is short the motif may sit beside the middle of this panel."));
    m_other->setToolTip(tr("When the cloth is short this panel may be cut from another cloth of the job, or from some "
                           "other cloth that is none of this job: it is then left out here."));
    form.addRow(m_mayTurn);
    form.addRow(m_mayUncentre);
    form.addRow(tr("Other cloth"), m_other);
    connect(m_mayTurn, &QCheckBox::clicked, this,
            [this](bool on) { change(tr("May be turned"), [=](Panel &p) { p.may.turn = on; }); });
    connect(m_mayUncentre, &QCheckBox::clicked, this,
            [this](bool on) { change(tr("May lie off centre"), [=](Panel &p) { p.may.uncentre = on; }); });
    connect(m_other, &QComboBox::activated, this, [this](int index) {
        const OtherCloth other{index == 1, index > 1 ? toCore(m_other->itemData(index).toString()) : std::string()};
        change(tr("Other cloth"), [&](Panel &p) { p.may.otherCloth = other; });
    });
}

void PanelDetails::buildPieces() {
    QFormLayout *form = block(tr("Made of pieces"));
    const Unit unit = m_document.job().unit;
    m_pieces = new QSpinBox(this);
    m_pieces->setRange(1, 1000);
    m_seam = new LengthEdit(unit, LengthRange::ZeroOrMore, this);
    m_shortest = new LengthEdit(unit, LengthRange::ZeroOrMore, this);
    m_joins = new QComboBox(this);
    m_joins->setObjectName(u"joins lie"_s);
    m_joins->addItems({tr("anywhere"), tr("the same on both sides")});
    m_match = new QCheckBox(tr("The pattern runs on over every join"), this);
    form->addRow(tr("Pieces at most"), m_pieces);
    form->addRow(tr("Seam at a join"), m_seam);
    form->addRow(tr("No piece shorter than"), m_shortest);
    form->addRow(tr("Joins lie"), m_joins);
    form->addRow(m_match);
    m_pieces->setToolTip(
        tr("Of how many pieces it may be sewn together where the cloth is too narrow or too short. 1: cut whole."));
    m_seam->setToolTip(tr("What is added on each side of a join for the seam between two pieces."));
    m_shortest->setToolTip(tr("A join is never set so near the edge that a piece would be shorter than this."));
    m_joins->setToolTip(tr("Where joins go: anywhere, or as far from the left as from the right, so that they are seen "
                           "to be meant."));
    m_match->setToolTip(tr("Pieces are cut so that the pattern goes on over the seam as if it were not there. It costs "
                           "cloth."));
    connect(m_pieces, &QSpinBox::valueChanged, this,
            [this](int most) { change(tr("Pieces"), [=](Panel &p) { p.pieces.most = most; }); });
    connect(m_seam, &LengthEdit::lengthChanged, this,
            [this](auto l) { change(tr("Seam"), [=](Panel &p) { p.pieces.seam = l.value_or(Length{}); }); });
    connect(m_shortest, &LengthEdit::lengthChanged, this, [this](auto l) {
        change(tr("Shortest piece"), [=](Panel &p) { p.pieces.shortest = l.value_or(Length{}); });
    });
    connect(m_joins, &QComboBox::activated, this, [this](int where) {
        change(tr("Where joins lie"), [=](Panel &p) { p.pieces.where = Pieces::Where(where); });
    });
    connect(m_match, &QCheckBox::clicked, this,
            [this](bool on) { change(tr("Pattern over joins"), [=](Panel &p) { p.pieces.match = on; }); });
}

void PanelDetails::buildMotif(QFormLayout &form) {
    const Unit unit = m_document.job().unit;
    m_motif = new QComboBox(this);
    m_motif->setObjectName(u"motif place"_s);
    m_motif->addItems({tr("the middle"), tr("a point of it")});
    m_motif->setToolTip(
        tr("What of the panel the motif sits on where it is centred: its middle, or a point of your own, "
           "as where a part of it is out of sight."));
    m_motifAcross = new LengthEdit(unit, LengthRange::Any, this);
    m_motifUp = new LengthEdit(unit, LengthRange::Any, this);
    m_motifAcross->setAccessibleName(tr("Motif, across"));
    m_motifUp->setAccessibleName(tr("Motif, up"));
    m_motifAcross->setToolTip(tr("How far across, from the panel's lower left corner as measured."));
    m_motifUp->setToolTip(tr("How far up, from the panel's lower left corner as measured."));
    form.addRow(tr("Centred on"), m_motif);
    form.addRow(tr("across"), m_motifAcross);
    form.addRow(tr("up"), m_motifUp);
    connect(m_motif, &QComboBox::activated, this, [this](int place) {
        change(tr("What is centred"), [=](Panel &p) {
            if (!p.motif) return;
            if (place == OwnPoint && !p.motif->at) p.motif->at = anchorOf(p);
            if (place == Middle) p.motif->at.reset();
        });
    });
    const auto axis = [this](LengthEdit *edit, Length PanelPoint::*side) {
        connect(edit, &LengthEdit::lengthChanged, this, [this, side](std::optional<Length> l) {
            change(tr("Point that is centred"), [=](Panel &p) {
                if (l && p.motif && p.motif->at) (*p.motif->at).*side = *l;
            });
        });
    };
    axis(m_motifAcross, &PanelPoint::x);
    axis(m_motifUp, &PanelPoint::y);
}

void PanelDetails::buildCorners() {
    QFormLayout *form = block(tr("Corners"));
    auto *label = new QLabel(tr("One a line: across; up. Against the clock."), this);
    label->setObjectName(u"quiet"_s);
    m_corners = new QPlainTextEdit(this);
    m_corners->setFixedHeight(fontMetrics().height() * 5 + 12);
    m_corners->setFixedWidth(scaled(130));
    m_corners->setTabChangesFocus(true);
    m_corners->setAccessibleName(tr("Corners"));
    m_corners->setToolTip(
        tr("The outline as it is on the piece, before anything is added. Any shape with straight edges will do."));
    auto *take = new QPushButton(tr("Take these corners"), this);
    take->setToolTip(tr("Cuts the panel to these corners; its shape is then an outline of its own."));
    connect(take, &QPushButton::clicked, this, &PanelDetails::takeCorners);
    form->addRow(label);
    m_picture = new EdgePicture(this);
    m_picture->setFixedSize(scaled(120), m_corners->height());
    auto *both = new QHBoxLayout;
    both->addWidget(m_corners);
    both->addWidget(m_picture);
    form->addRow(both);
    connect(m_picture, &EdgePicture::edgeChosen, this, [this](int edge) {
        m_edges->setCurrentIndex(m_edgeModel->index(edge, EdgeTableModel::Added));
        m_edges->setFocus();
    });
    const auto showEdge = [this] {
        const QModelIndex now = m_edges->currentIndex();
        m_picture->showEdge(now.isValid() ? std::optional(now.row()) : std::nullopt);
    };
    connect(m_edges->selectionModel(), &QItemSelectionModel::currentChanged, this, showEdge);
    connect(m_edgeModel, &QAbstractItemModel::modelReset, this, showEdge);
    form->addRow(take);
}

void PanelDetails::showPanel(int panel) {
    m_panel = panel;
    show();
}

void PanelDetails::showCloths(const Panel &panel) {
    const Job &job = m_document.job();
    m_other->clear();
    m_other->addItem(tr("no"));
    m_other->addItem(tr("one that is not of this job"));
    for (const Cloth &cloth : job.cloths)
        if (&cloth != &job.clothOf(panel) || cloth.id == panel.may.otherCloth.id)
            m_other->addItem(fromCore(cloth.name.empty() ? cloth.id : cloth.name), fromCore(cloth.id));
    const OtherCloth &other = panel.may.otherCloth;
    m_other->setCurrentIndex(!other.id.empty() ? m_other->findData(fromCore(other.id)) : other.any ? 1 : 0);
}

void PanelDetails::show() {
    const Job &job = m_document.job();
    if (m_panel >= int(job.panels.size())) m_panel = -1;
    setEnabled(m_panel >= 0);
    m_edgeModel->showPanel(m_panel);
    m_picture->setVisible(m_panel >= 0);
    m_edges->resizeColumnsToContents();
    int wide = m_edges->verticalHeader()->sizeHint().width() + 2 * m_edges->frameWidth();
    for (int column = 0; column < EdgeTableModel::ColumnCount; ++column) wide += m_edges->columnWidth(column);
    const int rows = std::clamp(m_edgeModel->rowCount(), 4, mostEdgesSeen);
    const bool scrolls = m_edgeModel->rowCount() > mostEdgesSeen;
    m_edges->setFixedSize(wide + (scrolls ? m_edges->verticalScrollBar()->sizeHint().width() : 0),
                          m_edges->horizontalHeader()->sizeHint().height() + 2 * m_edges->frameWidth() +
                              rows * m_edges->verticalHeader()->defaultSectionSize());
    if (m_panel < 0) return;
    m_showing = true;
    const Panel &panel = job.panels[std::size_t(m_panel)];
    for (LengthEdit *edit : {m_seam, m_shortest, m_least, m_motifAcross, m_motifUp}) edit->setUnit(job.unit);
    const LeastAtEdges least = leastAtEdges(panel);
    m_least->setOptional(least.differs ? tr("differs by edge") : tr("in full"));
    m_least->setLength(least.least);
    m_mayTurn->setChecked(panel.may.turn);
    m_mayUncentre->setChecked(panel.may.uncentre);
    showCloths(panel);
    const bool rectangle = std::holds_alternative<Rectangle>(panel.shape);
    m_pieces->setValue(panel.pieces.most);
    m_pieces->setEnabled(rectangle);
    m_seam->setLength(panel.pieces.seam);
    m_shortest->setLength(panel.pieces.shortest);
    m_joins->setCurrentIndex(int(panel.pieces.where));
    m_match->setChecked(panel.pieces.match);
    for (QWidget *w : std::initializer_list<QWidget *>{m_seam, m_shortest, m_joins, m_match})
        w->setEnabled(rectangle && panel.pieces.most > 1);
    const bool atPoint = panel.motif && panel.motif->at;
    m_motif->setEnabled(panel.motif.has_value());
    m_motif->setCurrentIndex(atPoint ? OwnPoint : Middle);
    for (LengthEdit *edit : {m_motifAcross, m_motifUp}) edit->setEnabled(atPoint);
    m_motifAcross->setLength(anchorOf(panel).x);
    m_motifUp->setLength(anchorOf(panel).y);
    std::vector<std::pair<Length, Length>> corners;
    for (const PanelPoint &p : measuredOutline(panel.shape)) corners.push_back({p.x, p.y});
    m_corners->setPlainText(cornersText(corners, job.unit));
    m_picture->show(panel.shape);
    m_showing = false;
}

void PanelDetails::change(const QString &text, const std::function<void(Panel &)> &how) {
    if (m_showing || m_panel < 0) return;
    Job job = m_document.job();
    how(job.panels[std::size_t(m_panel)]);
    const auto done = m_document.changeJob(std::move(job), text, u"panel %1 %2"_s.arg(m_panel).arg(text));
    if (done) return;
    Q_EMIT refused(withFractions(fromCore(done.error().text)));
    show();
}

void PanelDetails::takeCorners() {
    const auto corners = readCorners(m_corners->toPlainText(), m_document.job().unit);
    if (!corners) {
        Q_EMIT refused(fromCore(corners.error().text));
        return;
    }
    change(tr("Corners"), [&](Panel &p) {
        PolygonShape shape;
        for (const auto &[x, y] : *corners) shape.points.push_back({x, y});
        p = withShape(std::move(p), std::move(shape));
    });
}

} // namespace boltwright::ui
