#include "core/trimmings/tufting.h"

#include <catch2/catch.hpp>

// Rows "T..." are those of the trade notes in the shared folder (shared/TRADE.md), which name each publication.
// Lengths in inches unless said.

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("tufts take more the deeper and the closer they are", "[trimmings]") {
    // A right triangle of 3, 4 and 5.
    CHECK(overOneTuft(6_in, 4_in) == 10_in);
    CHECK(overOneTuft(6_in, 0_in) == 6_in);
    CHECK(tuftedLength(20_in, 6_in, 4_in) == 32_in); // three spaces, and 2 in flat
    CHECK(overOneTuft(5_in, 2_in) > overOneTuft(5_in, 1_in));
}

TEST_CASE("channels are as long as their arcs", "[trimmings]") {
    CHECK(overOneChannel(4_in, 0_in) == 4_in);
    CHECK(abs(overOneChannel(4_in, 2_in) - 6.283185_in) <= Length::ticks(1)); // half circle: 2π
    CHECK(abs(overOneChannel(4_in, 3_in) - 8.283185_in) <= Length::ticks(1)); // and 1 in straight on both sides
    CHECK(abs(overOneChannel(4_in, 1_in) - 4.636476_in) <= Length::ticks(1)); // 4·2.5·atan(1/2)
    CHECK(channelledLength(14_in, 4_in, 2_in) == overOneChannel(4_in, 2_in) * 3 + 2_in);
}
