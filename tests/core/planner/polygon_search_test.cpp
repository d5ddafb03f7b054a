#include "core/planner/polygon_search.h"
#include "tests/core/geometry/random_rings.h"

#include <catch2/catch.hpp>
#include <rapidcheck/catch.h>

using namespace boltwright;
using namespace boltwright::planner;
using namespace boltwright::literals;

namespace {

ClothRing box(Length x, Length y, Length w, Length h) { return ringOf(ClothBox{{x, y}, {x + w, y + h}}); }

Sheet bolt(Length width) { return {.room = box(0_in, 0_in, width, 900_in), .open = true}; }

/// Adds an item laid by this one outline.
void add(Instance &instance, const ClothRing &ring) {
    instance.outlines.push_back(makeOutline(ring));
    Option option;
    option.outline = int(instance.outlines.size()) - 1;
    instance.items.push_back({.options = {option}});
}

Limits steps(std::int64_t count) {
    Limits limits;
    limits.steps = count;
    return limits;
}

/// Random convex and concave items, some of them turnable, hidden or tied to the pattern, on a bolt or on remnants,
/// with flaws, a gap and something that lies there already.
Instance anything() {
    Instance instance;
    auto chance = [](int times) { return *rc::gen::inRange(0, times) == 0; };
    auto size = [](int from, int to) { return Length::ticks(*rc::gen::inRange(from, to)); };
    const bool open = chance(2);
    if (chance(2)) instance.gap = size(1, 2'000);
    std::optional<Lattice> lattice;
    Pattern pattern;
    switch (*rc::gen::inRange(0, 5)) {
    case 0:
        pattern.across = size(20'000, 60'000);
        break;
    case 1:
        pattern.along = size(20'000, 60'000);
        break;
    case 2:
        pattern.across = size(20'000, 60'000), pattern.along = size(20'000, 60'000);
        break;
    case 3:
        pattern.across = size(20'000, 60'000), pattern.along = 60_mm, pattern.drop = 30_mm;
        break;
    default:
        break;
    }
    if (pattern.across || pattern.along) lattice = Lattice(pattern, {size(0, 9'000), size(0, 9'000)});
    const int sheets = open ? 1 : *rc::gen::inRange(1, 3);
    for (int s = 0; s < sheets; ++s) {
        Sheet sheet = bolt(Length::ticks(400'000));
        sheet.open = open;
        if (!open)
            sheet.room = chance(2) ? box(0_in, 0_in, Length::ticks(400'000), Length::ticks(500'000))
                                   : moved(random_rings::simple(400'000, 8), {50_in, 50_in});
        sheet.lattice = lattice;
        if (chance(2))
            sheet.flaws.push_back(
                moved(random_rings::simple(20'000, 5), {size(50'000, 300'000), size(50'000, 300'000)}));
        instance.sheets.push_back(sheet);
    }
    const int items = *rc::gen::inRange(2, 8);
    for (int i = 0; i < items; ++i) {
        add(instance, chance(4) ? random_rings::simple(60'000, 7) : random_rings::convex(60'000, 6));
        Item &item = instance.items.back();
        item.hidden = chance(4);
        if (chance(2)) { // also the other way up
            ClothRing turned;
            for (ClothPoint p : instance.outlines.back().ring) turned.push_back({-p.x, -p.y});
            instance.outlines.push_back(makeOutline(turned));
            item.options.push_back({.turn = Turn::Deg180, .outline = int(instance.outlines.size()) - 1});
        }
        if (lattice && chance(3))
            for (Option &o : item.options)
                if (const auto places = placesInGroup(instance, o, Vector{}))
                    o.places = *places; // centred on the motif
        const std::size_t options = item.options.size();
        for (int s = 1; s < sheets; ++s)
            for (std::size_t o = 0; o < options; ++o) {
                item.options.push_back(item.options[o]);
                item.options.back().sheet = s;
            }
    }
    if (chance(2)) {
        instance.groups.push_back({{0, 1}});
        instance.items[0].group = instance.items[1].group = 0;
    }
    if (chance(3)) instance.fixed.push_back({0, 0, {size(0, 200'000), size(0, 200'000)}});
    return instance;
}

} // namespace

TEST_CASE("two wedges make a rectangle", "[polygon search]") {
    Instance instance;
    instance.sheets.push_back(bolt(20_in));
    add(instance, {{0_in, 0_in}, {12_in, 0_in}, {8_in, 10_in}, {0_in, 10_in}});
    add(instance, {{4_in, 0_in}, {12_in, 0_in}, {12_in, 10_in}, {0_in, 10_in}});
    const Outcome out = searchPolygons(instance, steps(2'000), 10_in);
    REQUIRE(out.kind == Outcome::Kind::Fits);
    CHECK(out.length == 10_in);
    CHECK(holds(instance, out.placements));
}

TEST_CASE("whatever the search lays is right, and the same again from the same seed", "[polygon search]") {
    rc::prop("on bolts and remnants, with everything a job can ask", [] {
        const Instance instance = anything();
        const Outcome out = searchPolygons(instance, steps(400));
        if (out.kind == Outcome::Kind::Fits) RC_ASSERT(holds(instance, out.placements));
        if (out.kind == Outcome::Kind::Fits && instance.sheets[0].open)
            RC_ASSERT(out.length == lengthUsed(instance, out.placements, 0));
        RC_CLASSIFY(out.kind == Outcome::Kind::Fits, "fits");
        Limits again = steps(400);
        again.threads = 2;
        const Outcome same = searchPolygons(instance, again);
        RC_ASSERT(same.kind == out.kind);
        RC_ASSERT(same.placements == out.placements);
        RC_ASSERT(same.steps == out.steps);
    });
}

TEST_CASE("a layout to start from is never made worse", "[polygon search]") {
    Instance instance;
    instance.sheets.push_back(bolt(54_in));
    for (int i = 0; i < 12; ++i)
        add(instance, {{0_in, 0_in}, {17_in, 0_in}, {Length::ticks(100'000 + 1'000 * i), 11_in}, {2_in, 11_in}});
    const Outcome first = searchPolygons(instance, steps(1'000));
    REQUIRE(first.kind == Outcome::Kind::Fits);
    Limits limits = steps(10);
    limits.seed = 9;
    limits.start = first.placements;
    const Outcome second = searchPolygons(instance, limits);
    REQUIRE(second.kind == Outcome::Kind::Fits);
    CHECK(second.length <= first.length);
}

TEST_CASE("an item wider than the cloth is proved not to fit", "[polygon search]") {
    Instance instance;
    instance.sheets.push_back(bolt(54_in));
    add(instance, {{0_in, 0_in}, {55_in, 0_in}, {30_in, 10_in}});
    const Outcome out = searchPolygons(instance, steps(10));
    CHECK(out.kind == Outcome::Kind::CannotFit);
    CHECK(out.proved);
}

TEST_CASE("a search that is told to stop does", "[polygon search]") {
    Instance instance;
    instance.sheets.push_back(bolt(54_in));
    for (int i = 0; i < 5; ++i) add(instance, {{0_in, 0_in}, {30_in, 0_in}, {10_in, 10_in}});
    Limits limits;
    limits.stop = [] { return true; };
    CHECK(searchPolygons(instance, limits).kind == Outcome::Kind::Fits);
}
