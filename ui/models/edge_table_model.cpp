#include "ui/models/edge_table_model.h"

#include "core/edit/job_edit.h"
#include "core/panel/edges.h"
#include "ui/text/words.h"
#include "ui/widgets/length_edit.h"

using namespace Qt::StringLiterals;

namespace boltwright::ui {

EdgeTableModel::EdgeTableModel(JobDocument &document, QObject *parent)
    : QAbstractTableModel(parent), m_document(document) {}

const Panel *EdgeTableModel::panel() const {
    const auto &panels = m_document.job().panels;
    return m_panel >= 0 && m_panel < int(panels.size()) ? &panels[std::size_t(m_panel)] : nullptr;
}

void EdgeTableModel::showPanel(int panel) {
    const auto &panels = m_document.job().panels;
    const int rows = panel >= 0 && panel < int(panels.size()) ? int(edgeCount(panels[std::size_t(panel)].shape)) : 0;
    if (panel == m_panel && rows == m_rows) {
        if (rows > 0) Q_EMIT dataChanged(index(0, 0), index(rows - 1, ColumnCount - 1));
        return;
    }
    beginResetModel();
    m_panel = panel;
    m_rows = rows;
    endResetModel();
}

int EdgeTableModel::rowCount(const QModelIndex &parent) const { return parent.isValid() ? 0 : m_rows; }
int EdgeTableModel::columnCount(const QModelIndex &parent) const { return parent.isValid() ? 0 : ColumnCount; }

QString EdgeTableModel::edgeAt(int row) const {
    const Panel *p = panel();
    if (!p || row >= int(edgeCount(p->shape))) return {};
    const QString words = fromCore(edgeInWords(p->shape, row));
    return words.left(1).toUpper() + words.mid(1);
}

QVariant EdgeTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Vertical) return role == Qt::DisplayRole ? edgeAt(section) : QVariant();
    const QString titles[] = {tr("Added"), tr("At least"), tr("Left for a strip")};
    const QString sentences[] = {tr("What is added at this edge."),
                                 tr("How far it may be trimmed when the cloth is short. Left empty: not at all."),
                                 tr("Where an edge is pulled out of sight, a strip of other cloth may be sewn on when "
                                    "the cloth is short: what of "
                                    "the face cloth must be left there to sew it to. Left empty: no strip there.")};
    if (role == Qt::DisplayRole) return titles[section];
    if (role == Qt::ToolTipRole) return sentences[section];
    return {};
}

std::optional<Length> EdgeTableModel::lengthAt(const QModelIndex &index) const {
    const Panel &p = *panel();
    if (index.column() == Added) return p.allowance(index.row());
    if (index.column() == Least) {
        const auto edge = std::size_t(index.row());
        return edge < p.allowMin.size() ? p.allowMin[edge] : std::nullopt;
    }
    const auto strip = p.may.stretcher.find(index.row());
    return strip == p.may.stretcher.end() ? std::nullopt : std::optional(strip->second);
}

QVariant EdgeTableModel::data(const QModelIndex &index, int role) const {
    if (!index.isValid() || !panel() || index.row() >= int(edgeCount(panel()->shape))) return {};
    const auto length = lengthAt(index);
    const QString text = length ? typedAs(*length, m_document.job().unit) : QString();
    if (role == Qt::EditRole) return text;
    if (role == Qt::DisplayRole) return withFractions(text);
    if (role == Qt::TextAlignmentRole) return int(Qt::AlignRight | Qt::AlignVCenter);
    if (role == Qt::ToolTipRole) return headerData(index.column(), Qt::Horizontal, role);
    if (role == Qt::AccessibleTextRole)
        return tr("%1, %2: %3")
            .arg(edgeAt(index.row()), headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString(),
                 text.isEmpty() ? tr("nothing") : withFractions(text));
    return {};
}

Qt::ItemFlags EdgeTableModel::flags(const QModelIndex &index) const {
    const Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    return index.isValid() && index.row() < m_rows ? flags | Qt::ItemIsEditable : flags;
}

bool EdgeTableModel::setData(const QModelIndex &index, const QVariant &value, int role) {
    if (role != Qt::EditRole || !index.isValid() || !panel()) return false;
    const QString typed = value.toString().trimmed();
    std::optional<Length> length;
    if (!typed.isEmpty() || index.column() == Added) {
        const auto read = typedLength(typed, m_document.job().unit, LengthRange::ZeroOrMore);
        if (!read) {
            Q_EMIT refused(withFractions(fromCore(read.error().text)));
            return false;
        }
        length = *read;
    }
    Job job = m_document.job();
    Panel &own = job.panels[std::size_t(m_panel)];
    own = index.column() == Added   ? withAllowanceAt(std::move(own), index.row(), *length)
          : index.column() == Least ? withLeastAt(std::move(own), index.row(), length)
                                    : withStripAt(std::move(own), index.row(), length);
    const auto done = m_document.changeJob(std::move(job), tr("Change %1").arg(fromCore(own.mark)));
    if (!done) Q_EMIT refused(withFractions(fromCore(done.error().text)));
    return done.has_value();
}

} // namespace boltwright::ui
