// What planning shows of itself while it goes on.

#include "core/check/check.h"
#include "core/figures/figures.h"
#include "core/planner/plan.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

#include <string>
#include <vector>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

/// Thirty parts of sizes that leave waste however they are laid, so that a search has something to better.
std::vector<Panel> thirtyParts() {
    std::vector<Panel> panels;
    for (int i = 0; i < 30; ++i)
        panels.push_back(rectangle("Part " + std::to_string(i + 1), 5_in + Length::ticks(8128 * (i * 7 % 19) / 2),
                                   6_in + Length::ticks(8128 * (i * 11 % 23) / 2)));
    return panels;
}

struct Watched {
    Plan plan;
    std::vector<Layout> shown;
};

Watched watch(const Job &job, const Layout *from = nullptr) {
    Watched w;
    PlanOptions o;
    o.seconds.reset();
    o.steps = 4000;
    o.from = from;
    o.report = [&w](const PlanProgress &p) {
        if (p.better) w.shown.push_back(*p.better);
    };
    w.plan = plan(job, o);
    return w;
}

void checkShown(const Job &job, const Watched &w, std::size_t cuts) {
    REQUIRE(w.plan.kind == planner::Outcome::Kind::Fits);
    REQUIRE(!w.shown.empty());
    Length before = Length::limit();
    for (const Layout &layout : w.shown) {
        CHECK(layout.cuts.size() == cuts);
        CHECK(check(job, layout).empty());
        const Length length = layout.cloths.at(0).length.value_or(Length{});
        CHECK(length < before);
        before = length;
    }
    CHECK(w.plan.layout.cloths.at(0).length.value_or(Length{}) <= before);
}

} // namespace

TEST_CASE("whoever waits for a plan is shown better and better layouts, all of them right", "[plan]") {
    const Job job = jobOf(bolt(54_in), thirtyParts());
    checkShown(job, watch(job), 30);
}

TEST_CASE("so with slanted parts", "[plan]") {
    std::vector<Panel> panels;
    for (int i = 0; i < 9; ++i) {
        Panel p = rectangle("Slanted " + std::to_string(i + 1), 12_in + Length::ticks(8128 * i), 15_in);
        p.shape = Trapezoid{12_in + Length::ticks(8128 * i), 8_in + Length::ticks(4064 * i), 15_in, {}};
        panels.push_back(p);
    }
    const Job job = jobOf(bolt(54_in), panels);
    checkShown(job, watch(job), 9);
}

TEST_CASE("so with slanted parts that go head to tail", "[plan]") {
    Panel wedge = rectangle("Wedge", 14_in, 18_in, 12);
    wedge.shape = Trapezoid{14_in, 9_in, 18_in, {}};
    Cloth cloth = bolt(54_in);
    cloth.way = Way::Two;
    const Job job = jobOf(cloth, {wedge});
    checkShown(job, watch(job), 12);
}

TEST_CASE("so where the last of the cloths has nothing left to plan, or nothing to gain", "[plan]") {
    std::vector<Panel> panels = thirtyParts();
    Panel other = rectangle("Deck", 20_in, 20_in, 2);
    other.cloth = "lining";
    panels.push_back(other);
    Job job = jobOf(bolt(54_in), panels);
    job.cloths.push_back(bolt(54_in, "lining"));
    Layout before = watch(job).plan.layout;
    REQUIRE(before.cuts.size() == 32);
    for (const CutState deck : {CutState::Locked, CutState::Planned}) {
        // The first cloth laid badly: every part above the one before it.
        Length y = 0_in;
        for (Cut &cut : before.cuts) {
            if (cut.panel == "Deck") {
                cut.state = deck;
                continue;
            }
            cut.turn = Turn::Deg0;
            cut.x = 0_in;
            cut.y = y;
            y += std::get<Rectangle>(job.panel(cut.panel)->shape).up;
        }
        Layout from = withFigures(job, before);
        REQUIRE(check(job, from).empty());
        const Watched w = watch(job, &from);
        REQUIRE(!w.shown.empty());
        for (const Layout &layout : w.shown) {
            CHECK(layout.cuts.size() == 32);
            CHECK(check(job, layout).empty());
            CHECK(*layout.cloths.at(0).length < *from.cloths.at(0).length);
        }
    }
}

TEST_CASE("so where a remnant has to hold everything", "[plan]") {
    const Job job = jobOf(remnantCloth({{0_in, 0_in}, {54_in, 0_in}, {54_in, 200_in}, {0_in, 200_in}}), thirtyParts());
    const Watched w = watch(job);
    REQUIRE(w.plan.kind == planner::Outcome::Kind::Fits);
    REQUIRE(w.shown.size() == 1); // what fits, fits: nothing is better
    CHECK(w.shown[0].cuts.size() == 30);
    CHECK(check(job, w.shown[0]).empty());
}

TEST_CASE("a layout to start from is no news", "[plan]") {
    const Job job = jobOf(bolt(54_in), {rectangle("Seat", 20_in, 23_in, 4)});
    const Plan best = watch(job).plan;
    REQUIRE(best.proved);
    CHECK(watch(job, &best.layout).shown.empty());
}
