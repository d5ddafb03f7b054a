#include "core/edit/job_edit.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

/// A bolt with a seat and two cushions on it, laid.
Job laidJob() {
    Job job = jobOf(bolt(54_in), {rectangle("seat", 24_in, 22_in), rectangle("cushion", 20_in, 20_in, 2)});
    Layout layout = layoutOf({cutAt("seat", 0_in, 0_in), cutAt("cushion", 24_in, 0_in, Turn::Deg0, 1),
                              cutAt("cushion", 0_in, 22_in, Turn::Deg0, 2)});
    layout.cloths.push_back({"body", 42_in, 42_in, true, {}});
    job.layouts.push_back(layout);
    return job;
}

Flow join(FlowEnd from, FlowEnd to) { return {std::move(from), std::move(to), {}, {}}; }

} // namespace

TEST_CASE("a new job has a bolt as the trade sells it, and nothing wrong", "[edit]") {
    const Job inches = newJob(Unit::Inch);
    REQUIRE(inches.cloths.size() == 1);
    CHECK(inches.cloths[0].bolt->width == 54_in); // usual width of upholstery cloth: common practice, no source
    CHECK(faultsOfJob(inches).empty());
    const Job metric = newJob(Unit::Centimetre);
    CHECK(metric.cloths[0].bolt->width == 137_cm);
    CHECK(faultsOfJob(metric).empty());
}

TEST_CASE("a new panel takes an id and a mark that are free", "[edit]") {
    Job job = newJob(Unit::Inch);
    job.panels.push_back(newPanel(job));
    job.panels.push_back(newPanel(job));
    CHECK(job.panels[0].mark == "P1");
    CHECK(job.panels[1].mark == "P2");
    job.panels.erase(job.panels.begin());
    CHECK(newPanel(job).mark == "P1");
    job.cloths.push_back(newCloth(job));
    CHECK(job.cloths[0].id != job.cloths[1].id);
    CHECK(faultsOfJob(job).empty());
}

TEST_CASE("once more: the same panel under a mark of its own", "[edit]") {
    Job job = laidJob();
    job.panels[0].mark = "ST";
    const Panel again = copyOfPanel(job, job.panels[0]);
    CHECK(again.mark == "ST1");
    CHECK(again.id != "seat");
    CHECK(again.shape == job.panels[0].shape);
}

TEST_CASE("the least at edges that differ is not told as one, and one for all leaves edges without allowance alone",
          "[edit]") {
    Panel panel = rectangle("back", 20_in, 18_in);
    panel.allow = {3_in, 0.5_in, 1_in, Length{}}; // bottom, right, top, left
    CHECK(leastAtEdges(panel) == LeastAtEdges{std::nullopt, false});
    panel.allowMin = {2_in, std::nullopt, 0.75_in, std::nullopt};
    CHECK(leastAtEdges(panel) == LeastAtEdges{std::nullopt, true});
    Job job = jobOf(bolt(54_in), {withLeastAtEdges(panel, 0.75_in)});
    CHECK(job.panels[0].allowMin == EdgeLengths{0.75_in, std::nullopt, 0.75_in, std::nullopt});
    CHECK(faultsOfJob(job).empty());
    panel.allow[Right] = 3_in;
    CHECK(leastAtEdges(withLeastAtEdges(panel, 0.25_in)) == LeastAtEdges{0.25_in, false});
    CHECK(leastAtEdges(withLeastAtEdges(panel, std::nullopt)) == LeastAtEdges{std::nullopt, false});
}

TEST_CASE("a corner that is moved changes nothing of what is added at the edges", "[edit]") {
    Panel panel = rectangle("back", 20_in, 18_in);
    panel.allow = {3_in, 0.5_in, 1_in, 0.5_in};
    panel.allowMin = {2_in, std::nullopt, 0.5_in, std::nullopt};
    panel.may.stretcher[0] = 4_in;
    const PolygonShape four{{{0_in, 0_in}, {20_in, 0_in}, {19_in, 18_in}, {0_in, 18_in}}};
    const Panel moved = withShape(panel, four);
    CHECK(moved.shape == Shape{four});
    CHECK(moved.allow == panel.allow);
    CHECK(moved.allowMin == panel.allowMin);
    CHECK(moved.may.stretcher == panel.may.stretcher);
}

TEST_CASE("an edge that is still there after a change of shape keeps what is added there, a new one has the first's",
          "[edit]") {
    Panel panel = rectangle("back", 20_in, 18_in);
    panel.allow = {3_in, 0.5_in, 1_in, 2_in}; // bottom, right, top, left
    panel.allowMin = {2_in, std::nullopt, std::nullopt, 1_in};
    panel.may.stretcher[Left] = 0.75_in;
    panel.may.stretcher[Top] = 0.5_in;
    panel.pieces.most = 2;
    const Panel three = withShape(panel, PolygonShape{{{0_in, 0_in}, {20_in, 0_in}, {0_in, 18_in}}});
    CHECK(three.allow == EdgeLengths{3_in, 3_in, 2_in});
    CHECK(three.allowMin == EdgeLengths{2_in, std::nullopt, 1_in});
    CHECK(three.may.stretcher == std::map<int, Length>{{2, 0.75_in}});
    CHECK(three.pieces == Pieces{});
    // A corner cut off: five edges, of which the fourth is new.
    const Panel five =
        withShape(panel, PolygonShape{{{0_in, 0_in}, {20_in, 0_in}, {20_in, 18_in}, {4_in, 18_in}, {0_in, 14_in}}});
    CHECK(five.allow == EdgeLengths{3_in, 0.5_in, 1_in, 3_in, 2_in});
    CHECK(five.may.stretcher == std::map<int, Length>{{2, 0.5_in}, {4, 0.75_in}});
    CHECK(faultsOfJob(jobOf(bolt(54_in), {three})).empty());
    CHECK(faultsOfJob(jobOf(bolt(54_in), {five})).empty());
    CHECK(withShape(five, Rectangle{20_in, 18_in}).allow == panel.allow);
}

TEST_CASE("what is added, left and sewn on is set edge by edge", "[edit]") {
    Panel panel = rectangle("back", 20_in, 18_in);
    panel.shape = PolygonShape{{{0_in, 0_in}, {20_in, 0_in}, {10_in, 18_in}}};
    panel = withAllowanceAt(panel, 1, 2_in);
    panel = withLeastAt(panel, 1, 1.5_in);
    panel = withStripAt(panel, 1, 0.75_in);
    CHECK(panel.allow == EdgeLengths{std::nullopt, 2_in, std::nullopt});
    CHECK(panel.allowMin == EdgeLengths{std::nullopt, 1.5_in, std::nullopt});
    CHECK(panel.may.stretcher == std::map<int, Length>{{1, 0.75_in}});
    CHECK(faultsOfJob(jobOf(bolt(54_in), {panel})).empty());
    // Less added than was to be left: no more can be left than there is.
    panel = withAllowanceAt(panel, 1, 0.5_in);
    CHECK(panel.allowMin[1] == 0.5_in);
    CHECK(panel.may.stretcher[1] == 0.5_in);
    CHECK(faultsOfJob(jobOf(bolt(54_in), {panel})).empty());
    CHECK_FALSE(faultsOfJob(jobOf(bolt(54_in), {withLeastAt(panel, 1, 1_in)})).empty()); // more than is added
    panel = withStripAt(withLeastAt(panel, 1, std::nullopt), 1, std::nullopt);
    CHECK(panel.leastAllowance(1) == 0.5_in);
    CHECK(panel.may.stretcher.empty());
}

TEST_CASE("a panel taken out of the job is off the cloth, and its joins with it", "[edit]") {
    const Job before = laidJob();
    Job after = before;
    after.flows.push_back(join({"seat", Bottom, {}, {}}, {"cushion", Top, {}, {}}));
    after.panels.erase(after.panels.begin());
    after = withLayoutsFollowing(before, after);
    CHECK(after.layouts[0].cuts.size() == 2);
    CHECK(after.flows.empty());
    CHECK(after.layouts[0].cloths[0].length == 42_in);
    CHECK(faultsOfJob(after).empty());
}

TEST_CASE("one cushion in place of two: the second leaves the cloth, and so do its joins", "[edit]") {
    Job before = laidJob();
    before.flows.push_back(join({"cushion", Right, {}, 1}, {"cushion", Left, {}, 2}));
    before.flows.push_back(join({"seat", Top, {}, {}}, {"cushion", Bottom, {}, {}}));
    Job after = before;
    after.panels[1].count = 1;
    after = withLayoutsFollowing(before, after);
    CHECK(after.layouts[0].cuts.size() == 2);
    CHECK(after.layouts[0].cloths[0].length == 22_in);
    REQUIRE(after.flows.size() == 1);
    CHECK(after.flows[0].from.panel == "seat");
    CHECK(faultsOfJob(after).empty());
}

TEST_CASE("a join at a corner's edge goes with the edge, and one at an edge that is still there stays on it",
          "[edit]") {
    Job before = laidJob();
    before.panels[0].shape = PolygonShape{{{0_in, 0_in}, {24_in, 0_in}, {24_in, 20_in}, {12_in, 22_in}, {0_in, 20_in}}};
    before.panels[0].allow.clear();
    before.flows.push_back(join({"seat", 3, {}, {}}, {"cushion", Left, {}, {}}));  // slanted, up to the middle
    before.flows.push_back(join({"seat", 4, {}, {}}, {"cushion", Right, {}, {}})); // upright, at the left
    REQUIRE(faultsOfJob(before).empty());
    Job after = before;
    after.panels[0].shape = Rectangle{24_in, 22_in};
    after = withLayoutsFollowing(before, after);
    REQUIRE(after.flows.size() == 1);
    CHECK(after.flows[0].from == FlowEnd{"seat", Left, {}, {}});
    CHECK(faultsOfJob(after).empty());
}

TEST_CASE("what nothing could beat is forgotten once the job is another", "[edit]") {
    const Job before = laidJob();
    Job after = before;
    after.panels[0].shape = Rectangle{24_in, 24_in};
    const Layout layout = withLayoutsFollowing(before, after).layouts[0];
    CHECK(layout.cloths[0].bound == std::nullopt);
    CHECK_FALSE(layout.cloths[0].proved);
    CHECK(layout.cloths[0].length == 42_in); // the seat grew into the second cushion; the check says so, not this
}

TEST_CASE("cuts take new allowances, but for those that were trimmed", "[edit]") {
    Job before = laidJob();
    before.panels[1].allow.assign(4, 1_in);
    Layout &layout = before.layouts[0];
    for (Cut &cut : layout.cuts)
        if (cut.panel == "cushion") cut.allow.assign(4, 1_in);
    layout.cuts[2].allow[Top] = 0.5_in;
    layout.conceded.push_back({Concession::Kind::Trim, "cushion", 2, Top, 1_in, 0.5_in, {}});
    Job after = before;
    after.panels[1].allow.assign(4, 1.5_in);
    const Layout followed = withLayoutsFollowing(before, after).layouts[0];
    CHECK(followed.cuts[1].allow.empty()); // the panel's own
    CHECK(followed.cuts[2].allow[Top] == 0.5_in);
}

TEST_CASE("panels of a cloth that is gone want the first, and what lay on it is put aside", "[edit]") {
    Job before = laidJob();
    before.cloths.push_back(bolt(60_in, "border"));
    before.panels[1].cloth = "border";
    before.panels[0].may.otherCloth.id = "border";
    Job after = before;
    after.cloths.pop_back();
    after = withLayoutsFollowing(before, after);
    CHECK(after.panels[1].cloth == std::nullopt);
    CHECK(after.panels[0].may.otherCloth.id.empty());
    CHECK(faultsOfJob(after).empty());
}
