#include "tests/core/check/workroom.h"

using namespace workroom;

namespace {

/// A seat 10 in by 8 in whose middle is to fall on the pattern; motifs at (0, 0) and onwards.
Job seatOn(const Pattern &pattern, Centre centre) {
    Job job = emptyJob();
    job.cloths[0].pattern = pattern;
    Panel seat = rectangle("Seat", 10_in, 8_in);
    seat.motif = MotifWish{};
    seat.motif->centre = centre;
    job.panels = {seat};
    return job;
}

Kinds at(const Job &job, Length x, Length y, Turn turn = Turn::Deg0) {
    return kinds(job, layoutOf({cut("Seat", x, y, 1, turn)}, y + (swapsAxes(turn) ? 10_in : 8_in)));
}

const Kinds off = {Kind::Motif};

} // namespace

TEST_CASE("centred across: the middle is level with a column of motifs", "[check]") {
    const Job job = seatOn(repeat(13.5_in, 27_in), Centre::Across);
    CHECK(at(job, 8.5_in, 3_in).empty()); // middle at 13.5
    CHECK(at(job, 22_in, 7_in).empty());
    CHECK(at(job, 8.5_in + 4 * tick, 3_in).empty());
    CHECK(at(job, 8.5_in + 5 * tick, 3_in) == off);
    CHECK(at(job, 8.5_in - hair, 3_in) == off);
    CHECK(texts(job, layoutOf({cut("Seat", 8.25_in, 0_in)}, 8_in)) ==
          std::vector<std::string>{"Seat is 1/4 in off its motif."});
}

TEST_CASE("centred up: the middle is level with a row of motifs", "[check]") {
    const Job job = seatOn(repeat(13.5_in, 27_in), Centre::Up);
    CHECK(at(job, 1_in, 23_in).empty());
    CHECK(at(job, 1_in, 23_in + hair) == off);
}

TEST_CASE("with a half-drop, up means level with a motif of any column, and both with a motif itself", "[check]") {
    const Pattern halfDrop = repeat(12_in, 20_in, 10_in);
    CHECK(at(seatOn(halfDrop, Centre::Up), 1_in, 6_in).empty()); // middle at 10: the next column's row
    CHECK(at(seatOn(halfDrop, Centre::Up), 1_in, 11_in) == off);
    CHECK(at(seatOn(halfDrop, Centre::Both), 7_in, 6_in).empty());   // (12, 10)
    CHECK(at(seatOn(halfDrop, Centre::Both), 19_in, 6_in) == off);   // (24, 10): that column stands at 0 and 20
    CHECK(at(seatOn(halfDrop, Centre::Both), 19_in, 16_in).empty()); // (24, 20)
    CHECK(at(seatOn(halfDrop, Centre::Across), 19_in, 6_in).empty());
}

TEST_CASE("a drop a rounding away from a third is a third, however far up the roll", "[check]") {
    // A third of 10 in falls between ticks; over 48 columns the rounding would add up to 16 ticks.
    Job job = seatOn(repeat(1_in, 10_in, Length::ticks(27093)), Centre::Both);
    CHECK(at(job, 43_in, 6_in).empty()); // middle (48, 10): column 48 has moved by 16 whole repeats
    CHECK(at(job, 43_in, 6_in + hair) == off);
}

TEST_CASE("a panel turned by 90 asks its own side-to-side along the roll", "[check]") {
    Job job = seatOn(repeat(13.5_in, 27_in), Centre::Across);
    job.panels[0].run = Run::Railroad;
    CHECK(at(job, 1_in, 22_in, Turn::Deg90).empty()); // 8 wide and 10 high as it lies: middle at y 27
    CHECK(at(job, 1_in, 22_in + hair, Turn::Deg90) == off);
}

TEST_CASE("a repeat asked for that the cloth has not in that turn is wrong", "[check]") {
    Job job = seatOn(repeat(13.5_in, 0_in), Centre::Across);
    job.panels[0].run = Run::Either;
    CHECK(at(job, 8.5_in, 3_in).empty());
    CHECK(at(job, 1_in, 22_in, Turn::Deg90) == off);
}

TEST_CASE("on the bias both ways are centred at once", "[check]") {
    Job job = emptyJob();
    job.cloths[0].pattern = repeat(20_in, 20_in);
    Panel seat = rectangle("Seat", 10_in, 10_in);
    seat.run = Run::Bias;
    seat.motif = MotifWish{};
    job.panels = {seat};
    // The diagonal is 14.1421 in, the middle half of it from either side.
    const auto lay = [&](Length x) {
        return kinds(job, layoutOf({cut("Seat", x, 12.92893_in, 1, Turn::Deg45)}, 27.0711_in));
    };
    CHECK(lay(12.92893_in).empty());
    CHECK(lay(12.92893_in + hair) == off);
}

TEST_CASE("a remnant has its motif where it says, not where the pattern does", "[check]") {
    Job job = remnantJob();
    job.cloths[0].pattern = repeat(13.5_in, 0_in);
    job.cloths[0].remnants[0].motif = ClothPoint{3_in, 0_in};
    Panel seat = rectangle("Seat", 10_in, 8_in);
    seat.motif = MotifWish{};
    seat.motif->centre = Centre::Across;
    job.panels = {seat};
    CHECK(right(job, layoutOf({onRemnant(cut("Seat", 11.5_in, 0_in))})));
    CHECK(kinds(job, layoutOf({onRemnant(cut("Seat", 8.5_in, 0_in))})) == off);
}

TEST_CASE("the motif point of a trapezoid lies between the middles of bottom and top, mirrored or not", "[check]") {
    Job job = emptyJob();
    job.cloths[0].pattern = repeat(20_in, 0_in);
    Panel wing = rectangle("Wing", 1_in, 1_in);
    wing.shape = Trapezoid{10_in, 6_in, 8_in, 4_in}; // the top runs from 6 to 12, its middle at 9; the point at u = 7
    wing.motif = MotifWish{};
    wing.motif->centre = Centre::Across;
    wing.mirror = true;
    wing.count = 2;
    job.panels = {wing};
    Layout layout = layoutOf({cut("Wing", 13_in, 0_in, 1), cut("Wing", 35_in, 0_in, 2)}, 8_in);
    layout.cuts[1].mirrored = true; // 12 in wide, the point 7 in from its right
    CHECK(right(job, layout));
    layout.cuts[1].x += hair;
    CHECK(kinds(job, layout) == off);
}

TEST_CASE("off centre frees the motif where it is allowed and listed", "[check]") {
    Job job = seatOn(repeat(13.5_in, 27_in), Centre::Across);
    Layout layout = layoutOf({cut("Seat", 0_in, 0_in)}, 8_in);
    layout.conceded = {gaveUp(Concession::Kind::Uncentre, "Seat")};
    CHECK(kinds(job, layout) == Kinds{Kind::Motif, Kind::Conceded});
    job.panels[0].may.uncentre = true;
    CHECK(right(job, layout));
    layout.conceded.clear();
    CHECK(kinds(job, layout) == off);
    layout.conceded = {gaveUp(Concession::Kind::Uncentre, "Seat")};
    layout.cuts[0].x = 8.5_in; // happens to lie right: may still stand there
    CHECK(right(job, layout));
}

TEST_CASE("on another cloth a motif asks nothing where that cloth does not repeat", "[check]") {
    Job job = seatOn(repeat(13.5_in, 27_in), Centre::Both);
    Cloth plain = job.cloths[0];
    plain.id = "plain";
    plain.pattern.reset();
    Cloth striped = plain;
    striped.id = "striped";
    striped.pattern = repeat(9_in, 0_in);
    job.cloths.push_back(plain);
    job.cloths.push_back(striped);
    const auto on = [&](const std::string &cloth, Length x) {
        job.panels[0].may.otherCloth.id = cloth;
        Layout layout = layoutOf({cut("Seat", x, 0_in)});
        layout.cuts[0].cloth = cloth;
        ClothUse use;
        use.id = cloth;
        use.length = 8_in;
        layout.cloths = {use};
        layout.conceded = {gaveUp(Concession::Kind::OtherCloth, "Seat")};
        return kinds(job, layout);
    };
    CHECK(on("plain", 0_in).empty());
    CHECK(on("striped", 4_in).empty());
    CHECK(on("striped", 4_in + hair) == off);
}

TEST_CASE("copies alike show the same part of the repeat, wherever that is", "[check]") {
    Job job = emptyJob();
    job.cloths[0].pattern = repeat(12_in, 20_in, 10_in);
    Panel cushion = rectangle("Cushion", 10_in, 8_in);
    cushion.alike = true;
    cushion.count = 2;
    job.panels = {cushion};
    Layout layout = layoutOf({cut("Cushion", 1_in, 3_in, 1), cut("Cushion", 13_in, 13_in, 2)}, 21_in);
    CHECK(right(job, layout));
    layout.cuts[1].x += 4 * tick;
    CHECK(right(job, layout));
    layout.cuts[1].x += tick;
    CHECK(kinds(job, layout) == Kinds{Kind::Alike});
    layout.cuts[1] = cut("Cushion", 13_in, 11_in, 2); // level across, not on the half-drop
    layout.cloths[0].length = 19_in;
    CHECK(texts(job, layout) ==
          std::vector<std::string>{
              "Cushion (2 of 2) does not show the same part of the repeat as Cushion (1 of 2), by 2 in."});
}

TEST_CASE("copies alike lie in the same turn, on plain cloth too", "[check]") {
    Job job = emptyJob();
    job.cloths[0].way = Way::Two;
    Panel cushion = rectangle("Cushion", 10_in, 8_in);
    cushion.alike = true;
    cushion.count = 2;
    job.panels = {cushion};
    Layout layout = layoutOf({cut("Cushion", 1_in, 0_in, 1), cut("Cushion", 14_in, 0_in, 2, Turn::Deg180)}, 8_in);
    CHECK(kinds(job, layout) == Kinds{Kind::Alike});
    layout.cuts[1].turn = Turn::Deg0;
    CHECK(right(job, layout));
}
