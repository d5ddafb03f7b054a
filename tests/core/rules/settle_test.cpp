#include "core/rules/settle.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {
std::vector<std::string> guidesOf(const Settled &s) {
    std::vector<std::string> texts;
    for (const Guide &g : s.guides) texts.push_back(g.text);
    return texts;
}
using Texts = std::vector<std::string>;
} // namespace

TEST_CASE("near an edge, a panel comes to rest at it", "[settle]") {
    Cloth cloth = bolt(54_in);
    cloth.selvage = 0.5_in;
    cloth.bolt->square = 1_in;
    const Job job = jobOf(cloth, {rectangle("Seat", 20_in, 22_in)});
    const Layout layout = layoutOf({cutAt("Seat", 0_in, 0_in)});
    const Settled s = settle(job, layout, 0, {0.75_in, 1.5_in}, 1_in);
    CHECK(s.right);
    CHECK(s.corner == ClothPoint{0.5_in, 1_in});
    CHECK(guidesOf(s) == Texts{"at the left selvage", "at the cut end"});
}

TEST_CASE("beyond reach it lies where the hand left it", "[settle]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Seat", 20_in, 22_in)});
    const Settled s = settle(job, layoutOf({cutAt("Seat", 0_in, 0_in)}), 0, {10_in, 12_in}, 1_in);
    CHECK(s.right);
    CHECK(s.corner == ClothPoint{10_in, 12_in});
    CHECK(s.guides.empty());
}

TEST_CASE("against a neighbour it keeps the gap, and lies level with it", "[settle]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Seat", 20_in, 22_in), rectangle("Arm", 10_in, 12_in)}, 0.25_in);
    const Layout layout = layoutOf({cutAt("Seat", 5_in, 7_in), cutAt("Arm", 0_in, 0_in)});
    const Settled s = settle(job, layout, 1, {24.875_in, 7.375_in}, 1_in);
    CHECK(s.right);
    CHECK(s.corner == ClothPoint{25.25_in, 7_in});
    CHECK(guidesOf(s) == Texts{"1/4 in from Seat", "level with Seat"});
}

TEST_CASE("a panel tied to a stripe goes from stripe to stripe, however far the hand", "[settle]") {
    Cloth cloth = bolt(54_in);
    cloth.pattern = stripes(6_in, 3_in);
    const Job job = jobOf(cloth, {centred(rectangle("Seat", 20_in, 22_in), Centre::Across)});
    const Settled s = settle(job, layoutOf({cutAt("Seat", 0_in, 0_in)}), 0, {7.5_in, 0.25_in}, 0.5_in);
    CHECK(s.right);
    CHECK(s.corner == ClothPoint{5_in, 0_in});
    CHECK(guidesOf(s) == Texts{"at the cut end", "centred on a stripe"});
}

TEST_CASE("with snapping held off, it stays in the hand and says what is broken", "[settle]") {
    Cloth cloth = bolt(54_in);
    cloth.pattern = stripes(6_in, 3_in);
    const Job job = jobOf(cloth, {centred(rectangle("Seat", 20_in, 22_in), Centre::Across)});
    const Settled s = settle(job, layoutOf({cutAt("Seat", 0_in, 0_in)}), 0, {7_in, 1_in}, 0_in);
    CHECK_FALSE(s.right);
    CHECK(s.corner == ClothPoint{7_in, 1_in});
    REQUIRE(s.broken.size() == 1);
    CHECK(s.broken[0].kind == Breach::Kind::Motif);
}

TEST_CASE("let go over another panel, it rests at the nearest place that is free", "[settle]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Seat", 20_in, 22_in), rectangle("Arm", 10_in, 12_in)});
    const Layout layout = layoutOf({cutAt("Seat", 0_in, 0_in), cutAt("Arm", 0_in, 0_in)});
    const Settled held = settle(job, layout, 1, {14_in, 5_in}, 1_in);
    CHECK_FALSE(held.right);
    const Settled s = rest(job, layout, 1, {14_in, 5_in}, 1_in);
    CHECK(s.right);
    CHECK(s.corner == ClothPoint{20_in, 5_in});
}

TEST_CASE("where nothing is free the answer says so", "[settle]") {
    const Job job = jobOf(remnantCloth({{0_in, 0_in}, {20_in, 0_in}, {20_in, 22_in}, {0_in, 22_in}}),
                          {rectangle("Seat", 20_in, 22_in), rectangle("Arm", 10_in, 12_in)});
    Layout layout = layoutOf({cutAt("Seat", 0_in, 0_in), cutAt("Arm", 0_in, 0_in)});
    for (Cut &c : layout.cuts) c.on = "A";
    const Settled s = rest(job, layout, 1, {3_in, 3_in}, 1_in);
    CHECK_FALSE(s.right);
    CHECK(s.corner == ClothPoint{3_in, 3_in});
}
