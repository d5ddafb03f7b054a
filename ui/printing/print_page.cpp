#include "ui/printing/print_page.h"

#include "core/planner/plan.h"
#include "ui/answers/answering.h"
#include "ui/settings/preferences.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"
#include "ui/widgets/scaled.h"

#include <QComboBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QPrintDialog>
#include <QPrintPreviewWidget>
#include <QPrinter>
#include <QPushButton>
#include <QScrollArea>
#include <QSpinBox>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

constexpr int ownGrid = -1, slips = -2; // in place of an index into the usual grids

template <class Value>
void chooseData(QComboBox *box, const Value &value) {
    box->setCurrentIndex(std::max(0, box->findData(QVariant::fromValue(value))));
}

} // namespace

PrintPage::PrintPage(JobDocument &document, Preferences &preferences, QWidget *parent)
    : QWidget(parent), m_document(document), m_preferences(preferences),
      m_printer(std::make_unique<QPrinter>(QPrinter::HighResolution)), m_answering(new Answering(document, this)),
      m_form(new QFormLayout), m_what(new QComboBox(this)), m_paper(new QComboBox(this)), m_hold(new QComboBox(this)),
      m_scale(new QComboBox(this)), m_changed(new QComboBox(this)), m_grid(new QComboBox(this)),
      m_panel(new QComboBox(this)), m_columns(new QSpinBox(this)), m_rows(new QSpinBox(this)),
      m_used(new QSpinBox(this)), m_said(new QLabel(this)), m_count(new QLabel(this)),
      m_print(new QPushButton(tr("Print…"), this)), m_save(new QPushButton(tr("Save as PDF…"), this)),
      m_preview(new QPrintPreviewWidget(m_printer.get(), this)) {
    m_printer->setFullPage(true);
    m_print->setObjectName(u"mainButton"_s);
    m_said->setObjectName(u"refusal"_s);
    m_said->setWordWrap(true);
    m_count->setObjectName(u"quiet"_s);
    m_count->setWordWrap(true);
    m_preview->setAccessibleName(tr("The pages as they will be"));
    m_preview->setMinimumWidth(320);
    buildForm();
    auto *left = new QWidget(this);
    auto *column = new QVBoxLayout(left);
    column->setContentsMargins(0, 0, 8, 0);
    column->addLayout(m_form);
    column->addWidget(m_said);
    column->addWidget(m_count);
    column->addStretch();
    column->addWidget(m_print);
    column->addWidget(m_save);
    auto *scroll = new QScrollArea(this);
    scroll->setFrameShape(QFrame::NoFrame);
    scroll->setWidgetResizable(true);
    scroll->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    scroll->setWidget(left);
    scroll->setMinimumWidth(scaled(330));
    scroll->setMaximumWidth(scaled(380));
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->addWidget(scroll);
    row->addWidget(m_preview, 1);
    setFocusProxy(m_what);

    connect(m_preview, &QPrintPreviewWidget::paintRequested, this, &PrintPage::paintOn);
    connect(m_print, &QPushButton::clicked, this, &PrintPage::print);
    connect(m_save, &QPushButton::clicked, this, &PrintPage::savePdf);
    connect(&document, &JobDocument::changed, this, [this](Changes changes) {
        if (!(changes & (Change::Card | Change::Cloths | Change::Panels | Change::Layout | Change::NewJob))) return;
        m_why.clear();
        m_whyAsked = false;
        fillFromJob();
        refresh();
    });
    fillFromJob();
    showGrid(m_preferences.labelGrid());
    showOptions();
    refresh();
}

PrintPage::~PrintPage() = default;

void PrintPage::buildForm() {
    m_form->setFieldGrowthPolicy(QFormLayout::ExpandingFieldsGrow);
    m_what->addItems({tr("Cutting sheet"), tr("Labels"), tr("True size"), tr("Client's page")});
    for (Paper paper : allPapers()) m_paper->addItem(fromCore(nameOf(paper)), int(paper));
    m_paper->setCurrentIndex(m_paper->findData(int(m_preferences.paper())));
    m_hold->addItem(tr("as it fits best"), 0);
    m_hold->addItem(tr("upright"), 1);
    m_hold->addItem(tr("sideways"), 2);
    m_scale->addItem(tr("what can be read"), 0);
    for (int scale : {8, 10, 16, 20}) m_scale->addItem(u"1:%1"_s.arg(scale), scale);
    m_scale->addItem(tr("all on one page"), -1);
    m_form->addRow(tr("What"), m_what);
    m_form->addRow(tr("Paper"), m_paper);
    m_form->addRow(tr("Held"), m_hold);
    m_form->addRow(tr("Scale"), m_scale);
    m_form->addRow(tr("Changed since"), m_changed);
    m_form->addRow(tr("Panel"), m_panel);
    buildLabelFields();
    const auto on = [this](QComboBox *box, auto deed) { connect(box, &QComboBox::activated, this, deed); };
    on(m_what, [this] {
        showOptions();
        refresh();
    });
    on(m_paper, [this] {
        m_preferences.setPaper(Paper(m_paper->currentData().toInt()));
        refresh();
    });
    for (QComboBox *box : {m_hold, m_scale, m_changed, m_panel}) on(box, [this] { refresh(); });
}

void PrintPage::buildLabelFields() {
    const Unit unit = m_document.job().unit;
    const auto grids = usualLabelGrids();
    for (Paper paper : {Paper::Letter, Paper::A4})
        m_grid->addItem(tr("slips to cut, %1").arg(fromCore(nameOf(paper))), slips - int(paper));
    for (int i = 0; i < int(grids.size()); ++i)
        m_grid->addItem(withFractions(fromCore(spokenGrid(grids[std::size_t(i)], unit))), i);
    m_grid->addItem(tr("of my own"), ownGrid);
    m_form->addRow(tr("Labels"), m_grid);
    m_columns->setRange(1, 20);
    m_rows->setRange(1, 50);
    m_used->setRange(0, 999);
    m_form->addRow(tr("Columns"), m_columns);
    m_form->addRow(tr("Rows"), m_rows);
    const QStringList names = {tr("Label width"),    tr("Label height"),   tr("First from left"),
                               tr("First from top"), tr("Every (across)"), tr("Every (down)")};
    for (const QString &name : names) {
        auto *edit =
            new LengthEdit(unit, m_measures.size() < 2 ? LengthRange::AboveZero : LengthRange::ZeroOrMore, this);
        edit->setAccessibleName(name);
        m_form->addRow(name, edit);
        connect(edit, &LengthEdit::lengthChanged, this, [this] {
            if (m_filling) return;
            chooseData(m_grid, ownGrid);
            refresh();
        });
        m_measures << edit;
    }
    m_form->addRow(tr("Used already"), m_used);
    for (QSpinBox *box : {m_columns, m_rows})
        connect(box, &QSpinBox::valueChanged, this, [this] {
            if (m_filling) return;
            chooseData(m_grid, ownGrid);
            refresh();
        });
    connect(m_used, &QSpinBox::valueChanged, this, [this] { refresh(); });
    connect(m_grid, &QComboBox::activated, this, [this] {
        const int which = m_grid->currentData().toInt();
        if (which >= 0) showGrid(usualLabelGrids()[std::size_t(which)]);
        if (which <= slips) showGrid(slipsOn(Paper(slips - which)));
        refresh();
    });
}

void PrintPage::fillFromJob() {
    const Job &job = m_document.job();
    m_filling = true;
    const QString panel = m_panel->currentData().toString();
    const int changed = m_changed->count() > 0 ? m_changed->currentData().toInt() : -1;
    m_panel->clear();
    m_panel->addItem(tr("the whole layout"), QString());
    for (const Panel &p : job.panels)
        for (int copy = 1; copy <= p.count; ++copy) {
            QString text = fromCore(p.mark.empty() ? p.name : p.mark + " · " + p.name);
            if (p.count > 1) text = tr("%1, %2 of %3").arg(text).arg(copy).arg(p.count);
            m_panel->addItem(text, fromCore(p.id) + u'/' + QString::number(copy));
        }
    chooseData(m_panel, panel);
    m_changed->clear();
    m_changed->addItem(tr("nothing to compare with"), -1);
    for (int i = 0; i < int(job.layouts.size()); ++i)
        if (i != m_document.layoutIndex())
            m_changed->addItem(job.layouts[std::size_t(i)].name.empty() ? tr("layout %1").arg(i + 1)
                                                                        : fromCore(job.layouts[std::size_t(i)].name),
                               i);
    chooseData(m_changed, changed);
    for (LengthEdit *edit : m_measures) edit->setUnit(job.unit);
    m_filling = false;
}

/// Only what belongs to the kind of page is there to choose.
void PrintPage::showOptions() {
    const auto what = PrintWishes::What(m_what->currentIndex());
    const bool sheet = what == PrintWishes::What::CuttingSheet, labels = what == PrintWishes::What::Labels,
               real = what == PrintWishes::What::TrueSize;
    const auto show = [this](QWidget *field, bool shown) {
        field->setVisible(shown);
        if (QWidget *label = m_form->labelForField(field)) label->setVisible(shown);
    };
    show(m_paper, !labels);
    show(m_hold, sheet || real);
    show(m_scale, sheet);
    show(m_changed, sheet && m_changed->count() > 1);
    show(m_panel, real);
    for (QWidget *field : QList<QWidget *>{m_grid, m_columns, m_rows, m_used}) show(field, labels);
    for (LengthEdit *edit : m_measures) show(edit, labels);
}

void PrintPage::showGrid(const LabelGrid &grid) {
    m_filling = true;
    m_columns->setValue(grid.columns);
    m_rows->setValue(grid.rows);
    const QList<Length> lengths = {grid.width,   grid.height,      grid.fromLeft,
                                   grid.fromTop, grid.everyAcross, grid.everyDown};
    for (qsizetype i = 0; i < lengths.size(); ++i) m_measures[i]->setLength(lengths[i]);
    int which = ownGrid;
    const auto usual = usualLabelGrids();
    for (int i = 0; i < int(usual.size()); ++i)
        if (usual[std::size_t(i)] == grid) which = i;
    for (Paper paper : {Paper::Letter, Paper::A4})
        if (slipsOn(paper) == grid) which = slips - int(paper);
    chooseData(m_grid, which);
    if (which == ownGrid) m_paper->setCurrentIndex(m_paper->findData(int(grid.paper)));
    m_filling = false;
}

LabelGrid PrintPage::gridAsTyped() const {
    const int which = m_grid->currentData().toInt();
    if (which >= 0) return usualLabelGrids()[std::size_t(which)];
    if (which <= slips) return slipsOn(Paper(slips - which));
    const auto measure = [this](int i) { return m_measures[i]->length().value_or(Length{}); };
    return {Paper(m_paper->currentData().toInt()),
            m_columns->value(),
            m_rows->value(),
            measure(0),
            measure(1),
            measure(2),
            measure(3),
            measure(4),
            measure(5)};
}

PrintWishes PrintPage::wishes() const {
    PrintWishes wishes;
    wishes.what = PrintWishes::What(m_what->currentIndex());
    wishes.paper = Paper(m_paper->currentData().toInt());
    if (const int hold = m_hold->currentData().toInt(); hold > 0) wishes.sideways = hold == 2;
    const int scale = m_scale->currentData().toInt();
    if (scale > 0) wishes.scale = scale;
    wishes.onOnePage = scale < 0;
    if (const int from = m_changed->currentData().toInt(); from >= 0) wishes.changedFrom = from;
    wishes.grid = gridAsTyped();
    wishes.labelsUsed = m_used->value();
    wishes.panel = toCore(m_panel->currentData().toString());
    wishes.why = m_why;
    return wishes;
}

void PrintPage::refresh() {
    if (m_filling) return;
    const PrintWishes wished = wishes();
    const auto made = pagesFor(m_document.jobForPaper(), m_document.laidLayout(), wished);
    m_pages = made ? *made : nullptr;
    m_said->setText(made ? QString() : withFractions(fromCore(made.error().text)));
    m_said->setVisible(!made);
    QString count;
    if (made) count = m_pages->count() == 1 ? tr("1 page") : tr("%n pages", nullptr, m_pages->count());
    if (wished.what == PrintWishes::What::Labels && made) m_preferences.setLabelGrid(wished.grid);
    if (wished.what == PrintWishes::What::ClientPage && m_answering->isRunning())
        count += u" · "_s + tr("the steps of why are being planned");
    m_count->setText(count);
    m_print->setEnabled(bool(m_pages));
    m_save->setEnabled(bool(m_pages));
    if (wished.what == PrintWishes::What::ClientPage && made) planWhy();
    m_preview->updatePreview();
}

/// The staircases of the client's page take a while to plan: the page stands without them until they are there.
void PrintPage::planWhy() {
    if (m_whyAsked || m_seconds <= 0) return;
    m_whyAsked = true;
    m_answering->start([this, seconds = m_seconds](const Job &job, const Layout &laid, const Answering::Stop &stop,
                                                   const Answering::Report &) -> std::function<void()> {
        std::vector<Staircase> why;
        for (const Cloth &cloth : job.cloths) {
            if (!cloth.bolt || stop()) continue;
            StaircaseOptions options;
            options.plan.seconds = seconds;
            options.plan.stop = stop;
            options.plan.from = &laid;
            if (auto stairs = staircaseOf(job, cloth.id, options)) why.push_back(*std::move(stairs));
        }
        return [this, why] {
            m_why = why;
            QMetaObject::invokeMethod(this, &PrintPage::refresh, Qt::QueuedConnection);
        };
    });
}

void PrintPage::showChangesFrom(int layout) {
    showWhat(PrintWishes::What::CuttingSheet);
    chooseData(m_changed, layout);
    refresh();
}

void PrintPage::showWhat(PrintWishes::What what) {
    m_what->setCurrentIndex(int(what));
    showOptions();
    refresh();
}

QString PrintPage::refusal() const { return m_said->text(); }

void PrintPage::paintOn(QPrinter *printer) {
    if (m_pages && !paintAll(*printer, *m_pages)) m_said->setText(tr("The printer takes no pages."));
}

void PrintPage::print() {
    if (!m_pages) return;
    QPrinter printer(QPrinter::HighResolution);
    printer.setFullPage(true);
    printer.setDocName(m_pages->title());
    QPrintDialog dialog(&printer, this);
    if (dialog.exec() == QDialog::Accepted) paintOn(&printer);
}

bool PrintPage::writePdfTo(const QString &fileName) {
    if (!m_pages) return false;
    const QString name = QFileInfo(fileName).suffix().isEmpty() ? fileName + u".pdf"_s : fileName;
    const auto written = writePdf(*m_pages, name.toStdString());
    m_said->setText(written ? QString() : fromCore(written.error().text));
    m_said->setVisible(!written);
    if (written) m_count->setText(tr("It is in %1.").arg(name));
    return bool(written);
}

void PrintPage::savePdf() {
    const QFileInfo job(m_document.fileName());
    const QString folder = job.exists() ? job.absolutePath() + u'/' : QString();
    const QString name = QFileDialog::getSaveFileName(
        this, tr("Save as PDF"), folder + (m_pages ? m_pages->title() : QString()).replace(u'/', u'-') + u".pdf"_s,
        tr("PDF (*.pdf)"));
    if (!name.isEmpty()) writePdfTo(name);
}

} // namespace boltwright::ui
