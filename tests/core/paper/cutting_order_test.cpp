#include "core/paper/cutting_order.h"
#include "planted.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;

namespace {

Job benchJob() {
    Job job;
    Cloth cloth;
    cloth.id = "c";
    cloth.bolt = Bolt{.width = 54_in, .length = {}, .square = {}, .flaws = {}, .kept = {}};
    job.cloths.push_back(cloth);
    return job;
}

void lay(Job &job, Layout &layout, const char *id, Length x, Length y, Length across, Length up, int copy = 1) {
    if (!job.panel(id)) job.panels.push_back(planted::rectangle(id, id, id, across, up, {}, copy));
    for (Panel &panel : job.panels)
        if (panel.id == id) panel.count = std::max(panel.count, copy);
    Cut cut;
    cut.panel = id;
    cut.copy = copy;
    cut.x = x;
    cut.y = y;
    layout.cuts.push_back(cut);
}

/// The order as the panels' ids.
std::vector<std::string> orderOf(const Job &job, const Layout &layout) {
    const ClothSheet sheet = clothSheets(job, layout).front();
    std::vector<std::string> out;
    for (int i : cuttingOrder(job, layout, sheet).cuts)
        out.push_back(layout.cuts[std::size_t(sheet.cuts[std::size_t(i)].cut)].panel);
    return out;
}

std::vector<Length> acrossOf(const Job &job, const Layout &layout) {
    return cuttingOrder(job, layout, clothSheets(job, layout).front()).across;
}

} // namespace

TEST_CASE("what stands in the middle of four others is cut last", "[paper]") {
    Job job = benchJob();
    Layout layout;
    lay(job, layout, "middle", 12_in, 12_in, 12_in, 12_in);
    lay(job, layout, "a", 0_in, 0_in, 24_in, 12_in);
    lay(job, layout, "b", 24_in, 0_in, 12_in, 24_in);
    lay(job, layout, "c", 12_in, 24_in, 24_in, 12_in);
    lay(job, layout, "d", 0_in, 12_in, 12_in, 24_in);
    const auto order = orderOf(job, layout);
    CHECK(order.front() == "a");
    CHECK(std::find(order.begin(), order.end(), "middle") != order.begin());
    // From the middle, every side looks at one of the four: it cannot come before one of them is off.
    CHECK(order[0] != "middle");
    CHECK(acrossOf(job, layout) == std::vector{36_in}); // nothing parts a pinwheel but its end
}

TEST_CASE("straight cuts come at every level that no panel crosses, the squared end first", "[paper]") {
    Job job = benchJob();
    job.cloths.front().bolt->square = 1_in;
    Layout layout;
    lay(job, layout, "a", 0_in, 1_in, 20_in, 10_in);
    lay(job, layout, "b", 20_in, 1_in, 20_in, 15_in);
    lay(job, layout, "c", 0_in, 17_in, 40_in, 8_in);
    CHECK(acrossOf(job, layout) == std::vector{1_in, 16_in, 25_in});
    SECTION("none at the end of the bolt itself") {
        job.cloths.front().bolt->length = 25_in;
        CHECK(acrossOf(job, layout) == std::vector{1_in, 16_in});
    }
}

TEST_CASE("copies of one panel are cut one after the other where both can be reached", "[paper]") {
    Job job = benchJob();
    Layout layout;
    lay(job, layout, "arm", 0_in, 0_in, 10_in, 20_in, 1);
    lay(job, layout, "seat", 10_in, 0_in, 10_in, 20_in);
    lay(job, layout, "arm", 20_in, 0_in, 10_in, 20_in, 2);
    CHECK(orderOf(job, layout) == std::vector<std::string>{"arm", "arm", "seat"});
}

TEST_CASE("a section is finished before the next is begun, also where a copy lies there", "[paper]") {
    Job job = benchJob();
    Layout layout;
    lay(job, layout, "arm", 0_in, 0_in, 10_in, 10_in, 1);
    lay(job, layout, "seat", 10_in, 0_in, 10_in, 10_in);
    lay(job, layout, "arm", 0_in, 10_in, 10_in, 10_in, 2);
    CHECK(orderOf(job, layout) == std::vector<std::string>{"arm", "seat", "arm"});
}

TEST_CASE("what is cut already stands in nobody's way", "[paper]") {
    Job job = benchJob();
    Layout layout;
    lay(job, layout, "a", 0_in, 0_in, 20_in, 30_in);
    lay(job, layout, "b", 20_in, 0_in, 20_in, 12_in);
    lay(job, layout, "c", 20_in, 13_in, 20_in, 12_in);
    layout.cuts.front().state = CutState::Cut;
    CHECK(orderOf(job, layout) == std::vector<std::string>{"b", "c"});
    CHECK(acrossOf(job, layout) == std::vector{12_in, 25_in});
}
