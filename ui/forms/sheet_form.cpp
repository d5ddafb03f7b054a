#include "ui/forms/sheet_form.h"

#include "core/edit/outline_edit.h"
#include "core/job/fault_words.h"
#include "ui/forms/panel_details.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"
#include "ui/widgets/scaled.h"

#include <QFormLayout>
#include <QHBoxLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QPushButton>

#include <algorithm>

using namespace Qt::StringLiterals;

namespace boltwright::ui {
namespace {

std::vector<std::pair<Length, Length>> pairsOf(const ClothRing &ring) {
    std::vector<std::pair<Length, Length>> pairs;
    for (const ClothPoint &p : ring) pairs.push_back({p.x, p.y});
    return pairs;
}

ClothRing ringOfPairs(const std::vector<std::pair<Length, Length>> &pairs) {
    ClothRing ring;
    for (const auto &[x, y] : pairs) ring.push_back({x, y});
    return ring;
}

QWidget *inLine(const QList<QWidget *> &parts) {
    auto *whole = new QWidget;
    auto *line = new QHBoxLayout(whole);
    line->setContentsMargins(0, 0, 0, 0);
    line->setSpacing(8);
    for (QWidget *part : parts) line->addWidget(part, 0, Qt::AlignTop);
    line->addStretch();
    return whole;
}

} // namespace

SheetForm::SheetForm(JobDocument &document, const SheetOf &sheet, QWidget *parent)
    : QWidget(parent), m_document(document), m_sheet(sheet) {
    auto *form = new QFormLayout(this);
    form->setContentsMargins(0, 0, 0, 0);
    if (const Remnant *remnant = remnantOf(document.job(), sheet)) fillRemnant(form, *remnant);
    fillFlaws(form);
}

void SheetForm::change(Result<Job> job, const QString &text, const QString &mergeKey) {
    if (!job) return Q_EMIT refused(withFractions(fromCore(job.error().text)));
    if (const auto faults = faultsInWords(*job); !faults.empty())
        return Q_EMIT refused(withFractions(fromCore(faults.front())));
    Q_EMIT refused({});
    m_document.changeJob(std::move(*job), text, mergeKey);
}

LengthEdit *SheetForm::lengthField(const QString &name, const QString &sentence, std::optional<Length> value,
                                   bool aboveZero) {
    auto *edit = new LengthEdit(m_document.job().unit, aboveZero ? LengthRange::AboveZero : LengthRange::Any);
    edit->setLength(value);
    edit->setMaximumWidth(scaled(96));
    edit->setAccessibleName(name);
    edit->setToolTip(sentence);
    edit->setObjectName(u"field %1 %2 %3"_s.arg(fromCore(m_sheet.cloth), fromCore(m_sheet.on.value_or("")), name));
    return edit;
}

void SheetForm::fillRemnant(QFormLayout *form, const Remnant &remnant) {
    auto *remove = new QPushButton(tr("Remove this remnant"));
    remove->setToolTip(tr("Takes this piece of cloth out of the job, with its flaws."));
    connect(remove, &QPushButton::clicked, this, [this] {
        change(withoutOutline(m_document.job(), {m_sheet, {}}), tr("Remove a remnant"));
    });
    QWidget *corners = cornersRow({m_sheet, {}}, tr("Take this outline"));
    static_cast<QHBoxLayout *>(corners->layout())->insertWidget(2, remove, 0, Qt::AlignTop);
    auto *name = new QLineEdit(fromCore(remnant.id));
    name->setMaximumWidth(scaled(170));
    name->setToolTip(tr("What is chalked on the piece, and what it is called on the table and on the sheet."));
    name->setObjectName(u"field name %1"_s.arg(fromCore(remnant.id)));
    name->setAccessibleName(tr("Name of remnant %1").arg(fromCore(remnant.id)));
    connect(name, &QLineEdit::editingFinished, this, [this, name] {
        const std::string wanted = toCore(name->text().trimmed());
        if (!m_sheet.on || wanted == *m_sheet.on) return;
        auto job = withRemnantNamed(m_document.job(), m_sheet, wanted);
        if (!job) {
            name->setText(fromCore(*m_sheet.on));
            return Q_EMIT refused(withFractions(fromCore(job.error().text)));
        }
        m_sheet.on = wanted; // until the form is built anew
        change(std::move(job), tr("Name of a remnant"));
    });
    form->addRow(tr("Name"), name);
    form->addRow(tr("Corners"), corners);

    auto *lot = new QLineEdit(fromCore(remnant.lot));
    lot->setMaximumWidth(scaled(170));
    lot->setToolTip(tr("Parts that must match in shade are cut from one dye lot."));
    lot->setObjectName(u"field lot %1"_s.arg(fromCore(remnant.id)));
    lot->setAccessibleName(tr("Dye lot"));
    connect(lot, &QLineEdit::editingFinished, this, [this, lot] {
        const Remnant *now = remnantOf(m_document.job(), m_sheet);
        if (now && toCore(lot->text().trimmed()) != now->lot)
            change(withLot(m_document.job(), m_sheet, toCore(lot->text().trimmed())), tr("Dye lot"));
    });
    form->addRow(tr("Dye lot"), lot);

    const Cloth *cloth = m_document.job().cloth(m_sheet.cloth);
    if (!cloth || !cloth->pattern) return;
    auto *x = lengthField(tr("motif from the left"),
                          tr("From the remnant's left to the middle of one motif that is on it."),
                          remnant.motif ? std::optional(remnant.motif->x) : std::nullopt, false),
         *y = lengthField(tr("motif up"), tr("From its lower end up the roll to the middle of the same motif."),
                          remnant.motif ? std::optional(remnant.motif->y) : std::nullopt, false);
    for (LengthEdit *edit : {x, y}) {
        edit->setOptional(tr("as the cloth"));
        connect(edit, &LengthEdit::lengthChanged, this, [this, x, y] {
            if (x->length().has_value() != y->length().has_value()) return;
            std::optional<ClothPoint> motif;
            if (x->length()) motif = ClothPoint{*x->length(), *y->length()};
            change(withMotif(m_document.job(), m_sheet, motif), tr("Where a motif sits"));
        });
    }
    form->addRow(tr("A motif sits"), inLine({new QLabel(tr("from the left")), x, new QLabel(tr("up")), y}));
}

QWidget *SheetForm::cornersRow(const OutlineOf &which, const QString &takeText) {
    auto *corners =
        new QPlainTextEdit(cornersText(pairsOf(*outlineOf(m_document.job(), which)), m_document.job().unit));
    corners->setFixedSize(220, 96);
    corners->setTabChangesFocus(true);
    corners->setToolTip(tr("One corner a line: from the left selvage; up the roll."));
    corners->setAccessibleName(tr("Corners, one a line"));
    auto *take = new QPushButton(takeText);
    take->setToolTip(tr("The outline becomes what is written here; panels keep to it."));
    connect(take, &QPushButton::clicked, this, [this, which, corners] {
        const auto read = readCorners(corners->toPlainText(), m_document.job().unit);
        if (!read) return Q_EMIT refused(fromCore(read.error().text));
        change(withOutline(m_document.job(), which, ringOfPairs(*read)), tr("Change an outline"));
    });
    return inLine({corners, take});
}

QWidget *SheetForm::spotRow(const OutlineOf &which) {
    const Spot spot = *spotIn(*outlineOf(m_document.job(), which));
    const QString number = QString::number(*which.flaw + 1);
    auto *x = lengthField(tr("spot %1 from the left").arg(number),
                          tr("From the left selvage or edge to the middle of the spot."), spot.middle.x, false),
         *y = lengthField(tr("spot %1 up").arg(number), tr("From the cut end up the roll to the middle of the spot."),
                          spot.middle.y, false),
         *radius = lengthField(tr("spot %1 radius").arg(number), tr("From its middle as far as no panel may reach."),
                               spot.radius, true);
    for (LengthEdit *edit : {x, y, radius})
        connect(edit, &LengthEdit::lengthChanged, this, [this, which, x, y, radius] {
            if (x->length() && y->length() && radius->length())
                change(withOutline(m_document.job(), which,
                                   boltwright::ringOf(Spot{{*x->length(), *y->length()}, *radius->length()})),
                       tr("Change a spot"));
        });
    return inLine({new QLabel(tr("from the left")), x, new QLabel(tr("up")), y, new QLabel(tr("radius")), radius});
}

QWidget *SheetForm::noteAndRemove(const OutlineOf &which) {
    auto *note = new QLineEdit(fromCore(flawOf(m_document.job(), which)->note));
    note->setFixedWidth(scaled(220));
    note->setPlaceholderText(tr("what it is"));
    note->setAccessibleName(tr("What the flaw is"));
    note->setToolTip(tr("Hole, stain, slub or seam: it stands beside the flaw on the table and on the sheet."));
    connect(note, &QLineEdit::editingFinished, this, [this, which, note] {
        const Flaw *flaw = flawOf(m_document.job(), which);
        if (flaw && toCore(note->text().trimmed()) != flaw->note)
            change(withFlawNote(m_document.job(), which, toCore(note->text().trimmed())), tr("What the flaw is"));
    });
    auto *remove = new QPushButton(tr("Remove"));
    remove->setToolTip(tr("The flaw is not there: panels may lie here again."));
    connect(remove, &QPushButton::clicked, this,
            [this, which] { change(withoutOutline(m_document.job(), which), tr("Remove a flaw")); });
    return inLine({note, remove});
}

void SheetForm::fillFlaws(QFormLayout *form) {
    for (const OutlineOf &which : outlinesOf(m_document.job())) {
        if (!(which.sheet == m_sheet) || !which.flaw) continue;
        const bool spot = spotIn(*outlineOf(m_document.job(), which)).has_value();
        auto *both = new QWidget;
        auto *column = new QVBoxLayout(both);
        column->setContentsMargins(0, 0, 0, 0);
        column->addWidget(spot ? spotRow(which) : cornersRow(which, tr("Take this outline")));
        column->addWidget(noteAndRemove(which));
        form->addRow((spot ? tr("Flaw %1, a spot") : tr("Flaw %1")).arg(*which.flaw + 1), both);
    }
    auto *add = new QPushButton(tr("Add a spot"));
    add->setToolTip(tr("A round flaw; it is moved and sized here or on the table."));
    connect(add, &QPushButton::clicked, this, [this] {
        // Somewhere on the cloth, where it will be seen.
        const Job &job = m_document.job();
        const Length step = wholeStep(job.unit);
        ClothPoint at{};
        if (const Remnant *remnant = remnantOf(job, m_sheet)) at = boxOf(remnant->outline).low;
        at = at + Vector{step + step, step + step};
        auto with = withFlaw(job, m_sheet, boltwright::ringOf(Spot{at, step}));
        if (with)
            change(std::move(with->first), tr("Mark a flaw"));
        else
            Q_EMIT refused(fromCore(with.error().text));
    });
    form->addRow(tr("Flaws"), inLine({add}));
}

} // namespace boltwright::ui
