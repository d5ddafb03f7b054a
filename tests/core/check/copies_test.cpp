#include "tests/core/check/workroom.h"

using namespace workroom;

namespace {

/// Two seats on a bolt, side by side.
struct TwoSeats {
    Job job = emptyJob();
    Layout layout = layoutOf({cut("Seat", 0_in, 0_in, 1), cut("Seat", 20_in, 0_in, 2)}, 18_in);
    TwoSeats() {
        job.panels = {rectangle("Seat", 20_in, 18_in)};
        job.panels[0].count = 2;
    }
};

} // namespace

TEST_CASE("every copy laid once is right", "[check]") {
    const TwoSeats given;
    CHECK(texts(given.job, given.layout).empty());
}

TEST_CASE("a copy that is nowhere is missing", "[check]") {
    TwoSeats given;
    given.layout.cuts.pop_back();
    CHECK(texts(given.job, given.layout) == std::vector<std::string>{"Seat (2 of 2) is missing from the layout."});
}

TEST_CASE("a long run of missing copies is one finding, however many there are", "[check]") {
    TwoSeats given;
    given.job.panels[0].count = 2'000'000'000;
    CHECK(texts(given.job, given.layout) ==
          std::vector<std::string>{
              "Seat (3 of 2000000000) and the copies up to 2000000000 are missing from the layout."});
}

TEST_CASE("a copy laid twice is wrong", "[check]") {
    TwoSeats given;
    given.layout.cuts[1].copy = 1;
    CHECK(kinds(given.job, given.layout) == Kinds{Kind::Missing, Kind::Missing});
}

TEST_CASE("a copy beyond the count, and a panel the job has not, are wrong", "[check]") {
    TwoSeats given;
    given.job.panels[0].count = 1;
    CHECK(kinds(given.job, given.layout) == Kinds{Kind::Missing});
    given.job.panels[0].count = 2;
    given.layout.cuts.push_back(cut("Wing", 0_in, 0_in));
    CHECK(kinds(given.job, given.layout) == Kinds{Kind::Missing});
}

TEST_CASE("a copy may be left out only where it may go to any other cloth", "[check]") {
    TwoSeats given;
    given.layout.cuts.pop_back();
    LeftOut left;
    left.panel = "Seat";
    left.copy = 2;
    given.layout.leftOut = {left};
    CHECK(kinds(given.job, given.layout) == Kinds{Kind::Missing});
    given.job.panels[0].may.otherCloth.any = true;
    CHECK(right(given.job, given.layout));

    SECTION("and not twice") {
        given.layout.leftOut.push_back(left);
        CHECK(kinds(given.job, given.layout) == Kinds{Kind::Missing});
    }
    SECTION("and not while it is laid out") {
        given.layout.cuts.push_back(cut("Seat", 20_in, 0_in, 2));
        CHECK(kinds(given.job, given.layout) == Kinds{Kind::Missing});
    }
    SECTION("and not a copy that nobody asked for") {
        left.copy = 3;
        given.layout.leftOut.push_back(left);
        CHECK(kinds(given.job, given.layout) == Kinds{Kind::Missing});
    }
}

TEST_CASE("another cloth of the job needs leave and a line in what we give up", "[check]") {
    TwoSeats given;
    Cloth deck = given.job.cloths[0];
    deck.id = deck.name = "Deck";
    given.job.cloths.push_back(deck);
    given.layout.cuts[1].cloth = "Deck";
    ClothUse use;
    use.id = "Deck";
    use.length = 18_in;
    given.layout.cloths.push_back(use);
    CHECK(texts(given.job, given.layout) ==
          std::vector<std::string>{"Seat (2 of 2) is cut from Deck, and it may not be."});
    given.job.panels[0].may.otherCloth.id = "Deck";
    CHECK(texts(given.job, given.layout) ==
          std::vector<std::string>{"Seat (2 of 2) is cut from Deck, which is not listed among what we give up."});
    given.layout.conceded = {gaveUp(Concession::Kind::OtherCloth, "Seat", 2)};
    CHECK(right(given.job, given.layout));
}

TEST_CASE("a cut lies on a remnant that its cloth has, and on none of a bolt", "[check]") {
    TwoSeats given;
    given.layout.cuts[1].on = "A";
    CHECK(kinds(given.job, given.layout) == Kinds{Kind::Cloth});

    Job job = remnantJob();
    job.panels = {rectangle("Seat", 20_in, 18_in)};
    CHECK(right(job, layoutOf({onRemnant(cut("Seat", 0_in, 0_in))})));
    CHECK(kinds(job, layoutOf({onRemnant(cut("Seat", 0_in, 0_in), "B")})) == Kinds{Kind::Cloth});
    CHECK(kinds(job, layoutOf({cut("Seat", 0_in, 0_in)})) == Kinds{Kind::Cloth});
}
