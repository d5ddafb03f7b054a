#include "core/planner/polygon/profile.h"
#include "tests/core/geometry/random_rings.h"

#include <catch2/catch.hpp>
#include <rapidcheck/catch.h>

#include <algorithm>
#include <cmath>
#include <vector>

using namespace boltwright;
using namespace boltwright::planner;

namespace {

constexpr double across = 3'000;

/// A profile of a few convex items that came down on each other.
Profile anyProfile() {
    Profile profile;
    profile.reset(0, across, 0);
    for (int k = *rc::gen::inRange(0, 6); k > 0; --k) {
        const Rims rims(makeOutline(random_rings::convex(900, 6)), {});
        const double x = *rc::gen::inRange(0, int(across - rims.width));
        profile.cover(rims, x, profile.drop(rims, x).y);
    }
    return profile;
}

} // namespace

TEST_CASE("an item that slides freely comes to rest where nothing beside it is lower", "[profile]") {
    rc::prop("on any profile, against looking at every place", [] {
        Profile profile = anyProfile();
        const Rims rims(makeOutline(random_rings::convex(900, 6)), {});
        std::vector<double> xs;
        profile.settlings(rims, 0, across, xs);
        RC_ASSERT(!xs.empty());
        double least = 1e300, settled = 1e300;
        // Between whole ticks, where nothing fits without play.
        for (double x = 0.37; x + rims.width <= across; x += 1) least = std::min(least, profile.drop(rims, x).y);
        for (double x : xs) {
            RC_ASSERT(x >= 0);
            RC_ASSERT(x + rims.width <= across);
            const double here = profile.drop(rims, x).y;
            settled = std::min(settled, here);
            for (double beside : {x - 0.01, x + 0.01})
                if (beside >= 0 && beside + rims.width <= across)
                    RC_ASSERT(profile.drop(rims, beside).y >= here - 1e-6);
        }
        RC_ASSERT(settled <= least + 1e-6);
    });
}

TEST_CASE("an item settles into a notch, against its walls where the notch is level", "[profile]") {
    // A notch 500 wide between two blocks 300 high.
    Profile profile;
    profile.reset(0, 1'500, 0);
    const auto rect = [](int w, int h) {
        return Rims(makeOutline(ringOf(ClothBox{{}, {Length::ticks(w), Length::ticks(h)}})), {});
    };
    profile.cover(rect(500, 300), 0, 0);
    profile.cover(rect(500, 300), 1'000, 0);
    // Wherever something may slide off, the ends of where it is looked for are walls.
    const auto settlings = [&](const Rims &rims) {
        std::vector<double> xs;
        profile.settlings(rims, 0, 1'500, xs);
        for (double &x : xs) x = std::nearbyint(x);
        return xs;
    };
    CHECK(settlings(rect(200, 100)) == std::vector<double>{0, 500, 800, 1'300});
    // A wedge 400 wide above, 200 below and 200 high: its upper corners come to the walls.
    const auto t = [](int x, int y) { return ClothPoint{Length::ticks(x), Length::ticks(y)}; };
    const Rims wedge(makeOutline({t(100, 0), t(300, 0), t(400, 200), t(0, 200)}), {});
    CHECK(settlings(wedge) == std::vector<double>{0, 500, 600, 1'100});
    // On its point, 800 wide and 800 high: its slants come to the upper corners of the walls.
    const Rims cone(makeOutline({t(400, 0), t(800, 800), t(0, 800)}), {});
    CHECK(settlings(cone) == std::vector<double>{0, 250, 450, 700});
    // Too wide for the notch, it hangs on both.
    const Rims roof(makeOutline({t(500, 0), t(1'000, 250), t(0, 250)}), {});
    CHECK(settlings(roof) == std::vector<double>{250});
    CHECK(profile.drop(roof, 250).y == Approx(300 - 125));
}
