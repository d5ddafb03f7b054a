#include "core/job/fault_words.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

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
