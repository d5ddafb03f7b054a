#include "core/planner/plain_walk.h"
#include "tests/core/planner/tiny.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::planner;

namespace {

std::vector<std::pair<int, int>> randomSizes(Random &random, int count, int most) {
    std::vector<std::pair<int, int>> sizes;
    for (int i = 0; i < count; ++i) sizes.emplace_back(1 + random.below(most), 1 + random.below(most));
    return sizes;
}

} // namespace

TEST_CASE("what is laid again from where a change matters is what laying all again gives", "[rectangles]") {
    Random random(7);
    for (int trial = 0; trial < 60; ++trial) {
        const Instance instance = tiny::bolt(20 + random.below(20), randomSizes(random, 5 + random.below(30), 12));
        const RectangleTask task(instance);
        REQUIRE(isPlain(task));
        PlainWalk walk(task, std::uint64_t(trial), trial);
        // Low enough that not everything fits: then the areas left over differ.
        walk.aim(task.sheets[0].y0 + Tick(task.itemArea() / (task.sheets[0].x1 - task.sheets[0].x0)));
        for (int i = 0; i < 20; ++i) {
            for (int k = 0; k < 25; ++k) walk.step();
            const Area left = walk.left();
            walk.aim(walk.top());
            walk.step();
            CHECK(walk.left() == left);
        }
    }
}
