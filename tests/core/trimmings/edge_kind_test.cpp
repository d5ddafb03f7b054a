#include "core/trimmings/edge_kind.h"

#include <catch2/catch.hpp>

// Rows "T..." are those of the trade notes in the shared folder (shared/TRADE.md), which name each publication.
// Lengths in inches unless said.

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("what is added on both sides makes the cut size of the worked parts", "[trimmings]") {
    struct Part {
        const char *row;
        EdgeKind edges;
        Length across, up, cutAcross, cutUp;
    };
    const Part part = GENERATE(values<Part>({
        {"T6.4 inside back", EdgeKind::Pull, 32_in, 46_in, 36_in, 50_in},
        {"T6.4 outside wing", EdgeKind::Pull, 12_in, 18_in, 16_in, 22_in},
        {"T6.4 dining seat", EdgeKind::SeatTack, 20_in, 22_in, 26_in, 28_in},
        {"T6.4 dining seat", EdgeKind::SeatTack, 17.5_in, 17_in, 23.5_in, 23_in},
        {"T8.1 cushion plate", EdgeKind::Seam, 12_in, 12_in, 13_in, 13_in},
    }));
    CAPTURE(part.row);
    const Length added = allowanceFor(part.edges, TradeRules{}) * 2;
    CHECK(part.across + added == part.cutAcross);
    CHECK(part.up + added == part.cutUp);
}

TEST_CASE("a seat with a tuck-in on both sides takes 12 in more, one with a seam beside it 13", "[trimmings]") {
    const TradeRules rules;
    CHECK(allowanceFor(EdgeKind::TuckIn, rules) * 2 == 12_in); // T6.7
    CHECK(allowanceFor(EdgeKind::TuckIn, rules) * 2 + rules.seam * 2 == 13_in);
}

TEST_CASE("short cloth may take half of a pull but nothing of a seam", "[trimmings]") {
    const TradeRules rules;
    CHECK(leastAllowanceFor(EdgeKind::Pull, rules) == 1_in);
    CHECK(leastAllowanceFor(EdgeKind::SeatTack, rules) == 1.5_in);
    CHECK(leastAllowanceFor(EdgeKind::Seam, rules) == rules.seam);
    CHECK(leastAllowanceFor(EdgeKind::Welt, rules) == rules.weltSeam);
    for (Unit unit : {Unit::Inch, Unit::Centimetre})
        for (EdgeKind kind : edgeKinds)
            CHECK(leastAllowanceFor(kind, tradeRules(unit)) <= allowanceFor(kind, tradeRules(unit)));
}

TEST_CASE("every kind of edge goes by one name", "[trimmings]") {
    for (EdgeKind kind : edgeKinds) CHECK(edgeKindNamed(nameOf(kind)) == kind);
    CHECK_FALSE(edgeKindNamed("glued"));
}
