#include "tests/core/check/workroom.h"

using namespace workroom;

namespace {

struct Told {
    Job job = emptyJob();
    Layout layout = layoutOf({cut("Seat", 0_in, 2_in)}, 20_in);
    Told() { job.panels = {rectangle("Seat", 20_in, 18_in)}; }
    ClothUse &use() { return layout.cloths[0]; }
    Kinds found() const { return kinds(job, layout); }
};

const Kinds wrong = {Kind::Figures};

} // namespace

TEST_CASE("the length told is what the cuts reach", "[check]") {
    Told given;
    CHECK(given.found().empty());
    given.use().length = 20_in + 4 * tick;
    CHECK(given.found().empty());
    given.use().length = 20_in + 5 * tick;
    CHECK(given.found() == wrong);
    given.use().length = 20_in - hair;
    CHECK(texts(given.job, given.layout) ==
          std::vector<std::string>{"The length used of Body is told as 19 15/16 in, and the cuts reach 20 in."});
    given.use().length.reset();
    CHECK(given.found() == wrong);
    given.layout.cloths.clear();
    CHECK(given.found() == wrong);
}

TEST_CASE("the least it can take is not above what was used, and what is proved equals it", "[check]") {
    Told given;
    given.use().bound = 19_in;
    CHECK(given.found().empty());
    given.use().bound = 20_in + hair;
    CHECK(given.found() == wrong);
    given.use().bound = 19_in;
    given.use().proved = true;
    CHECK(given.found() == wrong);
    given.use().bound = 20_in;
    CHECK(given.found().empty());
    given.use().bound.reset();
    CHECK(given.found() == wrong);
}

TEST_CASE("figures for a cloth that the job has not are wrong", "[check]") {
    Told given;
    ClothUse other;
    other.id = "velvet";
    given.layout.cloths.push_back(other);
    CHECK(given.found() == wrong);
}
