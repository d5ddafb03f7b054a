#include "core/trimmings/rule_list.h"

#include "core/base/language.h"
#include "core/measure/length_text.h"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <numeric>

namespace boltwright {

const std::vector<TradeRule> &tradeRuleList() {
    using R = TradeRules;
    static const std::vector<TradeRule> list = {
        {"pull", marked("Edges"), marked("Pulled over the frame and tacked"),
         marked("a chair worked out in print: 4 in on each dimension, 2 a side"), &R::pull},
        {"seat_tack", marked("Edges"), marked("Tacked under a small seat"),
         marked("published how-to: 6 in on each dimension of a dining seat"), &R::seatTack},
        {"seam", marked("Edges"), marked("Seam"), marked("1/2 in in all sources consulted"), &R::seam},
        {"welt_seam", marked("Edges"), marked("Seam with a welt in it"), marked("the welt's own flange is as wide"),
         &R::weltSeam},
        {"tuck_in", marked("Edges"), marked("Tucked in between seat, back and arms"), marked("slipcover manuals: 6 in"),
         &R::tuckIn},
        {"least_share", marked("Edges"), marked("What an allowance may shrink to, as a share of it"),
         marked("common practice, no source"), &R::leastShare},
        {"cutting_step", marked("Edges"), marked("Cut sizes go up to the next whole"),
         marked("common practice, no source"), &R::cuttingStep},
        {"nosing", marked("Edges"),
         marked("Face cloth behind the front edge, before the deck; the least piece beside a join"),
         marked("upholsterers' association and workshop notes: 4 in"), &R::nosing},
        {"stretcher", marked("Edges"), marked("What a sewn-on strip spares on a hidden edge"),
         marked("worked example: 8 in"), &R::stretcher},
        {"cushion_oversize", marked("Cushions"), marked("Cover cut larger than the place it lies in"),
         marked("none: plates are finished size and seams"), &R::cushionOversize},
        {"zip_wrap", marked("Cushions"), marked("Zipper longer than the back"),
         marked("a published upholstery book: 8 in, 4 each side"), &R::zipWrap},
        {"zip_turning", marked("Cushions"), marked("Turned under along the zipper"),
         marked("the same: half the boxing and 3/4 in"), &R::zipTurning},
        {"knife_edge", marked("Cushions"), marked("Added to a knife-edge cushion, both ways"),
         marked("published how-to: 1 1/2 in"), &R::knifeEdge},
        {"gathered", marked("Skirts"), marked("Gathered: times the run"), marked("soft-furnishing guides: 2 1/2 times"),
         &R::gathered},
        {"box_pleated", marked("Skirts"), marked("Box pleats that touch: times the run"),
         marked("pleat geometry, in print: 3 times"), &R::boxPleated},
        {"pleat_take", marked("Skirts"), marked("Taken by one inverted or box pleat"),
         marked("a skirted sofa worked out in print: 12 in"), &R::pleatTake},
        {"kick_return", marked("Skirts"), marked("Kick pleat: turned behind at each end"),
         marked("a soft-furnishing book: 11 cm (4 3/8 in)"), &R::kickReturn},
        {"kick_underlay", marked("Skirts"), marked("Kick pleat: width of the underlay"),
         marked("the same: 22 cm (8 5/8 in)"), &R::kickUnderlay},
        {"skirt_hem", marked("Skirts"), marked("Hem of a flat, gathered or box-pleated skirt"),
         marked("a bed skirt worked out in print: 2 1/2 in"), &R::skirtHem},
        {"cord", marked("Welt, gimp and nails"), marked("Cord in the welt"),
         marked("a shop's standard in print: 5/32 in"), &R::cord},
        {"strip_step", marked("Welt, gimp and nails"), marked("Strip widths go up to the next whole"),
         marked("π times the cord and two seams, to the next 1/8 in"), &R::stripStep},
        {"double_welt_strip", marked("Welt, gimp and nails"), marked("Strip for double welt"),
         marked("a tool guide: 2 1/2 in; others cut 3 to 4"), &R::doubleWeltStrip},
        {"shortest_bias", marked("Welt, gimp and nails"), marked("Shortest piece of strip worth joining"),
         marked("an upholsterers' forum: about 15 in"), &R::shortestBias},
        {"edging_reserve", marked("Welt, gimp and nails"), marked("Gimp, cord, double welt: reserve in the hundred"),
         marked("from memory: order 10 in the hundred more"), &R::edgingReservePercent},
        {"nail_head", marked("Welt, gimp and nails"), marked("Head of a decorative nail"),
         marked("Furniture Upholstery for Schools, 1919: 7/16 in"), &R::nailHead},
        {"nail_pitch", marked("Welt, gimp and nails"), marked("Spaced nails, centre to centre"),
         marked("the same: 1 1/2 to 2 1/2 in"), &R::nailPitch},
        {"small_repeat", marked("Estimates"), marked("Repeats up to this cost nothing extra"),
         marked("workroom tables: 3 in"), &R::smallRepeat},
    };
    return list;
}

namespace {

/// "2.5" as exact hundredths in lowest terms.
std::optional<Ratio> ratioIn(std::string_view text) {
    std::int64_t whole = 0, hundredths = 0;
    int decimals = -1;
    if (text.empty() || text.size() > 8) return std::nullopt;
    for (char c : text) {
        if ((c == '.' || c == ',') && decimals < 0) {
            decimals = 0;
        } else if (c >= '0' && c <= '9' && decimals < 2) {
            if (decimals < 0)
                whole = whole * 10 + (c - '0');
            else
                hundredths = hundredths * 10 + (c - '0'), ++decimals;
        } else {
            return std::nullopt;
        }
    }
    if (decimals == 1) hundredths *= 10;
    const std::int64_t all = whole * 100 + hundredths, common = std::gcd(all, std::int64_t(100));
    return Ratio{all / common, 100 / common};
}

bool mustBeMore(const TradeRule &rule) {
    for (std::string_view key : {"cutting_step", "strip_step", "cord", "double_welt_strip", "shortest_bias",
                                 "nail_head", "nail_pitch", "nosing", "seam"})
        if (rule.key == key) return true;
    return false;
}

} // namespace

std::string ruleText(const TradeRules &rules, const TradeRule &rule, Unit unit) {
    if (const auto *length = std::get_if<Length TradeRules::*>(&rule.field)) {
        const std::string text = spoken(rules.**length, unit, 64);
        const auto back = readLength(text, unit);
        return back && *back == rules.**length ? text : writeDecimal(rules.**length, unit);
    }
    if (const auto *whole = std::get_if<int TradeRules::*>(&rule.field)) return fmt::format("{}", rules.**whole);
    const Ratio ratio = rules.*std::get<Ratio TradeRules::*>(rule.field);
    const std::int64_t hundredths = roundedQuotient(ratio.numerator * 100, ratio.denominator);
    std::string text = fmt::format("{}.{:02}", hundredths / 100, hundredths % 100);
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text;
}

Result<TradeRules> withRule(TradeRules rules, const TradeRule &rule, std::string_view text, Unit unit) {
    if (const auto *length = std::get_if<Length TradeRules::*>(&rule.field)) {
        const auto read = readLength(text, unit, Spelling::Hand);
        if (!read) return fault(read.error().text);
        if (*read < Length{}) return fault("it cannot be less than nothing");
        if (*read == Length{} && mustBeMore(rule)) return fault("it must be more than nothing");
        rules.**length = *read;
        return rules;
    }
    const auto ratio = ratioIn(text);
    if (const auto *whole = std::get_if<int TradeRules::*>(&rule.field)) {
        if (!ratio || ratio->denominator != 1 || ratio->numerator > 100)
            return fault("write a whole number from 0 to 100");
        rules.**whole = int(ratio->numerator);
        return rules;
    }
    const bool share = rule.key == "least_share";
    if (!ratio || (share ? ratio->numerator > ratio->denominator
                         : ratio->numerator < ratio->denominator || ratio->numerator > 10 * ratio->denominator))
        return fault(share ? "write a share from 0 to 1, such as 0.5" : "write a fullness from 1 to 10, such as 2.5");
    rules.*std::get<Ratio TradeRules::*>(rule.field) = *ratio;
    return rules;
}

std::string writeTradeRules(const TradeRules &rules, Unit unit) {
    nlohmann::ordered_json out = {{"shop_rules", 1}, {"unit", std::string(nameOf(unit))}};
    const TradeRules usual = tradeRules(unit);
    for (const TradeRule &rule : tradeRuleList())
        if (const std::string text = ruleText(rules, rule, unit); text != ruleText(usual, rule, unit))
            out[std::string(rule.key)] = text;
    return out.dump(1) + "\n";
}

Result<TradeRules> readTradeRules(std::string_view text, Unit unit) {
    const auto json = nlohmann::ordered_json::parse(text, nullptr, false);
    if (!json.is_object()) return fault("the shop's rules are not JSON; write an object in braces");
    if (const auto version = json.find("shop_rules"); version == json.end() || *version != 1)
        return fault("shop_rules: this program reads version 1");
    if (const auto written = json.find("unit"); written == json.end() || *written != std::string(nameOf(unit)))
        return fault(fmt::format("unit: these rules are not in {}", nameOf(unit)));
    TradeRules rules = tradeRules(unit);
    for (const auto &[key, value] : json.items()) {
        if (key == "shop_rules" || key == "unit") continue;
        const auto &list = tradeRuleList();
        const auto rule = std::find_if(list.begin(), list.end(), [&k = key](const TradeRule &r) { return r.key == k; });
        if (rule == list.end()) return fault(key + ": there is no such rule");
        if (!value.is_string()) return fault(key + ": write the figure in quotes");
        auto changed = withRule(rules, *rule, value.get<std::string>(), unit);
        if (!changed) return fault(key + ": " + changed.error().text);
        rules = *changed;
    }
    return rules;
}

} // namespace boltwright
