#include "core/figures/figures.h"
#include "core/geometry/laying.h"
#include "core/paper/chalk_list.h"
#include "core/paper/drawing.h"
#include "core/paper/word_room.h"
#include "core/paper/words.h"
#include "planted.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

TEST_CASE("the room for words in a rectangle is the rectangle", "[paper]") {
    const ClothBox box{{2_in, 3_in}, {20_in, 9_in}};
    CHECK(wordRoom(ringOf(box)) == box);
}

TEST_CASE("the room for words never leaves the panel", "[paper]") {
    std::mt19937_64 random(7);
    for (int i = 0; i < 200; ++i) {
        const Job job = planted::anyJob(random(), 4);
        for (const Panel &panel : job.panels) {
            ClothRing ring;
            for (PanelPoint p : measuredOutline(panel.shape)) ring.push_back({p.x, p.y});
            const ClothBox room = wordRoom(ring);
            CHECK(room.width() > Length{});
            for (ClothPoint corner : ringOf(room)) {
                // Inside by the plainest test there is: left of every edge, for these shapes are convex but the
                // polygons' notched corner, whose box the room may only touch.
                if (!isConvex(ring)) continue;
                for (std::size_t k = 0; k < ring.size(); ++k)
                    CHECK(cross(ring[(k + 1) % ring.size()] - ring[k], corner - ring[k]) >=
                          -400'000'000); // a tick or so of a long edge
            }
        }
    }
}

TEST_CASE("an edge cut off at a level ends there whichever way round it is told", "[paper]") {
    const ClothLine line{{0_in, 0_in}, {10_in, 7_in}}, back{{10_in, 7_in}, {0_in, 0_in}};
    const auto one = clippedAlong(line, 2_in, 5_in), two = clippedAlong(back, 2_in, 5_in);
    REQUIRE(one);
    REQUIRE(two);
    CHECK(one->from == two->to);
    CHECK(one->to == two->from);
    CHECK(one->from.y == 2_in);
    CHECK_FALSE(clippedAlong(line, 8_in, 9_in));
}

TEST_CASE("paper says turns, seats and allowances in the trade's words", "[paper]") {
    CHECK(turnWords(Turn::Deg0) == "top up the roll");
    CHECK(turnWords(Turn::Deg90) == "top to the left selvage");
    MotifSeat seat;
    seat.column = 4;
    CHECK(seatWords(seat) == "stripe 4 from the left selvage");
    seat.row = 2;
    CHECK(seatWords(seat) == "motif 4 across, 2 up");
    seat.column = 0;
    CHECK(seatWords(seat) == "motif 1 before the first across, 2 up");
    seat.row.reset();
    CHECK(seatWords(seat) == "the stripe 1 before the first from the left selvage");
    Panel panel = planted::rectangle("p", "P", "Part", 10_in, 10_in, {});
    CHECK(allowanceWords(panel, {1.5_in, 1.5_in, 1.5_in, 1.5_in}, Unit::Inch) == "1 1/2 all round");
    CHECK(allowanceWords(panel, {1.5_in, 0.5_in, 1.5_in, 0.5_in}, Unit::Inch) == "1 1/2, right/left 1/2");
    CHECK(allowanceWords(panel, {{}, {}, {}, {}}, Unit::Inch) == "none");
}

TEST_CASE("stripes are counted from the first whole one past the selvage, and the list says where that lies",
          "[paper]") {
    // A 4 1/2 in ticking with a stripe whose middle lies on the very edge of the cloth: half of it is not there. The
    // next one, 4 1/2 in from the edge, is the first that anybody counts.
    for (const Length edge : {0_in, 0.25_in, 1_in, 1.5_in}) {
        Job job = jobOf(bolt(54_in), {centred(rectangle("Seat", 18_in, 16_in), Centre::Across)});
        job.cloths[0].selvage = 0.5_in;
        job.cloths[0].pattern = stripes(4.5_in, edge);
        Layout layout = layoutOf({cutAt("Seat", edge + 4.5_in * 3 - 9_in, 0_in)});
        const auto list = chalkList(job, layout);
        REQUIRE(list.size() == 1);
        INFO("first stripe " << edge.toMillimetres() << " mm from the edge");
        // One half as wide as its repeat reaches 1 1/8 in to either side, and the selvage is 1/2 in.
        const int before = edge < 1.625_in ? 1 : 0;
        CHECK(list[0].rows.at(0).motif->column == 4 - before);
        CHECK(list[0].firstColumn == edge + 4.5_in * before);
    }
    Job job = jobOf(bolt(54_in), {centred(rectangle("Seat", 18_in, 16_in), Centre::Across)});
    job.cloths[0].selvage = 0.5_in;
    job.cloths[0].pattern = stripes(4.5_in, 2.25_in);
    auto list = chalkList(job, layoutOf({cutAt("Seat", 6.75_in, 0_in)}));
    CHECK(list[0].rows.at(0).motif->column == 4);
    CHECK(countedWords(list[0], Unit::Inch) ==
          "Stripes are counted from the left selvage; the middle of the first whole one lies 2 1/4 in from the edge.");
    CHECK(chalkCsv(job, list).find("2 1/4 in from the edge") != std::string::npos);
    // From selvage to selvage, with an inch lost to square the end.
    job.cloths[0].bolt->square = 1_in;
    Pattern across;
    across.along = 6_in;
    job.cloths[0].pattern = across;
    job.panels[0].motif->centre = Centre::Up;
    list = chalkList(job, layoutOf({cutAt("Seat", 6.75_in, 4_in)}));
    CHECK(list[0].firstRow == 6_in);
    CHECK(list[0].rows.at(0).motif->row == 2); // its middle at 12 in
    CHECK(countedWords(list[0], Unit::Inch) ==
          "Stripes are counted from the cut end; the middle of the first whole one lies 6 in from it.");
}

TEST_CASE("paper and flag say to buy only where cloth is to be bought", "[paper]") {
    Cloth cloth = bolt(54_in);
    CHECK(onHandWords(cloth, 80_in, Unit::Inch, true) == "buy 2 1/4 yd");
    cloth.bolt->length = 90_in;
    CHECK(onHandWords(cloth, 80_in, Unit::Inch, true) == "enough, 10 in left over");
    CHECK(onHandWords(cloth, 80_in, Unit::Inch, false) == "10 in left over"); // something is still to be laid
    CHECK(onHandWords(cloth, 90_in, Unit::Inch, true) == "just enough");
    CHECK(onHandWords(cloth, 95_in, Unit::Inch, true) == "5 in short of the 2 yd 18 in there");
    CHECK_FALSE(leftOver(bolt(54_in), 80_in));
    CHECK(leftOver(cloth, 95_in) == Length{} - 5_in);
}
