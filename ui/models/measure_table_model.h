#pragma once

#ifndef Q_MOC_RUN // which cannot read the standard headers behind these in C++20, and need not
#include "core/base/result.h"
#include "core/forms/doubts.h"
#include "core/forms/piece_form.h"

#include <set>
#endif

#include <QAbstractTableModel>

namespace boltwright::ui {

/// The parts of a piece and what was measured of each, one part a row; the right one of a pair that is measured apart
/// has a row of its own. What is typed is taken at once; what is no length is refused with a reason.
class MeasureTableModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { Part, There, Count, First, Second, Third, Motif, ColumnCount };

    explicit MeasureTableModel(QObject *parent = nullptr);

    /// Begins with the form's usual sizes.
    void begin(PieceForm form, Unit unit);
    const PieceForm &form() const { return m_form; }
    const FormMeasures &measures() const { return m_measures; }
    Unit unit() const { return m_unit; }
    /// The form itself was changed; measures of parts that stay are kept.
    void changeForm(PieceForm form);
    void setMeasured(const std::string &part, PartMeasured measured);
    void setDoubts(const std::vector<Doubt> &doubts);

    /// Sizes that still stand at what is usual, of parts that are there.
    int notMeasured() const;

    const FormPart *partOf(int row) const; ///< null: no such row
    bool isTwin(int row) const;
    int rowOf(const std::string &part) const; ///< -1: none
    std::optional<Measure> measureOf(const QModelIndex &index) const;

    int rowCount(const QModelIndex &parent = {}) const override;
    int columnCount(const QModelIndex &parent = {}) const override;
    QVariant data(const QModelIndex &index, int role) const override;
    bool setData(const QModelIndex &index, const QVariant &value, int role = Qt::EditRole) override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex &index) const override;

Q_SIGNALS:
    void measured(); ///< anything that panels are made of
    void refused(const QString &sentence);

private:
    struct Row {
        std::size_t part = 0;
        bool twin = false;
        bool operator==(const Row &) const = default;
    };
    struct Field {
        std::string part;
        bool twin;
        Measure measure;
        auto operator<=>(const Field &) const = default;
    };
    std::vector<Row> rowsNow() const;
    void rebuild();
    const FormPart &part(const Row &row) const { return m_form.parts[row.part]; }
    PartMeasured &measuredOf(const Row &row) { return m_measures[part(row).id]; }
    const PartMeasured &measuredOf(const Row &row) const { return m_measures.at(part(row).id); }
    Length lengthAt(const Row &row, Measure measure) const;
    bool refuse(const QString &sentence);

    PieceForm m_form;
    FormMeasures m_measures;
    Unit m_unit = Unit::Inch;
    std::vector<Row> m_rows;
    std::set<Field> m_taken; ///< measured by hand
    std::vector<Doubt> m_doubts;
};

} // namespace boltwright::ui
