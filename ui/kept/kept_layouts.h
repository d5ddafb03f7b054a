#pragma once

#include "ui/document/job_document.h"
#include "ui/kept/kept_card.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>
#include <QScrollArea>
#include <QWidget>

namespace boltwright::ui {

/// "Kept": the job's layouts along the bottom, each a card. Pressing one lays it on the table. What is laid can be kept
/// as a copy under a name, so that it may be changed without fear.
class KeptLayouts : public QWidget {
    Q_OBJECT
public:
    explicit KeptLayouts(JobDocument &document, QWidget *parent = nullptr);
    const QList<KeptCard *> &cards() const { return m_cards; }
    QPushButton *keepButton() { return m_keep; }
    /// Keeps a copy of what is laid, under a name that can be typed over at once.
    void keep();

Q_SIGNALS:
    /// The layout laid is to be compared with that one.
    void comparisonWanted(int with);

protected:
    void changeEvent(QEvent *event) override;

private:
    void refresh();
    void fitHeight();
    KeptCard *newCard(int index);
    QString freeName() const;

    JobDocument &m_document;
    QPushButton *m_keep;
    QLabel *m_nothing;
    QScrollArea *m_scroll;
    QHBoxLayout *m_row;
    QList<KeptCard *> m_cards;
};

} // namespace boltwright::ui
