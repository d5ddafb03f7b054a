#include "core/forms/forms.h"
#include "core/forms/panels_from.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace boltwright;
using namespace boltwright::literals;

namespace {

Cloth plainCloth() { return test::bolt(54_in); }
Cloth printedCloth() {
    Cloth cloth = plainCloth();
    cloth.pattern = test::motifs(13.5_in, 27_in);
    return cloth;
}

const Panel &panelOf(const FormPanels &made, const std::string &id) {
    const auto it = std::find_if(made.panels.begin(), made.panels.end(), [&](const Panel &p) { return p.id == id; });
    REQUIRE(it != made.panels.end());
    return *it;
}
bool has(const FormPanels &made, const std::string &id) {
    return std::any_of(made.panels.begin(), made.panels.end(), [&](const Panel &p) { return p.id == id; });
}
Sizes cutSize(const Panel &panel) {
    const PanelBox box = boxOf(cutOutline(panel.shape, preferredAllowances(panel)));
    Sizes s;
    s[Measure::Across] = box.width();
    s[Measure::Up] = box.height();
    return s;
}
Sizes sizes(Length across, Length up) {
    Sizes s;
    s[Measure::Across] = across;
    s[Measure::Up] = up;
    return s;
}

} // namespace

TEST_CASE("a dining seat of 20 by 22 is cut 26 by 28", "[forms]") {
    const PieceForm &form = *pieceForm("dining-seat");
    FormMeasures measures = typicalMeasures(form, Unit::Inch);
    measures.at("seat").sizes = sizes(20_in, 22_in);
    measures.at("seat").count = 4;
    const FormPanels made = panelsFrom(form, measures, {}, printedCloth());
    REQUIRE(made.panels.size() == 1);
    CHECK(cutSize(made.panels[0]) == sizes(26_in, 28_in)); // T6.4
    CHECK(made.panels[0].count == 4);
    CHECK(made.panels[0].leastAllowance(Top) == 1.5_in);
    REQUIRE(made.panels[0].motif);
    CHECK(made.panels[0].motif->centre == Centre::Both);
}

TEST_CASE("a box cushion's parts are cut as the published rules say", "[forms]") {
    const PieceForm &form = *pieceForm("club-chair");
    FormMeasures measures = typicalMeasures(form, Unit::Inch);
    measures.at("seat-cushion").sizes = sizes(22_in, 24_in);
    measures.at("seat-cushion").sizes[Measure::Thickness] = 4_in;
    const FormPanels made = panelsFrom(form, measures, {}, plainCloth());
    // T8.4: plates 23 x 25, boxing 5 high and 70 long in all, zipper strips 2 of 30 x 3 1/4
    CHECK(cutSize(panelOf(made, "seat-cushion")) == sizes(23_in, 25_in));
    CHECK(cutSize(panelOf(made, "seat-cushion-under")) == sizes(23_in, 25_in));
    const Panel &front = panelOf(made, "seat-cushion-front"), &side = panelOf(made, "seat-cushion-side");
    CHECK(cutSize(front)[Measure::Up] == 5_in);
    CHECK(std::get<Rectangle>(front.shape).across + std::get<Rectangle>(side.shape).across * 2 == 70_in);
    CHECK(side.count == 2);
    CHECK(cutSize(panelOf(made, "seat-cushion-zip")) == sizes(30_in, 3.25_in));
    CHECK(panelOf(made, "seat-cushion-zip").count == 2);
}

TEST_CASE("a skirt's panels are those of the published one", "[forms]") {
    const PieceForm &form = *pieceForm("ottoman");
    FormMeasures measures = typicalMeasures(form, Unit::Inch);
    PartMeasured &skirt = measures.at("skirt");
    CHECK_FALSE(has(panelsFrom(form, measures, {}, plainCloth()), "skirt-front"));
    skirt.there = true;
    skirt.sizes = sizes(30_in, 7_in);
    skirt.sizes[Measure::Side] = 32_in;
    const FormPanels made = panelsFrom(form, measures, {}, plainCloth());
    // T9.10
    CHECK(cutSize(panelOf(made, "skirt-front")) == sizes(38.75_in, 15_in));
    CHECK(cutSize(panelOf(made, "skirt-side")) == sizes(40.75_in, 15_in));
    CHECK(cutSize(panelOf(made, "skirt-underlay")) == sizes(8.625_in, 15_in));
    CHECK(panelOf(made, "skirt-underlay").count == 4);
}

TEST_CASE("a corner chair's seat is a square on its corner in the block that is measured", "[forms]") {
    const PieceForm &form = *pieceForm("corner-chair");
    const FormPanels made = panelsFrom(form, typicalMeasures(form, Unit::Inch), {}, plainCloth());
    const Panel &seat = panelOf(made, "seat");
    const PanelRing ring = measuredOutline(seat.shape);
    REQUIRE(ring.size() == 4);
    CHECK(twiceArea(ring) == 26_in * 26_in); // half of the block
    CHECK(ring[0] == PanelPoint{13_in, 0_in});
}

TEST_CASE("hidden parts may be turned and cut from other cloth, tucked edges may have a strip sewn on", "[forms]") {
    const PieceForm &form = *pieceForm("wing-chair");
    const FormPanels made = panelsFrom(form, typicalMeasures(form, Unit::Inch), {}, plainCloth());
    const Panel &deck = panelOf(made, "deck");
    CHECK(deck.hidden);
    CHECK(deck.may.turn);
    CHECK(deck.may.otherCloth.any);
    const Panel &back = panelOf(made, "inside-back");
    CHECK(back.allowance(Bottom) == 6_in); // T6.7
    CHECK(back.may.stretcher == std::map<int, Length>{{Bottom, 0.5_in}});
    CHECK(panelOf(made, "inside-arm").mirror);
}

TEST_CASE("motifs and flows are asked for on cloth with a pattern only", "[forms]") {
    const PieceForm &form = *pieceForm("three-seat-sofa");
    const FormMeasures measures = typicalMeasures(form, Unit::Inch);
    const FormPanels plain = panelsFrom(form, measures, {}, plainCloth()),
                     patterned = panelsFrom(form, measures, {}, printedCloth());
    CHECK(plain.flows.empty());
    for (const Panel &panel : plain.panels) CHECK_FALSE(panel.motif);
    // Back to three cushions, cushion to front, three fronts to the band.
    CHECK(patterned.flows.size() == 7);
    CHECK(patterned.flows[0].from.at->x == 36_in - 23.5_in);
    CHECK(patterned.flows[1].from.at->x == 36_in);
    CHECK(patterned.flows[2].to.copy == 3);
    CHECK(patterned.flows[3] == Flow{{"seat-cushion", Bottom, {}, {}}, {"seat-cushion-front", Top, {}, {}}, {}, {}});
}

TEST_CASE("parts that are dropped or not measured make nothing, and no join hangs loose", "[forms]") {
    const PieceForm &form = *pieceForm("club-chair");
    FormMeasures measures = typicalMeasures(form, Unit::Inch);
    measures.at("seat-cushion").there = false;
    measures.at("deck").sizes[Measure::Up] = {};
    measures.at("seat").there = true;
    const FormPanels made = panelsFrom(form, measures, {}, printedCloth());
    CHECK_FALSE(has(made, "seat-cushion"));
    CHECK_FALSE(has(made, "deck"));
    CHECK(has(made, "seat"));
    CHECK(made.flows.empty());
    CHECK(panelsFrom(form, {}, {}, printedCloth()) == FormPanels{});
}

TEST_CASE("a pair whose right one measures otherwise makes two panels", "[forms]") {
    const PieceForm &form = *pieceForm("club-chair");
    FormMeasures measures = typicalMeasures(form, Unit::Inch);
    PartMeasured &arm = measures.at("inside-arm");
    arm.twin = arm.sizes;
    (*arm.twin)[Measure::Across] += 1_in;
    const FormPanels made = panelsFrom(form, measures, {}, plainCloth());
    const Panel &left = panelOf(made, "inside-arm-left"), &right = panelOf(made, "inside-arm-right");
    CHECK(std::get<Rectangle>(right.shape).across - std::get<Rectangle>(left.shape).across == 1_in);
    CHECK(left.count == 1);
    CHECK(left.allowance(Left) == right.allowance(Right)); // the mirror image
    CHECK(left.allowance(Right) == right.allowance(Left));
    CHECK(left.allowance(Left) != left.allowance(Right));
}

TEST_CASE("rules that a shop changed are those that are used", "[forms]") {
    const PieceForm &form = *pieceForm("dining-seat");
    TradeRules rules;
    rules.seatTack = 2.5_in;
    const FormPanels made = panelsFrom(form, typicalMeasures(form, Unit::Inch), rules, plainCloth());
    CHECK(made.panels[0].allowance(Left) == 2.5_in);
}

TEST_CASE("stripes centre a part on the axis on which they repeat", "[forms]") {
    const PieceForm &form = *pieceForm("dining-seat");
    const FormMeasures measures = typicalMeasures(form, Unit::Inch);
    Cloth cloth = plainCloth();
    cloth.pattern = test::stripes(3_in);
    CHECK(panelsFrom(form, measures, {}, cloth).panels[0].motif->centre == Centre::Across);
    // Railroaded, stripes up the roll run from side to side on the seat.
    cloth.up = PatternUp::Across;
    CHECK(panelsFrom(form, measures, {}, cloth).panels[0].motif->centre == Centre::Up);
}

TEST_CASE("a pulled edge takes what brings the cut to the next half inch, a sewn one never", "[forms]") {
    const PieceForm &form = *pieceForm("club-chair");
    FormMeasures measures = typicalMeasures(form, Unit::Inch);
    measures.at("outside-arm").sizes = sizes(29.125_in, 19_in);  // pulled all round
    measures.at("arm-front").sizes = sizes(7.125_in, 20.125_in); // sewn all round
    const FormPanels made = panelsFrom(form, measures, {}, plainCloth());
    const Panel &arm = panelOf(made, "outside-arm");
    CHECK(cutSize(arm) == sizes(33.5_in, 23_in));
    CHECK(arm.allowance(Left) == 2_in);
    CHECK(arm.allowance(Right) == 2.375_in);
    CHECK(cutSize(panelOf(made, "arm-front")) == sizes(8.125_in, 21.125_in));
}

TEST_CASE("tufts and channels take what they run over", "[forms]") {
    const PieceForm &form = *pieceForm("headboard");
    FormMeasures measures = typicalMeasures(form, Unit::Inch);
    measures.at("face").sizes = sizes(60_in, 24_in);
    // Buttons 6 in apart and 4 in deep: a right triangle of 3, 4 and 5 each side, so 10 in of cloth for 6 (geometry, no
    // source).
    measures.at("face").relief = Relief{false, 6_in, 4_in};
    CHECK(panelOf(panelsFrom(form, measures, {}, plainCloth()), "face").shape == Shape(Rectangle{100_in, 40_in}));
    // Channels run up and down: only the width grows.
    measures.at("face").relief = Relief{true, 6_in, 2_in};
    const auto channelled = std::get<Rectangle>(panelOf(panelsFrom(form, measures, {}, plainCloth()), "face").shape);
    CHECK(channelled.up == 24_in);
    CHECK(channelled.across > 60_in);
    CHECK(channelled.across < 100_in);
}

TEST_CASE("skirts of other kinds are as full as the published ones", "[forms]") {
    PieceForm form = *pieceForm("ottoman");
    FormMeasures measures = typicalMeasures(form, Unit::Inch);
    measures.at("skirt").there = true;
    Sizes &skirt = measures.at("skirt").sizes;
    skirt[Measure::Across] = 80_in;
    skirt[Measure::Side] = 30_in;
    skirt[Measure::Up] = 20_in;
    const auto madeAs = [&](PartKind kind) {
        for (FormPart &part : form.parts)
            if (part.id == "skirt") part.kind = kind;
        return panelsFrom(form, measures, {}, plainCloth());
    };
    const auto around = [&](const FormPanels &made) {
        return std::get<Rectangle>(panelOf(made, "skirt-front").shape).across * 2 +
               std::get<Rectangle>(panelOf(made, "skirt-side").shape).across * 2;
    };
    CHECK(around(madeAs(PartKind::FlatSkirt)) == 220_in);
    CHECK(around(madeAs(PartKind::GatheredSkirt)) == 550_in); // T9.3: 220 gathered two and a half times is 550
    CHECK(around(madeAs(PartKind::BoxPleatSkirt)) == 660_in); // T9.6: touching folds three times; T9.4: 220 × 3
    // T9.4: a finished 20 is cut 23, with its hem of 2 1/2 and a seam.
    CHECK(cutSize(panelOf(madeAs(PartKind::GatheredSkirt), "skirt-front"))[Measure::Up] == 23_in);
    Job job = test::jobOf(plainCloth(), madeAs(PartKind::GatheredSkirt).panels);
    CHECK(faultsOfJob(job).empty());
}
