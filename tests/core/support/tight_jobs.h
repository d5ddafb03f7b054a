#pragma once

#include "core/edit/outline_edit.h"
#include "core/job/job.h"
#include "core/planner/random.h"
#include "tests/core/support/jobs.h"

#include <string>

/// Jobs on cloth that is a little short, with all that may be given up strewn over their panels: for what must hold
/// whatever is given up.
namespace boltwright::test {

/// The same job for the same number, on every machine.
inline Job tightJob(std::uint64_t number) {
    using namespace literals;
    planner::Random dice(number * 7919 + 17);
    const auto eighths = [&](int low, int high) { return Length::ticks((low + dice.below(high - low + 1)) * 1016); };
    const auto chance = [&](int percent) { return dice.below(100) < percent; };

    Job job;
    job.gap = chance(50) ? 0.25_in : Length{};
    const int kinds = 3 + dice.below(4);
    Area area = 0;
    for (int i = 0; i < kinds; ++i) {
        Panel p = rectangle("P" + std::to_string(i), eighths(6 * 8, 15 * 8), eighths(5 * 8, 15 * 8), 1 + dice.below(2));
        p.allow.assign(4, 1.5_in);
        p.allowMin.assign(4, std::nullopt);
        if (chance(60))
            for (auto &least : p.allowMin)
                if (chance(70)) least = chance(50) ? 0.75_in : 0.5_in;
        p.may.turn = chance(35);
        p.may.uncentre = chance(30);
        p.may.otherCloth.any = chance(25);
        if (chance(25)) p.may.stretcher[Bottom] = 0.5_in;
        p.hidden = chance(20);
        if (chance(12)) {
            const Rectangle shape = std::get<Rectangle>(p.shape);
            p.shape = Rectangle{shape.across + shape.across, shape.up};
            p.pieces.most = 2 + dice.below(2);
            p.pieces.seam = 0.5_in;
            p.pieces.shortest = 6_in;
        }
        const Rectangle shape = std::get<Rectangle>(p.shape);
        area += p.count * ((shape.across + 3_in) * (shape.up + 3_in));
        job.panels.push_back(std::move(p));
    }
    // Cloth as wide as some remnant may be, a few percent more or less than the panels cover.
    const Length width = eighths(36 * 8, 54 * 8);
    const Length length = Length::ticks(area / width.ticks() * (104 + dice.below(26)) / 100 / 1016 * 1016);
    Cloth cloth;
    if (chance(30)) {
        cloth = bolt(width);
        cloth.bolt->length = length;
    } else {
        ClothRing outline = ringOf(ClothBox{{}, {width, length}});
        if (chance(40)) outline = withCornerCutOut(outline, 2, 4_in, 3_in).value_or(outline);
        cloth = remnantCloth(std::move(outline));
    }
    cloth.way = chance(50) ? Way::Two : Way::One;
    if (chance(50)) {
        cloth.pattern = chance(50) ? stripes(eighths(3 * 8, 9 * 8), 2_in)
                                   : motifs(eighths(4 * 8, 9 * 8), eighths(4 * 8, 12 * 8), {2_in, 1_in});
        for (Panel &p : job.panels)
            if (!p.hidden && chance(40)) p.motif = MotifWish{Centre::Across, {}, {}};
    }
    job.cloths = {std::move(cloth)};
    return job;
}

/// What may be given up and in which order, with at least one kind forbidden.
inline std::vector<Concession::Kind> someOrder(std::uint64_t number) {
    using Kind = Concession::Kind;
    planner::Random dice(number * 104729 + 5);
    std::vector<Kind> all{Kind::Trim, Kind::Stretcher, Kind::OtherCloth, Kind::Uncentre, Kind::Turn, Kind::Seam};
    for (int i = int(all.size()) - 1; i > 0; --i) std::swap(all[std::size_t(i)], all[std::size_t(dice.below(i + 1))]);
    all.resize(std::size_t(1 + dice.below(5)));
    return all;
}

} // namespace boltwright::test
