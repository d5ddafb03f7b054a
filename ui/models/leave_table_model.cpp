#include "ui/models/leave_table_model.h"

#include "core/concede/concede.h"
#include "core/panel/edges.h"
#include "core/trimmings/leave.h"
#include "ui/text/words.h"

#include <QStringList>

#include <algorithm>
#include <utility>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

using ConcededKind = Concession::Kind;

LeaveTableModel::LeaveTableModel(Job job, const TradeRules &rules, QObject *parent)
    : QAbstractTableModel(parent), m_job(std::move(job)), m_rules(rules) {
    for (const Panel &panel : m_job.panels)
        for (int column = 0; column < columnCount(); ++column) {
            const ConcededKind kind = kindOf(column);
            const bool has = hasLeave(panel, kind);
            m_ticks.push_back({mayBeGivenLeave(m_job, panel, kind, m_rules), has, has});
        }
}

Concession::Kind LeaveTableModel::kindOf(int column) { return usualOrder()[std::size_t(column)]; }

QString LeaveTableModel::nameOfKind(ConcededKind kind) {
    switch (kind) {
    case ConcededKind::Trim:
        return tr("trim");
    case ConcededKind::Stretcher:
        return tr("strip");
    case ConcededKind::OtherCloth:
        return tr("other\ncloth");
    case ConcededKind::Uncentre:
        return tr("off\ncentre");
    case ConcededKind::Turn:
        return tr("turn");
    case ConcededKind::Seam:
        return tr("join");
    }
    return {};
}

const LeaveTableModel::Tick &LeaveTableModel::tick(int panel, int column) const {
    return m_ticks[std::size_t(panel * columnCount() + column)];
}

Job LeaveTableModel::withTicks() const {
    Job job = m_job;
    for (int p = 0; p < int(job.panels.size()); ++p)
        for (int column = 0; column < columnCount(); ++column) {
            const Tick &t = tick(p, column);
            if (t.on == t.had) continue;
            Panel &panel = job.panels[std::size_t(p)];
            panel = t.on ? withLeave(job, panel, kindOf(column), m_rules) : withoutLeave(panel, kindOf(column));
        }
    return job;
}

bool LeaveTableModel::isChanged() const {
    return std::any_of(m_ticks.begin(), m_ticks.end(), [](const Tick &t) { return t.on != t.had; });
}

int LeaveTableModel::rowCount(const QModelIndex &parent) const {
    return parent.isValid() ? 0 : int(m_job.panels.size()) + 1;
}
int LeaveTableModel::columnCount(const QModelIndex &parent) const {
    return parent.isValid() ? 0 : int(usualOrder().size());
}

QString LeaveTableModel::nameOfPart(int row) const {
    if (row == 0) return tr("Every part");
    const Panel &panel = m_job.panels[std::size_t(row - 1)];
    return fromCore(panel.name.empty() ? panel.mark.empty() ? panel.id : panel.mark : panel.name);
}

void LeaveTableModel::setNamesShort(bool areShort) {
    if (areShort == m_short) return;
    m_short = areShort;
    Q_EMIT headerDataChanged(Qt::Vertical, 0, rowCount() - 1);
}

int LeaveTableModel::widestName(const QFontMetrics &metrics) const {
    int widest = 0;
    for (int row = 0; row < rowCount(); ++row) widest = std::max(widest, metrics.horizontalAdvance(nameOfPart(row)));
    return widest;
}

QVariant LeaveTableModel::data(const QModelIndex &index, int role) const {
    if (!index.isValid()) return {};
    const bool can = flags(index) & Qt::ItemIsUserCheckable;
    int on = 0, all = 0;
    for (int p = 0; p < int(m_job.panels.size()); ++p) {
        if (index.row() > 0 && p != index.row() - 1) continue;
        if (!tick(p, index.column()).can) continue;
        ++all;
        on += tick(p, index.column()).on;
    }
    if (role == Qt::CheckStateRole && can)
        return on == 0 ? Qt::Unchecked : on == all ? Qt::Checked : Qt::PartiallyChecked;
    if (role == Qt::DisplayRole && !can) return u"–"_s;
    if (role == Qt::TextAlignmentRole) return int(Qt::AlignCenter);
    if (role == Qt::ToolTipRole) return meaningOf(index);
    if (role == Qt::AccessibleTextRole)
        return tr("%1, %2: %3")
            .arg(nameOfPart(index.row()), nameOfKind(kindOf(index.column())).simplified(),
                 !can        ? tr("not to be had here")
                 : on == 0   ? tr("no leave")
                 : on == all ? tr("has leave")
                             : tr("some have leave"));
    return {};
}

bool LeaveTableModel::setData(const QModelIndex &index, const QVariant &value, int role) {
    if (role != Qt::CheckStateRole || !(flags(index) & Qt::ItemIsUserCheckable)) return false;
    const bool on = value.toInt() != Qt::Unchecked;
    for (int p = 0; p < int(m_job.panels.size()); ++p) {
        if (index.row() > 0 && p != index.row() - 1) continue;
        Tick &t = m_ticks[std::size_t(p * columnCount() + index.column())];
        if (t.can) t.on = on;
    }
    Q_EMIT dataChanged(this->index(0, index.column()), this->index(rowCount() - 1, index.column()));
    return true;
}

QVariant LeaveTableModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation == Qt::Horizontal) return role == Qt::DisplayRole ? nameOfKind(kindOf(section)) : QVariant();
    if (role == Qt::ToolTipRole || (role == Qt::DisplayRole && !m_short)) return nameOfPart(section);
    if (role != Qt::DisplayRole) return {};
    if (section == 0) return tr("all");
    const Panel &panel = m_job.panels[std::size_t(section - 1)];
    return panel.mark.empty() ? nameOfPart(section) : fromCore(panel.mark);
}

Qt::ItemFlags LeaveTableModel::flags(const QModelIndex &index) const {
    if (!index.isValid()) return Qt::NoItemFlags;
    bool can = false;
    for (int p = 0; p < int(m_job.panels.size()); ++p)
        can = can || ((index.row() == 0 || p == index.row() - 1) && tick(p, index.column()).can);
    const Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    return can ? flags | Qt::ItemIsUserCheckable : flags;
}

QString LeaveTableModel::meaningOf(const QModelIndex &index) const {
    if (!index.isValid()) return {};
    const ConcededKind kind = kindOf(index.column());
    if (index.row() == 0) {
        switch (kind) {
        case ConcededKind::Trim:
            return tr("What is added at an edge may be cut down to the shop's share of it; seams stay whole.");
        case ConcededKind::Stretcher:
            return tr("Where an edge is tucked in, a strip of other cloth may be sewn on, out of sight.");
        case ConcededKind::OtherCloth:
            return tr("The part may be cut from another cloth.");
        case ConcededKind::Uncentre:
            return tr("The motif may sit beside the middle, and the pattern need not run on.");
        case ConcededKind::Turn:
            return tr("The part may lie the other way, against pile or print.");
        case ConcededKind::Seam:
            return tr("The part may be sewn together of more pieces.");
        }
    }
    const Panel &before = m_job.panels[std::size_t(index.row() - 1)];
    const QString who = nameOfPart(index.row());
    if (!tick(index.row() - 1, index.column()).can) {
        switch (kind) {
        case ConcededKind::Trim:
            return tr("%1: nothing is added at its edges but seams, and those stay whole.").arg(who);
        case ConcededKind::Stretcher:
            return tr("%1: no edge is tucked in. Where one is out of sight all the same, say so under Panels.")
                .arg(who);
        case ConcededKind::Uncentre:
            return tr("%1: it is on no motif, and no pattern runs on.").arg(who);
        case ConcededKind::Seam:
            return tr("%1: only a rectangle is made of pieces.").arg(who);
        default:
            return {};
        }
    }
    const Panel panel = withLeave(m_job, before, kind, m_rules);
    const auto said = [&](Length l) { return shownLengthWithUnit(l, m_job.unit); };
    switch (kind) {
    case ConcededKind::Trim: {
        QStringList edges;
        for (int edge = 0; edge < int(edgeCount(panel.shape)); ++edge)
            if (panel.leastAllowance(edge) < panel.allowance(edge))
                edges << tr("%1 from %2 to %3")
                             .arg(fromCore(edgeInWords(panel.shape, edge)), said(panel.allowance(edge)),
                                  said(panel.leastAllowance(edge)));
        return tr("%1 may be trimmed: %2.").arg(who, edges.join(u", "_s));
    }
    case ConcededKind::Stretcher: {
        QStringList edges;
        for (const auto &[edge, left] : panel.may.stretcher)
            edges << tr("at %1, %2 of face cloth left").arg(fromCore(theEdgeInWords(panel.shape, edge)), said(left));
        return tr("%1 may have a strip of other cloth sewn on: %2.").arg(who, edges.join(u", "_s));
    }
    case ConcededKind::OtherCloth: {
        const Cloth *cloth = m_job.cloth(panel.may.otherCloth.id);
        return cloth ? tr("%1 may be cut from %2.").arg(who, fromCore(cloth->name.empty() ? cloth->id : cloth->name))
                     : tr("%1 may be cut from a cloth that is none of this job's; it is then left out here.").arg(who);
    }
    case ConcededKind::Uncentre:
        return tr("%1 may lie off centre.").arg(who);
    case ConcededKind::Turn:
        return tr("%1 may lie the other way, against pile or print.").arg(who);
    case ConcededKind::Seam:
        return tr("%1 may be made of %2 pieces, none shorter than %3, with seams of %4.")
            .arg(who)
            .arg(panel.pieces.most)
            .arg(said(panel.pieces.shortest), said(panel.pieces.seam));
    }
    return {};
}

} // namespace boltwright::ui
