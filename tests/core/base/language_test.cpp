#include "core/base/language.h"
#include "core/paper/words.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;

TEST_CASE("a phrase takes its parts where the reader's language wants them", "[language]") {
    CHECK(phrase("%1 of %2", {"2", "3"}) == "2 of 3");
    CHECK(phrase("100 % of %1", {"%2"}) == "100 % of %2"); // what came in is not looked at again
    speak({[](const char *english) {
               return english == std::string("%1 of %2") ? "von %2 das %1." : std::string(english);
           },
           [](const std::string &plain) {
               std::string out = plain;
               for (char &c : out) c = c == '.' ? ',' : c;
               return out;
           }});
    ChalkRow row;
    row.copy = 2;
    row.copies = 3;
    CHECK(copyWords(row) == "von 3 das 2.");
    CHECK(spokenSize(92.5_cm, 10_cm, Unit::Centimetre) == "92,5 × 10");
    speak({});
    CHECK(copyWords(row) == "2 of 3");
}
