#include "core/concede/concede.h"
#include "core/trimmings/leave.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;
using Kind = Concession::Kind;

namespace {

/// A back tucked in at the bottom, pulled at the sides, sewn along the top.
Panel back() {
    Panel p = rectangle("Back", 50_in, 30_in);
    p.allow = {6_in, 2_in, 0.5_in, 2_in};
    p.allowMin.assign(4, std::nullopt);
    return p;
}

} // namespace

TEST_CASE("leave to trim goes down to the shop's share at each edge, and leaves seams alone", "[leave]") {
    const Job job = jobOf(bolt(54_in), {back()});
    TradeRules rules;
    const Panel given = withLeave(job, back(), Kind::Trim, rules);
    // Half of it, common practice, no source; a seam of 1/2 in keeps all (TRADE T6.6).
    CHECK(given.allowMin == EdgeLengths{3_in, 1_in, std::nullopt, 1_in});
    rules.leastShare = {3, 4};
    CHECK(withLeave(job, back(), Kind::Trim, rules).allowMin == EdgeLengths{4.5_in, 1.5_in, std::nullopt, 1.5_in});
    CHECK(withoutLeave(given, Kind::Trim) == back());
    // What was set by hand is finer than a tick, and stays.
    Panel own = back();
    own.allowMin[0] = 5_in;
    CHECK(withLeave(job, own, Kind::Trim, rules) == own);
    Panel sewn = back();
    sewn.allow.assign(4, 0.5_in);
    CHECK_FALSE(mayBeGivenLeave(job, sewn, Kind::Trim, rules));
}

TEST_CASE("a strip may be sewn on where an edge is tucked in", "[leave]") {
    const Job job = jobOf(bolt(54_in), {back()});
    const TradeRules rules;
    // TRADE T6.7: a tuck-in of 6 in lies out of sight.
    CHECK(withLeave(job, back(), Kind::Stretcher, rules).may.stretcher == std::map<int, Length>{{Bottom, 0.5_in}});
    Panel flat = back();
    flat.allow.assign(4, 2_in);
    CHECK_FALSE(mayBeGivenLeave(job, flat, Kind::Stretcher, rules));
}

TEST_CASE("a part that is seen is joined the same on both sides of the middle, one out of sight once", "[leave]") {
    Job job = jobOf(bolt(54_in), {back()});
    const TradeRules rules;
    const Panel seen = withLeave(job, back(), Kind::Seam, rules);
    CHECK(seen.pieces.most == 3); // TRADE T6.19: a full width in the centre, not one seam mid-back
    CHECK(seen.pieces.where == Pieces::Where::Balanced);
    CHECK(seen.pieces.seam == 0.5_in);
    Panel hidden = back();
    hidden.hidden = true;
    CHECK(withLeave(job, hidden, Kind::Seam, rules).pieces.most == 2);
    Panel slanted = back();
    slanted.shape = Trapezoid{24_in, 20_in, 20_in, {}};
    CHECK_FALSE(mayBeGivenLeave(job, slanted, Kind::Seam, rules));
}

TEST_CASE("another cloth is one of the job's where it has one, and a motif is left only where there is one",
          "[leave]") {
    Job job = jobOf(bolt(54_in), {back()});
    const TradeRules rules;
    CHECK(withLeave(job, back(), Kind::OtherCloth, rules).may.otherCloth.any);
    job.cloths.push_back(bolt(60_in, "lining"));
    CHECK(withLeave(job, back(), Kind::OtherCloth, rules).may.otherCloth.id == "lining");
    CHECK_FALSE(mayBeGivenLeave(job, back(), Kind::Uncentre, rules));
    CHECK(mayBeGivenLeave(job, centred(back(), Centre::Across), Kind::Uncentre, rules));
}

TEST_CASE("leave that was given is leave to the search, and taken back it is none", "[leave]") {
    const TradeRules rules;
    Panel narrow = centred(back(), Centre::Across);
    narrow.shape = Rectangle{30_in, 20_in};
    Job job = jobOf(bolt(54_in), {narrow});
    job.cloths[0].pattern = stripes(4_in);
    for (Kind kind : usualOrder()) {
        INFO(int(kind));
        CHECK(kindsWithoutLeave(job, {kind}) == std::vector{kind});
        Job given = job;
        given.panels[0] = withLeave(job, job.panels[0], kind, rules);
        CHECK(hasLeave(given.panels[0], kind));
        CHECK(faultsOfJob(given).empty());
        CHECK(kindsWithoutLeave(given, {kind}).empty());
        CHECK_FALSE(hasLeave(withoutLeave(given.panels[0], kind), kind));
    }
}
