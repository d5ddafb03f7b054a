#pragma once

#ifndef Q_MOC_RUN // which cannot read the standard headers behind these in C++20, and need not
#include "core/edit/cloth_edit.h"
#include "ui/document/job_document.h"
#endif

#include <QHash>
#include <QLabel>
#include <QWidget>

#include <functional>

class QComboBox;
class QFormLayout;
class QPushButton;
class QScrollArea;

namespace boltwright::ui {

class SheetForm;

/// The cloths of the job, one shown at a time: a bolt or remnants, nap, repeat, flaws. Every field is one step of the
/// history; what the contract does not allow is refused with a reason and changes nothing.
class ClothForm : public QWidget {
    Q_OBJECT
public:
    explicit ClothForm(JobDocument &document, QWidget *parent = nullptr);
    QString refusal() const { return m_refusal->text(); }
    QString told() const { return m_told->text(); } ///< what became of what a change of form could not keep
    void showCloth(int index);

Q_SIGNALS:
    void swatchWanted(int cloth);
    void photographWanted();
    void tapeWanted(const QString &cloth, const QString &remnant);

Q_SIGNALS:
    void drawingWanted(); ///< remnants and flaws on the table

private:
    void refill();
    void fill(QFormLayout *form);
    void comeAs(bool bolt);
    void becomeRemnant(Length length);
    void take(JobAndWords changed, const QString &text);
    void fillBolt(QFormLayout *form);
    void fillRemnants(QFormLayout *form);
    void fillPattern(QFormLayout *form);
    void fillSquareness(QFormLayout *form);
    /// A repeat, as a length or measured over several of it: "4 repeats measure 108".
    void repeatRow(QFormLayout *form, const QString &label, const QString &sentence, std::optional<Length> value,
                   const std::function<void(Cloth &, std::optional<Length>)> &set);
    void fillPrice(QFormLayout *form);
    SheetForm *sheetForm(const SheetOf &sheet);
    void fillLook(QFormLayout *form);
    void refuse(const Fault &fault);
    const Cloth &cloth() const { return m_document.job().cloths[std::size_t(m_index)]; }
    void change(const QString &text, const std::function<void(Cloth &)> &how, bool merge = true);
    void lengthRow(QFormLayout *form, const QString &label, const QString &sentence, std::optional<Length> value,
                   bool optional, bool aboveZero, const std::function<void(Cloth &, std::optional<Length>)> &set);

    JobDocument &m_document;
    int m_index = 0;
    QHash<QString, int> m_repeats; ///< over how many each repeat was measured, while the form is open
    QComboBox *m_which;
    QPushButton *m_main;
    QLabel *m_refusal;
    QLabel *m_told;
    bool m_lengthAsked = false; ///< how long the remnant is that a bolt without an end becomes
    QScrollArea *m_scroll;
};

} // namespace boltwright::ui
