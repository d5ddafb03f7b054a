#include "core/trimmings/ratio.h"

#include <catch2/catch.hpp>

// Rows "T..." are those of the trade notes in the shared folder (shared/TRADE.md), which name each publication.
// Lengths in inches unless said.

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("a size goes up to the next half inch or centimetre, and stays where it is one", "[trimmings]") {
    CHECK(roundedUp(36.125_in, 0.5_in) == 36.5_in);
    CHECK(roundedUp(36.5_in, 0.5_in) == 36.5_in);
    CHECK(roundedUp(92.1_cm, 1_cm) == 93_cm);
    CHECK(roundedUp(93_cm, 1_cm) == 93_cm);
    CHECK(roundedUp(0_in, 0.5_in) == 0_in);
}

TEST_CASE("what is asked for rounds up, what is yielded rounds down", "[trimmings]") {
    CHECK(timesUp(Length::ticks(10), {1, 3}) == Length::ticks(4));
    CHECK(timesDown(Length::ticks(10), {1, 3}) == Length::ticks(3));
    CHECK(timesUp(220_in, {5, 2}) == 550_in); // T9.3
    CHECK(timesUp(220_in, {3, 1}) == 660_in); // T9.4
    CHECK(Ratio{5, 2} == Ratio{10, 4});
}
