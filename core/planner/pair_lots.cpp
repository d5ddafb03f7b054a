#include "core/planner/pair_lots.h"

#include "core/geometry/polygon.h"

#include <algorithm>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <utility>

namespace boltwright::planner {
namespace {

constexpr std::size_t mostChoices = 24;   ///< each gets its share of the time, so more would starve them all
constexpr std::size_t mostLookedAt = 512; ///< while choices are made pair by pair

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

/// One choice of lots, pair by pair, and how full it makes them.
struct Choice {
    std::map<PairKey, int> lots;
    std::map<int, Area> taken;
    double fullest = 0; ///< share of the cloth of the fullest lot that its pairs take
};

/// What choices are judged by before anything is laid.
class LotRoom {
public:
    LotRoom(const Job &job, const ClothInstance &cloth) {
        for (const Sheet &sheet : cloth.instance.sheets) m_room[sheet.lot] += (twiceArea(sheet.room) + 1) / 2;
        for (std::size_t i = 0; i < cloth.drafts.size(); ++i)
            if (const auto pair = pairOf(job, cloth.drafts[i])) {
                std::map<int, Area> least;
                for (const Option &option : cloth.instance.items[i].options) {
                    const Area area = cloth.instance.outlines[std::size_t(option.outline)].area;
                    const auto [it, first] = least.try_emplace(lotOf(cloth.instance, option), area);
                    it->second = std::min(it->second, area);
                }
                for (const auto &[lot, area] : least) m_needs[*pair][lot] += area;
            }
        // Pairs of one part are the same to the cloth, unless the pattern runs on to one of them or it lies already.
        for (const Panel &panel : job.panels) {
            const bool flows = std::any_of(job.flows.begin(), job.flows.end(), [&](const Flow &f) {
                return f.from.panel == panel.id || f.to.panel == panel.id;
            });
            const bool stays = std::any_of(cloth.staying.begin(), cloth.staying.end(),
                                           [&](const Cut &c) { return c.panel == panel.id; });
            if (!flows && !stays) m_free.insert(panel.id);
        }
    }

    /// The choice with one pair more; nothing where the lot has not so much cloth, or where it is another choice with
    /// the names of two equal pairs exchanged.
    std::optional<Choice> with(Choice choice, const PairKey &pair, int lot) const {
        if (pair.second > 0 && m_free.contains(pair.first))
            if (const auto before = choice.lots.find({pair.first, pair.second - 1});
                before != choice.lots.end() && before->second > lot)
                return std::nullopt;
        choice.lots[pair] = lot;
        const auto needs = m_needs.find(pair);
        if (needs != m_needs.end())
            if (const auto area = needs->second.find(lot); area != needs->second.end())
                choice.taken[lot] += area->second;
        const Area room = m_room.at(lot), taken = choice.taken[lot];
        if (taken > room) return std::nullopt;
        choice.fullest = std::max(choice.fullest, double(taken) / double(std::max<Area>(1, room)));
        return choice;
    }

private:
    std::map<int, Area> m_room;
    std::map<PairKey, std::map<int, Area>> m_needs;
    std::set<std::string> m_free;
};

} // namespace

PairLots pairLots(const Job &job, const ClothInstance &cloth) {
    std::set<int> lots;
    for (const Sheet &sheet : cloth.instance.sheets) lots.insert(sheet.lot);
    const auto pairs = lotsOfPairs(job, cloth);
    if (lots.size() < 2 || pairs.empty()) return {{cloth}, true};
    const LotRoom room(job, cloth);
    const auto emptierFirst = [](const Choice &a, const Choice &b) { return a.fullest < b.fullest; };
    std::vector<Choice> choices{{}};
    PairLots all;
    for (const auto &[pair, some] : pairs) {
        std::vector<Choice> longer;
        for (const Choice &choice : choices)
            for (int lot : some)
                if (auto more = room.with(choice, pair, lot)) longer.push_back(std::move(*more));
        std::stable_sort(longer.begin(), longer.end(), emptierFirst);
        all.all &= longer.size() <= mostLookedAt;
        if (longer.size() > mostLookedAt) longer.resize(mostLookedAt);
        choices = std::move(longer);
    }
    all.all &= choices.size() <= mostChoices;
    if (choices.size() > mostChoices) choices.resize(mostChoices);
    for (const Choice &choice : choices) all.choices.push_back(withLots(job, cloth, choice.lots, *lots.rbegin() + 1));
    return all;
}

} // namespace boltwright::planner
