#include "ui/window/over_sheet.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPushButton>
#include <QScrollArea>

#include <utility>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

OverSheet::OverSheet(QWidget *over)
    : QFrame(over), m_title(new QLabel(this)), m_scroll(new QScrollArea(this)), m_column(new QVBoxLayout(this)) {
    setObjectName(u"overSheet"_s);
    setAutoFillBackground(true);
    m_title->setObjectName(u"bigTitle"_s);
    auto *done = new QPushButton(tr("Done"), this);
    done->setToolTip(tr("Back to the table (Escape)."));
    connect(done, &QPushButton::clicked, this, &OverSheet::close);
    auto *head = new QHBoxLayout;
    head->addWidget(m_title);
    head->addStretch();
    head->addWidget(done);
    m_column->setContentsMargins(24, 18, 24, 18);
    m_column->setSpacing(12);
    m_column->addLayout(head);
    // With large letters or in a small window a page is scrolled rather than squeezed.
    m_scroll->setWidgetResizable(true);
    m_scroll->setFrameShape(QFrame::NoFrame);
    m_scroll->setFocusPolicy(Qt::NoFocus);
    m_scroll->viewport()->setAutoFillBackground(false);
    m_column->addWidget(m_scroll, 1);
    over->installEventFilter(this);
    QFrame::hide();
}

void OverSheet::show(const QString &title, QWidget *content) {
    delete m_scroll->takeWidget();
    m_content = content;
    m_title->setText(title);
    setAccessibleName(title);
    m_scroll->setWidget(content);
    content->setAutoFillBackground(false); // the sheet's own ground shows through
    fit();
    // What lies below is out of reach for the keyboard too.
    disableBelow();
    QFrame::show();
    raise();
    // A page that went on standing for one of its fields would hide from Tab what lies before that field.
    QWidget *first = content;
    while (first->focusProxy()) first = first->focusProxy();
    content->setFocusProxy(nullptr);
    first->setFocus();
}

void OverSheet::close() {
    if (isHidden()) return;
    // What is being typed is finished first, so that closing never loses it.
    setFocus();
    for (const QPointer<QWidget> &below : std::exchange(m_disabled, {}))
        if (below) below->setEnabled(true);
    QFrame::hide();
    // Later, for it may be the page itself that wants to go; but never later than the window and its job.
    if (QWidget *gone = m_scroll->takeWidget()) {
        gone->setParent(parentWidget());
        gone->hide();
        gone->deleteLater();
    }
    m_content = nullptr;
    Q_EMIT closed();
}

/// What was out of use before stays so when the sheet goes: only what is disabled here comes back.
void OverSheet::disableBelow() {
    for (QWidget *below : parentWidget()->findChildren<QWidget *>(Qt::FindDirectChildrenOnly)) {
        if (below == this || below->testAttribute(Qt::WA_ForceDisabled)) continue;
        below->setEnabled(false);
        m_disabled << below;
    }
}

bool OverSheet::eventFilter(QObject *watched, QEvent *event) {
    if (watched == parent() && event->type() == QEvent::Resize) fit();
    return QFrame::eventFilter(watched, event);
}

void OverSheet::keyPressEvent(QKeyEvent *event) {
    if (event->key() == Qt::Key_Escape)
        close();
    else
        QFrame::keyPressEvent(event);
}

void OverSheet::fit() {
    // All of it: slivers of tools round the edge would look as if they could be used.
    setGeometry(parentWidget()->rect());
}

} // namespace boltwright::ui
