#pragma once

#include "core/job/job.h"
#include "core/trimmings/trade_rules.h"

#include <QAbstractTableModel>
#include <QFontMetrics>

#include <vector>

namespace boltwright::ui {

/// What each part may give up when the cloth is short: a row a panel and a first one for all of them, a column a kind,
/// a tick for leave. The ticks are a draft until `withTicks` makes a job of them, so that all of them are one step of
/// the history. Where one tick would not say enough there is none.
class LeaveTableModel : public QAbstractTableModel {
    Q_OBJECT
public:
    LeaveTableModel(Job job, const TradeRules &rules, QObject *parent = nullptr);
    /// The job with leave given and taken back as ticked; what was not touched stays as finely as it was set.
    Job withTicks() const;
    bool isChanged() const;
    /// What the tick means for that part, in a sentence: "Back, trim: top edge from 2 in to 1 in".
    QString meaningOf(const QModelIndex &index) const;
    /// By their marks alone, where there is little room.
    void setNamesShort(bool areShort);
    int widestName(const QFontMetrics &metrics) const; ///< in full
    static Concession::Kind kindOf(int column);
    static QString nameOfKind(Concession::Kind kind);

    int rowCount(const QModelIndex &parent = {}) const override;
    int columnCount(const QModelIndex &parent = {}) const override;
    QVariant data(const QModelIndex &index, int role) const override;
    bool setData(const QModelIndex &index, const QVariant &value, int role = Qt::EditRole) override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex &index) const override;

private:
    struct Tick {
        bool can = false, had = false, on = false;
    };
    const Tick &tick(int panel, int column) const;
    QString nameOfPart(int row) const;

    Job m_job;
    TradeRules m_rules;
    bool m_short = false;
    std::vector<Tick> m_ticks; ///< panel by panel
};

} // namespace boltwright::ui
