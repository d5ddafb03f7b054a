#include "ui/help/help_page.h"

#include <QDir>
#include <QFile>
#include <QHBoxLayout>
#include <QListWidget>
#include <QTextBrowser>
#include <QTextDocument>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

QString textOf(const QString &page) {
    QFile file(u":/boltwright/help/%1.md"_s.arg(page));
    return file.open(QIODevice::ReadOnly) ? QString::fromUtf8(file.readAll()) : QString();
}

} // namespace

QList<QPair<QString, QString>> helpPages() {
    QList<QPair<QString, QString>> pages;
    for (const QString &name : QDir(u":/boltwright/help"_s).entryList({u"*.md"_s}, QDir::Files, QDir::Name)) {
        const QString page = name.chopped(3);
        const QString first = textOf(page).section(u'\n', 0, 0);
        pages.append({page, first.startsWith(u"# "_s) ? first.mid(2) : page});
    }
    return pages;
}

HelpPage::HelpPage(const QString &page, QWidget *parent)
    : QWidget(parent), m_titles(new QListWidget(this)), m_text(new QTextBrowser(this)) {
    m_titles->setFrameShape(QFrame::NoFrame);
    m_titles->setAccessibleName(tr("Help pages"));
    m_titles->setToolTip(tr("What the page at the right tells about."));
    m_titles->setWordWrap(true);
    m_text->setFrameShape(QFrame::NoFrame);
    m_text->setAccessibleName(tr("Help"));
    m_text->setToolTip(tr("Scroll with the arrows; Tab goes back to the list of pages."));
    m_text->setTabChangesFocus(true);
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(20);
    row->addWidget(m_titles, 2);
    row->addWidget(m_text, 7);
    int chosen = 0;
    for (const auto &[name, title] : helpPages()) {
        auto *item = new QListWidgetItem(title, m_titles);
        item->setData(Qt::UserRole, name);
        if (name == page) chosen = m_titles->row(item);
    }
    connect(m_titles, &QListWidget::currentItemChanged, this, [this](QListWidgetItem *item) {
        if (item) show(item->data(Qt::UserRole).toString());
    });
    m_titles->setCurrentRow(chosen);
    setFocusProxy(m_titles);
}

void HelpPage::show(const QString &page) {
    m_text->document()->setBaseUrl(QUrl(u"qrc:/boltwright/help/"_s));
    m_text->setMarkdown(textOf(page));
}

QString HelpPage::shownText() const { return m_text->toPlainText(); }

} // namespace boltwright::ui
