#include "ui/models/match_list_model.h"

#include "core/edit/match_edit.h"
#include "ui/text/words.h"

namespace boltwright::ui {

MatchListModel::MatchListModel(JobDocument &document, QObject *parent)
    : QAbstractListModel(parent), m_document(document), m_rows(int(document.job().flows.size())) {
    connect(&document, &JobDocument::changed, this, &MatchListModel::follow);
}

void MatchListModel::follow(Changes changes) {
    if (!(changes & (Change::Panels | Change::NewJob | Change::Card | Change::Cloths))) return;
    const int rows = int(m_document.job().flows.size());
    if (rows != m_rows) {
        beginResetModel();
        m_rows = rows;
        endResetModel();
    } else if (rows > 0) {
        Q_EMIT dataChanged(index(0), index(rows - 1));
    }
}

int MatchListModel::rowCount(const QModelIndex &parent) const { return parent.isValid() ? 0 : m_rows; }

QVariant MatchListModel::data(const QModelIndex &index, int role) const {
    const Job &job = m_document.job();
    if (!index.isValid() || index.row() >= int(job.flows.size())) return {};
    if (role == Qt::DisplayRole || role == Qt::ToolTipRole)
        return withFractions(fromCore(matchInWords(job, job.flows[std::size_t(index.row())])));
    return {};
}

} // namespace boltwright::ui
