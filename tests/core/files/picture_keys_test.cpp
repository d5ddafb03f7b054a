#include "core/files/job_file.h"
#include "core/job/pictures.h"
#include "core/measure/length_text.h"
#include "tests/core/support/jobs.h"

#include <catch2/catch.hpp>

#include <filesystem>

using namespace boltwright;
using namespace boltwright::literals;
using namespace boltwright::test;

namespace {

Job pictured() {
    Cloth cloth = remnantCloth({{0_in, 0_in}, {40_in, 0_in}, {40_in, 30_in}, {0_in, 30_in}});
    cloth.look = ClothLook{};
    cloth.look->ground = "#e8e2ce";
    cloth.look->figure = Figure::Stripes;
    cloth.look->bands = {Band{-1_in, 2_in, "#334455", {}}};
    cloth.look->swatch = Swatch{};
    cloth.look->swatch->picture.file = "pictures/thistle.jpg";
    cloth.look->swatch->corners[1] = {0.9375, 0.125};
    cloth.remnants[0].photo = RemnantPhoto{};
    RemnantPhoto &photo = *cloth.remnants[0].photo;
    photo.picture.data = PictureBytes("iVBORw0KGgo=");
    photo.points = {{0.1, 0.2}, {0.9, 0.25}, {0.875, 0.75}, {0.1234567, -0.25}};
    photo.at = cloth.remnants[0].outline;
    photo.taped = {TapedLength{{1_in, 1_in}, {39_in, 1_in}, 38_in, {}}};
    return jobOf(cloth, {rectangle("Seat", 20_in, 20_in)});
}

std::string refusal(std::string text, const std::string &what, const std::string &by) {
    const auto at = text.find(what);
    REQUIRE(at != std::string::npos);
    const auto job = readJob(text.replace(at, what.size(), by));
    return job ? "read as a job" : job.error().text;
}

} // namespace

TEST_CASE("how a cloth looks and where a remnant was photographed come back as they were written", "[pictures]") {
    const std::string text = writeJob(pictured());
    const auto job = readJob(text);
    REQUIRE(job);
    Job expected = pictured();
    expected.cloths[0].remnants[0].photo->points[3].right = 0.123457; // a millionth of the picture
    CHECK(*job == expected);
    CHECK(writeJob(*job) == text);
    CHECK(text.find("\"corners\": [[0, 0], [0.9375, 0.125], [1, 1], [0, 1]]") != std::string::npos);
}

TEST_CASE("a cloth without a look and a remnant without a photograph are written as before", "[pictures]") {
    const std::string text = writeJob(jobOf(bolt(54_in), {rectangle("Seat", 20_in, 20_in)}));
    for (const char *key : {"look", "photo", "on_table"}) CHECK(text.find(key) == std::string::npos);
}

TEST_CASE("what cannot be a picture's key is refused by name", "[pictures]") {
    const std::string text = writeJob(pictured());
    CHECK(refusal(text, "#e8e2ce", "oat").find("ground: \"oat\" is no colour") != std::string::npos);
    CHECK(refusal(text, "[0.9375, 0.125], ", "").find("are not four places in a picture") != std::string::npos);
    CHECK(refusal(text, "0.9375", "1e9").find("is no place in a picture") != std::string::npos);
    CHECK(refusal(text, "\"iVBORw0KGgo=\"", "7").find("is no picture") != std::string::npos);
}

TEST_CASE("a picture's file is found from the job's folder, also when the job is saved elsewhere", "[pictures]") {
    namespace fs = std::filesystem;
    const fs::path folder = fs::temp_directory_path() / "boltwright-pictures-test";
    fs::remove_all(folder);
    fs::create_directories(folder / "here");
    fs::create_directories(folder / "there");
    const fs::path first = folder / "here" / "a.boltwright", second = folder / "there" / "a.boltwright";
    REQUIRE(saveJob(pictured(), first));
    auto job = loadJob(first);
    REQUIRE(job);
    const auto swatch = [](const Job &j) { return j.cloths[0].look->swatch->picture; };
    CHECK(fileOf(swatch(*job)) == folder / "here" / "pictures/thistle.jpg");
    REQUIRE(saveJob(*job, second));
    const auto moved = loadJob(second);
    REQUIRE(moved);
    CHECK(fileOf(swatch(*moved)) == folder / "here" / "pictures/thistle.jpg");
    // Where it lies below the job's folder, its name is short again.
    REQUIRE(saveJob(*moved, folder / "b.boltwright"));
    const auto above = loadJob(folder / "b.boltwright");
    REQUIRE(above);
    CHECK(swatch(*above).file == "here/pictures/thistle.jpg");
    CHECK(fileOf(swatch(*above)) == folder / "here" / "pictures/thistle.jpg");
    fs::remove_all(folder);
}
