#include "core/planner/polygon/pairing.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::planner;
using namespace boltwright::literals;

namespace {

/// A 12 in wide boxing strip's end: 10 in up, its right side leaning by 2 in.
const ClothRing narrowTop = {{0_in, 0_in}, {8_in, 0_in}, {6_in, 10_in}, {0_in, 10_in}};
const ClothRing wideTop = {{2_in, 0_in}, {8_in, 0_in}, {8_in, 10_in}, {0_in, 10_in}};

Instance wedges(Length gap) {
    Instance instance;
    instance.gap = gap;
    instance.sheets.push_back({.room = ringOf(ClothBox{{0_in, 0_in}, {54_in, 900_in}}), .open = true});
    for (const ClothRing &ring : {narrowTop, wideTop}) {
        instance.outlines.push_back(makeOutline(ring));
        Option option;
        option.outline = int(instance.outlines.size()) - 1;
        instance.items.push_back({.options = {option}});
    }
    return instance;
}

} // namespace

TEST_CASE("two wedges head to tail are one rectangle", "[pairing]") {
    const Instance instance = wedges(0_in);
    const auto pairing = pairUp(instance);
    REQUIRE(pairing);
    REQUIRE(pairing->joined.items.size() == 1);
    CHECK(pairing->joined.rectilinear());
    const Outline &box = pairing->joined.outlines.at(std::size_t(pairing->joined.items[0].options[0].outline));
    CHECK(box.width == 14_in);
    CHECK(box.height == 10_in);
    CHECK(holds(instance, pairing->apart({{0, 0, {3_in, 5_in}}})));
}

TEST_CASE("the gap stays between the two of a pair", "[pairing]") {
    const Instance instance = wedges(0.125_in);
    const auto pairing = pairUp(instance);
    REQUIRE(pairing);
    CHECK(holds(instance, pairing->apart({{0, 0, {3_in, 5_in}}})));
}

TEST_CASE("items that the pattern holds in place are not joined", "[pairing]") {
    Instance instance = wedges(0_in);
    instance.items[0].options[0].places.xStep = 8_in;
    CHECK_FALSE(pairUp(instance));
}
