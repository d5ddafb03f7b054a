#include "ui/forms/piece_form_page.h"

#include "core/forms/piece_picture.h"
#include "core/forms/trim_list.h"
#include "core/measure/length_text.h"
#include "core/trimmings/reckoned.h"
#include "core/trimmings/welt.h"
#include "ui/drawing/colours.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"
#include "ui/widgets/scaled.h"
#include "ui/widgets/sheet_table.h"
#include "ui/widgets/svg_picture.h"
#include "ui/widgets/wrapping_row.h"

#include <QCheckBox>
#include <QComboBox>
#include <QFormLayout>
#include <QGridLayout>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QInputDialog>
#include <QLineEdit>
#include <QPushButton>
#include <QSpinBox>
#include <QSplitter>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

constexpr std::array<int, 4> edgeOrder = {Top, Bottom, Left, Right};

PictureInks inksOf(const Colours &c) {
    const auto name = [](const QColor &colour) { return toCore(colour.name()); };
    return {name(c.ink),
            name(c.quiet),
            name(c.accent),
            name(c.onAccent),
            name(c.paper),
            c.dark ? "#4A4652" : "#EFE6D4",
            c.dark ? "#6B5B45" : "#C9B79A"};
}

QString kindWords(PartKind kind) {
    switch (kind) {
    case PartKind::Rectangle:
        return PieceFormPage::tr("rectangle");
    case PartKind::Trapezoid:
        return PieceFormPage::tr("narrower at the top");
    case PartKind::OnPoint:
        return PieceFormPage::tr("square on point in its block");
    case PartKind::BoxCushion:
        return PieceFormPage::tr("box cushion");
    case PartKind::KnifeEdge:
        return PieceFormPage::tr("knife-edge cushion");
    case PartKind::KickSkirt:
        return PieceFormPage::tr("skirt with kick pleats");
    case PartKind::FlatSkirt:
        return PieceFormPage::tr("flat skirt");
    case PartKind::BoxPleatSkirt:
        return PieceFormPage::tr("box-pleated skirt");
    case PartKind::GatheredSkirt:
        return PieceFormPage::tr("gathered skirt");
    }
    return {};
}
constexpr std::array<PartKind, 9> allKinds = {PartKind::Rectangle,  PartKind::Trapezoid,     PartKind::OnPoint,
                                              PartKind::BoxCushion, PartKind::KnifeEdge,     PartKind::KickSkirt,
                                              PartKind::FlatSkirt,  PartKind::BoxPleatSkirt, PartKind::GatheredSkirt};

/// What a measure is called where a part gets it anew.
std::string measureWords(Measure measure) {
    switch (measure) {
    case Measure::Up:
        return "up and down";
    case Measure::Across:
        return "side to side";
    case Measure::Top:
        return "side to side at the top";
    case Measure::Thickness:
        return "thickness";
    case Measure::Side:
        return "along one side";
    }
    return {};
}

std::string freeId(const Job &job, const std::string &id) {
    std::string free = id;
    for (int n = 2; job.panel(free); ++n) free = id + "-" + std::to_string(n);
    return free;
}

} // namespace

PieceFormPage::PieceFormPage(JobDocument &document, Shop &shop, QWidget *parent)
    : QWidget(parent), m_document(document), m_shop(shop), m_rules(shop.rules(document.job().unit)),
      m_model(new MeasureTableModel(this)), m_table(new SheetTable(this)), m_refusal(new QLabel(this)) {
    m_table->setModel(m_model);
    m_table->setAccessibleName(tr("What was measured"));
    m_table->setToolTip(tr("One line a part: what the tape says, how many are cut, and whether this piece has it. The "
                           "drawing shows from where to where."));
    m_table->horizontalHeader()->setMinimumSectionSize(52);
    m_refusal->setObjectName(u"refusal"_s);
    m_refusal->setWordWrap(true);
    m_refusal->hide();

    auto *left = new QWidget(this);
    auto *leftColumn = new QVBoxLayout(left);
    leftColumn->setContentsMargins(0, 0, 8, 0);
    leftColumn->addWidget(m_refusal);
    leftColumn->addWidget(m_table, 1);
    leftColumn->addWidget(buildDetails());
    auto *splitter = new QSplitter(Qt::Horizontal, this);
    splitter->setChildrenCollapsible(false);
    splitter->setHandleWidth(1);
    splitter->addWidget(left);
    splitter->addWidget(buildPicture());
    splitter->setStretchFactor(0, 1);
    splitter->setStretchFactor(1, 1);
    splitter->setSizes({880, 510}); // all columns of the table
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(buildHead());
    column->addWidget(splitter, 1);
    column->addWidget(buildFoot());
    setFocusProxy(m_piece);

    connect(m_model, &MeasureTableModel::measured, this, &PieceFormPage::follow);
    connect(m_model, &MeasureTableModel::refused, this, [this](const QString &sentence) {
        m_table->stay();
        refuse(sentence);
    });
    connect(m_model, &QAbstractItemModel::dataChanged, this, [this] { refuse({}); });
    connect(m_model, &QAbstractItemModel::modelReset, this, [this] {
        if (!m_table->currentIndex().isValid() && m_model->rowCount() > 0)
            m_table->setCurrentIndex(m_model->index(0, MeasureTableModel::First));
    });
    connect(m_table, &SheetTable::pasteWanted, this, &PieceFormPage::paste);
    connect(m_table->selectionModel(), &QItemSelectionModel::currentChanged, this, [this] {
        showPart();
        showDetails();
    });
    orderTabs();
    fillForms("wing-chair");
}

/// As one works: the piece, the table, what to do with it; then what is rarer.
void PieceFormPage::orderTabs() {
    QList<QWidget *> order = {m_piece, m_cloth, m_table, m_welt, m_take, m_takeNew};
    for (QWidget *w : m_details->findChildren<QWidget *>(Qt::FindDirectChildrenOnly))
        if (w->focusPolicy() & Qt::TabFocus) order << w;
    order << m_keep << m_drop;
    for (int i = 1; i < order.size(); ++i) setTabOrder(order[i - 1], order[i]);
}

QWidget *PieceFormPage::buildHead() {
    auto *head = new QWidget(this);
    auto *row = new QHBoxLayout(head);
    row->setContentsMargins(0, 0, 0, 0);
    m_piece = new QComboBox(head);
    m_piece->setMinimumWidth(scaled(240));
    m_piece->setMaxVisibleItems(20);
    m_piece->setAccessibleName(tr("Piece"));
    m_piece->setToolTip(tr("The furniture to be covered. Its parts come from here; each size can be changed below."));
    auto *label = new QLabel(tr("&Piece"), head);
    label->setBuddy(m_piece);
    m_cloth = new QComboBox(head);
    m_cloth->setAccessibleName(tr("Cut from"));
    m_cloth->setToolTip(tr("Which cloth of the job these panels are cut from."));
    auto *clothLabel = new QLabel(tr("Cut &from"), head);
    clothLabel->setBuddy(m_cloth);
    for (const Cloth &c : m_document.job().cloths) m_cloth->addItem(fromCore(c.name.empty() ? c.id : c.name));
    for (QWidget *w : std::initializer_list<QWidget *>{m_cloth, clothLabel})
        w->setVisible(m_document.job().cloths.size() > 1);
    m_keep = new QPushButton(tr("&Keep as a form of ours…"), head);
    m_keep->setToolTip(tr("Keeps parts, names, edges and these sizes under a name, for this shop."));
    m_drop = new QPushButton(tr("Drop this form"), head);
    m_drop->setToolTip(tr("Removes this form of ours; those that come with the program stay."));
    row->addWidget(label);
    row->addWidget(m_piece);
    row->addSpacing(12);
    row->addWidget(clothLabel);
    row->addWidget(m_cloth);
    row->addStretch();
    row->addWidget(m_keep);
    row->addWidget(m_drop);
    connect(m_piece, &QComboBox::currentIndexChanged, this, [this](int index) {
        if (!m_showing && index >= 0) choose(m_forms[std::size_t(index)].id);
    });
    connect(m_cloth, &QComboBox::currentIndexChanged, this, [this] { follow(); });
    connect(m_keep, &QPushButton::clicked, this, &PieceFormPage::keepForm);
    connect(m_drop, &QPushButton::clicked, this, &PieceFormPage::dropForm);
    return head;
}

QWidget *PieceFormPage::buildPicture() {
    auto *right = new QWidget(this);
    auto *column = new QVBoxLayout(right);
    column->setContentsMargins(8, 0, 0, 0);
    m_picture = new SvgPicture(right);
    m_picture->setMinimumSize(260, 200);
    m_flat = new SvgPicture(right);
    m_flat->setMinimumSize(170, 130);
    m_caption = new QLabel(right);
    m_caption->setWordWrap(true);
    m_caption->setTextFormat(Qt::RichText);
    m_doubts = new QLabel(right);
    m_doubts->setWordWrap(true);
    m_doubts->setTextFormat(Qt::RichText);
    m_doubts->setAlignment(Qt::AlignTop);
    column->addWidget(m_picture, 5);
    auto *low = new QHBoxLayout;
    low->addWidget(m_flat, 2);
    auto *words = new QVBoxLayout;
    words->addWidget(m_caption);
    words->addWidget(m_doubts, 1);
    low->addLayout(words, 3);
    column->addLayout(low, 3);
    return right;
}

QWidget *PieceFormPage::buildDetails() {
    m_details = new QWidget(this);
    auto *grid = new QGridLayout(m_details);
    grid->setContentsMargins(0, 4, 0, 0);
    grid->setHorizontalSpacing(8);
    grid->setVerticalSpacing(4);
    const auto combo = [&](const QString &name, const QString &sentence) {
        auto *box = new QComboBox(m_details);
        box->setAccessibleName(name);
        box->setToolTip(sentence);
        box->setSizeAdjustPolicy(QComboBox::AdjustToMinimumContentsLengthWithIcon);
        box->setMinimumContentsLength(10);
        return box;
    };
    const auto label = [&](const QString &text, int r, int c) {
        auto *l = new QLabel(text, m_details);
        grid->addWidget(l, r, c);
        return l;
    };
    m_mark = new QLineEdit(m_details);
    m_name = new QLineEdit(m_details);
    m_mark->setAccessibleName(tr("Mark"));
    m_name->setAccessibleName(tr("Name"));
    m_mark->setToolTip(tr("What is chalked on the back of the cut, such as IB for the inside back."));
    m_name->setToolTip(tr("What the part is called in the list and on the cutting sheet."));
    m_kind = combo(tr("Shape"), tr("What is cut for it. A cushion or a skirt becomes more panels than one."));
    for (PartKind kind : allKinds) m_kind->addItem(kindWords(kind));
    label(tr("This part"), 0, 0);
    grid->addWidget(m_mark, 0, 1);
    grid->addWidget(m_name, 0, 2, 1, 2);
    grid->addWidget(m_kind, 0, 4);
    const QStringList names = {tr("at the top"), tr("at the bottom"), tr("at the left"), tr("at the right")};
    label(tr("Edges"), 2, 0);
    label(tr("Set on them"), 3, 0);
    for (int i = 0; i < 4; ++i) {
        auto *head = label(names[i], 1, i + 1);
        head->setObjectName(u"quiet"_s);
        QComboBox *edge = m_edges[i] =
            combo(tr("Edge %1").arg(names[i]), tr("How the edge is finished: that decides how much cloth is added "
                                                  "there, and whether welt runs along it."));
        for (EdgeKind kind : edgeKinds) edge->addItem(fromCore(std::string(nameOf(kind))));
        QComboBox *trim = m_trims[i] =
            combo(tr("Set on the edge %1").arg(names[i]),
                  tr("What is set along this edge once it is covered. Its length is reckoned among the trimmings."));
        trim->addItems({tr("nothing"), tr("gimp"), tr("double welt"), tr("cord"), tr("nails")});
        grid->addWidget(edge, 2, i + 1);
        grid->addWidget(trim, 3, i + 1);
        connect(edge, &QComboBox::activated, this, [this, i](int kind) {
            changePart([=](FormPart &p) { p.edges[std::size_t(edgeOrder[std::size_t(i)])] = EdgeKind(kind); });
        });
        connect(trim, &QComboBox::activated, this, [this, i](int chosen) {
            changePart([=](FormPart &p) {
                if (chosen == 0)
                    p.trims.erase(edgeOrder[std::size_t(i)]);
                else
                    p.trims[edgeOrder[std::size_t(i)]] = EdgeTrim(chosen - 1);
            });
        });
    }
    m_motif = combo(tr("Motif"), tr("Whether a motif of the cloth must lie in the middle of this part. It costs cloth; "
                                    "on plain cloth it changes nothing."));
    m_motif->addItems({tr("no motif"), tr("motif centred across"), tr("motif centred up"), tr("motif in the middle")});
    m_pieces = new QSpinBox(m_details);
    m_pieces->setRange(1, 12);
    m_pieces->setPrefix(tr("pieces at most: "));
    m_pieces->setAccessibleName(tr("Pieces at most"));
    m_pieces->setToolTip(tr("Of how many pieces it may be sewn together where the cloth is too narrow. 1: cut whole."));
    m_hidden = new QCheckBox(tr("out of sight"), m_details);
    m_pair = new QCheckBox(tr("left and right"), m_details);
    m_apart = new QCheckBox(tr("the right one measured apart"), m_details);
    m_hidden->setToolTip(tr("Nobody sees it once it is covered: it may cross a flaw, be turned, or be cut from other "
                            "cloth when this one is short."));
    m_pair->setToolTip(tr("It is cut twice, the second as the mirror of the first, as the arms of a chair are."));
    m_apart->setToolTip(tr("The right one gets a line of its own for its measures: old frames are seldom alike."));
    m_motif->setSizeAdjustPolicy(QComboBox::AdjustToContents);
    auto *wishes = new WrappingRow(8);
    for (QWidget *wish : QList<QWidget *>{m_motif, m_pieces, m_hidden, m_pair, m_apart}) wishes->addWidget(wish);
    grid->addLayout(wishes, 4, 1, 1, 4);
    m_relief = combo(tr("Tufts or channels"),
                     tr("Buttons and channels draw the cloth in: more is cut than the flat measure says."));
    m_relief->addItems({tr("smooth"), tr("tufted"), tr("channelled")});
    const Unit unit = m_document.job().unit;
    m_spacing = new LengthEdit(unit, LengthRange::ZeroOrMore, m_details);
    m_depth = new LengthEdit(unit, LengthRange::ZeroOrMore, m_details);
    m_spacing->setOptional(tr("spacing"));
    m_depth->setOptional(tr("depth"));
    m_spacing->setAccessibleName(tr("From button to button, or the width of a channel"));
    m_depth->setAccessibleName(tr("How deep the buttons are, or how far a channel stands proud"));
    m_spacing->setToolTip(
        tr("From button to button, or the width of one channel. The closer, the more cloth is drawn in."));
    m_depth->setToolTip(tr("How deep the buttons are drawn in, or how far a channel stands proud."));
    label(tr("Surface"), 5, 0);
    label(tr("And"), 4, 0);
    auto *surface = new WrappingRow(8);
    for (QWidget *part : QList<QWidget *>{m_relief, m_spacing, m_depth}) surface->addWidget(part);
    grid->addLayout(surface, 5, 1, 1, 4);
    auto *buttons = new QHBoxLayout;
    auto *add = new QPushButton(tr("&Add a part"), m_details), *remove = new QPushButton(tr("&Remove it"), m_details);
    add->setToolTip(tr("Another part on this piece, a rectangle to begin with."));
    remove->setToolTip(tr("Takes the chosen part off this form. To leave it out of this piece alone, untick There."));
    buttons->addWidget(add);
    buttons->addWidget(remove);
    buttons->addSpacing(12);
    auto *hint = new QLabel(tr("Write 36 1/2, 92,5 or 3' 2\". Tab goes on, Enter down."), m_details);
    hint->setObjectName(u"quiet"_s);
    hint->setWordWrap(true);
    buttons->addWidget(hint, 1);
    grid->addLayout(buttons, 6, 0, 1, 5);
    for (int c = 1; c <= 4; ++c) grid->setColumnStretch(c, 1);

    connect(m_mark, &QLineEdit::editingFinished, this, [this] {
        if (const std::string text = toCore(m_mark->text().trimmed()); !text.empty())
            changePart([&](FormPart &p) { p.mark = text; });
    });
    connect(m_name, &QLineEdit::editingFinished, this, [this] {
        if (const std::string text = toCore(m_name->text().trimmed()); !text.empty())
            changePart([&](FormPart &p) { p.name = text; });
    });
    connect(m_kind, &QComboBox::activated, this, [this](int index) { changeKind(allKinds[std::size_t(index)]); });
    connect(m_motif, &QComboBox::activated, this, [this](int index) {
        changePart([=](FormPart &p) { p.motif = index == 0 ? std::nullopt : std::optional(Centre(index - 1)); });
    });
    connect(m_pieces, &QSpinBox::valueChanged, this,
            [this](int most) { changePart([=](FormPart &p) { p.mostPieces = most; }); });
    connect(m_hidden, &QCheckBox::clicked, this, [this](bool on) { changePart([=](FormPart &p) { p.hidden = on; }); });
    connect(m_pair, &QCheckBox::clicked, this, [this](bool on) {
        changePart([=](FormPart &p) { p.mirror = on; });
        PartMeasured measured = m_model->measures().at(currentPart());
        measured.count = on ? 2 : 1;
        if (!on) measured.twin.reset();
        m_model->setMeasured(currentPart(), measured);
    });
    connect(m_apart, &QCheckBox::clicked, this, &PieceFormPage::measureApart);
    connect(m_relief, &QComboBox::activated, this, &PieceFormPage::changeRelief);
    for (LengthEdit *edit : {m_spacing, m_depth})
        connect(edit, &LengthEdit::lengthChanged, this, &PieceFormPage::changeRelief);
    connect(add, &QPushButton::clicked, this, &PieceFormPage::addPart);
    connect(remove, &QPushButton::clicked, this, &PieceFormPage::removePart);
    return m_details;
}

QWidget *PieceFormPage::buildFoot() {
    auto *foot = new QWidget(this);
    auto *row = new QHBoxLayout(foot);
    row->setContentsMargins(0, 0, 0, 0);
    m_sum = new QLabel(foot);
    m_sum->setWordWrap(true);
    m_welt = new QComboBox(foot);
    m_welt->addItems({tr("welt cut from the cloth"), tr("welt from what is left over"), tr("welt bought")});
    m_welt->setObjectName(u"welt from"_s);
    m_welt->setAccessibleName(tr("Where the welt comes from"));
    m_welt->setToolTip(
        tr("Strips for welt can be laid as panels, cut from what the layout leaves over, or bought made."));
    m_takeNew = new QPushButton(tr("Make a &new job of it"), foot);
    m_take = new QPushButton(tr("Add &to this job"), foot);
    m_take->setObjectName(u"mainButton"_s);
    m_takeNew->setToolTip(
        tr("Begins a new job with these panels alone; the job at hand is kept or asked about first."));
    m_take->setToolTip(tr("Puts these panels into the job's list, with what is added at each edge."));
    row->addWidget(m_sum, 1);
    row->addWidget(m_welt);
    row->addWidget(m_takeNew);
    row->addWidget(m_take);
    const bool empty = m_document.job().panels.empty();
    m_takeNew->setVisible(!empty);
    if (empty) m_take->setText(tr("Take &these panels"));
    connect(m_welt, &QComboBox::currentIndexChanged, this, [this] { follow(); });
    connect(m_take, &QPushButton::clicked, this, &PieceFormPage::take);
    connect(m_takeNew, &QPushButton::clicked, this, &PieceFormPage::newJobWanted);
    return foot;
}

// Forms.

void PieceFormPage::fillForms(const std::string &chosen) {
    m_forms = m_shop.forms();
    m_showing = true;
    m_piece->clear();
    int at = 0;
    for (int i = 0; i < int(m_forms.size()); ++i) {
        const PieceForm &form = m_forms[std::size_t(i)];
        const QString name = fromCore(form.name);
        m_piece->addItem(m_shop.isOwn(form.id) ? tr("%1 (ours)").arg(name) : name);
        if (form.id == chosen) at = i;
    }
    m_piece->setCurrentIndex(at);
    m_showing = false;
    choose(m_forms[std::size_t(at)].id);
    if (const QStringList complaints = m_shop.complaints(); !complaints.isEmpty())
        refuse(tr("Not read: %1").arg(complaints.join(u"; "_s)));
}

void PieceFormPage::choose(const std::string &formId) {
    for (int i = 0; i < int(m_forms.size()); ++i)
        if (m_forms[std::size_t(i)].id == formId) {
            m_showing = true;
            m_piece->setCurrentIndex(i);
            m_showing = false;
            m_model->begin(m_forms[std::size_t(i)], m_document.job().unit);
            m_drop->setVisible(m_shop.isOwn(formId));
            m_table->resizeColumnsToContents();
            m_table->resizeRowsToContents();
            const int letter = m_table->fontMetrics().averageCharWidth();
            m_table->setColumnWidth(0, std::clamp(m_table->columnWidth(0) + 12, 24 * letter, 38 * letter));
            if (m_model->rowCount() > 0) m_table->setCurrentIndex(m_model->index(0, MeasureTableModel::First));
            refuse({});
            follow();
            return;
        }
}

void PieceFormPage::keepForm() {
    bool ok = false;
    const QString name = QInputDialog::getText(this, tr("A form of ours"), tr("Its name"), QLineEdit::Normal,
                                               fromCore(m_model->form().name), &ok);
    if (!ok || name.trimmed().isEmpty()) return;
    PieceForm form = m_model->form();
    form.name = toCore(name.trimmed());
    // What was measured is what is usual for it from now on.
    for (FormPart &part : form.parts) {
        const PartMeasured &measured = m_model->measures().at(part.id);
        part.optional = !measured.there;
        part.count = measured.count;
        for (PartMeasure &p : part.measures)
            if (measured.sizes[p.measure] > Length{}) p.typical = measured.sizes[p.measure];
    }
    const auto kept = m_shop.keepForm(form, m_document.job().unit);
    if (!kept) return refuse(fromCore(kept.error().text));
    fillForms(*kept);
}

void PieceFormPage::dropForm() {
    const std::string id = m_model->form().id;
    if (!m_shop.isOwn(id)) return;
    m_shop.dropForm(id);
    fillForms("wing-chair");
}

// One part.

std::string PieceFormPage::currentPart() const {
    const FormPart *part = m_model->partOf(m_table->currentIndex().row());
    return part ? part->id : std::string();
}

void PieceFormPage::showPart() {
    const std::string id = currentPart();
    const PieceForm &form = m_model->form();
    const FormPart *part = form.part(id);
    if (!part) return;
    PieceView view;
    for (const auto &[name, measured] : m_model->measures())
        if (measured.there) view.there.insert(name);
    view.lit = view.there.contains(id) ? id : std::string();
    view.measure = m_model->measureOf(m_table->currentIndex());
    const PictureInks inks = inksOf(coloursOf(palette()));
    const QString name = fromCore(part->name);
    QStringList lines = {u"<b>%1</b>"_s.arg(name.toHtmlEscaped())};
    int number = 0;
    for (const PartMeasure &p : part->measures) {
        const QString words = tr("%1: %2").arg(++number).arg(fromCore(p.words).toHtmlEscaped());
        lines << (view.measure == p.measure ? u"<b>%1</b>"_s.arg(words) : words);
    }
    if (!view.there.contains(id))
        lines << tr("Not part of this piece; Space under There adds it.");
    else if (!isDrawn(form, id))
        lines << tr("Not in the picture.");
    else if (seenFromBehind(form, view))
        lines << tr("Seen from behind.");
    m_caption->setText(lines.join(u"<br>"_s));
    m_picture->setSvg(pieceSvg(form, view, inks), tr("%1, with %2 lit up").arg(fromCore(form.name), name));
    const PartMeasured &measured = m_model->measures().at(id);
    const bool twin = m_model->isTwin(m_table->currentIndex().row()) && measured.twin;
    m_flat->setSvg(flatPartSvg(*part, twin ? *measured.twin : measured.sizes, m_rules, view.measure, inks),
                   tr("%1 laid flat, with what becomes of its edges").arg(name));
}

void PieceFormPage::showDetails() {
    const FormPart *part = m_model->form().part(currentPart());
    m_details->setEnabled(part != nullptr);
    if (!part) return;
    m_showing = true;
    const PartMeasured &measured = m_model->measures().at(part->id);
    m_mark->setText(fromCore(part->mark));
    m_name->setText(fromCore(part->name));
    m_kind->setCurrentIndex(int(std::find(allKinds.begin(), allKinds.end(), part->kind) - allKinds.begin()));
    const bool plain =
        part->kind == PartKind::Rectangle || part->kind == PartKind::Trapezoid || part->kind == PartKind::OnPoint;
    for (std::size_t i = 0; i < 4; ++i) {
        m_edges[i]->setCurrentIndex(int(part->edges[std::size_t(edgeOrder[i])]));
        const auto trim = part->trims.find(edgeOrder[i]);
        m_trims[i]->setCurrentIndex(trim == part->trims.end() ? 0 : int(trim->second) + 1);
        m_edges[i]->setEnabled(plain || part->kind == PartKind::BoxCushion);
        m_trims[i]->setEnabled(plain);
    }
    m_motif->setCurrentIndex(part->motif ? int(*part->motif) + 1 : 0);
    m_pieces->setValue(part->mostPieces);
    m_pieces->setEnabled(part->kind == PartKind::Rectangle || isSkirt(part->kind));
    m_hidden->setChecked(part->hidden);
    m_pair->setChecked(part->mirror);
    m_pair->setEnabled(plain);
    m_apart->setChecked(measured.twin.has_value());
    m_apart->setEnabled(part->mirror);
    m_relief->setCurrentIndex(!measured.relief ? 0 : measured.relief->channels ? 2 : 1);
    for (QWidget *w : std::initializer_list<QWidget *>{m_relief, m_spacing, m_depth}) w->setEnabled(plain);
    m_spacing->setEnabled(plain && measured.relief);
    m_depth->setEnabled(plain && measured.relief);
    m_spacing->setLength(measured.relief ? std::optional(measured.relief->spacing) : std::nullopt);
    m_depth->setLength(measured.relief ? std::optional(measured.relief->depth) : std::nullopt);
    m_showing = false;
}

void PieceFormPage::changePart(const std::function<void(FormPart &)> &how) {
    const std::string id = currentPart();
    if (m_showing || id.empty()) return;
    PieceForm form = m_model->form();
    for (FormPart &part : form.parts)
        if (part.id == id) how(part);
    if (form == m_model->form()) return;
    const QModelIndex at = m_table->currentIndex();
    m_model->changeForm(std::move(form));
    m_table->setCurrentIndex(m_model->index(at.row(), at.column()));
    showPart();
    showDetails();
}

void PieceFormPage::changeKind(PartKind kind) {
    changePart([&](FormPart &part) {
        part.kind = kind;
        std::vector<PartMeasure> measures;
        for (Measure m : measuresOf(kind)) {
            const PartMeasure *old = part.measure(m);
            const PartMeasure *across = part.measure(Measure::Across);
            const Length usual = m == Measure::Thickness ? m_rules.nosing : across ? across->typical : m_rules.pull * 8;
            measures.push_back(old ? *old : PartMeasure{m, measureWords(m), usual});
        }
        part.measures = std::move(measures);
        if (kind != PartKind::Rectangle && !isSkirt(kind)) part.mostPieces = 1;
        if (kind == PartKind::BoxCushion || kind == PartKind::KnifeEdge || isSkirt(kind)) {
            part.mirror = false;
            part.trims.clear();
        }
    });
    m_table->resizeRowsToContents();
}

void PieceFormPage::addPart() {
    PieceForm form = m_model->form();
    FormPart part;
    for (int n = 1; part.id.empty() || form.part(part.id); ++n) part.id = "part-" + std::to_string(n);
    part.mark = "P";
    part.name = toCore(tr("New part"));
    const Length usual = m_document.job().unit == Unit::Inch ? Length::ticks(20 * 8128) : Length::ticks(50 * 3200);
    for (Measure m : measuresOf(part.kind)) part.measures.push_back({m, measureWords(m), usual});
    part.edges.fill(EdgeKind::Pull);
    form.parts.push_back(part);
    m_model->changeForm(std::move(form));
    m_table->setCurrentIndex(m_model->index(m_model->rowOf(part.id), MeasureTableModel::First));
    m_table->scrollToBottom();
    m_name->setFocus();
    m_name->selectAll();
}

void PieceFormPage::removePart() {
    const std::string id = currentPart();
    PieceForm form = m_model->form();
    if (form.parts.size() < 2) return refuse(tr("A piece has at least one part."));
    std::erase_if(form.parts, [&](const FormPart &p) { return p.id == id; });
    std::erase_if(form.flows, [&](const FormFlow &f) {
        return f.from == id || f.to == id || f.from == id + "-front" || f.to == id + "-front";
    });
    const int row = m_table->currentIndex().row();
    m_model->changeForm(std::move(form));
    m_table->setCurrentIndex(m_model->index(std::min(row, m_model->rowCount() - 1), MeasureTableModel::First));
}

void PieceFormPage::measureApart(bool apart) {
    const std::string id = currentPart();
    if (m_showing || id.empty()) return;
    PartMeasured measured = m_model->measures().at(id);
    if (apart)
        measured.twin = measured.sizes;
    else
        measured.twin.reset();
    measured.count = 2;
    m_model->setMeasured(id, measured);
    m_table->setCurrentIndex(m_model->index(m_model->rowOf(id) + (apart ? 1 : 0), MeasureTableModel::First));
    showDetails();
}

void PieceFormPage::changeRelief() {
    const std::string id = currentPart();
    if (m_showing || id.empty()) return;
    PartMeasured measured = m_model->measures().at(id);
    if (m_relief->currentIndex() == 0) {
        measured.relief.reset();
    } else {
        Relief relief = measured.relief.value_or(Relief{false, m_rules.pull * 3, m_rules.seam * 2});
        relief.channels = m_relief->currentIndex() == 2;
        if (measured.relief) {
            relief.spacing = m_spacing->length().value_or(Length{});
            relief.depth = m_depth->length().value_or(Length{});
        }
        measured.relief = relief;
    }
    m_model->setMeasured(id, measured);
    showDetails();
}

void PieceFormPage::paste(const QString &text) {
    const auto rows = cellsOfText(text);
    const QModelIndex from = m_table->currentIndex();
    if (rows.isEmpty() || !from.isValid()) return refuse(tr("The clipboard holds no table."));
    QStringList wrong;
    // Cells go where they were copied to: a row of the sheet into a row of the table.
    for (int r = 0; r < rows.size(); ++r)
        for (int c = 0; c < rows[r].size(); ++c) {
            const QModelIndex at = m_model->index(from.row() + r, from.column() + c);
            const QString cell = rows[r][c].trimmed();
            if (!at.isValid() || cell.isEmpty() || at.column() == MeasureTableModel::Part) continue;
            if (!m_model->setData(at, cell))
                wrong << tr("row %1, column %2: %3")
                             .arg(r + 1)
                             .arg(c + 1)
                             .arg(m_refusal->text().isEmpty() ? tr("there is nothing to measure here")
                                                              : m_refusal->text());
        }
    refuse(wrong.isEmpty() ? QString() : tr("Not taken: %1").arg(wrong.join(u"; "_s)));
}

void PieceFormPage::refuse(const QString &sentence) {
    m_refusal->setText(sentence);
    m_refusal->setVisible(!sentence.isEmpty());
}

// The whole.

const Cloth &PieceFormPage::cloth() const {
    const auto &cloths = m_document.job().cloths;
    return cloths[std::size_t(std::clamp(m_cloth->currentIndex(), 0, int(cloths.size()) - 1))];
}

void PieceFormPage::follow() {
    const Unit unit = m_document.job().unit;
    const PieceForm &form = m_model->form();
    const Cloth &from = cloth();
    const std::optional<Length> width = from.bolt ? std::optional(from.bolt->width - from.selvage * 2) : std::nullopt;
    const auto doubts = doubtsOf(form, m_model->measures(), unit, width);
    m_model->setDoubts(doubts);
    QStringList lines;
    for (const Doubt &doubt : doubts) {
        const FormPart *part = form.part(doubt.part);
        lines << tr("%1: %2")
                     .arg(fromCore(part ? part->name : doubt.part), withFractions(fromCore(doubt.text)))
                     .toHtmlEscaped();
    }
    const int open = m_model->notMeasured();
    QString text;
    if (!lines.isEmpty()) text = u"<b>%1</b><br>• %2"_s.arg(tr("Worth a second look"), lines.join(u"<br>• "_s));
    if (open > 0)
        text +=
            (text.isEmpty() ? QString() : u"<br><br>"_s) +
            (open == 1 ? tr("1 size in italics stands at what is usual; it is not measured yet.")
                       : tr("%n sizes in italics stand at what is usual; they are not measured yet.", nullptr, open));
    m_doubts->setText(text);

    const FormPanels made = panelsFrom(form, m_model->measures(), m_rules, from);
    int cuts = 0;
    for (const Panel &panel : made.panels) cuts += panel.count;
    const TrimList trims = trimsOf(form, m_model->measures(), m_rules);
    QStringList sum = {made.panels.size() == 1 ? tr("1 panel") : tr("%n panels", nullptr, int(made.panels.size())),
                       cuts == 1 ? tr("1 cut") : tr("%n cuts", nullptr, cuts)};
    if (trims.welt > Length{}) sum << tr("welt %1").arg(shownAlongRoll(trims.welt, unit));
    if (trims.gimp > Length{}) sum << tr("gimp %1").arg(shownAlongRoll(trims.gimp, unit));
    if (trims.cord > Length{}) sum << tr("cord %1").arg(shownAlongRoll(trims.cord, unit));
    if (trims.doubleWelt > Length{}) sum << tr("double welt %1").arg(shownAlongRoll(trims.doubleWelt, unit));
    if (trims.nails > Length{}) sum << tr("nails along %1").arg(shownAlongRoll(trims.nails, unit));
    m_sum->setText(sum.join(u" · "_s));
    m_welt->setVisible(trims.welt > Length{} || trims.doubleWelt > Length{});
    m_take->setEnabled(!made.panels.empty());
    m_takeNew->setEnabled(!made.panels.empty());
    showPart();
}

Job PieceFormPage::added(Job job) const {
    const PieceForm &form = m_model->form();
    const std::size_t which = std::min(std::size_t(std::max(0, m_cloth->currentIndex())), job.cloths.size() - 1);
    const std::string clothId = job.cloths[which].id;
    FormPanels made = panelsFrom(form, m_model->measures(), m_rules, job.cloths[which]);
    std::map<std::string, std::string> ids;
    for (Panel &panel : made.panels) {
        const std::string was = panel.id;
        panel.id = ids[was] = freeId(job, was);
        if (which > 0) panel.cloth = clothId;
        job.panels.push_back(std::move(panel));
    }
    for (Flow &flow : made.flows) {
        flow.from.panel = ids[flow.from.panel];
        flow.to.panel = ids[flow.to.panel];
        job.flows.push_back(std::move(flow));
    }
    const TrimList trims = trimsOf(form, m_model->measures(), m_rules);
    const auto add = [&](Trimming::Kind kind, Length edges, int runs) {
        if (edges <= Length{}) return;
        Trimming t;
        t.kind = kind;
        t.name = form.name;
        t.edges = edges;
        t.runs = std::max(1, runs);
        t.from = kind == Trimming::Kind::Welt || kind == Trimming::Kind::DoubleWelt ? StripsFrom(m_welt->currentIndex())
                                                                                    : StripsFrom::Bought;
        t.strip = kind == Trimming::Kind::DoubleWelt ? m_rules.doubleWeltStrip : weltStripWidth(m_rules.cord, m_rules);
        t.run = t.from == StripsFrom::Scraps ? StripRun::Bias : StripRun::Across;
        t.shortest = m_rules.shortestBias;
        t.head = m_rules.nailHead;
        if (kind != Trimming::Kind::Nails && !t.isStrip()) t.reserve = m_rules.edgingReservePercent;
        if (which > 0) t.cloth = clothId;
        if (const auto strips = stripPanel(job, t)) {
            t.panel = strips->id;
            job.panels.push_back(*strips);
        }
        job.trimmings.push_back(std::move(t));
    };
    add(Trimming::Kind::Welt, trims.welt, trims.weltJoins);
    add(Trimming::Kind::DoubleWelt, trims.doubleWelt, 1);
    add(Trimming::Kind::Gimp, trims.gimp, 1);
    add(Trimming::Kind::Cord, trims.cord, 1);
    add(Trimming::Kind::Nails, trims.nails, 1);
    if (job.card.piece.empty()) job.card.piece = form.name;
    if (job.card.title.empty()) job.card.title = form.name;
    return job;
}

void PieceFormPage::take() {
    const Job job = added(m_document.job());
    const auto done = m_document.changeJob(job, tr("Measure: %1").arg(fromCore(m_model->form().name)));
    if (!done) return refuse(withFractions(fromCore(done.error().text)));
    Q_EMIT taken();
}

} // namespace boltwright::ui
