#include "core/files/job_file.h"
#include "core/measure/length_text.h"
#include "tests/core/files/job_folder.h"
#include "tests/core/files/random_job.h"
#include "tests/core/support/rounds.h"

#include <catch2/catch.hpp>

#include <sstream>

using namespace boltwright;
using namespace boltwright::literals;
using test::projectFolder;
using test::textOf;

namespace {

Job jobFrom(const std::string &text) {
    const auto job = readJob(text);
    INFO((job ? "" : job.error().text));
    REQUIRE(job);
    return *job;
}

std::string refusalOf(const std::string &text) {
    const auto job = readJob(text);
    return job ? "read as a job" : job.error().text;
}

std::string easyChairs() { return textOf(projectFolder() / "tests/jobs/easy-chairs.boltwright"); }

std::string replaced(std::string text, const std::string &what, const std::string &by) {
    const auto at = text.find(what);
    INFO(what);
    REQUIRE(at != std::string::npos);
    REQUIRE(text.find(what, at + 1) == std::string::npos);
    return text.replace(at, what.size(), by);
}

/// What changed from one text to the other: lines that only one of them has, commas at their ends aside.
std::string changes(const std::string &before, const std::string &after) {
    const auto linesOf = [](const std::string &text) {
        std::vector<std::string> lines;
        std::istringstream in(text);
        for (std::string line; std::getline(in, line);) {
            line.erase(0, line.find_first_not_of(' '));
            if (!line.empty() && line.back() == ',') line.pop_back();
            lines.push_back(line);
        }
        return lines;
    };
    auto gone = linesOf(before), come = linesOf(after);
    std::string text;
    for (const auto &line : gone) {
        const auto same = std::find(come.begin(), come.end(), line);
        if (same == come.end())
            text += "- " + line + "\n";
        else
            come.erase(same);
    }
    for (const auto &line : come) text += "+ " + line + "\n";
    return text;
}

// A job as somebody may have written it: keys in an order of their own, lengths as spoken, and keys of a program that
// knows more than this one.
const std::string handWritten = R"({
  "unit": "in", "boltwright": 1,
  "shop": {"bench": 3, "notes": ["old", 1.50, 1e2, 12345678901234567890123]},
  "panels": [
    {"shape": {"up": "17-1/2", "weave": "twill", "kind": "rectangle", "across": "2 ft"},
     "colour": "oxblood", "id": "seat", "allow": {"left": "½", "top": 1.50},
     "motif": {"centre": "across", "why": "the medallion"}, "may": {"turn": false, "ask": true}}
  ],
  "cloths": [{"bolt": {"width": "1 1/2 yd", "roll": 12}, "supplier": null, "pattern": {"across": 13.5, "scale": 1.0, "along": 27},
              "id": "body", "gauge": 0.10}],
  "layouts": [{"cuts": [{"panel": "seat", "y": 0, "x": 1, "copy": 1, "on": null, "pinned": true}], "liked": "yes"}],
  "made_with": "a pencil"
}
)";

} // namespace

TEST_CASE("every sample is read, and what is written of it is written again byte for byte", "[job text]") {
    int samples = 0;
    for (const auto &entry : std::filesystem::directory_iterator(projectFolder() / "samples")) {
        if (entry.path().extension() != ".boltwright") continue;
        ++samples;
        INFO(entry.path().filename());
        const Job job = jobFrom(textOf(entry.path()));
        const std::string written = writeJob(job);
        const Job again = jobFrom(written);
        CHECK(again == job);
        CHECK(writeJob(again) == written);
    }
    CHECK(samples > 0);
}

TEST_CASE("any job is the same after it was written and read, and its text after it was written again", "[job text]") {
    for (unsigned seed = 0; seed < 400; ++seed) {
        INFO("seed " << seed);
        const Job job = test::RandomJob(seed).make();
        const auto faults = faultsOfJob(job);
        INFO((faults.empty() ? "" : faults[0]));
        REQUIRE(faults.empty());
        const std::string written = writeJob(job);
        INFO(written);
        const Job again = jobFrom(written);
        REQUIRE(again == job);
        REQUIRE(writeJob(again) == written);
    }
}

TEST_CASE("what this program does not know keeps its place and its spelling", "[job text]") {
    const Job job = jobFrom(handWritten);
    CHECK(writeJob(job) == R"({
  "unit": "in",
  "boltwright": 1,
  "shop": {"bench": 3, "notes": ["old", 1.50, 1e2, 12345678901234567890123]},
  "panels": [
    {
      "shape": {"up": "17-1/2", "weave": "twill", "kind": "rectangle", "across": "2 ft"},
      "colour": "oxblood",
      "id": "seat",
      "allow": {"left": "½", "top": 1.50},
      "motif": {"centre": "across", "why": "the medallion"},
      "may": {"turn": false, "ask": true}
    }
  ],
  "cloths": [
    {
      "bolt": {"width": "1 1/2 yd", "roll": 12},
      "supplier": null,
      "pattern": {"across": 13.5, "scale": 1.0, "along": 27},
      "id": "body",
      "gauge": 0.10
    }
  ],
  "layouts": [
    {"cuts": [{"panel": "seat", "y": 0, "x": 1, "copy": 1, "on": null, "pinned": true}], "liked": "yes"}
  ],
  "made_with": "a pencil"
}
)");
}

TEST_CASE("only what was changed is spelt anew", "[job text]") {
    Job job = jobFrom(handWritten);
    const std::string before = writeJob(job);
    Panel &seat = job.panels[0];

    SECTION("a measure, in its place") {
        std::get<Rectangle>(seat.shape).across = 25.5_in;
        CHECK(changes(before, writeJob(job)) ==
              "- \"shape\": {\"up\": \"17-1/2\", \"weave\": \"twill\", \"kind\": \"rectangle\", \"across\": \"2 ft\"}\n"
              "+ \"shape\": {\"up\": \"17-1/2\", \"weave\": \"twill\", \"kind\": \"rectangle\", \"across\": 25.5}\n");
        std::get<Rectangle>(seat.shape).across = 24_in;
        CHECK(writeJob(job) == before); // and changed back, as it was spelt
    }
    SECTION("another kind of shape drops the measures of the old one, and nothing else") {
        seat.shape = Trapezoid{24_in, 20_in, 17.5_in, {}};
        CHECK(changes(before, writeJob(job)) ==
              "- \"shape\": {\"up\": \"17-1/2\", \"weave\": \"twill\", \"kind\": \"rectangle\", \"across\": \"2 ft\"}\n"
              "+ \"shape\": {\"weave\": \"twill\", \"kind\": \"trapezoid\", \"bottom\": 24, \"top\": 20, \"up\": "
              "17.5}\n");
    }
    SECTION("a new key goes behind the one that comes before it") {
        seat.name = "Seat";
        job.gap = 0.25_in;
        job.cloths[0].selvage = 0.5_in;
        CHECK(changes(before, writeJob(job)) == "+ \"name\": \"Seat\"\n+ \"selvage\": 0.5\n+ \"gap\": 0.25\n");
        CHECK(writeJob(job).find("\"id\": \"seat\",\n      \"name\": \"Seat\",\n      \"allow\"") != std::string::npos);
    }
    SECTION("a part that is replaced by one that keeps nothing still keeps its place") {
        seat.may = May{};
        seat.motif = MotifWish{};
        CHECK(changes(before, writeJob(job)) == "- \"motif\": {\"centre\": \"across\", \"why\": \"the medallion\"}\n"
                                                "+ \"motif\": {\"centre\": \"both\", \"why\": \"the medallion\"}\n");
    }
    SECTION("what is taken away goes with all it had") {
        seat.motif.reset();
        job.cloths[0].name = "so that its object stays too long for one line, which is not what is asked here";
        job.cloths[0].pattern.reset();
        job.layouts.clear();
        CHECK(changes(before, writeJob(job)) ==
              "- \"motif\": {\"centre\": \"across\", \"why\": \"the medallion\"}\n"
              "- \"pattern\": {\"across\": 13.5, \"scale\": 1.0, \"along\": 27}\n"
              "- \"layouts\": [\n"
              "- {\"cuts\": [{\"panel\": \"seat\", \"y\": 0, \"x\": 1, \"copy\": 1, \"on\": null, \"pinned\": true}], "
              "\"liked\": \"yes\"}\n"
              "- ]\n"
              "+ \"name\": \"so that its object stays too long for one line, which is not what is asked here\"\n"
              "+ \"layouts\": []\n");
    }
    SECTION("new parts say only what differs from what leaving it out means") {
        Panel border;
        border.id = "border";
        border.shape = Rectangle{40_in, 6_in};
        border.allow = {0.5_in, 0.5_in, 0.5_in, 0.5_in};
        border.motif = MotifWish{};
        job.panels.push_back(border);
        CHECK(writeJob(job).find(R"(
    {
      "id": "border",
      "shape": {"kind": "rectangle", "across": 40, "up": 6},
      "allow": 0.5,
      "motif": {"centre": "both"}
    })") != std::string::npos);
    }
    SECTION("parts may change places and take what they keep along") {
        Panel first = seat;
        first.id = "front";
        job.panels.insert(job.panels.begin(), first);
        const Job again = jobFrom(writeJob(job));
        CHECK(again == job);
        CHECK(writeJob(again) == writeJob(job));
    }
    CHECK(jobFrom(writeJob(job)) == job);
}

TEST_CASE("in another unit every number is written anew, and a text with a unit of its own stays", "[job text]") {
    Job job = jobFrom(handWritten);
    job.unit = Unit::Centimetre;
    const std::string written = writeJob(job);
    CHECK(jobFrom(written) == job);
    CHECK(written.find("\"pattern\": {\"across\": 34.29, \"scale\": 1.0, \"along\": 68.58}") != std::string::npos);
    CHECK(written.find("\"width\": \"1 1/2 yd\"") != std::string::npos);
    CHECK(written.find("\"up\": 44.45") != std::string::npos); // was "17-1/2" in inches
}

TEST_CASE("lengths are read to the tick, as numbers and as texts", "[job text]") {
    const Job job = jobFrom(easyChairs());
    CHECK(job.gap == 0.25_in);
    CHECK(job.cloths[2].bolt->width == 54_in);
    CHECK(std::get<Rectangle>(job.panels[0].shape).up == 17.5_in);
    CHECK(job.panels[1].allow == EdgeLengths(4, 1_in));
    CHECK(job.panels[0].allow == EdgeLengths{2_in, 1_in, 1.5_in, 1_in}); // bottom, right, top, left
    CHECK(job.panels[0].allowMin == EdgeLengths{std::nullopt, std::nullopt, 0.75_in, std::nullopt});
    CHECK(job.panels[0].may.stretcher == std::map<int, Length>{{Bottom, 0.25_in}});
    CHECK(job.flows[0].to.edge == 3);
    CHECK(job.layouts[0].conceded[0].edge == Top);
    CHECK(job.layouts[0].cuts[1].y == 36_in);
}

TEST_CASE("what leaving a key out means", "[job text]") {
    const Job job = jobFrom(R"({"boltwright": 1, "unit": "cm", "cloths": [{"id": "c", "bolt": {"width": 140}}],
        "panels": [{"id": "p", "shape": {"kind": "trapezoid", "bottom": 9, "top": 9, "up": 9}}],
        "layouts": [{"cuts": [{"panel": "p", "copy": 1, "x": 0, "y": 0}]}]})");
    CHECK(job.gap == Length{});
    const Cloth &cloth = job.cloths[0];
    CHECK(cloth.selvage == Length{});
    CHECK(cloth.edge == Length{});
    CHECK(cloth.bolt->square == Length{});
    CHECK_FALSE(cloth.bolt->length);
    CHECK(cloth.way == Way::One);
    CHECK(cloth.up == PatternUp::Roll);
    const Panel &panel = job.panels[0];
    CHECK(panel.count == 1);
    CHECK(panel.pieces.most == 1);
    CHECK(panel.allowance(Top) == Length{});
    CHECK(&job.clothOf(panel) == &cloth);
    const Cut &cut = job.layouts[0].cuts[0];
    CHECK(cut.piece == 1);
    CHECK(cut.of == 1);
    CHECK(cut.turn == Turn::Deg0);
    CHECK(cut.state == CutState::Planned);
    CHECK_FALSE(cut.mirrored);
    CHECK(&job.clothOf(cut) == &cloth);
}

TEST_CASE("a polygon's allowances are a list, or by the edge's number", "[job text]") {
    const std::string byNumber = replaced(easyChairs(), "[0.5, 0.5, 0.5, 0.5, 0.75]", R"({"1": 0.5, "4": "3/4"})");
    const Job job = jobFrom(byNumber);
    CHECK(job.panels[2].allow == EdgeLengths{std::nullopt, 0.5_in, std::nullopt, std::nullopt, 0.75_in});
    CHECK(jobFrom(writeJob(job)) == job);
}

TEST_CASE("a file with a byte order mark is read", "[job text]") {
    CHECK(jobFrom("\xEF\xBB\xBF" + easyChairs()) == jobFrom(easyChairs()));
}

TEST_CASE("a file that is no job is refused in one clear line", "[job text]") {
    CHECK(refusalOf("") == "there is nothing in it");
    CHECK(refusalOf(" \n\t") == "there is nothing in it");
    CHECK(refusalOf("[]") == "[] is not an object; write its keys in braces");
    CHECK(refusalOf("3") == "3 is not an object; write its keys in braces");
    CHECK(refusalOf("{}") == "boltwright: this key is missing");
    CHECK(refusalOf("{\"boltwright\": 1,\n\"unit\": \"in\"") ==
          "this is not JSON: line 2, column 13: unexpected end of input; expected '}'");
    CHECK(refusalOf("{\"boltwright\": 1} {}") ==
          "this is not JSON: line 1, column 19: unexpected '{'; expected end of input");
    CHECK(refusalOf("{\"unit\": \"\xFF\"}") == "line 1, column 11: the text is not UTF-8; save it as UTF-8");
    CHECK(refusalOf(std::string(100'000, '[')) == "lists and objects are nested more than 64 deep, which no job needs");
    std::string deep;
    for (int i = 0; i < 100'000; ++i) deep += "{\"a\":";
    CHECK(refusalOf(deep) == "lists and objects are nested more than 64 deep, which no job needs");
    const std::string half = easyChairs().substr(0, easyChairs().size() / 2);
    CHECK(refusalOf(half).find("this is not JSON: line ") != std::string::npos);
}

TEST_CASE("a job that breaks a rule of the format is refused, saying where, what and what would be right",
          "[job text]") {
    const std::string base = easyChairs();
    REQUIRE(readJob(base));
    std::istringstream cases(textOf(projectFolder() / "tests/jobs/broken.txt"));
    const auto rest = [](const std::string &line, const std::string &start) {
        return line.size() > start.size() ? line.substr(start.size() + 1) : std::string();
    };
    std::string what, by;
    int count = 0;
    for (std::string line; std::getline(cases, line);) {
        if (line.starts_with("replace:")) what = rest(line, "replace:");
        if (line.starts_with("by:")) by = rest(line, "by:");
        if (!line.starts_with("says:")) continue;
        ++count;
        INFO("replace: " << what << "\nby: " << by);
        CHECK(refusalOf(replaced(base, what, by)) == rest(line, "says:"));
    }
    CHECK(count >= 130);
}

TEST_CASE("bytes changed at random give a job or one line, never a crash", "[job text]") {
    const std::string base = easyChairs();
    test::RandomJob random(7);
    int read = 0;
    for (int round = 0; round < test::rounds(4'000); ++round) {
        std::string text = base;
        for (int i = 0, n = random.whole(1, 2); i < n; ++i) {
            const auto at = std::size_t(random.whole(0, int(text.size()) - 1));
            const int manner = random.whole(0, 3);
            if (manner == 0) text[at] = char(random.whole(0, 255));
            if (manner == 1) text.erase(at, std::size_t(random.whole(1, 20)));
            if (manner == 2) text.insert(at, text.substr(std::size_t(random.whole(0, int(text.size()) - 1)), 20));
            if (manner == 3) text[at] = "0123456789-.,[]{}\"e"[random.whole(0, 18)];
        }
        const auto job = readJob(text);
        INFO(text);
        if (job) {
            ++read;
            const std::string written = writeJob(*job);
            const auto again = readJob(written);
            REQUIRE(again);
            REQUIRE(*again == *job);
            REQUIRE(writeJob(*again) == written);
        } else {
            INFO(job.error().text);
            REQUIRE_FALSE(job.error().text.empty());
            REQUIRE(job.error().text.find('\n') == std::string::npos);
            REQUIRE(job.error().text.size() < 400);
        }
    }
    CHECK(read > test::rounds(100)); // else it would say little about jobs that are read
}
