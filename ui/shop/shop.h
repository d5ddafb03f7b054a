#pragma once

#include "core/base/result.h"
#include "core/forms/piece_form.h"
#include "core/trimmings/trade_rules.h"

#include <QString>
#include <QStringList>

namespace boltwright::ui {

/// What a shop has made its own: its rules for what is added, and piece forms. Plain files in one folder, so that they
/// can be copied to another machine: shop-rules-in.json, shop-rules-cm.json, and forms/*.json.
class Shop {
public:
    explicit Shop(const QString &folder);

    /// The shop's rules where it has any that can be read, else the program's. Millimetres share those of centimetres.
    TradeRules rules(Unit unit) const;
    Result<void> keepRules(const TradeRules &rules, Unit unit);
    QString rulesFile(Unit unit) const;

    /// The forms that come with the program, then the shop's own by name.
    std::vector<PieceForm> forms() const;
    bool isOwn(const std::string &formId) const;
    /// Kept under an id of its own made from its name; a form of that name is replaced.
    Result<std::string> keepForm(PieceForm form, Unit unit);
    void dropForm(const std::string &formId);
    QString formsFolder() const;

    /// Files that cannot be read, each in a sentence that says why.
    QStringList complaints() const;

private:
    QString fileOfForm(const std::string &formId) const;
    QString m_folder;
};

} // namespace boltwright::ui
