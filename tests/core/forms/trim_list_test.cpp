#include "core/forms/forms.h"
#include "core/forms/trim_list.h"
#include "core/trimmings/edging.h"
#include "core/trimmings/nails.h"
#include "core/trimmings/welt.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("welt runs twice round a box cushion", "[forms]") {
    PieceForm form;
    FormPart cushion;
    cushion.id = "cushion";
    cushion.kind = PartKind::BoxCushion;
    cushion.edges.fill(EdgeKind::Welt);
    form.parts.push_back(cushion);
    PartMeasured measured;
    measured.sizes[Measure::Across] = 22_in;
    measured.sizes[Measure::Up] = 24_in;
    measured.sizes[Measure::Thickness] = 4_in;
    const TrimList trims = trimsOf(form, {{"cushion", measured}}, {});
    CHECK(trims.welt == 184_in); // T8.4, T5.31
    CHECK(trims.weltJoins == 2);
}

TEST_CASE("a sofa's welt is what the trade reckons with", "[forms]") {
    const PieceForm &form = *pieceForm("three-seat-sofa");
    const TradeRules rules;
    const TrimList trims = trimsOf(form, typicalMeasures(form, Unit::Inch), rules);
    // T5.11 reckons with 950 in for a sofa. Ours has a tight back, whose cushions have no welt.
    CHECK(trims.welt > 850_in);
    CHECK(trims.welt < 950_in);
    const auto strips = weltPanel(950_in, 1.5_in, 54_in);
    REQUIRE(strips);
    CHECK(strips->count == 19); // 18 without joins (T5.11); seventeen joins on the slant take 25 1/2 in
}

TEST_CASE("gimp runs where the form says", "[forms]") {
    const PieceForm &form = *pieceForm("side-chair");
    FormMeasures measures = typicalMeasures(form, Unit::Inch);
    measures.at("seat").there = false;
    const TrimList trims = trimsOf(form, measures, {});
    CHECK(trims.gimp == 2 * (2 * 17_in + 2 * 18_in));
    CHECK(edgingNeeded(trims.gimp, 0, 0_in, {}) == 154_in);
    // The seat's sides lean: 1.5 in over 19.
    measures.at("seat").there = true;
    const Length seat = trimsOf(form, measures, {}).gimp - trims.gimp;
    CHECK(seat > 20_in + 38_in);
    CHECK(seat < 20_in + 38.25_in);
}

TEST_CASE("a pair whose right one measures otherwise has each one's own welt", "[forms]") {
    const PieceForm &form = *pieceForm("club-chair");
    FormMeasures measures = typicalMeasures(form, Unit::Inch);
    const Length before = trimsOf(form, measures, {}).welt;
    PartMeasured &front = measures.at("arm-front");
    front.twin = front.sizes;
    (*front.twin)[Measure::Up] += 1_in;
    CHECK(trimsOf(form, measures, {}).welt == before + 2_in);
}

TEST_CASE("no welt needs no strips", "[forms]") {
    CHECK_FALSE(weltPanel(0_in, 1.5_in, 54_in));
    CHECK_FALSE(weltPanel(100_in, 1.5_in, 1.5_in));
    CHECK(weltPanel(20_in, 1.5_in, 54_in)->count == 1);
    CHECK(std::get<Rectangle>(weltPanel(20_in, 1.5_in, 54_in)->shape).across == 20_in);
}
