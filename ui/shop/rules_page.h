#pragma once

#ifndef Q_MOC_RUN // which cannot read the standard headers behind these in C++20, and need not
#include "ui/shop/shop.h"
#endif

#include <QAbstractTableModel>
#include <QLabel>
#include <QWidget>

namespace boltwright::ui {

class SheetTable;

/// The shop's rules for what is added, one a row, each with where its default is from. What is typed is kept at once.
class RulesModel : public QAbstractTableModel {
    Q_OBJECT
public:
    enum Column { Group, Rule, Figure, Usual, Source, ColumnCount };
    RulesModel(Shop &shop, Unit unit, QObject *parent = nullptr);

    const TradeRules &rules() const { return m_rules; }
    void takeUsual(); ///< all of them

    int rowCount(const QModelIndex &parent = {}) const override;
    int columnCount(const QModelIndex &parent = {}) const override;
    QVariant data(const QModelIndex &index, int role) const override;
    bool setData(const QModelIndex &index, const QVariant &value, int role = Qt::EditRole) override;
    QVariant headerData(int section, Qt::Orientation orientation, int role) const override;
    Qt::ItemFlags flags(const QModelIndex &index) const override;

Q_SIGNALS:
    void refused(const QString &sentence);

private:
    bool keep(const TradeRules &rules);
    Shop &m_shop;
    Unit m_unit;
    TradeRules m_rules, m_usual;
};

class RulesPage : public QWidget {
    Q_OBJECT
public:
    RulesPage(Shop &shop, Unit unit, QWidget *parent = nullptr);
    SheetTable *table() { return m_table; }
    RulesModel *model() { return m_model; }
    QString refusal() const { return m_refusal->text(); }

private:
    RulesModel *m_model;
    SheetTable *m_table;
    QLabel *m_refusal;
};

} // namespace boltwright::ui
