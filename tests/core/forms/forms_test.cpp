#include "core/forms/form_text.h"
#include "core/forms/forms.h"
#include "core/geometry/distance.h"
#include "tests/core/support/rounds.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace boltwright;
using namespace boltwright::literals;

namespace {
std::string refusalOf(const std::string &text) {
    const auto form = readForm(text);
    return form ? "was read" : form.error().text;
}
std::string seatWith(const std::string &keys) {
    return R"({"form": 1, "unit": "in", "id": "stool", "name": "Stool", "parts": [
        {"id": "seat", "mark": "ST", "name": "Seat", "measures": [["up", "front to back", 12], ["across", "side to side", "14 1/2"]])" +
           keys + "}]}";
}
} // namespace

TEST_CASE("the usual pieces have forms", "[forms]") {
    std::vector<std::string> ids;
    for (const PieceForm &form : pieceForms()) ids.push_back(form.id);
    CHECK(ids == std::vector<std::string>{"dining-seat", "side-chair", "wing-chair", "club-chair", "tub-chair",
                                          "corner-chair", "chaise", "two-seat-sofa", "three-seat-sofa", "ottoman",
                                          "bench", "headboard"});
    CHECK(pieceForm("wing-chair")->name == "Wing chair");
    CHECK(pieceForm("hammock") == nullptr);
}

TEST_CASE("parts have the trade's marks, and are measured up first, then side to side", "[forms]") {
    // T6, names and marks; BO, BE, AP, TOP, FACE and BACK are for parts that the list there does not have.
    const std::set<std::string> marks = {"IB", "OB",   "IA",  "OA", "IW", "OW", "AF", "FB",  "DECK", "ST ED",
                                         "ST", "CUSH", "Bdr", "SK", "BO", "BE", "AP", "TOP", "FACE", "BACK"};
    for (const PieceForm &form : pieceForms())
        for (const FormPart &part : form.parts) {
            CAPTURE(form.id, part.id);
            CHECK(marks.contains(part.mark));
            CHECK(part.measures.at(0).measure == Measure::Up);
            CHECK(part.measures.at(1).measure == Measure::Across);
            if (part.mirror) CHECK(part.count == 2);
        }
}

TEST_CASE("an armchair has the ten parts of the manual, and its cushion and bands", "[forms]") {
    // T6, names and marks: seat, IB, OB, two IA, two OA, one or two borders, two facings.
    const PieceForm &form = *pieceForm("club-chair");
    const auto count = [&](const char *mark) {
        int n = 0;
        for (const FormPart &part : form.parts)
            if (part.mark == mark && !part.optional) n += part.count;
        return n;
    };
    CHECK(count("IB") == 1);
    CHECK(count("OB") == 1);
    CHECK(count("IA") == 2);
    CHECK(count("OA") == 2);
    CHECK(count("AF") == 2);
    CHECK(count("FB") == 1);
    CHECK(count("CUSH") == 1);
    CHECK(count("DECK") == 1);
}

TEST_CASE("typical sizes in a metric workroom are whole centimetres", "[forms]") {
    for (const PieceForm &form : pieceForms()) {
        const FormMeasures inch = typicalMeasures(form, Unit::Inch), metric = typicalMeasures(form, Unit::Centimetre);
        for (const auto &[id, part] : metric)
            for (Measure m : allMeasures) {
                CHECK(part.sizes[m].ticks() % 3200 == 0);
                CHECK(abs(part.sizes[m] - inch.at(id).sizes[m]) <= 5_mm);
            }
    }
}

TEST_CASE("a form that is written is read back, in every unit", "[forms]") {
    for (const PieceForm &form : pieceForms())
        for (Unit unit : {Unit::Inch, Unit::Centimetre, Unit::Millimetre}) {
            const auto again = readForm(writeForm(form, unit));
            REQUIRE(again);
            CHECK(*again == form);
        }
}

TEST_CASE("a shop's own form is read, and what is wrong in it is named", "[forms]") {
    const auto form = readForm(seatWith(R"(, "edges": "tack under", "motif": "both")"));
    REQUIRE(form);
    CHECK(form->parts[0].measures[1].typical == 14.5_in);
    CHECK(form->parts[0].edges[Top] == EdgeKind::SeatTack);

    CHECK(refusalOf("{") == "the form is not JSON; write it as the forms that come with the program are written");
    CHECK(refusalOf(R"({"unit": "in"})") == "form, form: this key is missing");
    CHECK(refusalOf(seatWith(R"(, "edges": "glued")")) ==
          "part 'seat', edges: \"glued\" is none of as measured, pull and tack, tack under, seam, welt, tuck in");
    CHECK(refusalOf(seatWith(R"(, "colour": "red")")) == "part 'seat', 'colour': there is no such key in a form");
    CHECK(refusalOf(seatWith(R"(, "kind": "box cushion")")) ==
          "part 'seat', measures: a box cushion has the measure \"thickness\"");
    CHECK(refusalOf(seatWith(R"(, "count": 0)")) == "part 'seat', count: write a number from 1 to 99");
    CHECK(refusalOf(seatWith(R"(, "kind": "on point", "pieces": 2)")) ==
          "part 'seat', pieces: only a rectangle or a skirt may be made of pieces");
}

TEST_CASE("broken forms are refused, never met with a stop", "[forms]") {
    const std::string whole = writeForm(*pieceForm("wing-chair"), Unit::Inch);
    for (std::size_t at = 0; at <= whole.rfind('}'); at += std::size_t(7 * 5 / test::rounds(5))) {
        CHECK_FALSE(readForm(whole.substr(0, at)));
        std::string broken = whole;
        broken[at] = "{}[],\"x9"[at % 8];
        const auto form = readForm(broken);
        if (!form) CHECK(form.error().text.find('\n') == std::string::npos);
    }
}
