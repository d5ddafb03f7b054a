#include "ui/window/over_sheet.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QPushButton>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

OverSheet::OverSheet(QWidget *over) : QFrame(over), m_title(new QLabel(this)), m_column(new QVBoxLayout(this)) {
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
    over->installEventFilter(this);
    QFrame::hide();
}

void OverSheet::show(const QString &title, QWidget *content) {
    delete m_content;
    m_content = content;
    m_title->setText(title);
    setAccessibleName(title);
    m_column->addWidget(content, 1);
    fit();
    QFrame::show();
    raise();
    content->setFocus();
}

void OverSheet::close() {
    if (isHidden()) return;
    // What is being typed is finished first, so that closing never loses it.
    setFocus();
    QFrame::hide();
    if (m_content) m_content->deleteLater();
    m_content = nullptr;
    Q_EMIT closed();
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
