#include "core/cloth/pattern.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;

namespace {
Pattern repeat(Length across, Length along, Length drop = {}) {
    Pattern p;
    p.across = across;
    p.along = along;
    p.drop = drop;
    return p;
}
} // namespace

TEST_CASE("a drop of half the repeat is a half-drop, and every second column is level again", "[pattern]") {
    const Lattice lattice(repeat(27_in, 25_in, 12.5_in), {});
    CHECK(lattice.dropNumerator() == 1);
    CHECK(lattice.dropDenominator() == 2);
    CHECK(lattice.rise(0) == 0_in);
    CHECK(lattice.rise(1) == 12.5_in);
    CHECK(lattice.rise(2) == 0_in);
    CHECK(lattice.rise(-1) == 12.5_in);
}

TEST_CASE("a drop measured a hair off a third of the repeat is that third exactly", "[pattern]") {
    // 25 in / 3 is no whole number of ticks; what a file can say is at best the nearest one.
    const Length repeatAlong = 25_in;
    const Length third = Length::ticks(repeatAlong.ticks() / 3 + 3);
    const Lattice lattice(repeat(18_in, repeatAlong, third), {});
    CHECK(lattice.dropNumerator() == 1);
    CHECK(lattice.dropDenominator() == 3);
    CHECK(lattice.rise(3) == 0_in);
}

TEST_CASE("a drop that is no simple part of the repeat stays what was measured", "[pattern]") {
    const Lattice lattice(repeat(18_in, 27_in, 5.03_in), {});
    CHECK(lattice.dropDenominator() > 8);
    CHECK(lattice.rise(1) == 5.03_in);
    CHECK(lattice.rise(2) == 10.06_in);
}

TEST_CASE("a drop of a whole repeat is no drop, and a drop asks nothing of stripes", "[pattern]") {
    CHECK(Lattice(repeat(18_in, 27_in, 27_in), {}).dropNumerator() == 0);
    Pattern stripes;
    stripes.across = 3_in;
    stripes.drop = 1_in;
    CHECK(Lattice(stripes, {}).dropNumerator() == 0);
    CHECK_FALSE(Lattice(stripes, {}).repeatsAlong());
}
