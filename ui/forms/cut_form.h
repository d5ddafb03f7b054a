#pragma once

#ifndef Q_MOC_RUN // which cannot read the standard headers behind these in C++20, and need not
#include "ui/document/job_document.h"
#endif

#include <QLabel>
#include <QWidget>

class QFormLayout;

namespace boltwright::ui {

/// What is given up at the selected cut alone: what is left at each of its edges, and of a copy made of pieces how long
/// each is cut. Every field is one step of the history; whether the layout holds then is said where it always is.
class CutForm : public QWidget {
    Q_OBJECT
public:
    explicit CutForm(JobDocument &document, QWidget *parent = nullptr);
    QString refusal() const { return m_refusal->text(); }

private:
    void fill();
    void take(const Result<Layout> &layout, const QString &text);

    JobDocument &m_document;
    CutName m_cut; ///< the one that was selected
    QLabel *m_refusal;
    QWidget *m_fields = nullptr;
};

} // namespace boltwright::ui
