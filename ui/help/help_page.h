#pragma once

#include <QList>
#include <QPair>
#include <QString>
#include <QWidget>

class QListWidget;
class QTextBrowser;

namespace boltwright::ui {

/// The pages of resources/help, in their order: file name without its ending, and the title that stands in it.
QList<QPair<QString, QString>> helpPages();

/// How things are done, with pictures: titles at the left, the page at the right.
class HelpPage : public QWidget {
    Q_OBJECT
public:
    /// Opens at `page`; empty: at the first.
    explicit HelpPage(const QString &page, QWidget *parent = nullptr);
    QString shownText() const;
    QListWidget *titles() { return m_titles; }

protected:
    bool eventFilter(QObject *watched, QEvent *event) override;

private:
    void show(const QString &page);
    void fitPictures();
    QListWidget *m_titles;
    QTextBrowser *m_text;
};

} // namespace boltwright::ui
