#include "core/edit/cloth_edit.h"
#include "core/edit/outline_edit.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

const ClothRing square{{5_in, 5_in}, {25_in, 5_in}, {25_in, 30_in}, {5_in, 30_in}};

Job onRemnant() { return jobOf(remnantCloth(ringOf(ClothBox{{}, {54_in, 40_in}})), {rectangle("Seat", 20_in, 20_in)}); }

} // namespace

TEST_CASE("a second remnant joins the first under a letter of its own, measured from nothing", "[cloth edit]") {
    const auto with = withRemnant(onRemnant(), "body", square);
    REQUIRE(with);
    const auto &[job, which] = *with;
    CHECK(which == OutlineOf{{"body", "B"}, {}});
    CHECK(*outlineOf(job, which) == ringOf(ClothBox{{}, {20_in, 25_in}}));
    CHECK(faultsOfJob(job).empty());
}

TEST_CASE("a bolt that nothing is laid on becomes the remnant", "[cloth edit]") {
    Cloth cloth = bolt(54_in);
    cloth.selvage = 0.5_in;
    const auto with = withRemnant(jobOf(cloth, {rectangle("Seat", 20_in, 20_in)}), "body", square);
    REQUIRE(with);
    CHECK(with->first.cloths.size() == 1);
    CHECK_FALSE(with->first.cloths[0].bolt);
    CHECK(with->first.cloths[0].remnants.size() == 1);
    CHECK(faultsOfJob(with->first).empty());
}

TEST_CASE("beside a bolt in use, a remnant is a cloth of its own with the same repeat", "[cloth edit]") {
    Cloth cloth = bolt(54_in);
    cloth.pattern = stripes(3_in);
    Job job = jobOf(cloth, {rectangle("Seat", 20_in, 20_in)});
    job.layouts.push_back({});
    job.layouts.back().cuts = {cutAt("Seat", 0_in, 0_in)};
    const auto with = withRemnant(job, "body", square);
    REQUIRE(with);
    REQUIRE(with->first.cloths.size() == 2);
    CHECK(with->first.cloths[0].bolt);
    CHECK(with->first.cloths[1].pattern == cloth.pattern);
    CHECK(faultsOfJob(with->first).empty());
}

TEST_CASE("flaws are marked on remnants and on bolts, changed and taken away", "[cloth edit]") {
    for (const Job &before : {onRemnant(), jobOf(bolt(54_in), {rectangle("Seat", 20_in, 20_in)})}) {
        const SheetOf sheet = before.cloths[0].bolt ? SheetOf{"body", {}} : SheetOf{"body", "A"};
        const auto with = withFlaw(before, sheet, ringOf(Spot{{10_in, 10_in}, 1_in}));
        REQUIRE(with);
        const auto &[job, which] = *with;
        CHECK(which.flaw == 0);
        CHECK(withFlawNote(job, which, "pulled thread").cloths != job.cloths);
        const auto moved = withOutline(job, which, square);
        REQUIRE(moved);
        CHECK(*outlineOf(*moved, which) == square);
        const auto gone = withoutOutline(job, which);
        REQUIRE(gone);
        CHECK(*gone == before);
    }
}

TEST_CASE("what is no outline changes nothing and is told why", "[cloth edit]") {
    const auto no = withOutline(onRemnant(), {{"body", "A"}, {}}, {{0_in, 0_in}, {1_in, 0_in}});
    REQUIRE_FALSE(no);
    CHECK(no.error().text == "an outline needs at least three corners");
}

TEST_CASE("the only remnant of a cloth stays, one of two may go", "[cloth edit]") {
    CHECK_FALSE(withoutOutline(onRemnant(), {{"body", "A"}, {}}));
    const auto two = withRemnant(onRemnant(), "body", square);
    REQUIRE(two);
    const auto one = withoutOutline(two->first, {{"body", "A"}, {}});
    REQUIRE(one);
    CHECK(one->cloths[0].remnants[0].id == "B");
}

TEST_CASE("each remnant has its own dye lot and motif position", "[cloth edit]") {
    auto two = withRemnant(onRemnant(), "body", square);
    REQUIRE(two);
    Job job = withLot(std::move(two->first), {"body", "B"}, "7731");
    job = withMotif(std::move(job), {"body", "B"}, ClothPoint{3_in, 4_in});
    CHECK(job.cloths[0].remnants[0].lot.empty());
    CHECK(job.cloths[0].remnants[1].lot == "7731");
    CHECK(job.cloths[0].remnants[1].motif == ClothPoint{3_in, 4_in});
    CHECK_FALSE(job.cloths[0].remnants[0].motif);
}
