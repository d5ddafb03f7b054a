#include "core/figures/figures.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

TEST_CASE("length is the greatest y of any cut, waste what lies between and beside", "[figures]") {
    Cloth cloth = bolt(54_in);
    cloth.selvage = 2_in;
    const Job job = jobOf(cloth, {rectangle("Seat", 25_in, 20_in, 2)});
    const Layout layout = layoutOf({cutAt("Seat", 2_in, 0_in), cutAt("Seat", 27_in, 5_in, Turn::Deg0, 2)});
    const auto f = figuresOf(job, layout);
    REQUIRE(f.size() == 1);
    CHECK(f[0].length == 25_in);
    CHECK(f[0].laid == 2);
    CHECK(f[0].waste() == Approx(1 - 2.0 * 25 * 20 / (25 * 50)));
}

TEST_CASE("a changed layout keeps a bound only while it is one", "[figures]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Seat", 25_in, 20_in)});
    Layout layout = layoutOf({cutAt("Seat", 0_in, 4_in)});
    layout.cloths.push_back({"body", 20_in, 20_in, true, {}});
    const ClothUse use = withFigures(job, layout).cloths.at(0);
    CHECK(use.length == 24_in);
    CHECK(use.bound == 20_in);
    CHECK_FALSE(use.proved);
}

TEST_CASE("the largest offcut is the largest upright rectangle that is left", "[figures][offcut]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Seat", 30_in, 20_in), rectangle("Border", 54_in, 10_in)});
    const auto left =
        largestOffcut(job, layoutOf({cutAt("Seat", 0_in, 0_in), cutAt("Border", 0_in, 20_in)}), "body", {});
    REQUIRE(left);
    CHECK(*left == ClothBox{{30_in, 0_in}, {54_in, 20_in}});
}

TEST_CASE("gaps and flaws are kept off an offcut, and less than six inches is none", "[figures][offcut]") {
    Cloth cloth = bolt(54_in);
    cloth.bolt->flaws.push_back({{{40_in, 18_in}, {41_in, 18_in}, {41_in, 19_in}, {40_in, 19_in}}, "", {}});
    Job job = jobOf(cloth, {rectangle("Seat", 30_in, 20_in)}, 0.25_in);
    const Layout layout = layoutOf({cutAt("Seat", 0_in, 0_in)});
    CHECK(largestOffcut(job, layout, "body", {}) == ClothBox{{30.25_in, 0_in}, {54_in, 18_in}});
    job.panels[0].shape = Rectangle{50_in, 20_in};
    CHECK_FALSE(largestOffcut(job, layout, "body", {}));
}

TEST_CASE("on a remnant with a corner cut out, the offcut lies inside it", "[figures][offcut]") {
    const Job job = jobOf(
        remnantCloth({{0_in, 0_in}, {40_in, 0_in}, {40_in, 20_in}, {20_in, 20_in}, {20_in, 40_in}, {0_in, 40_in}}),
        {rectangle("Seat", 20_in, 20_in)});
    Layout layout = layoutOf({cutAt("Seat", 0_in, 0_in)});
    layout.cuts[0].on = "A";
    const auto left = largestOffcut(job, layout, "body", "A");
    REQUIRE(left);
    CHECK(left->width() * left->height() == 20_in * 20_in);
}
