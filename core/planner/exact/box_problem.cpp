#include "core/planner/exact/box_problem.h"

#include "core/planner/exact/places.h"

#include <algorithm>
#include <numeric>

namespace boltwright::planner {
namespace {

using Ticks = BoxProblem::Ticks;

template <class OptionOfItem>
const Option &optionOf(const Instance &instance, const OptionOfItem &mode) {
    return instance.items[std::size_t(mode.item)].options[std::size_t(mode.option)];
}

bool upright(const ClothRing &ring) {
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const ClothPoint a = ring[i], b = ring[(i + 1) % ring.size()];
        if (a.x != b.x && a.y != b.y) return false;
    }
    return true;
}

/// What of the slab between two neighbouring levels lies inside the ring: the xs at which its upright edges cross it.
std::vector<Length> crossings(const ClothRing &ring, Length low, Length high) {
    std::vector<Length> xs;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const ClothPoint a = ring[i], b = ring[(i + 1) % ring.size()];
        if (a.x == b.x && std::min(a.y, b.y) <= low && std::max(a.y, b.y) >= high) xs.push_back(a.x);
    }
    std::sort(xs.begin(), xs.end());
    return xs;
}

std::vector<Length> levelsOf(const ClothRing &ring) {
    std::vector<Length> levels;
    for (const ClothPoint &p : ring) levels.push_back(p.y);
    std::sort(levels.begin(), levels.end());
    levels.erase(std::unique(levels.begin(), levels.end()), levels.end());
    return levels;
}

/// An option's phase is fixed on the axes that repeat: every place of it shows the same part of the motif.
bool phaseFixed(const Instance &instance, const Option &option) {
    const auto &lattice = instance.sheets[std::size_t(option.sheet)].lattice;
    if (!lattice) return true;
    const PlaceSet &places = option.places;
    if (lattice->repeatsAcross() && places.freeX()) return false;
    if (!lattice->repeatsAlong()) return true;
    if (places.freeY() || places.yDivide != 1) return false;
    return !lattice->repeatsAcross() || lattice->dropNumerator() == 0 || places.dropped();
}

/// Every displacement by whole steps of a lattice.
PlaceSet wholeSteps(const Lattice &lattice) {
    PlaceSet steps;
    steps.xStep = lattice.across();
    steps.yStep = lattice.along();
    if (lattice.repeatsAcross() && lattice.repeatsAlong()) {
        steps.riseNumerator = lattice.dropNumerator();
        steps.riseDenominator = lattice.dropDenominator();
    }
    return steps;
}

/// How far phases may differ that count as one: what rounding does to them, and less on a lattice almost that small.
Length roundingOf(const Lattice &lattice) {
    Length least = Length::ticks(256);
    if (lattice.repeatsAcross()) least = std::min(least, lattice.across());
    if (lattice.repeatsAlong()) least = std::min(least, lattice.along());
    return Length::ticks(least.ticks() / 64);
}

void addBlocks(BoxProblem &problem, const Instance &instance) {
    auto add = [&](int sheet, const ClothBox &box, bool keepsGap, bool flaw) {
        const ClothPoint origin = problem.origins[std::size_t(sheet)];
        const Ticks left = problem.lefts[std::size_t(sheet)];
        BoxProblem::Block block;
        block.sheet = sheet;
        block.x1 = left + (box.low.x - origin.x).ticks();
        block.x2 = left + (box.high.x - origin.x).ticks();
        block.y1 = (box.low.y - origin.y).ticks();
        block.y2 = (box.high.y - origin.y).ticks();
        // Items are wider than they are: where no gap is kept, they may reach in by that much from below and left;
        // where one is kept, what lies there is widened like them.
        (keepsGap ? block.x2 : block.x1) += problem.widening.across;
        (keepsGap ? block.y2 : block.y1) += problem.widening.along;
        block.flaw = flaw;
        problem.blocks.push_back(block);
    };
    for (std::size_t s = 0; s < instance.sheets.size(); ++s) {
        for (const ClothBox &box : boxesBeside(instance.sheets[s].room)) add(int(s), box, false, false);
        for (const ClothRing &flaw : instance.sheets[s].flaws)
            for (const ClothBox &box : boxesOf(flaw)) add(int(s), box, false, true);
    }
    for (const Fixed &fixed : instance.fixed) {
        const Outline &outline = instance.outlines[std::size_t(fixed.outline)];
        add(fixed.sheet, {fixed.corner, fixed.corner + Vector{outline.width, outline.height}}, true, false);
    }
}

void addSheets(BoxProblem &problem, const Instance &instance, Length length) {
    Ticks left = 0;
    for (const Sheet &sheet : instance.sheets) {
        const ClothBox room = boxOf(sheet.room);
        const Length top = sheet.open ? std::min(length, room.high.y) : room.high.y;
        problem.origins.push_back(room.low);
        problem.lefts.push_back(left);
        problem.widths.push_back(room.width().ticks() + problem.widening.across);
        problem.heights.push_back(std::max<Ticks>(0, (top - room.low.y).ticks()) + problem.widening.along);
        left += problem.widths.back();
    }
}

void addItems(BoxProblem &problem, const Instance &instance) {
    for (std::size_t i = 0; i < instance.items.size(); ++i) {
        const Item &source = instance.items[i];
        BoxProblem::Item item;
        item.item = int(i);
        item.kind = source.kind;
        item.group = source.group;
        item.hidden = source.hidden;
        for (std::size_t k = 0; k < source.options.size(); ++k) {
            const Option &option = source.options[k];
            const Outline &outline = instance.outlines[std::size_t(option.outline)];
            BoxProblem::Mode mode;
            mode.item = int(i);
            mode.option = int(k);
            mode.sheet = option.sheet;
            mode.width = outline.width.ticks() + problem.widening.across;
            mode.height = outline.height.ticks() + problem.widening.along;
            mode.dropped = option.places.dropped();
            item.modes.push_back(mode);
            if (item.group >= 0 && !phaseFixed(instance, option)) problem.groupsLeftOpen = true;
        }
        problem.items.push_back(std::move(item));
    }
}

void mergePlaces(BoxProblem &problem) {
    auto merge = [](std::vector<Ticks> &all, const std::vector<Ticks> &more) {
        all.insert(all.end(), more.begin(), more.end());
        std::sort(all.begin(), all.end());
        all.erase(std::unique(all.begin(), all.end()), all.end());
    };
    for (BoxProblem::Item &item : problem.items) {
        std::erase_if(item.modes, [](const BoxProblem::Mode &m) { return m.xs.empty() || m.ys.empty(); });
        if (item.modes.empty()) problem.impossible = true;
        for (const BoxProblem::Mode &mode : item.modes) {
            merge(item.xs, mode.xs);
            merge(item.ys, mode.ys);
        }
    }
}

bool isPlain(const BoxProblem &problem) {
    if (problem.lefts.size() != 1 || !problem.blocks.empty()) return false;
    return std::all_of(problem.items.begin(), problem.items.end(), [&](const BoxProblem::Item &item) {
        if (item.modes.size() != 1 || item.group >= 0) return false;
        const PlaceSet &places = optionOf(*problem.instance, item.modes[0]).places;
        return places.freeX() && places.freeY();
    });
}

} // namespace

std::vector<ClothBox> boxesOf(const ClothRing &ring) {
    std::vector<ClothBox> boxes;
    const auto levels = levelsOf(ring);
    for (std::size_t k = 0; k + 1 < levels.size(); ++k) {
        const auto xs = crossings(ring, levels[k], levels[k + 1]);
        for (std::size_t i = 0; i + 1 < xs.size(); i += 2)
            boxes.push_back({{xs[i], levels[k]}, {xs[i + 1], levels[k + 1]}});
    }
    return boxes;
}

std::vector<ClothBox> boxesBeside(const ClothRing &ring) {
    std::vector<ClothBox> boxes;
    const ClothBox all = boxOf(ring);
    const auto levels = levelsOf(ring);
    for (std::size_t k = 0; k + 1 < levels.size(); ++k) {
        auto xs = crossings(ring, levels[k], levels[k + 1]);
        xs.insert(xs.begin(), all.low.x);
        xs.push_back(all.high.x);
        for (std::size_t i = 0; i + 1 < xs.size(); i += 2)
            if (xs[i] < xs[i + 1]) boxes.push_back({{xs[i], levels[k]}, {xs[i + 1], levels[k + 1]}});
    }
    return boxes;
}

bool understood(const Instance &instance) {
    for (const Sheet &sheet : instance.sheets) {
        if (!upright(sheet.room)) return false;
        if (!std::all_of(sheet.flaws.begin(), sheet.flaws.end(), upright)) return false;
    }
    // Other outlines may be listed; none may be used.
    auto rectangle = [&](int outline) { return instance.outlines[std::size_t(outline)].rectangle; };
    for (const Item &item : instance.items)
        for (const Option &option : item.options)
            if (!rectangle(option.outline)) return false;
    return std::all_of(instance.fixed.begin(), instance.fixed.end(),
                       [&](const Fixed &f) { return rectangle(f.outline); });
}

bool BoxProblem::open(const Mode &mode, Ticks x, Ticks y) const {
    return !mode.dropped || optionOf(*instance, mode).places.holds(cloth(mode, x, y));
}

bool BoxProblem::together(const Mode &a, const Mode &b) const {
    const Option &oa = optionOf(*instance, a), &ob = optionOf(*instance, b);
    const Sheet &sa = instance->sheets[std::size_t(oa.sheet)], &sb = instance->sheets[std::size_t(ob.sheet)];
    if (oa.turn != ob.turn || sa.lot != sb.lot) return false;
    if (!sa.lattice || !sb.lattice || !phaseFixed(*instance, oa) || !phaseFixed(*instance, ob)) return true;
    // One place of each shows the part of the motif that all of them show.
    const Vector phaseA = Vector{oa.places.x0, oa.places.y0} + oa.anchor - (sa.lattice->motif() - ClothPoint{});
    const Vector phaseB = Vector{ob.places.x0, ob.places.y0} + ob.anchor - (sb.lattice->motif() - ClothPoint{});
    const Vector apart = phaseA - phaseB;
    return wholeSteps(*sa.lattice).holds({apart.x, apart.y}, roundingOf(*sa.lattice));
}

bool BoxProblem::phasesAgree(const std::vector<Placement> &placements) const {
    for (const Placement &p : placements) {
        const int group = instance->items[std::size_t(p.item)].group;
        if (group < 0) continue;
        const Placement &lead = *std::find_if(placements.begin(), placements.end(), [&](const Placement &q) {
            return instance->items[std::size_t(q.item)].group == group;
        });
        const auto phase = [&](const Placement &q, const Lattice &lattice) {
            return q.corner + optionOf(*instance, q).anchor - lattice.motif();
        };
        const auto &lattice = instance->sheets[std::size_t(optionOf(*instance, p).sheet)].lattice;
        const auto &home = instance->sheets[std::size_t(optionOf(*instance, lead).sheet)].lattice;
        if (!lattice || !home) continue;
        const Vector apart = phase(p, *lattice) - phase(lead, *home);
        if (!wholeSteps(*lattice).holds({apart.x, apart.y})) return false;
    }
    return true;
}

ClothPoint BoxProblem::cloth(const Mode &mode, Ticks x, Ticks y) const {
    const std::size_t s = std::size_t(mode.sheet);
    return origins[s] + Vector{Length::ticks(x - lefts[s]), Length::ticks(y)};
}

std::size_t BoxProblem::size() const {
    std::size_t sum = 0;
    for (const Item &item : items) sum += (item.xs.size() + item.ys.size()) * item.modes.size();
    return sum * (items.size() + blocks.size()) * 2;
}

std::optional<BoxProblem> boxProblem(const Instance &instance, Length length, BoxProblem::Widening widening) {
    BoxProblem problem;
    problem.instance = &instance;
    problem.widening = widening;
    addSheets(problem, instance, length);
    addBlocks(problem, instance);
    addItems(problem, instance);
    if (!findPlaces(problem)) return std::nullopt;
    mergePlaces(problem);
    problem.plain = isPlain(problem);
    return problem;
}

} // namespace boltwright::planner
