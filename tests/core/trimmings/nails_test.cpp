#include "core/trimmings/nails.h"

#include <catch2/catch.hpp>

// Rows "T..." are those of the trade notes in the shared folder (shared/TRADE.md), which name each publication.
// Lengths in inches unless said.

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("nails head to head in a yard and a foot", "[trimmings]") {
    struct Head {
        Length head;
        std::int64_t yard, foot;
    };
    const Head h = GENERATE(values<Head>({// T7.4
                                          {0.375_in, 96, 32},
                                          {Length::ticks(7 * 508), 83, 28},
                                          {0.5_in, 72, 24},
                                          {Length::ticks(9 * 508), 64, 22},
                                          {0.75_in, 48, 16}}));
    CHECK(closeNails(36_in, h.head) == h.yard);
    CHECK(closeNails(12_in, h.head) == h.foot);
}

TEST_CASE("spaced nails", "[trimmings]") {
    CHECK(spacedNails(36_in, 2_in) == 19);      // T7.5
    CHECK(spacedNailsRound(36_in, 2_in) == 18); // T7.5
    CHECK(spacedNailsRound(35_in, 2_in) == 18);
    CHECK(spacedNailsRound(0.5_in, 2_in) == 1);
    CHECK(evenPitch(36_in, 19) == 2_in);
}

TEST_CASE("nail strip has a real nail every fifth or sixth head", "[trimmings]") {
    CHECK(nailsInStrip(36_in, 0.5_in, 6) == 12); // T7.4, T7.6
    CHECK(nailsInStrip(36_in, 0.5_in, 5) == 15);
}
