#include "core/check/check.h"
#include "core/concede/concede.h"
#include "core/concede/given_in.h"
#include "tests/core/support/rounds.h"
#include "tests/core/support/tight_jobs.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace boltwright;
using namespace boltwright::test;
using Fits = planner::Outcome::Kind;

// tests/bench/concede_soak does the same for as many jobs as it is given.

namespace {

ConcedeOptions quick(std::vector<Concession::Kind> order) {
    ConcedeOptions o;
    o.plan.seconds.reset();
    o.plan.steps = 1500;
    o.plan.threads = 1;
    o.order = std::move(order);
    return o;
}

/// A search of the same steps finds a layout that gives up nothing but what `layout` does, less the one thing.
bool anotherDoesWithout(const Job &job, const Layout &layout, const GivenOne &one) {
    const planner::GivenUp given = allBut(job, layout, one);
    PlanOptions o = quick({}).plan;
    o.given = &given;
    const Plan p = plan(job, o);
    auto rest = givenIn(layout);
    std::erase(rest, one);
    const auto still = givenIn(p.layout);
    return p.kind == Fits::Fits && std::includes(rest.begin(), rest.end(), still.begin(), still.end());
}

} // namespace

TEST_CASE("what the order forbids is given up in no way, whatever the job, and every way is right", "[concede]") {
    int ways = 0;
    for (int number = 1; number <= rounds(50); ++number) {
        const Job job = tightJob(number);
        const auto order = someOrder(number);
        const Conceding answer = concede(job, quick(order));
        for (const ConcedeWay &way : answer.ways) {
            INFO("job " << number);
            ++ways;
            CHECK(check(job, way.layout).empty());
            for (const GivenOne &one : givenIn(way.layout))
                CHECK(std::find(order.begin(), order.end(), one.kind) != order.end());
        }
    }
    CHECK(ways >= rounds(20)); // or the jobs are too tight to say anything
}

TEST_CASE("nothing stands among the concessions that a second search of the same steps does without", "[concede]") {
    int searches = 0;
    for (int number = 1; number <= rounds(25); ++number) {
        const Job job = tightJob(number);
        const auto order = someOrder(number);
        const Conceding answer = concede(job, quick(order));
        if (answer.ways.empty() || answer.ways.front().kinds.empty()) continue;
        const ConcedeWay &best = answer.ways.front();
        INFO("job " << number);
        for (const GivenOne &one : givenIn(best.layout)) {
            ++searches;
            CHECK_FALSE(anotherDoesWithout(job, best.layout, one));
        }
        const auto last = std::find(order.begin(), order.end(), best.kinds.back());
        CHECK(concede(job, quick({order.begin(), last})).ways.empty());
    }
    CHECK(searches >= rounds(10));
}
