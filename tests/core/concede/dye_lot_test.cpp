#include "core/check/check.h"
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

} // namespace

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

TEST_CASE("parts that need not match may come from any lot", "[lot]") {
    CHECK(planned(remnantsOf({"7731", "7734"}), rectangle("Deck", 30_in, 20_in, 2)).kind == Fits::Fits);
}
