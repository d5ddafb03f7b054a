#include "core/edit/markings.h"
#include "core/files/job_file.h"
#include "core/rules/settle.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {
const SheetOf theBolt{"body", {}};
}

TEST_CASE("the tape reads a right triangle of 3, 4 and 5", "[markings]") {
    // Euclid, Elements I.47.
    const TapeReading reading = readTape({1_in, 2_in}, {4_in, 6_in});
    CHECK(reading.straight == 5_in);
    CHECK(reading.across == 3_in);
    CHECK(reading.along == 4_in);
    CHECK(readTape({4_in, 6_in}, {1_in, 2_in}).straight == 5_in);
    CHECK(readTape({1_in, 1_in}, {1_in, 1_in}).straight == Length{});
}

TEST_CASE("the tape comes to rest at corners before edges", "[markings]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Seat", 20_in, 10_in)});
    const Layout layout = layoutOf({cutAt("Seat", 5_in, 7_in)});
    const Mark corner = markNear(job, layout, theBolt, {5.25_in, 7.25_in}, 1_in);
    CHECK(corner.kind == Mark::Kind::Corner);
    CHECK(corner.at == ClothPoint{5_in, 7_in});
    CHECK(corner.text == "corner of Seat");
    const Mark edge = markNear(job, layout, theBolt, {12_in, 7.25_in}, 1_in);
    CHECK(edge.kind == Mark::Kind::Edge);
    CHECK(edge.at == ClothPoint{12_in, 7_in});
    const Mark bare = markNear(job, layout, theBolt, {40_in, 40_in}, 1_in);
    CHECK(bare.kind == Mark::Kind::Bare);
    CHECK(bare.at == ClothPoint{40_in, 40_in});
}

TEST_CASE("from one edge the tape goes straight to the next", "[markings]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Seat", 20_in, 10_in)});
    const Layout layout = layoutOf({cutAt("Seat", 5_in, 7_in)});
    const Mark edge = markNear(job, layout, theBolt, {0.25_in, 12.5_in}, 1_in, ClothPoint{5_in, 12_in});
    CHECK(edge.at == ClothPoint{0_in, 12_in});
    CHECK(edge.text == "left edge of the cloth");
}

TEST_CASE("keys take the tape from edge to edge", "[markings]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Seat", 20_in, 10_in)});
    const Layout layout = layoutOf({cutAt("Seat", 5_in, 7_in)});
    const auto first = nextMark(job, layout, theBolt, {0_in, 10_in}, Heading::TowardsRight);
    REQUIRE(first);
    CHECK(first->at == ClothPoint{5_in, 10_in});
    const auto second = nextMark(job, layout, theBolt, first->at, Heading::TowardsRight);
    REQUIRE(second);
    CHECK(second->at == ClothPoint{25_in, 10_in});
    CHECK_FALSE(nextMark(job, layout, theBolt, {54_in, 10_in}, Heading::TowardsRight));
}

TEST_CASE("chalk lines are drawn, moved and rubbed out, and panels come to rest at them", "[markings]") {
    Job job = jobOf(bolt(54_in), {rectangle("Seat", 20_in, 10_in)});
    job = withChalkLine(job, theBolt, {ChalkLine::Runs::Across, 30_in, {}});
    job = withChalkLine(job, theBolt, {ChalkLine::Runs::Along, 12_in, {}});
    const Layout layout = layoutOf({cutAt("Seat", 0_in, 0_in)});
    const Settled s = settle(job, layout, 0, {11.75_in, 30.25_in}, 0.5_in);
    CHECK(s.right);
    CHECK(s.corner == ClothPoint{12_in, 30_in});
    REQUIRE(s.guides.size() == 2);
    CHECK(s.guides[0].text == "at the chalk line");
    const Settled above = settle(job, layout, 0, {2.25_in, 19.75_in}, 0.5_in);
    CHECK(above.corner == ClothPoint{2_in, 20_in}); // centred on one, its top at the other
    job = withChalkLineMoved(job, theBolt, 0, 31_in);
    CHECK(markingsOf(job, theBolt).lines[0].at == 31_in);
    job = withoutChalkLine(job, theBolt, 0);
    REQUIRE(markingsOf(job, theBolt).lines.size() == 1);
    CHECK(markingsOf(job, theBolt).lines[0].runs == ChalkLine::Runs::Along);
}

TEST_CASE("a chalk line comes to rest at the corners of what lies there", "[markings]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Seat", 20_in, 10_in)});
    const Layout layout = layoutOf({cutAt("Seat", 5_in, 7_in)});
    CHECK(chalkPlace(job, layout, theBolt, ChalkLine::Runs::Across, 17.25_in, 1_in).at.y == 17_in);
    CHECK(chalkPlace(job, layout, theBolt, ChalkLine::Runs::Along, 26.75_in, 1_in).text == "middle of the cloth");
}

TEST_CASE("chalk lines and notes come back from the file, on bolts and on remnants", "[markings]") {
    Job job = jobOf(bolt(54_in), {rectangle("Seat", 20_in, 10_in)});
    job.cloths.push_back(remnantCloth({{0_in, 0_in}, {30_in, 0_in}, {30_in, 40_in}, {0_in, 40_in}}, "rest"));
    const SheetOf rest{"rest", "A"};
    job = withChalkLine(job, theBolt, {ChalkLine::Runs::Across, 30_in, {}});
    job = withNotePinned(job, theBolt, {3_in, 4_in}, "ask about this fold");
    job = withChalkLine(job, rest, {ChalkLine::Runs::Along, 12.5_in, {}});
    job = withNotePinned(job, rest, {1_in, 2_in}, "faded");
    const std::string text = writeJob(job);
    CHECK(text.find("\"chalk_lines\"") != std::string::npos);
    CHECK(text.find("\"pinned_notes\"") != std::string::npos);
    const auto back = readJob(text);
    REQUIRE(back);
    CHECK(back->cloths == job.cloths);
    CHECK(writeJob(*back) == text);
}

TEST_CASE("a note that says nothing is taken off", "[markings]") {
    Job job = jobOf(bolt(54_in), {});
    job = withNotePinned(job, theBolt, {3_in, 4_in}, "");
    CHECK(markingsOf(job, theBolt).notes.empty());
    job = withNotePinned(job, theBolt, {3_in, 4_in}, "fold");
    job = withNoteMoved(job, theBolt, 0, {5_in, 6_in});
    CHECK(markingsOf(job, theBolt).notes[0].at == ClothPoint{5_in, 6_in});
    job = withNoteSaying(job, theBolt, 0, "");
    CHECK(markingsOf(job, theBolt).notes.empty());
}
