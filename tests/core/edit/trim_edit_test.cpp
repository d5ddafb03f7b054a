#include "core/check/check.h"
#include "core/edit/trim_edit.h"
#include "core/figures/figures.h"
#include "core/rules/cut_shape.h"
#include "core/rules/rules.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

Job withAllowances() {
    Panel seat = rectangle("Seat", 20_in, 18_in);
    seat.allow.assign(4, 2_in);
    seat.allowMin.assign(4, 0.5_in);
    Job job = jobOf(bolt(54_in), {seat});
    job.layouts = {layoutOf({cutAt("Seat", 3_in, 5_in)})};
    return job;
}

/// A border of three pieces, 120 in and an inch of allowance all round, half an inch of seam: 122 + 4 * 1/2 in long.
Job inPieces() {
    Panel border = rectangle("Border", 120_in, 6_in);
    border.allow.assign(4, 1_in);
    border.allowMin.assign(4, 0_in);
    border.pieces.most = 3;
    border.pieces.seam = 0.5_in;
    Job job = jobOf(bolt(54_in), {border});
    Layout layout;
    for (int piece = 1; piece <= 3; ++piece) {
        Cut cut = cutAt("Border", 5_in, (piece - 1) * 10_in);
        cut.piece = piece;
        cut.of = 3;
        cut.length = piece == 2 ? 42_in : 41_in;
        layout.cuts.push_back(cut);
    }
    layout.conceded.push_back({Concession::Kind::Seam, "Border", 1, {}, {}, {}, {}});
    job.layouts = {withFigures(job, layout)};
    return job;
}

std::string said(const Result<Layout> &layout) { return layout ? "taken" : layout.error().text; }

} // namespace

TEST_CASE("one cut is trimmed at an edge, the cloth under it stays, and it is listed as given up", "[trims]") {
    for (const Turn turn : {Turn::Deg0, Turn::Deg90, Turn::Deg180, Turn::Deg270}) {
        Job job = withAllowances();
        job.layouts[0].cuts[0].turn = turn;
        const auto trimmed = withLeftAtEdge(job, job.layouts[0], 0, Left, 0.75_in);
        REQUIRE(trimmed);
        const Cut &was = job.layouts[0].cuts[0], &is = trimmed->cuts[0];
        for (const PanelPoint p : {PanelPoint{}, PanelPoint{20_in, 18_in}, PanelPoint{3_in, 4_in}})
            CHECK(lay(job.panels[0], is, *trimmed).at(p) == lay(job.panels[0], was, job.layouts[0]).at(p));
        REQUIRE(trimmed->conceded.size() == 1);
        CHECK(trimmed->conceded[0].kind == Concession::Kind::Trim);
        CHECK(trimmed->conceded[0].from == 2_in);
        CHECK(trimmed->conceded[0].to == 0.75_in);
        const auto full = withLeftAtEdge(job, *trimmed, 0, Left, std::nullopt);
        REQUIRE(full);
        CHECK(full->cuts == job.layouts[0].cuts);
        CHECK(full->conceded.empty());
    }
    const Job job = withAllowances();
    CHECK(said(withLeftAtEdge(job, job.layouts[0], 0, Top, 3_in)) ==
          "top edge: from 0 to the 2 in that is added there.");
    CHECK(said(withLeftAtEdge(job, job.layouts[0], 0, 4, 1_in)) == "There is no such edge.");
}

TEST_CASE("a join is moved: one piece takes what the other gives, and the second judge agrees", "[trims]") {
    Job job = inPieces();
    const auto sum = [](const Layout &layout) {
        Length all;
        for (const Cut &cut : layout.cuts) all = all + *cut.length;
        return all;
    };
    const auto faultsOf = [&](const Layout &layout) { return check(job, layout).size(); };
    for (const Finding &finding : check(job, job.layouts[0])) UNSCOPED_INFO(finding.text);
    REQUIRE(faultsOf(job.layouts[0]) == 0);
    for (int piece = 0; piece < 3; ++piece) {
        const auto moved = withPieceLength(job, job.layouts[0], piece, 45_in);
        REQUIRE(moved);
        CHECK(moved->cuts[std::size_t(piece)].length == 45_in);
        CHECK(sum(*moved) == sum(job.layouts[0]));
        for (const Finding &finding : check(job, *moved)) UNSCOPED_INFO(finding.text);
        CHECK(faultsOf(*moved) == 0);
    }
    CHECK(said(withPieceLength(job, job.layouts[0], 0, 83_in)).find("no longer than its seams") != std::string::npos);
    CHECK(said(withPieceLength(withAllowances(), withAllowances().layouts[0], 0, 5_in)) ==
          "It is cut whole: only pieces have a length of their own.");
    // Trimmed at its end, the last piece is that much shorter, and all pieces are as high.
    auto trimmed = withLeftAtEdge(job, job.layouts[0], 2, Right, 0.25_in);
    REQUIRE(trimmed);
    CHECK(trimmed->cuts[2].length == 40.25_in);
    CHECK(faultsOf(*trimmed) == 0);
    trimmed = withLeftAtEdge(job, *trimmed, 1, Top, 0.5_in);
    REQUIRE(trimmed);
    CHECK(faultsOf(*trimmed) == 0);
    CHECK(trimmed->conceded.size() == job.layouts[0].conceded.size() + 2);
    CHECK(trimmed->cuts[1].y == job.layouts[0].cuts[1].y);
}
