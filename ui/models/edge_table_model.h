#pragma once

#include "ui/document/job_document.h"

#include <QAbstractTableModel>

namespace boltwright::ui {

/// The edges of one panel, one a line: what is added there, the least that is left when cloth is short, and what of the
/// face cloth is left where a strip of other cloth may be sewn on. Writing to it is one step of the history.
class EdgeTableModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { Added, Least, Strip, ColumnCount };

    explicit EdgeTableModel(JobDocument &document, QObject *parent = nullptr);
    /// The panel whose edges are shown, by its place in the job; -1: none.
    void showPanel(int panel);
    int rowCount(const QModelIndex &parent = {}) const override;
    int columnCount(const QModelIndex &parent = {}) const override;
    QVariant data(const QModelIndex &index, int role) const override;
    bool setData(const QModelIndex &index, const QVariant &value, int role = Qt::EditRole) override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex &index) const override;

Q_SIGNALS:
    void refused(const QString &sentence);

private:
    const Panel *panel() const;
    std::optional<Length> lengthAt(const QModelIndex &index) const;
    QString edgeAt(int row) const;

    JobDocument &m_document;
    int m_panel = -1, m_rows = 0;
};

} // namespace boltwright::ui
