#include "core/geometry/laying.h"
#include "core/paper/drawing.h"
#include "core/paper/word_room.h"
#include "core/paper/words.h"
#include "planted.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;

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
    Panel panel = planted::rectangle("p", "P", "Part", 10_in, 10_in, {});
    CHECK(allowanceWords(panel, {1.5_in, 1.5_in, 1.5_in, 1.5_in}, Unit::Inch) == "1 1/2 all round");
    CHECK(allowanceWords(panel, {1.5_in, 0.5_in, 1.5_in, 0.5_in}, Unit::Inch) == "1 1/2, right/left 1/2");
    CHECK(allowanceWords(panel, {{}, {}, {}, {}}, Unit::Inch) == "none");
}
