#include "core/files/job_file.h"
#include "core/job/fault_words.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

#include <fstream>
#include <iterator>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

/// A stool of plain ticking: a seat, and a border that is to show the middle of a stripe.
Job stool() {
    Cloth ticking = bolt(54_in, "body");
    ticking.name = "Ticking";
    ticking.pattern = stripes(4.5_in, 2.25_in);
    Job job = jobOf(ticking, {rectangle("seat", 18_in, 16_in), rectangle("border", 18_in, 4_in, 4)});
    job.panels[0].name = "Seat";
    job.panels[1].name = "";
    job.panels[1].mark = "B";
    return job;
}

std::vector<std::string> said(const Job &job) { return faultsInWords(job); }
using Sentences = std::vector<std::string>;

} // namespace

TEST_CASE("a right job has nothing to be told", "[job]") { CHECK(said(stool()).empty()); }

TEST_CASE("a fault is told by the part's name or mark and the words of the table", "[job]") {
    Job job = stool();
    job.panels[0].allow = {1_in, 1_in, 1_in, 1_in};
    job.panels[0].allowMin = {{}, {}, 1.5_in, {}};
    job.panels[1].count = 0;
    CHECK(said(job) ==
          Sentences{"Seat, least allowance, top: 1.5 in is more than the allowance of 1 in; what an edge may "
                    "shrink to is at most that",
                    "B, count: 0 is no number of copies; write 1 to 10000"});
}

TEST_CASE("what cannot be centred is said in repeats, not in keys", "[job]") {
    Job job = stool();
    job.panels[0].motif = MotifWish{Centre::Up, {}, {}};
    CHECK(said(job) ==
          Sentences{"Seat, centred: cloth 'Ticking' has no vertical repeat, and as the panel runs that does "
                    "not do; centre it another way, or run it another way"});
    job.panels[0].run = Run::Bias;
    CHECK(said(job) == Sentences{"Seat, centred: on the bias it can be centred both ways, or not at all"});
    job.cloths[0].pattern.reset();
    CHECK(said(job) ==
          Sentences{"Seat, centred: cloth 'Ticking' has no repeat to centre; say \"no\", or give the cloth "
                    "its repeat first"});
}

TEST_CASE("cloth is told by its name", "[job]") {
    Job job = stool();
    job.cloths[0].selvage = 27_in;
    job.cloths[0].pattern->across = 0_in;
    job.gap = -1_in;
    CHECK(said(job) == Sentences{"Ticking, selvage: two selvages of 27 in leave nothing of a width of 54 in",
                                 "Ticking, horizontal repeat: 0 in is not greater than zero; write a measure above 0",
                                 "Gap between cuts: -1 in is less than zero; write 0 or more"});
}

TEST_CASE("no key of the file stands in what a person at the window can cause", "[job]") {
    Job job = stool();
    job.panels[0].shape = PolygonShape{{{0_in, 0_in}, {10_in, 10_in}, {10_in, 0_in}, {0_in, 10_in}}};
    job.panels[1].shape = Trapezoid{18_in, 0_in, 4_in, {}};
    job.panels[1].allow = {-1_in, {}, {}, {}};
    job.panels[1].pieces.most = 2;
    job.cloths[0].bolt->square = -1_in;
    job.cloths[0].price = Price{"ell", -3, "USD", {}};
    job.cloths[0].pattern->across.reset();
    const auto sentences = said(job);
    CHECK(sentences.size() == faultsOfJob(job).size());
    CHECK(sentences.size() >= 7);
    for (const std::string &sentence : sentences) {
        INFO(sentence);
        for (const char *key : {"panels[", "cloths[", "shape", "points", "allow_min", "allow.", ".most", "pattern",
                                "along", "square:", "centre:"})
            CHECK(sentence.find(key) == std::string::npos);
    }
}

TEST_CASE("a file that is refused is told in the trade's words, with where it stands in the file", "[job]") {
    const std::string begin = R"({"boltwright": 1, "unit": "in", "cloths": [{"id": "body", "bolt": {"width": 54}}],
        "panels": [{"id": "inside-back", "name": "Inside back", "shape": {"kind": "rectangle", "across": )",
                      end = R"(, "up": 17}, "allow": 1, "allow_min": {"top": )", last = "}}]}";
    CHECK_FALSE(whyRefused(begin + "24" + end + "0.5" + last));
    const auto length = whyRefused(begin + "\"2o 1/2\"" + end + "0.5" + last);
    REQUIRE(length);
    CHECK(length->inWords.rfind("Inside back, across: \"2o 1/2\"", 0) == 0);
    CHECK(length->where == "panels[0] 'inside-back', shape.across");
    const auto rule = whyRefused(begin + "24" + end + "2" + last);
    REQUIRE(rule);
    CHECK(rule->inWords.rfind("Inside back, least allowance, top: 2 in is more than the allowance of 1 in", 0) == 0);
    CHECK(rule->where == "panels[0] 'inside-back', allow_min.top");
    const auto list = whyRefused(R"({"boltwright": 1, "unit": "in", "cloths": {}, "panels": []})");
    REQUIRE(list);
    CHECK(list->inWords == "Cloths: it cannot be read");
    CHECK(list->where == "cloths");
    const auto gone = whyRefused(R"({"boltwright": 1, "unit": "in", "cloths": []})");
    REQUIRE(gone);
    CHECK(gone->inWords == "Panels: it is not told");
    const auto damaged = whyRefused("{\"boltwright\": 1");
    REQUIRE(damaged);
    CHECK(damaged->inWords == "it is damaged, or no job file");
    CHECK(damaged->where.find("line 1") != std::string::npos);
}

TEST_CASE("whatever a reader refuses, the window's words hold no key of the file", "[job]") {
    // Every case of the list of broken jobs: what a person reads has no path in it, and what stands beside it has.
    std::ifstream cases(std::string(BOLTWRIGHT_SOURCE_DIR) + "/tests/jobs/broken.txt"),
        right(std::string(BOLTWRIGHT_SOURCE_DIR) + "/tests/jobs/easy-chairs.boltwright");
    const std::string whole{std::istreambuf_iterator<char>(right), {}};
    REQUIRE_FALSE(whyRefused(whole));
    std::string line, replace;
    int seen = 0;
    const auto after = [](const std::string &text, std::size_t n) { return text.size() > n ? text.substr(n) : ""; };
    while (std::getline(cases, line)) {
        if (line.rfind("replace:", 0) == 0) replace = after(line, 9);
        if (line.rfind("by:", 0) != 0) continue;
        const std::string by = after(line, 4);
        const std::size_t at = whole.find(replace);
        if (at == std::string::npos) continue;
        std::string text = whole;
        text.replace(at, replace.size(), by);
        const auto why = whyRefused(text);
        const auto said = readJob(text);
        CAPTURE(replace, by);
        REQUIRE(why.has_value() != said.has_value());
        if (!why) continue;
        CAPTURE(why->inWords, why->where, said.error().text);
        ++seen;
        CHECK(said.error().text.rfind(why->where, 0) == 0);
        for (const char *key :
             {"panels[", "cloths[", "layouts[", "flow[", "_min", "this key", "in brackets", "in braces"})
            CHECK(why->inWords.find(key) == std::string::npos);
    }
    CHECK(seen > 60);
}
