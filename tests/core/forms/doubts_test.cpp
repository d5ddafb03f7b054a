#include "core/forms/doubts.h"
#include "core/forms/forms.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;

namespace {
struct Measured {
    const PieceForm &form;
    FormMeasures measures;
    explicit Measured(const char *id) : form(*pieceForm(id)), measures(typicalMeasures(form, Unit::Inch)) {}
    PartMeasured &operator[](const char *part) { return measures.at(part); }
    std::vector<Doubt> doubts(std::optional<Length> clothWidth = {}) const {
        return doubtsOf(form, measures, Unit::Inch, clothWidth);
    }
};
using Doubts = std::vector<Doubt>;
} // namespace

TEST_CASE("typical measures raise no doubt", "[forms]") {
    for (const PieceForm &form : pieceForms())
        for (Unit unit : {Unit::Inch, Unit::Centimetre}) {
            FormMeasures measures = typicalMeasures(form, unit);
            for (auto &[id, part] : measures) part.there = true;
            for (const Doubt &doubt : doubtsOf(form, measures, unit, unit == Unit::Inch ? 53_in : 135_cm))
                FAIL_CHECK(form.id << ", " << doubt.part << ": " << doubt.text);
        }
}

TEST_CASE("arms that differ by more than 2 in are doubted", "[forms]") {
    Measured chair("club-chair");
    chair["inside-arm"].twin = chair["inside-arm"].sizes;
    (*chair["inside-arm"].twin)[Measure::Across] += 2_in;
    CHECK(chair.doubts().empty());
    (*chair["inside-arm"].twin)[Measure::Across] += 1_in;
    CHECK(chair.doubts() == Doubts{{"inside-arm", Measure::Across, "left and right differ by 3 in front to back"}});
}

TEST_CASE("a back that is taller than it is wide is doubted where the usual one is not", "[forms]") {
    Measured sofa("two-seat-sofa");
    sofa["inside-back"].sizes[Measure::Up] = 50_in;
    sofa["inside-back"].sizes[Measure::Across] = 48_in;
    const auto doubts = sofa.doubts();
    REQUIRE(doubts.size() == 2);
    CHECK(doubts[0].text == "up and down is more than twice what is usual");
    CHECK(doubts[1].text == "up and down is more than side to side; were the two exchanged?");
}

TEST_CASE("centimetres among inches are doubted", "[forms]") {
    Measured seat("dining-seat");
    seat["seat"].sizes[Measure::Across] = 50_in;
    CHECK(seat.doubts() == Doubts{{"seat", Measure::Across, "side to side is more than twice what is usual"}});
    seat["seat"].sizes[Measure::Across] = 8_in;
    CHECK(seat.doubts()[0].text == "side to side is less than half of what is usual");
}

TEST_CASE("what is not measured yet is said", "[forms]") {
    Measured seat("dining-seat");
    seat["seat"].sizes[Measure::Up] = {};
    CHECK(seat.doubts() == Doubts{{"seat", Measure::Up, "front to back is not measured yet"}});
    seat["seat"].there = false;
    CHECK(seat.doubts().empty());
}

TEST_CASE("a part without a motif whose twin has one is doubted", "[forms]") {
    Measured chair("corner-chair");
    chair["inside-back"].twin = chair["inside-back"].sizes;
    CHECK(chair.doubts().empty());
    chair["inside-back"].motif = false;
    CHECK(chair.doubts() == Doubts{{"inside-back", std::nullopt, "this part has no motif though its twin has"}});
}

TEST_CASE("cushions that do not fill the seat are doubted", "[forms]") {
    Measured sofa("three-seat-sofa");
    sofa["seat-cushion"].count = 2;
    CHECK(sofa.doubts() ==
          Doubts{{"seat-cushion", Measure::Across, "side by side they measure 47 in, and Inside back is 72 in wide"}});
}

TEST_CASE("a part wider than the cloth and of one piece is doubted", "[forms]") {
    Measured chair("club-chair");
    chair["outside-back"].sizes[Measure::Across] = 55_in;
    CHECK(chair.doubts().empty());
    CHECK(chair.doubts(53_in) ==
          Doubts{{"outside-back", Measure::Across,
                  "wider than the cloth (53 in) and made of one piece; railroad it, or allow a join"}});
}

TEST_CASE("an outside much smaller than its inside is doubted", "[forms]") {
    Measured chair("club-chair");
    chair["outside-arm"].sizes[Measure::Across] = 17_in;
    chair["outside-arm"].sizes[Measure::Up] = 16_in;
    CHECK(chair.doubts() == Doubts{{"outside-arm", Measure::Across, "front to back it is 7 in less than Inside arm"}});
}
