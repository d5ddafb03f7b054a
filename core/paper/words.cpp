#include "core/paper/words.h"

#include "core/measure/length_text.h"

#include <fmt/format.h>

#include <algorithm>

namespace boltwright {

std::string spokenSize(Length across, Length up, Unit unit) { return spoken(across, unit) + " × " + spoken(up, unit); }

std::string turnWords(Turn turn) {
    switch (turn) {
    case Turn::Deg0:
        return "top up the roll";
    case Turn::Deg90:
        return "top to the left selvage";
    case Turn::Deg180:
        return "top down the roll";
    case Turn::Deg270:
        return "top to the right selvage";
    case Turn::Deg45:
        return "bias: top up the roll, leaning left";
    case Turn::Deg315:
        return "bias: top up the roll, leaning right";
    case Turn::Deg135:
        return "bias: top down the roll, leaning left";
    case Turn::Deg225:
        return "bias: top down the roll, leaning right";
    }
    return {};
}

std::string seatWords(const MotifSeat &seat) {
    if (seat.column && seat.row) return fmt::format("motif {} across, {} up", *seat.column, *seat.row);
    if (seat.column) return fmt::format("stripe {} from the left selvage", *seat.column);
    return fmt::format("stripe {} from the cut end", seat.row.value_or(0));
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
            out += groups.size() == 1 ? (length == Length{} ? std::string("none") : spoken(length, unit) + " all round")
                                      : spoken(length, unit);
            continue;
        }
        std::string names;
        for (int edge : edges) names += (names.empty() ? "" : "/") + edgeName(panel.shape, edge);
        out += fmt::format("{}{} {}", numbered ? "edge " : "", names, spoken(length, unit));
    }
    return out;
}

std::string concessionWords(const Job &job, const Layout &layout, const Concession &c) {
    const Panel *panel = job.panel(c.panel);
    const std::string edge = c.edge && panel ? edgeName(panel->shape, *c.edge) : "";
    const bool numbered = panel && std::holds_alternative<PolygonShape>(panel->shape);
    const std::string where = !c.edge    ? "every allowance"
                              : numbered ? "allowance at edge " + edge
                                         : edge + " allowance";
    auto said = [&](const std::optional<Length> &l) { return l ? spoken(*l, job.unit) : std::string("?"); };
    switch (c.kind) {
    case Concession::Kind::Trim:
        return fmt::format("{} {} instead of {}", where, said(c.to), said(c.from));
    case Concession::Kind::Stretcher:
        return fmt::format("strip of other cloth sewn on at the {}: {} of face cloth left of {}", edge, said(c.to),
                           said(c.from));
    case Concession::Kind::Seam:
        for (const Cut &cut : layout.cuts)
            if (cut.panel == c.panel && cut.copy == c.copy) return fmt::format("joined from {} pieces", cut.of);
        return "joined from pieces";
    case Concession::Kind::Turn:
        return "turned from its run";
    case Concession::Kind::Uncentre:
        return "off centre";
    case Concession::Kind::OtherCloth:
        for (const Cut &cut : layout.cuts)
            if (cut.panel == c.panel && cut.copy == c.copy && cut.cloth)
                return "cut from " + sheetName(job, *cut.cloth, {});
        return "cut from other cloth";
    }
    return {};
}

std::string sheetName(const Job &job, const std::string &cloth, const std::optional<std::string> &on) {
    const Cloth *found = job.cloth(cloth);
    const std::string name = found && !found->name.empty() ? found->name : cloth;
    return on ? fmt::format("{}, remnant {}", name, *on) : name;
}

std::string copyWords(const ChalkRow &row) {
    std::string out = row.copies > 1 ? fmt::format("{} of {}", row.copy, row.copies) : "";
    if (row.of > 1) out += fmt::format("{}piece {} of {}", out.empty() ? "" : ", ", row.piece, row.of);
    return out;
}

} // namespace boltwright
