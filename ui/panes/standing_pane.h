#pragma once

#include "ui/document/standing.h"

#include <QLabel>
#include <QVBoxLayout>
#include <QWidget>

namespace boltwright::ui {

/// The right pane: what the layout comes to, and what holds it back, in words.
class StandingPane : public QWidget {
    Q_OBJECT
public:
    StandingPane(JobDocument &document, Standing &standing, QWidget *parent = nullptr);
    /// The sentences shown, for those who test and those who listen.
    QStringList sentences() const;

Q_SIGNALS:
    void panelWanted(const QString &panel);

protected:
    void changeEvent(QEvent *event) override;

private:
    struct Sentence {
        enum class Kind { Wrong, Right, Waiting } kind;
        QString text;
        std::string panel; ///< the one it speaks of; empty: none
    };
    std::vector<Sentence> whatHoldsItBack() const;
    QString figuresText() const;
    void refresh();
    void fitWords();

    JobDocument &m_document;
    Standing &m_standing;
    QLabel *m_figures, *m_reasonsTitle;
    QVBoxLayout *m_reasons;
    std::vector<QLabel *> m_lines;
};

} // namespace boltwright::ui
