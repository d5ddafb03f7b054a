#include "ui/shop/rules_page.h"

#include "core/base/language.h"
#include "core/trimmings/rule_list.h"
#include "ui/text/words.h"
#include "ui/widgets/sheet_table.h"

#include <QFont>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QHeaderView>
#include <QPushButton>
#include <QVBoxLayout>

using namespace Qt::StringLiterals;

namespace boltwright::ui {

namespace {

QString plain(std::string_view text) { return fromCore(phrase(text)); }

QString withUnit(const QString &text, const TradeRule &rule, Unit unit) {
    if (std::holds_alternative<Length TradeRules::*>(rule.field))
        return u"%1 %2"_s.arg(withFractions(text), fromCore(std::string(nameOf(unit))));
    if (std::holds_alternative<int TradeRules::*>(rule.field)) return RulesModel::tr("%1 in 100").arg(text);
    return rule.key == "least_share" ? text : RulesModel::tr("%1 times").arg(text);
}

} // namespace

RulesModel::RulesModel(Shop &shop, Unit unit, QObject *parent)
    : QAbstractTableModel(parent), m_shop(shop), m_unit(unit), m_rules(shop.rules(unit)), m_usual(tradeRules(unit)) {}

int RulesModel::rowCount(const QModelIndex &parent) const { return parent.isValid() ? 0 : int(tradeRuleList().size()); }
int RulesModel::columnCount(const QModelIndex &parent) const { return parent.isValid() ? 0 : ColumnCount; }

QVariant RulesModel::headerData(int section, Qt::Orientation orientation, int role) const {
    if (orientation != Qt::Horizontal || role != Qt::DisplayRole) return {};
    return QStringList{QString(), tr("Rule"), tr("Here"), tr("Usual"), tr("Where the usual figure is from")}.value(
        section);
}

QVariant RulesModel::data(const QModelIndex &index, int role) const {
    if (!index.isValid()) return {};
    const auto &list = tradeRuleList();
    const TradeRule &rule = list[std::size_t(index.row())];
    const QString here = fromCore(ruleText(m_rules, rule, m_unit)), usual = fromCore(ruleText(m_usual, rule, m_unit));
    if (role == Qt::EditRole && index.column() == Figure) return here;
    if (role == Qt::DisplayRole) switch (index.column()) {
        case Group:
            return index.row() > 0 && list[std::size_t(index.row()) - 1].group == rule.group ? QString()
                                                                                             : plain(rule.group);
        case Rule:
            return withFractions(plain(rule.words));
        case Figure:
            return withUnit(here, rule, m_unit);
        case Usual:
            return withUnit(usual, rule, m_unit);
        default:
            return withFractions(plain(rule.source));
        }
    if (role == Qt::AccessibleTextRole) // heard with what it is, for a figure alone says nothing
        return index.column() == Group || index.column() == Rule
                   ? plain(index.column() == Group ? rule.group : rule.words)
                   : tr("%1: %2").arg(headerData(index.column(), Qt::Horizontal, Qt::DisplayRole).toString(),
                                      data(index, Qt::DisplayRole).toString());
    if (role == Qt::TextAlignmentRole && (index.column() == Figure || index.column() == Usual))
        return int(Qt::AlignRight | Qt::AlignVCenter);
    if (role == Qt::FontRole && (index.column() == Group || (index.column() == Figure && here != usual))) {
        QFont font = QGuiApplication::font();
        font.setBold(true);
        return font;
    }
    if (role == Qt::ToolTipRole) return withFractions(plain(rule.source));
    return {};
}

Qt::ItemFlags RulesModel::flags(const QModelIndex &index) const {
    const Qt::ItemFlags flags = Qt::ItemIsEnabled | Qt::ItemIsSelectable;
    return index.column() == Figure ? flags | Qt::ItemIsEditable : flags;
}

bool RulesModel::keep(const TradeRules &rules) {
    if (const auto kept = m_shop.keepRules(rules, m_unit); !kept) {
        Q_EMIT refused(fromCore(kept.error().text));
        return false;
    }
    m_rules = rules;
    Q_EMIT dataChanged(index(0, 0), index(rowCount() - 1, ColumnCount - 1));
    return true;
}

bool RulesModel::setData(const QModelIndex &index, const QVariant &value, int role) {
    if (!index.isValid() || index.column() != Figure || role != Qt::EditRole) return false;
    const TradeRule &rule = tradeRuleList()[std::size_t(index.row())];
    const QString text = value.toString().trimmed();
    // Nothing typed brings back what is usual.
    const std::string typed = text.isEmpty() ? ruleText(m_usual, rule, m_unit) : toCore(text);
    const auto changed = withRule(m_rules, rule, typed, m_unit);
    if (!changed) {
        Q_EMIT refused(
            tr("%1: %2").arg(withFractions(plain(rule.words)), withFractions(fromCore(changed.error().text))));
        return false;
    }
    return keep(*changed);
}

void RulesModel::takeUsual() { keep(m_usual); }

RulesPage::RulesPage(Shop &shop, Unit unit, QWidget *parent)
    : QWidget(parent), m_model(new RulesModel(shop, unit, this)), m_table(new SheetTable(this)),
      m_refusal(new QLabel(this)) {
    m_refusal->setObjectName(u"refusal"_s);
    m_refusal->setWordWrap(true);
    m_refusal->hide();
    m_table->setModel(m_model);
    m_table->setAccessibleName(tr("The shop's rules"));
    m_table->setToolTip(
        tr("What is added where, and from where the usual figure is. Type over a figure to make it yours."));
    m_table->setWordWrap(true);
    m_table->resizeColumnsToContents();
    // Half of a full HD screen at most, however large the text; what is longer takes a second line.
    const int widest = std::min(60 * m_table->fontMetrics().averageCharWidth(), 700);
    m_table->setColumnWidth(RulesModel::Rule, std::min(widest, m_table->columnWidth(RulesModel::Rule)));
    m_table->verticalHeader()->setSectionResizeMode(QHeaderView::ResizeToContents);
    for (int c : {int(RulesModel::Figure), int(RulesModel::Usual)})
        m_table->setColumnWidth(c, m_table->columnWidth(c) + 16);
    m_table->horizontalHeader()->setStretchLastSection(true);
    m_table->setAutoScroll(false); // before its size is known it would be pushed aside to show the first figure
    m_table->setCurrentIndex(m_model->index(0, RulesModel::Figure));
    m_table->setAutoScroll(true);
    auto *words = new QLabel(tr("What the forms add, in %1. They are kept for this shop in %2; forms opened from now "
                                "on use them, panels that are "
                                "in a job stay as they are. Clear a figure to bring back the usual one.")
                                 .arg(unit == Unit::Inch ? tr("inches") : tr("centimetres"), shop.rulesFile(unit)),
                             this);
    words->setObjectName(u"quiet"_s);
    words->setWordWrap(true);
    words->setTextInteractionFlags(Qt::TextSelectableByMouse);
    auto *tufts =
        new QLabel(tr("Tufting and channels need no rule: what they take beyond the flat measure follows from spacing "
                      "and depth, which a form asks for where a part is not smooth."),
                   this);
    tufts->setObjectName(u"quiet"_s);
    tufts->setWordWrap(true);
    auto *usual = new QPushButton(tr("All as &usual"), this);
    usual->setToolTip(tr("Every figure goes back to what is usual in the trade; your own are forgotten."));
    auto *head = new QHBoxLayout;
    head->addWidget(words, 1);
    head->addWidget(usual, 0, Qt::AlignTop);
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->addLayout(head);
    column->addWidget(m_refusal);
    column->addWidget(m_table, 1);
    column->addWidget(tufts);
    setFocusProxy(m_table);
    const auto refuse = [this](const QString &sentence) {
        m_refusal->setText(sentence);
        m_refusal->setVisible(!sentence.isEmpty());
    };
    connect(m_model, &RulesModel::refused, this, [this, refuse](const QString &sentence) {
        m_table->stay();
        refuse(sentence);
    });
    connect(m_model, &QAbstractItemModel::dataChanged, this, [refuse] { refuse({}); });
    connect(usual, &QPushButton::clicked, m_model, &RulesModel::takeUsual);
}

} // namespace boltwright::ui
