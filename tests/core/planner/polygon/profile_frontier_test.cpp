#include "core/planner/polygon/profile_frontier.h"
#include "tests/core/geometry/random_rings.h"

#include <catch2/catch.hpp>
#include <rapidcheck/catch.h>

using namespace boltwright;
using namespace boltwright::planner;

namespace {

/// Convex and concave items, some of them turnable, on 200,000 ticks of cloth.
Instance anyItems() {
    Instance instance;
    if (*rc::gen::inRange(0, 2)) instance.gap = Length::ticks(*rc::gen::inRange(1, 2'000));
    Sheet bolt;
    bolt.open = true;
    bolt.room =
        ringOf(ClothBox{{Length::ticks(3'000), Length::ticks(1'000)}, {Length::ticks(203'000), Length::limit()}});
    instance.sheets.push_back(bolt);
    for (int i = *rc::gen::inRange(1, 8); i > 0; --i) {
        const ClothRing ring =
            *rc::gen::inRange(0, 3) ? random_rings::convex(60'000, 6) : random_rings::simple(60'000, 7);
        Item item;
        ClothRing turned;
        for (ClothPoint p : ring) turned.push_back({-p.x, -p.y});
        for (const ClothRing &r : {ring, turned}) {
            instance.outlines.push_back(makeOutline(r));
            item.options.push_back({.outline = int(instance.outlines.size()) - 1});
        }
        instance.items.push_back(item);
    }
    return instance;
}

} // namespace

TEST_CASE("part layouts grown side by side end in right layouts, from all four sides", "[profile frontier]") {
    rc::prop("on plain cloth, below the end aimed at", [] {
        const Instance instance = anyItems();
        const Model model(instance);
        RC_PRE(ProfileFrontier::applies(model));
        ProfileFrontier frontier(model, 7, 0);
        const double best = 600'000, bound = 100'000;
        for (int found = 0, tries = 0; found < 8; ++tries) {
            RC_ASSERT(tries < 10'000);
            if (!frontier.step(best, bound)) continue;
            ++found;
            std::vector<Placement> placements;
            for (std::size_t i = 0; i < frontier.layout().size(); ++i) {
                const Where &w = frontier.layout()[i];
                placements.push_back(
                    {int(i), w.option, {Length::ticks(std::int64_t(w.x)), Length::ticks(std::int64_t(w.y))}});
            }
            RC_ASSERT(holds(instance, placements));
            RC_ASSERT(double(lengthUsed(instance, placements, 0).ticks()) <= best + (best - bound) * 0.3);
        }
    });
}

TEST_CASE("what is in the way or tied to a pattern is nothing for part layouts grown side by side",
          "[profile frontier]") {
    Instance instance;
    Sheet bolt;
    bolt.open = true;
    bolt.room = ringOf(ClothBox{{}, {Length::ticks(1'000), Length::limit()}});
    instance.sheets.push_back(bolt);
    instance.outlines.push_back(makeOutline(ringOf(ClothBox{{}, {Length::ticks(100), Length::ticks(100)}})));
    instance.items.push_back({.options = {{.outline = 0}}});
    const auto applies = [](const Instance &i) { return ProfileFrontier::applies(Model(i)); };
    CHECK(applies(instance));
    Instance flawed = instance;
    flawed.sheets[0].flaws.push_back(ringOf(ClothBox{{}, {Length::ticks(9), Length::ticks(9)}}));
    CHECK_FALSE(applies(flawed));
    Instance tied = instance;
    tied.items[0].options[0].places.xStep = Length::ticks(50);
    CHECK_FALSE(applies(tied));
    Instance laid = instance;
    laid.fixed.push_back({0, 0, {}});
    CHECK_FALSE(applies(laid));
}
