#include "core/paper/sheet_plan.h"
#include "planted.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;

namespace {

/// A bolt of plain cloth with one long strip laid on it.
Job stripJob(Length width, Length length) {
    Job job;
    Cloth cloth;
    cloth.id = "c";
    cloth.bolt = Bolt{.width = width, .length = length, .square = {}, .flaws = {}, .kept = {}};
    job.cloths.push_back(cloth);
    job.panels = {planted::rectangle("strip", "S", "Strip", 10_in, length, {})};
    job.layouts = {planted::inRows(job)};
    return job;
}

Result<SheetPlan> planFor(const Job &job, const SheetOptions &options) {
    const auto sheets = clothSheets(job, job.layouts.front());
    return planSheet(job, sheets, std::vector<std::vector<Length>>(sheets.size()), options);
}

} // namespace

TEST_CASE("a 54 in bolt goes sideways on letter paper at 1:10, and is refused at 1:8 with what would do", "[paper]") {
    const Job job = stripJob(54_in, 60_in);
    const auto plan = planFor(job, {.paper = Paper::Letter, .sideways = true, .scale = 10});
    REQUIRE(plan);
    CHECK(plan->pages.size() == 1);
    const auto refused = planFor(job, {.paper = Paper::Letter, .sideways = true, .scale = 8});
    REQUIRE_FALSE(refused);
    CHECK(refused.error().text == "at 1:8 the cloth is too large for Letter; 1:10 would do, or Tabloid paper");
}

TEST_CASE("stretches of a long bolt cover all of it, overlap, and meet at the same match", "[paper]") {
    for (Length length : {5_yd, 12_yd, 40_yd}) {
        const Job job = stripJob(54_in, length);
        for (Paper paper : allPapers()) {
            for (int scale : {10, 16, 20}) {
                const auto plan = planFor(job, {.paper = paper, .sideways = {}, .scale = scale});
                REQUIRE(plan);
                std::vector<SheetStrip> strips;
                for (const SheetPage &page : plan->pages)
                    strips.insert(strips.end(), page.strips.begin(), page.strips.end());
                CHECK(strips.front().from == Length{});
                CHECK(strips.back().to == length);
                for (std::size_t i = 0; i + 1 < strips.size(); ++i) {
                    CHECK(strips[i].matchAfter == strips[i + 1].matchBefore);
                    CHECK(strips[i].after == strips[i + 1].before);
                    CHECK(strips[i].to - strips[i + 1].from >= 11_mm * scale);
                    CHECK(strips[i].matchAfter > strips[i + 1].from);
                    CHECK(strips[i].matchAfter < strips[i].to);
                }
                for (const SheetStrip &s : strips) {
                    const double right = s.corner.x.toMillimetres() + (s.to - s.from).toMillimetres() / scale;
                    CHECK(right <= (plan->paper.width - paperMargin()).toMillimetres());
                }
            }
        }
    }
}

TEST_CASE("scale bars are lengths that a tape shows, and fit their room", "[paper]") {
    CHECK(scaleBar(Unit::Inch, 10, 50_mm) == 18_in);
    CHECK(scaleBar(Unit::Inch, 20, 50_mm) == 36_in);
    CHECK(scaleBar(Unit::Centimetre, 10, 50_mm) == 50_cm);
    CHECK(scaleBar(Unit::Millimetre, 20, 50_mm) == 100_cm);
}

TEST_CASE("papers have the sizes that their standards give", "[paper]") {
    // ISO 216: A4 210 x 297 mm, A3 297 x 420 mm. ANSI/ASME Y14.1 (from memory): A 8.5 x 11 in, B 11 x 17 in.
    CHECK(sizeOf(Paper::A4) == PaperSize{210_mm, 297_mm});
    CHECK(sizeOf(Paper::A3) == PaperSize{297_mm, 420_mm});
    CHECK(sizeOf(Paper::Letter) == PaperSize{8.5_in, 11_in});
    CHECK(sizeOf(Paper::Tabloid) == PaperSize{11_in, 17_in});
    CHECK(paperNamed("a4") == Paper::A4);
    CHECK(paperNamed("LEGAL") == Paper::Legal);
    CHECK(paperNamed("a") == std::nullopt);
}
