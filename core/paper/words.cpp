#include "core/paper/words.h"

#include "core/base/language.h"
#include "core/figures/figures.h"
#include "core/measure/length_text.h"
#include "core/panel/edges.h"
#include "core/rules/joins.h"

#include <algorithm>

namespace boltwright {
namespace {

std::string said(Length length, Unit unit) { return numeral(spoken(length, unit)); }

} // namespace

std::string spokenSize(Length across, Length up, Unit unit) { return said(across, unit) + " × " + said(up, unit); }

std::string turnWords(Turn turn) {
    switch (turn) {
    case Turn::Deg0:
        return phrase("top up the roll");
    case Turn::Deg90:
        return phrase("top to the left selvage");
    case Turn::Deg180:
        return phrase("top down the roll");
    case Turn::Deg270:
        return phrase("top to the right selvage");
    case Turn::Deg45:
        return phrase("bias: top up the roll, leaning left");
    case Turn::Deg315:
        return phrase("bias: top up the roll, leaning right");
    case Turn::Deg135:
        return phrase("bias: top down the roll, leaning left");
    case Turn::Deg225:
        return phrase("bias: top down the roll, leaning right");
    }
    return {};
}

std::string seatWords(const MotifSeat &seat) {
    const auto counted = [](int number) {
        return number >= 1 ? std::to_string(number) : phrase("%1 before the first", {std::to_string(1 - number)});
    };
    if (seat.column && seat.row) return phrase("motif %1 across, %2 up", {counted(*seat.column), counted(*seat.row)});
    const int number = seat.column ? *seat.column : seat.row.value_or(1);
    if (number >= 1)
        return seat.column ? phrase("stripe %1 from the left selvage", {std::to_string(number)})
                           : phrase("stripe %1 from the cut end", {std::to_string(number)});
    return seat.column ? phrase("the stripe %1 from the left selvage", {counted(number)})
                       : phrase("the stripe %1 from the cut end", {counted(number)});
}

std::string countedWords(const ChalkSheet &sheet, Unit unit) {
    const auto along = [&](Length l) { return localised(spokenWithUnit(l, unit)); };
    if (sheet.firstColumn && sheet.firstRow)
        return phrase(
            "Motifs are counted across from the left selvage, where the middle of the first whole one lies %1 "
            "from the edge; and up each column from the cut end, in the first column from %2 on.",
            {along(*sheet.firstColumn), along(*sheet.firstRow)});
    if (sheet.firstColumn)
        return phrase(
            "Stripes are counted from the left selvage; the middle of the first whole one lies %1 from the edge.",
            {along(*sheet.firstColumn)});
    if (sheet.firstRow)
        return phrase("Stripes are counted from the cut end; the middle of the first whole one lies %1 from it.",
                      {along(*sheet.firstRow)});
    return {};
}

std::string allowanceWords(const Panel &panel, const std::vector<Length> &allowances, Unit unit) {
    // Edges with the same allowance are named together; the one that most edges have needs no names.
    std::vector<std::pair<Length, std::vector<int>>> groups;
    for (std::size_t i = 0; i < allowances.size(); ++i) {
        const auto same =
            std::find_if(groups.begin(), groups.end(), [&](const auto &g) { return g.first == allowances[i]; });
        if (same != groups.end())
            same->second.push_back(int(i));
        else
            groups.push_back({allowances[i], {int(i)}});
    }
    std::stable_sort(groups.begin(), groups.end(),
                     [](const auto &a, const auto &b) { return a.second.size() > b.second.size(); });
    const bool numbered = std::holds_alternative<PolygonShape>(panel.shape);
    std::string out;
    for (std::size_t g = 0; g < groups.size(); ++g) {
        const auto &[length, edges] = groups[g];
        if (g > 0) out += ", ";
        if (g == 0 && (groups.size() == 1 || edges.size() > 1)) {
            out += groups.size() == 1
                       ? (length == Length{} ? phrase("none") : phrase("%1 all round", {said(length, unit)}))
                       : said(length, unit);
            continue;
        }
        std::string names;
        for (int edge : edges)
            names += (names.empty() ? "" : "/") +
                     (numbered ? std::to_string(edge + 1) : phrase(edgeName(panel.shape, edge).c_str()));
        out += numbered ? phrase("edge %1 %2", {names, said(length, unit)}) : names + " " + said(length, unit);
    }
    return out;
}

std::string concessionWords(const Job &job, const Layout &layout, const Concession &c) {
    const Panel *panel = job.panel(c.panel);
    const bool numbered = panel && std::holds_alternative<PolygonShape>(panel->shape);
    const std::string edge = !c.edge || !panel ? std::string()
                             : numbered        ? std::to_string(*c.edge + 1)
                                               : phrase(edgeName(panel->shape, *c.edge).c_str());
    const std::string where = !c.edge    ? phrase("every allowance")
                              : numbered ? phrase("allowance at edge %1", {edge})
                                         : phrase("%1 allowance", {edge});
    auto told = [&](const std::optional<Length> &l) { return l ? said(*l, job.unit) : std::string("?"); };
    switch (c.kind) {
    case Concession::Kind::Trim:
        return phrase("%1 %2 instead of %3", {where, told(c.to), told(c.from)});
    case Concession::Kind::Stretcher:
        return phrase("strip of other cloth sewn on at %1: %2 of face cloth left of %3",
                      {c.edge && panel ? theEdgeInWords(panel->shape, *c.edge) : edge, told(c.to), told(c.from)});
    case Concession::Kind::Seam:
        if (const auto lengths = pieceLengths(layout, c.panel, c.copy); panel && joinedAtBack(*panel, lengths)) {
            std::string each;
            for (const Length length : lengths)
                each = each.empty() ? localised(spokenWithUnit(length, job.unit))
                                    : phrase("%1 and %2", {each, localised(spokenWithUnit(length, job.unit))});
            return phrase("joined at the back, out of sight: %1", {each});
        }
        for (const Cut &cut : layout.cuts)
            if (cut.panel == c.panel && cut.copy == c.copy)
                return phrase("joined from %1 pieces", {std::to_string(cut.of)});
        return phrase("joined from pieces");
    case Concession::Kind::Turn:
        return phrase("turned from its run");
    case Concession::Kind::Uncentre:
        return phrase("off centre");
    case Concession::Kind::OtherCloth:
        for (const Cut &cut : layout.cuts)
            if (cut.panel == c.panel && cut.copy == c.copy && cut.cloth)
                return phrase("cut from %1", {sheetName(job, *cut.cloth, {})});
        return phrase("cut from other cloth");
    }
    return {};
}

std::string onHandWords(const Cloth &cloth, Length used, Unit unit, bool everythingLies) {
    const auto left = leftOver(cloth, used);
    if (!left) return phrase("buy %1", {localised(spokenPurchase(used, unit))});
    const auto along = [&](Length l) { return localised(spokenAlongRoll(l, unit)); };
    if (*left < Length{})
        return phrase("%1 short of the %2 there", {along(Length{} - *left), along(*cloth.bolt->length)});
    if (!everythingLies) return phrase("%1 left over", {along(*left)});
    return *left == Length{} ? phrase("just enough") : phrase("enough, %1 left over", {along(*left)});
}

std::string sheetName(const Job &job, const std::string &cloth, const std::optional<std::string> &on) {
    const Cloth *found = job.cloth(cloth);
    const std::string name = found && !found->name.empty() ? found->name : cloth;
    return on ? phrase("%1, remnant %2", {name, *on}) : name;
}

std::string copyWords(const ChalkRow &row) {
    std::string out =
        row.copies > 1 ? phrase("%1 of %2", {std::to_string(row.copy), std::to_string(row.copies)}) : std::string();
    if (row.of > 1)
        out +=
            (out.empty() ? "" : ", ") + phrase("piece %1 of %2", {std::to_string(row.piece), std::to_string(row.of)});
    return out;
}

Job namedForPaper(Job job, const std::string &fileStem) {
    if (job.card.title.empty()) job.card.title = !fileStem.empty() ? fileStem : job.card.piece;
    return job;
}

} // namespace boltwright
