#include "tests/core/check/workroom.h"

using namespace workroom;

namespace {

/// An inside back above a seat, the pattern running down over the join; the repeat is 12 in by 20 in.
struct BackAndSeat {
    Job job = emptyJob();
    Layout layout;

    BackAndSeat() {
        job.cloths[0].pattern = repeat(12_in, 20_in);
        job.panels = {rectangle("Back", 20_in, 15_in), rectangle("Seat", 20_in, 10_in)};
        Flow flow;
        flow.from.panel = "Back";
        flow.from.edge = Bottom;
        flow.to.panel = "Seat";
        flow.to.edge = Top;
        job.flows = {flow};
        // The back's lower edge at y = 30, the seat's upper one at y = 10: a whole repeat apart.
        layout = layoutOf({cut("Back", 3_in, 30_in), cut("Seat", 3_in, 0_in)}, 45_in);
    }
    Flow &flow() { return job.flows[0]; }
    void setLength() {
        Length top;
        for (const Cut &c : layout.cuts) top = std::max(top, c.y + (c.panel == "Back" ? 15_in : 10_in));
        layout.cloths[0].length = top;
    }
    Kinds found() {
        setLength();
        return kinds(job, layout);
    }
};

const Kinds broken = {Kind::Flow};

} // namespace

TEST_CASE("the pattern runs on over a join: edge middles a whole step apart", "[check]") {
    BackAndSeat given;
    CHECK(given.found().empty());
    given.layout.cuts[1].x += 12_in;
    CHECK(given.found().empty());
    given.layout.cuts[1].x += 4 * tick;
    CHECK(given.found().empty());
    given.layout.cuts[1].x += tick;
    CHECK(given.found() == broken);
}

TEST_CASE("the sentence says what does not run on into what, and by how much", "[check]") {
    BackAndSeat given;
    given.layout.cuts[0].y += 0.5_in;
    given.setLength();
    CHECK(texts(given.job, given.layout) ==
          std::vector<std::string>{"Back does not run on into Seat: the pattern is off by 1/2 in."});
}

TEST_CASE("stripes ask for a step across only", "[check]") {
    BackAndSeat given;
    given.job.cloths[0].pattern = repeat(12_in, 0_in);
    given.layout.cuts[0].y += 1.25_in;
    CHECK(given.found().empty());
    given.layout.cuts[0].x += hair;
    CHECK(given.found() == broken);
}

TEST_CASE("what is lost in the join is added outwards from the first edge", "[check]") {
    BackAndSeat given;
    given.flow().lost = 3_in; // the pattern goes on 3 in below the back's edge
    CHECK(given.found() == broken);
    given.layout.cuts[0].y += 3_in;
    CHECK(given.found().empty());
    given.layout.cuts[0].y += hair;
    CHECK(given.found() == broken);
}

TEST_CASE("what is lost goes outwards as the panel lies: turned, and mirrored", "[check]") {
    BackAndSeat given;
    given.job.cloths[0].pattern = repeat(12_in, 0_in);
    for (Panel &panel : given.job.panels) {
        panel.mirror = true;
        panel.count = 2;
    }
    given.flow() = {};
    given.flow().from.panel = "Back";
    given.flow().from.edge = Right;
    given.flow().to.panel = "Seat";
    given.flow().to.edge = Left;
    given.flow().lost = 2_in;
    // Right edge of back 1 at x = 20, lost to 22; left edge of seat 1 at 34. Mirrored, the right edge of back 2 is on
    // its left, at x = 3, lost to 1; the left edge of seat 2 is on its right, at 25.
    given.layout.cuts = {cut("Back", 0_in, 30_in, 1), cut("Seat", 34_in, 0_in, 1), cut("Back", 3_in, 60_in, 2),
                         cut("Seat", 5_in, 15_in, 2)};
    given.layout.cuts[2].mirrored = given.layout.cuts[3].mirrored = true;
    CHECK(given.found().empty());
    given.layout.cuts[3].x += 4_in; // as if lost went the other way
    CHECK(given.found() == broken);
}

TEST_CASE("points in place of edges, and an edge that only says where the lost pattern goes", "[check]") {
    BackAndSeat given;
    given.flow().from.edge.reset();
    given.flow().from.at = PanelPoint{4_in, 0_in};
    given.flow().to.edge.reset();
    given.flow().to.at = PanelPoint{4_in, 10_in};
    CHECK(given.found().empty());
    given.flow().from.at = PanelPoint{5_in, 0_in};
    CHECK(given.found() == broken);
    given.layout.cuts[0].x -= 1_in;
    CHECK(given.found().empty());
    given.flow().from.edge = Bottom;
    given.flow().lost = 3_in;
    given.layout.cuts[0].y += 3_in;
    CHECK(given.found().empty());
}

TEST_CASE("both sides lie in the same turn on the same cloth", "[check]") {
    BackAndSeat given;
    given.job.cloths[0].way = Way::Two;
    given.job.cloths[0].pattern.reset();
    CHECK(given.found().empty());
    given.layout.cuts[1].turn = Turn::Deg180;
    CHECK(given.found() == broken);
    given.layout.cuts[1].turn = Turn::Deg0;

    Cloth deck = given.job.cloths[0];
    deck.id = "deck";
    given.job.cloths.push_back(deck);
    given.job.panels[1].may.otherCloth.id = "deck";
    given.layout.cuts[1].cloth = "deck";
    given.layout.conceded = {gaveUp(Concession::Kind::OtherCloth, "Seat")};
    given.setLength();
    ClothUse use;
    use.id = "deck";
    use.length = 10_in;
    given.layout.cloths.push_back(use);
    CHECK(kinds(given.job, given.layout) == broken);

    // With the seat off centre as well, nothing is asked of it.
    given.job.panels[1].may.uncentre = true;
    given.layout.conceded.push_back(gaveUp(Concession::Kind::Uncentre, "Seat"));
    CHECK(right(given.job, given.layout));
}

TEST_CASE("which copies join which", "[check]") {
    BackAndSeat given;
    given.job.cloths[0].pattern = repeat(10_in, 0_in);
    // Backs at the steps 0 and 1, seats at 0 and 1 (in inches beyond a whole repeat).
    given.job.panels[0].count = given.job.panels[1].count = 2;
    given.layout.cuts = {cut("Back", 0_in, 0_in, 1), cut("Back", 21_in, 0_in, 2), cut("Seat", 0_in, 20_in, 1),
                         cut("Seat", 21_in, 20_in, 2)};
    CHECK(given.found().empty()); // copy k joins copy k

    SECTION("a single panel joins every copy") {
        given.job.panels[0].count = 1;
        given.layout.cuts.erase(given.layout.cuts.begin() + 1);
        CHECK(given.found() == broken);
    }
    SECTION("copies without a partner are free") {
        given.job.panels[1].count = 3;
        given.layout.cuts.push_back(cut("Seat", 5_in, 40_in, 3));
        CHECK(given.found().empty());
    }
    SECTION("one pair is named") {
        given.flow().from.copy = 1;
        given.flow().to.copy = 2;
        CHECK(given.found() == broken);
        given.flow().to.copy = 1;
        CHECK(given.found().empty());
    }
    SECTION("one copy joins every copy of the other panel") {
        given.flow().from.copy = 1;
        CHECK(given.found() == broken);
        given.layout.cuts[3].x = 20_in;
        CHECK(given.found().empty());
    }
    SECTION("two copies of one panel side by side") {
        given.flow() = {};
        given.flow().from = {"Seat", Right, {}, 1};
        given.flow().to = {"Seat", Left, {}, 2};
        CHECK(given.found() == broken); // 20 and 21
        given.layout.cuts[3].x = 30_in;
        CHECK(given.found().empty());
    }
}
