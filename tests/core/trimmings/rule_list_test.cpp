#include "core/trimmings/rule_list.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace boltwright;
using namespace boltwright::literals;

namespace {
const TradeRule &ruleCalled(std::string_view key) {
    const auto &list = tradeRuleList();
    return *std::find_if(list.begin(), list.end(), [&](const TradeRule &r) { return r.key == key; });
}
std::string refusalOf(std::string_view text) {
    const auto rules = readTradeRules(text, Unit::Inch);
    return rules ? "was read" : rules.error().text;
}
} // namespace

TEST_CASE("every rule has words and a source, and a key of its own", "[rules of the shop]") {
    std::set<std::string_view> keys;
    for (const TradeRule &rule : tradeRuleList()) {
        CAPTURE(rule.key);
        CHECK_FALSE(rule.words.empty());
        CHECK_FALSE(rule.source.empty());
        CHECK(keys.insert(rule.key).second);
    }
}

TEST_CASE("the list holds every figure of the rules", "[rules of the shop]") {
    // Each figure changed through the list alone: were one missing, two sets of rules would differ in it still.
    TradeRules a = tradeRules(Unit::Inch), b = tradeRules(Unit::Centimetre);
    for (const TradeRule &rule : tradeRuleList()) std::visit([&](auto field) { a.*field = b.*field; }, rule.field);
    CHECK(a == b);
}

TEST_CASE("what is written is read back, in inches and in centimetres", "[rules of the shop]") {
    for (Unit unit : {Unit::Inch, Unit::Centimetre}) {
        CHECK(readTradeRules(writeTradeRules(tradeRules(unit), unit), unit).value() == tradeRules(unit));
        TradeRules rules = tradeRules(unit);
        for (const TradeRule &rule : tradeRuleList()) {
            const std::string figure = rule.key == "least_share" ? "0.25" : "3";
            rules = withRule(rules, rule, figure, unit).value();
        }
        CHECK(readTradeRules(writeTradeRules(rules, unit), unit).value() == rules);
    }
    // Only what is the shop's own stands in its file.
    TradeRules rules = tradeRules(Unit::Inch);
    rules.pull = 2.5_in;
    CHECK(writeTradeRules(rules, Unit::Inch) ==
          "{\n \"shop_rules\": 1,\n \"unit\": \"in\",\n \"pull\": \"2 1/2\"\n}\n");
}

TEST_CASE("figures are taken as a person writes them", "[rules of the shop]") {
    const TradeRules rules = tradeRules(Unit::Inch);
    CHECK(withRule(rules, ruleCalled("pull"), "2-1/4", Unit::Inch)->pull == 2.25_in);
    CHECK(withRule(rules, ruleCalled("pull"), "6,5 cm", Unit::Inch)->pull == 6.5_cm);
    CHECK(withRule(rules, ruleCalled("gathered"), "2,25", Unit::Inch)->gathered == Ratio{9, 4});
    CHECK(withRule(rules, ruleCalled("edging_reserve"), "15", Unit::Inch)->edgingReservePercent == 15);
    CHECK(ruleText(rules, ruleCalled("cord"), Unit::Inch) == "5/32");
    CHECK(ruleText(rules, ruleCalled("gathered"), Unit::Inch) == "2.5");
    CHECK(ruleText(rules, ruleCalled("least_share"), Unit::Inch) == "0.5");
    for (const auto &[key, text] :
         std::initializer_list<std::pair<const char *, const char *>>{{"pull", "-1"},
                                                                      {"pull", "two"},
                                                                      {"cord", "0"},
                                                                      {"gathered", "0.5"},
                                                                      {"gathered", "11"},
                                                                      {"least_share", "1.5"},
                                                                      {"edging_reserve", "2.5"},
                                                                      {"edging_reserve", "101"}}) {
        CAPTURE(key, text);
        CHECK_FALSE(withRule(rules, ruleCalled(key), text, Unit::Inch));
    }
}

TEST_CASE("a shop's file that cannot be honoured says why", "[rules of the shop]") {
    CHECK(refusalOf("[]") == "the shop's rules are not JSON; write an object in braces");
    CHECK(refusalOf("{\"shop_rules\": 2, \"unit\": \"in\"}") == "shop_rules: this program reads version 1");
    CHECK(refusalOf("{\"shop_rules\": 1, \"unit\": \"cm\"}") == "unit: these rules are not in in");
    CHECK(refusalOf("{\"shop_rules\": 1, \"unit\": \"in\", \"pul\": \"2\"}") == "pul: there is no such rule");
    CHECK(refusalOf("{\"shop_rules\": 1, \"unit\": \"in\", \"pull\": 2}") == "pull: write the figure in quotes");
    CHECK(refusalOf("{\"shop_rules\": 1, \"unit\": \"in\", \"cord\": \"0\"}") == "cord: it must be more than nothing");
}
