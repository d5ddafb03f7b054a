#pragma once

#include "core/base/result.h"
#include "core/trimmings/trade_rules.h"

#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace boltwright {

/// One rule of a shop as a page shows it: what it is, and where its default is from.
struct TradeRule {
    std::string_view key;    ///< in the shop's file
    std::string_view group;  ///< "Edges", "Cushions", ...
    std::string_view words;  ///< "Pulled over the frame and tacked, each side"
    std::string_view source; ///< of the default
    std::variant<Length TradeRules::*, Ratio TradeRules::*, int TradeRules::*> field;
};

/// All rules, in the order of the page.
const std::vector<TradeRule> &tradeRuleList();

/// The figure as a person writes it: a length in `unit`, a fullness "2.5", a share "10".
std::string ruleText(const TradeRules &rules, const TradeRule &rule, Unit unit);
/// The rules with that figure changed. Errors say what would be right: a length of zero or more (a step, a cord, a
/// strip, a pitch or a head: more than zero), a fullness from 1 to 10, a share from 0 to 100.
Result<TradeRules> withRule(TradeRules rules, const TradeRule &rule, std::string_view text, Unit unit);

/// A shop's file: an object with `unit`, and each rule that is not the program's default for that unit.
std::string writeTradeRules(const TradeRules &rules, Unit unit);
/// Reads it back. Keys that are not known are errors: a misspelt rule would be cut wrong.
Result<TradeRules> readTradeRules(std::string_view text, Unit unit);

} // namespace boltwright
