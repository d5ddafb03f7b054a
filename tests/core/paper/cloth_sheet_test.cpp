#include "core/edit/markings.h"
#include "core/paper/cloth_sheet.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

TEST_CASE("notes are lettered through all sheets, with their place as a cut has it", "[paper]") {
    Job job = jobOf(remnantCloth({{5_in, 7_in}, {45_in, 7_in}, {45_in, 60_in}, {5_in, 60_in}}),
                    {rectangle("Seat", 12_in, 12_in, 2)});
    Remnant other = job.cloths[0].remnants[0];
    other.id = "B";
    job.cloths[0].remnants.push_back(other);
    const std::string cloth = job.cloths[0].id;
    job = withNotePinned(job, {cloth, "B"}, {9_in, 11_in}, "last");
    for (int i = 0; i < 27; ++i) job = withNotePinned(job, {cloth, "A"}, {6_in + 1_in * i, 10_in}, "note");
    Cut first = cutAt("Seat", 6_in, 8_in), second = cutAt("Seat", 6_in, 8_in);
    first.on = "A";
    second.on = "B";
    second.copy = 2;
    const auto sheets = clothSheets(job, layoutOf({first, second}));
    REQUIRE(sheets.size() == 2);
    REQUIRE(sheets[0].notes.size() == 27);
    CHECK(sheets[0].notes[0].letter == "a");
    CHECK(sheets[0].notes[25].letter == "z");
    CHECK(sheets[0].notes[26].letter == "aa");
    REQUIRE(sheets[1].notes.size() == 1);
    CHECK(sheets[1].notes[0].letter == "ab");
    CHECK(sheets[1].notes[0].text == "last");
    CHECK(sheets[1].notes[0].at == ClothPoint{9_in, 11_in});
    CHECK(sheets[1].notes[0].fromSelvage == 4_in); // from the remnant's own left edge
    CHECK(sheets[1].notes[0].fromEnd == 4_in);
}

TEST_CASE("a note beyond what is drawn is still told, a chalk line there is not drawn", "[paper]") {
    Job job = jobOf(bolt(54_in), {rectangle("Seat", 12_in, 12_in)});
    const SheetOf sheet{job.cloths[0].id, {}};
    job = withNotePinned(job, sheet, {3_in, 200_in}, "keep the rest");
    job = withChalkLine(job, sheet, {ChalkLine::Runs::Across, 200_in, {}});
    job = withChalkLine(job, sheet, {ChalkLine::Runs::Across, 5_in, {}});
    job = withChalkLine(job, sheet, {ChalkLine::Runs::Along, 27_in, {}});
    const auto sheets = clothSheets(job, layoutOf({cutAt("Seat", 1_in, 0_in)}));
    REQUIRE(sheets.size() == 1);
    REQUIRE(sheets[0].notes.size() == 1);
    CHECK(sheets[0].notes[0].fromEnd == 200_in);
    REQUIRE(sheets[0].chalk.size() == 2);
    CHECK(sheets[0].chalk[0].from == ClothPoint{0_in, 5_in});
    CHECK(sheets[0].chalk[0].to == ClothPoint{54_in, 5_in});
    CHECK(sheets[0].chalk[1].from == ClothPoint{27_in, 0_in});
    CHECK(sheets[0].chalk[1].to.x == 27_in);
}
