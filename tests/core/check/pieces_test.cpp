#include "tests/core/check/workroom.h"

using namespace workroom;

namespace {

/// A border 60 in by 6 in, cut from two pieces of 30 1/2 in with 1/2 in seams.
struct Border {
    Job job = emptyJob();
    Layout layout;
    Border() {
        Panel border = rectangle("Border", 60_in, 6_in);
        border.pieces.most = 2;
        border.pieces.seam = 0.5_in;
        border.pieces.shortest = 10_in;
        job.panels = {border};
        pieces({30.5_in, 30.5_in});
    }
    Pieces &wish() { return job.panels[0].pieces; }
    /// Pieces of these lengths, stacked up the roll.
    void pieces(const std::vector<Length> &lengths) {
        std::vector<Cut> cuts;
        for (std::size_t k = 0; k < lengths.size(); ++k)
            cuts.push_back(
                piece(cut("Border", 0_in, 6_in * std::int64_t(k)), int(k) + 1, int(lengths.size()), lengths[k]));
        layout = layoutOf(cuts, 6_in * std::int64_t(lengths.size()));
        layout.conceded = {gaveUp(Concession::Kind::Seam, "Border")};
    }
};

const Kinds wrong = {Kind::Pieces};

} // namespace

TEST_CASE("pieces add up to the whole plus two seams a join", "[check]") {
    Border given;
    CHECK(right(given.job, given.layout));
    given.pieces({30.5_in, 30.5_in + hair});
    CHECK(kinds(given.job, given.layout) == wrong);
    given.pieces({30.5_in, 30.5_in + 8 * tick}); // 4 ticks a piece
    CHECK(right(given.job, given.layout));
    given.pieces({30.5_in, 30.5_in + 9 * tick});
    CHECK(kinds(given.job, given.layout) == wrong);
}

TEST_CASE("no more pieces than allowed, none too short", "[check]") {
    Border given;
    given.pieces({20.5_in, 21_in, 20.5_in});
    CHECK(texts(given.job, given.layout) ==
          std::vector<std::string>{"Border is made of 3 pieces, and at most 2 are allowed."});
    given.wish().most = 3;
    CHECK(right(given.job, given.layout));
    given.pieces({51_in, 10_in});
    CHECK(right(given.job, given.layout));
    given.pieces({51_in + hair, 10_in - hair});
    CHECK(kinds(given.job, given.layout) == wrong);
}

TEST_CASE("joins that are to be balanced are the same on both sides of the middle", "[check]") {
    Border given;
    given.wish().most = 3;
    given.wish().where = Pieces::Where::Balanced;
    CHECK(right(given.job, given.layout));
    given.pieces({30.5_in + hair, 30.5_in - hair});
    CHECK(kinds(given.job, given.layout) == wrong);
    given.pieces({15.5_in, 31_in, 15.5_in});
    CHECK(right(given.job, given.layout));
}

TEST_CASE("a join is listed, and a listed join is there", "[check]") {
    Border given;
    given.layout.conceded.clear();
    CHECK(kinds(given.job, given.layout) == Kinds{Kind::Conceded});
    given.job.panels[0].shape = Rectangle{50_in, 6_in};
    given.layout = layoutOf({cut("Border", 0_in, 0_in)}, 6_in);
    given.layout.conceded = {gaveUp(Concession::Kind::Seam, "Border")};
    CHECK(kinds(given.job, given.layout) == Kinds{Kind::Conceded});
}

TEST_CASE("a piece that is lost, twice there, or of an unknown length", "[check]") {
    Border given;
    Layout layout = given.layout;
    layout.cuts.pop_back();
    layout.cloths[0].length = 6_in;
    CHECK(kinds(given.job, layout).front() == Kind::Missing);
    layout = given.layout;
    layout.cuts[1].piece = 1;
    CHECK(kinds(given.job, layout).front() == Kind::Missing);
    layout = given.layout;
    layout.cuts[1].length.reset();
    CHECK(kinds(given.job, layout).front() == Kind::Pieces);
}

TEST_CASE("pieces of one copy leave the same on its edges", "[check]") {
    Border given;
    given.job.panels[0].allow = allRound(0.5_in);
    given.job.panels[0].allowMin = allRound(0.25_in);
    given.pieces({31_in, 31_in});
    given.layout.cuts[0].y = 0_in;
    given.layout.cuts[1].y = 7_in;
    given.layout.cloths[0].length = 14_in;
    CHECK(right(given.job, given.layout));
    given.layout.cuts[1].allow = {0.5_in, 0.5_in, 0.25_in, 0.5_in};
    given.layout.cloths[0].length = 13.75_in;
    CHECK(kinds(given.job, given.layout) == wrong);
}

TEST_CASE("the joins run across the longer cut side, side to side where both are equal", "[check]") {
    Job job = emptyJob();
    Panel flap = rectangle("Flap", 10_in, 10_in);
    flap.pieces.most = 2;
    job.panels = {flap};
    const auto lay = [&](Length x, Length y) {
        Layout layout = layoutOf({piece(cut("Flap", 0_in, 0_in), 1, 2, 5_in), piece(cut("Flap", x, y), 2, 2, 5_in)});
        layout.conceded = {gaveUp(Concession::Kind::Seam, "Flap")};
        ClothUse use;
        use.id = "body";
        use.length = 10_in;
        layout.cloths = {use};
        return layout;
    };
    CHECK(right(job, lay(5_in, 0_in)));
    job.panels[0].allow = {0_in, 0_in, 0_in, 0_in};
    job.panels[0].shape = Rectangle{10_in, 10_in + hair}; // a sixteenth higher: now one above the other
    CHECK(!right(job, lay(5_in, 0_in)));
    Layout stacked = lay(0_in, 5_in);
    stacked.cuts[1].length = 5_in + hair;
    stacked.cloths[0].length = 10_in + hair;
    CHECK(right(job, stacked));
}

TEST_CASE("matched pieces carry the pattern on over the join", "[check]") {
    Border given;
    given.job.cloths[0].pattern = repeat(12_in, 0_in);
    given.wish().match = true;
    // Piece 1 shows u 0..30 from x 0; the join is at x 30. Piece 2 starts half an inch before it.
    given.layout.cuts[1].x = 5.5_in; // join at 6: two repeats away
    CHECK(right(given.job, given.layout));
    given.layout.cuts[1].x += 4 * tick;
    CHECK(right(given.job, given.layout));
    given.layout.cuts[1].x += hair;
    CHECK(texts(given.job, given.layout) ==
          std::vector<std::string>{"Border, piece 2 of 2 does not carry the pattern on over its join."});
    given.wish().match = false;
    CHECK(right(given.job, given.layout));
}

TEST_CASE("a point on a join belongs to the piece after it", "[check]") {
    Border given;
    given.job.cloths[0].pattern = repeat(12_in, 0_in);
    given.job.panels[0].motif = MotifWish{}; // the middle, u = 30: just on the join
    given.job.panels[0].motif->centre = Centre::Across;
    given.layout.cuts[0].x = 1_in;    // piece 1 is free
    given.layout.cuts[1].x = 11.5_in; // the join at 12
    CHECK(right(given.job, given.layout));
    given.layout.cuts[1].x += hair;
    CHECK(kinds(given.job, given.layout) == Kinds{Kind::Motif});
    CHECK(check(given.job, given.layout)[0].piece == 2);
    // A sixteenth before the join it is piece 1's.
    given.job.panels[0].motif->at = PanelPoint{30_in - hair, 3_in};
    given.layout.cuts[0].x = 6_in + hair;
    CHECK(right(given.job, given.layout));
}

TEST_CASE("only a rectangle may be pieced", "[check]") {
    Border given;
    given.job.panels[0].shape = Trapezoid{60_in, 58_in, 6_in, 0_in};
    CHECK(kinds(given.job, given.layout).front() == Kind::Pieces);
}
