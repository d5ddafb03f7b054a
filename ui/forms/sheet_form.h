#pragma once

#ifndef Q_MOC_RUN
#include "core/edit/cloth_edit.h"
#include "ui/document/job_document.h"
#endif

#include <QWidget>

class QFormLayout;

namespace boltwright::ui {

class LengthEdit;

/// What is particular to one remnant or bolt: a remnant's corners, dye lot and motif position; the flaws of either,
/// round ones by middle and radius, others by their corners. Part of the form of cloths.
class SheetForm : public QWidget {
    Q_OBJECT
public:
    SheetForm(JobDocument &document, const SheetOf &sheet, QWidget *parent = nullptr);

Q_SIGNALS:
    void refused(const QString &sentence); ///< empty: what was refused before is of no matter now

private:
    void fillRemnant(QFormLayout *form, const Remnant &remnant);
    void fillFlaws(QFormLayout *form);
    QWidget *cornersRow(const OutlineOf &which, const QString &take);
    QWidget *spotRow(const OutlineOf &which);
    QWidget *noteAndRemove(const OutlineOf &which);
    LengthEdit *lengthField(const QString &name, const QString &sentence, std::optional<Length> value, bool aboveZero);
    void change(Result<Job> job, const QString &text, const QString &mergeKey = {});

    JobDocument &m_document;
    SheetOf m_sheet;
};

} // namespace boltwright::ui
