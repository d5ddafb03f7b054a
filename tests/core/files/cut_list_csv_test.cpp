#include "core/files/cut_list_csv.h"
#include "core/job/job.h"
#include "core/panel/edges.h"
#include "tests/core/files/random_job.h"
#include "tests/core/support/jobs.h"

#include <boost/random/mersenne_twister.hpp>
#include <boost/random/uniform_int_distribution.hpp>
#include <catch2/catch.hpp>

#include <fstream>
#include <sstream>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

CutList listOf(std::string_view text, Unit unit = Unit::Inch) {
    const auto list = readCutList(text, unit);
    INFO((list ? "" : list.error().text));
    REQUIRE(list);
    return *list;
}

std::string faultOf(std::string_view text, Unit unit = Unit::Inch) {
    const auto list = readCutList(text, unit);
    return list ? "was read" : list.error().text;
}

std::string fileNamed(const std::string &name) {
    std::ifstream in(std::string(BOLTWRIGHT_SOURCE_DIR) + "/tests/core/files/calc/" + name, std::ios::binary);
    REQUIRE(in);
    std::ostringstream text;
    text << in.rdbuf();
    return text.str();
}

/// Nothing said about an edge, in one spelling.
Panel plainly(Panel panel) {
    for (EdgeLengths *lengths : {&panel.allow, &panel.allowMin}) {
        lengths->resize(edgeCount(panel.shape));
        const auto said = [](const auto &l) { return l.has_value(); };
        if (std::none_of(lengths->begin(), lengths->end(), said)) lengths->clear();
    }
    return panel;
}

/// As a text stands in a list: control characters are spaces, and nothing but spaces is nothing.
std::string listed(std::string text) {
    for (char &c : text)
        if ((c >= 0 && c < ' ' && c != '\n' && c != '\t') || c == 0x7f) c = ' ';
    return text.find_first_not_of(" \n\t") == std::string::npos ? std::string() : text;
}

std::vector<Panel> randomPanels(unsigned seed) {
    std::vector<Panel> panels = RandomJob(seed).make().panels;
    for (Panel &panel : panels) {
        panel.mark = listed(panel.mark);
        panel.name = listed(panel.name);
        panel = plainly(panel);
    }
    return panels;
}

const std::string chair = "Mark,Name,Count,Side to side (in),Up and down (in),Add at top (in),Add at bottom (in),"
                          "Add at left (in),Add at right (in),Mirrored pairs\r\n"
                          "IB,Inside back,1,24,17.5,2,2,2,2,\r\n"
                          "IA,Inside arm,2,20,27,2,2,2,2,yes\r\n";

} // namespace

TEST_CASE("a cut list reads as a person would write it", "[cut list]") {
    const CutList list = listOf("Part;Qty;Width;Height;Notes\n"
                                "Inside back;1;36 1/2;32-1/4;from the photograph\n"
                                "\n"
                                "Inside arm;2;3' 2\";92,5 cm;\n");
    REQUIRE(list.panels.size() == 2);
    CHECK(list.panels[0].name == "Inside back");
    CHECK(list.panels[0].id == "inside-back");
    CHECK(list.panels[0].shape == Shape(Rectangle{36.5_in, 32.25_in}));
    CHECK(list.panels[1].count == 2);
    CHECK(list.panels[1].shape == Shape(Rectangle{38_in, 92.5_cm}));
    CHECK(list.unused == std::vector<std::string>{"Notes"});
}

TEST_CASE("the unit stands in the heading, else it is the job's", "[cut list]") {
    CHECK(listOf("Name,Side to side (cm),Up and down\nSeat,50,20").panels[0].shape == Shape(Rectangle{50_cm, 20_in}));
    CHECK(listOf("Name,Width,Height\nSeat,50,20", Unit::Centimetre).panels[0].shape == Shape(Rectangle{50_cm, 20_cm}));
}

TEST_CASE("a cut list is written under headings a person understands", "[cut list]") {
    Panel back = rectangle("inside-back", 24_in, 17.5_in);
    back.mark = "IB";
    back.name = "Inside back";
    back.allow.assign(4, 2_in);
    Panel arm = rectangle("inside-arm", 20_in, 27_in, 2);
    arm.mark = "IA";
    arm.name = "Inside arm";
    arm.allow.assign(4, 2_in);
    arm.mirror = true;
    CHECK(writeCutList({back, arm}, Unit::Inch) == chair);
    CHECK(listOf(chair).panels == std::vector<Panel>{back, arm});
}

TEST_CASE("edges of a shape of corners are counted from 1, as the window counts them", "[cut list]") {
    Panel wing = rectangle("wing", 10_in, 10_in);
    wing.shape = PolygonShape{{{0_in, 0_in}, {12_in, 0_in}, {10_in, 20_in}}};
    wing.may.stretcher = {{0, 0.5_in}, {2, 1_in}};
    const std::string text = writeCutList({wing}, Unit::Inch);
    CAPTURE(text);
    CHECK(text.find("1 0.5 / 3 1") != std::string::npos);
    CHECK(edgeInWords(wing.shape, 2) == "edge 3");
    CHECK(listOf(text).panels.at(0).may.stretcher == wing.may.stretcher);
    // An edge that is not there is refused, and so is one counted from 0.
    for (const char *edge : {"0 0.5", "4 0.5"})
        CHECK_FALSE(
            readCutList("Name,Corners,Strip may be sewn on\nWing,0 0 / 12 0 / 10 20," + std::string(edge), Unit::Inch));
}

TEST_CASE("copies of one name get ids of their own", "[cut list]") {
    const CutList list = listOf("Name,Width,Height\nSeat,20,20\nSeat,21,21\n\"Möbel, oben\",5,5");
    CHECK(list.panels[0].id == "seat");
    CHECK(list.panels[1].id == "seat-2");
    CHECK(list.panels[2].id == "möbel-oben");
}

TEST_CASE("what is written is read back, whatever the panels are", "[cut list]") {
    for (unsigned seed = 0; seed < 300; ++seed) {
        const auto panels = randomPanels(seed);
        for (char separator : {',', ';', '\t'})
            for (Unit unit : {Unit::Inch, Unit::Centimetre, Unit::Millimetre}) {
                const std::string text = writeCutList(panels, unit, separator);
                const auto again = readCutList(text, unit);
                CAPTURE(seed, text, (again ? "" : again.error().text));
                REQUIRE(again);
                std::vector<Panel> read = again->panels;
                for (Panel &panel : read) panel = plainly(panel);
                CHECK(read == panels);
            }
    }
}

TEST_CASE("lists saved by LibreOffice Calc come in", "[cut list]") {
    // Written by LibreOffice 7.4 Calc from a sheet with numbers, texts, an empty row, quotes and a line break in a
    // cell.
    for (const char *name : {"comma.csv", "semicolon.csv"}) {
        CAPTURE(name);
        const CutList list = listOf(fileNamed(name), Unit::Centimetre);
        REQUIRE(list.panels.size() == 4);
        CHECK(list.panels[0].shape == Shape(Rectangle{60.5_cm, 52_cm}));
        CHECK(list.panels[1].name == "Inside arm, long");
        CHECK(list.panels[1].shape == Shape(Rectangle{45.5_cm, 61_cm}));
        CHECK(list.panels[1].mirror);
        CHECK(list.panels[2].shape == Shape(Rectangle{62.5_in, 58_cm}));
        CHECK(list.panels[3].name == "Möbelkante");
        CHECK(list.panels[3].count == 4);
        CHECK(list.panels[3].allowance(Top) == 1.2_cm);
        CHECK(list.unused == std::vector<std::string>{"Remarks"});
    }
}

TEST_CASE("what is wrong is said with its row and column", "[cut list]") {
    const auto [text, said] = GENERATE(table<std::string, std::string>({
        {"", "row 1, column A: the list is empty; its first row holds headings such as Name, Side to side"},
        {"Name,Width\nSeat,20", "row 1, column C: no column is headed 'Up and down'; every panel has its two measures"},
        {"Name,Width,Across,Height\n", "row 1, column C: 'Side to side' stands over column B too; keep one of them"},
        {"Name,Width,Height\nSeat,20,",
         "row 2, column C (Up and down): nothing is measured here; write a length such as 20 1/2"},
        {"Name,Width,Height\nSeat,0,5",
         "row 2, column B (Side to side): '0' is not greater than zero; write a measure above 0"},
        {"Name,Width,Height\n\nSeat,20,5,7",
         "row 3, column D: there is no heading over this; is a length with a decimal comma not quoted?"},
        {"Name,Qty,Width,Height\nSeat,two,20,5", "row 2, column B (Count): 'two' is no number from 1 to 999"},
        {"Name,Width,Height,Add top\nSeat,20,5,-1",
         "row 2, column D (Add at top): '-1' is less than zero; write 0 or more"},
        {"Name,Width,Height,Add top,At least at top\nSeat,20,5,1,2",
         "row 2, column E (At least at top): this is more than what is added there; what an edge may shrink to is at "
         "most that"},
        {"Name,Width,Height,Run\nSeat,20,5,sideways", "row 2, column D (Run): 'sideways' is none of as the cloth, up "
                                                      "the roll, down the roll, railroaded, either way, on the bias"},
        {"Name,Width,Height,Mirrored\nSeat,20,5,perhaps",
         "row 2, column D (Mirrored pairs): 'perhaps' is neither yes nor no"},
        {"Mark,Name,Width,Height\n,,20,5", "row 2, column B (Name): the panel has neither a mark nor a name"},
        {"Id,Width,Height\na,1,1\na,2,2", "row 3, column A (Id): 'a' is used twice; give each its own"},
        {"Name,Corners\nSeat,0 0 / 10 0 / 0 10 / 10 10",
         "row 2, column B (Corners): the outline crosses or touches itself; give its corners in order"},
        {"Name,Corners\nSeat,0 0 / 0 10 / 10 10",
         "row 2, column B (Corners): the corners run clockwise; give them counter-clockwise"},
        {"Name,Width,Height,Top width,\"Made of pieces, at most\"\nSeat,20,5,10,2",
         "row 2, column E (Made of pieces, at most): only a rectangle may be made of pieces; write 1"},
    }));
    CHECK(faultOf(text) == said);
}

TEST_CASE("a length that is none is shown with one that is", "[cut list]") {
    const std::string said = faultOf("Name,Width,Height\nSeat,2o 1/2,20");
    CHECK(said.starts_with("row 2, column B (Side to side): \"2o 1/2\""));
}

TEST_CASE("broken lists never stop the reader, and it always says where", "[cut list]") {
    boost::random::mt19937 random(7);
    const auto whole = [&](std::size_t most) {
        return std::size_t(boost::random::uniform_int_distribution<int>(0, int(most))(random));
    };
    const std::vector<std::string> pieces = {"\"",
                                             "\"\"",
                                             ",",
                                             ";",
                                             "\t",
                                             "\r",
                                             "\n",
                                             std::string(1, '\0'),
                                             "\xff",
                                             "\xef\xbb\xbf",
                                             "é",
                                             "1e9",
                                             "-",
                                             "1/0",
                                             "99999999999999999999",
                                             "½",
                                             "(cm)",
                                             "/",
                                             "0 0 / 1 0 / 0 1",
                                             "yes",
                                             "Corners",
                                             "Up and down",
                                             "Id",
                                             "1 km",
                                             "nan",
                                             "' \"",
                                             "sep=,",
                                             std::string(3000, '7')};
    int refused = 0, read = 0;
    for (unsigned seed = 0; seed < 600; ++seed) {
        std::string text = writeCutList(randomPanels(seed % 40), Unit::Inch, ",;\t"[seed % 3]);
        if (seed % 4 == 0) text = chair;
        for (std::size_t n = 1 + whole(4); n > 0; --n) {
            const std::size_t at = whole(text.size());
            switch (whole(4)) {
            case 0:
                text.insert(at, pieces[whole(pieces.size() - 1)]);
                break;
            case 1:
                text.erase(at, whole(12));
                break;
            case 2:
                text.resize(at);
                break;
            case 3:
                text.insert(at, text.substr(whole(text.size()), whole(40)));
                break;
            case 4:
                if (at < text.size()) text[at] = char(whole(255));
                break;
            }
        }
        const auto list = readCutList(text, Unit::Inch);
        if (list) {
            ++read;
            // What was read keeps the rules of a job, so that it can be planned.
            Job job = jobOf(bolt(54_in), list->panels);
            job.cloths[0].pattern = motifs(1_in, 1_in);
            for (Panel &panel : job.panels) panel.cloth.reset(), panel.may.otherCloth.id.clear();
            CAPTURE(seed, text);
            CHECK(faultsOfJob(job).empty());
        } else {
            ++refused;
            CAPTURE(seed, list.error().text);
            CHECK(list.error().text.starts_with("row "));
            CHECK(list.error().text.find(", column ") != std::string::npos);
            CHECK(list.error().text.find('\n') == std::string::npos);
        }
    }
    CHECK(refused >= 200);
    CHECK(read >= 50);
}
