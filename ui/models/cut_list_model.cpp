#include "ui/models/cut_list_model.h"

#include "core/edit/layout_edit.h"
#include "ui/text/words.h"

using namespace Qt::StringLiterals;

namespace boltwright::ui {

CutListModel::CutListModel(JobDocument &document, QObject *parent)
    : QAbstractListModel(parent), m_document(document), m_rows(int(document.job().panels.size())) {
    connect(&document, &JobDocument::changed, this, &CutListModel::follow);
}

void CutListModel::follow(Changes changes) {
    if (changes & (Change::Panels | Change::NewJob)) {
        beginResetModel();
        m_rows = int(m_document.job().panels.size());
        endResetModel();
    } else if ((changes & (Change::Layout | Change::Preview | Change::Card)) && m_rows > 0) {
        Q_EMIT dataChanged(index(0), index(m_rows - 1));
    }
}

int CutListModel::rowCount(const QModelIndex &parent) const { return parent.isValid() ? 0 : m_rows; }

int CutListModel::rowOf(const std::string &panel) const {
    const auto &panels = m_document.job().panels;
    for (int i = 0; i < int(panels.size()); ++i)
        if (panels[std::size_t(i)].id == panel) return i;
    return -1;
}

QVariant CutListModel::data(const QModelIndex &index, int role) const {
    const Job &job = m_document.job();
    if (!index.isValid() || index.row() >= int(job.panels.size())) return {};
    const Panel &panel = job.panels[std::size_t(index.row())];
    const int laid = copiesLaid(m_document.layout(), panel.id);
    const auto where = [&] {
        if (laid == panel.count) return tr("on the cloth · %1 of %2").arg(laid).arg(panel.count);
        if (laid == 0) return tr("put aside · %1").arg(panel.count);
        return tr("on the cloth · %1 of %2, put aside · %3").arg(laid).arg(panel.count).arg(panel.count - laid);
    };
    const auto size = [&] {
        const PanelBox box = boxOf(cutOutline(panel.shape, preferredAllowances(panel)));
        return shownSize(box.width(), box.height(), job.unit);
    };
    switch (role) {
    case Mark:
        return fromCore(panel.mark);
    case Qt::DisplayRole:
    case Name:
        return fromCore(panel.name.empty() ? panel.mark : panel.name);
    case Where:
        return where();
    case Size:
        return size();
    case IsAside:
        return laid < panel.count;
    case PanelId:
        return fromCore(panel.id);
    case Qt::AccessibleTextRole:
        return tr("%1, %2, %3, cut size %4").arg(fromCore(panel.mark), fromCore(panel.name), where(), size());
    case Qt::ToolTipRole:
        return tr("%1 · cut size %2, side to side × up · %3").arg(fromCore(panel.name), size(), where());
    default:
        return {};
    }
}

} // namespace boltwright::ui
