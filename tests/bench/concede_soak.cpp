// Jobs on cloth that is a little short, hundreds of them: what must hold whatever is given up.
// usage: concede_soak [--jobs N] [--first N] [--steps N]

#include "core/check/check.h"
#include "core/concede/concede.h"
#include "core/concede/given_in.h"
#include "tests/core/support/tight_jobs.h"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <map>

using namespace boltwright;
using namespace boltwright::test;
using Kind = Concession::Kind;
using Fits = planner::Outcome::Kind;

namespace {

ConcedeOptions optionsFor(std::vector<Kind> order, std::int64_t steps) {
    ConcedeOptions o;
    o.plan.seconds.reset();
    o.plan.steps = steps;
    o.plan.threads = 1;
    o.order = std::move(order);
    return o;
}

std::string wordFor(Kind kind) {
    switch (kind) {
    case Kind::Trim:
        return "trim";
    case Kind::Stretcher:
        return "stretcher";
    case Kind::Seam:
        return "seam";
    case Kind::Turn:
        return "turn";
    case Kind::Uncentre:
        return "uncentre";
    case Kind::OtherCloth:
        return "other cloth";
    }
    return {};
}

struct Tally {
    int jobs = 0, asAsked = 0, withConcessions = 0, noWay = 0, ways = 0, again = 0, otherSeed = 0, wrong = 0;
};

/// The plan fits, and gives up nothing but what `layout` does, less the one thing.
bool doesWithout(const Plan &plan, const Layout &layout, const GivenOne &one) {
    if (plan.kind != Fits::Fits) return false;
    auto rest = givenIn(layout);
    std::erase(rest, one);
    const auto still = givenIn(plan.layout);
    return std::includes(rest.begin(), rest.end(), still.begin(), still.end());
}

void tell(Tally &tally, std::uint64_t number, const std::string &what) {
    ++tally.wrong;
    std::printf("WRONG %llu: %s\n", static_cast<unsigned long long>(number), what.c_str());
}

void soak(std::uint64_t number, std::int64_t steps, Tally &tally) {
    const Job job = tightJob(number);
    const std::vector<Kind> order = someOrder(number);
    const Conceding answer = concede(job, optionsFor(order, steps));
    ++tally.jobs;
    if (answer.nothingNeeded) ++tally.asAsked;
    if (answer.ways.empty()) ++tally.noWay;
    if (answer.ways.empty() && std::getenv("BOLTWRIGHT_TELL"))
        std::printf("no way %llu: %s\n", static_cast<unsigned long long>(number), answer.reason.c_str());
    tally.ways += int(answer.ways.size());
    for (const ConcedeWay &way : answer.ways) {
        if (!check(job, way.layout).empty()) tell(tally, number, "not right: " + check(job, way.layout)[0].text);
        for (const GivenOne &g : givenIn(way.layout))
            if (std::find(order.begin(), order.end(), g.kind) == order.end())
                tell(tally, number, "gives up what is forbidden: " + wordFor(g.kind));
    }
    if (answer.ways.empty() || answer.nothingNeeded) return;
    ++tally.withConcessions;
    const ConcedeWay &best = answer.ways.front();
    for (const GivenOne &g : givenIn(best.layout)) {
        const planner::GivenUp given = allBut(job, best.layout, g);
        PlanOptions o = optionsFor({}, steps).plan;
        o.given = &given;
        ++tally.again;
        if (doesWithout(plan(job, o), best.layout, g))
            tell(tally, number, "found without " + wordFor(g.kind) + " of " + g.copy.first);
        o.seed = 1000 + number;
        if (doesWithout(plan(job, o), best.layout, g)) ++tally.otherSeed;
    }
    // Kinds after the last one that was needed are of no matter; without that one itself none was found.
    if (best.kinds.empty()) return;
    const auto last = std::find(order.begin(), order.end(), best.kinds.back());
    const Conceding earlier = concede(job, optionsFor({order.begin(), last}, steps));
    if (!earlier.ways.empty()) tell(tally, number, "earlier kinds do without " + wordFor(best.kinds.back()));
}

} // namespace

int main(int argc, char **argv) {
    std::int64_t jobs = 500, first = 1, steps = 20000;
    for (int i = 1; i + 1 < argc; i += 2) {
        const std::int64_t value = std::atoll(argv[i + 1]);
        if (!std::strcmp(argv[i], "--jobs")) jobs = value;
        if (!std::strcmp(argv[i], "--first")) first = value;
        if (!std::strcmp(argv[i], "--steps")) steps = value;
    }
    Tally tally;
    for (std::int64_t number = first; number < first + jobs; ++number) {
        soak(std::uint64_t(number), steps, tally);
        std::fflush(stdout);
    }
    std::printf("jobs %d, as asked %d, with concessions %d, no way %d, ways %d, second searches %d, of which another "
                "seed does without %d, wrong %d\n",
                tally.jobs, tally.asAsked, tally.withConcessions, tally.noWay, tally.ways, tally.again, tally.otherSeed,
                tally.wrong);
    return tally.wrong ? 1 : 0;
}
