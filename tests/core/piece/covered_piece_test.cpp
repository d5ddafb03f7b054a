#include "core/check/laid_cut.h"
#include "core/files/job_file.h"
#include "core/piece/covered_piece.h"
#include "core/rules/rules.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

#include <cmath>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

Flow join(std::string from, int edge, std::string to, int edgeTo, Length lost = {}) {
    Flow flow;
    flow.from = {std::move(from), edge, {}, {}};
    flow.to = {std::move(to), edgeTo, {}, {}};
    flow.lost = lost;
    return flow;
}

Panel allowed(Panel p, Length all) {
    p.allow = EdgeLengths(edgeCount(p.shape), all);
    return p;
}

PiecePoint middle(const CoveredJoin::Line &line) {
    return {Length::ticks((line.from.x.ticks() + line.to.x.ticks()) / 2),
            Length::ticks((line.from.y.ticks() + line.to.y.ticks()) / 2)};
}

/// No two panels of the picture cover the same ground, seen on a grid of points well inside the first.
bool apart(const CoveredPiece &piece) {
    const auto inside = [](const PieceRing &ring, double x, double y) {
        bool in = false;
        for (std::size_t i = 0, j = ring.size() - 1; i < ring.size(); j = i++) {
            const double xi = double(ring[i].x.ticks()), yi = double(ring[i].y.ticks());
            const double xj = double(ring[j].x.ticks()), yj = double(ring[j].y.ticks());
            if ((yi > y) != (yj > y) && x < (xj - xi) * (y - yi) / (yj - yi) + xi) in = !in;
        }
        return in;
    };
    for (const CoveredPanel &a : piece.panels) {
        const PieceBox box = boxOf(a.outline);
        for (int i = 1; i < 24; ++i)
            for (int j = 1; j < 24; ++j) {
                const double x = double(box.low.x.ticks()) + double(box.width().ticks()) * (i + 0.013) / 24;
                const double y = double(box.low.y.ticks()) + double(box.height().ticks()) * (j + 0.017) / 24;
                if (!inside(a.outline, x, y)) continue;
                for (const CoveredPanel &b : piece.panels)
                    if (&a != &b && inside(b.outline, x, y)) return false;
            }
    }
    return true;
}

/// Back above seat above border, one stripe in the middle of each; all 20 in wide.
Job settee() {
    Cloth cloth = bolt(54_in);
    cloth.pattern = stripes(5_in, 10_in);
    Job job = jobOf(cloth, {allowed(rectangle("Inside back", 20_in, 18_in), 1_in),
                            allowed(rectangle("Seat", 20_in, 22_in), 1_in),
                            allowed(rectangle("Front border", 20_in, 6_in), 1_in),
                            allowed(rectangle("Cushion", 16_in, 16_in, 2), 1_in)});
    job.flows = {join("Inside back", Bottom, "Seat", Top, 4_in), join("Seat", Bottom, "Front border", Top)};
    return job;
}

} // namespace

TEST_CASE("inside back stands above seat above front border, edge to edge", "[piece]") {
    const Job job = settee();
    const CoveredPiece piece = coveredPiece(job, layoutOf({}));
    const CoveredPanel *back = piece.panel({"Inside back", 1}), *seat = piece.panel({"Seat", 1}),
                       *border = piece.panel({"Front border", 1});
    REQUIRE(back);
    REQUIRE(seat);
    REQUIRE(border);
    CHECK(back->seat.at({0_in, 0_in}) == seat->seat.at({0_in, 22_in})); // what is lost between them is hidden
    CHECK(seat->seat.at({20_in, 0_in}) == border->seat.at({20_in, 6_in}));
    REQUIRE(piece.joins.size() == 2);
    for (const CoveredJoin &j : piece.joins) {
        CHECK(j.touching);
        const CoveredPanel &a = piece.panels[std::size_t(j.a)], &b = piece.panels[std::size_t(j.b)];
        CHECK(middle(j.atA) == a.seat.at({10_in, 0_in}));
        CHECK(middle(j.atA) == b.seat.at(middleOfEdge(job.panel(b.copy.panel)->shape, Top)));
    }
    // The cushions join nothing: below, side by side.
    const CoveredPanel *one = piece.panel({"Cushion", 1}), *two = piece.panel({"Cushion", 2});
    CHECK(one->seat.at({0_in, 16_in}).y < border->seat.at({0_in, 0_in}).y);
    CHECK(one->seat.origin.y == two->seat.origin.y);
    CHECK(one->seat.at({16_in, 0_in}).x < two->seat.origin.x);
    CHECK_FALSE(one->joined);
    CHECK(one->parts.empty()); // put aside
}

TEST_CASE("cushions joined at their sides sit side by side", "[piece]") {
    Job job = jobOf(bolt(54_in), {rectangle("Cushion", 20_in, 22_in, 3)});
    for (int k : {1, 2}) {
        Flow side = join("Cushion", Right, "Cushion", Left);
        side.from.copy = k;
        side.to.copy = k + 1;
        job.flows.push_back(side);
    }
    const CoveredPiece piece = coveredPiece(job, layoutOf({}));
    REQUIRE(piece.panels.size() == 3);
    for (std::size_t k : {0u, 1u}) CHECK(piece.panels[k].seat.at({20_in, 0_in}) == piece.panels[k + 1].seat.origin);
    CHECK(piece.box.width() == 60_in);
}

TEST_CASE("copies that join copies stand in groups of their own, side by side", "[piece]") {
    Job job = jobOf(bolt(54_in), {rectangle("Inside back", 18_in, 20_in, 3), rectangle("Seat", 18_in, 22_in, 3)});
    job.flows = {join("Inside back", Bottom, "Seat", Top)};
    const CoveredPiece piece = coveredPiece(job, layoutOf({}));
    REQUIRE(piece.joins.size() == 3);
    for (int k : {1, 2, 3}) {
        CHECK(piece.panel({"Inside back", k})->seat.origin == piece.panel({"Seat", k})->seat.at({0_in, 22_in}));
        if (k > 1)
            CHECK(piece.panel({"Seat", k})->seat.origin.x > piece.panel({"Seat", k - 1})->seat.at({18_in, 0_in}).x);
    }
    CHECK(apart(piece));
}

TEST_CASE("joins that contradict each other, turn in a circle or lie over a panel are shown apart", "[piece]") {
    Job job = jobOf(bolt(54_in), {rectangle("A", 20_in, 10_in), rectangle("B", 20_in, 10_in),
                                  rectangle("C", 20_in, 10_in), rectangle("D", 8_in, 8_in, 3)});
    job.flows = {join("A", Bottom, "B", Top), join("B", Bottom, "C", Top),
                 join("C", Bottom, "A", Top), // round and round
                 join("A", Bottom, "C", Top), // where B is
                 join("B", Right, "D", Left), // one for all three
                 join("A", Top, "B", Top),    join("A", Bottom, "A", Top)};
    Flow inside; // from the middle of one to the middle of another
    inside.from = {"A", {}, PanelPoint{10_in, 5_in}, {}};
    inside.to = {"D", {}, PanelPoint{4_in, 4_in}, {}};
    job.flows.push_back(inside);
    const CoveredPiece piece = coveredPiece(job, layoutOf({}));
    CHECK(piece.panels.size() == 6);
    CHECK(apart(piece));
    CHECK(piece.joins[0].touching);
    CHECK(piece.joins[1].touching != piece.joins[2].touching); // C stands above or below, not both
    CHECK_FALSE(piece.joins[3].touching);
}

TEST_CASE("panels out of sight are not shown unless they join one that is", "[piece]") {
    Job job = settee();
    job.panels.push_back(rectangle("Deck", 20_in, 20_in));
    job.panels.back().hidden = true;
    job.panels[2].hidden = true; // the front border
    const CoveredPiece piece = coveredPiece(job, layoutOf({}));
    CHECK(piece.outOfSight == std::vector<std::string>{"Deck"});
    CHECK_FALSE(piece.panel({"Deck", 1}));
    CHECK(piece.panel({"Front border", 1}));
}

TEST_CASE("the picture shows the cloth that the cut takes: a hand's example", "[piece]") {
    // 20 in wide with 1 in all round, railroaded: the panel's top points to the left selvage, its left side down the
    // roll.
    Job job = jobOf(bolt(54_in), {allowed(rectangle("Border", 20_in, 6_in), 1_in)});
    const CoveredPiece piece = coveredPiece(job, layoutOf({cutAt("Border", 3_in, 10_in, Turn::Deg90)}));
    const CoveredPanel &border = piece.panels.front();
    REQUIRE(border.parts.size() == 1);
    const auto cloth = [&](PanelPoint p) { return border.parts[0].clothAt(border.seat.at(p)); };
    // The cut is 8 in across the cloth and 22 in along it, from (3, 10) to (11, 32).
    CHECK(cloth({0_in, 0_in}) == ClothPoint{10_in, 11_in});
    CHECK(cloth({20_in, 0_in}) == ClothPoint{10_in, 31_in});
    CHECK(cloth({0_in, 6_in}) == ClothPoint{4_in, 11_in});
}

TEST_CASE("every point of a panel comes from where the judge lays it, for every turn, mirrored and in pieces",
          "[piece]") {
    Panel wing;
    wing.id = wing.name = "Wing";
    wing.shape = PolygonShape{{{0_in, 0_in}, {9_in, 0_in}, {10.5_in, 6_in}, {6_in, 18_in}, {0_in, 18_in}}};
    wing.allow = {1_in, 0.5_in, 0.75_in, 1_in, 2_in};
    wing.count = 2;
    Panel border = allowed(rectangle("Border", 58_in, 5_in), 0.5_in);
    border.pieces.most = 3;
    border.pieces.seam = 0.5_in;
    for (const Turn turn : allTurns)
        for (const bool mirrored : {false, true}) {
            Job job = jobOf(bolt(54_in), {wing, border});
            Cut whole = cutAt("Wing", 7.25_in, 30_in, turn);
            whole.mirrored = mirrored;
            Layout layout = layoutOf({whole});
            // 59 in with its allowances, in three: 20 + 25 + 14, each with half an inch at each join.
            const std::vector<Length> lengths = {20.5_in, 26_in, 14.5_in};
            for (int k = 1; k <= 3; ++k) {
                Cut piece = cutAt("Border", 2_in, (40 + 60 * k) * 1_in, turn);
                piece.mirrored = mirrored;
                piece.piece = k;
                piece.of = 3;
                piece.length = lengths[std::size_t(k - 1)];
                layout.cuts.push_back(piece);
            }
            const CoveredPiece picture = coveredPiece(job, layout);
            const judge::Scene scene(job, layout);
            REQUIRE(scene.laid.size() == 4);
            int looked = 0;
            for (const CoveredPanel &panel : picture.panels)
                for (const CoveredPart &part : panel.parts)
                    for (const PiecePoint &corner : part.outline)
                        for (const PiecePoint &other : part.outline) {
                            const PiecePoint p{Length::ticks((corner.x.ticks() + other.x.ticks()) / 2),
                                               Length::ticks((corner.y.ticks() + other.y.ticks()) / 2)};
                            const judge::Spot judged =
                                scene.laid[std::size_t(part.cut)].at(judge::spotOf(part.seat.back(p)));
                            const ClothPoint cloth = part.clothAt(p);
                            const double far =
                                std::hypot(double(cloth.x.ticks()) - judged.x, double(cloth.y.ticks()) - judged.y);
                            // Slanted mitres are rounded to ticks, on the bias every corner and point.
                            CHECK(far <= (isBias(turn) ? 3 : 0.5));
                            ++looked;
                        }
            CHECK(looked == 25 + 3 * 16);
        }
}

TEST_CASE("the pieces of a panel cover it, allowances and seams gone", "[piece]") {
    Panel border = allowed(rectangle("Border", 58_in, 5_in), 0.5_in);
    border.pieces.most = 2;
    border.pieces.seam = 0.5_in;
    Job job = jobOf(bolt(54_in), {border});
    Layout layout;
    for (int k : {1, 2}) {
        Cut piece = cutAt("Border", 1_in, k * 10_in);
        piece.piece = k;
        piece.of = 2;
        piece.length = k == 1 ? 30.5_in : 29.5_in; // 30 + 29 = 59
        layout.cuts.push_back(piece);
    }
    const CoveredPanel panel = coveredPiece(job, layout).panels.front();
    REQUIRE(panel.parts.size() == 2);
    CHECK(boxOf(panel.parts[0].outline).width() == 29.5_in); // half an inch of the first 30 is its left allowance
    CHECK(boxOf(panel.parts[1].outline).width() == 28.5_in);
    CHECK(boxOf(panel.parts[0].outline).high.x == boxOf(panel.parts[1].outline).low.x);
}

TEST_CASE("a stripe that does not run on is told as the rules tell it, and also where it was given up", "[piece]") {
    Job job = settee();
    Layout layout =
        layoutOf({cutAt("Inside back", 4_in, 0_in), cutAt("Seat", 29_in, 0_in), cutAt("Front border", 5.5_in, 30_in)});
    const auto misses = [&] {
        std::vector<std::optional<PatternMiss>> all;
        for (const CoveredJoin &j : coveredPiece(job, layout).joins) all.push_back(j.miss);
        return all;
    };
    // 25 in is five stripes: back and seat agree. Seat and border: 23.5 in, an inch and a half short of five.
    CHECK(misses()[0] == std::nullopt);
    REQUIRE(misses()[1].has_value());
    CHECK(misses()[1]->by == 1.5_in);
    const auto laid = layAll(job, layout);
    const auto broken = breachesOf(job, layout, laid, 2);
    CHECK(std::count_if(broken.begin(), broken.end(), [](const Breach &b) { return b.kind == Breach::Kind::Flow; }) ==
          1);

    job.panels[2].may.uncentre = true;
    layout.conceded.push_back({Concession::Kind::Uncentre, "Front border", 1});
    CHECK(breachesOf(job, layout, laid, 2).empty()); // allowed, but seen all the same
    REQUIRE(misses()[1].has_value());

    layout.cuts[2].turn = Turn::Deg90;
    CHECK(misses()[1]->why == PatternMiss::Why::Turned);
    job.cloths.push_back(bolt(54_in, "lining"));
    layout.cuts[2].cloth = "lining";
    CHECK(misses()[1]->why == PatternMiss::Why::OtherCloth);
}

TEST_CASE("misses agree with the rules on every place of a cut", "[piece]") {
    Job job = settee();
    job.cloths[0].pattern = motifs(5_in, 9_in, {1_in, 2_in}, 4.5_in);
    for (int step = 0; step < 60; ++step) {
        const Layout layout =
            layoutOf({cutAt("Inside back", 4_in, 0_in), cutAt("Seat", 10_in + step * 0.25_in, 20_in + step * 0.75_in)});
        const auto piece = coveredPiece(job, layout);
        bool told = false;
        for (const Breach &b : breachesOf(job, layout, layAll(job, layout), 1))
            told = told || b.kind == Breach::Kind::Flow;
        CHECK(piece.joins[0].miss.has_value() == told);
    }
}
