#pragma once

#ifndef Q_MOC_RUN // which cannot read the standard headers behind these in C++20, and need not
#include "core/forms/panels_from.h"
#include "ui/document/job_document.h"
#include "ui/models/measure_table_model.h"
#include "ui/shop/shop.h"

#include <functional>
#endif

#include <QLabel>
#include <QWidget>

class QCheckBox;
class QComboBox;
class QLineEdit;
class QPushButton;
class QSpinBox;

namespace boltwright::ui {

class LengthEdit;
class SheetTable;
class SvgPicture;

/// From measurements to panels: choose a piece, fill in what the tape says while its picture shows from where to where,
/// and take the panels into this job or a new one. Everything about a part can be changed, and the form kept for the
/// shop.
class PieceFormPage : public QWidget {
    Q_OBJECT
public:
    PieceFormPage(JobDocument &document, Shop &shop, QWidget *parent = nullptr);

    SheetTable *table() { return m_table; }
    MeasureTableModel *model() { return m_model; }
    QString refusal() const { return m_refusal->text(); }
    QString doubts() const { return m_doubts->text(); }
    void choose(const std::string &formId);

    /// The job with what was measured added to it, as one step.
    Job added(Job job) const;

Q_SIGNALS:
    void taken();        ///< the panels are in the job
    void newJobWanted(); ///< they are to go into a job of their own

private:
    QWidget *buildHead();
    QWidget *buildDetails();
    QWidget *buildPicture();
    QWidget *buildFoot();
    void orderTabs();
    void fillForms(const std::string &chosen);
    void follow();
    void showPart();
    void showDetails();
    void changePart(const std::function<void(FormPart &)> &how);
    void changeKind(PartKind kind);
    void addPart();
    void removePart();
    void measureApart(bool apart);
    void changeRelief();
    void keepForm();
    void dropForm();
    void paste(const QString &text);
    void refuse(const QString &sentence);
    std::string currentPart() const; ///< empty: none
    const Cloth &cloth() const;
    void take();

    JobDocument &m_document;
    Shop &m_shop;
    TradeRules m_rules;
    std::vector<PieceForm> m_forms;
    MeasureTableModel *m_model;
    SheetTable *m_table;
    QComboBox *m_piece = nullptr, *m_cloth = nullptr, *m_welt = nullptr;
    QLabel *m_refusal, *m_doubts = nullptr, *m_sum = nullptr, *m_caption = nullptr;
    SvgPicture *m_picture = nullptr, *m_flat = nullptr;
    QPushButton *m_take = nullptr, *m_takeNew = nullptr, *m_keep = nullptr, *m_drop = nullptr;

    QWidget *m_details = nullptr;
    QLineEdit *m_mark = nullptr, *m_name = nullptr;
    QComboBox *m_kind = nullptr, *m_motif = nullptr, *m_relief = nullptr;
    QComboBox *m_edges[4] = {}, *m_trims[4] = {};
    QSpinBox *m_pieces = nullptr;
    QCheckBox *m_hidden = nullptr, *m_pair = nullptr, *m_apart = nullptr;
    LengthEdit *m_spacing = nullptr, *m_depth = nullptr;
    bool m_showing = false;
};

} // namespace boltwright::ui
