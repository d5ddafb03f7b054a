#include "core/files/csv.h"

#include <catch2/catch.hpp>
#include <rapidcheck/catch.h>

using namespace boltwright;

namespace {
using Rows = std::vector<std::vector<std::string>>;
Rows rowsOf(std::string_view text) {
    const auto table = readCsv(text);
    REQUIRE(table);
    return table->rows;
}
std::string faultOf(std::string_view text) {
    const auto table = readCsv(text);
    return table ? "was read" : table.error().text;
}
} // namespace

TEST_CASE("values separated by commas, semicolons or tabs", "[csv]") {
    const Rows rows = {{"Name", "Width"}, {"Seat", "20"}};
    CHECK(rowsOf("Name,Width\r\nSeat,20\r\n") == rows);
    CHECK(rowsOf("Name;Width\nSeat;20") == rows);
    CHECK(rowsOf("Name\tWidth\rSeat\t20\r") == rows);
    CHECK(rowsOf("\xef\xbb\xbfName,Width\nSeat,20\n") == rows); // byte order mark
    CHECK(rowsOf("sep=;\nName;Width\nSeat;20") == Rows{{}, {"Name", "Width"}, {"Seat", "20"}});
    CHECK(rowsOf("Name;Width, all\nSeat;20,5") == Rows{{"Name", "Width, all"}, {"Seat", "20,5"}});
}

TEST_CASE("the examples of RFC 4180, section 2", "[csv]") {
    CHECK(rowsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n") == Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}});
    CHECK(rowsOf("aaa,bbb,ccc\r\nzzz,yyy,xxx") == Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}});
    CHECK(rowsOf("\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx") == Rows{{"aaa", "bbb", "ccc"}, {"zzz", "yyy", "xxx"}});
    CHECK(rowsOf("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx") ==
          Rows{{"aaa", "b\r\nbb", "ccc"}, {"zzz", "yyy", "xxx"}});
    CHECK(rowsOf("\"aaa\",\"b\"\"bb\",\"ccc\"") == Rows{{"aaa", "b\"bb", "ccc"}});
}

TEST_CASE("feet and inches need no quoting, and empty lines count", "[csv]") {
    CHECK(rowsOf("Name,Width\nSeat,3' 2\"") == Rows{{"Name", "Width"}, {"Seat", "3' 2\""}});
    CHECK(rowsOf("a,b\n\n\nc,d\n") == Rows{{"a", "b"}, {}, {}, {"c", "d"}});
    CHECK(rowsOf("a,b,\n,,\n") == Rows{{"a", "b", ""}, {"", "", ""}});
    CHECK(rowsOf("").empty());
}

TEST_CASE("what cannot be read names row and column", "[csv]") {
    CHECK(faultOf("a,b\nc,\"d") == "row 2, column B: a quote is opened here and never closed");
    CHECK(faultOf("a,b\n\"c\"d,e") ==
          "row 2, column A: something stands behind the closing quote; write a quote inside a quoted cell twice");
    CHECK(faultOf("a,b\nc,d\xff") == "row 2, column B: the text is not UTF-8; save the list as CSV in UTF-8");
    CHECK(faultOf("\xff\xfe"
                  "a") == "row 1, column A: the text is not UTF-8; save the list as CSV in UTF-8");
    CHECK(faultOf(std::string("a,b\nc,\0", 7)) ==
          "row 2, column B: there is a control character (code 0); save the list as plain CSV");
    CHECK(faultOf(std::string(300, ',')) == "row 1, column GS: a row has more than 200 cells");
    CHECK(faultOf(std::string(20'000, '\n')) == "row 10000, column A: the list is longer than 10000 rows");
}

TEST_CASE("columns are lettered as in a spreadsheet", "[csv]") {
    CHECK(columnLetters(0) == "A");
    CHECK(columnLetters(25) == "Z");
    CHECK(columnLetters(26) == "AA");
    CHECK(columnLetters(701) == "ZZ");
    CHECK(columnLetters(702) == "AAA");
}

TEST_CASE("a table that is written is read back", "[csv]") {
    rc::prop("whatever its cells hold", [] {
        CsvTable table;
        table.separator = *rc::gen::element(',', ';', '\t');
        const auto cell =
            rc::gen::container<std::string>(rc::gen::element('a', ' ', '"', ',', ';', '\t', '\n', '\r', '\''));
        // The first row tells the separator by itself.
        table.rows.push_back({"Mark", "Name", "Count"});
        for (int i = *rc::gen::inRange(0, 5); i > 0; --i)
            table.rows.push_back(
                *rc::gen::container<std::vector<std::string>>(std::size_t(*rc::gen::inRange(1, 6)), cell));
        const auto again = readCsv(writeCsv(table));
        RC_ASSERT(again.has_value());
        for (auto &row : table.rows)
            if (row.size() == 1 && row[0].empty()) row.clear();
        RC_ASSERT(*again == table);
    });
}
