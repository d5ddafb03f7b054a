#include "core/job/job.h"

#include <catch2/catch.hpp>

using namespace boltwright;
using namespace boltwright::literals;

namespace {

/// A bolt, and a seat on it.
Job plainJob() {
    Job job;
    Cloth cloth;
    cloth.id = "body";
    cloth.bolt = Bolt{54_in, {}, {}, {}, {}};
    job.cloths.push_back(cloth);
    Panel seat;
    seat.id = "seat";
    seat.shape = Rectangle{24_in, 22_in};
    job.panels.push_back(seat);
    return job;
}

} // namespace

// What reading refuses stands in tests/jobs/broken.txt; here is what only an edit can bring about.

TEST_CASE("a job that is right has no faults", "[job]") { CHECK(faultsOfJob(plainJob()).empty()); }

TEST_CASE("every fault of an edited job is named, in the order of the file", "[job]") {
    Job job = plainJob();
    job.gap = -0.25_in;
    job.panels[0].count = 0;
    std::get<Rectangle>(job.panels[0].shape).up = Length{};
    job.cloths[0].selvage = 30_in;
    CHECK(
        faultsOfJob(job) ==
        std::vector<std::string>{"cloths[0] 'body', selvage: two selvages of 30 in leave nothing of a width of 54 in",
                                 "gap: -0.25 in is less than zero; write 0 or more",
                                 "panels[0] 'seat', count: 0 is no number of copies; write 1 to 10000",
                                 "panels[0] 'seat', shape.up: 0 in is not greater than zero; write a measure above 0"});
}

TEST_CASE("a job without cloth is no job", "[job]") {
    Job job = plainJob();
    job.cloths.clear();
    CHECK(faultsOfJob(job) == std::vector<std::string>{"cloths: there is none; give at least one"});
}

TEST_CASE("a cloth that is taken away is missed by what is cut from it", "[job]") {
    Job job = plainJob();
    job.panels[0].cloth = "velvet";
    job.panels[0].motif = MotifWish{};
    Cut cut;
    cut.panel = "seat";
    cut.cloth = "velvet";
    job.layouts.push_back({"first", "plan", {}, {cut}, {}, {}, {}});
    CHECK(faultsOfJob(job) ==
          std::vector<std::string>{"panels[0] 'seat', cloth: there is no cloth 'velvet'",
                                   "layouts[0] 'first', cuts[0] 'seat', cloth: there is no cloth 'velvet'"});
}

TEST_CASE("a shape that loses an edge leaves allowances and joins without one", "[job]") {
    Job job = plainJob();
    Panel &seat = job.panels[0];
    seat.allow = EdgeLengths(4, 0.5_in);
    seat.may.stretcher[Left] = Length{};
    job.flows.push_back({{"seat", 3, {}, 1}, {"seat", 0, {}, 2}, {}, {}});
    seat.count = 2;
    REQUIRE(faultsOfJob(job).empty());
    seat.shape = PolygonShape{{{0_in, 0_in}, {24_in, 0_in}, {12_in, 20_in}}};
    CHECK(faultsOfJob(job) ==
          std::vector<std::string>{"panels[0] 'seat', allow: 4 lengths for 3 edges; give one an edge",
                                   "panels[0] 'seat', may.stretcher: there is no edge 3",
                                   "flow[0], edge: 'seat' has no edge 3"});
}

TEST_CASE("a layout may name a panel that is gone", "[job]") {
    Job job = plainJob();
    Cut cut;
    cut.panel = "gone";
    job.layouts.push_back({"", "", {}, {cut}, {}, {}, {}});
    CHECK(faultsOfJob(job).empty());
    CHECK(&job.clothOf(cut) == &job.cloths[0]);
}

TEST_CASE("a sentence stays short and on one line whatever a name holds", "[job]") {
    Job job = plainJob();
    job.panels[0].id = "a\nb" + std::string(200, 'x');
    job.panels[0].count = 0;
    CHECK(faultsOfJob(job) == std::vector<std::string>{"panels[0] 'a?b" + std::string(57, 'x') +
                                                       "...', count: 0 is no number of copies; write 1 to 10000"});
}

TEST_CASE("parts are found by their id", "[job]") {
    Job job = plainJob();
    Cloth velvet = job.cloths[0];
    velvet.id = "velvet";
    job.cloths.push_back(velvet);
    Panel border = job.panels[0];
    border.id = "border";
    border.cloth = "velvet";
    job.panels.push_back(border);
    CHECK(job.panel("border") == &job.panels[1]);
    CHECK(job.panel("none") == nullptr);
    CHECK(job.cloth("velvet") == &job.cloths[1]);
    CHECK(job.cloth("") == nullptr);
    CHECK(&job.clothOf(job.panels[0]) == &job.cloths[0]);
    CHECK(&job.clothOf(job.panels[1]) == &job.cloths[1]);
    Cut cut;
    cut.panel = "border";
    CHECK(&job.clothOf(cut) == &job.cloths[1]);
    cut.cloth = "body";
    CHECK(&job.clothOf(cut) == &job.cloths[0]);
}
