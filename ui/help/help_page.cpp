#include "ui/help/help_page.h"

#include <QDir>
#include <QEvent>
#include <QFile>
#include <QHBoxLayout>
#include <QImage>
#include <QListWidget>
#include <QTextBlock>
#include <QTextBrowser>
#include <QTextCursor>
#include <QTextDocument>

#include <algorithm>

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
    m_text->viewport()->installEventFilter(this);
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
    fitPictures();
}

/// Pictures are shown whole: no wider than the page, and no larger than they are.
void HelpPage::fitPictures() {
    const double room = std::max(120, m_text->viewport()->width() - 16);
    QTextDocument *text = m_text->document();
    for (QTextBlock block = text->begin(); block.isValid(); block = block.next())
        for (auto part = block.begin(); !part.atEnd(); ++part) {
            QTextImageFormat format = part.fragment().charFormat().toImageFormat();
            if (!format.isValid()) continue;
            const QImage picture(u":/boltwright/help/"_s + format.name());
            if (picture.isNull()) continue;
            const double wide = std::min(room, double(picture.width()));
            if (qFuzzyCompare(format.width(), wide)) continue;
            format.setWidth(wide);
            format.setHeight(wide * picture.height() / picture.width());
            QTextCursor cursor(text);
            cursor.setPosition(part.fragment().position());
            cursor.setPosition(part.fragment().position() + part.fragment().length(), QTextCursor::KeepAnchor);
            cursor.setCharFormat(format);
            part = block.begin(); // what is gone through has changed
        }
}

bool HelpPage::eventFilter(QObject *watched, QEvent *event) {
    if (watched == m_text->viewport() && event->type() == QEvent::Resize)
        QMetaObject::invokeMethod(this, &HelpPage::fitPictures, Qt::QueuedConnection); // once it has its new width
    return QWidget::eventFilter(watched, event);
}

QString HelpPage::shownText() const { return m_text->toPlainText(); }

} // namespace boltwright::ui
