#pragma once

#ifndef Q_MOC_RUN // which cannot read the standard headers behind these in C++20, and need not
#include "ui/document/job_document.h"
#include "ui/shop/shop.h"

#include <functional>
#endif

#include <QLabel>
#include <QWidget>

class QFormLayout;
class QVBoxLayout;

namespace boltwright::ui {

class TrimmingWatch;

/// The job's trimmings: welt cut from the cloth, from what the layout leaves over or bought, gimp, cord, double welt,
/// nails. Each says in a sentence what it takes and whether that is there. Every field is one step of the history.
class TrimmingsPage : public QWidget {
    Q_OBJECT
public:
    TrimmingsPage(JobDocument &document, TrimmingWatch &watch, Shop &shop, QWidget *parent = nullptr);
    /// What the page says of the trimming at that place.
    QString sentence(int index) const;
    QString refusal() const { return m_refusal->text(); }

protected:
    void resizeEvent(QResizeEvent *event) override;

private:
    int fieldsBeside() const;
    void add(Trimming::Kind kind);
    void remove(int index);
    void fill();
    QWidget *card(int index);
    void say();
    void change(int index, const QString &text, const std::function<void(Trimming &)> &how);
    void changeStrips(int index);

    JobDocument &m_document;
    TrimmingWatch &m_watch;
    TradeRules m_rules;
    QLabel *m_refusal;
    QVBoxLayout *m_cards;
    QList<QLabel *> m_sentences;
    std::vector<Trimming> m_filled; ///< what the cards were made for
    int m_fieldsBeside = 0;         ///< and how many fields a row of them has
};

} // namespace boltwright::ui
