#include "core/planner/pair_lots.h"

#include <algorithm>
#include <map>
#include <set>

namespace boltwright::planner {
namespace {

constexpr std::size_t mostChoices = 12; ///< each gets its share of the time, so more would starve them all

/// A mirrored pair: copies 1 and 2, 3 and 4, and so on.
using PairKey = std::pair<std::string, int>;

std::optional<PairKey> pairOf(const Job &job, const Cut &cut) {
    const Panel *panel = job.panel(cut.panel);
    if (!panel || !panel->mirror || panel->count < 2) return {};
    const int pair = (cut.copy - 1) / 2;
    if (pair * 2 + 2 > panel->count) return {}; // an odd one out
    return PairKey{cut.panel, pair};
}

int lotOf(const Instance &instance, const Option &option) { return instance.sheets[std::size_t(option.sheet)].lot; }

/// The lots from which all of a pair can be cut; what lies already has chosen.
std::map<PairKey, std::set<int>> lotsOfPairs(const Job &job, const ClothInstance &cloth) {
    std::map<PairKey, std::set<int>> lots;
    const auto keep = [&](const PairKey &pair, const std::set<int> &some) {
        const auto [it, first] = lots.try_emplace(pair, some);
        if (!first) std::erase_if(it->second, [&](int lot) { return !some.contains(lot); });
    };
    for (std::size_t i = 0; i < cloth.drafts.size(); ++i)
        if (const auto pair = pairOf(job, cloth.drafts[i])) {
            std::set<int> some;
            for (const Option &option : cloth.instance.items[i].options) some.insert(lotOf(cloth.instance, option));
            keep(*pair, some);
        }
    for (std::size_t i = 0; i < cloth.staying.size() && i < cloth.instance.fixed.size(); ++i)
        if (const auto pair = pairOf(job, cloth.staying[i]); pair && lots.contains(*pair))
            keep(*pair, {cloth.instance.sheets[std::size_t(cloth.instance.fixed[i].sheet)].lot});
    return lots;
}

ClothInstance withLots(const Job &job, ClothInstance cloth, const std::map<PairKey, int> &chosen, int lots) {
    for (std::size_t i = 0; i < cloth.drafts.size(); ++i) {
        Item &item = cloth.instance.items[i];
        const auto pair = pairOf(job, cloth.drafts[i]);
        // Items of one kind have the same options; those tied to a lot are a kind of their own.
        item.kind = item.kind * (lots + 1) + (pair ? chosen.at(*pair) + 1 : 0);
        if (!pair) continue;
        std::vector<Option> options;
        std::vector<std::optional<std::string>> ways;
        for (std::size_t o = 0; o < item.options.size(); ++o)
            if (lotOf(cloth.instance, item.options[o]) == chosen.at(*pair)) {
                options.push_back(item.options[o]);
                ways.push_back(cloth.ways[i][o]);
            }
        item.options = std::move(options);
        cloth.ways[i] = std::move(ways);
    }
    return cloth;
}

} // namespace

PairLots pairLots(const Job &job, const ClothInstance &cloth) {
    std::set<int> lots;
    for (const Sheet &sheet : cloth.instance.sheets) lots.insert(sheet.lot);
    const auto pairs = lotsOfPairs(job, cloth);
    if (lots.size() < 2 || pairs.empty()) return {{cloth}, true};
    std::vector<std::map<PairKey, int>> choices{{}};
    PairLots all;
    for (const auto &[pair, some] : pairs) {
        std::vector<std::map<PairKey, int>> longer;
        for (const auto &choice : choices)
            for (int lot : some) {
                longer.push_back(choice);
                longer.back()[pair] = lot;
            }
        all.all &= longer.size() <= mostChoices;
        if (longer.size() > mostChoices) longer.resize(mostChoices);
        choices = std::move(longer);
    }
    for (const auto &choice : choices) all.choices.push_back(withLots(job, cloth, choice, *lots.rbegin() + 1));
    return all;
}

} // namespace boltwright::planner
