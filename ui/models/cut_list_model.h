#pragma once

#include "ui/document/job_document.h"

#include <QAbstractListModel>

namespace boltwright::ui {

/// The notebook page: every panel with its mark, name, cut size and how many of it lie on the cloth.
class CutListModel : public QAbstractListModel {
    Q_OBJECT
public:
    enum Role { Mark = Qt::UserRole + 1, Name, Where, Size, IsAside, PanelId };

    explicit CutListModel(JobDocument &document, QObject *parent = nullptr);
    int rowCount(const QModelIndex &parent = {}) const override;
    QVariant data(const QModelIndex &index, int role) const override;
    int rowOf(const std::string &panel) const; ///< -1: none

private:
    void follow(Changes changes);
    JobDocument &m_document;
    int m_rows = 0;
};

} // namespace boltwright::ui
