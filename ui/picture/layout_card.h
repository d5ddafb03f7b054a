#pragma once

#include "core/job/job.h"

#include <QFrame>
#include <QLabel>
#include <QPushButton>

namespace boltwright::ui {

/// A small picture of a whole layout: its first cloth and the panels on it with their marks.
class LayoutThumbnail : public QWidget {
    Q_OBJECT
public:
    explicit LayoutThumbnail(QWidget *parent = nullptr);
    void show(Job job, Layout layout);
    QSize sizeHint() const override { return {260, 110}; }

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    Job m_job;
    Layout m_layout;
};

/// One answer beside others: a headline, a picture, what it means in words, and a button that takes it.
class LayoutCard : public QFrame {
    Q_OBJECT
public:
    LayoutCard(const QString &headline, const QStringList &words, const Job &job, const Layout &layout,
               const QString &take, QWidget *parent = nullptr);
    QPushButton *takeButton() { return m_take; }

Q_SIGNALS:
    void taken();

private:
    QPushButton *m_take;
};

} // namespace boltwright::ui
