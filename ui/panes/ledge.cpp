#include "ui/panes/ledge.h"

#include "ui/actions/actions.h"
#include "ui/canvas/canvas.h"

#include <QAccessible>
#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>
#include <QToolButton>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

Ledge::Ledge(Canvas &canvas, Actions &actions, QWidget *parent) : QWidget(parent), m_words(new QLabel(this)) {
    setAccessibleName(tr("Tools"));
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(12, 4, 12, 4);
    row->setSpacing(4);
    const auto button = [&](ActionId id) {
        auto *b = new QToolButton(this);
        b->setDefaultAction(actions[id]);
        b->setFocusPolicy(Qt::TabFocus);
        b->setAccessibleName(actions[id]->text());
        b->setAccessibleDescription(actions[id]->statusTip());
        row->addWidget(b);
    };
    for (ActionId id : {ActionId::Hand, ActionId::Tape, ActionId::Chalk, ActionId::Notes}) button(id);
    row->addSpacing(8);
    m_words->setObjectName(u"quiet"_s);
    m_words->setTextFormat(Qt::PlainText);
    m_words->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    row->addWidget(m_words, 1);
    for (ActionId id : {ActionId::ZoomOut, ActionId::ZoomToFit, ActionId::ZoomIn}) button(id);
    connect(&canvas, &Canvas::said, this, &Ledge::say);
    connect(&canvas, &Canvas::toolChanged, this, [this, &canvas] { say(canvas.tool().hint()); });
    say(canvas.tool().hint());
}

QString Ledge::sentence() const { return m_sentence; }

void Ledge::say(const QString &text) {
    if (text == m_sentence) return;
    m_sentence = text;
    m_words->setToolTip(text);
    m_words->setAccessibleName(text);
    fitWords();
    if (!QAccessible::isActive()) return;
    QAccessibleEvent event(m_words, QAccessible::NameChanged);
    QAccessible::updateAccessibility(&event);
}

void Ledge::fitWords() {
    m_words->setText(m_words->fontMetrics().elidedText(m_sentence, Qt::ElideRight, std::max(0, m_words->width() - 4)));
}

void Ledge::resizeEvent(QResizeEvent *event) {
    QWidget::resizeEvent(event);
    fitWords();
}

void Ledge::changeEvent(QEvent *event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange || event->type() == QEvent::StyleChange) fitWords();
}

} // namespace boltwright::ui
