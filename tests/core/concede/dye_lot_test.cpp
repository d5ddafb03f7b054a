#include "core/check/check.h"
#include "core/concede/concede.h"
#include "core/planner/plan.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;
using Fits = planner::Outcome::Kind;

namespace {

/// Remnants of these dye lots, each large enough for one seat.
Cloth remnantsOf(const std::vector<std::string> &lots) {
    Cloth cloth;
    cloth.id = "body";
    cloth.pattern = stripes(9_in, 4.5_in);
    for (std::size_t i = 0; i < lots.size(); ++i) {
        Remnant r;
        r.id = std::string(1, char('A' + i));
        r.outline = ringOf(ClothBox{{}, {45_in, 25_in}});
        r.lot = lots[i];
        cloth.remnants.push_back(r);
    }
    return cloth;
}

Plan planned(const Cloth &cloth, const Panel &panel) {
    PlanOptions o;
    o.seconds.reset();
    o.steps = 2000;
    o.threads = 1;
    const Job job = jobOf(cloth, {panel});
    Plan p = plan(job, o);
    if (p.kind == Fits::Fits) CHECK(check(job, p.layout).empty());
    return p;
}

std::vector<std::string> remnantsUsed(const Plan &plan) {
    std::vector<std::string> used;
    for (const Cut &cut : plan.layout.cuts) used.push_back(cut.on.value_or(""));
    std::sort(used.begin(), used.end());
    return used;
}

Panel alikeSeats() {
    Panel seat = rectangle("Seat", 30_in, 20_in, 2);
    seat.alike = true;
    return seat;
}

Panel armPair() {
    Panel arm = rectangle("Arm", 30_in, 20_in, 2);
    arm.mirror = true;
    return arm;
}

/// An inside back whose stripes run on into the seat.
Job flowing(const Cloth &cloth) {
    Job job = jobOf(cloth, {rectangle("Inside back", 30_in, 20_in), rectangle("Seat", 30_in, 20_in)});
    Flow flow;
    flow.from.panel = "Inside back";
    flow.from.edge = Bottom;
    flow.to.panel = "Seat";
    flow.to.edge = Top;
    job.flows.push_back(flow);
    return job;
}

PlanOptions steps() {
    PlanOptions o;
    o.seconds.reset();
    o.steps = 2000;
    o.threads = 1;
    return o;
}

} // namespace

TEST_CASE("parts that flow joins are cut from one dye lot, by the planner", "[lot]") {
    // Each remnant takes one part only, so that inside back and seat need two remnants of one lot.
    const Job one = flowing(remnantsOf({"7731", "7734", "7731"}));
    const Plan p = plan(one, steps());
    REQUIRE(p.kind == Fits::Fits);
    CHECK(check(one, p.layout).empty());
    CHECK(remnantsUsed(p) == std::vector<std::string>{"A", "C"});
    CHECK(plan(flowing(remnantsOf({"7731", "7734"})), steps()).kind != Fits::Fits);
    // What is in the way is the flow alone: without it the same parts and cloth do.
    Job apart = flowing(remnantsOf({"7731", "7734"}));
    apart.flows.clear();
    CHECK(plan(apart, steps()).kind == Fits::Fits);
}

TEST_CASE("parts that flow joins are cut from one dye lot, in every way that gives something up", "[lot]") {
    // Two remnants of one lot are an inch too short for the parts as asked; the third, of another lot, is not.
    Cloth cloth = remnantsOf({"7731", "7734", "7731"});
    for (const std::size_t i : {0, 2}) cloth.remnants[i].outline = ringOf(ClothBox{{}, {45_in, 20_in}});
    Job job = flowing(cloth);
    for (Panel &panel : job.panels) {
        panel.allow = EdgeLengths(4, 0.5_in);
        panel.allowMin = EdgeLengths(4, Length{});
    }
    ConcedeOptions o;
    o.plan = steps();
    const Conceding c = concede(job, o);
    REQUIRE(c.kind == Fits::Fits);
    CHECK_FALSE(c.nothingNeeded);
    REQUIRE_FALSE(c.ways.empty());
    for (const ConcedeWay &way : c.ways) {
        CHECK(check(job, way.layout).empty());
        for (const Cut &cut : way.layout.cuts) CHECK(cut.on != std::optional<std::string>("B"));
    }
}

TEST_CASE("cushions that are alike are cut from one dye lot", "[lot]") {
    const Plan p = planned(remnantsOf({"7731", "7734", "7731"}), alikeSeats());
    REQUIRE(p.kind == Fits::Fits);
    CHECK(remnantsUsed(p) == std::vector<std::string>{"A", "C"});
    CHECK(planned(remnantsOf({"7731", "7734"}), alikeSeats()).kind != Fits::Fits);
}

TEST_CASE("a mirrored pair is cut from one dye lot", "[lot]") {
    const Plan p = planned(remnantsOf({"7731", "7734", "7731"}), armPair());
    REQUIRE(p.kind == Fits::Fits);
    CHECK(remnantsUsed(p) == std::vector<std::string>{"A", "C"});
    CHECK(planned(remnantsOf({"7731", "7734"}), armPair()).kind != Fits::Fits);
}

TEST_CASE("many pairs over several lots are laid where the lots have room for whole pairs", "[lot]") {
    // Each remnant takes one arm, so a pair needs two of one lot; six pairs over three lots are 729 choices by name.
    const auto pairsOf = [](int pairs) {
        Panel arm = armPair();
        arm.count = pairs * 2;
        return arm;
    };
    const std::vector<std::string> even{"1", "1", "1", "1", "2", "2", "2", "2", "3", "3", "3", "3"};
    CHECK(planned(remnantsOf(even), pairsOf(6)).kind == Fits::Fits);
    // The lots are uneven here: five of the first and seven of the second hold two pairs and three, never six.
    const std::vector<std::string> odd{"1", "1", "1", "1", "1", "2", "2", "2", "2", "2", "2", "2"};
    CHECK(planned(remnantsOf(odd), pairsOf(5)).kind == Fits::Fits);
    CHECK(planned(remnantsOf(odd), pairsOf(6)).kind != Fits::Fits);
}

TEST_CASE("five different pairs over two lots find the one way that holds them", "[lot]") {
    // Thirty-two choices by name. Lot 1 has room for one large pair and one small, lot 2 for the rest.
    std::vector<Panel> parts;
    for (int i = 0; i < 5; ++i) {
        Panel p = rectangle("Arm " + std::to_string(i + 1), i < 2 ? 40_in : 20_in, 20_in, 2);
        p.mirror = true;
        parts.push_back(p);
    }
    Cloth cloth = remnantsOf({"1", "1", "1", "2", "2", "2", "2"});
    cloth.pattern.reset();
    PlanOptions o;
    o.seconds.reset();
    o.steps = 20000;
    o.threads = 1;
    const Job job = jobOf(cloth, parts);
    const Plan p = plan(job, o);
    REQUIRE(p.kind == Fits::Fits);
    CHECK(check(job, p.layout).empty());
}

TEST_CASE("parts that need not match may come from any lot", "[lot]") {
    CHECK(planned(remnantsOf({"7731", "7734"}), rectangle("Deck", 30_in, 20_in, 2)).kind == Fits::Fits);
}
