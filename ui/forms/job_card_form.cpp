#include "ui/forms/job_card_form.h"

#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"
#include "ui/widgets/scaled.h"

#include <QComboBox>
#include <QFormLayout>
#include <QLineEdit>
#include <QPlainTextEdit>
#include <QVBoxLayout>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

JobCardForm::JobCardForm(JobDocument &document, QWidget *parent) : QWidget(parent) {
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    auto *form = new QFormLayout;
    column->addLayout(form);
    column->addStretch(1);
    form->setFieldGrowthPolicy(QFormLayout::ExpandingFieldsGrow);
    const auto line = [&](const QString &label, const QString &sentence, std::string JobCard::*field) {
        auto *edit = new QLineEdit(fromCore(document.job().card.*field), this);
        edit->setMaximumWidth(scaled(460));
        edit->setToolTip(sentence);
        connect(edit, &QLineEdit::textEdited, this, [&document, field, label](const QString &text) {
            Job job = document.job();
            job.card.*field = toCore(text);
            document.changeJob(std::move(job), label, u"card "_s + label);
        });
        form->addRow(label, edit);
        return edit;
    };
    setFocusProxy(line(tr("Title"), tr("What the job is called; it heads the cutting sheet."), &JobCard::title));
    line(tr("Client"), tr("For whom it is made; the name stands on the sheet and on the client's page."),
         &JobCard::client);
    line(tr("Piece"), tr("What is covered, such as a wing chair."), &JobCard::piece);
    line(tr("Date"), tr("The day that stands on the sheet, written as you like."), &JobCard::date)
        ->setPlaceholderText(tr("2026-11-25"));
    auto *notes = new QPlainTextEdit(fromCore(document.job().card.notes), this);
    notes->setMaximumWidth(scaled(460));
    notes->setFixedHeight(fontMetrics().lineSpacing() * 6);
    notes->setTabChangesFocus(true);
    notes->setToolTip(tr("Whatever is to be remembered about this job."));
    connect(notes, &QPlainTextEdit::textChanged, this, [&document, notes] {
        Job job = document.job();
        job.card.notes = toCore(notes->toPlainText());
        document.changeJob(std::move(job), tr("Notes"), u"card notes"_s);
    });
    form->addRow(tr("Notes"), notes);
    auto *unit = new QComboBox(this);
    unit->addItems({tr("inches"), tr("centimetres"), tr("millimetres")});
    unit->setCurrentIndex(int(document.job().unit));
    auto *gap = new LengthEdit(document.job().unit, LengthRange::ZeroOrMore, this);
    gap->setLength(document.job().gap);
    gap->setMaximumWidth(scaled(140));
    unit->setMaximumWidth(scaled(180));
    unit->setToolTip(tr(
        "What lengths are shown in, here and on paper. Others can be typed too, such as 92 cm; nothing is rounded."));
    gap->setToolTip(tr("How far cuts stay from each other, for the shears to pass. 0: edge to edge."));
    connect(unit, &QComboBox::activated, this, [&document, gap](int index) {
        Job job = document.job();
        job.unit = Unit(index);
        gap->setUnit(job.unit);
        document.changeJob(std::move(job), tr("Unit"));
    });
    connect(gap, &LengthEdit::lengthChanged, this, [&document](std::optional<Length> length) {
        Job job = document.job();
        job.gap = length.value_or(Length{});
        document.changeJob(std::move(job), tr("Gap between cuts"), u"gap"_s);
    });
    form->addRow(tr("Measured in"), unit);
    form->addRow(tr("Gap between cuts"), gap);
}

} // namespace boltwright::ui
