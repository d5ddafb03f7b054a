#pragma once

#include "core/job/job.h"
#include "ui/kept/layout_words.h"
#include "ui/picture/layout_card.h"

#include <QAbstractButton>
#include <QLineEdit>
#include <QMenu>
#include <QToolButton>

namespace boltwright::ui {

/// One kept layout: its picture, what it comes to, its name and what was given up. Pressing it lays it on the table;
/// F2 names it, Delete drops it, and its menu has all that can be done.
class KeptCard : public QAbstractButton {
    Q_OBJECT
public:
    explicit KeptCard(QWidget *parent = nullptr);
    void show(const Job &job, int index, bool current);
    /// The name becomes a field to type in; Return takes it, Escape leaves it as it was.
    void beginRename();
    QSize sizeHint() const override;
    QLineEdit *nameField() { return m_field; }
    QMenu *menu() { return m_menu; }

Q_SIGNALS:
    void renamed(const QString &name);
    void dropWanted();
    void comparisonWanted();
    void neighbourWanted(int step);

protected:
    void paintEvent(QPaintEvent *event) override;
    void resizeEvent(QResizeEvent *event) override;
    void keyPressEvent(QKeyEvent *event) override;
    void contextMenuEvent(QContextMenuEvent *event) override;
    bool event(QEvent *event) override;
    bool eventFilter(QObject *watched, QEvent *event) override;
    void nextCheckState() override {} ///< the document says which one lies on the table

private:
    void place();
    void endRename(bool take);
    QFont strong() const;
    QFont small() const;
    QRectF nameRoom() const;

    Job m_job; ///< as last shown, with this layout alone
    int m_index = -1;
    QString m_name;
    LayoutWords m_words;
    bool m_wasCurrent = false;
    LayoutThumbnail *m_picture;
    QToolButton *m_more;
    QMenu *m_menu;
    QAction *m_compare;
    QLineEdit *m_field;
};

} // namespace boltwright::ui
