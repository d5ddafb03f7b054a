#include "tests/core/check/workroom.h"

using namespace workroom;

namespace {

Job oneSeat() {
    Job job = emptyJob();
    job.panels = {rectangle("Seat", 20_in, 18_in)};
    return job;
}

Job seatAndBack(Length gap) {
    Job job = oneSeat();
    job.gap = gap;
    job.panels.push_back(rectangle("Back", 10_in, 18_in));
    return job;
}

Layout sideBySide(Length apart) { return layoutOf({cut("Seat", 0_in, 0_in), cut("Back", 20_in + apart, 0_in)}, 18_in); }

Flaw flawAt(Length x, Length y) {
    Flaw flaw;
    flaw.outline = {{x, y}, {x + 2_in, y}, {x + 2_in, y + 2_in}, {x, y + 2_in}};
    flaw.note = "pulled thread";
    return flaw;
}

} // namespace

TEST_CASE("cuts keep out of the selvages, give or take the tolerance", "[check]") {
    Job job = oneSeat();
    job.cloths[0].selvage = 0.5_in;
    const auto at = [&](Length x) { return kinds(job, layoutOf({cut("Seat", x, 0_in)}, 18_in)); };
    CHECK(at(0.5_in).empty());
    CHECK(at(0.5_in - 4 * tick).empty());
    CHECK(at(0.5_in - 5 * tick) == Kinds{Kind::Edge});
    CHECK(at(33.5_in + 4 * tick).empty());
    CHECK(at(33.5_in + 5 * tick) == Kinds{Kind::Edge});
    CHECK(texts(job, layoutOf({cut("Seat", 0.25_in, 0_in)}, 18_in)) ==
          std::vector<std::string>{"Seat reaches 1/4 in past the left selvage of Body."});
}

TEST_CASE("cuts start above the squared end and end with the cloth", "[check]") {
    Job job = oneSeat();
    job.cloths[0].bolt->square = 1_in;
    job.cloths[0].bolt->length = 30_in;
    const auto at = [&](Length y) { return kinds(job, layoutOf({cut("Seat", 0_in, y)}, y + 18_in)); };
    CHECK(at(1_in).empty());
    CHECK(at(1_in - hair) == Kinds{Kind::Edge});
    CHECK(at(12_in).empty());
    CHECK(at(12_in + hair) == Kinds{Kind::Edge});
}

TEST_CASE("cuts keep off a remnant's outline by its edge", "[check]") {
    Job job = remnantJob();
    job.panels = {rectangle("Seat", 20_in, 18_in)};
    job.cloths[0].edge = 0.5_in;
    const auto at = [&](Length x, Length y) { return kinds(job, layoutOf({onRemnant(cut("Seat", x, y))})); };
    CHECK(at(0.5_in, 0.5_in).empty());
    CHECK(at(0.5_in - 8 * tick, 0.5_in).empty());
    CHECK(at(0.5_in - 9 * tick, 0.5_in) == Kinds{Kind::Edge});
    CHECK(at(-0.5_in, 5_in) == Kinds{Kind::Edge});
    CHECK(at(50_in, 50_in) == Kinds{Kind::Edge});
}

TEST_CASE("a notch in a remnant is not cloth, whichever way its outline runs", "[check]") {
    // An L: the upper right quarter is gone.
    Job job = remnantJob();
    auto &outline = job.cloths[0].remnants[0].outline;
    outline = {{0_in, 0_in}, {40_in, 0_in}, {40_in, 15_in}, {20_in, 15_in}, {20_in, 30_in}, {0_in, 30_in}};
    if (GENERATE(false, true)) std::reverse(outline.begin(), outline.end());
    job.panels = {rectangle("Seat", 20_in, 18_in)};
    CHECK(right(job, layoutOf({onRemnant(cut("Seat", 0_in, 0_in))})));
    CHECK(right(job, layoutOf({onRemnant(cut("Seat", 4 * tick, 0_in))})));
    CHECK(kinds(job, layoutOf({onRemnant(cut("Seat", hair, 0_in))})) == Kinds{Kind::Edge});

    // Corners all on the cloth, the notch between them.
    outline = {{0_in, 0_in},   {40_in, 0_in},  {40_in, 30_in}, {25_in, 30_in},
               {20_in, 10_in}, {15_in, 30_in}, {0_in, 30_in}};
    CHECK(kinds(job, layoutOf({onRemnant(cut("Seat", 10_in, 5_in))})) == Kinds{Kind::Edge});
}

TEST_CASE("a panel in sight keeps off flaws, a hidden one need not", "[check]") {
    Job job = oneSeat();
    job.cloths[0].bolt->flaws = {flawAt(20_in, 4_in)};
    const auto at = [&](Length x) { return kinds(job, layoutOf({cut("Seat", x, 0_in)}, 18_in)); };
    CHECK(at(0_in).empty());
    CHECK(at(4 * tick).empty());
    CHECK(at(5 * tick) == Kinds{Kind::Flaw});
    CHECK(at(10_in) == Kinds{Kind::Flaw});
    CHECK(at(22_in).empty());
    CHECK(texts(job, layoutOf({cut("Seat", 10_in, 0_in)}, 18_in)) ==
          std::vector<std::string>{"Seat crosses a flaw (pulled thread) in Body."});
    job.panels[0].hidden = true;
    CHECK(at(10_in).empty());
}

TEST_CASE("a flaw as large as the cut itself is found", "[check]") {
    Job job = oneSeat();
    Flaw flaw;
    flaw.outline = {{0_in, 0_in}, {20_in, 0_in}, {20_in, 18_in}, {0_in, 18_in}};
    job.cloths[0].bolt->flaws = {flaw};
    CHECK(kinds(job, layoutOf({cut("Seat", 0_in, 0_in)}, 18_in)) == Kinds{Kind::Flaw});
}

TEST_CASE("the gap is kept between cuts, and exactly the gap is right", "[check]") {
    const Job job = seatAndBack(0.25_in);
    CHECK(right(job, sideBySide(0.25_in)));
    CHECK(right(job, sideBySide(0.25_in - 8 * tick)));
    CHECK(kinds(job, sideBySide(0.25_in - 9 * tick)) == Kinds{Kind::Overlap});
    CHECK(texts(job, sideBySide(0.125_in)) ==
          std::vector<std::string>{"Seat lies 1/8 in from Back, and the gap is 1/4 in."});
}

TEST_CASE("without a gap cuts may touch but not overlap", "[check]") {
    const Job job = seatAndBack(0_in);
    CHECK(right(job, sideBySide(0_in)));
    CHECK(right(job, sideBySide(-4 * tick)));
    CHECK(texts(job, sideBySide(-5 * tick)) == std::vector<std::string>{"Seat overlaps Back."});
    CHECK(kinds(job, sideBySide(-20_in)) == Kinds{Kind::Overlap});
}

TEST_CASE("the gap is kept corner to corner, as the crow flies", "[check]") {
    const Job job = seatAndBack(5_in);
    const auto at = [&](Length x, Length y) {
        return kinds(job, layoutOf({cut("Seat", 0_in, 0_in), cut("Back", 20_in + x, 18_in + y)}, 36_in + y));
    };
    CHECK(at(3_in, 4_in).empty());
    CHECK(at(3_in, 4_in - hair) == Kinds{Kind::Overlap});
}

TEST_CASE("cuts on different remnants do not disturb one another", "[check]") {
    Job job = remnantJob();
    Remnant b = job.cloths[0].remnants[0];
    b.id = "B";
    job.cloths[0].remnants.push_back(b);
    job.panels = {rectangle("Seat", 20_in, 18_in)};
    job.panels[0].count = 2;
    const auto on = [&](const char *second) {
        return kinds(job,
                     layoutOf({onRemnant(cut("Seat", 0_in, 0_in, 1)), onRemnant(cut("Seat", 0_in, 0_in, 2), second)}));
    };
    CHECK(on("B").empty());
    CHECK(on("A") == Kinds{Kind::Overlap});
}

TEST_CASE("the cut outline counts, not the measured one", "[check]") {
    Job job = seatAndBack(0_in);
    job.panels[0].allow = allRound(0.5_in);
    const auto at = [&](Length x) {
        return kinds(job, layoutOf({cut("Seat", 0_in, 0_in), cut("Back", x, 0_in)}, 19_in));
    };
    CHECK(at(21_in).empty());
    CHECK(at(21_in - hair) == Kinds{Kind::Overlap});
}

TEST_CASE("slanted sides nest", "[check]") {
    // Two trapezoids, one turned upside down, make a 34 in by 10 in strip.
    Job job = emptyJob();
    job.cloths[0].way = Way::Two;
    Panel wing = rectangle("Wing", 1_in, 1_in);
    wing.shape = Trapezoid{20_in, 14_in, 10_in, 0_in};
    wing.count = 2;
    job.panels = {wing};
    const auto at = [&](Length x) {
        return kinds(job, layoutOf({cut("Wing", 0_in, 0_in, 1), cut("Wing", x, 0_in, 2, Turn::Deg180)}, 10_in));
    };
    CHECK(at(17_in).empty());
    CHECK(at(17_in - hair) == Kinds{Kind::Overlap});
}

TEST_CASE("a small cut may lie in the hollow of a large one", "[check]") {
    Job job = emptyJob();
    Panel arch = rectangle("Arch", 1_in, 1_in);
    arch.shape = PolygonShape{{{0_in, 0_in},
                               {5_in, 0_in},
                               {5_in, 10_in},
                               {15_in, 10_in},
                               {15_in, 0_in},
                               {20_in, 0_in},
                               {20_in, 15_in},
                               {0_in, 15_in}}};
    job.panels = {arch, rectangle("Cap", 10_in, 10_in)};
    const auto at = [&](Length x, Length y) {
        return kinds(job, layoutOf({cut("Arch", 0_in, 0_in), cut("Cap", x, y)}, 15_in));
    };
    CHECK(at(5_in, 0_in).empty());
    CHECK(at(5_in, hair) == Kinds{Kind::Overlap});
    CHECK(at(5_in - hair, 0_in) == Kinds{Kind::Overlap});
}

TEST_CASE("on the bias a square reaches across by its diagonal", "[check]") {
    Job job = emptyJob();
    job.panels = {rectangle("Welt", 10_in, 10_in)};
    job.panels[0].run = Run::Bias;
    // 10 in · sqrt 2 = 14.1421 in
    CHECK(right(job, layoutOf({cut("Welt", 0_in, 0_in, 1, Turn::Deg45)}, 14.1421_in)));
    CHECK(kinds(job, layoutOf({cut("Welt", 39.9_in, 0_in, 1, Turn::Deg45)}, 14.1421_in)) == Kinds{Kind::Edge});
}
