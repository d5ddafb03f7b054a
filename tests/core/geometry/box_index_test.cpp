#include "core/geometry/box_index.h"

#include <catch2/catch.hpp>
#include <rapidcheck/catch.h>

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("what touches a box, or lies no farther off than the gap, is beside it", "[box-index]") {
    const BoxIndex index(
        {{{0_in, 0_in}, {10_in, 10_in}}, {{10_in, 0_in}, {20_in, 10_in}}, {{30_in, 0_in}, {40_in, 10_in}}});
    CHECK(index.near({{2_in, 2_in}, {3_in, 3_in}}, 0_in) == std::vector{0});
    CHECK(index.near({{10_in, 10_in}, {12_in, 12_in}}, 0_in) == std::vector{0, 1});
    CHECK(index.near({{22_in, 4_in}, {28_in, 5_in}}, 2_in) == std::vector{1, 2});
    CHECK(BoxIndex({}).near({{0_in, 0_in}, {1_in, 1_in}}, 1_in).empty());
}

TEST_CASE("the index finds what asking every box finds", "[box-index]") {
    rc::prop("in the order of the boxes", [] {
        auto box = [] {
            auto length = [](int low, int high) { return Length::ticks(*rc::gen::inRange(low, high)); };
            const ClothPoint low{length(-2000, 2000), length(-2000, 2000)};
            return ClothBox{low, {low.x + length(0, 500), low.y + length(0, 500)}};
        };
        std::vector<ClothBox> boxes(*rc::gen::inRange<std::size_t>(0, 60));
        for (ClothBox &b : boxes) b = box();
        const ClothBox here = box();
        const Length gap = Length::ticks(*rc::gen::inRange(0, 300));
        std::vector<int> beside;
        for (std::size_t i = 0; i < boxes.size(); ++i)
            if (boxes[i].low.x - gap <= here.high.x && here.low.x - gap <= boxes[i].high.x &&
                boxes[i].low.y - gap <= here.high.y && here.low.y - gap <= boxes[i].high.y)
                beside.push_back(int(i));
        RC_ASSERT(BoxIndex(boxes).near(here, gap) == beside);
    });
}
