#include "tests/core/check/workroom.h"

using namespace workroom;

namespace {

/// The turns in which a 10 in square with that run lies right on cloth of that way.
std::vector<int> turnsAllowed(std::optional<Run> run, Way way, PatternUp up = PatternUp::Roll) {
    Job job = emptyJob();
    job.cloths[0].way = way;
    job.cloths[0].up = up;
    job.panels = {rectangle("Seat", 10_in, 10_in)};
    job.panels[0].run = run;
    std::vector<int> allowed;
    for (const Turn turn : allTurns) {
        const Length length = isBias(turn) ? 14.1421_in : 10_in;
        if (right(job, layoutOf({cut("Seat", 0_in, 0_in, 1, turn)}, length))) allowed.push_back(degrees(turn));
    }
    return allowed;
}

} // namespace

TEST_CASE("nap and direction say how a panel may be turned", "[check]") {
    using Turns = std::vector<int>;
    CHECK(turnsAllowed(Run::UpRoll, Way::One) == Turns{0});
    CHECK(turnsAllowed(Run::UpRoll, Way::Two) == Turns{0, 180});
    CHECK(turnsAllowed(Run::DownRoll, Way::One) == Turns{180});
    CHECK(turnsAllowed(Run::DownRoll, Way::Two) == Turns{0, 180});
    CHECK(turnsAllowed(Run::Railroad, Way::One) == Turns{90});
    CHECK(turnsAllowed(Run::Railroad, Way::Two) == Turns{90, 270});
    CHECK(turnsAllowed(Run::Either, Way::One) == Turns{0, 90});
    CHECK(turnsAllowed(Run::Either, Way::Two) == Turns{0, 90, 180, 270});
    CHECK(turnsAllowed(Run::Bias, Way::One) == Turns{45, 315});
    CHECK(turnsAllowed(Run::Bias, Way::Two) == Turns{45, 135, 225, 315});
}

TEST_CASE("without a word a panel follows the pattern's top", "[check]") {
    CHECK(turnsAllowed({}, Way::One, PatternUp::Roll) == std::vector<int>{0});
    CHECK(turnsAllowed({}, Way::One, PatternUp::Across) == std::vector<int>{90});
}

TEST_CASE("a turn given up needs leave, a line, and a turn that 'either' allows", "[check]") {
    Job job = emptyJob();
    job.panels = {rectangle("Seat", 10_in, 10_in)};
    Layout layout = layoutOf({cut("Seat", 0_in, 0_in, 1, Turn::Deg90)}, 10_in);
    CHECK(kinds(job, layout) == Kinds{Kind::Turn});
    layout.conceded = {gaveUp(Concession::Kind::Turn, "Seat")};
    CHECK(kinds(job, layout) == Kinds{Kind::Turn});
    job.panels[0].may.turn = true;
    CHECK(right(job, layout));
    layout.cuts[0].turn = Turn::Deg180;
    CHECK(kinds(job, layout) == Kinds{Kind::Turn});
    job.cloths[0].way = Way::Two;
    CHECK(kinds(job, layout) == Kinds{Kind::Conceded}); // on two-way cloth 180 is nothing given up
}

TEST_CASE("every second copy of a mirrored panel is the mirror image", "[check]") {
    Job job = emptyJob();
    job.panels = {rectangle("Arm", 10_in, 10_in)};
    job.panels[0].mirror = true;
    job.panels[0].count = 2;
    Layout layout = layoutOf({cut("Arm", 0_in, 0_in, 1), cut("Arm", 10_in, 0_in, 2)}, 10_in);
    CHECK(texts(job, layout) == std::vector<std::string>{"Arm (2 of 2) must lie mirrored, and it does not."});
    layout.cuts[1].mirrored = true;
    CHECK(right(job, layout));
    layout.cuts[0].mirrored = true;
    CHECK(kinds(job, layout) == Kinds{Kind::Mirror});
}

TEST_CASE("a mirrored copy keeps its allowances on the edges of the same name", "[check]") {
    Job job = emptyJob();
    Panel arm = rectangle("Arm", 10_in, 10_in);
    arm.mirror = true;
    arm.count = 2;
    arm.allow = {0_in, 0_in, 0_in, 2_in}; // 2 in on the left
    arm.motif = MotifWish{};
    arm.motif->centre = Centre::Across;
    arm.motif->at = PanelPoint{0_in, 5_in}; // the left measured edge falls on a stripe
    job.panels = {arm};
    job.cloths[0].pattern = repeat(20_in, 0_in);
    // Copy 1 has its left edge 2 in from the start; mirrored, that edge is on the right, 10 in from the start.
    Layout layout = layoutOf({cut("Arm", 18_in, 0_in, 1), cut("Arm", 30_in, 0_in, 2)}, 10_in);
    layout.cuts[1].mirrored = true;
    CHECK(right(job, layout));
    layout.cuts[1].x += hair;
    CHECK(kinds(job, layout) == Kinds{Kind::Motif});
}
