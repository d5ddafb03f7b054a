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

namespace {

/// A bolt of 2 1/2 yd with half an inch of selvage, an inch lost to square it, a flaw, a chalk line and one seat on it.
Job onShortBolt() {
    Cloth cloth = bolt(54_in);
    cloth.selvage = 0.5_in;
    cloth.bolt->square = 1_in;
    cloth.bolt->length = 90_in;
    cloth.bolt->flaws = {{ringOf(ClothBox{{30_in, 40_in}, {31_in, 42_in}}), "slub", {}}};
    cloth.bolt->markings.lines = {{ChalkLine::Runs::Across, 45_in, {}}};
    cloth.pattern = motifs(9_in, 9_in, {4.5_in, 2_in});
    Job job = jobOf(cloth, {rectangle("Seat", 20_in, 20_in)});
    job.layouts = {layoutOf({cutAt("Seat", 3_in, 5_in)})};
    return job;
}

bool tells(const std::vector<std::string> &lines, const std::string &words) {
    for (const std::string &line : lines)
        if (line.find(words) != std::string::npos) return true;
    return false;
}

} // namespace

TEST_CASE("a bolt becomes a remnant of its own width and length, and is the same bolt again", "[cloth edit]") {
    const Job before = onShortBolt();
    const auto [job, told] = boltAsRemnant(before, "body", 90_in);
    CHECK(faultsOfJob(job).empty());
    const Cloth &cloth = job.cloths[0];
    REQUIRE(cloth.remnants.size() == 1);
    CHECK(cloth.remnants[0].outline == ringOf(ClothBox{{}, {54_in, 90_in}}));
    CHECK_FALSE(cloth.bolt);
    CHECK(cloth.selvage == 0_in);
    // Nothing may be cut where nothing could be before: along the selvages and from the lost end.
    REQUIRE(cloth.remnants[0].flaws.size() == 4);
    CHECK(cloth.remnants[0].flaws[0] == before.cloths[0].bolt->flaws[0]);
    CHECK(boxOf(cloth.remnants[0].flaws[1].outline) == ClothBox{{}, {0.5_in, 90_in}});
    CHECK(boxOf(cloth.remnants[0].flaws[2].outline) == ClothBox{{53.5_in, 0_in}, {54_in, 90_in}});
    CHECK(boxOf(cloth.remnants[0].flaws[3].outline) == ClothBox{{}, {54_in, 1_in}});
    CHECK(cloth.remnants[0].markings.lines.size() == 1);
    CHECK(tells(told, "54 in wide and 90 in long"));
    CHECK(tells(told, "selvages, 1/2 in wide, are marked as flaws"));
    CHECK(tells(told, "1 in lost to square the end"));
    // The seat lies on it as it lay on the bolt.
    CHECK(job.layouts[0].cuts[0].on == "A");
    CHECK(job.layouts[0].cuts[0].x == 3_in);
    const auto [again, saidAgain] = remnantAsBolt(job, "body");
    CHECK(again == before);
    CHECK(tells(saidAgain, "54 in wide and 90 in long, as remnant A was"));
    CHECK_FALSE(tells(saidAgain, "selvage"));
}

TEST_CASE("a remnant becomes a bolt as wide and long as it is, and what is lost by that is told", "[cloth edit]") {
    Cloth cloth = remnantCloth({{2_in, 3_in}, {42_in, 3_in}, {42_in, 33_in}, {12_in, 33_in}, {2_in, 23_in}});
    cloth.edge = 1_in;
    cloth.remnants[0].lot = "7";
    cloth.remnants[0].flaws = {{ringOf(ClothBox{{4_in, 5_in}, {6_in, 7_in}}), "hole", {}}};
    cloth.remnants.push_back(cloth.remnants[0]);
    cloth.remnants[1].id = "B";
    Job job = jobOf(cloth, {rectangle("Seat", 20_in, 20_in)});
    job.layouts = {layoutOf({cutAt("Seat", 15_in, 8_in)})};
    job.layouts[0].cuts[0].on = "A";
    const auto [now, told] = remnantAsBolt(job, "body");
    CHECK(faultsOfJob(now).empty());
    REQUIRE(now.cloths[0].bolt);
    CHECK(now.cloths[0].bolt->width == 40_in);
    CHECK(now.cloths[0].bolt->length == 30_in);
    // A bolt is measured from its left selvage and its cut end: all on it lies where it was on the cloth.
    CHECK(boxOf(now.cloths[0].bolt->flaws.at(0).outline) == ClothBox{{2_in, 2_in}, {4_in, 4_in}});
    CHECK(now.layouts[0].cuts.at(0).x == 13_in);
    CHECK(now.layouts[0].cuts.at(0).y == 5_in);
    CHECK_FALSE(now.layouts[0].cuts.at(0).on);
    for (const char *words :
         {"all four corners", "other remnant is gone", "selvage is 0", "kept from the edge", "dye lot was 7"})
        CHECK(tells(told, words));
}

TEST_CASE("a remnant is renamed with all that is cut from it, and no two have one name", "[cloth edit]") {
    Job job = withRemnant(onRemnant(), "body", square)->first;
    job.layouts = {layoutOf({cutAt("Seat", 1_in, 1_in)})};
    job.layouts[0].cuts[0].on = "B";
    const auto named = withRemnantNamed(job, {"body", "B"}, "window seat");
    REQUIRE(named);
    CHECK(named->cloths[0].remnants[1].id == "window seat");
    CHECK(named->layouts[0].cuts[0].on == "window seat");
    CHECK(named->cloths[0].remnants[0] == job.cloths[0].remnants[0]);
    CHECK_FALSE(withRemnantNamed(job, {"body", "B"}, "A"));
    CHECK_FALSE(withRemnantNamed(job, {"body", "B"}, ""));
}

TEST_CASE("another cloth is the main one, and every panel and cut stays with the cloth it is of", "[cloth edit]") {
    Job job = jobOf(bolt(54_in), {rectangle("Seat", 20_in, 20_in), rectangle("Back", 20_in, 20_in)});
    job.cloths.push_back(bolt(60_in, "lining"));
    job.panels[1].cloth = "lining";
    job.layouts = {layoutOf({cutAt("Seat", 1_in, 1_in), cutAt("Back", 1_in, 1_in)})};
    const Job now = withMainCloth(job, "lining");
    CHECK(now.cloths[0].id == "lining");
    CHECK(faultsOfJob(now).empty());
    CHECK(now.clothOf(now.panels[0]).id == "body");
    CHECK(now.clothOf(now.panels[1]).id == "lining");
    for (const Cut &cut : now.layouts[0].cuts) CHECK(sheetOf(now, cut) == sheetOf(job, cut));
    CHECK(withMainCloth(now, "body") == [&] {
        Job back = job;
        back.panels[1].cloth = "lining";
        return back;
    }());
}
