#pragma once

#include "ui/document/job_document.h"

#include <QAbstractListModel>

namespace boltwright::ui {

/// Every match of the job, one a line, in plain words.
class MatchListModel : public QAbstractListModel {
    Q_OBJECT
public:
    explicit MatchListModel(JobDocument &document, QObject *parent = nullptr);
    int rowCount(const QModelIndex &parent = {}) const override;
    QVariant data(const QModelIndex &index, int role) const override;

private:
    void follow(Changes changes);
    JobDocument &m_document;
    int m_rows;
};

} // namespace boltwright::ui
