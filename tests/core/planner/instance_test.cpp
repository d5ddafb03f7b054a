#include "core/planner/instance.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::planner;
using namespace boltwright::literals;

namespace {

ClothRing box(Length x, Length y, Length w, Length h) { return ringOf(ClothBox{{x, y}, {x + w, y + h}}); }

/// Two 20 by 10 panels on a bolt 54 wide, 1/4 in apart.
Instance twoPanels() {
    Instance instance;
    instance.gap = 0.25_in;
    instance.sheets.push_back({.room = box(0_in, 0_in, 54_in, 900_in), .open = true});
    instance.outlines.push_back(makeOutline(box(3_in, 3_in, 20_in, 10_in)));
    for (int i = 0; i < 2; ++i) instance.items.push_back({.options = {Option{}}});
    return instance;
}

Lattice halfDrop() { return Lattice(Pattern{.across = 8_in, .along = 12_in, .drop = 6_in}, {1_in, 2_in}); }

} // namespace

TEST_CASE("an outline starts at the origin, counter-clockwise, with its size", "[instance]") {
    const Outline o = makeOutline({{5_in, 5_in}, {5_in, 9_in}, {8_in, 5_in}});
    CHECK(boxOf(o.ring).low == ClothPoint{});
    CHECK(twiceArea(o.ring) == 3_in * 4_in);
    CHECK(o.area == 3_in * 2_in);
    CHECK(o.width == 3_in);
    CHECK(o.height == 4_in);
    CHECK(o.parts.size() == 1);
    CHECK_FALSE(o.rectangle);
    CHECK(makeOutline(box(1_in, 1_in, 2_in, 2_in)).rectangle);
}

TEST_CASE("a slanted panel, remnant or flaw makes an instance no longer upright", "[instance]") {
    Instance instance = twoPanels();
    CHECK(instance.rectilinear());
    instance.sheets[0].flaws.push_back({{1_in, 1_in}, {2_in, 1_in}, {1_in, 2_in}});
    CHECK_FALSE(instance.rectilinear());
}

TEST_CASE("panels exactly at the gap are right, a tick nearer is not", "[instance]") {
    const Instance instance = twoPanels();
    auto layout = [](Length x) { return std::vector<Placement>{{0, 0, {0_in, 0_in}}, {1, 0, {x, 0_in}}}; };
    CHECK(holds(instance, layout(20.25_in)));
    CHECK_FALSE(holds(instance, layout(20.25_in - Length::ticks(1))));
    CHECK(holds(instance, layout(34_in)));
    CHECK_FALSE(holds(instance, layout(34_in + Length::ticks(1)))); // over the selvage
    CHECK(lengthUsed(instance, layout(34_in), 0) == 10_in);
}

TEST_CASE("every item lies once", "[instance]") {
    const Instance instance = twoPanels();
    CHECK_FALSE(holds(instance, {{0, 0, {0_in, 0_in}}}));
    CHECK_FALSE(holds(instance, {{0, 0, {0_in, 0_in}}, {0, 0, {30_in, 0_in}}}));
    CHECK_FALSE(holds(instance, {{0, 0, {0_in, 0_in}}, {1, 1, {30_in, 0_in}}}));
}

TEST_CASE("items keep off flaws unless they are out of sight, and off what already lies there", "[instance]") {
    Instance instance = twoPanels();
    const std::vector<Placement> layout = {{0, 0, {0_in, 0_in}}, {1, 0, {30_in, 0_in}}};
    instance.sheets[0].flaws.push_back(box(50_in, 5_in, 1_in, 1_in)); // a flaw may touch: there is no gap to it
    CHECK(holds(instance, layout));
    instance.sheets[0].flaws.push_back(box(49_in, 5_in, 1_in, 1_in));
    CHECK_FALSE(holds(instance, layout));
    instance.items[1].hidden = true;
    CHECK(holds(instance, layout));
    instance.fixed.push_back({.sheet = 0, .outline = 0, .corner = {0_in, 10.25_in}});
    CHECK(holds(instance, layout));
    CHECK(lengthUsed(instance, layout, 0) == 20.25_in);
    instance.fixed[0].corner.y = 10_in;
    CHECK_FALSE(holds(instance, layout));
}

TEST_CASE("an item lies where the pattern lets it", "[instance]") {
    Instance instance = twoPanels();
    instance.items[0].options[0].places.xStep = 8_in;
    instance.items[0].options[0].places.x0 = 3_in;
    CHECK(holds(instance, {{0, 0, {27_in, 0_in}}, {1, 0, {0_in, 0_in}}}));
    CHECK_FALSE(holds(instance, {{0, 0, {28_in, 0_in}}, {1, 0, {0_in, 0_in}}}));
}

TEST_CASE("a group takes the phase of whoever lay first, also on a half-drop", "[instance]") {
    Instance instance = twoPanels();
    instance.sheets[0].lattice = halfDrop();
    for (Item &item : instance.items) {
        item.group = 0;
        item.options[0].anchor = {10_in, 5_in};
    }
    instance.groups.push_back({{0, 1}});
    // The first anchor lies at (10, 5), which is (9, 3) from the motif; 32 across is four columns: no drop left.
    CHECK(holds(instance, {{0, 0, {0_in, 0_in}}, {1, 0, {32_in, 0_in}}}));
    CHECK(holds(instance, {{0, 0, {0_in, 0_in}}, {1, 0, {24_in, 6_in}}}));
    CHECK_FALSE(holds(instance, {{0, 0, {0_in, 0_in}}, {1, 0, {24_in, 0_in}}}));

    const auto places = placesInGroup(instance, instance.items[1].options[0], Vector{9_in, 3_in});
    REQUIRE(places);
    CHECK(places->holds({32_in, 0_in}));
    CHECK(places->holds({24_in, 6_in}));
    CHECK_FALSE(places->holds({24_in, 0_in}));
}

TEST_CASE("an item whose own wish contradicts its group finds no place there", "[instance]") {
    Instance instance = twoPanels();
    instance.sheets[0].lattice = Lattice(Pattern{.across = 8_in}, {0_in, 0_in});
    Option option;
    option.places = {.xStep = 8_in, .x0 = 1_in};
    CHECK(placesInGroup(instance, option, Vector{1_in, 5_in}));
    CHECK_FALSE(placesInGroup(instance, option, Vector{2_in, 5_in}));
    CHECK(placesInGroup(instance, option, std::nullopt) == option.places);
}

TEST_CASE("a group on two remnants goes by each one's own motif, one lot and one turn", "[instance]") {
    Instance instance = twoPanels();
    instance.sheets.clear();
    for (Length motif : {0_in, 3_in})
        instance.sheets.push_back(
            {.room = box(0_in, 0_in, 54_in, 20_in), .lattice = Lattice(Pattern{.across = 8_in}, {motif, 0_in})});
    for (Item &item : instance.items) {
        item.group = 0;
        item.options.push_back({.sheet = 1});
    }
    instance.groups.push_back({{0, 1}});
    const std::vector<Placement> layout = {{0, 0, {5_in, 0_in}}, {1, 1, {16_in, 0_in}}};
    CHECK(holds(instance, layout)); // 5 from the motif here; 16 - 3 = 13 = 5 + 8 there
    instance.sheets[1].lot = 2;
    CHECK_FALSE(holds(instance, layout));
    instance.sheets[1].lot = 0;
    instance.items[1].options[1].turn = Turn::Deg180;
    CHECK_FALSE(holds(instance, layout));
}
