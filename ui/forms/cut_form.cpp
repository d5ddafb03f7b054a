#include "ui/forms/cut_form.h"

#include "core/edit/trim_edit.h"
#include "core/panel/edges.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"
#include "ui/widgets/scaled.h"

#include <QFormLayout>
#include <QTimer>
#include <QVBoxLayout>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

CutForm::CutForm(JobDocument &document, QWidget *parent)
    : QWidget(parent), m_document(document), m_refusal(new QLabel(this)) {
    if (const int cut = document.selectedCut(); cut >= 0) m_cut = nameOf(document.layout().cuts[std::size_t(cut)]);
    m_refusal->setObjectName(u"refusal"_s);
    m_refusal->setWordWrap(true);
    m_refusal->hide();
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addWidget(m_refusal);
    column->addStretch(1);
    connect(&document, &JobDocument::changed, this, [this](Changes changes) {
        // Built anew once the field that caused it has finished with its event.
        if (changes & (Change::Layout | Change::Panels | Change::NewJob | Change::Card))
            QTimer::singleShot(0, this, &CutForm::fill);
    });
    fill();
}

void CutForm::take(const Result<Layout> &layout, const QString &text) {
    m_refusal->setText(layout ? QString() : withFractions(fromCore(layout.error().text)));
    m_refusal->setVisible(!layout);
    if (layout)
        m_document.changeLayout(*layout, text);
    else
        QTimer::singleShot(0, this, &CutForm::fill);
}

void CutForm::fill() {
    const Job &job = m_document.job();
    const Layout &layout = m_document.laidLayout();
    const int at = indexOf(layout, m_cut);
    const Panel *panel = at >= 0 ? job.panel(m_cut.panel) : nullptr;
    const QString focused = focusWidget() ? focusWidget()->objectName() : QString();
    QWidget *before = m_fields;
    m_fields = new QWidget(this);
    auto *form = new QFormLayout(m_fields);
    form->setContentsMargins(0, 0, 0, 0);
    static_cast<QVBoxLayout *>(this->layout())->insertWidget(1, m_fields);
    m_fields->show();
    if (before) {
        before->hide();
        before->deleteLater();
    }
    if (!panel) {
        form->addRow(new QLabel(tr("Select a panel on the cloth first."), m_fields));
        return;
    }
    const Cut &cut = layout.cuts[std::size_t(at)];
    auto *title = new QLabel(panel->count > 1 ? tr("%1, %2 of %3")
                                                    .arg(fromCore(panel->name.empty() ? panel->mark : panel->name))
                                                    .arg(cut.copy)
                                                    .arg(panel->count)
                                              : fromCore(panel->name.empty() ? panel->mark : panel->name),
                             m_fields);
    title->setObjectName(u"paneTitle"_s);
    form->addRow(title);
    const auto head = [&](const QString &text) {
        auto *label = new QLabel(text, m_fields);
        label->setObjectName(u"quiet"_s);
        label->setWordWrap(true);
        form->addRow(label);
    };
    const auto field = [&](const QString &label, const QString &name, const QString &sentence) {
        auto *edit = new LengthEdit(job.unit, LengthRange::ZeroOrMore, m_fields);
        edit->setMaximumWidth(scaled(170));
        edit->setObjectName(name);
        edit->setAccessibleName(label);
        edit->setToolTip(sentence);
        form->addRow(label, edit);
        return edit;
    };
    head(tr("What is left at each edge of this one alone; the panel itself stays as it is. Less than is added is given "
            "up, and is listed with the layout."));
    for (int edge = 0; edge < int(edgeCount(panel->shape)); ++edge) {
        QString label = fromCore(edgeInWords(panel->shape, edge));
        label[0] = label[0].toUpper();
        LengthEdit *edit = field(label, u"left at edge %1"_s.arg(edge),
                                 tr("What of the allowance is left at this edge. Left empty: all of it."));
        edit->setOptional(tr("in full: %1").arg(shownLengthWithUnit(panel->allowance(edge), job.unit)));
        edit->setLength(std::size_t(edge) < cut.allow.size() ? cut.allow[std::size_t(edge)] : std::nullopt);
        connect(edit, &LengthEdit::lengthChanged, this, [this, edge](std::optional<Length> left) {
            const int now = indexOf(m_document.laidLayout(), m_cut);
            if (now < 0) return;
            take(withLeftAtEdge(m_document.job(), m_document.laidLayout(), now, edge, left), tr("Trim a cut"));
        });
    }
    if (cut.of > 1) {
        head(tr(
            "How long each piece is cut, seams included. The piece beside it takes the difference: the join moves."));
        for (const Cut &piece : layout.cuts) {
            if (piece.panel != cut.panel || piece.copy != cut.copy) continue;
            LengthEdit *edit = field(tr("Piece %1 of %2").arg(piece.piece).arg(piece.of),
                                     u"piece %1"_s.arg(piece.piece), tr("From end to end as it is cut."));
            edit->setLength(piece.length);
            connect(edit, &LengthEdit::lengthChanged, this, [this, name = nameOf(piece)](std::optional<Length> length) {
                const int now = indexOf(m_document.laidLayout(), name);
                if (now < 0 || !length) return;
                take(withPieceLength(m_document.job(), m_document.laidLayout(), now, *length), tr("Move a join"));
            });
        }
    }
    if (!focused.isEmpty())
        if (auto *again = m_fields->findChild<QWidget *>(focused)) again->setFocus();
    if (!before) setFocusProxy(m_fields->findChild<LengthEdit *>());
}

} // namespace boltwright::ui
