#include "core/edit/job_edit.h"
#include "core/edit/match_edit.h"
#include "core/files/job_file.h"
#include "core/planner/plan.h"
#include "tests/core/files/random_job.h"
#include "tests/core/support/jobs.h"
#include "tests/core/support/rounds.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

Panel named(Panel panel, std::string name, std::string mark = {}) {
    panel.name = std::move(name);
    panel.mark = std::move(mark);
    return panel;
}

/// A bolt with a 5 in repeat both ways, a back, a seat below it, a border below that, and two cushions.
Job chair() {
    Cloth cloth = bolt(54_in);
    cloth.name = "Trellis";
    cloth.pattern = motifs(5_in, 5_in);
    return jobOf(cloth, {named(rectangle("back", 24_in, 18_in), "Inside back", "IB"),
                         named(rectangle("seat", 24_in, 12_in), "Seat", "ST"),
                         named(rectangle("border", 24_in, 4_in), "Border", "B"),
                         named(rectangle("cushion", 11_in, 20_in, 2), "Cushion", "C")});
}

Flow match(FlowEnd from, FlowEnd to, Length lost = {}) { return {std::move(from), std::move(to), lost, {}}; }
Flow down(const std::string &from, const std::string &to, Length lost = {}) {
    return match({from, Bottom, {}, {}}, {to, Top, {}, {}}, lost);
}

Job with(Job job, const Flow &flow) {
    auto done = withMatch(std::move(job), flow);
    INFO((done ? "" : done.error().text));
    REQUIRE(done.has_value());
    return *done;
}

std::string refused(const Job &job, const Flow &flow) {
    const auto done = withMatch(job, flow);
    return done ? "taken" : done.error().text;
}

} // namespace

TEST_CASE("a match is told in plain words", "[match]") {
    Job job = chair();
    CHECK(matchInWords(job, down("back", "seat", 1.5_in)) ==
          "Inside back, bottom edge → Seat, top edge; 1 1/2 in lost in the join");
    CHECK(matchInWords(job, match({"back", Bottom, PanelPoint{6_in, 0_in}, {}}, {"cushion", Top, {}, 2})) ==
          "Inside back, bottom edge, 6 in across and 0 in up → Cushion (2 of 2), top edge");
    job.panels[1].shape = PolygonShape{{{0_in, 0_in}, {24_in, 0_in}, {12_in, 12_in}}};
    job.panels[1].allow.clear();
    CHECK(matchInWords(job, match({"back", Bottom, {}, {}}, {"seat", 2, {}, {}})) ==
          "Inside back, bottom edge → Seat, edge 3");
    job.panels[2].name = "Inside back"; // two of a name are told apart by their marks
    CHECK(matchInWords(job, down("back", "border")) == "Inside back (IB), bottom edge → Inside back (B), top edge");
}

TEST_CASE("a match is added, changed and taken out again", "[match]") {
    const Job one = with(chair(), down("back", "seat"));
    REQUIRE(one.flows == std::vector{down("back", "seat")});
    const auto changed = withMatchChanged(one, 0, down("back", "seat", 3_in));
    REQUIRE(changed.has_value());
    CHECK(changed->flows[0].lost == 3_in);
    CHECK(withoutMatch(*changed, 0) == chair());
    CHECK(withoutMatch(*changed, 7) == *changed);
}

TEST_CASE("a match that cannot be is refused in one line that says what would be right", "[match]") {
    Job job = chair();
    CHECK(refused(job, down("back", "lid")) == "Choose the two panels that the pattern runs on between.");
    CHECK(refused(job, match({"back", {}, {}, {}}, {"seat", Top, {}, {}})) ==
          "Inside back: choose an edge, or give a point of it.");
    CHECK(refused(job, match({"back", 6, {}, {}}, {"seat", Top, {}, {}})) == "Inside back has no edge 7.");
    CHECK(refused(job, match({"back", Bottom, {}, 2}, {"seat", Top, {}, {}})) == "There is only one of Inside back.");
    CHECK(refused(job, match({"cushion", Bottom, {}, 3}, {"seat", Top, {}, {}})) ==
          "There are 2 of Cushion: give one of them by its number.");
    CHECK(refused(job, down("back", "seat", Length{} - 1_in)) == "What is lost in the join is 0 or more.");
    CHECK(refused(job, match({"back", {}, PanelPoint{1_in, 0_in}, {}}, {"seat", Top, {}, {}}, 1_in)) ==
          "Inside back: choose the edge over which the pattern is lost.");
    CHECK(refused(job, down("back", "back")) ==
          "There is only one of Inside back, and the pattern can't run on from it to itself.");
    CHECK(refused(job, match({"cushion", Right, {}, 1}, {"cushion", Left, {}, {}})) ==
          "From Cushion to Cushion the pattern runs on between two of them: give both numbers.");
    CHECK(refused(job, match({"cushion", Right, {}, 1}, {"cushion", Left, {}, 2})) == "taken");
    job = with(job, down("back", "seat", 2_in));
    CHECK(refused(job, down("back", "seat")) ==
          "The pattern runs on there already: Inside back, bottom edge → Seat, top edge.");
    CHECK(refused(job, match({"seat", Top, {}, {}}, {"back", Bottom, {}, {}})) ==
          "The pattern runs on there already: Seat, top edge → Inside back, bottom edge.");
}

TEST_CASE("no pattern runs on over plain cloth, from cloth to cloth, or between panels run differently", "[match]") {
    Job job = chair();
    job.cloths.push_back(bolt(54_in, "plain"));
    job.panels[1].cloth = "plain";
    CHECK(refused(job, down("back", "seat")) == "Inside back is cut from Trellis and Seat from plain: no pattern runs "
                                                "on from one cloth to another.");
    job.panels[0].cloth = "plain";
    CHECK(refused(job, down("back", "seat")) ==
          "plain has no repeat, so there is no pattern that could run on. Give the cloth its repeat first.");
    job = chair();
    job.panels[2].run = Run::Railroad;
    CHECK(refused(job, down("seat", "border")) ==
          "Seat and Border are not run the same way, and where the pattern runs on they lie alike. Run one as the "
          "other.");
    job.panels[2].run = Run::Either;
    CHECK(refused(job, down("seat", "border")) == "taken");
    job.panels[2].run = Run::Railroad;
    job.panels[2].may.turn = true; // when cloth is short it may lie as the seat does
    CHECK(refused(job, down("seat", "border")) == "taken");
}

TEST_CASE("a ring of matches holds only where the pattern comes round to itself", "[match]") {
    // From the back's bottom edge straight to the border's top edge, and by way of the seat, which is 12 in deep: with
    // a repeat of 5 in the border would need two parts of it at once.
    Job job = with(with(chair(), down("back", "seat")), down("seat", "border"));
    CHECK(refused(job, down("back", "border")) ==
          "No place of the pattern suits all matches between Inside back, Seat and Border at once. Where one of them "
          "can be seen least, leave it out.");
    // 2 in less of it lost on the way round, and it comes out even.
    CHECK(refused(job, down("back", "border", 2_in)) == "taken");
    job.panels[1].shape = Rectangle{24_in, 15_in};
    CHECK(refused(job, down("back", "border")) == "taken");
    // Stripes up the roll do not care how deep the seat is.
    job.panels[1].shape = Rectangle{24_in, 12_in};
    job.cloths[0].pattern = stripes(5_in);
    CHECK(refused(job, down("back", "border")) == "taken");
    // The planner is of the same mind.
    job.cloths[0].pattern = motifs(5_in, 5_in);
    job.flows.push_back(down("back", "border"));
    PlanOptions options;
    options.steps = 10;
    options.threads = 1;
    const Plan plan = boltwright::plan(job, options);
    CHECK(plan.kind == planner::Outcome::Kind::CannotFit);
}

TEST_CASE("copies that are all alike cannot run on from each other by part of a repeat", "[match]") {
    Job job = chair();
    job.panels[3].alike = true; // 11 in wide each, side by side: a repeat of 5 in is off by 1 in
    CHECK(refused(job, match({"cushion", Right, {}, 1}, {"cushion", Left, {}, 2})) ==
          "No place of the pattern suits all matches of Cushion at once.");
    job.panels[3].shape = Rectangle{10_in, 20_in};
    CHECK(refused(job, match({"cushion", Right, {}, 1}, {"cushion", Left, {}, 2})) == "taken");
}

TEST_CASE("what a file brings can be put right step by step", "[match]") {
    Job job = chair();
    job.cloths.push_back(bolt(54_in, "plain"));
    job.panels[1].cloth = "plain";
    job.flows = {down("back", "seat"), down("back", "border")};
    const auto lost = withMatchChanged(job, 0, down("back", "seat", 1_in)); // from cloth to cloth it was before
    REQUIRE(lost.has_value());
    CHECK(lost->flows[0].lost == 1_in);
    CHECK_FALSE(withMatchChanged(job, 1, down("border", "seat")).has_value()); // a sound one may not become so
    job.panels[1].cloth.reset();
    job.flows = {down("back", "seat"), down("seat", "border"), down("back", "border")};
    CHECK(withMatchChanged(job, 2, down("back", "border", 1_in)).has_value());
}

TEST_CASE("a match to begin with is one that can be", "[match]") {
    Job job = chair();
    const auto first = newMatch(job, "");
    REQUIRE(first.has_value());
    CHECK(*first == down("back", "seat"));
    const auto ofSeat = newMatch(job, "seat");
    REQUIRE(ofSeat.has_value());
    CHECK(*ofSeat == down("back", "seat"));
    job = with(job, *ofSeat);
    CHECK(*newMatch(job, "seat") == down("seat", "border"));
    job.cloths[0].pattern.reset();
    REQUIRE_FALSE(newMatch(job, "").has_value());
    CHECK(newMatch(job, "").error().text ==
          "Trellis has no repeat, so there is no pattern that could run on. Give the cloth its repeat first.");
    job.panels.resize(1);
    CHECK(newMatch(job, "").error().text == "The pattern runs on from one panel to another: add two panels first.");
}

TEST_CASE("a match begins with the pair that names, widths and the selected panel make likeliest", "[match]") {
    // In the order in which they were typed, the last one selected: nothing runs on from a border behind.
    Job bench = chair();
    bench.panels = {named(rectangle("top", 50_in, 18_in), "Seat top", "T"),
                    named(rectangle("front", 50_in, 5_in), "Front border", "F"),
                    named(rectangle("side", 18_in, 5_in, 2), "Side border", "S"),
                    named(rectangle("behind", 50_in, 5_in), "Back border", "B")};
    bench.cloths[0].bolt->width = 60_in;
    CHECK(*newMatch(bench, "") == down("top", "front"));
    CHECK(*newMatch(bench, "top") == down("top", "front"));
    CHECK(*newMatch(bench, "front") == down("top", "front"));
    CHECK(newMatch(bench, "behind")->from.panel != "behind");
    Job job = chair();
    CHECK(*newMatch(job, "back") == down("back", "seat"));
    CHECK(*newMatch(job, "border") == down("seat", "border"));
    // Names that tell nothing: by width, in the order of the list.
    for (Panel &panel : job.panels) panel.name = panel.mark;
    CHECK(*newMatch(job, "border") == down("seat", "border"));
}

TEST_CASE("a panel chosen at one end that stood at the other changes places with it", "[match]") {
    const Job job = chair();
    const Flow begun = down("border", "seat");
    CHECK(withEndOn(job, begun, MatchSide::From, "seat") == down("seat", "border"));
    CHECK(withEndOn(job, down("back", "seat"), MatchSide::To, "back").from.panel == "seat");
    CHECK(withMatch(job, withEndOn(job, begun, MatchSide::From, "seat")).has_value());
}

TEST_CASE("a join told from below upwards is the same join", "[match]") {
    const Job job = chair();
    const Flow up = withEndOn(job, down("back", "border"), MatchSide::To, "seat");
    CHECK(up == down("back", "seat"));
    Flow told = down("border", "back", 1.25_in);
    told = withEndOn(job, told, MatchSide::To, "seat");
    CHECK(told == match({"border", Top, {}, {}}, {"seat", Bottom, {}, {}}, 1.25_in));
    // Planned either way, the border's pattern is as far from the seat's.
    const auto betweenThem = [](const Job &with) {
        PlanOptions options;
        options.steps = 200;
        const Plan planned = plan(with, options);
        REQUIRE(planned.layout.cuts.size() == 5);
        Vector by{};
        for (const Cut &cut : planned.layout.cuts) {
            if (cut.panel == "seat") by = by + Vector{cut.x, cut.y};
            if (cut.panel == "border") by = by - Vector{cut.x, cut.y + 4_in}; // its top edge
        }
        return std::pair(by.x.ticks() % (5_in).ticks(), by.y.ticks() % (5_in).ticks());
    };
    const auto positive = [](std::pair<std::int64_t, std::int64_t> at) {
        const auto step = (5_in).ticks();
        return std::pair((at.first + step) % step, (at.second + step) % step);
    };
    CHECK(positive(betweenThem(with(job, down("seat", "border", 1.25_in)))) == positive(betweenThem(with(job, told))));
}

TEST_CASE("an end that goes to another panel keeps its edge where that has one", "[match]") {
    Job job = chair();
    job.panels[2].shape = PolygonShape{{{0_in, 0_in}, {24_in, 0_in}, {12_in, 4_in}}};
    job.panels[2].allow.clear();
    const Flow begun = match({"back", Bottom, {}, {}}, {"cushion", Top, PanelPoint{1_in, 1_in}, 2});
    CHECK(withEndOn(job, begun, MatchSide::To, "seat").to == FlowEnd{"seat", Top, {}, {}});
    CHECK(withEndOn(job, begun, MatchSide::To, "border").to == FlowEnd{"border", 0, {}, {}});
    const Flow both =
        withEndOn(job, match({"cushion", Right, {}, {}}, {"seat", Left, {}, {}}), MatchSide::To, "cushion");
    CHECK(both == match({"cushion", Right, {}, 1}, {"cushion", Left, {}, 2}));
    CHECK(withMatch(job, both).has_value());
}

TEST_CASE("panels that cannot all lie on their motif and run on are doubted, never refused", "[match]") {
    Job job = chair();
    job.panels[0] = centred(job.panels[0], Centre::Both);
    job.panels[1] = centred(job.panels[1], Centre::Both);
    // Middles of a back of 18 and a seat of 12 in lie 15 in apart, which is three repeats.
    job = with(job, down("back", "seat"));
    CHECK(matchDoubts(job).empty());
    job.flows[0].lost = 2_in;
    CHECK(matchDoubts(job) ==
          std::vector<std::string>{"Inside back and Seat cannot all lie on their motif and run on from each other."});
    job.panels[1].may.uncentre = true;
    CHECK(matchDoubts(job).empty());
}

TEST_CASE("a panel whose outline changes keeps its matches where the edge is still there, and says which are gone",
          "[match]") {
    Job before = chair();
    before.panels[0].shape = PolygonShape{{{0_in, 0_in}, {24_in, 0_in}, {24_in, 16_in}, {12_in, 18_in}, {0_in, 16_in}}};
    before.panels[0].allow.clear();
    before.flows = {match({"back", 0, {}, {}}, {"seat", Top, {}, {}}, 1_in),
                    match({"back", 2, {}, {}}, {"border", Top, {}, {}}),
                    match({"border", Left, {}, {}}, {"back", 4, PanelPoint{0_in, 8_in}, {}})};
    REQUIRE(faultsOfJob(before).empty());
    Job after = before; // a corner cut off at the lower left: every edge is counted anew
    after.panels[0] = withShape(
        after.panels[0],
        PolygonShape{{{2_in, 0_in}, {24_in, 0_in}, {24_in, 18_in}, {0_in, 18_in}, {0_in, 2_in}, {1_in, 1_in}}});
    CHECK(matchesDropped(before, after) == std::vector<std::string>{"Inside back, edge 3 → Border, top edge"});
    after = withLayoutsFollowing(before, after);
    REQUIRE(after.flows.size() == 2);
    CHECK(after.flows[0] == match({"back", 0, {}, {}}, {"seat", Top, {}, {}}, 1_in));
    CHECK(after.flows[1] == match({"border", Left, {}, {}}, {"back", 3, PanelPoint{0_in, 8_in}, {}}));
    CHECK(faultsOfJob(after).empty());
    // A point of the panel is still there without any edge; what is lost over an edge is not.
    before = chair();
    before.panels[0].shape = PolygonShape{{{0_in, 0_in}, {24_in, 0_in}, {24_in, 16_in}, {12_in, 18_in}, {0_in, 16_in}}};
    before.panels[0].allow.clear();
    before.flows = {match({"back", 2, PanelPoint{12_in, 18_in}, {}}, {"seat", Top, {}, {}})};
    after = before;
    after.panels[0].shape = Rectangle{24_in, 18_in};
    REQUIRE(matchFollowing(before, after, before.flows[0]));
    CHECK(matchFollowing(before, after, before.flows[0])->from == FlowEnd{"back", {}, PanelPoint{12_in, 18_in}, {}});
    before.flows[0].lost = 1_in;
    CHECK_FALSE(matchFollowing(before, after, before.flows[0]));
}

TEST_CASE("whatever match is taken can be written and read again", "[match]") {
    int taken = 0, refusals = 0;
    for (unsigned seed = 1; seed <= unsigned(test::rounds(800)); ++seed) {
        RandomJob random(seed);
        Job job = random.make();
        if (job.panels.empty()) continue;
        for (Panel &panel : job.panels) panel.name = panel.mark = {}; // names of theirs have several lines
        for (Cloth &cloth : job.cloths) cloth.name = {};
        const auto end = [&] {
            const Panel &panel = job.panels[std::size_t(random.whole(0, int(job.panels.size()) - 1))];
            FlowEnd e{panel.id, {}, {}, {}};
            if (random.whole(0, 3) > 0) e.edge = random.whole(-1, 5);
            if (random.whole(0, 3) == 0) e.at = PanelPoint{Length::ticks(random.whole(-9, 90'000)), 1_in};
            if (random.whole(0, 3) == 0) e.copy = random.whole(0, 3);
            return e;
        };
        for (int i = 0; i < 20; ++i) {
            FlowEnd from = end(), to = end();
            const auto done = withMatch(job, match(from, to, Length::ticks(random.whole(-1, 3) * 4'000)));
            if (!done) {
                ++refusals;
                CHECK(done.error().text.find('\n') == std::string::npos);
                continue;
            }
            ++taken;
            job = *done;
            const auto again = readJob(writeJob(job));
            INFO((again ? "" : again.error().text));
            REQUIRE(again.has_value());
            CHECK(again->flows == job.flows);
        }
    }
    CHECK(taken > test::rounds(100));
    CHECK(refusals > test::rounds(1000));
}
