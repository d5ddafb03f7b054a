#include "ui/forms/flaw_form.h"

#include "core/paper/words.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"
#include "ui/widgets/scaled.h"

#include <QComboBox>
#include <QFormLayout>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

FlawForm::FlawForm(JobDocument &document, QWidget *parent)
    : QWidget(parent), m_document(document), m_where(new QComboBox(this)), m_note(new QLineEdit(this)),
      m_refusal(new QLabel(this)) {
    const Job &job = document.job();
    for (const Cloth &cloth : job.cloths) {
        if (cloth.bolt) m_sheets.push_back({cloth.id, {}});
        for (const Remnant &remnant : cloth.remnants) m_sheets.push_back({cloth.id, remnant.id});
    }
    for (const SheetOf &sheet : m_sheets) m_where->addItem(fromCore(sheetName(job, sheet.cloth, sheet.on)));
    auto *form = new QFormLayout(this);
    m_where->setMaximumWidth(scaled(320));
    form->addRow(tr("In"), m_where);
    m_where->setToolTip(tr("The cloth or remnant that the flaw is in."));
    const auto measure = [&](const QString &label, const QString &sentence, const char *name, LengthRange range) {
        auto *edit = new LengthEdit(job.unit, range, this);
        edit->setObjectName(QString::fromLatin1(name));
        edit->setAccessibleName(label);
        edit->setToolTip(sentence);
        edit->setMaximumWidth(scaled(160));
        form->addRow(label, edit);
        return edit;
    };
    m_x = measure(tr("From the left selvage"), tr("From the left selvage to the flaw's nearer side."),
                  "flawFromSelvage", LengthRange::ZeroOrMore);
    m_y = measure(tr("From the cut end"), tr("From the cut end up the roll to where the flaw begins."), "flawFromEnd",
                  LengthRange::ZeroOrMore);
    m_across = measure(tr("Width"), tr("How far it goes across; a little more than what is seen does no harm."),
                       "flawWidth", LengthRange::AboveZero);
    m_along =
        measure(tr("Length along the roll"), tr("How far it goes up the roll."), "flawLength", LengthRange::AboveZero);
    m_note->setMaximumWidth(scaled(320));
    m_note->setPlaceholderText(tr("slub, hole, stain"));
    m_note->setToolTip(tr("Stands beside the flaw on the table and on the sheet."));
    form->addRow(tr("What it is"), m_note);
    m_refusal->setObjectName(u"refusal"_s);
    m_refusal->setWordWrap(true);
    form->addRow(m_refusal);
    auto *enterButton = new QPushButton(tr("Enter it and plan what is left again"), this);
    enterButton->setObjectName(u"mainButton"_s);
    enterButton->setToolTip(tr("What is cut or locked stays; all other panels are laid anew around the flaw."));
    enterButton->setSizePolicy(QSizePolicy::Fixed, QSizePolicy::Fixed);
    form->addRow(QString(), enterButton);
    connect(enterButton, &QPushButton::clicked, this, &FlawForm::enter);
    if (const int cut = document.selectedCut(); cut >= 0) {
        const Cut &own = document.layout().cuts[std::size_t(cut)];
        const SheetOf sheet = sheetOf(job, own);
        for (std::size_t i = 0; i < m_sheets.size(); ++i)
            if (m_sheets[i] == sheet) m_where->setCurrentIndex(int(i));
        m_x->setLength(own.x);
        m_y->setLength(own.y);
    }
    setTabOrder(m_along, m_note);
    setFocusProxy(m_x);
}

void FlawForm::enter() {
    const auto x = m_x->length(), y = m_y->length(), across = m_across->length(), along = m_along->length();
    if (!x || !y || !across || !along || m_where->currentIndex() < 0) {
        m_refusal->setText(
            tr("Its place and its size are needed: measure from the left selvage and from the cut end."));
        return;
    }
    const Flaw flaw{ringOf(ClothBox{{*x, *y}, {*x + *across, *y + *along}}), toCore(m_note->text()), {}};
    Q_EMIT found(m_sheets[std::size_t(m_where->currentIndex())], flaw);
}

} // namespace boltwright::ui
