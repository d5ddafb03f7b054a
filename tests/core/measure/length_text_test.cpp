#include "core/measure/length_text.h"

#include <catch2/catch.hpp>
#include <rapidcheck.h>

#include <array>
#include <string>

using namespace boltwright;
using namespace boltwright::literals;

namespace {

constexpr std::array<Unit, 3> allUnits = {Unit::Inch, Unit::Centimetre, Unit::Millimetre};

struct Written {
    std::string text;
    Unit unit;
    std::int64_t ticks;
};

std::string refusalOf(const Result<Length> &result) { return result ? "read as a length" : result.error().text; }

} // namespace

TEST_CASE("a length is read as a person writes it", "[length text]") {
    const auto [text, unit, ticks] = GENERATE(values<Written>({
        {"36 1/2", Unit::Inch, 36 * 8128 + 4064},
        {"36-1/2", Unit::Inch, 36 * 8128 + 4064},
        {"36½", Unit::Inch, 36 * 8128 + 4064},
        {"36 ½", Unit::Inch, 36 * 8128 + 4064},
        {"36-½", Unit::Inch, 36 * 8128 + 4064},
        {"36.5", Unit::Inch, 36 * 8128 + 4064},
        {"92.5", Unit::Centimetre, 92 * 3200 + 1600},
        {"925", Unit::Millimetre, 925 * 320},
        {"1 yd 4 1/2 in", Unit::Millimetre, 40 * 8128 + 4064},
        {"1yd4½in", Unit::Inch, 40 * 8128 + 4064},
        {"92 cm", Unit::Inch, 92 * 3200},
        {"92cm", Unit::Inch, 92 * 3200},
        {"3' 2\"", Unit::Centimetre, 38 * 8128},
        {"3′ 2″", Unit::Centimetre, 38 * 8128},
        {"3'2", Unit::Inch, 38 * 8128},
        {"3 ft 2 1/4\"", Unit::Inch, 38 * 8128 + 2032},
        {"1 yd 4", Unit::Inch, 40 * 8128},
        {"1 m 50", Unit::Centimetre, 150 * 3200},
        {"1 m 50 cm 5 mm", Unit::Inch, 1505 * 320},
        {"1 YD 4 In", Unit::Inch, 40 * 8128},
        {"¼", Unit::Inch, 2032},
        {"¾", Unit::Inch, 6096},
        {"⅛", Unit::Inch, 1016},
        {"⅜", Unit::Inch, 3048},
        {"⅝", Unit::Inch, 5080},
        {"⅞", Unit::Inch, 7112},
        {"1/64", Unit::Inch, 127},
        {"5/4", Unit::Inch, 10160},
        {"007 08/016", Unit::Inch, 7 * 8128 + 4064},
        {".5", Unit::Inch, 4064},
        {"5.", Unit::Inch, 5 * 8128},
        {"-36 1/2", Unit::Inch, -(36 * 8128 + 4064)},
        {"\u2212½", Unit::Inch, -4064},
        {"- 2", Unit::Inch, -2 * 8128},
        {"  2\t1/2 ", Unit::Inch, 2 * 8128 + 4064},
        {"2\u00a01/2\u00a0in", Unit::Inch, 2 * 8128 + 4064},
        {"0", Unit::Inch, 0},
        {"-0", Unit::Inch, 0},
        {"1000 m", Unit::Inch, 320'000'000},
    }));
    INFO(text);
    const auto length = readLength(text, unit);
    INFO(refusalOf(length));
    REQUIRE(length);
    CHECK(length->ticks() == ticks);
}

TEST_CASE("a length between two ticks goes to the nearer, and halfway away from zero", "[length text]") {
    CHECK(readLength("1/3 in", Unit::Inch)->ticks() == 2709);          // 2709.33
    CHECK(readLength("2/3 in", Unit::Inch)->ticks() == 5419);          // 5418.67
    CHECK(readLength("1/640 mm", Unit::Inch)->ticks() == 1);           // 0.5
    CHECK(readLength("-1/640 mm", Unit::Inch)->ticks() == -1);         // -0.5
    CHECK(readLength("3/640 mm", Unit::Inch)->ticks() == 2);           // 1.5
    CHECK(readLength("1/641 mm", Unit::Inch)->ticks() == 0);           // 0.499
    CHECK(readDecimal("0.0015625", Unit::Millimetre)->ticks() == 1);   // 0.5
    CHECK(readDecimal("-0.0015625", Unit::Millimetre)->ticks() == -1); // -0.5
    CHECK(readDecimal("0.00156249999999999999999999999999", Unit::Millimetre)->ticks() == 0);
    // Added before it is rounded: 1/7 yd is 41801.14 ticks, 1/21 in 387.05, together 42188.19.
    CHECK(readLength("1/7 yd 1/21 in", Unit::Inch)->ticks() == 42188);
    CHECK(readLength("2/7 ft 5/7 in", Unit::Inch)->ticks() == 33673); // 27867.43 + 5805.71
}

TEST_CASE("what is no length is refused, saying what would be right", "[length text]") {
    const auto [text, expected] = GENERATE(table<std::string, std::string>({
        {"", "no length is given; write one such as 20 1/2 or \"52 cm\""},
        {"  ", "no length is given; write one such as 20 1/2 or \"52 cm\""},
        {"-", "no length is given; write one such as 20 1/2 or \"52 cm\""},
        {"2o 1/2", "\"2o 1/2\": \"o\" is no unit; write in, ft, yd, mm, cm or m"},
        {"wide", "\"wide\" is not a length; write one such as 20 1/2 or \"52 cm\""},
        {"NaN", "\"NaN\" is not a length; write one such as 20 1/2 or \"52 cm\""},
        {"36-1", "\"36-1\": a hyphen stands between a whole number and its fraction only, as in 36-1/2"},
        {"36 - 1/2",
         "\"36 - 1/2\": between two numbers stands a unit, or the second is a fraction, as in 3 ft 4 in or 3 1/4"},
        {"36-in", "\"36-in\": a hyphen stands between a whole number and its fraction only, as in 36-1/2"},
        {"1.5.2", "\"1.5.2\" has more than one decimal mark"},
        {"3 4", "\"3 4\": between two numbers stands a unit, or the second is a fraction, as in 3 ft 4 in or 3 1/4"},
        {"1.5 1/2",
         "\"1.5 1/2\": between two numbers stands a unit, or the second is a fraction, as in 3 ft 4 in or 3 1/4"},
        {"1/2 1/2",
         "\"1/2 1/2\": between two numbers stands a unit, or the second is a fraction, as in 3 ft 4 in or 3 1/4"},
        {"½ ½", "\"½ ½\" is not a length; write one such as 20 1/2 or \"52 cm\""},
        {"92,5", "\"92,5\" has a comma; the decimal mark is a point, as in 92.5"},
        {"1,000", "\"1,000\" has a comma; the decimal mark is a point, as in 92.5"},
        {"1/0", "\"1/0\": a fraction has a number greater than zero below its stroke, as in 1/2"},
        {"1/", "\"1/\": a fraction has a number greater than zero below its stroke, as in 1/2"},
        {"3 1/00", "\"3 1/00\": a fraction has a number greater than zero below its stroke, as in 1/2"},
        {"/2", "\"/2\" is not a length; write one such as 20 1/2 or \"52 cm\""},
        {".", "\".\" is not a length; write one such as 20 1/2 or \"52 cm\""},
        {"+5", "\"+5\": leave out the plus sign"},
        {"--5", "\"--5\" is not a length; write one such as 20 1/2 or \"52 cm\""},
        {"5 miles", "\"5 miles\": \"miles\" is no unit; write in, ft, yd, mm, cm or m"},
        {"4 in 1 yd", "\"4 in 1 yd\": the larger unit comes first and each stands once, as in 1 yd 4 in"},
        {"4 in 1 in", "\"4 in 1 in\": the larger unit comes first and each stands once, as in 1 yd 4 in"},
        {"4 in 1", "\"4 in 1\": the last number needs its unit, as in 1 yd 4 in"},
        {"1 m 50", "\"1 m 50\": the last number needs its unit, as in 1 yd 4 in"},
        {"1 yd -4 in", "\"1 yd -4 in\" is not a length; write one such as 20 1/2 or \"52 cm\""},
        {"in", "\"in\" is not a length; write one such as 20 1/2 or \"52 cm\""},
        {"3''", "\"3''\" is not a length; write one such as 20 1/2 or \"52 cm\""},
        {"1e3", "\"1e3\": \"e\" is no unit; write in, ft, yd, mm, cm or m"},
        {"1000 m 1 mm", "\"1000 m 1 mm\" is longer than 1 km, the most a length can be"},
        {"-99999999999999999999999", "\"-99999999999999999999999\" is longer than 1 km, the most a length can be"},
    }));
    INFO(text);
    CHECK(refusalOf(readLength(text, Unit::Inch)) == expected);
}

TEST_CASE("a table on screen takes a decimal comma, unless it could part thousands", "[length text]") {
    const auto hand = [](const std::string &text) { return readLength(text, Unit::Centimetre, Spelling::Hand); };
    CHECK(hand("92,5") == Length(92.5_cm));
    CHECK(hand("0,125") == Length::ticks(400));
    CHECK(hand("1 m 2,5 cm") == Length(102.5_cm));
    CHECK(hand("92.5") == Length(92.5_cm));
    CHECK(refusalOf(hand("1,500")) == "\"1,500\" can be read two ways; write 1.500 or 1500");
    CHECK(refusalOf(hand("1,5,2")) == "\"1,5,2\" has more than one decimal mark");
    CHECK(refusalOf(hand("1.000,5")) == "\"1.000,5\" has more than one decimal mark");
    CHECK(refusalOf(hand("92,")) == "\"92,\" is not a length; write one such as 52.5 or \"20 1/2 in\"");
}

TEST_CASE("a number of a file is read exactly", "[length text]") {
    CHECK(readDecimal("54", Unit::Inch) == 54_in);
    CHECK(readDecimal("0.5", Unit::Inch) == 0.5_in);
    CHECK(readDecimal("1e-3", Unit::Centimetre)->ticks() == 3); // 3.2
    CHECK(readDecimal("1.5E+1", Unit::Inch) == 15_in);
    CHECK(readDecimal("-0", Unit::Inch) == Length{});
    CHECK(readDecimal("1e-999999999999", Unit::Inch) == Length{});
    CHECK(readDecimal("0e999999999999", Unit::Inch) == Length{});
    for (const char *text : {"1e300", "1e999999999999", "39370.1", "-39370.1"})
        CHECK(refusalOf(readDecimal(text, Unit::Inch)) ==
              std::string(text) + " is longer than 1 km, the most a length can be");
    for (const char *text : {"", "-", "1.", ".5", "1e", "0x10", "1 ", "nan", "inf"})
        CHECK_FALSE(readDecimal(text, Unit::Inch));
    CHECK_FALSE(readDecimal(std::string(100'000, '1'), Unit::Inch));
    CHECK_FALSE(readLength(std::string(100'000, '1'), Unit::Inch));
}

TEST_CASE("a length is written as the shortest decimal that reads back the same", "[length text]") {
    CHECK(writeDecimal(0.5_in, Unit::Inch) == "0.5");
    CHECK(writeDecimal(61.25_in, Unit::Inch) == "61.25");
    CHECK(writeDecimal(Length{}, Unit::Inch) == "0");
    CHECK(writeDecimal(-1.5_in, Unit::Inch) == "-1.5");
    CHECK(writeDecimal(54_in, Unit::Centimetre) == "137.16"); // TRADE.md T11.3: 54 in is 137.16 cm
    CHECK(writeDecimal(13.5_in + Length::ticks(1), Unit::Inch) == "13.5001");
    CHECK(writeDecimal(Length::ticks(127), Unit::Inch) == "0.0156"); // 1/64 in
    CHECK(writeDecimal(Length::limit(), Unit::Centimetre) == "100000");

    CHECK(rc::check("it reads back, in every unit, and no shorter one does", [] {
        const auto length = Length::ticks(*rc::gen::inRange<std::int64_t>(-320'000'000, 320'000'001));
        for (const Unit unit : allUnits) {
            const std::string text = writeDecimal(length, unit);
            RC_ASSERT(readDecimal(text, unit) == length);
            RC_ASSERT(readLength(text, unit) == length);
            const auto point = text.find('.');
            if (point == std::string::npos) continue;
            // The decimals of one place less on either side.
            std::string digits = text;
            digits.erase(point, 1);
            std::int64_t scale = 1;
            for (auto place = point + 2; place < text.size(); ++place) scale *= 10;
            for (const std::int64_t count :
                 {std::stoll(digits) / 10 - 1, std::stoll(digits) / 10, std::stoll(digits) / 10 + 1})
                RC_ASSERT(roundedQuotient(count * ticksIn(unit), scale) != length.ticks());
        }
    }));
}

TEST_CASE("what is spoken is what a tape shows", "[length text]") {
    CHECK(spoken(36.5_in, Unit::Inch) == "36 1/2");
    CHECK(spoken(0.5_in, Unit::Inch) == "1/2");
    CHECK(spoken(Length{}, Unit::Inch) == "0");
    CHECK(spoken(Length::ticks(253), Unit::Inch) == "0");    // just under 1/32
    CHECK(spoken(Length::ticks(254), Unit::Inch) == "1/16"); // 1/32, halfway
    CHECK(spoken(Length::ticks(-253), Unit::Inch) == "0");
    CHECK(spoken(-36.5_in, Unit::Inch) == "-36 1/2");
    CHECK(spoken(-0.25_in, Unit::Inch) == "-1/4");
    CHECK(spoken(37_in - Length::ticks(1), Unit::Inch) == "37"); // never "36 16/16"
    CHECK(spoken(36.4375_in, Unit::Inch) == "36 7/16");
    CHECK(spoken(36.4375_in, Unit::Inch, 8) == "36 1/2");
    CHECK(spoken(92.5_cm, Unit::Centimetre) == "92.5");
    CHECK(spoken(92_cm, Unit::Centimetre) == "92");
    CHECK(spoken(-0.04_cm, Unit::Centimetre) == "0");
    CHECK(spoken(92.5_cm, Unit::Millimetre) == "925");
    CHECK(spokenWithUnit(36.5_in, Unit::Inch) == "36 1/2 in");
    CHECK(spokenWithUnit(92.5_cm, Unit::Centimetre) == "92.5 cm");

    CHECK(rc::check("what is spoken reads back as the nearest sixteenth, or millimetre", [] {
        const auto length = Length::ticks(*rc::gen::inRange<std::int64_t>(-32'000'000, 32'000'001));
        for (const Unit unit : allUnits) {
            const auto heard = readLength(spoken(length, unit), unit);
            RC_ASSERT(heard);
            RC_ASSERT(2 * abs(*heard - length) <= Length::ticks(unit == Unit::Inch ? 508 : 320));
        }
    }));
}

TEST_CASE("cloth along the roll is spoken in yards or metres from one up", "[length text]") {
    CHECK(spokenAlongRoll(151_in, Unit::Inch) == "4 yd 7 in");
    CHECK(spokenAlongRoll(144_in, Unit::Inch) == "4 yd");
    CHECK(spokenAlongRoll(35.5_in, Unit::Inch) == "35 1/2 in");
    CHECK(spokenAlongRoll(36_in - Length::ticks(1), Unit::Inch) == "1 yd");
    CHECK(spokenAlongRoll(72_in - Length::ticks(1), Unit::Inch) == "2 yd"); // never "1 yd 36 in"
    CHECK(spokenAlongRoll(-40_in, Unit::Inch) == "-1 yd 4 in");
    CHECK(spokenAlongRoll(325_cm, Unit::Centimetre) == "3.25 m");
    CHECK(spokenAlongRoll(300_cm, Unit::Millimetre) == "3 m");
    CHECK(spokenAlongRoll(92.5_cm, Unit::Centimetre) == "92.5 cm");
    CHECK(spokenAlongRoll(100_cm - Length::ticks(1), Unit::Centimetre) == "1 m");
    CHECK(spokenAlongRoll(Length{}, Unit::Inch) == "0 in");
}

TEST_CASE("a yard is 0.9144 m exactly", "[length text]") {
    // International yard and pound agreement, 1959 (from memory; the same in TRADE.md T11.1).
    CHECK(readLength("1 yd", Unit::Inch) == readLength("0.9144 m", Unit::Inch));
    CHECK(readLength("1 in", Unit::Inch) == readLength("25.4 mm", Unit::Inch));
    CHECK(readLength("1000 yd", Unit::Inch) == readLength("914.4 m", Unit::Inch));
    CHECK(1_yd == 36_in);
}

TEST_CASE("fractions of a yard are the inches of the quilters' tables", "[length text]") {
    // TRADE.md T11.2 (scissortailquilting.com, catbirdquilts 2014, quiltingboard.com).
    const auto [yards, inches] = GENERATE(table<std::string, std::string>({{"1/8", "4 1/2"},
                                                                           {"1/4", "9"},
                                                                           {"1/3", "12"},
                                                                           {"3/8", "13 1/2"},
                                                                           {"1/2", "18"},
                                                                           {"5/8", "22 1/2"},
                                                                           {"2/3", "24"},
                                                                           {"3/4", "27"},
                                                                           {"7/8", "31 1/2"}}));
    CHECK(spoken(*readLength(yards + " yd", Unit::Inch), Unit::Inch) == inches);
}

TEST_CASE("what is bought is rounded up to the shop's step", "[length text]") {
    // TRADE.md T11.5: the arithmetic of the trade's charts.
    CHECK(spokenPurchase(274_in, Unit::Inch, 1) == "7 5/8 yd");
    CHECK(spokenPurchase(274_in, Unit::Inch, 2) == "7 3/4 yd");
    CHECK(spokenPurchase(274_in, Unit::Inch, 4) == "8 yd");
    CHECK(purchaseLength(274_in, Unit::Inch, 1) == 274.5_in);
    CHECK(purchaseLength(274_in, Unit::Inch, 2) == 279_in);
    CHECK(purchaseLength(274_in, Unit::Inch, 4) == 288_in);
    CHECK(spokenPurchase(89_in, Unit::Inch, 1) == "2 1/2 yd");
    CHECK(spokenPurchase(70.4_in, Unit::Inch, 1) == "2 yd");
    CHECK(spokenPurchase(123_in, Unit::Inch, 1) == "3 1/2 yd");
    // An exact multiple is not rounded up further; one tick more is.
    CHECK(purchaseLength(90_in, Unit::Inch, 1) == 90_in);
    CHECK(purchaseLength(90_in + Length::ticks(1), Unit::Inch, 1) == 94.5_in);
    CHECK(spokenPurchase(330_cm, Unit::Centimetre) == "3.3 m");
    CHECK(spokenPurchase(330_cm + Length::ticks(1), Unit::Centimetre) == "3.4 m");
    CHECK(spokenPurchase(Length{}, Unit::Inch) == "0 yd");
}
