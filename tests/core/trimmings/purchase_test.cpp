#include "core/measure/length_text.h"

#include <catch2/catch.hpp>

// Rows "T..." are those of the trade notes in the shared folder (shared/TRADE.md), which name each publication.

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("what is bought goes up to the shop's step", "[trimmings]") {
    struct Bought {
        const char *row;
        Length used;
        int eighths;
        Length bought;
    };
    const Bought b = GENERATE(values<Bought>({{"T2.2", 89_in, 4, 90_in},
                                              {"T11.5", 274_in, 1, 274.5_in},
                                              {"T11.5", 274_in, 2, 279_in},
                                              {"T11.5", 274_in, 4, 8_yd},
                                              {"T11.5", 89_in, 1, 90_in},
                                              {"T11.5", 70.4_in, 1, 2_yd},
                                              {"T11.5", 123_in, 1, 126_in},
                                              {"T9.5", 123_in, 4, 126_in},
                                              {"T11.2", 22.5_in, 1, 22.5_in}}));
    CAPTURE(b.row);
    CHECK(purchaseLength(b.used, Unit::Inch, b.eighths) == b.bought);
}
