#pragma once

#include "ui/document/job_document.h"

#include <QAbstractTableModel>

namespace boltwright::ui {

/// All panels of the job as a table, one field a column. Writing to it is one step of the history; what cannot be
/// taken is refused with a reason.
class PanelTableModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column {
        Mark,
        Name,
        Count,
        OfCloth,
        Kind,
        Across,
        TopAcross,
        Up,
        Lean,
        AllowTop,
        AllowBottom,
        AllowLeft,
        AllowRight,
        RunColumn,
        Motif,
        Alike,
        Mirror,
        Hidden,
        ColumnCount
    };
    enum Role { ChoicesRole = Qt::UserRole + 1, KeysRole }; ///< texts to choose from, and what they stand for

    explicit PanelTableModel(JobDocument &document, QObject *parent = nullptr);
    int rowCount(const QModelIndex &parent = {}) const override;
    int columnCount(const QModelIndex &parent = {}) const override;
    QVariant data(const QModelIndex &index, int role) const override;
    bool setData(const QModelIndex &index, const QVariant &value, int role = Qt::EditRole) override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex &index) const override;

Q_SIGNALS:
    void refused(const QString &sentence);

private:
    void follow(Changes changes);
    const Panel &panelAt(int row) const { return m_document.job().panels[std::size_t(row)]; }
    bool isAsked(const Panel &panel, int column) const;
    QString textOf(const Panel &panel, int column) const;
    Result<Panel> changedPanel(Panel panel, int column, const QString &value) const;
    JobDocument &m_document;
    int m_rows;
};

} // namespace boltwright::ui
