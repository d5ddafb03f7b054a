#include "core/forms/form_text.h"
#include "core/forms/forms.h"
#include "core/forms/piece_picture.h"

#include <catch2/catch.hpp>

#include <set>

using namespace boltwright;
using namespace boltwright::literals;

namespace {

const PictureInks inks{"#101010", "#202020", "#303030", "#404040", "#505050", "#606060", "#707070"};

PieceView viewOf(const PieceForm &form, const std::string &lit) {
    PieceView view;
    for (const FormPart &part : form.parts)
        if (!part.optional || part.id == lit) view.there.insert(part.id);
    view.lit = lit;
    return view;
}

std::size_t countOf(const std::string &text, const std::string &what) {
    std::size_t count = 0;
    for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++count;
    return count;
}

} // namespace

TEST_CASE("every part of every form is in its drawing, and nothing else", "[forms]") {
    for (const PieceForm &form : pieceForms()) {
        std::set<std::string> drawn;
        for (const DrawnBlock &block : form.drawing)
            for (const std::string &part : block.parts()) {
                CAPTURE(form.id, part);
                CHECK(form.part(part));
                drawn.insert(part);
            }
        for (const FormPart &part : form.parts) {
            CAPTURE(form.id, part.id);
            CHECK(drawn.contains(part.id));
            CHECK(isDrawn(form, part.id));
        }
    }
}

TEST_CASE("the part that is measured lights up, with an arrow for each of its measures", "[forms]") {
    for (const PieceForm &form : pieceForms())
        for (const FormPart &part : form.parts) {
            CAPTURE(form.id, part.id);
            const std::string unlit = pieceSvg(form, viewOf(form, ""), inks),
                              lit = pieceSvg(form, viewOf(form, part.id), inks);
            CHECK(countOf(unlit, "<polyline") == 0);
            CHECK(countOf(unlit, "fill-opacity=\"0.32\"") == 0);
            CHECK(countOf(lit, "fill-opacity=\"0.32\"") >= 1);
            CHECK(countOf(lit, "<polyline") == part.measures.size());
            CHECK(countOf(lit, "<circle") == part.measures.size());
        }
}

TEST_CASE("the arrow of the measure that is taken stands out", "[forms]") {
    const PieceForm &form = *pieceForm("wing-chair");
    PieceView view = viewOf(form, "inside-back");
    view.measure = Measure::Across;
    const std::string svg = pieceSvg(form, view, inks);
    CHECK(countOf(svg, "<circle") == 2);
    CHECK(countOf(svg, "fill=\"#303030\" stroke=\"#303030\" stroke-width=\"2\"") == 1); // its number is filled
}

TEST_CASE("what is only seen from behind turns the piece round", "[forms]") {
    const PieceForm &sofa = *pieceForm("three-seat-sofa");
    CHECK(seenFromBehind(sofa, viewOf(sofa, "outside-back")));
    CHECK_FALSE(seenFromBehind(sofa, viewOf(sofa, "inside-back")));
    CHECK_FALSE(seenFromBehind(sofa, viewOf(sofa, "")));
    // The deck lies under the cushions, which are lifted off; it is still seen from the front.
    CHECK_FALSE(seenFromBehind(sofa, viewOf(sofa, "deck")));
    CHECK(pieceSvg(sofa, viewOf(sofa, "deck"), inks).size() < pieceSvg(sofa, viewOf(sofa, "front-band"), inks).size());
}

TEST_CASE("a part laid flat names what becomes of its edges", "[forms]") {
    const PieceForm &form = *pieceForm("wing-chair");
    const FormPart &back = *form.part("inside-back");
    Sizes sizes;
    sizes[Measure::Up] = 29_in;
    sizes[Measure::Across] = 22_in;
    const std::string svg = flatPartSvg(back, sizes, tradeRules(Unit::Inch), Measure::Up, inks);
    CHECK(countOf(svg, "tuck in") == 1);
    CHECK(countOf(svg, ">seam<") == 2);
    CHECK(countOf(svg, "<circle") == 2);
    // Nothing measured yet is drawn all the same.
    CHECK_FALSE(flatPartSvg(back, {}, tradeRules(Unit::Inch), {}, inks).empty());
}

TEST_CASE("a drawing's block says what is wrong with it", "[forms]") {
    const std::string head = R"({"form": 1, "unit": "in", "id": "s", "name": "S", "parts": [{"id": "seat", "mark": "ST",
        "name": "Seat", "measures": [["up", "front to back", 12], ["across", "side to side", 14]]}], "drawing": [)";
    const auto refusal = [&](const std::string &block) {
        const auto form = readForm(head + block + "]}");
        return form ? std::string("was read") : form.error().text;
    };
    CHECK(refusal(R"({"box": [0, 2, 0, 2, 0, 2], "top": "seat"})") == "was read");
    CHECK(refusal(R"({"box": [0, 2, 0, 2]})") == "drawing[0], box: write six numbers");
    CHECK(refusal(R"({"box": [2, 0, 0, 2, 0, 2]})") ==
          "drawing[0]: a block has corners counter-clockwise, is convex and stands up");
    CHECK(refusal(R"({"foot": [[0, 0], [2, 0], [1, 1], [0, 2]], "from": 0, "to": 1, "tall": 3})") ==
          "drawing[0], 'tall': there is no such key in a form");
}
