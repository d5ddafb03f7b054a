#include "core/check/check.h"
#include "core/concede/concede.h"
#include "core/planner/build.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;
using Kind = Concession::Kind;
using Fits = planner::Outcome::Kind;

namespace {

Cloth remnant(Length across, Length along) {
    return remnantCloth({{0_in, 0_in}, {across, 0_in}, {across, along}, {0_in, along}});
}

Panel withAllowances(Panel p, Length each, Length least) {
    p.allow = EdgeLengths(4, each);
    p.allowMin = EdgeLengths(4, least);
    return p;
}

ConcedeOptions quick(std::vector<Kind> order = usualOrder()) {
    ConcedeOptions o;
    o.plan.seconds.reset();
    o.plan.steps = 20000;
    o.plan.threads = 1;
    o.order = std::move(order);
    return o;
}

using Words = std::vector<std::string>;

} // namespace

TEST_CASE("what no panel has leave to give up is known without a search", "[concede]") {
    Panel back = withAllowances(rectangle("back", 20_in, 20_in), 2_in, 2_in), seat = back;
    seat.id = "seat";
    const Cloth cloth = remnant(40_in, 30_in);
    CHECK(kindsWithoutLeave(jobOf(cloth, {back, seat}), usualOrder()) == usualOrder());
    seat.may.turn = true;
    seat.allowMin[2] = 1_in;
    const std::vector<Kind> closed = {Kind::Stretcher, Kind::OtherCloth, Kind::Uncentre, Kind::Seam};
    CHECK(kindsWithoutLeave(jobOf(cloth, {back, seat}), usualOrder()) == closed);
    CHECK(kindsWithoutLeave(jobOf(cloth, {back, seat}), {Kind::Seam, Kind::Turn}) == std::vector{Kind::Seam});
}

TEST_CASE("cloth that does as asked gives nothing up", "[concede]") {
    const Conceding c = concede(
        jobOf(remnant(42_in, 22_in), {withAllowances(rectangle("Seat", 18_in, 18_in, 2), 1.5_in, 0.5_in)}), quick());
    CHECK(c.nothingNeeded);
    REQUIRE(c.ways.size() == 1);
    CHECK(c.ways[0].words.empty());
}

TEST_CASE("an inch too little is trimmed, an inch and no more", "[concede]") {
    const Job job = jobOf(remnant(41_in, 22_in), {withAllowances(rectangle("Seat", 18_in, 18_in, 2), 1.5_in, 0.5_in)});
    const Conceding c = concede(job, quick());
    REQUIRE(c.kind == Fits::Fits);
    CHECK(c.ways[0].kinds == std::vector{Kind::Trim});
    CHECK(c.ways[0].trimmed == 1_in);
    CHECK(check(job, c.ways[0].layout).empty());
}

TEST_CASE("a kind that is not in the order is not given up", "[concede]") {
    const Job job = jobOf(remnant(41_in, 22_in), {withAllowances(rectangle("Seat", 18_in, 18_in, 2), 1.5_in, 0.5_in)});
    const Conceding c = concede(job, quick({Kind::Turn, Kind::Seam}));
    CHECK(c.kind == Fits::CannotFit);
    CHECK(c.ways.empty());
}

TEST_CASE("an earlier kind that does keeps later ones out", "[concede]") {
    // Turning the border saves it whole; trimming alone would not do, and other cloth is asked for last.
    Panel border = rectangle("Border", 36_in, 6_in);
    border.may.turn = true;
    border.may.otherCloth.any = true;
    const Job job = jobOf(remnant(26_in, 40_in), {rectangle("Seat", 20_in, 36_in), border});
    const Conceding c = concede(job, quick({Kind::Trim, Kind::Turn, Kind::OtherCloth}));
    REQUIRE(c.kind == Fits::Fits);
    CHECK(c.ways[0].kinds == std::vector{Kind::Turn});
    CHECK(c.ways[0].words == Words{"Border: turned the other way"});
    const Conceding other = concede(job, quick({Kind::OtherCloth, Kind::Turn}));
    REQUIRE(other.kind == Fits::Fits);
    CHECK(other.ways[0].kinds == std::vector{Kind::OtherCloth});
    CHECK(other.ways[0].layout.leftOut.size() == 1);
}

TEST_CASE("only as many parts go to other cloth as must", "[concede]") {
    Panel deck = rectangle("Deck", 20_in, 20_in, 3);
    deck.may.otherCloth.any = true;
    const Job job = jobOf(remnant(41_in, 22_in), {deck});
    const Conceding c = concede(job, quick());
    REQUIRE(c.kind == Fits::Fits);
    CHECK(c.ways[0].panels == 1);
    CHECK(check(job, c.ways[0].layout).empty());
}

TEST_CASE("a band longer than the remnant is joined once more", "[concede]") {
    Panel band = rectangle("Band", 60_in, 5_in);
    band.pieces.most = 3;
    band.pieces.seam = 0.5_in;
    band.pieces.shortest = 10_in;
    const Job job = jobOf(remnant(36_in, 11_in), {band});
    const Conceding c = concede(job, quick());
    REQUIRE(c.kind == Fits::Fits);
    CHECK(c.ways[0].words == Words{"Band: made of 2 pieces, 1 join"});
    CHECK(check(job, c.ways[0].layout).empty());
}

TEST_CASE("a border that goes round is joined at the back, out of sight, or about the middle", "[concede]") {
    // 72 in by 5 in fit in a remnant of 73 in by 5 1/2 in, but not with a second part: 54 1/2 in and 18 1/2 in, and
    // equal halves of 36 1/2 in, each lie in their own way beside it.
    Panel border = rectangle("Border", 72_in, 5_in);
    border.pieces.most = 2;
    border.pieces.seam = 0.5_in;
    border.pieces.shortest = 10_in;
    const Panel seat = rectangle("Seat", 20_in, 20_in);
    const Job job = jobOf(remnant(75_in, 20_in), {border, seat});
    CHECK(planner::piecesJoinedAtBack(job, border) == std::vector<Length>{54.5_in, 18.5_in});
    const Conceding c = concede(job, quick());
    REQUIRE(c.kind == Fits::Fits);
    REQUIRE(c.ways.size() == 2);
    CHECK(c.ways[0].words == Words{"Border: joined at the back, out of sight: 54 1/2 in and 18 1/2 in"});
    CHECK(c.ways[1].words == Words{"Border: made of 2 pieces, 1 join"});
    for (const ConcedeWay &way : c.ways) CHECK(check(job, way.layout).empty());
}

TEST_CASE("joins go to the back only in strips that go round", "[concede]") {
    Panel border = rectangle("Border", 72_in, 5_in);
    border.pieces.most = 3;
    border.pieces.seam = 0.5_in;
    const auto atBack = [](const Panel &p, Length longest) {
        return planner::piecesJoinedAtBack(jobOf(remnant(longest, 30_in), {p}), p);
    };
    CHECK(atBack(border, 75_in) == std::vector<Length>{54.5_in, 18.5_in});
    // The cloth is shorter: the longest front it gives, and the rest in two.
    CHECK(atBack(border, 50.5_in) == std::vector<Length>{50.5_in, 12_in, 11.5_in});
    // A front under three fifths leaves a join in sight.
    CHECK(atBack(border, 40_in).empty());
    Panel balanced = border;
    balanced.pieces.where = Pieces::Where::Balanced;
    CHECK(atBack(balanced, 75_in).empty());
    Panel back = border;
    back.shape = Rectangle{72_in, 20_in};
    CHECK(atBack(back, 75_in).empty());
    Panel shortest = border;
    shortest.pieces.shortest = 19_in;
    CHECK(atBack(shortest, 75_in).empty());
}

TEST_CASE("the same question with the same steps has the same answer", "[concede]") {
    const Job job = jobOf(remnant(41_in, 43_in), {withAllowances(rectangle("Seat", 18_in, 18_in, 4), 1.5_in, 0.5_in)});
    const Conceding a = concede(job, quick()), b = concede(job, quick());
    REQUIRE(a.kind == Fits::Fits);
    CHECK(a.ways[0].layout == b.ways[0].layout);
}
