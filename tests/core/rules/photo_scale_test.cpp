#include "core/rules/photo_scale.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

/// 60 in across and 40 in up by the photograph.
Remnant photographed() {
    Remnant remnant;
    remnant.id = "A";
    remnant.outline = {{0_in, 0_in}, {60_in, 0_in}, {60_in, 40_in}, {0_in, 40_in}};
    remnant.flaws = {Flaw{{{10_in, 10_in}, {12_in, 10_in}, {12_in, 12_in}}, "", {}}};
    remnant.photo = RemnantPhoto{};
    remnant.photo->points = {{0, 0}, {1, 0}, {1, 1}, {0, 1}};
    remnant.photo->at = remnant.outline;
    return remnant;
}

TapedLength taped(ClothPoint from, ClothPoint to, Length length) { return {from, to, length, {}}; }

bool says(const Result<Remnant> &result, const std::string &what) {
    return !result && result.error().text.find(what) != std::string::npos;
}

} // namespace

TEST_CASE("two taped lengths put the photograph's scale right, across and up each on its own", "[photo]") {
    const auto right = scaledByTape(
        photographed(), {taped({0_in, 5_in}, {60_in, 5_in}, 60.6_in), taped({30_in, 0_in}, {30_in, 40_in}, 39.8_in)});
    REQUIRE(right);
    CHECK(right->outline[2] == ClothPoint{60.6_in, 39.8_in});
    CHECK(right->flaws[0].outline[1].x == 12.12_in);
    CHECK(right->photo->at == right->outline);
    CHECK(isScaleTaped(*right));
    CHECK_FALSE(isScaleTaped(photographed()));
}

TEST_CASE("slanted lengths do as well, and two diagonals settle one scale for both ways", "[photo]") {
    const auto slanted = scaledByTape(
        photographed(), {taped({0_in, 0_in}, {60_in, 10_in}, 60_in), taped({0_in, 0_in}, {10_in, 40_in}, 41.5_in)});
    REQUIRE(slanted);
    CHECK(isScaleTaped(*slanted));
    const auto diagonals = scaledByTape(
        photographed(), {taped({0_in, 0_in}, {40_in, 40_in}, 56_in), taped({0_in, 40_in}, {40_in, 0_in}, 56_in)});
    REQUIRE(diagonals);
    CHECK(diagonals->outline[1].x.toMillimetres() == Approx(60 * 25.4 * 56 / 56.5685).epsilon(1e-4));
    CHECK(isScaleTaped(*diagonals));
}

TEST_CASE("lengths that cannot tell the scale are refused with a word why", "[photo]") {
    const Remnant r = photographed();
    const auto along = taped({0_in, 5_in}, {60_in, 5_in}, 60_in), up = taped({5_in, 0_in}, {5_in, 40_in}, 40_in);
    CHECK(says(scaledByTape(r, {along, taped({0_in, 9_in}, {60_in, 9_in}, 60_in)}), "same way"));
    CHECK(says(scaledByTape(r, {along, taped({5_in, 0_in}, {5_in, 8_in}, 8_in)}), "too short"));
    CHECK(says(scaledByTape(r, {along, taped({5_in, 0_in}, {5_in, 40_in}, 44_in)}), "10 % off"));
    CHECK(says(scaledByTape(r, {along, taped({5_in, 0_in}, {5_in, 40_in}, Length{})}), "missing"));
    CHECK(scaledByTape(r, {along, up}));
}

TEST_CASE("nothing is cut by a photograph alone", "[photo]") {
    Cloth cloth = remnantCloth({});
    cloth.remnants = {photographed()};
    Job job = jobOf(cloth, {rectangle("Seat", 20_in, 20_in)});
    Cut cut = cutAt("Seat", 1_in, 1_in);
    cut.on = "A";
    const auto why = notTapedYet(job, layoutOf({cut}));
    REQUIRE(why);
    CHECK(why->text.find("remnant A was measured in a photograph only") == 0);
    CHECK_FALSE(notTapedYet(job, layoutOf({}))); // none of it is used
    job.cloths[0].remnants[0].photo->taped = {taped({0_in, 5_in}, {60_in, 5_in}, 60_in),
                                              taped({5_in, 0_in}, {5_in, 40_in}, 40_in)};
    CHECK_FALSE(notTapedYet(job, layoutOf({cut})));
    // A length that no longer agrees with the outline confirms nothing.
    job.cloths[0].remnants[0].photo->taped[1].taped = 41_in;
    CHECK(notTapedYet(job, layoutOf({cut})));
}
