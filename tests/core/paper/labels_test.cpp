#include "core/paper/labels.h"
#include "tests/core/paper/planted.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("usual label grids and slips fit their paper, and no two labels lie over each other", "[paper]") {
    auto grids = usualLabelGrids();
    for (Paper paper : allPapers()) grids.push_back(slipsOn(paper));
    for (const LabelGrid &grid : grids) {
        CAPTURE(spokenGrid(grid, Unit::Inch));
        CHECK_FALSE(faultOf(grid));
        const auto boxes = labelBoxes(grid);
        const PaperSize paper = sizeOf(grid.paper);
        REQUIRE(boxes.size() == std::size_t(grid.columns * grid.rows));
        for (std::size_t i = 0; i < boxes.size(); ++i) {
            CHECK((boxes[i].low.x >= Length{} && boxes[i].high.x <= paper.width));
            CHECK((boxes[i].low.y >= Length{} && boxes[i].high.y <= paper.height));
            for (std::size_t k = 0; k < i; ++k)
                CHECK((boxes[k].high.x <= boxes[i].low.x || boxes[i].high.x <= boxes[k].low.x ||
                       boxes[k].high.y <= boxes[i].low.y || boxes[i].high.y <= boxes[k].low.y));
        }
    }
}

TEST_CASE("a grid that cannot be printed says why", "[paper]") {
    const LabelGrid good = usualLabelGrids().front();
    const auto refused = [&](auto change) {
        LabelGrid grid = good;
        change(grid);
        return faultOf(grid).has_value();
    };
    CHECK(refused([](LabelGrid &g) { g.rows = 11; }));
    CHECK(refused([](LabelGrid &g) { g.everyAcross = g.width - Length::ticks(1); }));
    CHECK(refused([](LabelGrid &g) { g.height = 8_mm; }));
    CHECK(refused([](LabelGrid &g) { g.columns = 0; }));
    CHECK_FALSE(refused([](LabelGrid &g) { g.rows = 9; }));
}

TEST_CASE("every piece has one label, in cutting order", "[paper]") {
    const Job job = planted::joinedBack();
    const auto labels = pieceLabels(job, job.layouts[0]);
    REQUIRE(labels.size() == job.layouts[0].cuts.size());
    for (std::size_t i = 0; i < labels.size(); ++i) CHECK(labels[i].number == int(i) + 1);
    CHECK(labels[0].mark == "LB");
    CHECK(labels[0].copy == "piece 1 of 3");
}
