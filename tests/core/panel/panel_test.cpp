#include "core/geometry/distance.h"
#include "core/panel/panel.h"
#include "tests/core/geometry/geos.h"

#include <catch2/catch.hpp>
#include <rapidcheck.h>
#include <rapidcheck/catch.h>

#include <cmath>

using namespace boltwright;
using namespace boltwright::literals;

namespace {

Panel panelOf(Shape shape) {
    Panel p;
    p.shape = std::move(shape);
    return p;
}

} // namespace

TEST_CASE("a trapezoid's top edge is centred over its bottom, then shifted", "[panel]") {
    const Shape cushion = Trapezoid{.bottom = 24_in, .top = 21_in, .up = 17_in, .shift = 1_in};
    CHECK(measuredOutline(cushion) == PanelRing{{0_in, 0_in}, {24_in, 0_in}, {23.5_in, 17_in}, {2.5_in, 17_in}});
}

TEST_CASE("edges are called by their sides, a polygon's by number", "[panel]") {
    const Shape rectangle = Rectangle{10_in, 5_in}, polygon = PolygonShape{{{0_in, 0_in}, {9_in, 0_in}, {0_in, 9_in}}};
    CHECK(edgeName(rectangle, Right) == "right");
    CHECK(edgeNamed(rectangle, "left") == Left);
    CHECK_FALSE(edgeNamed(rectangle, "0"));
    CHECK(edgeCount(polygon) == 3);
    CHECK(edgeName(polygon, 2) == "2");
    CHECK(edgeNamed(polygon, "1") == 1);
    CHECK_FALSE(edgeNamed(polygon, "3"));
    CHECK_FALSE(edgeNamed(polygon, "01"));
}

TEST_CASE("a rectangle's cut outline adds each edge's allowance on its own side", "[panel]") {
    const PanelRing cut = cutOutline(Rectangle{24_in, 17_in}, {1.5_in, 0.5_in, 0.75_in, 0_in});
    CHECK(cut == PanelRing{{0_in, -1.5_in}, {24.5_in, -1.5_in}, {24.5_in, 17.75_in}, {0_in, 17.75_in}});
}

TEST_CASE("slanted edges are mitred: a 3-4-5 wedge, worked by hand", "[panel]") {
    // The long side of a 30 by 40 triangle moves out by 5: it meets the bottom 5·50/40 = 6.25 and the left 5·50/30
    // = 8.33 further on.
    const PanelRing cut = cutOutline(PolygonShape{{{0_mm, 0_mm}, {30_mm, 0_mm}, {0_mm, 40_mm}}}, {0_mm, 5_mm, 0_mm});
    CHECK(cut[1] == PanelPoint{36.25_mm, 0_mm});
    CHECK(cut[2] == PanelPoint{0_mm, Length::ticks(15467)}); // 48 1/3 mm = 15466.67 ticks
    // A half tick goes away from zero.
    const PanelRing halves =
        cutOutline(PolygonShape{{{0_mm, 0_mm}, {30_mm, 0_mm}, {0_mm, 40_mm}}}, {0_mm, Length::ticks(2), 0_mm});
    CHECK(halves[1] == PanelPoint{30_mm + Length::ticks(3), 0_mm}); // 2.5 ticks
}

TEST_CASE("a corner in the middle of a straight edge moves square to it", "[panel]") {
    const Shape shape = PolygonShape{{{0_mm, 0_mm}, {10_mm, 0_mm}, {30_mm, 0_mm}, {30_mm, 10_mm}, {0_mm, 10_mm}}};
    const PanelRing cut = cutOutline(shape, std::vector<Length>(5, 2_mm));
    CHECK(cut == PanelRing{{-2_mm, -2_mm}, {10_mm, -2_mm}, {32_mm, -2_mm}, {32_mm, 12_mm}, {-2_mm, 12_mm}});
}

TEST_CASE("allowances too large for a notch make the outline cross itself", "[panel]") {
    const Shape notched = PolygonShape{{{0_mm, 0_mm},
                                        {30_mm, 0_mm},
                                        {30_mm, 20_mm},
                                        {16_mm, 20_mm},
                                        {16_mm, 5_mm},
                                        {14_mm, 5_mm},
                                        {14_mm, 20_mm},
                                        {0_mm, 20_mm}}};
    CHECK(isSimple(cutOutline(notched, std::vector<Length>(8, Length::ticks(300)))));
    CHECK_FALSE(isSimple(cutOutline(notched, std::vector<Length>(8, 2_mm))));
}

TEST_CASE("the middle is between the middles of bottom and top, of a polygon that of its box", "[panel]") {
    CHECK(anchorOf(panelOf(Trapezoid{24_in, 20_in, 10_in, 4_in})) == PanelPoint{14_in, 5_in});
    CHECK(anchorOf(panelOf(PolygonShape{{{0_in, 0_in}, {9_in, 0_in}, {2_in, 8_in}}})) == PanelPoint{4.5_in, 4_in});
    Panel named = panelOf(Rectangle{10_in, 10_in});
    named.motif = MotifWish{.at = PanelPoint{1_in, 2_in}};
    CHECK(anchorOf(named) == PanelPoint{1_in, 2_in});
    CHECK(middleOfEdge(Rectangle{10_in, 6_in}, Left) == PanelPoint{0_in, 3_in});
    CHECK(middleOfEdge(Rectangle{Length::ticks(5), 6_in}, Top) == PanelPoint{Length::ticks(3), 6_in});
}

TEST_CASE("an edge without a least allowance keeps its full one", "[panel]") {
    Panel p = panelOf(Rectangle{10_in, 10_in});
    p.allow = {1.5_in, std::nullopt, 1_in, {}};
    p.allowMin = {0.5_in, {}, {}, {}};
    CHECK(preferredAllowances(p) == std::vector<Length>{1.5_in, 0_in, 1_in, 0_in});
    CHECK(p.leastAllowance(Bottom) == 0.5_in);
    CHECK(p.leastAllowance(Top) == 1_in);
    CHECK(panelOf(Rectangle{1_in, 1_in}).allowance(Left) == 0_in);
}

TEST_CASE("GEOS mitres a trapezoid alike when every edge has one allowance", "[panel]") {
    rc::prop("to the tick", [] {
        auto size = [] { return Length::ticks(*rc::gen::inRange(2'000, 400'000)); };
        const Length most = Length::ticks(300'000);
        const Shape shape = Trapezoid{size(), size(), size(), Length::ticks(*rc::gen::inRange(-9'000, 9'000))};
        const Length allowance = Length::ticks(*rc::gen::inRange(0, 20'000));
        const PanelRing cut = cutOutline(shape, std::vector<Length>(4, allowance));
        for (PanelPoint p : cut) RC_PRE(abs(p.x) < most * 10 && abs(p.y) < most * 10);
        const auto ours = geos::shape(cut),
                   theirs = geos::mitred(geos::shape(measuredOutline(shape)), double(allowance.ticks()));
        RC_ASSERT(geos::area(geos::buffered(geos::without(ours, theirs), -1)) == 0);
        RC_ASSERT(geos::area(geos::buffered(geos::without(theirs, ours), -1)) == 0);
    });
}
