#include "core/edit/layout_edit.h"

#include "core/figures/figures.h"
#include "core/rules/rules.h"

#include <algorithm>
#include <set>

namespace boltwright {

SheetOf sheetOf(const Job &job, const Cut &cut) { return {job.clothOf(cut).id, cut.on}; }

ClothRing outlineOnCloth(const Job &job, const Layout &layout, const Cut &cut) {
    const Panel *panel = job.panel(cut.panel);
    if (!panel) return {};
    return lay(*panel, cut, layout).ring;
}

ClothBox boxOnCloth(const Job &job, const Layout &layout, const Cut &cut) {
    const ClothRing ring = outlineOnCloth(job, layout, cut);
    return ring.empty() ? ClothBox{{cut.x, cut.y}, {cut.x, cut.y}} : boxOf(ring);
}

namespace {

bool isOf(const Cut &cut, const CopyOf &copy) { return cut.panel == copy.panel && cut.copy == copy.copy; }

bool isTurnOf(const Concession &c, const Cut &cut) {
    return c.kind == Concession::Kind::Turn && c.panel == cut.panel && c.copy == cut.copy;
}

std::vector<Turn> turnsWithoutLeave(const Job &job, const Panel &panel, const Cut &cut) {
    return turnsOf(panel, job.clothOf(panel), job.clothOf(cut));
}

void listTurnAsConceded(const Job &job, Layout &layout, const Cut &cut) {
    const Panel *panel = job.panel(cut.panel);
    std::erase_if(layout.conceded, [&](const Concession &c) { return isTurnOf(c, cut); });
    const auto free = turnsWithoutLeave(job, *panel, cut);
    if (std::find(free.begin(), free.end(), cut.turn) != free.end() || !panel->may.turn) return;
    Concession conceded;
    conceded.kind = Concession::Kind::Turn;
    conceded.panel = cut.panel;
    conceded.copy = cut.copy;
    layout.conceded.push_back(conceded);
}

} // namespace

std::vector<CopyOf> copiesPutAside(const Job &job, const Layout &layout) {
    std::set<CopyOf> laidCopies;
    for (const Cut &cut : layout.cuts) laidCopies.insert({cut.panel, cut.copy});
    std::vector<CopyOf> aside;
    for (const Panel &panel : job.panels)
        for (int copy = 1; copy <= panel.count; ++copy)
            if (!laidCopies.contains({panel.id, copy})) aside.push_back({panel.id, copy});
    return aside;
}

int copiesLaid(const Layout &layout, const std::string &panel) {
    std::set<int> copies;
    for (const Cut &cut : layout.cuts)
        if (cut.panel == panel) copies.insert(cut.copy);
    return int(copies.size());
}

Layout withCutMoved(const Job &job, Layout layout, int cut, const SheetOf &sheet, ClothPoint corner) {
    Cut &moving = layout.cuts[std::size_t(cut)];
    const Panel *panel = job.panel(moving.panel);
    if (panel && sheet.cloth == job.clothOf(*panel).id)
        moving.cloth = moving.cloth ? std::optional(sheet.cloth) : std::nullopt;
    else
        moving.cloth = sheet.cloth;
    moving.on = sheet.on;
    moving.x = corner.x;
    moving.y = corner.y;
    return withFigures(job, std::move(layout));
}

Layout withCutTurned(const Job &job, Layout layout, int cut, Turn turn) {
    const ClothBox before = boxOnCloth(job, layout, layout.cuts[std::size_t(cut)]);
    Cut &turning = layout.cuts[std::size_t(cut)];
    turning.turn = turn;
    const ClothBox after = boxOnCloth(job, layout, turning);
    const auto half = [](Length l) { return Length::ticks(l.ticks() / 2); };
    turning.x += half(before.width() - after.width());
    turning.y += half(before.height() - after.height());
    listTurnAsConceded(job, layout, turning);
    return withFigures(job, std::move(layout));
}

Layout withCutState(Layout layout, int cut, CutState state) {
    layout.cuts[std::size_t(cut)].state = state;
    return layout;
}

Layout withCopyPutAside(const Job &job, Layout layout, const CopyOf &copy) {
    std::erase_if(layout.cuts, [&](const Cut &cut) { return isOf(cut, copy); });
    std::erase_if(layout.conceded, [&](const Concession &c) { return c.panel == copy.panel && c.copy == copy.copy; });
    const Panel *panel = job.panel(copy.panel);
    const bool listed = std::any_of(layout.leftOut.begin(), layout.leftOut.end(),
                                    [&](const LeftOut &l) { return l.panel == copy.panel && l.copy == copy.copy; });
    if (panel && panel->may.otherCloth.any && !listed) layout.leftOut.push_back({copy.panel, copy.copy, {}});
    return withFigures(job, std::move(layout));
}

Layout withCopyLaid(const Job &job, Layout layout, const CopyOf &copy, const SheetOf &sheet, ClothPoint middle) {
    const Panel *panel = job.panel(copy.panel);
    const Cloth *cloth = job.cloth(sheet.cloth);
    if (!panel || !cloth) return layout;
    std::erase_if(layout.leftOut, [&](const LeftOut &l) { return l.panel == copy.panel && l.copy == copy.copy; });
    Cut cut;
    cut.panel = copy.panel;
    cut.copy = copy.copy;
    if (sheet.cloth != job.clothOf(*panel).id) cut.cloth = sheet.cloth;
    cut.on = sheet.on;
    cut.mirrored = panel->mirror && copy.copy % 2 == 0;
    const auto turns = turnsOf(*panel, job.clothOf(*panel), *cloth);
    if (!turns.empty()) cut.turn = turns.front();
    const ClothBox box = boxOnCloth(job, layout, cut);
    cut.x = middle.x - Length::ticks(box.width().ticks() / 2);
    cut.y = middle.y - Length::ticks(box.height().ticks() / 2);
    layout.cuts.push_back(std::move(cut));
    return withFigures(job, std::move(layout));
}

std::vector<Turn> turnsByHand(const Job &job, const Cut &cut) {
    const Panel *panel = job.panel(cut.panel);
    if (!panel) return {};
    std::vector<Turn> turns = turnsWithoutLeave(job, *panel, cut);
    if (panel->may.turn) {
        Panel freed = *panel;
        freed.run = Run::Either;
        for (Turn turn : turnsOf(freed, job.clothOf(*panel), job.clothOf(cut)))
            if (std::find(turns.begin(), turns.end(), turn) == turns.end()) turns.push_back(turn);
    }
    return turns;
}

ClothPoint stepped(ClothPoint from, Heading heading, Length step) {
    switch (heading) {
    case Heading::TowardsLeft:
        return from - Vector{step, {}};
    case Heading::TowardsRight:
        return from + Vector{step, {}};
    case Heading::UpTheRoll:
        return from + Vector{{}, step};
    case Heading::DownTheRoll:
        return from - Vector{{}, step};
    }
    return from;
}

Length smallStep(Unit unit) {
    return Length::ticks(unit == Unit::Inch ? ticksIn(Unit::Inch) / 8 : 2 * ticksIn(Unit::Millimetre));
}

ClothPoint oneNudge(const Job &job, const Cut &cut, Heading heading) {
    return stepped({cut.x, cut.y}, heading, smallStep(job.unit));
}

namespace {

/// Coordinates of the box's low side, on the axis of the heading, at which the cut would touch something.
std::vector<Length> touchingPlaces(const Job &job, const Layout &layout, int cut, bool across) {
    const Cut &own = layout.cuts[std::size_t(cut)];
    const SheetOf sheet = sheetOf(job, own);
    const ClothBox box = boxOnCloth(job, layout, own);
    const Length extent = across ? box.width() : box.height();
    const auto low = [&](const ClothBox &b) { return across ? b.low.x : b.low.y; };
    const auto high = [&](const ClothBox &b) { return across ? b.high.x : b.high.y; };
    std::vector<Length> places;
    const auto touch = [&](const ClothBox &b, Length gap) {
        places.push_back(low(b) - extent - gap);
        places.push_back(high(b) + gap);
    };
    for (int i = 0; i < int(layout.cuts.size()); ++i) {
        const Cut &other = layout.cuts[std::size_t(i)];
        if (i == cut || sheetOf(job, other) != sheet) continue;
        const ClothBox b = boxOnCloth(job, layout, other);
        touch(b, job.gap);
        places.push_back(low(b)); // level with it
        places.push_back(high(b) - extent);
    }
    const Cloth &cloth = job.clothOf(own);
    const auto touchFlaws = [&](const std::vector<Flaw> &flaws) {
        for (const Flaw &flaw : flaws) touch(boxOf(flaw.outline), Length{});
    };
    if (cloth.bolt) {
        places.push_back(across ? cloth.selvage : cloth.bolt->square);
        if (across) places.push_back(cloth.bolt->width - cloth.selvage - extent);
        if (!across && cloth.bolt->length) places.push_back(*cloth.bolt->length - extent);
        touchFlaws(cloth.bolt->flaws);
    } else if (const Remnant *remnant = cloth.remnant(own.on.value_or(""))) {
        for (const ClothPoint &p : remnant->outline) {
            const Length at = across ? p.x : p.y;
            places.push_back(at + cloth.edge);
            places.push_back(at - cloth.edge - extent);
        }
        touchFlaws(remnant->flaws);
    }
    return places;
}

/// The sheet's reach on an axis: nothing lies beyond it. On a bolt without an end, a little beyond the last cut.
std::pair<Length, Length> reachOf(const Job &job, const Layout &layout, const Cut &cut, bool across) {
    const Cloth &cloth = job.clothOf(cut);
    if (cloth.bolt) {
        if (across) return {Length{}, cloth.bolt->width};
        Length end = cloth.bolt->square;
        for (const Cut &other : layout.cuts)
            if (sheetOf(job, other) == sheetOf(job, cut)) end = std::max(end, boxOnCloth(job, layout, other).high.y);
        return {Length{}, cloth.bolt->length.value_or(end + cloth.bolt->width)};
    }
    const Remnant *remnant = cloth.remnant(cut.on.value_or(""));
    if (!remnant) return {};
    const ClothBox box = boxOf(remnant->outline);
    return across ? std::pair{box.low.x, box.high.x} : std::pair{box.low.y, box.high.y};
}

} // namespace

std::optional<ClothPoint> nextPlace(const Job &job, const Layout &layout, int cut, Heading heading) {
    const bool across = heading == Heading::TowardsLeft || heading == Heading::TowardsRight;
    const bool onwards = heading == Heading::TowardsRight || heading == Heading::UpTheRoll;
    const Cut &own = layout.cuts[std::size_t(cut)];
    const Length here = across ? own.x : own.y;
    const auto [from, to] = reachOf(job, layout, own, across);
    std::vector<Length> candidates = touchingPlaces(job, layout, cut, across);
    if (const auto places = allowedPlaces(job, layout, cut)) {
        const bool free = across ? places->freeX() : places->freeY();
        if (!free) {
            // Every step of the pattern on the axis is tried; on a dropped pattern, those of the own column.
            candidates.clear();
            if (across)
                for (Length x = places->nextX(from); x < to; x = places->nextX(x + Length::ticks(1)))
                    candidates.push_back(x);
            else
                for (Length y = places->nextY(own.x, from); y < to; y = places->nextY(own.x, y + Length::ticks(1)))
                    candidates.push_back(y);
        }
    }
    std::erase_if(candidates, [&](Length at) { return onwards ? at <= here : at >= here; });
    std::sort(candidates.begin(), candidates.end(), [&](Length a, Length b) { return onwards ? a < b : a > b; });
    candidates.erase(std::unique(candidates.begin(), candidates.end()), candidates.end());
    Layout trial = layout;
    Cut &moving = trial.cuts[std::size_t(cut)];
    auto laidCuts = layAll(job, trial);
    for (Length at : candidates) {
        (across ? moving.x : moving.y) = at;
        laidCuts[std::size_t(cut)] = lay(*job.panel(moving.panel), moving, trial);
        if (breachesOf(job, trial, laidCuts, cut).empty()) return ClothPoint{moving.x, moving.y};
    }
    return std::nullopt;
}

} // namespace boltwright
